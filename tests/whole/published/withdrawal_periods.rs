//! The rule of withdrawal as labels and residue law mean it (published rule, worked by hand): whole periods of 24 hours
//! from the last medicated water, the hour of which, where unknown, is the day's end.

use present::show;

use super::sum;

fn shown(typed: &[(&str, &str)], id: &str) -> String {
    let sum = sum("withdrawal", typed);
    let worked = sum.outcome.get(id).unwrap();
    show::figure(&worked.figure, worked.spec, &present::Viewer::plain())
}

/// Last medicated water drunk on 3 March at 18:00, 7 days: clear on 10 March at 18:00, so the earliest slaughter by day
/// is on 11 March. Exact.
#[test]
fn seven_days_from_the_third_of_march_at_six() {
    let typed = [("last", "2027-03-03"), ("hour_h", "18"), ("days_d", "7")];
    assert_eq!(shown(&typed, "withdrawal.clear_day"), "10 March 2027");
    assert_eq!(shown(&typed, "withdrawal.clear_hour"), "18 h");
    assert_eq!(shown(&typed, "withdrawal.earliest_day"), "11 March 2027");
}

/// The same with the hour not known: the third ends before the count begins.
#[test]
fn an_unknown_hour_counts_as_the_days_end() {
    let typed = [("last", "2027-03-03"), ("days_d", "7")];
    assert_eq!(shown(&typed, "withdrawal.clear_day"), "11 March 2027");
    assert_eq!(shown(&typed, "withdrawal.clear_hour"), "0 h");
    assert_eq!(shown(&typed, "withdrawal.earliest_day"), "11 March 2027");
}
