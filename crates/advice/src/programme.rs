//! A vaccine programme as the grower's own veterinarian wrote it: rows typed in, checked, and laid on the calendar.
//!
//! No programme is shipped: which vaccine on which day is the veterinarian's to say. What is known here is how a day
//! is counted, how much water carries a dose that is drunk, and that vials are whole.

use model::vaccine;
use quantity::{CivilDay, DayOfAge, Volume};
use thiserror::Error;

/// How a vaccine is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Route {
    /// In the water they drink.
    DrinkingWater,
    /// A drop into an eye.
    EyeDrop,
    /// Coarse spray over the birds.
    Spray,
    /// With a needle.
    Injection,
    /// With a forked needle through the skin of a wing.
    WingWeb,
}

impl Route {
    /// Every route.
    pub const ALL: [Route; 5] =
        [Route::DrinkingWater, Route::EyeDrop, Route::Spray, Route::Injection, Route::WingWeb];

    /// The stable name, typed in a row and used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Route::DrinkingWater => "drinking-water",
            Route::EyeDrop => "eye-drop",
            Route::Spray => "spray",
            Route::Injection => "injection",
            Route::WingWeb => "wing-web",
        }
    }

    /// The route of a stable name.
    pub fn named(name: &str) -> Option<Route> {
        Route::ALL.into_iter().find(|route| route.name() == name)
    }
}

/// What the veterinarian's paper calls the day the chicks come. Asked, never guessed: a slip moves every vaccine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ArrivalDay {
    /// Day 0, as everywhere in this program.
    Zero,
    /// Day 1.
    One,
}

impl ArrivalDay {
    /// What a grower answers, "0" or "1".
    pub fn answered(text: &str) -> Option<ArrivalDay> {
        match text {
            "0" => Some(ArrivalDay::Zero),
            "1" => Some(ArrivalDay::One),
            _ => None,
        }
    }

    /// The day of age of a day on the paper; `None` before the chicks come.
    fn age(self, on_paper: i32) -> Option<DayOfAge> {
        let age = match self {
            ArrivalDay::Zero => on_paper,
            ArrivalDay::One => on_paper - 1,
        };
        (age >= 0).then_some(DayOfAge(age))
    }
}

/// One row of the paper, checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ProgrammeRow {
    /// The vaccine, as the paper calls it.
    pub vaccine: String,
    /// The day as written on the paper.
    pub day_on_paper: i32,
    /// How it is given.
    pub route: Route,
    /// Doses in one vial, by its label.
    pub doses_per_vial: u32,
}

/// What is wrong with a row. Lines count from 1.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum ProgrammeFault {
    /// Not four parts: vaccine; day; route; doses in a vial.
    #[error("line {line} has {found} parts instead of 4")]
    Parts {
        /// The line.
        line: usize,
        /// How many it has.
        found: usize,
    },
    /// No vaccine is named, or the name is too long to be one.
    #[error("line {line} names no vaccine")]
    NoName {
        /// The line.
        line: usize,
    },
    /// The day is no whole number of days, or past what broilers live.
    #[error("line {line}: {typed} is no day from 0 to 84")]
    NotADay {
        /// The line.
        line: usize,
        /// What stands there.
        typed: String,
    },
    /// The day lies before the chicks come: day 0 on a paper whose first day is 1.
    #[error("line {line}: day {day} lies before arrival")]
    BeforeArrival {
        /// The line.
        line: usize,
        /// The day on the paper.
        day: i32,
    },
    /// No way to give a vaccine that is known here.
    #[error("line {line}: {typed} is no route")]
    NotARoute {
        /// The line.
        line: usize,
        /// What stands there.
        typed: String,
        /// The route that was perhaps meant.
        nearest: Option<Route>,
    },
    /// The doses in a vial are no number that a vial holds.
    #[error("line {line}: {typed} is no number of doses")]
    NotDoses {
        /// The line.
        line: usize,
        /// What stands there.
        typed: String,
    },
    /// The same vaccine stands twice on one day.
    #[error("line {line} repeats line {first}")]
    Twice {
        /// The line.
        line: usize,
        /// The line it repeats.
        first: usize,
    },
}

/// Broilers are not kept longer.
const LAST_DAY: i32 = 84;
const LONGEST_NAME: usize = 80;
/// The most doses of one vial met; more is a slip of the pen.
const MOST_DOSES: u32 = 50_000;

/// Reads rows `vaccine; day on the paper; route; doses in a vial`, one a line; empty lines count for nothing.
///
/// # Errors
/// Every fault of every row.
pub fn read(text: &str, arrival: ArrivalDay) -> Result<Vec<ProgrammeRow>, Vec<ProgrammeFault>> {
    let (mut rows, mut faults) = (Vec::<(usize, ProgrammeRow)>::new(), Vec::new());
    for (line, cells) in (1..).zip(text.lines()).filter(|(_, cells)| !cells.trim().is_empty()) {
        match read_row(line, cells, arrival) {
            Ok(row) => match rows.iter().find(|(_, earlier)| same_jab(earlier, &row)) {
                Some(&(first, _)) => faults.push(ProgrammeFault::Twice { line, first }),
                None => rows.push((line, row)),
            },
            Err(fault) => faults.push(fault),
        }
    }
    if faults.is_empty() { Ok(rows.into_iter().map(|(_, row)| row).collect()) } else { Err(faults) }
}

fn same_jab(one: &ProgrammeRow, other: &ProgrammeRow) -> bool {
    one.day_on_paper == other.day_on_paper && one.vaccine.to_lowercase() == other.vaccine.to_lowercase()
}

fn read_row(line: usize, cells: &str, arrival: ArrivalDay) -> Result<ProgrammeRow, ProgrammeFault> {
    let cells: Vec<&str> = cells.split(';').map(str::trim).collect();
    let [vaccine, day, route, doses] = cells[..] else {
        return Err(ProgrammeFault::Parts { line, found: cells.len() });
    };
    if vaccine.is_empty() || vaccine.chars().count() > LONGEST_NAME {
        return Err(ProgrammeFault::NoName { line });
    }
    Ok(ProgrammeRow {
        vaccine: vaccine.to_owned(),
        day_on_paper: read_day(line, day, arrival)?,
        route: read_route(line, route)?,
        doses_per_vial: read_doses(line, doses)?,
    })
}

fn read_day(line: usize, typed: &str, arrival: ArrivalDay) -> Result<i32, ProgrammeFault> {
    let day = typed.parse().ok().filter(|day| (0..=LAST_DAY).contains(day));
    let day = day.ok_or_else(|| ProgrammeFault::NotADay { line, typed: typed.to_owned() })?;
    arrival.age(day).map(|_| day).ok_or(ProgrammeFault::BeforeArrival { line, day })
}

fn read_route(line: usize, typed: &str) -> Result<Route, ProgrammeFault> {
    let plain = typed.to_lowercase().replace([' ', '_'], "-");
    Route::named(&plain).ok_or_else(|| {
        let nearest = quantity::field::nearest(&plain, Route::ALL.iter().map(|route| route.name()));
        ProgrammeFault::NotARoute { line, typed: typed.to_owned(), nearest: nearest.and_then(Route::named) }
    })
}

fn read_doses(line: usize, typed: &str) -> Result<u32, ProgrammeFault> {
    let plain: String = typed.chars().filter(|letter| !letter.is_whitespace()).collect();
    let doses = plain.parse().ok().filter(|doses| (1..=MOST_DOSES).contains(doses));
    doses.ok_or_else(|| ProgrammeFault::NotDoses { line, typed: typed.to_owned() })
}

/// The flock a programme is laid on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Flock {
    /// The day the chicks come, which is day of age 0.
    pub placement: CivilDay,
    /// What the paper calls that day.
    pub arrival: ArrivalDay,
    /// Birds to vaccinate. Those placed, where nobody counted since: never fewer doses than birds.
    pub birds: u32,
}

/// One vaccination on its day.
#[derive(Clone, Debug, PartialEq)]
pub struct VaccineDay {
    /// The vaccine, as the paper calls it.
    pub vaccine: String,
    /// How it is given.
    pub route: Route,
    /// The day of age, placement being 0.
    pub age: DayOfAge,
    /// The day.
    pub date: CivilDay,
    /// Whole vials to open; what is left in the last one is destroyed, not kept.
    pub vials: u32,
    /// Doses in those vials, never fewer than birds.
    pub doses: u32,
    /// What only a vaccine that is drunk needs; `None` by other routes.
    pub drink: Option<VaccineDrink>,
}

/// What a vaccine that is drunk needs beside its vials.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VaccineDrink {
    /// Water to carry it, by age; `None` on the day of arrival, for which the rule of age has no water.
    pub water: Option<Volume>,
    /// Skimmed milk powder for that water, least and most, g.
    pub milk_powder_g: Option<(f64, f64)>,
    /// The first day without chlorine, acid or medicine in the water: 48 hours before, the longer of two sources.
    pub clean_from: CivilDay,
    /// The last such day: 24 hours after.
    pub clean_until: CivilDay,
    /// Minutes of thirst before it, least and most, in usual weather.
    pub thirst_min: (u32, u32),
    /// The same where the house is above [`HOT_C`].
    pub thirst_hot_min: (u32, u32),
}

/// Days without sanitiser before and after; [vaccine-water], where sources say 24 to 48 hours before and 24 after.
const CLEAN_BEFORE_D: i32 = 2;
const CLEAN_AFTER_D: i32 = 1;
/// Minutes of thirst: one to two hours published, half to one hour in heat (common practice).
const THIRST_MIN: (u32, u32) = (60, 120);
const THIRST_HOT_MIN: (u32, u32) = (30, 60);
/// Above this, degrees Celsius, thirst is cut short, and panting birds are not vaccinated at all.
pub const HOT_C: f64 = 30.0;

/// Lays checked rows on the calendar of a flock, by day and then as written.
pub fn days(rows: &[ProgrammeRow], flock: &Flock) -> Vec<VaccineDay> {
    let mut days: Vec<VaccineDay> = rows.iter().filter_map(|row| day(row, flock)).collect();
    days.sort_by_key(|day| day.date);
    days
}

fn day(row: &ProgrammeRow, flock: &Flock) -> Option<VaccineDay> {
    let age = flock.arrival.age(row.day_on_paper)?;
    let date = age.date(flock.placement);
    let vials = vaccine::vials(f64::from(flock.birds), f64::from(row.doses_per_vial.max(1))) as u32;
    Some(VaccineDay {
        vaccine: row.vaccine.clone(),
        route: row.route,
        age,
        date,
        vials,
        doses: vials.saturating_mul(row.doses_per_vial),
        drink: (row.route == Route::DrinkingWater).then(|| drink(age, date, flock)),
    })
}

fn drink(age: DayOfAge, date: CivilDay, flock: &Flock) -> VaccineDrink {
    let litres = vaccine::water_by_age(f64::from(flock.birds), f64::from(age.0)).in_litres();
    let water = (litres > 0.0).then_some(litres);
    VaccineDrink {
        water: water.map(Volume::litres),
        milk_powder_g: water.map(vaccine::milk_powder_g),
        clean_from: date.plus_days(-CLEAN_BEFORE_D),
        clean_until: date.plus_days(CLEAN_AFTER_D),
        thirst_min: THIRST_MIN,
        thirst_hot_min: THIRST_HOT_MIN,
    }
}

/// One thing to see to on a day of vaccination. Its words and its reason are messages of its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct VaccineStep {
    /// The stable name.
    pub name: &'static str,
    /// Whether only a vaccine that is drunk needs it.
    pub drunk_only: bool,
}

/// What to see to, in the order of the day.
pub const STEPS: &[VaccineStep] = &[
    any("healthy"),
    any("ice-box"),
    any("expiry"),
    drunk("clean-water"),
    drunk("measure-water"),
    any("cool-hour"),
    drunk("thirst"),
    drunk("milk"),
    any("whole-vials"),
    any("no-sun"),
    any("two-hours"),
    drunk("all-drink"),
    any("write-down"),
    any("empty-vials"),
];

const fn any(name: &'static str) -> VaccineStep {
    VaccineStep { name, drunk_only: false }
}

const fn drunk(name: &'static str) -> VaccineStep {
    VaccineStep { name, drunk_only: true }
}

/// The steps of a route.
pub fn steps(route: Route) -> impl Iterator<Item = &'static VaccineStep> {
    STEPS.iter().filter(move |step| !step.drunk_only || route == Route::DrinkingWater)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAPER: &str =
        "Gumboro, mild; 14; drinking water; 1000\n\nNewcastle;7;eye-drop;1 000\nPox ; 10 ; wing-web ; 200";

    fn flock(arrival: ArrivalDay) -> Flock {
        Flock { placement: CivilDay::parse("2027-09-14").unwrap(), arrival, birds: 1_010 }
    }

    fn laid(arrival: ArrivalDay) -> Vec<VaccineDay> {
        days(&read(PAPER, arrival).unwrap(), &flock(arrival))
    }

    #[test]
    fn the_day_of_arrival_moves_every_vaccine() {
        let zero: Vec<String> = laid(ArrivalDay::Zero).iter().map(|day| day.date.to_string()).collect();
        let one: Vec<String> = laid(ArrivalDay::One).iter().map(|day| day.date.to_string()).collect();
        assert_eq!(zero, ["2027-09-21", "2027-09-24", "2027-09-28"]);
        assert_eq!(one, ["2027-09-20", "2027-09-23", "2027-09-27"]);
    }

    /// Ten birds more than a vial holds take a whole second one.
    #[test]
    fn vials_are_whole_and_never_short() {
        let vials: Vec<(u32, u32)> =
            laid(ArrivalDay::Zero).iter().map(|day| (day.vials, day.doses)).collect();
        assert_eq!(vials, [(2, 2_000), (6, 1_200), (2, 2_000)]);
    }

    #[test]
    fn only_what_is_drunk_needs_water() {
        let days = laid(ArrivalDay::One);
        assert!(days[0].drink.is_none() && days[1].drink.is_none());
        let drink = days[2].drink.unwrap();
        assert_eq!(days[2].age, DayOfAge(13));
        assert!((drink.water.unwrap().in_litres() - 13.13).abs() < 1e-9);
        let (least, most) = drink.milk_powder_g.unwrap();
        assert!((least - 26.26).abs() < 1e-9 && (most - 52.52).abs() < 1e-9);
        assert_eq!(drink.clean_from.to_string(), "2027-09-25");
        assert_eq!(drink.clean_until.to_string(), "2027-09-28");
    }

    #[test]
    fn no_water_is_told_for_the_day_of_arrival() {
        let rows = read("Bronchitis; 1; drinking-water; 1000", ArrivalDay::One).unwrap();
        let drink = days(&rows, &flock(ArrivalDay::One))[0].drink.unwrap();
        assert_eq!((drink.water, drink.milk_powder_g), (None, None));
    }

    #[test]
    fn every_bad_row_is_named() {
        let typed = "Newcastle; 7; eye-drop\n; 7; spray; 500\nA; soon; spray; 500\nB; 90; spray; 500\n\
                     C; 0; spray; 500\nD; 7; drinking-watr; 500\nE; 7; spray; 0\nF; 7; spray; 1,000\n\
                     G; 7; spray; 500\ng; 7; spray; 1000";
        let faults = read(typed, ArrivalDay::One).unwrap_err();
        let text = |typed: &str| typed.to_owned();
        assert_eq!(
            faults,
            [
                ProgrammeFault::Parts { line: 1, found: 3 },
                ProgrammeFault::NoName { line: 2 },
                ProgrammeFault::NotADay { line: 3, typed: text("soon") },
                ProgrammeFault::NotADay { line: 4, typed: text("90") },
                ProgrammeFault::BeforeArrival { line: 5, day: 0 },
                ProgrammeFault::NotARoute {
                    line: 6,
                    typed: text("drinking-watr"),
                    nearest: Some(Route::DrinkingWater)
                },
                ProgrammeFault::NotDoses { line: 7, typed: text("0") },
                ProgrammeFault::NotDoses { line: 8, typed: text("1,000") },
                ProgrammeFault::Twice { line: 10, first: 9 },
            ]
        );
    }

    /// The book keeps a route and the day of arrival by these names.
    #[test]
    fn the_book_names_the_same() {
        assert!(quantity::records::ROUTES.iter().all(|name| Route::named(name).is_some()));
        assert_eq!(quantity::records::ROUTES.len(), Route::ALL.len());
        let arrival = quantity::records::RECORD_FIELDS
            .iter()
            .find(|field| field.key == "vaccine_programme.arrival_day")
            .unwrap();
        let quantity::Kind::Choice(words) = arrival.kind else { panic!("a choice") };
        assert!(words.iter().all(|word| ArrivalDay::answered(word).is_some()));
    }

    #[test]
    fn a_needle_needs_no_thirst() {
        assert!(steps(Route::Injection).all(|step| step.name != "thirst"));
        assert_eq!(steps(Route::DrinkingWater).count(), STEPS.len());
    }
}
