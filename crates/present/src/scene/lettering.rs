//! How much room text takes, and where its lines break.

/// Letters of axes and legends.
pub(super) const SMALL: f64 = 11.0;

/// From line to line of small letters.
pub(super) const LINE: f64 = 14.0;

/// Width of a letter as a share of its height: somewhat more than the mean of a plain face, so that text stays apart
/// where a phone shows another face than the one we draw with.
const LETTER: f64 = 0.58;

/// About how wide a text is.
pub(super) fn width(text: &str, size: f64) -> f64 {
    text.chars().count() as f64 * LETTER * size
}

/// The widest of some lines.
pub(super) fn widest(lines: &[String], size: f64) -> f64 {
    lines.iter().map(|line| width(line, size)).fold(0.0, f64::max)
}

/// Lines of small letters no wider than `room`; a word that is wider by itself is cut.
pub(super) fn wrap(text: &str, room: f64) -> Vec<String> {
    let most = ((room / (LETTER * SMALL)) as usize).max(1);
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ').filter(|word| !word.is_empty()).flat_map(|word| pieces(word, most)) {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(&word);
            }
            _ => lines.push(word),
        }
    }
    lines
}

/// A word in pieces of at most so many letters.
fn pieces(word: &str, most: usize) -> Vec<String> {
    let letters: Vec<char> = word.chars().collect();
    letters.chunks(most).map(|piece| piece.iter().collect()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stay_in_their_room_and_lose_nothing() {
        let text = "Grower feed from here Unbreakablelongwordwithoutanyspaces 1\u{a0}600 kg";
        for room in [10.0, 40.0, 90.0, 300.0, 1000.0] {
            let lines = wrap(text, room);
            assert!(lines.iter().all(|line| width(line, SMALL) <= room), "{room} {lines:?}");
            let letters = |text: &str| text.replace(' ', "");
            assert_eq!(letters(&lines.concat()), letters(text));
        }
        assert_eq!(wrap("", 100.0), Vec::<String>::new());
    }
}
