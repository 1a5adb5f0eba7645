//! Worked examples of rules (derived: our arithmetic on the rule as stated).
//! Tolerances are the rounding of the printed value.

use model::disinfectant::{self, Room};
use model::{litter, space};
use quantity::{Area, Coverage, Dilution, Length, Mass, RatioMeaning};

use super::{near, sum};

/// Rule of the two meanings, derived: 1:10 in a litre is 90.9 mL (parts of water) or 100 mL (parts in all).
#[test]
fn one_to_ten_both_ways() {
    let water = sum("dilution", &[("ratio", "1:10"), ("tank_l", "1"), ("means", "parts-water")]);
    near(water.outcome.number("disinfectant.product_per_load").unwrap(), 90.9, 0.1);
    near(water.outcome.number("disinfectant.product_other_meaning").unwrap(), 100.0, 0.1);
    let total = sum("dilution", &[("ratio", "1:10"), ("tank_l", "1"), ("means", "parts-total")]);
    near(total.outcome.number("disinfectant.product_per_load").unwrap(), 100.0, 0.1);
}

/// Rule of areas, derived: a house 20 x 8 x 2.5 m under a flat roof has 460 m2 of floor, four walls and ceiling; at
/// 0.3 L/m2 and 1:200 (parts of water) that is 138 L of mix and 0.687 L of disinfectant.
/// The convention: gables and outer curtain faces are counted only where the grower chooses them.
#[test]
fn a_flat_house_of_460_square_metres() {
    let house = Room {
        length: Length::metres(20.0),
        width: Length::metres(8.0),
        eave: Length::metres(2.5),
        ridge: Length::metres(2.5),
        half_wall: Length::metres(0.0),
    };
    let area = house.floor() * 2.0 + house.walls();
    near(area.in_square_metres(), 460.0, 0.0);
    let mix = disinfectant::solution(area, Coverage::millilitres_per_square_metre(300.0));
    near(mix.in_litres(), 138.0, 1e-9);
    let dilution = Dilution::new(200.0, RatioMeaning::PartsWater).unwrap();
    near(disinfectant::product(mix, dilution).in_litres(), 0.687, 0.005);
}

/// Rule of litter, derived: 160 m2 at 5 cm is 8.0 m3.
#[test]
fn litter_for_160_square_metres() {
    near(litter::volume(Area::square_metres(160.0), Length::centimetres(5.0)).in_cubic_metres(), 8.0, 1e-12);
    let bags = sum("litter", &[("length_m", "20"), ("width_m", "8"), ("depth_cm", "5"), ("bag_l", "100")]);
    near(bags.outcome.number("litter.bags").unwrap(), 80.0, 0.0);
}

/// Rule, derived: 420 birds of 2.1 kg on 40 m2 are 22.05 kg/m2: over 20, under 33.
#[test]
fn four_hundred_and_twenty_birds_on_forty_square_metres() {
    let density = space::density(420.0, Mass::kilograms(2.1), Area::square_metres(40.0));
    near(density.in_kilograms_per_square_metre(), 22.05, 0.01);
}

/// Twenty birds worked by hand (derived): mean 1 990.0, sd 152.6, CV 7.67 %, 16 of 20 within a tenth; the ranges by the
/// rules of statistics: CV 5.83 to 11.23 %, evenness 58.4 to 91.9 %, mean give or take 71 g by Student's t.
#[test]
fn twenty_birds_weighed_one_by_one() {
    let weights =
        "1820 1950 2010 2080 1760 2150 1990 1900 2240 2060 1880 1970 2120 1690 2030 1940 2310 2000 1850 2050";
    let sum = sum("uniformity", &[("weights", weights)]);
    for (id, want, tolerance, ends) in [
        ("weighing.mean", 1990.0, 0.1, (1918.6, 2061.4)),
        ("weighing.sd", 152.6, 0.1, (116.0, 222.8)),
        ("weighing.cv", 7.67, 0.02, (5.83, 11.23)),
        ("weighing.uniformity", 80.0, 0.1, (58.4, 91.9)),
    ] {
        let figure = sum.outcome.get(id).unwrap().figure;
        near(figure.value.number(), want, tolerance);
        let band = figure.band.unwrap();
        near(band.low, ends.0, 0.051);
        near(band.high, ends.1, 0.051);
    }
    near(sum.outcome.number("weighing.n").unwrap(), 20.0, 0.0);
}

/// Derived: all alike have a CV of 0 and are all even.
#[test]
fn birds_all_alike() {
    let sum = sum("uniformity", &[("weights", "2000 2000 2000 2000")]);
    for (id, want) in
        [("weighing.cv", 0.0), ("weighing.uniformity", 100.0), ("weighing.uniformity_normal", 100.0)]
    {
        near(sum.outcome.number(id).unwrap(), want, 0.0);
    }
}

/// The rule of the bell curve, derived: CV 8, 10, 12 are 78.9, 68.3, 59.5 %. CV 10 within 2 % are 97 birds, 81 of 500 and
/// 73 of 300; 50 birds give 2.8 % either way.
#[test]
fn birds_to_weigh() {
    for (cv, share) in [("8", 78.9), ("10", 68.3), ("12", 59.5)] {
        let of_curve = sum("uniformity", &[("cv_percent", cv)]);
        near(of_curve.outcome.number("weighing.uniformity_normal").unwrap(), share, 0.1);
    }
    let weigh = |more: &[(&str, &str)]| {
        sum("sample-size", &[&[("cv_percent", "10"), ("error_percent", "2")], more].concat())
    };
    for (flock, birds) in [(None, 97.0), (Some("500"), 81.0), (Some("300"), 73.0)] {
        let of_flock = weigh(&flock.map(|flock| ("birds", flock)).into_iter().collect::<Vec<_>>());
        near(of_flock.outcome.number("weighing.sample_size_normal").unwrap(), birds, 1.0);
    }
    let fifty = weigh(&[("weighed", "50")]);
    near(fifty.outcome.number("weighing.mean_error").unwrap(), 2.8, 0.05);
}

/// The rule of the bell curve turned round, derived: 68.3 % within a tenth is a CV of 10.0 %.
#[test]
fn from_evenness_back_to_the_cv() {
    let cv = 10.0 / model::quantile::normal((1.0 + 0.683) / 2.0).unwrap();
    near(cv, 10.0, 0.05);
    let there = sum("uniformity", &[("cv_percent", &cv.to_string())]);
    near(there.outcome.number("weighing.uniformity_normal").unwrap(), 68.3, 1e-6);
}

/// The rule of two sexes, derived: equal numbers with a CV of 8 % each and 10, 15, 20 % between them differ by 9.4, 11.0,
/// 12.8 % together.
#[test]
fn cocks_and_hens_together() {
    use model::weighing::sexes::{Part, mixed_variation};
    for (gap, cv) in [(0.10, 9.4), (0.15, 11.0), (0.20, 12.8)] {
        // The rule takes the CV of each sex as a share of the mean of both.
        let part = |mean: f64| Part { share: 0.5, mean, variation: 0.08 / mean };
        near(100.0 * mixed_variation(&[part(1.0 + gap / 2.0), part(1.0 - gap / 2.0)]), cv, 0.1);
    }
}

/// One bird (derived): a mean, and no CV to speak of.
#[test]
fn one_bird_has_no_cv() {
    let one =
        advice::weighing::Weighing::of_weights(&[1820.0]).held_against(&advice::weighing::Aim::default());
    near(one.outcome.number("weighing.mean").unwrap(), 1820.0, 0.0);
    assert!(one.outcome.get("weighing.cv").is_none() && one.outcome.get("weighing.sd").is_none());
}

/// A flock worked by hand (made-up prices, derived): 500 placed, 478 sold at 2.05 kg on day 42, chicks of 42 g; 36 bags of
/// 50 kg at 260, 12 kg left over; cost 15 810, price 17 a kg.
#[test]
fn a_worked_flock() {
    let feed = sum("feed-conversion", &[("feed_kg", "1788"), ("live_kg", "979.9")]);
    near(feed.outcome.number("performance.fcr_sold").unwrap(), 1.825, 0.001);
    let inputs = [("livability", "95.6"), ("weight_kg", "2.05"), ("age_d", "42"), ("fcr", "1.8247")];
    let whole = sum("index", &inputs);
    near(whole.outcome.number("performance.epef").unwrap(), 255.7, 0.2);
    near(whole.outcome.number("performance.daily_gain").unwrap(), 48.8, 0.05);
    let less_chick = sum("index", &[&inputs[..], &[("chick_g", "42")]].concat());
    near(less_chick.outcome.number("performance.daily_gain").unwrap(), 47.8, 0.05);
    let cost = |total| {
        let sold = [("live_kg", "979.9"), ("price_per_kg", "17"), ("birds_sold", "478"), ("chicks", "500")];
        sum(
            "break-even",
            &[&[("cost_total", total), ("feed_kg", "1800"), ("feed_price_per_kg", "5.2")], &sold[..]]
                .concat(),
        )
    };
    let batch = cost("15810");
    let get = |id| batch.outcome.number(id).unwrap();
    near(get("performance.break_even_price"), 16.13, 0.005);
    near(get("performance.profit"), 848.30, 0.01);
    near(get("performance.break_even_feed_price") * 50.0, 283.56, 0.02);
    near(get("performance.break_even_weight"), 15_810.0 / (17.0 * 478.0), 1e-9);
    near(get("performance.break_even_livability"), 100.0 * 15_810.0 / (17.0 * 2.05 * 500.0), 1e-9);
    // At the break-even conversion and feed price nothing is left over.
    let other = 15_810.0 - 9_360.0;
    near(get("performance.break_even_fcr") * 5.2 * 979.9 + other, 16_658.30, 1e-6);
    // Feed a tenth dearer: 936 more, and a loss at 17.
    let dearer = cost("16746");
    near(dearer.outcome.number("performance.break_even_price").unwrap(), 17.09, 0.01);
    assert!(dearer.findings.iter().any(|finding| finding.name == "sells-at-a-loss"));
}
