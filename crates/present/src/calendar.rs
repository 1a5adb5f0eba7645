//! Events as a calendar file that every phone reads: iCalendar, RFC 5545.
//!
//! The same events give the same bytes: when and how often the file was written are arguments. An event keeps its UID
//! when its day moves, so that a phone moves it instead of showing it twice. Times are the clock on the wall ("floating"):
//! the crew and its phone are at the farm.

use quantity::CivilDay;

/// An event.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// Its name for ever, whatever day it moves to.
    pub uid: String,
    /// When.
    pub when: When,
    /// What it is, in a line.
    pub summary: String,
    /// More about it; may hold several lines.
    pub description: String,
    /// When the phone calls, in minutes after the start; before it where negative.
    pub alarm_min: Option<i32>,
}

/// When an event is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum When {
    /// All day, from the first day to the last.
    Days {
        /// The first day.
        first: CivilDay,
        /// The last day, itself a day of the event.
        last: CivilDay,
    },
    /// At an hour, on so many days in a row.
    Daily {
        /// The first day.
        first: CivilDay,
        /// The hour, 0 to 23.
        hour: u8,
        /// How many days, at least 1.
        times: i32,
    },
}

/// How a file was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Written {
    /// When, in milliseconds since 1970 UTC.
    pub at_millis: i64,
    /// Which revision of its events this is, where they can have changed; a phone takes the highest.
    pub sequence: Option<u32>,
}

impl Written {
    /// Written now, with a revision that is higher in every later minute (until the year 6053).
    pub fn now(at_millis: i64) -> Written {
        const MILLIS_A_MINUTE: i64 = 60_000;
        Written { at_millis, sequence: u32::try_from(at_millis / MILLIS_A_MINUTE).ok() }
    }
}

/// How long a round through the house takes in the calendar.
const ROUND: &str = "PT30M";

/// The greatest length of a line in bytes, its end not counted (RFC 5545, 3.1).
const LINE_BYTES: usize = 75;

/// Events as the text of a file.
///
/// Days outside the years 1 to 9998 cannot be written as the format wants them; their events are left out.
pub fn write(events: &[Event], written: Written) -> String {
    let mut out = String::new();
    for text in
        ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Broodwright//Crew calendar//EN", "CALSCALE:GREGORIAN"]
    {
        line(&mut out, text);
    }
    for event in events.iter().filter(|event| event.when.can_be_written()) {
        event.write(&mut out, written);
    }
    line(&mut out, "END:VCALENDAR");
    out
}

impl Event {
    fn write(&self, out: &mut String, written: Written) {
        line(out, "BEGIN:VEVENT");
        line(out, &format!("UID:{}", escaped(&self.uid)));
        line(out, &format!("DTSTAMP:{}", utc(written.at_millis)));
        if let Some(sequence) = written.sequence {
            line(out, &format!("SEQUENCE:{sequence}"));
        }
        self.when.write(out);
        line(out, &format!("SUMMARY:{}", escaped(&self.summary)));
        line(out, &format!("DESCRIPTION:{}", escaped(&self.description)));
        // A job does not make anybody busy all day.
        line(out, "TRANSP:TRANSPARENT");
        if let Some(minutes) = self.alarm_min {
            self.write_alarm(out, minutes);
        }
        line(out, "END:VEVENT");
    }

    fn write_alarm(&self, out: &mut String, minutes: i32) {
        line(out, "BEGIN:VALARM");
        line(out, "ACTION:DISPLAY");
        line(out, &format!("DESCRIPTION:{}", escaped(&self.summary)));
        line(out, &format!("TRIGGER:{}", duration(minutes)));
        line(out, "END:VALARM");
    }
}

impl When {
    fn can_be_written(self) -> bool {
        let last = match self {
            When::Days { last, .. } => last,
            When::Daily { first, times, .. } => first.plus_days(times),
        };
        let (When::Days { first, .. } | When::Daily { first, .. }) = self;
        first.year() > 0 && last.year() < 9999
    }

    fn write(self, out: &mut String) {
        match self {
            When::Days { first, last } => {
                line(out, &format!("DTSTART;VALUE=DATE:{}", date(first)));
                // The end of an all-day event is the first day that is no longer part of it.
                line(out, &format!("DTEND;VALUE=DATE:{}", date(last.plus_days(1))));
            }
            When::Daily { first, hour, times } => {
                line(out, &format!("DTSTART:{}T{hour:02}0000", date(first)));
                line(out, &format!("DURATION:{ROUND}"));
                if times > 1 {
                    line(out, &format!("RRULE:FREQ=DAILY;COUNT={times}"));
                }
            }
        }
    }
}

fn date(day: CivilDay) -> String {
    format!("{:04}{:02}{:02}", day.year(), day.month(), day.day())
}

fn utc(millis: i64) -> String {
    const MILLIS_A_SECOND: i64 = 1_000;
    const SECONDS_A_DAY: i64 = 86_400;
    let seconds = millis.div_euclid(MILLIS_A_SECOND);
    let day = CivilDay::from_number(i32::try_from(seconds.div_euclid(SECONDS_A_DAY)).unwrap_or_default());
    let second = seconds.rem_euclid(SECONDS_A_DAY);
    format!("{}T{:02}{:02}{:02}Z", date(day), second / 3600, second / 60 % 60, second % 60)
}

fn duration(minutes: i32) -> String {
    let sign = if minutes < 0 { "-" } else { "" };
    match minutes.unsigned_abs() {
        0 => "PT0S".to_owned(),
        whole if whole % 60 == 0 => format!("{sign}PT{}H", whole / 60),
        part => format!("{sign}PT{part}M"),
    }
}

/// Text with what the format uses itself marked (RFC 5545, 3.3.11); other control characters may not stand in it.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => out.extend(['\\', c]),
            '\n' => out.push_str("\\n"),
            c if c.is_control() && c != '\t' => {}
            c => out.push(c),
        }
    }
    out
}

/// One content line, folded where it is too long: between characters, never inside one.
fn line(out: &mut String, text: &str) {
    let mut length = 0;
    for c in text.chars() {
        if length + c.len_utf8() > LINE_BYTES {
            out.push_str("\r\n ");
            length = 1;
        }
        out.push(c);
        length += c.len_utf8();
    }
    out.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> CivilDay {
        CivilDay::parse(text).unwrap()
    }

    #[test]
    fn an_all_day_event_ends_on_the_day_after() {
        let event = Event {
            uid: "air-0.mango".into(),
            when: When::Days { first: day("2027-12-30"), last: day("2027-12-31") },
            summary: "Air, and dry; both".into(),
            description: "Why\nday −3".into(),
            alarm_min: Some(-360),
        };
        let text = write(&[event], Written { at_millis: 1_810_000_000_123, sequence: Some(3) });
        let expected = [
            "BEGIN:VCALENDAR",
            "VERSION:2.0",
            "PRODID:-//Broodwright//Crew calendar//EN",
            "CALSCALE:GREGORIAN",
            "BEGIN:VEVENT",
            "UID:air-0.mango",
            "DTSTAMP:20270511T014640Z",
            "SEQUENCE:3",
            "DTSTART;VALUE=DATE:20271230",
            "DTEND;VALUE=DATE:20280101",
            "SUMMARY:Air\\, and dry\\; both",
            "DESCRIPTION:Why\\nday −3",
            "TRANSP:TRANSPARENT",
            "BEGIN:VALARM",
            "ACTION:DISPLAY",
            "DESCRIPTION:Air\\, and dry\\; both",
            "TRIGGER:-PT6H",
            "END:VALARM",
            "END:VEVENT",
            "END:VCALENDAR",
            "",
        ];
        assert_eq!(text.split("\r\n").collect::<Vec<_>>(), expected);
    }

    #[test]
    fn rounds_repeat_by_the_clock_on_the_wall() {
        let mut out = String::new();
        When::Daily { first: day("2028-02-28"), hour: 2, times: 3 }.write(&mut out);
        assert_eq!(out, "DTSTART:20280228T020000\r\nDURATION:PT30M\r\nRRULE:FREQ=DAILY;COUNT=3\r\n");
    }

    #[test]
    fn a_line_of_75_bytes_stands_and_one_of_76_is_folded() {
        let folded = |text: &str| {
            let mut out = String::new();
            line(&mut out, text);
            out
        };
        assert_eq!(folded(&"a".repeat(75)), format!("{}\r\n", "a".repeat(75)));
        assert_eq!(folded(&"a".repeat(76)), format!("{}\r\n a\r\n", "a".repeat(75)));
        assert_eq!(folded(&format!("{}é", "a".repeat(74))), format!("{}\r\n é\r\n", "a".repeat(74)));
    }

    #[test]
    fn durations_say_their_direction() {
        let said = [-360, -10, 0, 90, 360].map(duration);
        assert_eq!(said, ["-PT6H", "-PT10M", "PT0S", "PT90M", "PT6H"]);
    }

    #[test]
    fn days_that_cannot_be_written_are_left_out() {
        let event = |first, last| Event {
            uid: String::new(),
            when: When::Days { first, last },
            summary: String::new(),
            description: String::new(),
            alarm_min: None,
        };
        let first = day("0001-01-01");
        let events = [event(first.plus_days(-1), first), event(first, first)];
        assert_eq!(write(&events, Written::now(0)).matches("BEGIN:VEVENT").count(), 1);
        let last = day("9999-01-01");
        assert!(!write(&[event(last, last)], Written::now(0)).contains("VEVENT"));
    }
}
