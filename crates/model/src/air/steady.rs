//! A house whose air stands still in time: what must go through it, and what heaters or an opening must do then.
//!
//! Where the hours of [`super::run`] hold heat and water from one to the next, this is the sum for a blackboard: all of one
//! moment in balance.

use quantity::{Mass, Temperature};

use super::opening;
use crate::bird_heat;
use crate::moist_air::MoistAir;

/// A moment of a house. Heat of birds by the house-level split of CIGR 2002: litter is paid for in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// How many.
    pub birds: f64,
    /// One of them, kg; above 0.
    pub bird_kg: f64,
    /// Wanted inside, °C.
    pub inside_c: f64,
    /// Most humidity wanted inside, share.
    pub inside_humidity: f64,
    /// Outside, °C.
    pub outside_c: f64,
    /// Outside, share.
    pub outside_humidity: f64,
    /// Pa.
    pub pressure_pa: f64,
    /// Through walls, roof and floor, W/K.
    pub through_w_per_k: f64,
    /// Sun through the roof, W.
    pub sun_w: f64,
    /// Most carbon dioxide inside, share.
    pub co2_most: f64,
    /// Outside, share.
    pub co2_outside: f64,
}

/// What a moment comes to. Flows are of dry air, kg/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balanced {
    /// All that birds give off, W.
    pub total_w: f64,
    /// What of it warms the air, W.
    pub sensible_w: f64,
    /// Water they give off, kg/s.
    pub moisture_kg_s: f64,
    /// Carbon dioxide, m3/s.
    pub co2_m3_s: f64,
    /// The air inside at the most humidity wanted.
    pub within: MoistAir,
    /// The air outside.
    pub fresh: MoistAir,
    /// Flow that carries the water off; below 0 or without end where outside air is as damp as that wanted inside: then no
    /// flow dries it.
    pub by_moisture: f64,
    /// Flow that carries the carbon dioxide off.
    pub by_co2: f64,
    /// Flow that carries the heat off; below 0 where it does not even pay for walls and roof.
    pub by_heat: f64,
    /// The larger of what water and carbon dioxide ask for.
    pub needed: f64,
    /// Heat to put in at that flow, W.
    pub heater_w: f64,
    /// Where the air settles at that flow without it, °C.
    pub settles_c: f64,
}

impl Moment {
    /// The balance; `None` for air that cannot be.
    pub fn balanced(&self) -> Option<Balanced> {
        let (inside, outside) = (Temperature::celsius(self.inside_c), Temperature::celsius(self.outside_c));
        let within = MoistAir::new(inside, self.inside_humidity, self.pressure_pa)?;
        let fresh = MoistAir::new(outside, self.outside_humidity, self.pressure_pa)?;
        let at_20c = self.birds * bird_heat::total_at_20c(Mass::kilograms(self.bird_kg));
        let correction = bird_heat::correction(inside);
        let total_w = at_20c * correction;
        let sensible_w = at_20c * bird_heat::sensible_share(inside, correction);
        let moisture_kg_s = bird_heat::moisture_g_per_h(total_w - sensible_w) / 3.6e6;
        let co2_m3_s = bird_heat::carbon_dioxide_m3_per_h(total_w) / 3600.0;
        let warmer = self.inside_c - self.outside_c;
        let by_moisture = moisture_kg_s / (within.humidity_ratio() - fresh.humidity_ratio());
        let by_co2 = co2_m3_s / (self.co2_most - self.co2_outside) / within.specific_volume();
        let heat_of_air = fresh.heat_capacity();
        let warms = sensible_w + self.sun_w;
        let needed = by_moisture.max(by_co2);
        let loss = self.through_w_per_k + needed * heat_of_air;
        Some(Balanced {
            total_w,
            sensible_w,
            moisture_kg_s,
            co2_m3_s,
            within,
            fresh,
            by_moisture,
            by_co2,
            by_heat: (warms - self.through_w_per_k * warmer) / (heat_of_air * warmer),
            needed,
            heater_w: (loss * warmer - warms).max(0.0),
            settles_c: self.settles(at_20c, loss),
        })
    }

    /// The root of birds(t) + sun = loss (t − outside). Sensible heat of birds is a quadratic in t, so it has one above.
    fn settles(&self, at_20c: f64, loss: f64) -> f64 {
        let share = |c: f64| {
            let air = Temperature::celsius(c);
            0.61 * bird_heat::correction(air) - 0.228e-3 * c.powi(2)
        };
        let square = 0.228e-3 * at_20c;
        let slope = (share(0.0) - share(1.0)) * at_20c - square + loss;
        let constant = share(0.0) * at_20c + self.sun_w + loss * self.outside_c;
        if square <= 0.0 {
            return constant / slope;
        }
        ((slope.powi(2) + 4.0 * square * constant).sqrt() - slope) / (2.0 * square)
    }
}

impl Balanced {
    /// Volume of outside air of a flow, m3/s.
    pub fn volume_m3_s(&self, flow: f64) -> f64 {
        flow * self.fresh.specific_volume()
    }

    /// The opening of one side, with as much on the other, for the needed flow or for the heat where that is more, m2; `None`
    /// where air stands still.
    pub fn opening_m2(&self, speed_m_s: f64) -> Option<f64> {
        opening::area_for(self.volume_m3_s(self.needed.max(self.by_heat)), speed_m_s)
    }
}

/// Hours in which a body that holds `j_per_k` and loses `w_per_k` goes 63 % of its way.
pub fn time_constant_h(j_per_k: f64, w_per_k: f64) -> f64 {
    j_per_k / w_per_k / 3600.0
}

/// Where such a body stands after some hours, °C, with steady heat.
pub fn after_hours(from_c: f64, outside_c: f64, heat_w: f64, w_per_k: f64, j_per_k: f64, hours: f64) -> f64 {
    let settles = outside_c + heat_w / w_per_k;
    settles + (from_c - settles) * (-hours / time_constant_h(j_per_k, w_per_k)).exp()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_settles_where_heat_in_is_heat_out() {
        let moment = Moment {
            birds: 700.0,
            bird_kg: 1.5,
            inside_c: 22.0,
            inside_humidity: 0.7,
            outside_c: 12.0,
            outside_humidity: 0.75,
            pressure_pa: 95_000.0,
            through_w_per_k: 500.0,
            sun_w: 300.0,
            co2_most: 0.003,
            co2_outside: 0.00042,
        };
        let balanced = moment.balanced().unwrap();
        let air = Temperature::celsius(balanced.settles_c);
        let at_20c = 700.0 * bird_heat::total_at_20c(Mass::kilograms(1.5));
        let heat_in = at_20c * bird_heat::sensible_share(air, bird_heat::correction(air)) + 300.0;
        let loss = 500.0 + balanced.needed * balanced.fresh.heat_capacity();
        assert!((heat_in - loss * (balanced.settles_c - 12.0)).abs() < 1e-6);
        let nobody = Moment { birds: 0.0, ..moment }.balanced().unwrap();
        assert!((nobody.settles_c - 12.6).abs() < 1e-9, "300 W over 500 W/K: {}", nobody.settles_c);
        assert!(Moment { inside_humidity: 1.2, ..moment }.balanced().is_none());
    }

    /// Newton's cooling, exactly: after one time constant 1/e of the way is left.
    #[test]
    fn a_body_cools_by_e() {
        let hours = time_constant_h(3.6e6, 500.0);
        assert!((hours - 2.0).abs() < 1e-12);
        let left = after_hours(24.0, 10.0, 0.0, 500.0, 3.6e6, hours) - 10.0;
        assert!((left - 14.0 / std::f64::consts::E).abs() < 1e-12);
    }
}
