//! Looks at a finished drawing as a test: nothing outside, no text on another.

/// Letters are about so wide, as a share of their height.
const LETTER: f64 = 0.55;
/// Boxes of text may touch by so much.
const TOLERANCE: f64 = 1.0;

/// A text and the box around it: left, top, right, bottom.
pub(crate) type Lettered = (String, [f64; 4]);

/// All texts of a drawing with their boxes.
pub(crate) fn texts(svg: &str) -> Vec<Lettered> {
    svg.split("<text").skip(1).map(lettered).collect()
}

/// Fails where a coordinate is not a number or lies outside, where text is smaller than 11 units, or lies on other
/// text, and where the drawing has no words for those who do not see it.
pub(crate) fn check(svg: &str) {
    assert!(svg.contains("role=\"img\"") && svg.contains("<title>"), "no words");
    for odd in ["NaN", "inf", "Infinity"] {
        let shapes =
            svg.split("</title>").nth(1).unwrap().split("<text").map(|part| part.split('>').next().unwrap());
        assert!(shapes.clone().all(|shape| !shape.contains(odd)), "{odd} in {svg}");
    }
    let view = attribute(svg, "viewBox").unwrap();
    let [_, _, width, height] = numbers(&view)[..] else { panic!("{view}") };
    for [x, y] in places(svg) {
        assert!(
            (0.0..=width).contains(&x) && (0.0..=height).contains(&y),
            "{x} {y} is outside {view}: {svg}"
        );
    }
    let texts = texts(svg);
    for (at, (text, [left, top, right, bottom])) in texts.iter().enumerate() {
        let inside = *left >= -TOLERANCE
            && *right <= width + TOLERANCE
            && *top >= -TOLERANCE
            && *bottom <= height + TOLERANCE;
        assert!(inside, "{text} reaches outside: {:?} in {view}", texts[at].1);
        for (other, [l, t, r, b]) in &texts[at + 1..] {
            let apart = right - TOLERANCE <= *l
                || r - TOLERANCE <= *left
                || bottom - TOLERANCE <= *t
                || b - TOLERANCE <= *top;
            assert!(apart, "{text} lies on {other}: {svg}");
        }
    }
}

fn lettered(tag: &str) -> Lettered {
    let number = |name| attribute(tag, name).and_then(|text| text.parse::<f64>().ok()).unwrap();
    let (x, y, size) = (number("x"), number("y"), number("font-size"));
    assert!(size >= 11.0, "{size} is too small to read");
    let body = tag.split_once('>').unwrap().1.split("</text>").next().unwrap();
    let text = body.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&amp;", "&");
    let wide = text.chars().count() as f64 * LETTER * size;
    let left = match attribute(tag, "text-anchor").unwrap().as_str() {
        "start" => x,
        "middle" => x - wide / 2.0,
        _ => x - wide,
    };
    (text, [left, y - 0.8 * size, left + wide, y + 0.2 * size])
}

/// Places of lines, rectangles, circles and paths.
fn places(svg: &str) -> Vec<[f64; 2]> {
    let mut places = Vec::new();
    for tag in svg.split('<').filter(|tag| !tag.starts_with("text")) {
        let number = |name| attribute(tag, name).and_then(|text| text.parse::<f64>().ok());
        let pair = |x, y| Some([number(x)?, number(y)?]);
        places.extend([pair("x1", "y1"), pair("x2", "y2"), pair("x", "y")].into_iter().flatten());
        if let (Some([x, y]), Some([w, h])) = (pair("x", "y"), pair("width", "height")) {
            places.push([x + w, y + h]);
        }
        if let (Some([x, y]), Some(r)) = (pair("cx", "cy"), number("r")) {
            places.extend([[x - r, y - r], [x + r, y + r]]);
        }
        if let Some(d) = attribute(tag, "d") {
            let numbers = numbers(&d.replace(['M', 'L', 'Z'], " "));
            places.extend(numbers.chunks(2).map(|pair| [pair[0], pair[1]]));
        }
    }
    places
}

fn attribute(tag: &str, name: &str) -> Option<String> {
    let (_, rest) = tag.split_once(&format!(" {name}=\""))?;
    rest.split('"').next().map(str::to_owned)
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(' ').filter(|part| !part.is_empty()).map(|part| part.parse().unwrap()).collect()
}
