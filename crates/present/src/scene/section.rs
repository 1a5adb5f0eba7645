//! A house cut across: walls, curtain as far as it is let down, ridge, birds, wind, sun or stars.

use super::lettering::{LINE, SMALL, width, wrap};
use super::{Anchor, Canvas, PAPER, SHADE, WIDTH};

const MARGIN: f64 = 4.0;
/// Ground shown beside the house, at least.
const BESIDE: f64 = 46.0;
/// Room that sun or moon take in the right upper corner: across and down.
const SUN: [f64; 2] = [40.0, 42.0];
/// The greatest height of a house on paper.
const TALLEST: f64 = 150.0;
/// Walls are drawn so thick.
const WALL: f64 = 5.0;
/// Birds side by side at most.
const MOST_BIRDS: usize = 18;

/// What is drawn; lengths in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Across.
    pub width_m: f64,
    /// Of the eave.
    pub eave_m: f64,
    /// Of the ridge.
    pub ridge_m: f64,
    /// Of the solid wall below the curtain.
    pub half_wall_m: f64,
    /// How far the curtain is let down from the eave on each side.
    pub open_m: f64,
    /// Of a bird, across.
    pub bird_m: f64,
    /// Birds for each metre across.
    pub birds_per_m: f64,
    /// Whether the sun shines.
    pub sun: bool,
    /// Whether heaters burn.
    pub heats: bool,
    /// Whether the wind blows.
    pub wind: bool,
}

/// The words on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionWords {
    /// Outside, on the wind side: temperature and wind.
    pub outside: Vec<String>,
    /// Inside: temperature, dampness.
    pub inside: Vec<String>,
    /// Outside, on the lee side.
    pub lee: Vec<String>,
    /// How far each curtain is open, with its unit.
    pub open: String,
    /// The width with its unit.
    pub width: String,
    /// What it shows.
    pub alternative: String,
}

/// Where things are on paper.
struct Place {
    scale: f64,
    left: f64,
    floor: f64,
}

impl Place {
    fn x(&self, metres: f64) -> f64 {
        self.left + self.scale * metres
    }

    fn y(&self, metres: f64) -> f64 {
        self.floor - self.scale * metres
    }
}

impl Section {
    /// The drawing.
    pub fn draw(&self, words: &SectionWords) -> String {
        let house = self.kept();
        let scale = ((WIDTH - 2.0 * BESIDE) / house.width_m).min(TALLEST / house.ridge_m);
        let wide = scale * house.width_m;
        // Words about the air outside stand in the sky: over the eaves there is room on both sides.
        let room = WIDTH / 2.0 - 2.0 * MARGIN - SUN[0];
        let outside = wrapped(&words.outside, room);
        let lee = wrapped(&words.lee, room);
        let tall = |lines: &[String], from: f64| from + LINE * lines.len() as f64;
        let sky = tall(&outside, MARGIN).max(tall(&lee, SUN[1])) + 8.0;
        let place = Place { scale, left: (WIDTH - wide) / 2.0, floor: sky + scale * house.ridge_m };
        let below = place.floor + 12.0;
        let inside = wrapped(&words.inside, WIDTH - 2.0 * MARGIN);
        let open = wrap(&words.open, WIDTH - 2.0 * MARGIN);
        let words_top = below + 26.0;
        let end = words_top + LINE * (inside.len() + open.len()) as f64 + 6.0;
        let mut canvas = Canvas::new(end);
        house.draw_sky(&mut canvas);
        house.draw_ground(&mut canvas, &place);
        house.draw_house(&mut canvas, &place);
        house.draw_birds(&mut canvas, &place);
        house.draw_air(&mut canvas, &place);
        let beside = [(&outside, MARGIN, Anchor::Start, MARGIN), (&lee, WIDTH - MARGIN, Anchor::End, SUN[1])];
        for (lines, x, anchor, from) in beside {
            for (at, line) in lines.iter().enumerate() {
                canvas.letters([x, from + 11.0 + LINE * at as f64], line, anchor, SMALL);
            }
        }
        measure(&mut canvas, place.x(0.0), place.x(house.width_m), below, &words.width);
        for (at, line) in inside.iter().chain(&open).enumerate() {
            canvas.letters([WIDTH / 2.0, words_top + 11.0 + LINE * at as f64], line, Anchor::Middle, SMALL);
        }
        canvas.finish(&words.alternative)
    }

    /// Measures that can be drawn: nothing below nothing, the eave under the ridge, the curtain above the wall.
    fn kept(self) -> Section {
        let metres =
            |value: f64, low: f64, high: f64| if value.is_finite() { value.clamp(low, high) } else { low };
        let width_m = metres(self.width_m, 1.0, 200.0);
        let ridge_m = metres(self.ridge_m, 0.5, 20.0);
        let eave_m = metres(self.eave_m, 0.3, ridge_m);
        let half_wall_m = metres(self.half_wall_m, 0.0, eave_m);
        Section {
            width_m,
            ridge_m,
            eave_m,
            half_wall_m,
            open_m: metres(self.open_m, 0.0, eave_m - half_wall_m),
            bird_m: metres(self.bird_m, 0.02, 0.5),
            birds_per_m: metres(self.birds_per_m, 0.0, 50.0),
            ..self
        }
    }

    /// A sun with rays, or a moon.
    fn draw_sky(&self, canvas: &mut Canvas) {
        let [x, y] = [WIDTH - 30.0, 20.0];
        if !self.sun {
            canvas.circle([x, y, 9.0], SHADE, 1.0, None);
            canvas.circle([x - 5.0, y - 3.0, 7.5], "#fff", 0.0, None);
            return;
        }
        canvas.circle([x, y, 8.0], PAPER, 1.2, None);
        let rays: Vec<[f64; 4]> = (0..8)
            .map(|ray| f64::from(ray) * std::f64::consts::FRAC_PI_4)
            .map(|a| [x + 11.0 * a.cos(), y + 11.0 * a.sin(), x + 16.0 * a.cos(), y + 16.0 * a.sin()])
            .collect();
        canvas.strokes(&rays, 1.2);
    }

    fn draw_ground(&self, canvas: &mut Canvas, place: &Place) {
        canvas.line([MARGIN, place.floor], [WIDTH - MARGIN, place.floor], 1.5, None);
        // Litter on the slab.
        let (left, right) = (place.x(0.0), place.x(self.width_m));
        canvas.patch(
            &[
                [left, place.floor - 3.0],
                [right, place.floor - 3.0],
                [right, place.floor],
                [left, place.floor],
            ],
            SHADE,
        );
    }

    fn draw_house(&self, canvas: &mut Canvas, place: &Place) {
        let (left, right, middle) = (place.x(0.0), place.x(self.width_m), place.x(self.width_m / 2.0));
        let (eave, ridge) = (place.y(self.eave_m), place.y(self.ridge_m));
        let out = (0.35 * place.scale).min(14.0);
        let drop = (self.ridge_m - self.eave_m) / (self.width_m / 2.0) * out;
        canvas.polyline(&[[left - out, eave + drop], [middle, ridge], [right + out, eave + drop]], 3.0, None);
        let top_of_wall = place.y(self.half_wall_m);
        for (x, from_m) in [(left - WALL, 0.0), (right, self.width_m)] {
            canvas.rect(
                [x, top_of_wall, WALL, place.floor - top_of_wall],
                "#5a5140",
                Some([from_m, 0.0, 0.0, self.half_wall_m]),
            );
            // The curtain hangs from where it is let down to onto the wall; a thin post stands through the opening.
            let curtain_m = self.eave_m - self.open_m;
            let curtain = place.y(curtain_m);
            canvas.rect(
                [x + 1.0, curtain, WALL - 2.0, top_of_wall - curtain],
                SHADE,
                Some([from_m, self.half_wall_m, 0.0, curtain_m - self.half_wall_m]),
            );
            let post = x + WALL / 2.0;
            canvas.line([post, eave], [post, curtain], 0.8, Some("2 2"));
        }
        if self.heats {
            let hang = place.y((0.9_f64).min(self.eave_m));
            canvas.line([middle, ridge], [middle, hang], 0.8, None);
            canvas.path(
                &[[middle - 13.0, hang + 6.0], [middle, hang], [middle + 13.0, hang + 6.0]],
                1.5,
                true,
                SHADE,
            );
            let rays =
                [-9.0, -3.0, 3.0, 9.0].map(|x| [middle + x, hang + 9.0, middle + 1.6 * x, hang + 16.0]);
            canvas.strokes(&rays, 1.0);
        }
    }

    fn draw_birds(&self, canvas: &mut Canvas, place: &Place) {
        let many = (self.birds_per_m * self.width_m).round() as usize;
        let count = many.min(MOST_BIRDS).min((self.width_m / self.bird_m) as usize);
        let radius = (self.bird_m / 2.0 * place.scale).clamp(1.2, 8.0);
        for at in 0..count {
            let x = place.x(self.width_m * (at as f64 + 0.5) / count as f64);
            let body = [x, place.floor - 3.0 - radius];
            canvas.circle([body[0], body[1], radius], PAPER, 1.0, None);
            canvas.circle([x + radius, body[1] - 0.7 * radius, 0.55 * radius], PAPER, 1.0, None);
        }
    }

    /// Wind in through one opening and out through the other; nothing where it is shut.
    fn draw_air(&self, canvas: &mut Canvas, place: &Place) {
        if self.open_m <= 0.0 {
            return;
        }
        let y = place.y(self.eave_m - self.open_m / 2.0);
        let (left, right) = (place.x(0.0), place.x(self.width_m));
        let long = (0.12 * place.scale * self.width_m).clamp(12.0, 22.0);
        for x in [left, right] {
            arrow(canvas, x - long, x + long, y);
        }
        if self.wind {
            for above in [-8.0, 8.0] {
                canvas.line([MARGIN + 2.0, y + above], [left - long - 6.0, y + above], 0.8, Some("6 3"));
            }
        }
    }
}

fn wrapped(lines: &[String], room: f64) -> Vec<String> {
    lines.iter().flat_map(|line| wrap(line, room)).collect()
}

fn arrow(canvas: &mut Canvas, from: f64, to: f64, y: f64) {
    canvas.lined_polyline(&[[from, y], [to, y]], 1.8, None);
    canvas.lined_polyline(&[[to - 6.0, y - 4.0], [to, y], [to - 6.0, y + 4.0]], 1.8, None);
}

/// A measured length with its words below, kept inside.
fn measure(canvas: &mut Canvas, from: f64, to: f64, y: f64, text: &str) {
    canvas.line([from, y], [to, y], 1.0, None);
    for x in [from, to] {
        canvas.line([x, y - 4.0], [x, y + 4.0], 1.0, None);
    }
    let half = width(text, SMALL) / 2.0;
    let middle = f64::midpoint(from, to).clamp(half, (WIDTH - half).max(half));
    canvas.letters([middle, y + 14.0], text, Anchor::Middle, SMALL);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::inspect::check;

    fn house() -> Section {
        Section {
            width_m: 9.0,
            eave_m: 2.4,
            ridge_m: 3.6,
            half_wall_m: 0.6,
            open_m: 0.42,
            bird_m: 0.18,
            birds_per_m: 4.0,
            sun: true,
            heats: true,
            wind: true,
        }
    }

    fn words() -> SectionWords {
        SectionWords {
            outside: vec!["wind side".into(), "11.0 °C".into(), "1.5 m/s".into()],
            inside: vec!["Inside 24.3 °C, damp 64 %, litter 22.0 °C".into()],
            lee: vec!["lee side".into()],
            open: "Both curtains 0.42 m down from the top".into(),
            width: "9.00 m".into(),
            alternative: "The house <cut> across".into(),
        }
    }

    #[test]
    fn the_curtain_is_drawn_to_scale() {
        let svg = house().draw(&words());
        check(&svg);
        assert!(svg.contains("data-metres=\"0.000 0.600 0.000 1.380\""), "{svg}");
        assert!(svg.contains("data-metres=\"9.000 0.000 0.000 0.600\""), "{svg}");
        // On paper the solid wall and the curtain stand in the ratio of their heights.
        let tall: Vec<f64> = svg
            .split("<rect")
            .skip(1)
            .map(|tag| tag.split("height=\"").nth(1).unwrap().split('"').next().unwrap().parse().unwrap())
            .collect();
        assert!((tall[1] / tall[0] - 1.38 / 0.6).abs() < 0.02, "{tall:?}");
        let shut = Section { open_m: 0.0, ..house() }.draw(&words());
        assert!(shut.contains("data-metres=\"0.000 0.600 0.000 1.800\""));
    }

    #[test]
    fn any_house_can_be_drawn() {
        let whole = house();
        for (width_m, ridge_m, eave_m) in
            [(3.0, 3.0, 1.8), (30.0, 5.0, 2.4), (1.0, 6.0, 6.0), (9.0, f64::NAN, 2.0)]
        {
            for open_m in [0.0, 0.05, 1.8, 99.0, f64::NAN] {
                for dark in [false, true] {
                    let section = Section {
                        width_m,
                        ridge_m,
                        eave_m,
                        open_m,
                        sun: !dark,
                        heats: dark,
                        wind: dark,
                        ..whole
                    };
                    check(&section.draw(&words()));
                }
            }
        }
    }
}
