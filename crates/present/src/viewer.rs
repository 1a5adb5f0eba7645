//! Who looks: language, units, whether money may be seen. Passed to whatever shows; never global.

use quantity::Answers;

use crate::words::Words;

/// A language of the messages.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Locale {
    /// English.
    English,
    /// English made long and accented by machine, to find words that are no messages and boxes that are too tight.
    PseudoLong,
    /// English run from right to left by machine.
    PseudoMirrored,
}

impl Locale {
    /// All of them.
    pub const ALL: [Locale; 3] = [Locale::English, Locale::PseudoLong, Locale::PseudoMirrored];

    /// The language tag (BCP 47).
    pub fn tag(self) -> &'static str {
        match self {
            Locale::English => "en",
            Locale::PseudoLong => "en-XA",
            Locale::PseudoMirrored => "ar-XB",
        }
    }

    /// From a language tag; `None` for a language there are no messages for.
    pub fn from_tag(tag: &str) -> Option<Locale> {
        Self::ALL.into_iter().find(|locale| locale.tag().eq_ignore_ascii_case(tag))
    }

    /// Whether a tag names English in disguise, made for tests and for nobody to read.
    pub fn is_disguise(tag: &str) -> bool {
        Locale::from_tag(tag).is_some_and(|locale| locale != Locale::English)
    }

    /// `ltr` or `rtl`, as HTML and typst write it.
    pub fn direction(self) -> &'static str {
        match self {
            Locale::PseudoMirrored => "rtl",
            Locale::English | Locale::PseudoLong => "ltr",
        }
    }
}

/// Which units numbers are shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Units {
    /// Metres, kilograms, litres, degrees Celsius.
    Metric,
    /// Feet, pounds, US gallons, degrees Fahrenheit.
    Customary,
}

/// Who looks.
#[derive(Clone, Debug, PartialEq)]
pub struct Viewer {
    /// The language.
    pub locale: Locale,
    /// The units.
    pub units: Units,
    /// The farm's currency code, where it is known.
    pub currency: Option<String>,
    /// Decimals of the currency.
    pub currency_exponent: u8,
    /// Whether amounts of money are shown: a worker who borrows the phone need not see them.
    pub money_shown: bool,
}

impl Viewer {
    /// English, metric, money shown.
    pub fn plain() -> Viewer {
        Viewer {
            locale: Locale::English,
            units: Units::Metric,
            currency: None,
            currency_exponent: 2,
            money_shown: true,
        }
    }

    /// As the settings and the farm of some answers ask.
    pub fn of(answers: &Answers) -> Viewer {
        let mut viewer = Viewer::plain();
        if let Some(locale) = answers.choice("settings.language").and_then(Locale::from_tag) {
            viewer.locale = locale;
        }
        if answers.choice("settings.units") == Some("customary") {
            viewer.units = Units::Customary;
        }
        viewer.money_shown = answers.choice("settings.money") != Some("hidden");
        if let Some(quantity::Value::Currency(currency)) =
            answers.get("farm.currency").map(|given| &given.value)
        {
            viewer.currency = Some(currency.code().to_owned());
            viewer.currency_exponent = currency.exponent();
        }
        viewer
    }

    /// The messages of this viewer's language.
    pub fn words(&self) -> &'static Words {
        Words::of(self.locale)
    }
}
