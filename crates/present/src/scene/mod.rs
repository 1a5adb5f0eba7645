//! Drawings to scale, laid out once into SVG that reads the same on a phone, in black and white, and on paper.
//!
//! Things drawn to scale carry their place and size in metres in `data-` attributes, so that a test (or anybody) can
//! measure the drawing instead of trusting it.

use maud::{Markup, PreEscaped, html};

mod axis;
pub mod bars;
pub mod chart;
pub mod columns;
pub mod cutting;
pub mod floor;
mod frame;
pub mod hall;
pub mod heat_balance;
pub mod histogram;
#[cfg(test)]
pub(crate) mod inspect;
mod lanes;
mod legend;
mod lettering;
pub mod outfit;
pub mod ring;
pub mod section;
pub mod shelf;
pub mod spread;
pub mod stock;
pub mod tankfuls;
mod texture;
pub mod timeline;
pub mod widening;

/// Width of every drawing in its own units: a phone's screen less margins.
pub const WIDTH: f64 = 340.0;

/// Ink of lines and letters.
const INK: &str = "#111";
/// Fill of floors and sheets.
const PAPER: &str = "#f6f1e4";
/// Fill of what is put on them.
const SHADE: &str = "#d9cba3";
/// Lines that only guide the eye.
const FAINT: &str = "#999";

/// A drawing being made.
pub struct Canvas {
    height: f64,
    shapes: Vec<Markup>,
}

/// Where a text hangs on its point.
#[derive(Clone, Copy)]
pub enum Anchor {
    /// Begins there.
    Start,
    /// Is centred there.
    Middle,
    /// Ends there.
    End,
}

impl Canvas {
    /// An empty drawing of a height.
    pub fn new(height: f64) -> Canvas {
        Canvas { height, shapes: Vec::new() }
    }

    /// A rectangle; `metres` are x, y, width, height of what it stands for.
    pub fn rect(&mut self, at: [f64; 4], fill: &str, metres: Option<[f64; 4]>) {
        let [x, y, w, h] = at.map(tenth);
        let data = metres.map(|[x, y, w, h]| format!("{x:.3} {y:.3} {w:.3} {h:.3}"));
        self.shapes.push(html! {
            rect x=(x) y=(y) width=(w) height=(h) fill=(fill) stroke=(INK) stroke-width="1.5" data-metres=[data] {}
        });
    }

    /// A circle; `metres` are x, y and radius of what it stands for.
    pub fn circle(&mut self, at: [f64; 3], fill: &str, stroke_width: f64, metres: Option<[f64; 3]>) {
        let [x, y, r] = at.map(tenth);
        let data = metres.map(|[x, y, r]| format!("{x:.3} {y:.3} {r:.3}"));
        self.shapes.push(html! {
            circle cx=(x) cy=(y) r=(r) fill=(fill) stroke=(INK) stroke-width=(stroke_width) data-metres=[data] {}
        });
    }

    /// Shapes under a name by which they can be shown again; no other shapes of a page may have it.
    pub fn named(&mut self, name: &str, draw: impl FnOnce(&mut Canvas)) {
        let before = self.shapes.len();
        draw(self);
        let shapes = self.shapes.split_off(before);
        self.shapes.push(html! { g id=(name) { @for shape in &shapes { (shape) } } });
    }

    /// Shapes of that name once more, so far from where they stand.
    pub fn again(&mut self, name: &str, by: [f64; 2]) {
        let [x, y] = by.map(tenth);
        self.shapes.push(html! { use href=(format!("#{name}")) x=(x) y=(y) {} });
    }

    /// A line.
    pub fn line(&mut self, from: [f64; 2], to: [f64; 2], stroke_width: f64, dashes: Option<&str>) {
        let ([x1, y1], [x2, y2]) = (from.map(tenth), to.map(tenth));
        self.shapes.push(html! {
            line x1=(x1) y1=(y1) x2=(x2) y2=(y2) stroke=(INK) stroke-width=(stroke_width) stroke-dasharray=[dashes] {}
        });
    }

    /// A line through points, not filled.
    pub fn path(&mut self, points: &[[f64; 2]], stroke_width: f64, closed: bool, fill: &str) {
        let d = path_data(points, closed);
        self.shapes.push(html! {
            path d=(d) fill=(fill) stroke=(INK) stroke-width=(stroke_width) stroke-linejoin="round" {}
        });
    }

    /// A line through points, in ink.
    pub fn polyline(&mut self, points: &[[f64; 2]], stroke_width: f64, dashes: Option<&str>) {
        self.stroke(points, INK, stroke_width, dashes);
    }

    /// A line through points that is seen on dark fills too: a light line lies below it.
    pub fn lined_polyline(&mut self, points: &[[f64; 2]], stroke_width: f64, dashes: Option<&str>) {
        self.stroke(points, PAPER, stroke_width + 3.0, None);
        self.stroke(points, INK, stroke_width, dashes);
    }

    fn stroke(&mut self, points: &[[f64; 2]], colour: &str, stroke_width: f64, dashes: Option<&str>) {
        let d = path_data(points, false);
        self.shapes.push(html! {
            path d=(d) fill="none" stroke=(colour) stroke-width=(stroke_width) stroke-dasharray=[dashes] stroke-linejoin="round" {}
        });
    }

    /// A filled shape without an outline.
    pub fn patch(&mut self, corners: &[[f64; 2]], fill: &str) {
        self.shapes.push(html! { path d=(path_data(corners, true)) fill=(fill) stroke="none" {} });
    }

    /// Many thin strokes as one shape: hatching. Each is x and y of its two ends.
    pub fn strokes(&mut self, strokes: &[[f64; 4]], stroke_width: f64) {
        if strokes.is_empty() {
            return;
        }
        let mut d = String::new();
        for [x1, y1, x2, y2] in strokes.iter().map(|stroke| stroke.map(tenth)) {
            d.push_str(&format!("M{x1} {y1}L{x2} {y2}"));
        }
        self.shapes.push(html! { path d=(d) fill="none" stroke=(INK) stroke-width=(stroke_width) {} });
    }

    /// A thin line that only guides the eye.
    pub fn guide(&mut self, from: [f64; 2], to: [f64; 2]) {
        let ([x1, y1], [x2, y2]) = (from.map(tenth), to.map(tenth));
        self.shapes
            .push(html! { line x1=(x1) y1=(y1) x2=(x2) y2=(y2) stroke=(FAINT) stroke-width="0.75" {} });
    }

    /// Text.
    pub fn text(&mut self, at: [f64; 2], text: &str, anchor: Anchor) {
        self.letters(at, text, anchor, 12.0);
    }

    /// Text of a size.
    pub fn letters(&mut self, at: [f64; 2], text: &str, anchor: Anchor, size: f64) {
        let [x, y] = at.map(tenth);
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        self.shapes.push(html! {
            text x=(x) y=(y) text-anchor=(anchor) font-size=(size) font-family="Noto Sans, sans-serif" fill=(INK) { (text) }
        });
    }

    /// A measured length below or above something: a line with end marks and its text.
    pub fn measure_across(&mut self, from: f64, to: f64, y: f64, text: &str) {
        self.line([from, y], [to, y], 1.0, None);
        for x in [from, to] {
            self.line([x, y - 4.0], [x, y + 4.0], 1.0, None);
        }
        self.text([(from + to) / 2.0, y + 14.0], text, Anchor::Middle);
    }

    /// A measured length beside something, its text on a line of its own above the mark's top.
    pub fn measure_down(&mut self, x: f64, from: f64, to: f64, text: &str) {
        self.line([x, from], [x, to], 1.0, None);
        for y in [from, to] {
            self.line([x - 4.0, y], [x + 4.0, y], 1.0, None);
        }
        self.text([x + 6.0, (from + to) / 2.0 + 4.0], text, Anchor::Start);
    }

    /// The finished drawing, with its title for those who do not see it.
    pub fn finish(self, alternative: &str) -> String {
        self.finish_tile(WIDTH, alternative)
    }

    /// The finished drawing of another width. Without a title it says nothing to those who do not see it: the words stand
    /// beside it.
    pub fn finish_tile(self, width: f64, alternative: &str) -> String {
        let view = format!("0 0 {width} {}", tenth(self.height));
        let silent = alternative.is_empty();
        html! {
            svg xmlns="http://www.w3.org/2000/svg" viewBox=(view) width=(width) height=(tenth(self.height))
                role=[(!silent).then_some("img")] aria-hidden=[silent.then_some("true")] direction="ltr" {
                @if !silent { title { (alternative) } }
                @for shape in &self.shapes { (PreEscaped(&shape.0)) }
            }
        }
        .into_string()
    }
}

fn path_data(points: &[[f64; 2]], closed: bool) -> String {
    let mut d = String::new();
    for (at, point) in points.iter().enumerate() {
        let [x, y] = point.map(tenth);
        d.push_str(&format!("{}{x} {y}", if at == 0 { "M" } else { "L" }));
    }
    if closed {
        d.push('Z');
    }
    d
}

/// Coordinates to a tenth: finer than any screen, shorter to send.
fn tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}
