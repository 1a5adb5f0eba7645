//! Lines by day of age: weight, feed, temperature, hours of light.

use super::axis::{Axis, drawable};
use super::frame::{Frame, Parts};
pub use super::lanes::Mark;
use super::legend::Sample;
use super::{Canvas, INK, SHADE};

/// How the values of a line are joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// An unbroken line.
    Solid,
    /// A dashed line.
    Dashed,
    /// A dotted line.
    Dotted,
    /// Dots that are not joined: what was measured.
    Dots,
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    /// What it is.
    pub label: String,
    /// How it is drawn.
    pub stroke: Stroke,
    /// Whether a value holds until the next day with a value, as hours of light do, instead of changing evenly.
    pub stepped: bool,
    /// Day and value, days ascending.
    pub points: Vec<[f64; 2]>,
}

/// A likely range.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// What it is.
    pub label: String,
    /// Day, low and high, days ascending.
    pub points: Vec<[f64; 3]>,
}

/// A line straight across that is not to be passed.
#[derive(Clone, Debug, PartialEq)]
pub struct Limit {
    /// What it is.
    pub label: String,
    /// Where it lies.
    pub value: f64,
}

/// What is drawn. Values that are not finite numbers are left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chart {
    /// The lines, one to three.
    pub series: Vec<Series>,
    /// A range behind them.
    pub band: Option<Band>,
    /// Days that something happens on.
    pub marks: Vec<Mark>,
    /// A line across.
    pub limit: Option<Limit>,
    /// Whether the upright axis begins at zero, as it should for weights and amounts but not for temperatures.
    pub from_zero: bool,
}

/// How far single values may be off: an upright stroke through each.
#[derive(Clone, Debug, PartialEq)]
pub struct Spans {
    /// What they mean.
    pub label: String,
    /// Day, low and high.
    pub points: Vec<[f64; 3]>,
}

/// The words around the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartWords {
    /// The title of the upright axis, with its unit.
    pub up: String,
    /// The title of the axis below.
    pub across: String,
    /// What it shows.
    pub alternative: String,
}

/// How a limit is drawn: thicker than data, and broken as no data is.
pub(super) const LIMIT: (f64, Option<&str>) = (2.0, Some("10 3 2 3"));

impl Stroke {
    fn dashes(self) -> Option<&'static str> {
        match self {
            Stroke::Solid | Stroke::Dots => None,
            Stroke::Dashed => Some("7 4"),
            Stroke::Dotted => Some("2 3"),
        }
    }

    fn sample(self) -> Sample {
        match self {
            Stroke::Dots => Sample::Dot,
            _ => Sample::Line(2.0, self.dashes()),
        }
    }
}

impl Series {
    fn drawn(&self) -> impl Iterator<Item = [f64; 2]> {
        self.points.iter().copied().filter(|point| point.iter().all(|value| drawable(*value)))
    }

    fn draw(&self, canvas: &mut Canvas, frame: &Frame) {
        let places: Vec<[f64; 2]> = self.drawn().map(|[day, value]| [frame.x(day), frame.y(value)]).collect();
        // One value is no line.
        if self.stroke == Stroke::Dots || places.len() == 1 {
            for [x, y] in places {
                canvas.circle([x, y, 2.6], INK, 0.0, None);
            }
        } else if !places.is_empty() {
            let line = if self.stepped { stepped(&places) } else { places };
            canvas.polyline(&line, 2.0, self.stroke.dashes());
        }
    }
}

impl Band {
    fn drawn(&self) -> impl Iterator<Item = [f64; 3]> {
        self.points.iter().copied().filter(|point| point.iter().all(|value| drawable(*value)))
    }
}

impl Spans {
    fn drawn(&self) -> impl Iterator<Item = [f64; 3]> {
        self.points.iter().copied().filter(|point| point.iter().all(|value| drawable(*value)))
    }

    fn draw(&self, canvas: &mut Canvas, frame: &Frame) {
        for [day, low, high] in self.drawn() {
            draw_span(canvas, frame.x(day), frame.y(low), frame.y(high));
        }
    }
}

/// An upright stroke with a short one across at each end, within the drawing.
pub(super) fn draw_span(canvas: &mut Canvas, x: f64, low: f64, high: f64) {
    const HALF: f64 = 3.5;
    let (left, right) = ((x - HALF).max(0.0), (x + HALF).min(super::WIDTH));
    canvas.strokes(&[[x, low, x, high], [left, low, right, low], [left, high, right, high]], 1.2);
}

impl Chart {
    /// The drawing.
    pub fn draw(&self, words: &ChartWords) -> String {
        self.draw_with(words, None)
    }

    /// The drawing of a day, where what is counted below are hours.
    pub fn draw_by_hour(&self, words: &ChartWords) -> String {
        self.draw_over(Axis::of_hours(), words, None)
    }

    /// The drawing, with how far single values may be off.
    pub fn draw_with(&self, words: &ChartWords, spans: Option<&Spans>) -> String {
        self.draw_over(Axis::of_days(self.days(), 8.0), words, spans)
    }

    fn draw_over(&self, columns: Axis, words: &ChartWords, spans: Option<&Spans>) -> String {
        let ends = spans.into_iter().flat_map(Spans::drawn).flat_map(|[_, low, high]| [low, high]);
        let sample = spans.map(|spans| (Sample::Span, spans.label.as_str()));
        let (mut canvas, frame) = Frame::begin(&Parts {
            legend: self.legend().into_iter().chain(sample).collect(),
            up: &words.up,
            across: &words.across,
            rows: Axis::of_values(self.values().chain(ends), 5.0),
            columns,
            ticks: columns.labelled(),
            marks: &self.marks,
        });
        if let Some(band) = &self.band {
            let places: Vec<[f64; 3]> =
                band.drawn().map(|[day, low, high]| [frame.x(day), frame.y(low), frame.y(high)]).collect();
            draw_band(&mut canvas, &places);
        }
        if let Some(limit) = self.limit.as_ref().filter(|limit| drawable(limit.value)) {
            frame.across(&mut canvas, limit.value, LIMIT.0, LIMIT.1);
        }
        if let Some(spans) = spans {
            spans.draw(&mut canvas, &frame);
        }
        for series in &self.series {
            series.draw(&mut canvas, &frame);
        }
        canvas.finish(&words.alternative)
    }

    fn legend(&self) -> Vec<(Sample, &str)> {
        let series = self.series.iter().map(|series| (series.stroke.sample(), series.label.as_str()));
        let band = self.band.iter().map(|band| (Sample::Band, band.label.as_str()));
        let limit = self.limit.iter().map(|limit| (Sample::Line(LIMIT.0, LIMIT.1), limit.label.as_str()));
        series.chain(band).chain(limit).collect()
    }

    fn days(&self) -> impl Iterator<Item = f64> {
        let series = self.series.iter().flat_map(Series::drawn).map(|[day, _]| day);
        let band = self.band.iter().flat_map(Band::drawn).map(|[day, ..]| day);
        series.chain(band).chain(self.marks.iter().map(|mark| mark.day))
    }

    fn values(&self) -> impl Iterator<Item = f64> {
        let series = self.series.iter().flat_map(Series::drawn).map(|[_, value]| value);
        let band = self.band.iter().flat_map(Band::drawn).flat_map(|[_, low, high]| [low, high]);
        let limit = self.limit.iter().map(|limit| limit.value);
        series.chain(band).chain(limit).chain(self.from_zero.then_some(0.0))
    }
}

/// A shaded band with upright strokes, given as x, y of the low edge, y of the high edge.
pub(super) fn draw_band(canvas: &mut Canvas, places: &[[f64; 3]]) {
    const GAP: f64 = 5.0;
    let low: Vec<[f64; 2]> = places.iter().map(|[x, low, _]| [*x, *low]).collect();
    let high: Vec<[f64; 2]> = places.iter().map(|[x, _, high]| [*x, *high]).collect();
    if places.len() < 2 {
        canvas.strokes(&places.iter().map(|[x, low, high]| [*x, *low, *x, *high]).collect::<Vec<_>>(), 2.0);
        return;
    }
    canvas.patch(&low.iter().chain(high.iter().rev()).copied().collect::<Vec<_>>(), SHADE);
    let strokes: Vec<[f64; 4]> = places.windows(2).flat_map(|pair| upright(pair[0], pair[1], GAP)).collect();
    canvas.strokes(&strokes, 0.6);
    canvas.polyline(&low, 0.8, None);
    canvas.polyline(&high, 0.8, None);
}

/// Upright strokes from the low to the high edge at multiples of the gap.
fn upright(from: [f64; 3], to: [f64; 3], gap: f64) -> Vec<[f64; 4]> {
    let first = (from[0] / gap).ceil() as i64;
    let end = (to[0] / gap).ceil() as i64;
    let at = |x: f64, edge: usize| {
        let share = (x - from[0]) / (to[0] - from[0]);
        from[edge] + share * (to[edge] - from[edge])
    };
    (first..end).map(|stroke| stroke as f64 * gap).map(|x| [x, at(x, 1), x, at(x, 2)]).collect()
}

/// A line that holds its height until the next place.
fn stepped(places: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let before = places.windows(2).map(|pair| [pair[1][0], pair[0][1]]);
    let corners = places.iter().copied().zip(before.map(Some).chain([None]));
    corners.flat_map(|(place, corner)| [Some(place), corner]).flatten().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn words() -> ChartWords {
        ChartWords {
            up: "Live weight, kg".into(),
            across: "Day of age".into(),
            alternative: "Weight <by> day & \"age\"".into(),
        }
    }

    fn series(label: &str, stroke: Stroke, points: Vec<[f64; 2]>) -> Series {
        Series { label: label.into(), stroke, stepped: false, points }
    }

    fn full() -> Chart {
        let line =
            |factor: f64| (0..=42).map(|day| [f64::from(day), 0.04 + factor * f64::from(day)]).collect();
        Chart {
            series: vec![
                series("Expected", Stroke::Solid, line(0.06)),
                series("The standard's objective & aim", Stroke::Dashed, line(0.065)),
                series("Weighed <by hand>", Stroke::Dots, vec![[7.0, 0.2], [14.0, 0.5]]),
            ],
            band: Some(Band {
                label: "Likely range".into(),
                points: (0..=42).map(f64::from).map(|day| [day, 0.05 * day, 0.07 * day]).collect(),
            }),
            marks: [
                (10.0, "grower feed from here"),
                (11.0, "vaccine"),
                (24.0, "finisher feed from here"),
                (40.0, "sale"),
            ]
            .map(|(day, label)| Mark { day, label: label.into() })
            .into(),
            limit: Some(Limit { label: "What the buyer takes".into(), value: 2.4 }),
            from_zero: true,
        }
    }

    #[test]
    fn everything_stays_apart_and_inside() {
        let svg = full().draw(&words());
        check(&svg);
        assert!(
            svg.contains("Weighed &lt;by hand&gt;") && svg.contains("<title>Weight &lt;by&gt; day &amp;")
        );
    }

    #[test]
    fn a_span_widens_the_axis_and_stands_in_the_legend() {
        let chart =
            Chart { series: vec![series("Weighed", Stroke::Dots, vec![[7.0, 2.0]])], ..Chart::default() };
        let spans =
            Spans { label: "likely range".into(), points: vec![[7.0, 1.0, 9.0], [8.0, f64::NAN, 2.0]] };
        let svg = chart.draw_with(&words(), Some(&spans));
        check(&svg);
        assert!(svg.contains("likely range") && svg.contains(">10<"), "{svg}");
    }

    #[test]
    fn any_series_can_be_drawn() {
        let huge: Vec<[f64; 2]> = (0..4000).map(|day| [f64::from(day), 1e14 * f64::from(day)]).collect();
        for points in [
            vec![],
            vec![[3.0, 7.0]],
            (0..9).map(|day| [f64::from(day), 5.0]).collect(),
            vec![[0.0, f64::NAN], [f64::INFINITY, 2.0], [2.0, f64::MAX]],
            vec![[0.0, -1e15], [1.0, 1e15]],
            vec![[4.0, 1.0], [4.0, 2.0]],
            huge,
        ] {
            for stroke in [Stroke::Solid, Stroke::Dashed, Stroke::Dotted, Stroke::Dots] {
                for stepped in [false, true] {
                    let band = Band {
                        label: "range".into(),
                        points: points.iter().map(|[day, value]| [*day, *value, value + 1.0]).collect(),
                    };
                    let series = Series { stepped, ..series("line", stroke, points.clone()) };
                    let chart = Chart {
                        series: vec![series],
                        band: Some(band),
                        marks: vec![Mark { day: f64::NAN, label: "never".into() }],
                        limit: Some(Limit { label: "limit".into(), value: f64::INFINITY }),
                        from_zero: false,
                    };
                    check(&chart.draw(&words()));
                }
            }
        }
    }

    #[test]
    fn hours_of_light_change_at_once() {
        assert_eq!(
            stepped(&[[0.0, 24.0], [3.0, 18.0], [9.0, 20.0]]),
            [[0.0, 24.0], [3.0, 24.0], [3.0, 18.0], [9.0, 18.0], [9.0, 20.0]]
        );
    }

    #[test]
    fn marks_close_together_keep_their_labels_apart() {
        for gap in 1..6 {
            let marks = (0..9)
                .map(|at| Mark { day: f64::from(at * gap), label: format!("mark number {at} of nine") })
                .collect();
            let chart = Chart { marks, ..full() };
            check(&chart.draw(&words()));
        }
    }
}
