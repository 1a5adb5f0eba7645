//! Where do brooders, feeders and drinkers stand, ring by ring and over the whole floor?

use advice::outfit::{self, Counts, Placed};
use advice::plan::Widening;
use quantity::Length;

use super::*;
use crate::scene::hall::{Hall, HallWords};
use crate::scene::outfit::{Outfit, OutfitWords};
use crate::scene::widening::{WidenedRing, WideningRings, WideningWords};

impl Shown<'_> {
    /// Feeders and drinkers of the first weeks.
    pub(super) fn chick_counts(&self) -> Counts {
        Counts::of_chicks(&self.plan.outcome)
    }

    /// Feeders and drinkers of the grown birds.
    pub(super) fn hung_counts(&self) -> Counts {
        Counts { feeders: self.number("space.feeders"), drinkers: self.number("space.drinkers") }
    }

    pub(super) fn across(&self, length: Length) -> String {
        show::quantity(length.in_metres(), Unit::Metre, 2, self.viewer)
    }

    /// What the pieces of a ring are called.
    pub(super) fn ring_pieces(&self, outfit: &outfit::Outfit) -> OutfitWords {
        let second = self.plan.answers.choice("brooding.second_brooder").is_some();
        OutfitWords {
            brooder: self.words.plain(if second { "piece-brooder-of-either-kind" } else { "piece-brooder" }),
            feeder: self.piece(outfit.feeder),
            drinker: self.piece(outfit.drinker),
        }
    }

    /// What a piece is called, with its size.
    fn piece(&self, piece: outfit::Piece) -> String {
        let size = self.across(piece.across);
        self.words.say(&format!("piece-{}", piece.name), &[("size", size.into())])
    }

    /// The ring at each step, until the guards are gone; not drawn where it never widens.
    pub(super) fn draw_widening(&self, counts: Counts) -> Option<Drawing> {
        let rings: Vec<(&Widening, outfit::StandingRing)> = self
            .plan
            .widening
            .iter()
            .filter_map(|step| Some((step, self.plan.widened_ring(step, counts)?)))
            .collect();
        let [(_, first), .., (_, last)] = rings.as_slice() else { return None };
        let alternative = say!(
            self.words,
            "drawing-widening",
            steps = rings.len().to_string(),
            first = self.across(first.diameter),
            last = self.across(last.diameter),
        );
        let words =
            WideningWords { outfit: self.ring_pieces(&first.outfit), alternative: alternative.clone() };
        let steps = rings.iter().map(|(step, ring)| self.widened(step, ring, counts)).collect();
        let mut data = self.drawing_data(&[]);
        data.rows.extend(rings.iter().map(|(step, ring)| {
            let how = self.standing(&step.standing);
            let diameter = self.across(ring.diameter);
            vec![
                self.starting(step.from_day),
                say!(self.words, "drawing-widening-ring", how = how, diameter = diameter),
            ]
        }));
        Some(Drawing {
            name: "widening",
            svg: WideningRings { steps }.draw(&words)?,
            caption: self.words.plain("drawing-widening-caption"),
            alternative,
            data,
            width_percent: 60,
        })
    }

    /// From which day of age a step holds.
    pub(super) fn starting(&self, day: i32) -> String {
        say!(self.words, "scene-from-day", day = day.to_string())
    }

    fn widened(&self, step: &Widening, ring: &outfit::StandingRing, counts: Counts) -> WidenedRing {
        let placed = &ring.outfit.placed;
        let diameter = self.across(ring.diameter);
        let wide = say!(self.words, "ring-from-day", day = step.from_day.to_string(), diameter = diameter);
        let mut lines = vec![wide, self.standing(&step.standing)];
        if counts.any() {
            let (feeders, drinkers) = (placed.feeders.len(), placed.drinkers.len());
            lines.push(say!(
                self.words,
                "pieces-standing",
                feeders = feeders.to_string(),
                drinkers = drinkers.to_string(),
            ));
        }
        lines.extend(self.left(placed));
        WidenedRing {
            diameter: ring.diameter.in_metres(),
            corners: ring.corners,
            outfit: drawn(&ring.outfit),
            lines,
        }
    }

    /// How many find no place, where any does not.
    fn left(&self, placed: &Placed) -> Option<String> {
        let left = placed.left();
        (left > 0).then(|| say!(self.words, "pieces-left", n = left.to_string(), count = left as f64))
    }

    /// The whole floor with what hangs over it, once the counts are known.
    pub(super) fn draw_hall(&self, counts: Counts) -> Option<Drawing> {
        let answer = |key| self.plan.answers.number(key);
        let (length, width) = (answer("house.length_m")?, answer("house.width_m")?);
        let hung = self.plan.hung(counts).filter(|_| counts.any())?;
        let metres = |value| self.across(Length::metres(value));
        let nipples = if self.plan.has_nipples() { "yes" } else { "no" };
        let alternative = say!(
            self.words,
            "drawing-hall",
            length = metres(length),
            width = metres(width),
            feeders = hung.placed.feeders.len().to_string(),
            feeder = self.across(hung.feeder.across),
            drinkers = hung.placed.drinkers.len().to_string(),
            drinker = self.across(hung.drinker.across),
            nipples = nipples,
        );
        let words = HallWords {
            length: metres(length),
            width: metres(width),
            outfit: OutfitWords {
                brooder: String::new(),
                feeder: self.piece(hung.feeder),
                drinker: self.piece(hung.drinker),
            },
            alternative: alternative.clone(),
        };
        let mut data = self.drawing_data(&[]);
        data.rows.extend(self.placed_rows(&hung.placed));
        Some(Drawing {
            name: "hall",
            svg: Hall { length, width, outfit: drawn(&hung) }.draw(&words),
            caption: say!(self.words, "drawing-hall-caption", nipples = nipples),
            alternative,
            data,
            width_percent: 60,
        })
    }

    /// How many stand and how many do not, as rows of a drawing's data.
    pub(super) fn placed_rows(&self, placed: &Placed) -> Vec<Vec<String>> {
        let row = |key: String, count: usize| vec![key, count.to_string()];
        vec![
            row(self.words.plain("drawing-feeders"), placed.feeders.len()),
            row(self.words.plain("drawing-drinkers"), placed.drinkers.len()),
            row(self.words.plain("drawing-left"), placed.left()),
        ]
    }
}

/// Places as the drawing takes them.
pub(super) fn drawn(outfit: &outfit::Outfit) -> Outfit {
    let metres = |places: &[outfit::Place]| {
        places.iter().map(|place| [place.x.in_metres(), place.y.in_metres()]).collect()
    };
    Outfit {
        brooders: metres(&outfit.placed.brooders),
        feeders: metres(&outfit.placed.feeders),
        drinkers: metres(&outfit.placed.drinkers),
        brooder: outfit.brooder.in_metres(),
        feeder: outfit.feeder.across.in_metres(),
        drinker: outfit.drinker.across.in_metres(),
    }
}

#[cfg(test)]
mod tests {
    use quantity::Source;

    use super::*;
    use crate::scene::inspect::check;

    const PLAN: &str = "
[farm]
currency = \"XTS\"
[house]
length_m = 18.0
width_m = 9.0
[batch]
chicks = 1600
[guard]
sheet_length_m = 2.44
sheet_width_m = 1.22
strips_per_sheet = 2
walkway_m = 0.5
overlap_m = 0.10
chicks_per_m2 = 50
chicks_per_ring = 400
";

    fn plan() -> Plan {
        let raws = advice::plan_file::read(PLAN).unwrap();
        advice::plan::work_out(advice::plan::read(&raws, Source::File, false).answers)
    }

    /// How many circles of a radius the drawing holds, in metres as told by itself.
    fn circles(svg: &str, radius: &str) -> usize {
        svg.matches(&format!(" {radius}\"")).count()
    }

    #[test]
    fn every_ring_shows_its_share_of_trays_and_founts() {
        let (plan, viewer) = (plan(), Viewer::plain());
        let shown = Shown::new(&plan, &viewer);
        let counts = Counts { feeders: Some(26.0), drinkers: Some(24.0) };
        let drawing = shown.draw_floor(counts).unwrap();
        check(&drawing.svg);
        // Four rings with a brooder, seven trays and six founts each; as two are joined, they bring theirs.
        // What stands in a ring is drawn once on each floor, and shown again in each other ring.
        let floors: Vec<&str> = drawing.svg.split("<rect").skip(1).collect();
        assert_eq!(floors.len(), plan.on_floor().len());
        for floor in floors {
            let rings = 1 + floor.matches("<use").count();
            let [brooders, trays, founts] =
                ["0.400", "0.200", "0.125"].map(|radius| circles(floor, radius) * rings);
            assert_eq!(brooders, 4);
            assert!((26..=28).contains(&trays) && founts == 24, "{trays} trays, {founts} founts");
        }
        let bare = shown.draw_floor(Counts::default()).unwrap();
        check(&bare.svg);
        assert_eq!(circles(&bare.svg, "0.200"), 0);
        assert_ne!(bare.alternative, drawing.alternative);
    }

    #[test]
    fn each_step_of_widening_is_drawn() {
        let (plan, viewer) = (plan(), Viewer::plain());
        let shown = Shown::new(&plan, &viewer);
        let counts = Counts { feeders: Some(400.0), drinkers: Some(24.0) };
        let drawing = shown.draw_widening(counts).unwrap();
        check(&drawing.svg);
        let steps = plan.widening.iter().filter(|step| matches!(step.standing, Standing::Rings { .. }));
        assert_eq!(drawing.data.rows.len(), steps.count());
        let too_many = shown.words.say("pieces-left", &[("n", "7".into()), ("count", 7.0.into())]);
        let says_so = too_many.trim_start_matches('7').to_owned();
        assert!(drawing.svg.contains(&says_so), "{}", drawing.svg);
    }

    #[test]
    fn a_hall_is_drawn_once_something_hangs_in_it() {
        let (plan, viewer) = (plan(), Viewer::plain());
        let shown = Shown::new(&plan, &viewer);
        assert_eq!(shown.draw_hall(Counts::default()), None);
        let drawing = shown.draw_hall(Counts { feeders: Some(40.0), drinkers: Some(20.0) }).unwrap();
        check(&drawing.svg);
        assert_eq!(["0.190", "0.200"].map(|radius| circles(&drawing.svg, radius)), [40, 20]);
    }
}
