//! Areas to treat, mix to make, disinfectant to measure.
//!
//! The convention of areas, since texts differ: the floor is length × width; walls are the inner faces up to the eave,
//! half-wall and curtain together; gables are the two triangles above the eave; a ceiling is flat and as large as the
//! floor; a roof is its underside along the slope; curtains are their outer faces, which come on top of the inner
//! ones already counted in the walls; equipment is a share of all of these.

use quantity::physical::{round_down, round_up};
use quantity::{Area, Coverage, Dilution, Length, RatioMeaning, Volume};

/// The inside of a house with a ridge along its length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Along the ridge.
    pub length: Length,
    /// Across.
    pub width: Length,
    /// Floor to eave.
    pub eave: Length,
    /// Floor to ridge, at least the eave.
    pub ridge: Length,
    /// Solid wall below the curtain, at most the eave.
    pub half_wall: Length,
}

impl Room {
    /// Length × width.
    pub fn floor(&self) -> Area {
        self.length * self.width
    }

    fn around(&self) -> Length {
        (self.length + self.width) * 2.0
    }

    /// Inner faces of the solid walls.
    pub fn half_walls(&self) -> Area {
        self.around() * self.half_wall
    }

    /// One face of what closes the openings between half-wall and eave.
    pub fn curtain_face(&self) -> Area {
        self.around() * (self.eave - self.half_wall)
    }

    /// Inner faces of walls and curtains up to the eave.
    pub fn walls(&self) -> Area {
        self.around() * self.eave
    }

    /// The two triangles above the eave at the ends.
    pub fn gables(&self) -> Area {
        self.width * (self.ridge - self.eave)
    }

    /// The underside of the roof: floor times √(1 + (rise / half-width)²).
    pub fn roof(&self) -> Area {
        let pitch = (self.ridge - self.eave) / (self.width / 2.0);
        self.floor() * (1.0 + pitch * pitch).sqrt()
    }
}

/// Mix for an area at the label's coverage, in whole millilitres: nobody measures finer, and loads then add up.
pub fn solution(area: Area, coverage: Coverage) -> Volume {
    Volume::millilitres((area * coverage).in_millilitres().round())
}

/// Disinfectant in an amount of mix: one part in N + 1 (parts of water) or one in N (parts in all).
///
/// Checked against: 1:10 in a litre is 90.9 mL or 100 mL.
pub fn product(mix: Volume, dilution: Dilution) -> Volume {
    mix / dilution.parts_of_mix()
}

/// Tankfuls of a sprayer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loads {
    /// Whole tankfuls.
    pub full: f64,
    /// Tankfuls to mix, a part-filled last one counted.
    pub count: f64,
    /// What the last, part-filled tank holds; nothing when the mix comes out even.
    pub last: Volume,
}

/// Splits the mix into tankfuls. Full loads and the last one sum to the mix.
pub fn loads(mix: Volume, tank: Volume) -> Loads {
    let (full, count) = (round_down(mix / tank), round_up(mix / tank));
    let last = if count > full { mix - tank * full } else { Volume::litres(0.0) };
    Loads { full, count, last }
}

/// N of the 1:N that was truly mixed when `poured` went into a tank filled up to `tank`; `None` when nothing was poured.
pub fn true_parts(tank: Volume, poured: Volume, meaning: RatioMeaning) -> Option<f64> {
    let parts_of_mix = tank / poured;
    let parts = match meaning {
        RatioMeaning::PartsWater => parts_of_mix - 1.0,
        RatioMeaning::PartsTotal => parts_of_mix,
    };
    (poured.in_millilitres() > 0.0).then_some(parts)
}

/// By how much the two meanings of 1:N differ, as a share of the smaller dose: 1 / N.
pub fn meaning_gap(parts: f64) -> f64 {
    1.0 / parts
}

#[cfg(test)]
mod tests {
    use super::*;

    fn room(length: f64, width: f64, eave: f64, ridge: f64) -> Room {
        Room {
            length: Length::metres(length),
            width: Length::metres(width),
            eave: Length::metres(eave),
            ridge: Length::metres(ridge),
            half_wall: Length::metres(0.6),
        }
    }

    #[test]
    fn a_flat_roof_is_as_large_as_its_floor() {
        let flat = room(20.0, 8.0, 2.5, 2.5);
        assert_eq!(flat.roof(), flat.floor());
        assert_eq!(flat.gables().in_square_metres(), 0.0);
    }

    #[test]
    fn wall_parts_close() {
        let house = room(18.0, 9.0, 2.4, 3.6);
        let parts = house.half_walls() + house.curtain_face();
        assert!((parts.in_square_metres() - house.walls().in_square_metres()).abs() < 1e-9);
    }

    #[test]
    fn loads_sum_to_the_mix_and_an_even_mix_has_no_last_load() {
        let even = loads(Volume::litres(130.0), Volume::litres(10.0));
        assert_eq!((even.full, even.count, even.last.in_litres()), (13.0, 13.0, 0.0));
        let odd = loads(Volume::litres(136.08), Volume::litres(10.0));
        assert_eq!(odd.count, 14.0);
        assert!((odd.full * 10.0 + odd.last.in_litres() - 136.08).abs() < 1e-9);
    }

    #[test]
    fn pouring_the_dose_gives_the_label_back() {
        let dilution = Dilution::new(400.0, RatioMeaning::PartsWater).unwrap();
        let tank = Volume::litres(10.0);
        let parts = true_parts(tank, product(tank, dilution), RatioMeaning::PartsWater).unwrap();
        assert!((parts - 400.0).abs() < 1e-9);
        assert_eq!(true_parts(tank, Volume::litres(0.0), RatioMeaning::PartsWater), None);
    }
}
