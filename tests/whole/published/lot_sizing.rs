//! scipy 1.17.1 (HiGHS) and every whole-number plan tried: five purchases with a shelf life. The file carries its own header.
//!
//! Costs exactly (1e-9); the plan where it is the only one of least cost.

use advice::verify::verify;

const TABLE: &str = include_str!("../tables/lotsizing.csv");

#[test]
fn every_optimum_agrees() {
    let expected = reference::Table::read("lotsizing", TABLE).unwrap();
    let rows = verify(TABLE).unwrap();
    assert_eq!((rows.len(), expected.rows.len()), (27, 27));
    let mut plans = 0;
    for (row, cells) in rows.iter().zip(&expected.rows) {
        let want = |column: &str| expected.number(cells, column).unwrap().unwrap();
        let got = |column: &str| row[column].as_f64().unwrap();
        assert!((got("optimal_cost") - want("optimal_cost")).abs() < 1e-9, "{row:?}");
        if want("optimal_plans") == 1.0 {
            plans += 1;
            assert_eq!(got("optimal_order_bags"), want("optimal_order_bags"), "{row:?}");
        }
    }
    assert_eq!(plans, 22);
}

/// Feed that keeps less long, or a smaller store, never makes it cheaper; one period buys what it eats.
#[test]
fn tighter_conditions_cost_more() {
    let cost = |table: &str, instance: &str| {
        let rows = verify(table).unwrap();
        let row = rows.iter().find(|row| row["instance"] == instance).unwrap();
        row["optimal_cost"].as_f64().unwrap_or(f64::INFINITY)
    };
    let lines: Vec<&str> = TABLE.lines().filter(|line| !line.starts_with('#')).collect();
    let with = |at: usize, change: i32| {
        let row = |line: &&str| {
            let mut cells: Vec<String> = line.split(',').map(str::to_owned).collect();
            if let Ok(number) = cells[at].parse::<i32>() {
                cells[at] = (number + change).to_string();
            }
            cells.join(",")
        };
        lines.iter().map(row).collect::<Vec<_>>().join("\n")
    };
    for instance in ["rising_price", "short_life", "small_store", "stock_in_hand", "lumpy"] {
        let told = cost(TABLE, instance);
        assert!(cost(&with(6, -1), instance) >= told - 1e-9, "{instance}");
        assert!(cost(&with(7, -1), instance) >= told - 1e-9, "{instance}");
    }
    assert!(cost(&with(6, -1), "rising_price") > cost(TABLE, "rising_price") + 1.0);
    let one = "instance,period,demand_bags,order_cost,price_per_bag,holding_cost_per_bag_period,\
               shelf_life_periods,storage_cap_bags,first_stock_bags\none,1,7,5,10,1,3,9,0\n";
    assert_eq!(verify(one).unwrap()[0]["optimal_order_bags"], 7);
    assert_eq!(verify(one).unwrap()[0]["optimal_cost"], 75.0);
}
