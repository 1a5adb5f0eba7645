//! How much room text takes, and where its lines break.

/// Letters of axes and legends.
pub(super) const SMALL: f64 = 11.0;

/// From line to line of small letters.
pub(super) const LINE: f64 = 14.0;

/// Width of a letter as a share of its height. Somewhat more than a plain face takes, so that text stays apart where a
/// phone shows another face than the one we draw with.
fn letter(letter: char) -> f64 {
    match letter {
        '0'..='9' => 0.64,
        '−' | '+' | '%' | '&' => 0.84,
        letter if letter.is_uppercase() => 0.7,
        _ => 0.58,
    }
}

/// About how wide a text is.
pub(super) fn width(text: &str, size: f64) -> f64 {
    text.chars().map(letter).sum::<f64>() * size
}

/// The widest of some lines.
pub(super) fn widest(lines: &[String], size: f64) -> f64 {
    lines.iter().map(|line| width(line, size)).fold(0.0, f64::max)
}

/// Lines of small letters no wider than `room`, of at least a letter; a word that is wider by itself is cut.
pub(super) fn wrap(text: &str, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ').filter(|word| !word.is_empty()).flat_map(|word| pieces(word, room)) {
        match lines.last_mut() {
            Some(line) if width(line, SMALL) + width(" ", SMALL) + width(&word, SMALL) <= room => {
                line.push(' ');
                line.push_str(&word);
            }
            _ => lines.push(word),
        }
    }
    lines
}

/// A word in pieces no wider than the room.
fn pieces(word: &str, room: f64) -> Vec<String> {
    let mut pieces = vec![String::new()];
    let mut left = room;
    for next in word.chars() {
        left -= letter(next) * SMALL;
        match pieces.last_mut() {
            Some(piece) if left >= 0.0 || piece.is_empty() => piece.push(next),
            _ => {
                pieces.push(next.into());
                left = room - letter(next) * SMALL;
            }
        }
    }
    pieces
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
