//! Many weathers, and what is not known of the house: bands, not one line.

use super::{AirFault, Flock, Hour, House, Management, Run, run};

/// What one member differs by from the middle, each a factor but the two last.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Perturbation {
    /// On the heat of the birds.
    pub bird_heat: f64,
    /// On walls, curtains, roof and edge.
    pub through: f64,
    /// On what leaks in.
    pub leakage: f64,
    /// On wind at the opening.
    pub wind: f64,
    /// Added to the roof's absorptance.
    pub absorptance: f64,
    /// Added to the weather, K.
    pub outside_k: f64,
}

/// Standard deviations (our judgement): factors are of their logarithm.
const SPREAD: Perturbation = Perturbation {
    bird_heat: 0.10,
    through: 0.20,
    leakage: 0.69,
    wind: 0.40,
    absorptance: 0.10,
    outside_k: 1.5,
};

impl Perturbation {
    /// The member at six draws of a standard normal law.
    pub fn at(normal: [f64; 6]) -> Perturbation {
        Perturbation {
            bird_heat: (SPREAD.bird_heat * normal[0]).exp(),
            through: (SPREAD.through * normal[1]).exp(),
            leakage: (SPREAD.leakage * normal[2]).exp(),
            wind: (SPREAD.wind * normal[3]).exp(),
            absorptance: SPREAD.absorptance * normal[4],
            outside_k: SPREAD.outside_k * normal[5],
        }
    }

    /// Runs the house so perturbed; what would leave its range is held at its edge.
    ///
    /// # Errors
    /// The first figure out of range.
    pub fn run(
        self,
        house: &House,
        flock: &Flock,
        management: &Management,
        weather: &[Hour],
    ) -> Result<Run, AirFault> {
        let house = House {
            walls_w_per_k: house.walls_w_per_k * self.through,
            curtain_w_per_k: house.curtain_w_per_k * self.through,
            roof_w_per_k: house.roof_w_per_k * self.through,
            perimeter_w_per_k: house.perimeter_w_per_k * self.through,
            leakage_per_h: (house.leakage_per_h * self.leakage).clamp(0.01, 100.0),
            roof_absorptance: (house.roof_absorptance + self.absorptance).clamp(0.0, 1.0),
            ..*house
        };
        let flock =
            Flock { heat_factor: (flock.heat_factor * self.bird_heat).clamp(0.5, 2.0), ..flock.clone() };
        let weather: Vec<Hour> = weather
            .iter()
            .map(|hour| Hour {
                outside_c: (hour.outside_c + self.outside_k).clamp(-30.0, 55.0),
                wind_m_s: (hour.wind_m_s * self.wind).min(30.0),
                ..*hour
            })
            .collect();
        run(&house, &flock, management, &weather)
    }
}
