//! A schedule: how many on which day of age, as a grower would say it: `42: 400, 45: 600, 49: rest`.
//! Steps are written the same way where a number holds from a day on until the next: `0: 60, 21: 40`.

/// How many on which day of age, days ascending.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Schedule {
    steps: Vec<(i32, Count)>,
}

/// How many on one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Count {
    /// So many.
    Number(f64),
    /// All that are left.
    Rest,
}

/// Why a text is no schedule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ScheduleFault {
    /// Not of the form `day: number`.
    Form,
    /// The day is no day of age that can be.
    Day {
        /// Least day.
        first: i32,
        /// Greatest day.
        last: i32,
    },
    /// The day does not come after the one before it.
    Order,
    /// The number is not 1 or more, or not whole.
    Number,
    /// Something follows after the rest is gone.
    AfterRest,
    /// The number that holds from a day on is outside what is possible, or says the rest.
    Step {
        /// Least number.
        low: u32,
        /// Greatest number.
        high: u32,
    },
}

impl Schedule {
    /// First and last day.
    pub fn span(&self) -> Option<(i32, i32)> {
        Some((self.steps.first()?.0, self.steps.last()?.0))
    }

    /// How many on a day; `None` on a day that is not in it.
    pub fn on(&self, day: i32) -> Option<Count> {
        self.steps.iter().find(|step| step.0 == day).map(|step| step.1)
    }

    /// The number that holds on a day where each holds until the next; before the first step, the first.
    pub fn holding(&self, day: i32) -> Option<f64> {
        let step = self.steps.iter().rfind(|step| step.0 <= day).or(self.steps.first())?;
        match step.1 {
            Count::Number(number) => Some(number),
            Count::Rest => None,
        }
    }

    /// Every day with its count.
    pub fn steps(&self) -> impl Iterator<Item = (i32, Count)> + '_ {
        self.steps.iter().copied()
    }
}

/// Reads a schedule with days from `first` to `last`.
///
/// # Errors
/// The part that cannot be read, and why.
pub fn parse(text: &str, first: i32, last: i32) -> Result<Schedule, (String, ScheduleFault)> {
    let mut steps: Vec<(i32, Count)> = Vec::new();
    let parts = text.split([',', ';', '\n']).map(str::trim).filter(|part| !part.is_empty());
    for part in parts {
        let step = step(part, first, last).and_then(|step| follows(&steps, step));
        steps.push(step.map_err(|why| (part.to_owned(), why))?);
    }
    if steps.is_empty() {
        return Err((text.trim().to_owned(), ScheduleFault::Form));
    }
    Ok(Schedule { steps })
}

/// Reads numbers that hold from a day on, each from `low` to `high`; one number alone holds on every day.
///
/// # Errors
/// The part that cannot be read, and why.
pub fn parse_steps(
    text: &str,
    (first, last): (i32, i32),
    (low, high): (u32, u32),
) -> Result<Schedule, (String, ScheduleFault)> {
    let is_alone = !text.trim().is_empty() && text.trim().chars().all(|c| c.is_ascii_digit());
    let steps =
        if is_alone { parse(&format!("{first}: {text}"), first, last) } else { parse(text, first, last) };
    let outside = ScheduleFault::Step { low, high };
    let steps = steps.map_err(|(part, why)| match why {
        ScheduleFault::Number | ScheduleFault::AfterRest => (part, outside),
        _ => (part, why),
    })?;
    let holds = |count| matches!(count, Count::Number(n) if (f64::from(low)..=f64::from(high)).contains(&n));
    let wrong = steps.steps().find(|step| !holds(step.1)).map(|step| step.0);
    wrong.map_or(Ok(steps), |day| Err((format!("{day}: …"), outside)))
}

fn step(part: &str, first: i32, last: i32) -> Result<(i32, Count), ScheduleFault> {
    let (day, count) = part.split_once([':', '=']).ok_or(ScheduleFault::Form)?;
    let day: i32 = day.trim().parse().map_err(|_| ScheduleFault::Form)?;
    if !(first..=last).contains(&day) {
        return Err(ScheduleFault::Day { first, last });
    }
    let count = match count.trim() {
        rest if rest.eq_ignore_ascii_case("rest") => Count::Rest,
        number => Count::Number(f64::from(number.parse::<u32>().map_err(|_| ScheduleFault::Number)?)),
    };
    if count == Count::Number(0.0) { Err(ScheduleFault::Number) } else { Ok((day, count)) }
}

fn follows(steps: &[(i32, Count)], step: (i32, Count)) -> Result<(i32, Count), ScheduleFault> {
    match steps.last() {
        Some((_, Count::Rest)) => Err(ScheduleFault::AfterRest),
        Some((day, _)) if *day >= step.0 => Err(ScheduleFault::Order),
        _ => Ok(step),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_and_counts() {
        let schedule = parse("42: 400, 45: 600\n49: rest", 14, 84).unwrap();
        assert_eq!(schedule.span(), Some((42, 49)));
        assert_eq!(schedule.on(45), Some(Count::Number(600.0)));
        assert_eq!(schedule.on(49), Some(Count::Rest));
        assert_eq!(schedule.on(43), None);
    }

    #[test]
    fn a_step_holds_until_the_next() {
        let read = |text| parse_steps(text, (0, 84), (1, 500));
        let steps = read("0: 60, 21: 40").unwrap();
        assert_eq!([0, 20, 21, 84].map(|day| steps.holding(day)), [60.0, 60.0, 40.0, 40.0].map(Some));
        assert_eq!(read("7: 35").unwrap().holding(0), Some(35.0));
        assert_eq!(read("45").unwrap().holding(30), Some(45.0));
        let outside = ScheduleFault::Step { low: 1, high: 500 };
        for text in ["0: 0", "0: 501", "0", "900", "0: rest", "0: 40, 7: rest", "0: rest, 7: 3", "0: 2.5"] {
            assert_eq!(read(text).unwrap_err().1, outside, "{text}");
        }
        assert_eq!(read("").unwrap_err().1, ScheduleFault::Form);
        assert_eq!(read("40 birds").unwrap_err().1, ScheduleFault::Form);
        assert_eq!(read("85: 40").unwrap_err().1, ScheduleFault::Day { first: 0, last: 84 });
    }

    #[test]
    fn what_is_no_schedule_says_why() {
        let why = |text| parse(text, 14, 84).unwrap_err().1;
        assert_eq!(why("42 birds"), ScheduleFault::Form);
        assert_eq!(why(""), ScheduleFault::Form);
        assert_eq!(why("7: 10"), ScheduleFault::Day { first: 14, last: 84 });
        assert_eq!(why("42: 10, 40: 10"), ScheduleFault::Order);
        assert_eq!(why("42: 0"), ScheduleFault::Number);
        assert_eq!(why("42: 1.5"), ScheduleFault::Number);
        assert_eq!(why("42: rest, 44: 10"), ScheduleFault::AfterRest);
        assert_eq!(parse("42: 10, x: 3", 14, 84).unwrap_err().0, "x: 3");
    }
}
