//! The day the chicks come, and the first nights.

use super::Anchor::{LastHeat, Placement};
use super::Stage::{Brooding, ChickDay};
use super::When::{Between, On};
use super::{MORNING, Remind, Round, TaskSpec, task};

/// 22:00, 02:00 and 05:00: the nights in which chicks are lost to cold, to heat and to a fire gone out.
const NIGHT: Remind = Remind::Rounds(&[
    Round { hour: 22, past_midnight: false },
    Round { hour: 2, past_midnight: true },
    Round { hour: 5, past_midnight: true },
]);

/// Dusk, near 18:00 where days are as long as nights, and 04:00, the coldest hour.
const DUSK_AND_DAWN: Remind =
    Remind::Rounds(&[Round { hour: 18, past_midnight: false }, Round { hour: 4, past_midnight: true }]);

pub(super) static TASKS: &[TaskSpec] = &[
    task("boxes-counted", ChickDay, On(Placement, 0)).calls(MORNING),
    task("boxes-weighed", ChickDay, On(Placement, 0)),
    task("beaks-dipped", ChickDay, On(Placement, 0)),
    task("crops-first", ChickDay, On(Placement, 0)),
    task("chicks-claimed", ChickDay, Between((Placement, 0), (Placement, 1))),
    task("crops-day", Brooding, On(Placement, 1)).calls(MORNING),
    task("night-rounds", Brooding, Between((Placement, 0), (Placement, 2))).calls(NIGHT),
    task("dusk-and-dawn", Brooding, Between((Placement, 3), (LastHeat, 0))).calls(DUSK_AND_DAWN),
    task("dark-taught", Brooding, Between((Placement, 2), (Placement, 4))),
];
