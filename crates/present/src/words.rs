//! Messages: every sentence the program says, by key, with arguments.

use std::borrow::Cow;
use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use unic_langid::LanguageIdentifier;

use crate::viewer::Locale;

/// The English messages, one file a part of the program.
const ENGLISH: &[&str] = &[
    include_str!("../messages/en/buying.ftl"),
    include_str!("../messages/en/general.ftl"),
    include_str!("../messages/en/fields.ftl"),
    include_str!("../messages/en/figures.ftl"),
    include_str!("../messages/en/rules.ftl"),
    include_str!("../messages/en/days.ftl"),
    include_str!("../messages/en/money.ftl"),
    include_str!("../messages/en/findings.ftl"),
    include_str!("../messages/en/faults.ftl"),
    include_str!("../messages/en/plan.ftl"),
    include_str!("../messages/en/pages.ftl"),
    include_str!("../messages/en/commands.ftl"),
    include_str!("../messages/en/heat.ftl"),
    include_str!("../messages/en/sums.ftl"),
    include_str!("../messages/en/medicine.ftl"),
    include_str!("../messages/en/scenes.ftl"),
    include_str!("../messages/en/tasks.ftl"),
    include_str!("../messages/en/web.ftl"),
    include_str!("../messages/en/prints.ftl"),
    include_str!("../messages/en/weighing.ftl"),
    include_str!("../messages/en/records.ftl"),
    include_str!("../messages/en/batch.ftl"),
    include_str!("../messages/en/batch_prints.ftl"),
    include_str!("../messages/en/record_commands.ftl"),
    include_str!("../messages/en/growing.ftl"),
    include_str!("../messages/en/air.ftl"),
    include_str!("../messages/en/air_day.ftl"),
    include_str!("../messages/en/air_sums.ftl"),
    include_str!("../messages/en/weather.ftl"),
    include_str!("../messages/en/outlook.ftl"),
    include_str!("../messages/en/watch.ftl"),
    include_str!("../messages/en/sync.ftl"),
    include_str!("../messages/en/phone.ftl"),
    include_str!("../messages/en/closing.ftl"),
    include_str!("../messages/en/sale.ftl"),
    include_str!("../messages/en/sale_prints.ftl"),
];

/// The messages of one language.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
}

/// Makes one list of arguments for a message out of name and value pairs.
#[macro_export]
macro_rules! say {
    ($words:expr, $key:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $words.say($key, &[$((stringify!($name), $crate::words::Argument::from($value))),*])
    };
}

/// A value put into a message.
#[derive(Clone, Debug, PartialEq)]
pub enum Argument {
    /// Text, shown as it is.
    Text(String),
    /// A number that only chooses the plural form; numbers to be read are formatted before.
    Count(f64),
}

impl From<&str> for Argument {
    fn from(text: &str) -> Self {
        Argument::Text(text.to_owned())
    }
}

impl From<String> for Argument {
    fn from(text: String) -> Self {
        Argument::Text(text)
    }
}

impl From<&String> for Argument {
    fn from(text: &String) -> Self {
        Argument::Text(text.clone())
    }
}

impl From<f64> for Argument {
    fn from(count: f64) -> Self {
        Argument::Count(count)
    }
}

impl Words {
    /// The messages of a language: constants of the program, put together at first use.
    pub fn of(locale: Locale) -> &'static Words {
        static ALL: [OnceLock<Words>; 3] = [const { OnceLock::new() }; 3];
        let at = match locale {
            Locale::English => 0,
            Locale::PseudoLong => 1,
            Locale::PseudoMirrored => 2,
        };
        ALL[at].get_or_init(|| Words::load(locale))
    }

    fn load(locale: Locale) -> Words {
        // Plural rules are English for the pseudo-locales too: they are English in disguise.
        let english: LanguageIdentifier = "en".parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![english]);
        // Isolation marks would land in HTML attributes and in tests; right-to-left text gets its direction from the page.
        bundle.set_use_isolating(false);
        match locale {
            Locale::English => {}
            Locale::PseudoLong => bundle.set_transform(Some(longer)),
            Locale::PseudoMirrored => bundle.set_transform(Some(mirrored)),
        }
        for text in ENGLISH {
            // A message file that cannot be read in part is used as far as it goes; a test refuses it.
            let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(partial, _)| partial);
            bundle.add_resource_overriding(resource);
        }
        Words { bundle }
    }

    /// A message with its arguments. A key without a message comes back in brackets, and a test finds it.
    pub fn say(&self, key: &str, arguments: &[(&str, Argument)]) -> String {
        self.find(key, None, arguments).unwrap_or_else(|| format!("[{key}]"))
    }

    /// A message without arguments.
    pub fn plain(&self, key: &str) -> String {
        self.say(key, &[])
    }

    /// An attribute of a message, such as the hint of a field's label; `None` where there is none.
    pub fn attribute(&self, key: &str, attribute: &str, arguments: &[(&str, Argument)]) -> Option<String> {
        self.find(key, Some(attribute), arguments)
    }

    /// Whether there is such a message.
    pub fn knows(&self, key: &str) -> bool {
        self.bundle.has_message(key)
    }

    fn find(&self, key: &str, attribute: Option<&str>, arguments: &[(&str, Argument)]) -> Option<String> {
        let message = self.bundle.get_message(key)?;
        let pattern = match attribute {
            None => message.value()?,
            Some(name) => message.get_attribute(name)?.value(),
        };
        let mut args = FluentArgs::new();
        for (name, value) in arguments {
            match value {
                Argument::Text(text) => args.set(*name, text.clone()),
                Argument::Count(count) => args.set(*name, *count),
            }
        }
        let mut errors = Vec::new();
        Some(self.bundle.format_pattern(pattern, Some(&args), &mut errors).into_owned())
    }
}

/// The part of a message key that stands for a dotted name: `space.birds_allowed` is `space-birds-allowed`.
pub fn key_part(name: &str) -> String {
    name.replace(['.', '_'], "-")
}

/// Every letter accented and every vowel doubled: about a third longer, still readable.
fn longer(text: &str) -> Cow<'_, str> {
    text.chars().flat_map(|c| accented(c).chars().map(|c| c.to_string()).collect::<Vec<_>>()).collect()
}

fn accented(c: char) -> Cow<'static, str> {
    const PAIRS: &[(char, &str)] = &[
        ('a', "áá"),
        ('b', "ƀ"),
        ('c', "ç"),
        ('d', "ð"),
        ('e', "éé"),
        ('f', "ƒ"),
        ('g', "ĝ"),
        ('h', "ĥ"),
        ('i', "íí"),
        ('j', "ĵ"),
        ('k', "ķ"),
        ('l', "ļ"),
        ('m', "ɱ"),
        ('n', "ñ"),
        ('o', "óó"),
        ('p', "þ"),
        ('q', "ɋ"),
        ('r', "ŕ"),
        ('s', "š"),
        ('t', "ţ"),
        ('u', "úú"),
        ('v', "ṽ"),
        ('w', "ŵ"),
        ('x', "ẋ"),
        ('y', "ý"),
        ('z', "ž"),
    ];
    match PAIRS.iter().find(|(plain, _)| *plain == c.to_ascii_lowercase()) {
        Some((_, accented)) if c.is_ascii_uppercase() => Cow::Owned(accented.to_uppercase()),
        Some((_, accented)) => Cow::Borrowed(accented),
        None => Cow::Owned(c.to_string()),
    }
}

/// Accented and wrapped in right-to-left override marks, as a right-to-left language would lie on the page.
fn mirrored(text: &str) -> Cow<'_, str> {
    let accented: String = text.chars().map(|c| accented(c).chars().next().unwrap_or(c)).collect();
    Cow::Owned(format!("\u{202e}{accented}\u{202c}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_message_file_reads_whole_and_no_key_stands_twice() {
        let mut seen = std::collections::HashSet::new();
        for text in ENGLISH {
            if let Err((_, errors)) = FluentResource::try_new((*text).to_owned()) {
                panic!("{errors:?}");
            }
            for line in text.lines().filter(|line| line.starts_with(|c: char| c.is_ascii_alphabetic())) {
                let key = line.split(" =").next().unwrap_or_default();
                assert!(seen.insert(key), "message {key} stands twice");
            }
        }
    }

    #[test]
    fn the_pseudo_locales_change_words_and_leave_arguments() {
        let long = say!(Words::of(Locale::PseudoLong), "unit-kg", n = "12.5");
        assert_eq!(long, "12.5 ķĝ");
        let mirrored = say!(Words::of(Locale::PseudoMirrored), "unit-kg", n = "12.5");
        assert!(mirrored.starts_with("12.5") && mirrored.contains('\u{202e}'));
    }

    #[test]
    fn a_missing_key_is_seen() {
        assert_eq!(Words::of(Locale::English).plain("no-such-message"), "[no-such-message]");
    }
}
