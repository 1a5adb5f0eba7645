//! Reads a plan file: TOML text to raw answers with their lines. Knows no field; that is the checker's part.

use quantity::Raw;
use toml_edit::{Document, Item, Table, Value};

/// Why a file is no plan file.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FileFault {
    /// Larger than any plan is.
    #[error("{bytes} bytes, over {limit}")]
    TooLarge {
        /// Its size.
        bytes: u64,
        /// The greatest size read.
        limit: u64,
    },
    /// Not text.
    #[error("not UTF-8 text")]
    NotText,
    /// A decimal comma, which TOML cannot read.
    #[error("line {line}: decimal comma in {key}")]
    CommaDecimal {
        /// The line, from 1.
        line: usize,
        /// The key on that line.
        key: String,
        /// The value as written.
        typed: String,
    },
    /// A value that TOML cannot read, such as a day that no month has, or a key without a value.
    #[error("line {line}: {key} = {typed}: {why}")]
    Unreadable {
        /// The line, from 1.
        line: usize,
        /// The key on that line.
        key: String,
        /// The value as written; empty where there is none.
        typed: String,
        /// What the reader says, in English.
        why: String,
    },
    /// Not TOML.
    #[error("line {line}: {why}")]
    NotToml {
        /// The line, from 1.
        line: usize,
        /// What the reader says, in English.
        why: String,
    },
    /// Values nested deeper than table, key, list.
    #[error("line {line}: {key} holds a table")]
    TooDeep {
        /// The line, from 1.
        line: usize,
        /// The key.
        key: String,
    },
}

/// The greatest plan file read, in bytes: a plan of a thousand lines is 40 kB.
pub const LARGEST_FILE: u64 = 1_000_000;

/// Reads bytes as text, refusing what is too large or binary.
///
/// # Errors
/// [`FileFault::TooLarge`], [`FileFault::NotText`].
pub fn text_of(bytes: &[u8]) -> Result<&str, FileFault> {
    let size = bytes.len() as u64;
    if size > LARGEST_FILE {
        return Err(FileFault::TooLarge { bytes: size, limit: LARGEST_FILE });
    }
    let text = std::str::from_utf8(bytes).map_err(|_| FileFault::NotText)?;
    if text.contains('\0') { Err(FileFault::NotText) } else { Ok(text) }
}

/// Reads a plan file into raw answers, keys as `section.name`.
///
/// # Errors
/// [`FileFault`] with the line.
pub fn read(text: &str) -> Result<Vec<Raw>, FileFault> {
    let document = Document::parse(text).map_err(|error| {
        let at = error.span().map_or(0, |span| span.start);
        not_toml(text, at, error.message())
    })?;
    let mut raws = Vec::new();
    for (section, item) in document.iter() {
        match item {
            Item::Table(table) => read_table(text, section, table, &mut raws)?,
            Item::Value(value) => raws.push(read_value(text, section.to_owned(), value)?),
            Item::ArrayOfTables(tables) if section == crate::houses::SECTION => {
                for (at, table) in tables.iter().enumerate() {
                    read_table(text, &format!("{section}[{}]", at + 1), table, &mut raws)?;
                }
            }
            Item::ArrayOfTables(_) | Item::None => {
                let line = line_of(text, item.span().map_or(0, |span| span.start));
                return Err(FileFault::TooDeep { line, key: section.to_owned() });
            }
        }
    }
    Ok(raws)
}

fn read_table(text: &str, section: &str, table: &Table, raws: &mut Vec<Raw>) -> Result<(), FileFault> {
    for (name, item) in table.iter() {
        let key = format!("{section}.{name}");
        match item {
            Item::Value(value) => raws.push(read_value(text, key, value)?),
            _ => {
                let line = line_of(text, item.span().map_or(0, |span| span.start));
                return Err(FileFault::TooDeep { line, key });
            }
        }
    }
    Ok(())
}

fn read_value(text: &str, key: String, value: &Value) -> Result<Raw, FileFault> {
    let at = value.span().map_or(0, |span| span.start);
    let line = line_of(text, at);
    let too_deep = || FileFault::TooDeep { line, key: key.clone() };
    let texts = match value {
        Value::Array(items) => {
            items.iter().map(|item| scalar(text, item).ok_or_else(too_deep)).collect::<Result<Vec<_>, _>>()?
        }
        other => vec![scalar(text, other).ok_or_else(too_deep)?],
    };
    Ok(Raw { key, text: texts, line: Some(line) })
}

/// The characters of a value as written, strings without their quotes.
fn scalar(text: &str, value: &Value) -> Option<String> {
    match value {
        Value::String(string) => Some(string.value().clone()),
        Value::Array(_) | Value::InlineTable(_) => None,
        // Underscores between digits are TOML's own way to write thousands.
        Value::Integer(_) | Value::Float(_) => {
            Some(text.get(value.span()?)?.replace('_', "").trim_start_matches('+').to_owned())
        }
        Value::Boolean(_) | Value::Datetime(_) => Some(text.get(value.span()?)?.trim().to_owned()),
    }
}

fn line_of(text: &str, at: usize) -> usize {
    text.bytes().take(at).filter(|&byte| byte == b'\n').count() + 1
}

/// Characters of a value that a fault shows.
const LONGEST_SHOWN: usize = 40;

fn not_toml(text: &str, at: usize, why: &str) -> FileFault {
    let line = line_of(text, at);
    let written = text.lines().nth(line - 1).unwrap_or_default();
    if let Some((key, value)) = written.split_once('=') {
        let (key, value) = (key.trim(), value.split('#').next().unwrap_or_default().trim());
        let section = section_above(text, line);
        let full_key = if section.is_empty() { key.to_owned() } else { format!("{section}.{key}") };
        let is_number =
            quantity::number::parse(value).is_ok() || quantity::number::looks_like_thousands(value);
        if value.contains(',') && is_number {
            return FileFault::CommaDecimal { line, key: full_key, typed: value.to_owned() };
        }
        let is_key = !key.is_empty() && key.chars().all(|c| c.is_ascii_alphanumeric() || "_-".contains(c));
        if is_key && !value.starts_with('=') {
            let why = why.lines().next().unwrap_or_default().to_owned();
            let typed = value.chars().take(LONGEST_SHOWN).collect();
            return FileFault::Unreadable { line, key: full_key, typed, why };
        }
    }
    FileFault::NotToml { line, why: why.lines().next().unwrap_or_default().to_owned() }
}

fn section_above(text: &str, line: usize) -> &str {
    text.lines()
        .take(line)
        .filter_map(|written| written.trim().strip_prefix('[')?.split(']').next())
        .last()
        .unwrap_or_default()
        .trim()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_texts_and_lines() {
        let raws = read("[house]\nlength_m = 18.0\n\n[disinfectant]\nsurfaces = [\"floor\", \"walls\"]\nratio = \"1:400\" # label\n").unwrap();
        assert_eq!(raws[0], Raw { key: "house.length_m".into(), text: vec!["18.0".into()], line: Some(2) });
        assert_eq!(raws[1].text, ["floor", "walls"]);
        assert_eq!(
            raws[2],
            Raw { key: "disinfectant.ratio".into(), text: vec!["1:400".into()], line: Some(6) }
        );
    }

    #[test]
    fn days_come_as_written() {
        let raws = read("[batch]\nplacement = 2027-09-14\nchicks = 1_600\n").unwrap();
        assert_eq!(raws[0].text, ["2027-09-14"]);
        assert_eq!(raws[1].text, ["1600"]);
    }

    #[test]
    fn a_comma_decimal_is_named_with_its_line() {
        let fault = read("[house]\nlength_m = 18,5\n").unwrap_err();
        assert_eq!(
            fault,
            FileFault::CommaDecimal { line: 2, key: "house.length_m".into(), typed: "18,5".into() }
        );
    }

    #[test]
    fn a_value_that_cannot_be_read_is_named_with_its_key() {
        for (value, typed) in
            [("2027-02-30", "2027-02-30"), ("", ""), ("99999999999999999999", "99999999999999999999")]
        {
            match read(&format!("[batch]\nchicks = {value}\n")) {
                Err(FileFault::Unreadable { line: 2, key, typed: shown, .. }) => {
                    assert_eq!((key.as_str(), shown.as_str()), ("batch.chicks", typed));
                }
                other => panic!("{value}: {other:?}"),
            }
        }
    }

    #[test]
    fn what_is_no_plan_is_refused_without_a_panic() {
        assert!(matches!(read("[house\n"), Err(FileFault::NotToml { line: 1, .. })));
        assert!(matches!(read("[a.b]\nc = 1"), Err(FileFault::TooDeep { .. })));
        assert!(matches!(read("[a]\nb = {c = 1}"), Err(FileFault::TooDeep { .. })));
        assert!(matches!(read("[[a]]\nb = 1"), Err(FileFault::TooDeep { .. })));
        assert!(matches!(read("x = [[1]]"), Err(FileFault::TooDeep { .. })));
        assert_eq!(text_of(b"\xff\xfe\x00"), Err(FileFault::NotText));
        assert_eq!(text_of(b"a\0b"), Err(FileFault::NotText));
        assert!(matches!(text_of(&vec![b'a'; 1_000_001]), Err(FileFault::TooLarge { .. })));
        assert_eq!(read("").unwrap(), vec![]);
    }
}
