//! The most of a thing that still holds, where more of it never mends what less of it breaks.

/// The last count from `least` to below `too_many` that holds; `None` where not even the least does.
pub(crate) fn most(least: u32, too_many: u32, holds: impl Fn(u32) -> bool) -> Option<u32> {
    if too_many <= least || !holds(least) {
        return None;
    }
    let (mut low, mut high) = (least, too_many);
    while high - low > 1 {
        let middle = low.midpoint(high);
        if holds(middle) { low = middle } else { high = middle }
    }
    Some(low)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_that_holds_is_found() {
        for last in 3..40 {
            assert_eq!(most(3, 40, |count| count <= last), Some(last));
        }
        assert_eq!(most(3, 40, |_| false), None);
        assert_eq!(most(3, 3, |_| true), None);
    }
}
