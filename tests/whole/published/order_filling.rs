//! scipy 1.17.1 (HiGHS): twelve flocks of thirty classes of weight and eight orders. The file carries its own header.
//!
//! Birds exactly, money within 1e-6.

use model::orders::{Order, fill};

const TABLE: &str = include_str!("../tables/order_filling.csv");

fn numbers(text: &str) -> Vec<f64> {
    text.split(' ').map(|word| word.parse().unwrap()).collect()
}

fn whole(text: &str) -> Vec<u32> {
    numbers(text).into_iter().map(|number| number as u32).collect()
}

#[test]
fn a_general_solver_fills_and_brings_no_more() {
    let lines = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    let mut cases = 0;
    for line in lines {
        let cells: Vec<&str> = line.split(',').collect();
        let [case, birds, elsewhere, wanted, pays, filled, brings] = cells.as_slice() else {
            panic!("{line}")
        };
        let pays = pays.split(';').map(|row| {
            numbers(row).into_iter().map(|pays| (pays >= 0.0).then_some(pays)).collect::<Vec<Option<f64>>>()
        });
        let orders: Vec<Order> =
            whole(wanted).into_iter().zip(pays).map(|(birds, pays)| Order { birds, pays }).collect();
        let found = fill(&whole(birds), &numbers(elsewhere), &orders).unwrap();
        let given: u32 = found.given.iter().flatten().sum();
        assert_eq!(given, filled.parse::<u32>().unwrap(), "case {case}");
        let brings: f64 = brings.parse().unwrap();
        assert!((found.brings - brings).abs() < 1e-6, "case {case}: {} and not {brings}", found.brings);
        cases += 1;
    }
    assert_eq!(cases, 12);
}
