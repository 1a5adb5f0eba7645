# A night and a day of a house: the curtain and the heat.

command-curtain = A night and a day of a house: where the curtain stands, which hours are hot, what helps
example-curtain = Example: broodwright curtain plan.toml --ask age_d=30 warmest_c=36 roof=wet
option-ask = What to ask for, each as key=value: another day of age, other weather, something changed
curtain-no-such-key = “{ $pair }” asks for nothing known. Write key=value with one of: { $keys }
air-day-waiting = Where the curtain stands tonight is told once the plan says: { $field }
air-day-no-birds = The curtain and the heat are told while birds are in the house.
air-day-today = Curtain and heat
air-day-curtain = Where does the curtain stand?
air-day-curtain-at = Curtain at { $hour }
air-day-then = { $hour }: { $open }.
air-day-stays = It can stay there until the same hour tomorrow.
air-day-nothing-opens = Nothing opens: the half-wall reaches the eave. Make an opening that can be let down on both long sides.
air-day-all-the-way = all the way down
air-day-hands-half = half a hand down
air-day-hands-one = one hand down
air-day-hands-more = { $marks } hands down
air-day-marks-half = half a mark down
air-day-marks-one = one mark down
air-day-marks-more = { $marks } marks down
air-day-settings-caption = Where to set the curtain on each long side, counted from the top, and how warm it is inside until the next setting
air-day-column-open = Curtain
air-day-column-size = Gap, { $unit }
air-day-column-then = Inside, { $unit }
air-day-from-to = { $low } to { $high }
air-day-set = set by hand
air-day-asked = what the hour asks
air-day-axis-hands = Hands down from the top
air-day-axis-marks = Marks down from the top
air-day-curtain-caption = Where the curtain is set, and what each hour would ask of it
air-day-step-1 = From the top down, both long sides alike. In wind open the side away from it first, and the windward side half as far.
air-day-step-2 = Hours are by the sun: it is highest at 12. They are nearest to what the air asks with at most four settings, none while people sleep.
air-day-step-3 = Never quite shut: the gap at the top stays day and night.
air-day-step-4 = Look at the birds an hour after each setting: huddled, close it by half; panting or wings off the body, open it wider. What they do goes before any figure.
air-day-step-young = Chicks under 14 days never get moving air at the floor: air comes in above their heads, on the side away from the wind first.
air-day-from-below = This curtain opens from below
air-day-from-below-1 = With chicks on the floor, hang a sheet along the guard so that the air goes up first, or make the curtain come down from the top.

air-day-heat = Which hours are hot for them?
air-day-not-hot = No hour is hot for birds of this age in such weather.
air-day-hot = Hot or worse for them
air-day-hot-from = From { $from } to { $to }.
air-day-dangerous = { $hours } of it are dangerous: heavy birds can die.
air-day-feed-left = They leave { $low } to { $high } of the day’s feed, and grow at least so much less.
air-day-helps-caption = What each thing would change, the curtain as it would be without
air-day-column-help = With
air-day-column-house = House
air-day-column-warmest = Warmest, { $unit }
air-day-column-index = Index, { $unit }
air-day-column-danger = Danger, { $unit }
air-day-as-it-is = as it is
air-day-as-asked = as you ask
air-day-by-settings = set by hand
air-day-help-shade = shade or limewash on the roof
air-day-help-wet-roof = roof kept wet
air-day-help-fan = fan at the birds
air-day-help-night-feed = feed at night
air-day-help-quarter-fewer = a quarter fewer birds
air-day-helps-note = The index puts warm, damp and moving air together. Hours are counted by the worst of air, wet bulb and index: moving air lowers the index alone. The figures are of the air. A hot sheet roof also shines down on their backs: under a bare one, shade, limewash or mats help more than the figures say.
air-day-changed-caption = The house as it is, and with what you ask
air-day-hot-title = On a hot day
air-day-hot-1 = Feed off before the heat comes (11 to 16 o’clock), water never off: cool, shaded, twice as much as usual.
air-day-hot-2 = Nobody catches, drives, vaccinates or weighs them at noon.
air-day-hot-3 = A fan cools no heavy bird in air near its own warmth (38 °C and more): then it needs cooler air, shade and room.
air-day-hot-4 = Water on the roof helps in dry air. Let none of it run or drift into the house: damp heat is worse than dry heat.
air-day-hot-5 = Birds on their side, blue combs, many dead at once: call the veterinarian now, before anything is sold or moved.

air-day-hours = Hour by hour
air-day-drawn = By these settings it is { $low } to { $high } inside while it is { $outside_low } to { $outside_high } outside.
air-day-caption = Air inside, outside and as wanted
air-day-table-caption = Every second hour: outside and inside, how damp, how stale, how hard on the birds
air-day-column-outside = Out, { $unit }
air-day-column-stale = Stale, { $unit }
air-day-column-heat = For them
air-day-heat-comfort = good
air-day-heat-warm = warm
air-day-heat-alert = hot
air-day-heat-danger = danger
air-day-heat-emergency = emergency

air-day-ask = Other weather, or something changed?
air-day-work-out = Work it out
air-day-form-hint = By itself this page goes by the coldest night and the hottest afternoon of your plan. Ask the weather office, or somebody older.
air-day-link = Tonight’s curtain and the heat of a day
sheet-curtain = The curtain, a night and a day
print-curtain = The curtain, a night and a day

field-air-day-age-d = Day of age
field-air-day-coldest-c = Coldest of the night, outside
field-air-day-warmest-c = Warmest of the day, outside
field-air-day-wind = Wind
choice-air-day-wind-still = Still
choice-air-day-wind-light = A light wind
choice-air-day-wind-windy = Windy
field-air-day-sky = Sky
choice-air-day-sky-clear = Clear
choice-air-day-sky-cloudy = Cloudy
choice-air-day-sky-overcast = All cloud
field-air-day-roof = Roof
choice-air-day-roof-as-it-is = As it is
choice-air-day-roof-shaded = Shaded or limewashed
choice-air-day-roof-wet = Kept wet
field-air-day-fan = A fan at the birds
choice-air-day-fan-no = No
choice-air-day-fan-yes = Yes
field-air-day-night-feeding = Feed at night, none in the heat
choice-air-day-night-feeding-no = No
choice-air-day-night-feeding-yes = Yes
field-air-day-fewer-birds-percent = Fewer birds by
field-house-curtain-opens = Curtain opens
choice-house-curtain-opens-from-the-top = From the top down
choice-house-curtain-opens-from-the-bottom = From the bottom up
field-house-curtain-mark-cm = A mark on the curtain, or a hand

figure-air-day-coldest = Coldest hour inside
figure-air-day-warmest = Warmest hour inside
figure-air-day-heat-index = Worst of the index of heat
figure-air-day-hot-hours = Hours that are hot or worse for them
figure-air-day-dangerous-hours = Hours that are dangerous or worse
figure-air-day-stale-air = Most stale air (carbon dioxide) in an hour
figure-air-day-heat = Heat of the brooders
figure-air-day-feed-left = Feed that they leave for the heat
procedure-day-of-air = The house is followed hour by hour from 16:00 to 16:00, with the curtain where it is set by hand, after two days of the same weather so that floor and litter are as warm as they would be. The litter is as damp as the days before made it. Between coldest and warmest the air goes as a clear day’s does; the water in it stays what it is at the coldest. Wind at the curtain: still 0.5, light 1.5, windy 3 m a second; cloudy is six tenths of the sky (our judgement). Shade or limewash lets a roof take up a quarter of the sun; a wet roof gives off water as a wet bulb does; a fan moves air at 1 m a second.

watch-heat-ahead = Heat that may come
air-day-if-hottest = On an afternoon as hot as your plan’s hottest, at their weight of now. What helps stands on “The air they breathe”.
section-air_day = A night and a day

option-readings = Temperatures read inside, hour by hour, as a file like that of --weather: fits leaks, roof and walls to them
fitted-title = Your house by your own thermometer
fitted-label = How far the house as reckoned was off your readings
fitted-off = { $before } K before, { $after } K after
fitted-days = By { $days ->
    [one] { $days } day
   *[other] { $days } days
} of readings, as means of half days.
fitted-caption = Against what was taken for your house: 1 is as taken, 2 twice as much
fitted-column-times = Times
fitted-column-range = Nine in ten
fitted-column-said = Readings said
fitted-leaks = Leaks
fitted-sun = Sun through the roof
fitted-walls = Walls, curtains, roof
fitted-little = little
fitted-much = much
fitted-heat = In the coldest hour heaters must give { $before } by the house as taken, { $after } by the house as your readings tell it. To go by them, change house.air_changes_per_h, or what walls and curtains are, until the plan says the same.
fitted-too-few = So few days hardly say more than was guessed before. A week or two of readings at the birds’ height, some cold nights among them, will.
fitted-how = Least squares on half-day means, each taken as wrong by one kelvin on its own, with what was guessed of the house before as ballast (our judgement). The curtain is taken to stand where the balance would have it: days on which it stood otherwise mislead.
fitted-no-days = No day of the plan has both weather and readings for all its hours, with weather from two days before it. Give files of the same dates as the plan’s, by the same clock.

option-members = Run so many houses that might be this one, and say what is likely of heat, fuel and hot hours (10 to 20000)
many-houses-title = What is likely of heat, fuel and hot hours
many-houses-caption = By { $count } houses that might be this one, through weather that might come (seed { $seed })
many-houses-column-what = What
many-houses-column-middle = Middle
many-houses-column-range = Nine in ten
many-houses-heat-peak = Heat when it is coldest, { $unit }
many-houses-heat = Heat over all brooding days, { $unit }
many-houses-fuel = Fuel over all brooding days, { $unit }
many-houses-hot-hours = Hours of the batch that are hot or worse, { $unit }
many-houses-dangerous-hours = Hours that are dangerous or worse, { $unit }
many-houses-note = Each house has its own leaks (half to twice), walls (a fifth), sun on the roof, wind (two fifths), warmth of its birds (a tenth) and weather (1.5 K), one standard deviation each (our judgement). They go through the usual weather of your months where the plan tells it, else through its own coldest nights and hottest afternoons.
many-houses-done = { $done } of { $count } houses
