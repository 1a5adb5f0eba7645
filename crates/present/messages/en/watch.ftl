### The watch over a running batch: signals, states, fixed rules, and why birds grow unevenly.

page-watch = Is something off?
watch-waiting = The chicks have not come yet. The watch begins when it is written that they came.

watch-state-steady = ○ steady
watch-state-look = ◊ look
watch-state-act = ▲ act
watch-state-unknown = nothing written lately

watch-lead = How the batch stands
watch-lead-steady = Nothing written stands out against what was expected. That is no proof that all is well: eyes, nose and ears come first.
watch-lead-look = Something does not fit. Go and see today; the list below says what and where.
watch-lead-act = Something is far from what was expected. Do what stands below first, then read on.
watch-lead-unknown = Nothing was written lately, so nothing can be said. A day that was not written is no day without deaths.

watch-today = The watch
watch-to-page = All signals, drawn
watch-now = What does not fit now
watch-history = What stood out since the chicks came
watch-history-caption = Day by day, and what it was told by
watch-history-none = Nothing stood out since the chicks came.
watch-all = All signals
watch-all-caption = Each signal as last written, beside what was likely
watch-rules-heading = Fixed rules, always shown
watch-rules-caption = What each asks for, and the days on which it held
watch-drawn = Each signal by day
watch-how = How this is worked out

watch-line = { $state }: { $signal }. Day { $day }: { $seen }; likely { $low } to { $high }.
watch-line-rule = { $state }: { $rule }
watch-told = { $signal }: { $seen }; likely { $low } to { $high }
watch-unwritten-days = { $count ->
    [one] In the last week one day has no deaths written. It counts for nothing here, neither good nor bad.
   *[other] In the last week { $days } days have no deaths written. They count for nothing here, neither good nor bad.
}

caution-watch-vet = Act: deaths, water or feed
caution-watch-vet-1 = Keep sick birds apart, and everybody else out of the house. Own boots, own clothes, hands washed.
caution-watch-vet-2 = Look: how they lie, breathe and droop, what the dead look like; drinkers, line, tank, feed, heat.
caution-watch-vet-3 = Call a veterinarian today. Until then move no bird, sell nothing, treat nothing. Keep the dead covered for whoever comes.
caution-watch-vet-4 = A sudden rise of deaths may have to be reported by law. What is to be reported, to whom and how fast, your country's veterinary authority says.
caution-watch-vet-5 = This page says that something is off. It never says what: that takes somebody who sees the birds.
caution-watch-any = You do not need us to call the vet
caution-watch-any-1 = Blue combs, twisted necks, swollen heads, sudden many dead, sudden silence: call now, whatever this page says.
caution-watch-any-2 = Move nothing, sell nothing, do not treat first.
caution-watch-heat = Act: heat
caution-watch-heat-1 = Cool water now, refilled often; every drinker running. Water is never taken away.
caution-watch-heat-2 = Shade, curtains open on both sides, roof wetted while the air is dry, no feed in the hottest hours, nobody drives the birds.
caution-watch-heat-3 = Fans at this heat move hot air: they help while the air is cooler than the birds.

watch-signal-deaths = Deaths and culls of the day
watch-signal-losses = All losses so far
watch-signal-water = Water
watch-signal-feed = Feed
watch-signal-water-to-feed = Water to feed
watch-signal-cold = Coldest in the house
watch-signal-warm = Warmest in the house
watch-signal-swing = From coldest to warmest
watch-signal-humidity = Dampest air
watch-signal-weight = Weight
watch-signal-gain = Gain a day
watch-signal-unevenness = Spread of weights
watch-signal-litter = Litter in the hand

watch-check-deaths = Count again. Look at each dead bird: small, smothered, legs, sudden, sick. Walk the house slowly, far corners first.
watch-check-losses = No single day stands out, but they add up. Go through the days: weak chicks, one spot, one cause that comes again?
watch-check-water = Press drinkers at both ends of the line, look at float, filter and tank, taste the water. Feel whether it is warm. More than likely: leaks, salt in the feed, heat.
watch-check-feed = Is there feed in every pan, does it smell of mould, was it changed, did it run out at night? Are drinkers running: birds that do not drink do not eat.
watch-check-water-to-feed = More water for the same feed: heat, leaks, salt, loose droppings. Less: drinkers.
watch-check-cold = Look at the birds at four in the morning: do they huddle? Fuel, draught at chick height, curtains on the windy side.
watch-check-warm = Do they pant, wings away from the body? Open wide, cool water, shade, and be there in the hottest hours.
watch-check-swing = A cold night after a hot day wears birds out. Close the curtains before dusk, heat the small ones at night.
watch-check-humidity = Smell at bird height and feel the litter. Open high, stop leaks, turn or add litter.
watch-check-weight = Weigh again at three spots. Then feed and water within reach, light, heat at night, litter.
watch-check-gain = Since the last weighing they gained less than the plan. What changed in those days: feed, water, heat, cold?
watch-check-unevenness = The flock is growing apart. See below for why.
watch-check-litter = Find where it is wet: under drinkers, along the wall, below a leak in the roof. Take out the cakes, add dry litter, let air through.

watch-rule-deaths-above-0-17-percent = More than 0.17 % of the birds died in a day (seen early on farms with bird flu). Many healthy flocks pass it on some day, so by itself it asks nothing.
watch-rule-deaths-half-percent-two-days = 0.5 % or more died on each of two days running. Where this is law, the authority is told on the second day.
watch-rule-deaths-three-percent-week = More than 3 % died within seven days.
watch-rule-deaths-tripled = Three times as many died as is normal, in a flock above 250 birds (French order). Where one a day is normal nearly every healthy flock does it once, so by itself it asks nothing.
watch-rule-deaths-above-one-percent = More than 1 % died in one day.
watch-rule-deaths-doubled-two-days = Deaths doubled, and doubled again the next day.
watch-rule-deaths-creeping = All losses are above 1 % and 0.06 % for each day of age, a line of the European rules for slow losses. It says where the batch stands.
watch-rule-deaths-sudden = Three birds or more of a small flock died suddenly in a day.
watch-rule-first-week-two-percent = 2 % or more were lost in the first week.
watch-rule-first-week-three-percent = 3 % or more were lost in the first week.
watch-rule-water-or-feed-fell-quarter = Water or feed fell by more than a quarter in a day (French order).
watch-rule-water-and-feed-fell-fifth = Water and feed both fell by more than a fifth in a day (Catalan notice).
watch-rule-water-fell-fifth-same-heat = Water fell by a fifth or more at the same heat.
watch-rule-heat-sudden = It was 3 °C or more hotter than the days before, at 32 °C or more. Birds that are not used to heat die of it first.
watch-rule-heat-near-body = It was 38 °C or more in the house, for birds with feathers. Air as warm as that hardly cools them.

watch-ask-note = said only
watch-ask-look = look
watch-ask-act = act
watch-held-never = has not held
watch-held-on = held on day { $days }
watch-rules-note = These rules are as authorities and the trade give them. They know nothing of chance: in a small flock some hold by chance alone. In the first seven days the rules of the first week stand instead. They hold on days that were written, never on gaps.
watch-how-1 = What is expected of a day goes by the adopted plan, by the birds that are really there, and for water and feed by the heat of the day. A batch that always drinks a tenth more is no news: its own level is learnt from its days. Nine days of ten lie in the likely range.
watch-how-2 = What does not fit is added up from day to day, less an allowance: that is the alarm's memory. It grows while something stays wrong, and sinks again when it is over. At the first line it says look, at the second act.
watch-how-3 = The lines stand where, all signals together, a batch in which nothing is wrong is told to look less than once, and one in 20 is told to act by mistake. How that was tried, and how fast a rise is noticed, stands in the manual.
watch-how-4 = Deaths of a house come in clumps, so one bad day is not yet a rise. With one death a day expected, tripled deaths are acted on after about six days; with four a day after about four. The fixed rules are faster where many die at once.

watch-column-signal = What is watched
watch-column-state = State
watch-column-day = Day
watch-column-seen = Seen
watch-column-likely = Likely
watch-column-memory = Memory
watch-column-lines = Look at, act at
watch-column-rule = Rule
watch-column-asks = Asks
watch-column-held = When
watch-column-what = What
watch-range = { $low } to { $high }
watch-lines = { $look }; { $act }

drawing-watch-caption = { $signal }: dots are what was written, the grey band holds nine days of ten.
drawing-watch-memory-caption = The alarm's memory of { $signal }: at the dashed line look, at the heavy line act.
watch-memory-axis = memory
watch-look-line = look
watch-act-line = act
watch-likely-band = likely range
watch-alternative = { $signal }: { $count } days written. Last, day { $day }: { $seen }, likely { $low } to { $high }. Highest memory { $most } on day { $most_day }.

sheet-watch = Is something off?
command-watch = Show the watch over a batch: every signal steady, look or act, and the fixed rules
example-watch = Example: broodwright watch --on 2027-10-08

## Figures

field-book-dampest-percent = Dampest air, as written
field-book-litter-grade = Litter in the hand, as written: 0 falls apart, 1 holds together, 2 cakes
field-book-spread-percent = Spread of weights, as weighed
field-book-spread-birds = Birds weighed one by one
field-expected-weight-before-g = Weight by the plan on the day of the weighing before

figure-watch-deaths-expected-by-day = Deaths expected
figure-watch-air-by-day = Air between coldest and warmest
figure-watch-swing-by-day = From coldest to warmest (°C)
figure-watch-dampest-by-day = Dampest air
figure-watch-litter-by-day = Litter in the hand (0 falls apart, 1 holds together, 2 cakes)
figure-watch-spread-by-day = Spread of weights (CV)
figure-watch-water-more-by-day = Water more or less for the heat of the day
figure-watch-water-expected-by-day = Water expected for birds and heat
figure-watch-feed-less-by-day = Feed less for the heat of the day
figure-watch-feed-expected-by-day = Feed expected for birds and heat
figure-watch-water-to-feed-expected-by-day = Water to feed expected
figure-watch-gain-expected-by-day = Gain a day expected between the weighings
figure-watch-water-likely-by-day = Water, likely
figure-watch-feed-likely-by-day = Feed, likely
figure-watch-water-to-feed-likely-by-day = Water to feed, likely
figure-watch-cold-likely-by-day = Coldest, likely
figure-watch-warm-likely-by-day = Warmest, likely
figure-watch-swing-likely-by-day = From coldest to warmest, likely (°C)
figure-watch-dampest-likely-by-day = Dampest air, likely
figure-watch-weight-likely-by-day = Weight, likely
figure-watch-gain-likely-by-day = Gain a day, likely
figure-watch-spread-likely-by-day = Spread of weights, likely
figure-watch-litter-likely-by-day = Litter in the hand, likely
figure-watch-water-memory-by-day = Memory of water
figure-watch-feed-memory-by-day = Memory of feed
figure-watch-water-to-feed-memory-by-day = Memory of water to feed
figure-watch-cold-memory-by-day = Memory of cold
figure-watch-warm-memory-by-day = Memory of warmth
figure-watch-swing-memory-by-day = Memory of swings
figure-watch-dampest-memory-by-day = Memory of damp air
figure-watch-weight-memory-by-day = Memory of weight
figure-watch-gain-memory-by-day = Memory of gain
figure-watch-spread-memory-by-day = Memory of the spread of weights
figure-watch-litter-memory-by-day = Memory of litter

rule-deaths-expected-for-birds = As the adopted plan expected, for as many birds as were alive that morning.
rule-air-of-the-day = Half way between the coldest and the warmest of the day.
rule-swing-of-the-day = Warmest less coldest.
rule-dampest-written = As written down.
rule-litter-written = The worst handful of the day, on the walk or at a spot.
rule-spread-weighed = From the birds weighed one by one on that day, ten or more.
rule-water-for-the-heat-of-the-day = 6.5 % more for each degree above what birds of that age want, at least above 21 °C, against what the plan took for the usual heat.
rule-water-expected-for-birds-and-heat = As the adopted plan expected, for the birds alive that morning and the heat of the day; where no heat was written, the plan's.
rule-feed-for-the-heat-of-the-day = 1.25 % less for each degree above what birds of that age want, at least above 25 °C.
rule-feed-expected-for-birds-and-heat = As the adopted plan expected a bird, for the birds alive that morning and the heat of the day.
rule-water-to-feed-expected = Water expected over feed expected.
rule-gain-expected-between-weighings = What the plan expected to be gained a day since the weighing before.

## Why do they grow unevenly?

uneven-heading = Why do they grow unevenly?
uneven-waiting = This can be said once birds were weighed one by one at three spots or more, with the spot written beside each.
uneven-not-enough-weighed = Weighed on { $day }: not enough weighed to tell. Weigh ten birds or more at each of three spots or more, without choosing.
uneven-even = Weighed on { $day }: as even as most flocks. There is nothing to explain.
uneven-within-spots = Weighed on { $day }: birds differ within every spot, so look for what works on the whole house.
uneven-between-spots = Weighed on { $day }: the spots differ from each other, so look for what one spot has and the others have not.
uneven-parts = Spots differ by { $between } ({ $between_low } to { $between_high }); birds differ within a spot by { $within } ({ $within_low } to { $within_high }).
uneven-likely = The book speaks for this, the most likely first:
uneven-no-cause = The book speaks strongly for no cause.
uneven-others = What else the book speaks of, though not strongly
uneven-note = Only what was written can speak. A cause that leaves no trace in the book, such as worms, mouldy feed or a dark corner, is not in this list. In invented houses with one cause the true one came first in 98 of 100; where there was none, one was named in about 1 of 100.

uneven-cause-arrival = Chicks came in unlike weights
uneven-cause-feeder-space = Too few feeders
uneven-cause-drinker-space = Too few drinkers
uneven-cause-guard-late = The guard was widened late
uneven-cause-swings = Cold nights after hot days
uneven-cause-wet-spot = Litter wet at one spot
uneven-cause-sick-spell = A sick spell

uneven-check-arrival = Next time weigh forty chicks one by one on the day they come, and ask the hatchery how old the parents are and whether two flocks were mixed.
uneven-check-feeder-space = Count the feeders that birds can really reach, and watch at feeding: are small ones pushed aside? Spread the feed quickly, over all of them at once.
uneven-check-drinker-space = Press every drinker along the line, the far end too. Set the height to the backs of the smallest birds.
uneven-check-guard-late = Crowded chicks starve beside full trays. Widen by the plan's days, and spread trays and founts over the whole room.
uneven-check-swings = Be in the house at four in the morning: who huddles, and where? Close the windward curtain first.
uneven-check-wet-spot = Kneel at the wet spot: leak, drinker too high or too low, rain blown in? Take out the cakes and put dry litter.
uneven-check-sick-spell = Birds that were sick stay small. A veterinarian who sees them alive and dead can say what it was.
