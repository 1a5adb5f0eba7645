//! Where an axis begins and ends, with ticks at round numbers.

use crate::show;

/// Values further from zero than this are left out: no quantity of a farm is, and sums of them would not stay finite.
const FAR: f64 = 1e15;

/// Ticks of an axis at most, whatever goes wrong.
const MOST_TICKS: usize = 40;

/// Whether a value can stand in a drawing.
pub(super) fn drawable(value: f64) -> bool {
    value.abs() <= FAR
}

/// The span of numbers along one side of a drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Axis {
    /// Its first number.
    pub(super) from: f64,
    /// Its last, above the first.
    pub(super) to: f64,
    /// From tick to tick.
    step: f64,
}

impl Axis {
    /// An axis that holds all values and ends at ticks, in about so many steps.
    pub(super) fn of_values(values: impl Iterator<Item = f64>, steps: f64) -> Axis {
        let (low, high) = span(values);
        let step = round_step((high - low) / steps);
        Axis { from: (low / step + 1e-9).floor() * step, to: (high / step - 1e-9).ceil() * step, step }
    }

    /// An axis of counts from nothing up, with whole ticks and room above the greatest.
    pub(super) fn of_counts(counts: impl Iterator<Item = f64>) -> Axis {
        let high = counts.filter(|count| drawable(*count)).fold(1.0, f64::max);
        let step = round_step(high / 5.0).max(1.0);
        Axis { from: 0.0, to: ((high / step).floor() + 1.0) * step, step }
    }

    /// An axis of days from the first to the last, with ticks every day, every other day or at weeks.
    pub(super) fn of_days(days: impl Iterator<Item = f64>, steps: f64) -> Axis {
        let (from, to) = span(days);
        let least = (to - from) / steps;
        let step = match least {
            least if least <= 1.0 => 1.0,
            least if least <= 2.0 => 2.0,
            least => 7.0 * round_step(least / 7.0).max(1.0),
        };
        Axis { from, to, step }
    }

    /// An axis of the hours of a day.
    pub(super) fn of_hours() -> Axis {
        Axis { from: 0.0, to: 24.0, step: 6.0 }
    }

    /// An axis of so many things side by side, each one wide.
    pub(super) fn of_places(places: usize) -> Axis {
        Axis { from: 0.0, to: places.max(1) as f64, step: 1.0 }
    }

    /// Where its ticks are.
    pub(super) fn ticks(&self) -> Vec<f64> {
        let first = (self.from / self.step - 1e-9).ceil();
        (0..MOST_TICKS)
            .map(|at| (first + at as f64) * self.step)
            .take_while(|tick| *tick <= self.to + self.step * 1e-6)
            .collect()
    }

    /// Its ticks with their numbers.
    pub(super) fn labelled(&self) -> Vec<(f64, String)> {
        // As many decimals as tell one tick from the next.
        let decimals = (-self.step.log10() - 1e-9).ceil().clamp(0.0, 6.0) as u8;
        self.ticks().into_iter().map(|tick| (tick, show::number(tick, decimals))).collect()
    }

    /// How far along the axis a value lies, 0 to 1.
    pub(super) fn share(&self, value: f64) -> f64 {
        ((value - self.from) / (self.to - self.from)).clamp(0.0, 1.0)
    }
}

/// The least and the greatest of those that can be drawn, opened towards zero where they are all the same.
fn span(values: impl Iterator<Item = f64>) -> (f64, f64) {
    let ends = values.filter(|value| drawable(*value)).fold(None, |ends, value| {
        let (low, high) = ends.unwrap_or((value, value));
        Some((value.min(low), value.max(high)))
    });
    match ends {
        None => (0.0, 1.0),
        Some((low, high)) if high - low > 1e-9 * high.abs().max(low.abs()).max(1e-3) => (low, high),
        Some((low, high)) if high.abs().max(low.abs()) > 1e-9 => (low.min(0.0), high.max(0.0)),
        Some(_) => (0.0, 1.0),
    }
}

/// The least of 1, 2, 5, 10, 20, 50 and so on (and their tenths) that is not below `least`.
fn round_step(least: f64) -> f64 {
    let ten = 10f64.powf(least.log10().floor());
    let times = [1.0, 2.0, 5.0, 10.0].into_iter().find(|times| times * ten >= least * (1.0 - 1e-9));
    times.unwrap_or(10.0) * ten
}

#[cfg(test)]
mod tests {
    use super::*;

    fn numbers(axis: Axis) -> Vec<String> {
        axis.labelled().into_iter().map(|(_, text)| text).collect()
    }

    #[test]
    fn ticks_are_round_and_hold_the_values() {
        assert_eq!(numbers(Axis::of_values([0.0, 2.61].into_iter(), 5.0)), ["0", "1", "2", "3"]);
        assert_eq!(numbers(Axis::of_values([21.0, 33.0].into_iter(), 5.0)), ["20", "25", "30", "35"]);
        assert_eq!(numbers(Axis::of_values([0.0, 0.3].into_iter(), 4.0)), ["0.0", "0.1", "0.2", "0.3"]);
        assert_eq!(numbers(Axis::of_values([-3.0, 4.0].into_iter(), 4.0)), ["−4", "−2", "0", "2", "4"]);
    }

    #[test]
    fn days_tick_at_weeks() {
        assert_eq!(numbers(Axis::of_days([0.0, 42.0].into_iter(), 8.0)).join(" "), "0 7 14 21 28 35 42");
        assert_eq!(numbers(Axis::of_days([-3.0, 2.0].into_iter(), 8.0)).join(" "), "−3 −2 −1 0 1 2");
    }

    #[test]
    fn any_values_give_an_axis() {
        for values in [
            vec![],
            vec![f64::NAN],
            vec![f64::INFINITY, f64::NEG_INFINITY],
            vec![7.0],
            vec![-7.0, -7.0],
            vec![1e15, 1e15 + 0.25],
            vec![1e-300],
            vec![-1e15, 1e15],
        ] {
            for axis in
                [Axis::of_values(values.iter().copied(), 5.0), Axis::of_days(values.iter().copied(), 8.0)]
            {
                assert!(
                    axis.from.is_finite() && axis.to > axis.from && axis.step > 0.0,
                    "{values:?} {axis:?}"
                );
                assert!(axis.ticks().len() >= 2, "{values:?} {axis:?}");
                for value in values.iter().filter(|value| drawable(**value)) {
                    assert!(*value >= axis.from - 1.0 && *value <= axis.to + 1.0, "{values:?} {axis:?}");
                }
            }
        }
    }
}
