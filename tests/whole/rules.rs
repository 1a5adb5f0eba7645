//! Every rule is held against its own formula text.

use std::collections::{BTreeMap, HashMap, HashSet};

use advice::families;
use advice::rule::{FigureSpec, Input, Origin, Rule};
use quantity::{Field, Kind, Unit};

use crate::evaluator::evaluate_over;

/// A seeded stream of numbers (splitmix64), so that the test is the same every time.
struct Draws(u64);

impl Draws {
    fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }
}

/// A plausible value for an input; rules are asked over the usual range, where they must always answer.
fn draw(input: &Input, draws: &mut Draws) -> f64 {
    match input.origin {
        Origin::Field(key) => draw_field(families::field(key).expect(key), draws),
        Origin::Chosen(..) => draws.between(0.0, 1.0).round(),
        Origin::Figure(id) | Origin::IfChosen { figure: id, .. } => {
            draw_figure(families::figure(id).expect(id), draws)
        }
        Origin::Table { read, .. } => read().expect("the table holds it"),
        Origin::List(key) => panic!("{key} is many numbers"),
    }
}

/// What a rule takes: its numbers by symbol, and its list.
struct Drawn {
    scalars: Vec<f64>,
    list: Vec<f64>,
}

impl Drawn {
    fn of(rule: &Rule, draws: &mut Draws) -> Drawn {
        let (mut scalars, mut list) = (Vec::new(), Vec::new());
        for input in rule.inputs {
            match input.origin {
                Origin::List(key) => list = draw_list(families::field(key).expect(key), draws),
                _ => scalars.push(draw(input, draws)),
            }
        }
        Drawn { scalars, list }
    }

    fn by_kernel(&self, rule: &Rule) -> Option<f64> {
        (rule.compute)(&[self.scalars.clone(), self.list.clone()].concat())
    }

    fn by_text(&self, rule: &Rule) -> Result<f64, String> {
        let symbols = rule.inputs.iter().map(|input| input.symbol);
        let scalars: HashMap<&str, f64> = symbols.zip(self.scalars.iter().copied()).collect();
        let list = rule.inputs.last().filter(|_| !self.list.is_empty());
        evaluate_over(rule.formula, &scalars, list.map(|input| (input.symbol, self.list.as_slice())))
    }
}

/// Numbers around one weight, as many as a grower may weigh.
fn draw_list(field: &Field, draws: &mut Draws) -> Vec<f64> {
    let Kind::Numbers { low, high, at_least, .. } = field.kind else { panic!("{} is no list", field.key) };
    let middle = draws.between(low * 2.0, high / 2.0);
    let count = draws.between(at_least as f64, 60.0) as usize;
    (0..count).map(|_| (middle * draws.between(0.7, 1.3)).round()).collect()
}

fn draw_field(field: &Field, draws: &mut Draws) -> f64 {
    match field.kind {
        Kind::Number { low, high, whole, usual, .. } => {
            let (low, high) = usual.unwrap_or((low, high.min(low + 1000.0)));
            let value = draws.between(low, high);
            // Sale ages stay on all curves, so that every table has the day.
            let value = if field.key == "batch.sale_age_d" { value.min(49.0) } else { value };
            if whole { value.round().max(low) } else { value }
        }
        Kind::Ratio { low, high, .. } => draws.between(low, high.min(800.0)).round(),
        Kind::Day => 21_000.0 + draws.between(0.0, 400.0).round(),
        _ => panic!("{} is no number", field.key),
    }
}

fn draw_figure(spec: &FigureSpec, draws: &mut Draws) -> f64 {
    match spec.unit {
        Unit::Pieces | Unit::Birds | Unit::Chicks => draws.between(3.0, 60.0).round(),
        Unit::Kilogram => draws.between(1.0, 3.0),
        Unit::KilogramPerSquareMetre => draws.between(10.0, 33.0),
        Unit::Metre => draws.between(0.5, 4.0),
        Unit::Date => 21_000.0 + draws.between(0.0, 400.0).round(),
        _ => draws.between(5.0, 200.0),
    }
}

fn rules() -> impl Iterator<Item = (&'static FigureSpec, &'static Rule)> {
    families::figures().flat_map(|spec| spec.rules.iter().map(move |rule| (spec, rule)))
}

#[test]
fn every_rule_gives_what_its_formula_says() {
    let mut draws = Draws(20_270_914);
    for (spec, rule) in rules() {
        let mut answered = 0;
        for _ in 0..200 {
            let drawn = Drawn::of(rule, &mut draws);
            let by_text = drawn.by_text(rule);
            let inputs = &drawn.scalars;
            match drawn.by_kernel(rule) {
                Some(by_kernel) => {
                    let by_text = by_text.unwrap_or_else(|why| panic!("{}: {why}", rule.name));
                    let close = (by_kernel - by_text).abs() <= 1e-9 * by_text.abs().max(1.0);
                    assert!(
                        close,
                        "{} of {}: {by_kernel}, formula {by_text} at {inputs:?}",
                        rule.name, spec.id
                    );
                    answered += 1;
                }
                None => assert!(by_text.is_err(), "{}: the kernel is silent at {inputs:?}", rule.name),
            }
        }
        assert!(answered >= 100, "{} answered only {answered} of 200", rule.name);
    }
}

/// The same through the whole chain: the working that is shown gives the figure that is shown.
#[test]
fn every_working_of_a_whole_plan_gives_its_figure() {
    let plan = crate::sample::plan(&crate::sample::complete());
    let mut shown = 0;
    for spec in families::figures() {
        let Some(working) = advice::working::working(&plan.answers, &plan.outcome, spec.id) else { continue };
        let inputs: HashMap<&str, f64> =
            working.inputs.iter().map(|input| (input.symbol, input.resolved.value)).collect();
        let list = working.inputs.last().filter(|input| !input.list.is_empty());
        let list = list.map(|input| (input.symbol, input.list.as_slice()));
        let by_text = evaluate_over(working.worked.rule.formula, &inputs, list).unwrap();
        let value = working.worked.figure.value.number();
        // Money is rounded to the cent after the formula.
        let tolerance = if spec.unit == Unit::Money { 0.005 } else { 1e-9 * value.abs().max(1.0) };
        assert!((by_text - value).abs() <= tolerance, "{}: {value}, formula {by_text}", spec.id);
        shown += 1;
    }
    // A plan with a weak mix has one meaning of its ratio to tell.
    let weak_mix = |spec: &&FigureSpec| spec.id != "disinfectant.product_other_meaning";
    let in_a_plan = families::figures().filter(|spec| !only_in_sums(spec)).filter(weak_mix).count();
    assert_eq!(shown, in_a_plan, "a complete plan must show every figure");
}

/// Whether a figure rests, itself or through others, on fields that only a quick sum asks, which no plan can answer.
fn only_in_sums(spec: &FigureSpec) -> bool {
    let plan = families::plan_fields();
    let asked = |key: &str| plan.iter().any(|asked| asked.field.key == key);
    let unasked = |input: &Input| match input.origin {
        Origin::Field(key) | Origin::List(key) => !asked(key),
        Origin::Figure(id) => only_in_sums(families::figure(id).expect(id)),
        _ => false,
    };
    spec.rules.iter().any(|rule| rule.inputs.iter().any(unasked))
}

/// Ranges are carried through on the ground that every rule only ever rises or falls with each input.
#[test]
fn every_rule_only_rises_or_only_falls_with_each_input() {
    let mut draws = Draws(7);
    for (spec, rule) in rules() {
        for _ in 0..50 {
            let drawn = Drawn::of(rule, &mut draws);
            for (at, input) in rule.inputs.iter().enumerate() {
                // Only figures have ranges.
                if !matches!(input.origin, Origin::Figure(_) | Origin::IfChosen { .. }) {
                    continue;
                }
                let along: Vec<f64> = (0..=8)
                    .filter_map(|step| {
                        let mut moved = drawn.scalars.clone();
                        moved[at] *= 1.0 + f64::from(step) / 40.0;
                        (Drawn { scalars: moved, list: drawn.list.clone() }).by_kernel(rule)
                    })
                    .collect();
                let rises = along.windows(2).all(|pair| pair[1] >= pair[0] - 1e-9 * pair[0].abs());
                let falls = along.windows(2).all(|pair| pair[1] <= pair[0] + 1e-9 * pair[0].abs());
                let sawtooth = ["last-load"].contains(&rule.name);
                assert!(
                    rises || falls || sawtooth,
                    "{} of {} turns with {}",
                    rule.name,
                    spec.id,
                    input.symbol
                );
            }
        }
    }
}

#[test]
fn the_declarations_hold_together() {
    let mut names = HashSet::new();
    let works: HashSet<String> =
        reference::bibliography::works().unwrap().into_iter().map(|work| work.key).collect();
    for (spec, rule) in rules() {
        assert!(names.insert(rule.name), "rule {} stands twice", rule.name);
        assert!(works.contains(rule.source), "{}: {} is not in the bibliography", rule.name, rule.source);
        for (at, input) in rule.inputs.iter().enumerate() {
            let is_list = matches!(input.origin, Origin::List(_));
            assert!(!is_list || at + 1 == rule.inputs.len(), "{}: a list stands last", rule.name);
            let known = match input.origin {
                Origin::List(key) => matches!(families::field(key).expect(key).kind, Kind::Numbers { .. }),
                Origin::Field(key) | Origin::Chosen(key, _) => families::field(key).is_some(),
                Origin::Figure(id) => families::figure(id).is_some(),
                Origin::IfChosen { field, figure, .. } => {
                    families::field(field).is_some() && families::figure(figure).is_some()
                }
                Origin::Table { table, .. } => reference::Table::shipped(table).is_ok(),
            };
            assert!(known, "{} of {} comes from nowhere", input.symbol, rule.name);
            let uses = rule.formula.split(|c: char| !c.is_ascii_alphanumeric() && c != '_');
            assert!(
                uses.into_iter().any(|word| word == input.symbol),
                "{}: {} unused",
                rule.name,
                input.symbol
            );
        }
        let last = spec.rules.last().map(|last| last.name) == Some(rule.name);
        assert!(
            last || !std::ptr::fn_addr_eq(rule.applies, advice::rule::always as fn(&_) -> bool),
            "{} hides the rules behind it",
            rule.name
        );
    }
    for spec in families::series() {
        assert!(works.contains(spec.source), "{}: {} is not in the bibliography", spec.id, spec.source);
        for id in spec.made_from {
            assert!(families::figure(id).is_some(), "{} is made from unknown {id}", spec.id);
        }
    }
    let ids: Vec<_> =
        families::figures().map(|spec| spec.id).chain(families::series().map(|spec| spec.id)).collect();
    assert_eq!(ids.iter().collect::<HashSet<_>>().len(), ids.len(), "a figure stands twice");
}

/// A figure that rested on itself would never be worked out.
#[test]
fn no_figure_rests_on_itself() {
    let rests_on: BTreeMap<&str, Vec<&str>> = families::figures()
        .map(|spec| {
            let inputs = spec.rules.iter().flat_map(|rule| rule.inputs);
            let figures = inputs.filter_map(|input| match input.origin {
                Origin::Figure(id) | Origin::IfChosen { figure: id, .. } => Some(id),
                _ => None,
            });
            (spec.id, figures.collect())
        })
        .collect();
    for start in rests_on.keys() {
        let mut below: Vec<&str> = rests_on[start].clone();
        let mut seen = HashSet::new();
        while let Some(id) = below.pop() {
            assert_ne!(id, *start, "{start} rests on itself");
            if seen.insert(id) {
                below.extend(&rests_on[id]);
            }
        }
    }
}
