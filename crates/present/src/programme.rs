//! A vaccine programme in words: what is wrong with a row, and what to see to on the day.

use advice::programme::{ProgrammeFault, Route, steps};

use crate::document::Steps;
use crate::say;
use crate::viewer::Viewer;

/// What to see to on a day of vaccination, each with its reason.
pub fn day_steps(route: Route, viewer: &Viewer) -> Steps {
    let words = viewer.words();
    let worded = |name: &str| {
        let key = format!("vaccine-step-{name}");
        (words.plain(&key), words.attribute(&key, "why", &[]).unwrap_or_default())
    };
    Steps { ordered: true, ticks: true, items: steps(route).map(|step| worded(step.name)).collect() }
}

/// How a vaccine is given.
pub fn route(route: Route, viewer: &Viewer) -> String {
    viewer.words().plain(&format!("vaccine-route-{}", route.name()))
}

/// What is wrong with a row, and what to do.
pub fn fault(fault: &ProgrammeFault, viewer: &Viewer) -> String {
    let words = viewer.words();
    match fault {
        ProgrammeFault::Parts { line, found } => {
            say!(words, "programme-parts", line = shown(line), found = shown(found))
        }
        ProgrammeFault::NoName { line } => say!(words, "programme-no-name", line = shown(line)),
        ProgrammeFault::NotADay { line, typed } => {
            say!(words, "programme-not-a-day", line = shown(line), typed = typed)
        }
        ProgrammeFault::BeforeArrival { line, day } => {
            say!(words, "programme-before-arrival", line = shown(line), day = day.to_string())
        }
        ProgrammeFault::NotARoute { line, typed, nearest } => {
            let said = say!(words, "programme-not-a-route", line = shown(line), typed = typed);
            match nearest {
                None => said,
                Some(meant) => say!(words, "fault-did-you-mean", fault = said, meant = meant.name()),
            }
        }
        ProgrammeFault::NotDoses { line, typed } => {
            say!(words, "programme-not-doses", line = shown(line), typed = typed)
        }
        ProgrammeFault::Twice { line, first } => {
            say!(words, "programme-twice", line = shown(line), first = shown(first))
        }
    }
}

fn shown(count: &usize) -> String {
    count.to_string()
}

#[cfg(test)]
mod tests {
    use advice::programme::{ArrivalDay, read};

    use super::*;

    #[test]
    fn every_step_has_its_reason() {
        for given in Route::ALL {
            let steps = day_steps(given, &Viewer::plain());
            assert!(steps.items.len() >= 8, "{}", given.name());
            for (what, why) in steps.items {
                assert!(!what.contains('[') && !why.is_empty(), "{what}: {why}");
            }
            assert!(!route(given, &Viewer::plain()).contains('['));
        }
    }

    #[test]
    fn a_fault_names_the_line_and_what_to_do() {
        let typed = "A; 7; spray\n; 7; spray; 500\nB; soon; spray; 500\nC; 0; spray; 500\nD; 7; spary; 500\n\
                     E; 7; spray; 0\nF; 7; spray; 500\nF; 7; spray; 500";
        let faults = read(typed, ArrivalDay::One).unwrap_err();
        assert_eq!(faults.len(), 7);
        let said: Vec<String> = faults.iter().map(|one| fault(one, &Viewer::plain())).collect();
        for sentence in &said {
            assert!(sentence.starts_with("Line ") && !sentence.contains('['), "{sentence}");
        }
        assert!(said[4].ends_with("Did you mean spray?"), "{}", said[4]);
    }
}
