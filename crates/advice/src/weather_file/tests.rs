use super::*;

const FILL: Fill = Fill { latitude_deg: -13.6, wind_m_per_s: 1.5 };

fn hour(weather: &Weather, day: CivilDay, years: i16, hour: usize) -> Option<Hour> {
    weather.hours(day, years, &FILL).map(|hours| hours[hour])
}

/// Whole days of a table: warmest after noon, the sun about noon.
fn table(first: &str, days: i32) -> String {
    let first = CivilDay::parse(first).unwrap();
    let row = |day: CivilDay, hour: i32| {
        let (sun, air) = (900 - 150 * (hour - 12).abs(), 22 - (hour - 14).abs());
        format!("{day} {hour:02}:00,{air},60,1.5,{}\n", sun.max(0))
    };
    let rows = (0..days).flat_map(|d| (0..24).map(move |hour| row(first.plus_days(d), hour)));
    "time,temperature_c,humidity_pct,wind_m_s,sun_w_m2\n".to_owned() + &rows.collect::<String>()
}

/// A year of EPW with a head as the format has it.
fn epw(year: i16) -> Vec<String> {
    let mut lines: Vec<String> = [
        "LOCATION,Invented Hill,-,XX,none,999999,-13.60,32.60,2.0,1100.0",
        "DESIGN CONDITIONS,0",
        "TYPICAL/EXTREME PERIODS,0",
        "GROUND TEMPERATURES,0",
        "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
        "COMMENTS 1,invented",
        "COMMENTS 2,invented",
        "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
    ]
    .map(str::to_owned)
    .to_vec();
    let first = CivilDay::new(year, 1, 1).unwrap();
    let mut day = first;
    while day.year() == year {
        for hour in 1..=24 {
            let sun = (900 - 150 * (hour - 12_i32).abs()).max(0);
            let (month, date) = (day.month(), day.day());
            lines.push(format!(
                "{year},{month},{date},{hour},60,?9?9?9,{}.5,12.0,60,89000,0,0,300,{sun},0,0,0,0,0,0,90,3.0,5,5,20,77777,9,999999999,0,0,0,88,0,0,0",
                22 - (hour - 14).abs()
            ));
        }
        day = day.plus_days(1);
    }
    lines
}

fn fault(text: &str) -> WeatherFault {
    read(text).unwrap_err()
}

fn in_table(from: &str, to: &str) -> WeatherFault {
    let text = table("2027-09-14", 3);
    assert!(text.contains(from), "{from}");
    fault(&text.replacen(from, to, 1))
}

#[test]
fn a_table_is_read_as_told() {
    let weather = read(&table("2027-09-14", 3)).unwrap();
    let day = CivilDay::parse("2027-09-15").unwrap();
    let noon = hour(&weather, day, 0, 12).unwrap();
    assert_eq!(
        noon,
        Hour { outside_c: 20.0, humidity: 0.6, wind_m_s: 1.5, sun_w_per_m2: 900.0, pressure_pa: None }
    );
    assert_eq!(hour(&weather, day.plus_days(2), 0, 0), None);
    assert_eq!(weather.years(day, day.plus_days(1)), [0]);
    assert_eq!(weather.years(day, day.plus_days(2)), Vec::<i16>::new());
    // The same days of a plan two years on.
    let later = CivilDay::parse("2029-09-15").unwrap();
    assert_eq!(weather.years(later, later), [-2]);
    assert_eq!(hour(&weather, later, -2, 12), Some(noon));
}

#[test]
fn what_is_not_told_is_filled_in() {
    let text: String = table("2027-09-14", 1)
        .lines()
        .map(|line| line.splitn(3, ',').take(2).collect::<Vec<_>>().join(",") + "\n")
        .collect();
    let weather = read(&text).unwrap();
    let day = CivilDay::parse("2027-09-14").unwrap();
    let (night, noon) = (hour(&weather, day, 0, 0).unwrap(), hour(&weather, day, 0, 12).unwrap());
    assert!(night.humidity > noon.humidity && noon.humidity > 0.2, "{night:?} {noon:?}");
    assert!(night.sun_w_per_m2 == 0.0 && noon.sun_w_per_m2 > 900.0 && noon.wind_m_s > night.wind_m_s);
}

#[test]
fn however_a_spreadsheet_saves_it() {
    let text = "\u{feff}# logger 3\r\n".to_owned() + &table("2027-09-14", 1).replace('\n', "\r\n");
    let plain = read(&table("2027-09-14", 1)).unwrap();
    assert_eq!(read(&text).unwrap(), plain);
    let semicolons = table("2027-09-14", 1).replace(',', ";").replace(";1.5;", ";1,5;");
    assert_eq!(read(&semicolons).unwrap(), plain);
    let iso = table("2027-09-14", 1).replace(":00,", ":00:00+02:00,").replace("14 ", "14T");
    let iso = read(&iso).unwrap();
    assert_eq!(iso.ahead_h, Some(2.0));
    assert_eq!(Weather { ahead_h: None, ..iso }, plain);
    let ahead =
        |zone: &str| read(&table("2027-09-14", 1).replace(":00,", &format!(":00{zone},"))).unwrap().ahead_h;
    assert_eq!([ahead("Z"), ahead("-0330"), ahead("+05:45")], [Some(0.0), Some(-3.5), Some(5.75)]);
    let fahrenheit =
        table("2027-09-14", 1).replace("temperature_c", "temperature_f").replace(":00,22,", ":00,71.6,");
    let day = CivilDay::parse("2027-09-14").unwrap();
    let warmest = hour(&read(&fahrenheit).unwrap(), day, 0, 14).unwrap().outside_c;
    assert!((warmest - 22.0).abs() < 1e-9, "{warmest}");
}

#[test]
fn a_year_of_epw_goes_with_any_year() {
    let common = read(&epw(2001).join("\n")).unwrap();
    assert!(common.is_of_no_year);
    assert_eq!(common.place.as_ref().unwrap().latitude_deg, -13.6);
    let leap_day = CivilDay::parse("2028-02-29").unwrap();
    let noon = hour(&common, leap_day, 0, 12).unwrap();
    // The row whose hour ends at 13:00; wind as it is at the curtains.
    assert_eq!((noon.outside_c, noon.humidity, noon.sun_w_per_m2), (21.5, 0.6, 750.0));
    assert!((noon.wind_m_s - 1.98).abs() < 1e-9);
    assert_eq!(common.years(leap_day, leap_day.plus_days(400)), [0]);
    assert_eq!(hour(&read(&epw(2004).join("\n")).unwrap(), leap_day, 0, 12), Some(noon));
}

#[test]
fn a_year_put_together_of_many_is_one() {
    let lines = epw(2001)
        .into_iter()
        .map(|line| if line.starts_with("2001,3,") { line.replacen("2001", "1987", 1) } else { line });
    assert!(read(&lines.collect::<Vec<_>>().join("\n")).is_ok());
}

#[test]
fn gaps_and_hours_told_twice_are_named() {
    let at = |text: &str, hour| Stamp { day: CivilDay::parse(text).unwrap(), hour };
    let hours = |text: String, from: usize, count: usize| -> String {
        let kept = text.lines().enumerate().filter(|(line, _)| !(from..from + count).contains(line));
        kept.map(|(_, line)| line.to_owned() + "\n").collect()
    };
    // Line 1 is the heading, so that the hour of line 12 is 10:00.
    let gap = fault(&hours(table("2027-09-14", 2), 11, 3));
    assert_eq!(gap, WeatherFault::Gap { line: 12, after: at("2027-09-14", 9), hours: 3 });
    assert_eq!(
        in_table("2027-09-14 10:00", "2027-09-14 09:00"),
        WeatherFault::Twice { line: 12, hour: at("2027-09-14", 9), first: 11 }
    );
    assert_eq!(
        in_table("2027-09-15 10:00", "2027-09-13 10:00"),
        WeatherFault::Back { line: 36, hour: at("2027-09-13", 10), after: at("2027-09-15", 9) }
    );
    let lines = epw(2001);
    let short = [&lines[..100], &lines[124..]].concat().join("\n");
    assert!(matches!(fault(&short), WeatherFault::Gap { line: 101, hours: 24, .. }));
}

#[test]
fn readings_that_stand_for_none_are_named() {
    for none in ["-999", "-9999", "-99", "-999.0", "", "9999"] {
        let told = in_table(" 05:00,13,", &format!(" 05:00,{none},"));
        assert_eq!(told, WeatherFault::NoReading { line: 7, column: "temperature_c", cell: none.to_owned() });
    }
    let mut lines = epw(2001);
    lines[20] = lines[20].replace(",12.0,60,", ",12.0,999,");
    let told = fault(&lines.join("\n"));
    assert!(
        matches!(told, WeatherFault::NoReading { line: 21, column: "relative humidity (9)", .. }),
        "{told}"
    );
}

#[test]
fn wrong_units_are_named() {
    let perhaps = |from: &str, to: &str| match in_table(from, to) {
        WeatherFault::OutOfRange { perhaps, .. } => perhaps,
        other => panic!("{other}"),
    };
    assert_eq!(perhaps(" 14:00,22,", " 14:00,71.6,"), Some(OtherUnit::Fahrenheit));
    assert_eq!(perhaps(" 14:00,22,", " 14:00,295.2,"), Some(OtherUnit::Kelvin));
    assert_eq!(perhaps(" 14:00,22,", " 14:00,220,"), Some(OtherUnit::Tenths));
    assert_eq!(perhaps(",900\n", ",3240\n"), Some(OtherUnit::Joules));
    assert_eq!(perhaps(",1.5,", ",54,"), Some(OtherUnit::KilometresPerHour));
    assert_eq!(perhaps(",60,", ",600,"), None);
    let column = |text: String| match fault(&text) {
        WeatherFault::ColumnUnit { column, perhaps, .. } => (column, perhaps),
        other => panic!("{other}"),
    };
    let text = table("2027-09-14", 1);
    assert_eq!(column(text.replace(",60,", ",0.6,")), ("humidity_pct", OtherUnit::Share));
    let kilowatts = text.lines().map(|line| match line.rsplit_once(',') {
        Some((rest, sun)) if sun.parse::<f64>().is_ok() => {
            format!("{rest},{}\n", sun.parse::<f64>().unwrap() / 1000.0)
        }
        _ => line.to_owned() + "\n",
    });
    assert_eq!(column(kilowatts.collect()), ("sun_w_m2", OtherUnit::Thousands));
    let warm: String = (0..24).map(|hour| format!("2027-09-14 {hour:02}:00,{}\n", 50 + hour / 4)).collect();
    assert_eq!(
        column("time,temperature_c\n".to_owned() + &warm),
        ("temperature_c", OtherUnit::Fahrenheit),
        "in range, each of them"
    );
}

#[test]
fn days_that_are_not_and_times_that_are_none() {
    let day = in_table("2027-09-14 05:00", "2027-02-29 05:00");
    assert!(matches!(day, WeatherFault::NoSuchDay { line: 7, column: "time", .. }), "{day}");
    let mut lines = epw(2001);
    lines[30] = "2001,2,29".to_owned() + &lines[30]["2001,1,1".len()..];
    assert!(matches!(fault(&lines.join("\n")), WeatherFault::NoSuchDay { line: 31, .. }));
    // A leap year's own is read.
    assert!(read(&epw(2004).join("\n")).is_ok());
    let half = in_table("2027-09-14 05:00", "2027-09-14 05:30");
    assert!(matches!(half, WeatherFault::NotOnTheHour { line: 7, .. }));
    for no in [
        "14/09/2027 05:00",
        "2027-09-14",
        "2027-09-14 25:00",
        "2027-09-14 5",
        "2027-09-14 05:00+xx",
        "2027-09-14 05:00+15:00",
        "",
        "2027-09-14 éé",
    ] {
        let told = in_table("2027-09-14 05:00", no);
        assert!(matches!(told, WeatherFault::NotATime { line: 7, .. }), "{no}: {told}");
    }
}

#[test]
fn a_clock_of_another_place_is_named() {
    // By universal time, of a place twelve hours off.
    let text = table("2027-09-14", 2);
    let suns: Vec<&str> = text.lines().skip(1).map(|line| line.rsplit_once(',').unwrap().1).collect();
    let moved: String = text
        .lines()
        .skip(1)
        .enumerate()
        .map(|(at, line)| format!("{},{}\n", line.rsplit_once(',').unwrap().0, suns[(at + 9) % 48]))
        .collect();
    let heading = text.lines().next().unwrap().to_owned() + "\n";
    let told = fault(&(heading + &moved));
    assert!(matches!(told, WeatherFault::Clock { hour } if (3.0..4.0).contains(&hour)), "{told}");
    let summer = text.replace(":00,", ":00+01:00,").replacen("15 00:00+01:00", "15 00:00+02:00", 1);
    let told = fault(&summer);
    assert!(matches!(told, WeatherFault::ClockChanges { line: 26, .. }), "{told}");
    let mut lines = epw(2001);
    lines[0] = lines[0].replace(",2.0,", ",-8.0,");
    assert!(matches!(fault(&lines.join("\n")), WeatherFault::ZoneOfPlace { line: 1, .. }));
}

#[test]
fn half_a_line_and_what_is_no_weather() {
    let text = table("2027-09-14", 2);
    let half = &text[..text.len() - 8];
    assert_eq!(fault(half), WeatherFault::Cells { line: 49, found: 3, wanted: 5 });
    let lines = epw(2001).join("\n");
    assert!(matches!(fault(&lines[..lines.len() - 60]), WeatherFault::Cells { wanted: 35, .. }));
    // A row that ends after the last cell that is read, though the rows before it are whole.
    assert_eq!(fault(&lines[..lines.len() - 20]), WeatherFault::Cells { line: 8_768, found: 28, wanted: 35 });
    assert_eq!(in_table(",60,", ",sixty,").to_string(), "line 2, humidity_pct: sixty is no number");
    assert!(matches!(in_table(",60,", ",NaN,"), WeatherFault::NotANumber { .. }));
    assert_eq!(fault(""), WeatherFault::Nothing);
    assert_eq!(fault("time,temperature_c\n"), WeatherFault::Nothing);
    assert_eq!(fault("\n\nday,dead\n1,2\n"), WeatherFault::NoColumn { line: 3, column: "time" });
    let near = WeatherFault::Column { line: 1, typed: "temprature_c".to_owned(), nearest: "temperature_c" };
    assert_eq!(fault("time,temprature_c\n"), near);
    assert_eq!(fault("LOCATION,x\n"), WeatherFault::Head { line: 1 });
    assert_eq!(fault(&"x".repeat(LONGEST_LINE + 1)), WeatherFault::LongLine { line: 1 });
    let mut several = epw(2001);
    several[7] = several[7].replace("PERIODS,1,1", "PERIODS,1,4");
    assert_eq!(fault(&several.join("\n")), WeatherFault::RowsAnHour { line: 8, rows: 4 });
    several.remove(7);
    assert_eq!(fault(&several.join("\n")), WeatherFault::Head { line: 8 });
    // Not one day of it whole.
    assert_eq!(fault(&text.lines().take(20).collect::<Vec<_>>().join("\n")), WeatherFault::Nothing);
}
