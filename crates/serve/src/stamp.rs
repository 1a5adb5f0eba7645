//! Entity tags: a digest of everything a page is made from.

use sha2::{Digest, Sha256};

/// The tag of a page. Weak, since the same page travels compressed and not.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub(crate) struct Stamp(String);

impl Stamp {
    /// The stamp of some parts; where one ends and the next begins counts.
    pub(crate) fn of(parts: &[&str]) -> Stamp {
        Stamp(format!("W/\"{}\"", digest(parts)))
    }

    /// As a header.
    pub(crate) fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether an `If-None-Match` header names it.
    pub(crate) fn is_in(&self, header: &str) -> bool {
        header.split(',').map(str::trim).any(|tag| tag == "*" || tag == self.0)
    }
}

/// Twenty hexadecimal digits that stand for some parts.
pub(crate) fn digest(parts: &[&str]) -> String {
    let mut digest = Sha256::new();
    for part in parts {
        digest.update((part.len() as u64).to_le_bytes());
        digest.update(part);
    }
    digest.finalize().iter().take(10).map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_and_every_border_counts() {
        assert_eq!(Stamp::of(&["a", "b"]), Stamp::of(&["a", "b"]));
        assert_ne!(Stamp::of(&["ab", ""]), Stamp::of(&["a", "b"]));
        let stamp = Stamp::of(&["a"]);
        assert!(stamp.is_in(&format!("W/\"x\", {}", stamp.as_str())));
        assert!(!stamp.is_in("W/\"x\""));
    }
}
