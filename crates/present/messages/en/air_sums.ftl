## Quick sums about air, heat and drying.

unit-kpa = { $n } kPa
unit-label-kpa = kPa
unit-kj-kg = { $n } kJ/kg
unit-label-kj-kg = kJ/kg
unit-m-s = { $n } m/s
unit-label-m-s = m/s
unit-g-m2h = { $n } g/m² an hour
unit-label-g-m2h = g/m² an hour
formula-saturation-pressure = pressure of saturated vapour in Pa at
formula-root = where it passes zero:

section-moist_air = Moist air
section-heat_index = Heat on the birds
section-ring_heat = Heat of a ring
section-burning = Fuel
section-drying = Drying

sum-moist-air = Dew point, wet bulb and water in the air
sum-heat-index = How hard does this heat bear on the birds?
sum-ring-heat = Heat for one brooder ring
sum-fuel = Fuel for a heat
sum-cylinder-life = How long does a gas cylinder last?
sum-drying = How long do a wet floor and litter dry?

## Moist air.

field-moist-air-dry-bulb-c = Air
    .hint = By a dry thermometer in the shade, at the height of the birds.
field-moist-air-humidity-percent = Dampness of the air
    .hint = Relative humidity, by a hygrometer at the same place.
field-moist-air-altitude-m = Height above the sea
    .hint = The map or a neighbour’s phone says.

figure-moist-air-pressure = Pressure of the air
figure-moist-air-saturation-pressure = Pressure of vapour if the air were saturated
figure-moist-air-vapour-pressure = Pressure of the vapour in it
figure-moist-air-humidity-ratio = Water in a kilogram of dry air
figure-moist-air-dew-point = Dew begins at
figure-moist-air-wet-bulb = A wetted thermometer shows
figure-moist-air-enthalpy = Heat in a kilogram of dry air and its water
figure-moist-air-density = Mass of a cubic metre

rule-pressure-of-air = Of the standard atmosphere at this height; 0 is the sea.
rule-pressure-of-saturation = The most vapour that air of this warmth holds: over ice below 0.01 °C, over water from there on.
    .formula = pressure of saturated vapour at { $t } °C in Pa, by the equations of the handbook, ÷ 1000
rule-pressure-of-vapour = As much of that as the dampness says.
rule-water-in-air = Vapour weighs 0.622 as much as air of its pressure and warmth.
    .formula = 621.945 × v ÷ ({ $p } × 1000 − v) with v = { $r } ÷ 100 × pressure of saturated vapour at { $t } °C in Pa
rule-dew-point = The warmth at which air that holds so much vapour is saturated. Colder walls, roofs and drinkers drip.
    .formula = the temperature at which saturated vapour has { $r } ÷ 100 of the pressure it has at { $t } °C
rule-wet-bulb = What a thermometer in a wet rag shows in a breeze: the coldest that water can make this air, and what a panting bird has to go by.
    .formula = the temperature b at which ((2501 − 2.326 b) × water of saturated air at b − 1.006 × ({ $t } − b)) ÷ (2501 + 1.86 × { $t } − 4.186 b) is the water in air of { $t } °C and { $r } % at { $p } kPa; where that is below 0 °C, 2830, 0.24 and 2.1 stand for 2501, 2.326 and 4.186
rule-heat-in-air = Warmth of air and vapour, and the heat it took to make the vapour; air of 0 °C without water counts nothing.
rule-density-of-air = Air and vapour together. Warm, damp and high air is thin.

## Heat on the birds.

field-heat-index-speed-m-per-s = Moving air at the birds
    .hint = A thread hangs still at 0.2; 1 is a light breeze on a wet hand.
field-heat-index-age-d = Age of the birds
    .hint = In days. Chicks like it warm, and are judged by that.

figure-heat-index-step = Worst of three, from 0 (none) to 4 (emergency)
figure-heat-index-step-of-dry-bulb = Heat by the dry thermometer, 0 to 4
figure-heat-index-step-of-wet-bulb = Heat by the wetted thermometer, 0 to 4
figure-heat-index-step-of-index = Heat by the index, 0 to 4
figure-heat-index-still = Index without moving air
figure-heat-index-moving = Index with moving air
figure-heat-index-liked = What birds of this age like
figure-heat-index-liked-by-grown = What grown birds like in such air

rule-worst-of-three = The highest of the three. None of them alone says that all is well.
rule-liked-at-age = From the table of brooding temperatures, by age and dampness.
rule-liked-by-grown = The last day of the table, at the same dampness.
rule-index-in-still-air = Mostly the dry thermometer, a little of the wetted one.
rule-index-with-speed = The same, less where air moves; the speed is held between 0.2 and 1.2 m/s, where it was measured.
rule-step-of-dry-bulb = 1 from 28 °C, 2 from 32 °C, 4 from 35 °C, for birds past three weeks; for younger ones as much more as they like it warmer.
    .formula = 1 if { $t } − d reaches 28, 2 if it reaches 32, 4 if it reaches 35, with d = { $l } − { $g }, never under 0
rule-step-of-wet-bulb = 1 from 26 °C, 2 from 28 °C, 4 from 30 °C; for younger birds up to 4 °C more, and no more than that.
    .formula = 1 if { $b } − d reaches 26, 2 if it reaches 28, 4 if it reaches 30, with d = { $l } − { $g }, never under 0 or over 4
rule-step-of-index = 1 from 27 °C, 2 from 30 °C, 3 from 33 °C, 4 from 36 °C, for birds of 2 to 3 kg over hours; for younger ones as much more as they like it warmer.
    .formula = 1 if { $i } − d reaches 27, 2 if it reaches 30, 3 if it reaches 33, 4 if it reaches 36, with d = { $l } − { $g }, never under 0

finding-heat-step-0 = None of the three calls this heat. That is no promise: look at the birds. Open beaks and wings held off say more than numbers.
finding-heat-step-1 = Warm for them. The wetted thermometer shows { $wet }, the index { $index }. Open up early, fill the drinkers with cool water, and come back within the hour.
finding-heat-step-2 = Hot: act now. The wetted thermometer shows { $wet }, the index { $index }. Sides down, moving air, cool water everywhere, no handling, feed out of reach before the hottest hours.
finding-heat-step-3 = Dangerous. The wetted thermometer shows { $wet }, the index { $index }. Somebody stays with them: air, shade and cool water now; walk slowly through them so that heat leaves from under them.
finding-heat-step-4 = Emergency: birds can die within hours. The wetted thermometer shows { $wet }, the index { $index }. Everybody to the house: air, shade, cool water; make room, do not drive them. Call the veterinarian if they lie flat.
way-out-heat-by-wet-bulb = It is the damp that makes it so: water sprayed on roof or birds makes it worse, moving air helps.
way-out-heat-by-dry-bulb = The dry thermometer alone says it: shade and a wetted roof help while the air is dry.
way-out-heat-by-index = Warmth and damp together say it.
finding-speed-not-measured = Air speed was measured from { $low } to { $high } only. Outside that the nearest end is taken; more wind is not counted as a promise.
finding-index-of-other-birds = The index was measured on birds of 46 days. For younger ones it is our judgement, and wind harms chicks under two to three weeks.
finding-fan-blows-hot-air = Air as warm as a bird’s body does not cool heavy birds, however fast it moves. Shade, cool water, fewer birds a square metre; cooling by water only while the air is dry.

caution-heat-index = Feed out of reach before the heat comes, never water. No handling, no weighing, no vaccine while they pant.
caution-heat-index-2 = A wetted roof or fog helps in dry air and harms in damp air: stop when the wetted thermometer rises.
caution-heat-index-3 = People in there drink and rest too. Dizzy or no longer sweating: out into the shade, cool them, get help.

## Heat of a ring.

field-ring-heat-chicks = Chicks in the ring
field-ring-heat-diameter-m = Across the ring
field-ring-heat-top = Above the ring
    .hint = A cover of cloth or sheet, with a gap for air; never over a flame.
choice-ring-heat-top-open = Open
choice-ring-heat-top-covered = Covered
field-ring-heat-house-c = Air of the house around it
    .hint = In the coldest hour: not outside, but where the ring stands.
field-ring-heat-height-m = Height of the sheet
field-ring-heat-age-d = Age of the chicks
    .hint = In days; 0 is the chick day.
field-ring-heat-brooder-kw = Heat of one brooder
    .hint = From its label.

figure-ring-heat-wanted = Chicks want
figure-ring-heat-loss = Heat the ring lets out for each degree
figure-ring-heat-loss-if-covered = Heat it would let out for each degree under a cover
figure-ring-heat-fresh-air = Fresh air they breathe
figure-ring-heat-chick-heat = Heat the chicks give themselves
figure-ring-heat-needed = Heat the ring needs
figure-ring-heat-design = Heat to have a brooder for
figure-ring-heat-brooders = Brooders
figure-ring-heat-if-covered = With a cover it would need

rule-wanted-in-ring = From the table, by age and dampness.
rule-loss-of-covered-ring = Cover and floor times the area, sheet times the way round and its height.
rule-loss-of-open-ring = Warm litter under open air lets out 10 W a square metre and degree upwards; floor and sheet on top of that. The range is a fifth either way.
rule-loss-if-covered = The same ring, with a cover in place of the open top.
rule-breath-of-ring = Air that keeps what the chicks breathe out under 3000 parts in a million. A flame in the ring wants its own on top.
rule-heat-of-ring-chicks = What warms the air of what they give off, at the temperature they want, by their weight in an open house.
rule-heat-of-ring = What goes out through the ring and with the air, less what the chicks give.
rule-ring-design = A quarter more, for a gust and a brooder that burns low.
rule-ring-brooders = Divided by what one gives, rounded up.
rule-heat-if-covered = The same with a cover.

finding-cover-saves = With a cover the ring would need { $covered } in place of { $open }. Only where nothing burns under it: lamps and panels, never a flame, and never quite shut.

## Fuel and cylinders.

field-burning-heat-kw = Heat wanted
field-burning-hours-h = For so many hours
field-burning-burner-kw = Heat of one burner
    .hint = From its label.
field-burning-burners = Burners
field-burning-cylinders = Full cylinders
field-burning-joined = Cylinders that give gas at the same time
    .hint = Joined to one pipe with all valves open.
field-burning-hours-per-day-h = Hours a day that it burns full
field-burning-gas = Gas in the cylinder
    .hint = The seller knows. Most cooking gas of warm countries is mixed or mostly butane.
choice-burning-gas-propane = Propane
choice-burning-gas-butane = Butane
choice-burning-gas-mixed = Mixed

figure-burning-heat = Heat in all
figure-burning-fuel = Fuel in all
figure-burning-rate = Fuel an hour
figure-burning-cylinders-needed = Cylinders
figure-burning-sacks-needed = Sacks
figure-burning-gas-rate = Gas an hour
figure-burning-lasts = They last
figure-burning-lasts-days = In days like this they last
figure-burning-steady-gas = Gas that cold cylinders keep giving

rule-heat-for-hours = Heat times hours.
rule-fuel-for-heat = 3.6 MJ are a kWh; divided by the useful heat of a kilogram.
rule-fuel-an-hour = 3.6 MJ are a kWh; divided by the useful heat of a kilogram.
rule-cylinders-for-heat = Divided by what one holds, rounded up.
rule-sacks-for-heat = Divided by what one holds, rounded up.
rule-gas-an-hour = All burners full on; divided by the net heat of a kilogram and the middle of what stays in the house.
rule-cylinders-last = What all hold, divided by the gas an hour. The last of a cylinder comes weakly.
rule-days-cylinders-last = Hours divided by the hours a day.
rule-steady-propane = Liquid takes the heat to become gas through the wall of its cylinder: 10 W a square metre and degree through 0.24 m² of a half-full cylinder of 13 kg, as far as −30 °C, and 380 kJ make a kilogram of gas. The range is half to twice that.
rule-steady-butane = Liquid takes the heat to become gas through the wall of its cylinder: 10 W a square metre and degree through 0.24 m² of a half-full cylinder of 13 kg, as far as 2 °C, and 380 kJ make a kilogram of gas. The range is half to twice that.
rule-steady-mixed = Liquid takes the heat to become gas through the wall of its cylinder: 10 W a square metre and degree through 0.24 m² of a half-full cylinder of 13 kg, as far as −10 °C, and 380 kJ make a kilogram of gas. The range is half to twice that.

finding-cylinder-freezes = The burners ask { $asked } of gas; cylinders in such a night keep giving about { $given }. Frost stands on the steel, the pressure falls, the flame shrinks or goes out towards morning.
way-out-join-cylinders = Join more or larger cylinders to one pipe, by somebody who may do that. Never warm a cylinder with fire, hot water or a brooder.
finding-butane-in-the-cold = Butane gives no gas at this cold: the flame goes out, and the chicks are cold. Ask for propane or a winter mixture.
finding-gas-in-the-cold = At this cold such a cylinder gives no gas worth the name.

caution-cylinder = Cylinder outside, upright, in the shade and chained. Soap test at every change, no flame and no cigarette near.
caution-cylinder-2 = A flame that went out lets gas run: shut the valve, open both sides, wait, and only then light again.
caution-cylinder-3 = Gas brooders use up air and give off gases nobody smells. A gap high and low all night; nobody sleeps in there.
caution-cylinder-4 = Never warm a frosted cylinder with fire, hot water or a brooder. Change it, or join a second one.

against-joined-more-than-full = { $key } is { $typed }, but only { $value } are full. It can be { $low } to { $high }.

## Drying.

field-drying-water-ml-per-m2 = Water left on the floor
    .hint = What was sprayed or left after sweeping; a floor that shines wet holds 300 to 500.
field-drying-speed-m-per-s = Moving air over the floor
    .hint = 0.2 with the sides shut, 1 in a light breeze through open sides.
field-drying-litter-from-percent = Dampness of the litter when spread
    .hint = Water of its whole weight. Fresh litter that feels dry has 10 to 15, damp litter 25 and more.
field-drying-litter-to-percent = Dampness it should have
    .hint = Chicks want it dry but not dusty.

figure-disinfectant-drying = A sprayed floor is dry after
figure-disinfectant-drying-rate = Water that leaves it
figure-disinfectant-drying-wet-bulb = A wetted thermometer would show
figure-drying-rate = Water that leaves a floor as cold as water makes it
figure-drying-rate-of-warm-floor = Water that leaves a floor as warm as the air
figure-drying-floor = The floor is dry after
figure-drying-litter-water = Water the litter must lose
figure-drying-litter = The litter is dry enough after

rule-sprayed-floor-dries = What was sprayed on a square metre, divided by what leaves in an hour. The range is from a floor that the ground keeps warm to one that has only the air.
rule-drying-in-weather = In air as warm as the mean of your days, moving at half a metre a second through open sides; a floor that has only the air is as cold as a wetted thermometer. Litter, washing water in cracks and shut sides take longer.
    .formula = 3600000 × 5.9 ÷ 1006 × (water of saturated air at { $b } °C − water of air whose dew point is 2 °C under { $c } °C), at { $z } m above the sea and { $t } °C
rule-wet-bulb-of-weather = Of air as warm as the mean of your days, in which dew begins 2 °C under your coldest night.
    .formula = the temperature at which a wetted thermometer stands in air of { $t } °C whose dew point is 2 °C under { $c } °C, at { $z } m above the sea
rule-drying-by-air = The heat that air hands to a wet floor, 4 W a square metre and degree and 3.8 more for each m/s, all goes into making vapour; such a floor is as cold as a wetted thermometer.
rule-drying-of-warm-floor = A floor that the ground keeps as warm as the air: the same air carries the difference between its own vapour and that of saturated air.
    .formula = 3600000 × (4 + 3.8 × { $v }) ÷ 1006 × (water of saturated air at { $t } °C − water of air of { $t } °C and { $r } % at { $p } kPa)
rule-floor-dries = Water on it divided by what leaves in an hour. The range is from a floor that the ground keeps warm to one that has only the air.
rule-water-of-shavings = From the weight of shavings at this depth and dampness: what it holds beyond the dampness it should have.
rule-water-of-husk = From the weight of husk at this depth and dampness: what it holds beyond the dampness it should have.
rule-litter-dries = Spread litter gives up 0.4 of what a wet floor does for its crust and depth, and less the drier it gets; taken as at its end. Turning it over speeds it.
    .formula = 1000 × { $l } ÷ ({ $e } × 0.4 × share of saturated air at the face of litter of { $m } %)

finding-air-too-damp-to-dry = In such air hardly anything dries. Wait for drier air in the middle of the day, or warm and air the house.

caution-drying = Chicks only when floor and litter are dry and the house is aired: the disinfectant’s label says how long, at least overnight.
caution-drying-2 = Air it while it dries, sides down by day. A shut house stays wet, and wet disinfectant hurts eyes, lungs and chicks.
