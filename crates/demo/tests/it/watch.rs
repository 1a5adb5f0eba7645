//! What the watch tells the grower of the invented farm.

use advice::walk::Walk;
use advice::watch::Watch;

use super::{running, state, today};

#[test]
fn dump() {
    for (at, batch) in super::batches().into_iter().enumerate() {
        let mut walk = Walk::read(state(), batch, today());
        if walk.diary.is_closed {
            let last = walk.diary.placement.unwrap().plus_days(40);
            walk = Walk::read(state(), batch, last);
        }
        let start = std::time::Instant::now();
        let watch = Watch::of(&walk).unwrap();
        println!("== {at} {:?} {:?}", watch.level(), start.elapsed());
        for told in watch.told() {
            println!("{told:?}");
        }
        for rule in &watch.rules { println!("{} {:?} {:?}", rule.name, rule.call, rule.days); }
        if batch == running() || at < 1 {
            for signal in &watch.signals {
                println!("-- {} {:?} look {} act {}", signal.name, signal.state, signal.look, signal.act);
                for day in &signal.days {
                    println!("{:3} {:8.2} {:8.2} [{:8.2} {:8.2}] m {:.2} {:?}", day.day, day.seen, day.likely, day.low, day.high, day.memory, day.level);
                }
            }
        }
    }
}
