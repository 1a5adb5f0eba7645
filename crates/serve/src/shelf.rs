//! Pages that were made already, by their stamp: asked for again before anything changed, they are handed out as they are.

use std::collections::{HashMap, VecDeque};
use std::sync::{Mutex, PoisonError};

use axum::body::Bytes;

use crate::stamp::Stamp;

/// How much is kept, bytes: the pages that a farm looks at on one day, many times over.
const ROOM_BYTES: usize = 8 * 1024 * 1024;

/// The pages made last. What a page is made from is in its stamp, so nothing on the shelf ever has to be taken back: a page
/// whose book has changed is not asked for again, and falls off at the end.
#[derive(Default)]
pub(crate) struct Shelf(Mutex<Pages>);

#[derive(Default)]
struct Pages {
    by_stamp: HashMap<Stamp, Bytes>,
    /// The oldest first.
    order: VecDeque<Stamp>,
    bytes: usize,
}

impl Shelf {
    /// The page of a stamp.
    pub(crate) fn get(&self, stamp: &Stamp) -> Option<Bytes> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).by_stamp.get(stamp).cloned()
    }

    /// Keeps a page, and lets go of the oldest where there is no room.
    pub(crate) fn put(&self, stamp: &Stamp, page: Bytes) {
        if page.len() > ROOM_BYTES {
            return;
        }
        self.0.lock().unwrap_or_else(PoisonError::into_inner).put(stamp, page);
    }
}

impl Pages {
    fn put(&mut self, stamp: &Stamp, page: Bytes) {
        self.bytes += page.len();
        match self.by_stamp.insert(stamp.clone(), page) {
            Some(before) => self.bytes -= before.len(),
            None => self.order.push_back(stamp.clone()),
        }
        while self.bytes > ROOM_BYTES {
            let Some(oldest) = self.order.pop_front() else { return };
            self.bytes -= self.by_stamp.remove(&oldest).map_or(0, |page| page.len());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_put_last_is_found_and_the_oldest_falls_off() {
        let shelf = Shelf::default();
        let stamps: Vec<Stamp> = ["a", "b", "c"].iter().map(|name| Stamp::of(&[name])).collect();
        let page = |letter: u8| Bytes::from(vec![letter; ROOM_BYTES / 2]);
        for (stamp, letter) in stamps.iter().zip(*b"abc") {
            shelf.put(stamp, page(letter));
        }
        assert_eq!(shelf.get(&stamps[0]), None);
        assert_eq!(shelf.get(&stamps[1]), Some(page(b'b')));
        assert_eq!(shelf.get(&stamps[2]), Some(page(b'c')));
    }

    #[test]
    fn a_page_put_twice_takes_its_room_once_and_one_too_large_none() {
        let shelf = Shelf::default();
        let (small, large) = (Stamp::of(&["small"]), Stamp::of(&["large"]));
        for _ in 0..3 {
            shelf.put(&small, Bytes::from(vec![0; ROOM_BYTES / 2]));
        }
        shelf.put(&large, Bytes::from(vec![0; ROOM_BYTES + 1]));
        assert!(shelf.get(&small).is_some());
        assert_eq!(shelf.get(&large), None);
    }
}
