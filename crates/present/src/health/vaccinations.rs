//! Which vaccination is due?

use advice::health::{Health, Line, Programme, Standing, Vaccinations};
use advice::programme::{HOT_C, VaccineDay, VaccineDrink};
use quantity::{CivilDay, Unit};

use super::selling::table;
use crate::document::{Align, Block, Caution, Document, Level, Table};
use crate::viewer::Viewer;
use crate::{programme, say, show};

/// Days before a vaccination from which its list of things to see to is shown: ice and clean water need that long.
const AHEAD_D: i32 = 3;

/// The programme with what is done, due and late, and what to see to on the next day of vaccination.
pub fn vaccinations(health: &Health, viewer: &Viewer) -> Document {
    let words = viewer.words();
    let title = words.plain("health-vaccines");
    let vaccinations = &health.vaccinations;
    let mut blocks = Vec::new();
    match &vaccinations.programme {
        Programme::NotWritten => blocks.push(Block::Paragraph(words.plain("health-no-programme"))),
        Programme::NoChickDay => blocks.push(Block::Paragraph(words.plain("health-no-chick-day"))),
        Programme::Unreadable(faults) => blocks.push(Block::Caution(Caution {
            level: Level::Care,
            title: words.plain("health-programme-unreadable"),
            items: faults.iter().map(|fault| programme::fault(fault, viewer)).collect(),
        })),
        Programme::Laid(lines) => {
            blocks.push(lead(vaccinations, viewer));
            blocks.extend(lines_table(lines, viewer).map(Block::Table));
            blocks.extend(next_day(health, viewer));
        }
    }
    blocks.extend(beside(vaccinations, viewer));
    Document { title, subtitle: String::new(), blocks }
}

fn lead(vaccinations: &Vaccinations, viewer: &Viewer) -> Block {
    let words = viewer.words();
    let (value, note) = match vaccinations.next() {
        None => (words.plain("health-all-given"), String::new()),
        Some(line) => {
            let day = show::day(line.planned.date, viewer);
            let value = say!(words, "health-next", vaccine = &line.planned.vaccine, day = day);
            (value, standing(&line.standing, viewer))
        }
    };
    Block::Lead { label: words.plain("health-next-label"), value, note }
}

fn lines_table(lines: &[Line], viewer: &Viewer) -> Option<Table> {
    let words = viewer.words();
    let row = |line: &Line| {
        let planned = &line.planned;
        let age = say!(words, "day-of-age", day = planned.age.0.to_string());
        let vials = say!(
            words,
            "health-vials",
            vials = show::number(f64::from(planned.vials), 0),
            count = f64::from(planned.vials),
            doses = show::number(f64::from(planned.doses), 0),
        );
        vec![
            format!("{} · {age}", show::day_short(planned.date, viewer)),
            planned.vaccine.clone(),
            programme::route(planned.route, viewer),
            vials,
            standing(&line.standing, viewer),
        ]
    };
    let open = |at: &usize| matches!(lines[*at].standing, Standing::Today | Standing::Late { .. });
    table(
        "health-programme",
        [
            ("column-date", Align::Start),
            ("health-column-vaccine", Align::Start),
            ("health-column-route", Align::Start),
            ("health-column-vials", Align::Start),
            ("health-column-standing", Align::Start),
        ],
        lines.iter().map(row).collect(),
        (0..lines.len()).filter(open).collect(),
        viewer,
    )
}

fn standing(standing: &Standing, viewer: &Viewer) -> String {
    let words = viewer.words();
    let days = |days: i32| show::quantity(f64::from(days), Unit::Day, 0, viewer);
    let on = |day: &CivilDay| show::day(*day, viewer);
    match standing {
        Standing::Done { day, off_d: 0 } => say!(words, "health-done", day = on(day)),
        Standing::Done { day, off_d: late @ 1.. } => {
            say!(words, "health-done-late", day = on(day), days = days(*late))
        }
        Standing::Done { day, off_d } => {
            say!(words, "health-done-early", day = on(day), days = days(off_d.saturating_neg()))
        }
        Standing::AtHatchery => words.plain("health-at-hatchery"),
        Standing::Late { days_d } => say!(words, "health-late", days = days(*days_d)),
        Standing::Today => words.plain("health-today"),
        Standing::Coming => words.plain("health-coming"),
    }
}

/// What to see to, once the next day of vaccination is near.
fn next_day(health: &Health, viewer: &Viewer) -> Vec<Block> {
    let next = health.vaccinations.next().filter(|line| line.planned.date.days_since(health.on) <= AHEAD_D);
    let Some(line) = next else { return Vec::new() };
    let words = viewer.words();
    let text = say!(words, "health-see-to", vaccine = &line.planned.vaccine);
    let mut blocks = vec![Block::Heading { level: 3, text, anchor: "health-see-to" }];
    if matches!(line.standing, Standing::Late { .. }) {
        blocks.push(Block::Paragraph(words.plain("health-late-ask")));
    }
    blocks
        .extend(line.planned.drink.iter().map(|drunk| Block::Paragraph(drink(drunk, &line.planned, viewer))));
    blocks.push(Block::Steps(programme::day_steps(line.planned.route, viewer)));
    blocks
}

/// The water of a vaccine that is drunk, and how long it has to be clean. On its own day; a late one moves all of it.
fn drink(drink: &VaccineDrink, planned: &VaccineDay, viewer: &Viewer) -> String {
    let words = viewer.words();
    let day = |day: CivilDay| show::day(day, viewer);
    let minutes = |(least, most): (u32, u32)| format!("{least}–{most}");
    let clean = say!(
        words,
        "health-drink",
        day = day(planned.date),
        from = day(drink.clean_from),
        until = day(drink.clean_until),
        thirst = minutes(drink.thirst_min),
        hot = minutes(drink.thirst_hot_min),
        hot_c = show::quantity(HOT_C, Unit::Celsius, 0, viewer),
    );
    let (Some(water), Some((least, most))) = (drink.water, drink.milk_powder_g) else { return clean };
    let grams = |grams: f64| show::number(grams, 0);
    let water = show::quantity(water.in_litres(), Unit::Litre, 1, viewer);
    say!(words, "health-drink-water", clean = clean, water = water, least = grams(least), most = grams(most))
}

/// What was given under a name that the programme does not have.
fn beside(vaccinations: &Vaccinations, viewer: &Viewer) -> Option<Block> {
    let words = viewer.words();
    let items: Vec<(String, String)> = vaccinations
        .beside
        .iter()
        .map(|given| {
            let day = show::day(given.day, viewer);
            (say!(words, "health-beside-given", vaccine = &given.vaccine, day = day), String::new())
        })
        .collect();
    let title = words.plain(match vaccinations.programme {
        Programme::Laid(_) => "health-beside",
        _ => "health-beside-nothing",
    });
    let steps = Block::Steps(crate::document::Steps { ordered: false, ticks: false, items });
    (!vaccinations.beside.is_empty()).then_some(Block::Fold { title, blocks: vec![steps] })
}

#[cfg(test)]
mod tests {
    use advice::health::VaccineGiven;
    use advice::programme::{ArrivalDay, Flock, days, read};

    use super::super::make::{day, health, said};
    use super::*;

    const PAPER: &str = "Newcastle; 7; eye-drop; 1000\nGumboro; 14; drinking-water; 1000";

    /// Chicks of 1 September: Newcastle on the 8th, Gumboro on the 15th.
    fn shown(on: i32, standings: [Standing; 2]) -> String {
        let rows = read(PAPER, ArrivalDay::Zero).unwrap();
        let planned = days(&rows, &Flock { placement: day(1), arrival: ArrivalDay::Zero, birds: 1_200 });
        let lines = planned.into_iter().zip(standings);
        let lines = lines.map(|(planned, standing)| Line { planned, standing }).collect();
        let mut health = health(on, Vec::new());
        health.vaccinations.programme = Programme::Laid(lines);
        said(&vaccinations(&health, &Viewer::plain()))
    }

    #[test]
    fn the_next_vaccination_leads() {
        let page = shown(8, [Standing::Today, Standing::Coming]);
        assert!(page.contains("Newcastle on 8 September 2027"), "{page}");
        assert!(page.contains("2 vials, 2 000 doses"), "{page}");
        assert!(page.contains("What to see to: Newcastle") && !page.contains("no chlorine"), "{page}");
        let done = Standing::Done { day: day(9), off_d: 1 };
        let page = shown(10, [done.clone(), Standing::Coming]);
        assert!(page.contains("Gumboro on 15 September 2027"), "{page}");
        assert!(page.contains("given 9 September 2027, 1 day late"), "{page}");
        assert!(!page.contains("What to see to"), "too far ahead: {page}");
        let page = shown(13, [done, Standing::Coming]);
        assert!(
            page.contains("16.8 L") && page.contains("13 September 2027") && page.contains("34 to 67 g"),
            "{page}"
        );
    }

    #[test]
    fn a_late_vaccination_asks_the_veterinarian() {
        let page = shown(10, [Standing::Late { days_d: 2 }, Standing::Coming]);
        assert!(page.contains("2 days late") && page.contains("ask your veterinarian"), "{page}");
    }

    #[test]
    fn what_cannot_be_laid_says_what_to_do() {
        let mut health = health(8, Vec::new());
        assert!(said(&vaccinations(&health, &Viewer::plain())).contains("No programme"));
        health.vaccinations.programme =
            Programme::Unreadable(read("Newcastle; 7", ArrivalDay::Zero).unwrap_err());
        health.vaccinations.beside = vec![VaccineGiven { vaccine: "Pox".to_owned(), day: day(5) }];
        let page = said(&vaccinations(&health, &Viewer::plain()));
        assert!(page.contains("Line 1 has 2 parts") && page.contains("Pox on 5 September 2027"), "{page}");
        health.vaccinations.programme = Programme::NoChickDay;
        assert!(said(&vaccinations(&health, &Viewer::plain())).contains("when the chicks come"));
    }

    #[test]
    fn a_whole_programme_given_says_so() {
        let page = shown(20, [Standing::AtHatchery, Standing::Done { day: day(14), off_d: -1 }]);
        assert!(page.contains("All are given") && page.contains("1 day early"), "{page}");
    }
}
