//! A weighing in the hand: the birds weighed so far, carried in the address of the page, so that going back takes the last
//! one off and a reload loses nothing.

use advice::weighing::{Reading, Weighing, is_cock, sex_name};

/// The most readings of one weighing: as many as an entry holds.
pub(crate) const READINGS_MAX: usize = 1_000;
/// The most characters of a spot's name.
const SPOT_CHARACTERS: usize = 30;
/// The most birds weighed together.
pub(crate) const BIRDS_MAX: u32 = 500;

/// The readings so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Readings(pub(crate) Vec<Reading>);

impl Readings {
    /// Reads what an address carries: `480;512@door;4950x10@far end`. What makes no reading is left out.
    pub(crate) fn of(text: &str) -> Readings {
        Readings(text.split(';').filter_map(reading).take(READINGS_MAX).collect())
    }

    /// As an address carries it.
    pub(crate) fn text(&self) -> String {
        self.0.iter().map(written).collect::<Vec<_>>().join(";")
    }

    /// Without the last.
    pub(crate) fn without_last(&self) -> Readings {
        Readings(self.0.split_last().map_or_else(Vec::new, |(_, before)| before.to_vec()))
    }

    fn singles(&self) -> impl Iterator<Item = &Reading> {
        self.0.iter().filter(|reading| reading.birds == 1)
    }

    fn groups(&self) -> impl Iterator<Item = &Reading> {
        self.0.iter().filter(|reading| reading.birds > 1)
    }

    /// What the entry says of them: field and text.
    pub(crate) fn fields(&self) -> Vec<(&'static str, String)> {
        let join = |texts: Vec<String>, mark: &str| texts.join(mark);
        let of_singles = |text: &dyn Fn(&Reading) -> String| self.singles().map(text).collect::<Vec<_>>();
        let mut fields = vec![
            ("weights_g", join(of_singles(&|one| one.grams.to_string()), " ")),
            ("group_weights_g", join(self.groups().map(|one| one.grams.to_string()).collect(), " ")),
            ("group_birds", join(self.groups().map(|one| one.birds.to_string()).collect(), " ")),
        ];
        // One word a reading, single birds before groups, where any is said at all.
        let ordered: Vec<&Reading> = self.singles().chain(self.groups()).collect();
        if ordered.iter().any(|one| !one.spot.is_empty()) {
            fields.push(("spots", join(ordered.iter().map(|one| one.spot.clone()).collect(), ",")));
        }
        if self.singles().any(|one| one.is_cock.is_some()) {
            fields.push(("sexes", join(of_singles(&|one| sex_word(one.is_cock).to_owned()), ",")));
        }
        fields.retain(|(_, text)| !text.is_empty());
        fields
    }

    /// The weighing they make.
    pub(crate) fn weighing(&self, flock: Option<f64>) -> Weighing {
        Weighing { readings: self.0.clone(), scale_step_g: None, flock }
    }
}

/// The word for what was seen; empty where nobody said.
pub(crate) fn sex_word(is_cock: Option<bool>) -> &'static str {
    is_cock.map_or("", sex_name)
}

fn reading(text: &str) -> Option<Reading> {
    let (rest, sex) = text.split_once('*').unwrap_or((text, ""));
    let (rest, spot) = rest.split_once('@').unwrap_or((rest, ""));
    let (grams, birds) = rest.split_once('x').unwrap_or((rest, "1"));
    let grams: f64 = grams.trim().parse().ok().filter(|grams: &f64| (1.0..=1e6).contains(grams))?;
    let birds = birds.parse().ok().filter(|birds| (1..=BIRDS_MAX).contains(birds))?;
    Some(Reading { grams, birds, spot: spot_name(spot), is_cock: is_cock(sex).filter(|_| birds == 1) })
}

/// A spot's name without what addresses and lists set apart by.
pub(crate) fn spot_name(text: &str) -> String {
    let kept = text.trim().chars().filter(|c| !c.is_control() && !matches!(c, ';' | ',' | '@' | '*'));
    kept.take(SPOT_CHARACTERS).collect()
}

fn written(reading: &Reading) -> String {
    let mut text = reading.grams.to_string();
    if reading.birds > 1 {
        text += &format!("x{}", reading.birds);
    }
    if !reading.spot.is_empty() {
        text += &format!("@{}", reading.spot);
    }
    if let Some(is_cock) = reading.is_cock {
        text += &format!("*{}", sex_name(is_cock));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_carries_readings_there_and_back() {
        let text = "480;512.5@door*hen;4950x10@far end;nothing;-3;20x0";
        let readings = Readings::of(text);
        assert_eq!(readings.text(), "480;512.5@door*hen;4950x10@far end");
        assert_eq!(readings.without_last().0.len(), 2);
        assert_eq!(Readings::of(&readings.text()), readings);
    }

    #[test]
    fn an_entry_says_single_birds_and_groups_apart() {
        let fields = Readings::of("480@door;4950x10@far end;500*cock").fields();
        let of = |name: &str| fields.iter().find(|(key, _)| *key == name).map(|(_, text)| text.as_str());
        assert_eq!(of("weights_g"), Some("480 500"));
        assert_eq!((of("group_weights_g"), of("group_birds")), (Some("4950"), Some("10")));
        assert_eq!((of("spots"), of("sexes")), (Some("door,,far end"), Some(",cock")));
    }
}
