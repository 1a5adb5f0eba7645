//! scipy 1.17.1 (HiGHS): twelve purchases of feed in bags of one to three sizes. The file carries its own header.
//!
//! Costs within 1e-6, each proven.

use model::buying::{Buying, Feed, Measure, Size, cost};

const TABLE: &str = include_str!("../tables/bag_sizes.csv");

fn numbers(text: &str) -> Vec<f64> {
    text.split(' ').map(|word| word.parse().unwrap()).collect()
}

fn feed(measures: &str, sizes: &str) -> Feed {
    let measure = |text: &str| {
        let (needed, finished) = text.split_once(':').unwrap();
        Measure { needed: needed.parse().unwrap(), finished: finished.parse().unwrap() }
    };
    let size = |text: &str| {
        let (measures, price) = text.split_once('|').unwrap();
        Size { measures: measures.parse().unwrap(), price: numbers(price) }
    };
    Feed { measures: measures.split(' ').map(measure).collect(), sizes: sizes.split('/').map(size).collect() }
}

#[test]
fn a_general_solver_buys_no_cheaper() {
    let lines = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    let mut cases = 0;
    for line in lines {
        let cells: Vec<&str> = line.split(',').collect();
        let [case, keeps, fee, measures, sizes, least] = cells.as_slice() else { panic!("{line}") };
        let feeds = measures.split(';').zip(sizes.split(';')).map(|(measures, sizes)| feed(measures, sizes));
        let buying = Buying {
            feeds: feeds.collect(),
            fee: numbers(fee),
            holding: 0.0,
            keeps: keeps.parse().unwrap(),
            room: None,
            stock: Vec::new(),
            credit: None,
        };
        let best = buying.best().unwrap();
        let least: f64 = least.parse().unwrap();
        assert!((best.cost.total() - least).abs() < 1e-6, "case {case}: {:?} and not {least}", best.cost);
        assert!(best.is_proven(), "case {case}: {best:?}");
        assert_eq!(cost(&buying, &best.parts), Some(best.cost), "case {case}");
        cases += 1;
    }
    assert_eq!(cases, 12);
}
