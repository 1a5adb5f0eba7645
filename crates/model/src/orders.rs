//! Orders filled from a flock: which birds go to which buyer, so that as many birds as were promised go where they were promised,
//! and among such ways the one that brings most.
//!
//! A problem of transport, solved by ever cheapest paths through what is already given away ([ford-fulkerson-1962], from memory):
//! whole birds in, whole birds out, and no way brings more.

/// An order as the flock sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Birds that are wanted.
    pub birds: u32,
    /// What it pays for a bird of each class; `None` for a class that it does not take.
    pub pays: Vec<Option<f64>>,
}

/// Orders filled.
#[derive(Clone, Debug, PartialEq)]
pub struct Filled {
    /// Birds of each class that go to each order.
    pub given: Vec<Vec<u32>>,
    /// Birds of each class that go elsewhere.
    pub left: Vec<u32>,
    /// What all birds bring.
    pub brings: f64,
}

/// Fills orders.
///
/// - `classes`: birds of each class of weight
/// - `elsewhere`: what a bird of each class brings to whoever else buys
///
/// `None` where an order does not name every class.
pub fn fill(classes: &[u32], elsewhere: &[f64], orders: &[Order]) -> Option<Filled> {
    let fits = |order: &Order| order.pays.len() == classes.len();
    if elsewhere.len() != classes.len() || !orders.iter().all(fits) {
        return None;
    }
    let mut plan = Plan {
        orders,
        gain: orders.iter().map(|order| gains(order, elsewhere)).collect(),
        given: vec![vec![0; classes.len()]; orders.len()],
        left: classes.to_vec(),
        open: orders.iter().map(|order| order.birds).collect(),
    };
    while let Some(path) = plan.best_path() {
        plan.take(&path);
    }
    let pays = |order: usize, class: usize| orders[order].pays[class].unwrap_or_default();
    let taken = plan.given.iter().enumerate().flat_map(|(order, birds)| {
        birds.iter().enumerate().map(move |(class, birds)| f64::from(*birds) * pays(order, class))
    });
    let others = plan.left.iter().zip(elsewhere).map(|(birds, worth)| f64::from(*birds) * worth);
    let brings = taken.chain(others).sum();
    Some(Filled { given: plan.given, left: plan.left, brings })
}

/// What an order pays more for a bird of each class than others would.
fn gains(order: &Order, elsewhere: &[f64]) -> Vec<Option<f64>> {
    order.pays.iter().zip(elsewhere).map(|(pays, worth)| pays.map(|pays| pays - worth)).collect()
}

struct Plan<'a> {
    orders: &'a [Order],
    gain: Vec<Vec<Option<f64>>>,
    given: Vec<Vec<u32>>,
    left: Vec<u32>,
    open: Vec<u32>,
}

/// A class of which a bird is left, then an order that takes it, then the class of a bird that this order gives up for it, and so
/// on, up to an order that is still open.
type Path = Vec<(usize, usize)>;

impl Plan<'_> {
    /// The path that brings most; every path fills one more bird of an order.
    fn best_path(&self) -> Option<Path> {
        let (classes, orders) = (self.left.len(), self.orders.len());
        // What a bird freed in a class brings at best so far, and by which order's bird it was freed.
        let mut at_class: Vec<Option<f64>> =
            self.left.iter().map(|left| (*left > 0).then_some(0.0)).collect();
        let mut at_order: Vec<Option<f64>> = vec![None; orders];
        let mut into: Vec<usize> = vec![0; orders];
        let mut freed_by: Vec<Option<usize>> = vec![None; classes];
        // A path visits no class twice, so that after as many rounds as there are classes nothing changes.
        for _ in 0..=classes {
            let mut is_better = false;
            for (order, gains) in self.gain.iter().enumerate() {
                let ways = at_class.iter().zip(gains).enumerate();
                let ways = ways.filter_map(|(class, (so_far, gain))| Some((class, (*so_far)? + (*gain)?)));
                for (class, brings) in ways {
                    if at_order[order].is_none_or(|known| brings > known + 1e-9) {
                        (at_order[order], into[order], is_better) = (Some(brings), class, true);
                    }
                }
            }
            for (order, given) in self.given.iter().enumerate() {
                let Some(so_far) = at_order[order] else { continue };
                let freed = given.iter().zip(&self.gain[order]).enumerate();
                let freed = freed.filter(|(_, (birds, _))| **birds > 0);
                for (class, gain) in freed.filter_map(|(class, (_, gain))| Some((class, (*gain)?))) {
                    if at_class[class].is_none_or(|known| so_far - gain > known + 1e-9) {
                        (at_class[class], freed_by[class], is_better) =
                            (Some(so_far - gain), Some(order), true);
                    }
                }
            }
            if !is_better {
                break;
            }
        }
        let open = (0..orders).filter(|order| self.open[*order] > 0);
        let reached = open.filter_map(|order| Some((order, at_order[order]?)));
        let (mut order, _) = reached.reduce(|best, one| if one.1 > best.1 { one } else { best })?;
        let mut path = vec![(into[order], order)];
        while let Some(freed) = freed_by[into[order]] {
            order = freed;
            path.push((into[order], order));
            if path.len() > classes + 1 {
                return None;
            }
        }
        path.reverse();
        Some(path)
    }

    /// Gives as many birds along a path as it has room for.
    fn take(&mut self, path: &Path) {
        let (Some((first, _)), Some((_, last))) = (path.first(), path.last()) else { return };
        let given_up = path.windows(2).map(|pair| self.given[pair[0].1][pair[1].0]);
        let ends = [self.left[*first], self.open[*last]];
        let Some(birds) = given_up.chain(ends).min() else { return };
        self.left[*first] -= birds;
        self.open[*last] -= birds;
        for (class, order) in path {
            self.given[*order][*class] += birds;
        }
        for pair in path.windows(2) {
            self.given[pair[0].1][pair[1].0] -= birds;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Draw;

    /// Every way there is, by trying all: the most birds to orders, then the most money.
    fn brute(classes: &[u32], elsewhere: &[f64], orders: &[Order]) -> (u32, f64) {
        let bare: f64 = classes.iter().zip(elsewhere).map(|(birds, worth)| f64::from(*birds) * worth).sum();
        let gain: Vec<Vec<Option<f64>>> = orders.iter().map(|order| gains(order, elsewhere)).collect();
        let open: Vec<u32> = orders.iter().map(|order| order.birds).collect();
        let birds: Vec<usize> =
            classes.iter().enumerate().flat_map(|(class, birds)| vec![class; *birds as usize]).collect();
        best_of(&birds, &gain, open, 0, bare)
    }

    fn best_of(
        birds: &[usize],
        gain: &[Vec<Option<f64>>],
        open: Vec<u32>,
        filled: u32,
        brings: f64,
    ) -> (u32, f64) {
        let Some((class, rest)) = birds.split_first() else { return (filled, brings) };
        let mut best = best_of(rest, gain, open.clone(), filled, brings);
        for order in 0..gain.len() {
            if let (Some(more), true) = (gain[order][*class], open[order] > 0) {
                let mut open = open.clone();
                open[order] -= 1;
                let found = best_of(rest, gain, open, filled + 1, brings + more);
                if found.0 > best.0 || (found.0 == best.0 && found.1 > best.1) {
                    best = found;
                }
            }
        }
        best
    }

    fn drawn(scenario: u32) -> (Vec<u32>, Vec<f64>, Vec<Order>) {
        let at = |stream: u32, n: u32| Draw { seed: 5, scenario, stream, day: 0, n }.units();
        let classes: Vec<u32> = (0..4).map(|class| (3.0 * at(1, class)[0]) as u32).collect();
        let elsewhere: Vec<f64> = (0..4).map(|class| 50.0 + (20.0 * at(2, class)[0]).floor()).collect();
        let order = |number: u32| Order {
            birds: 1 + (3.0 * at(3, number)[0]) as u32,
            pays: (0..4)
                .map(|class| {
                    let units = at(4 + number, class);
                    (units[0] < 0.7).then(|| 40.0 + (40.0 * units[1]).floor())
                })
                .collect(),
        };
        (classes, elsewhere, (0..3).map(order).collect())
    }

    #[test]
    fn no_other_way_fills_or_brings_more() {
        let mut filled = 0;
        for scenario in 0..300 {
            let (classes, elsewhere, orders) = drawn(scenario);
            let found = fill(&classes, &elsewhere, &orders).unwrap();
            let (most, brings) = brute(&classes, &elsewhere, &orders);
            let given: u32 = found.given.iter().flatten().sum();
            assert_eq!(given, most, "{scenario}");
            assert!((found.brings - brings).abs() < 1e-9, "{scenario}: {} {brings}", found.brings);
            filled += given;
            for (class, birds) in classes.iter().enumerate() {
                let gone: u32 = found.given.iter().map(|order| order[class]).sum();
                assert_eq!(gone + found.left[class], *birds);
            }
            for (order, given) in orders.iter().zip(&found.given) {
                assert!(given.iter().sum::<u32>() <= order.birds);
                assert!(given.iter().zip(&order.pays).all(|(birds, pays)| *birds == 0 || pays.is_some()));
            }
        }
        assert!(filled > 500, "{filled}");
    }

    #[test]
    fn an_order_that_no_bird_can_meet_gets_none() {
        let order = Order { birds: 10, pays: vec![None, None] };
        let found = fill(&[5, 5], &[60.0, 70.0], &[order]).unwrap();
        assert_eq!((found.given, found.left, found.brings), (vec![vec![0, 0]], vec![5, 5], 650.0));
        assert_eq!(fill(&[5], &[1.0], &[Order { birds: 1, pays: vec![] }]), None);
        assert_eq!(fill(&[], &[], &[]).unwrap().brings, 0.0);
    }
}
