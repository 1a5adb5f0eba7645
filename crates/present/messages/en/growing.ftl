### How a running batch grows, what is in the store room, how the chicks are brooded.

page-growing = How are they growing
day-of-batch = day { $age }, { $day }
cell-not-written = not written
drawing-likely-range = likely range

growing-weight = What do they weigh?
growing-first-week = How was the first week?
growing-losses = How many were lost?
growing-feed-water = What do they eat and drink?
growing-fcr = How much feed for a kilogram of bird?

waiting-growing = The chicks have not come yet. Write down that they came, then this page begins.
waiting-weighing = No bird has been weighed yet. Pen a corner at three spots and weigh all that are inside, the same hour each week.
waiting-first-week-weight = How many times heavier they got in the first week can be said once boxes or chicks were weighed on the day they came, and birds on day 6, 7 or 8.
waiting-water-to-feed = Water and feed of the same day were not written yet.
waiting-fcr = How much feed went into a kilogram cannot be said before birds are weighed.

no-past-batch = No past batch yet: this is the first batch of this house in the book. The next one will be held against it.
held-against-past = { $count ->
    [one] Held against your earlier batch in this house: { $names }.
   *[other] Held against your earlier batches in this house, their mean: { $names }.
}
past-batch = chicks of { $day }
past-batch-named = { $name }, chicks of { $day }

weight-lead-label = Mean weight, weighed on day { $day }
weight-range = { $range }.
weight-of-past = That is { $share } of what your earlier batches weighed on that day.
weight-of-plan = It is { $share } of what the plan expects.
gain-a-day = Since the weighing before they gained { $gain } a day.
weighed-long-ago = { $count ->
    [one] The last weighing is one day old.
   *[other] The last weighing is { $days } days old. What they weigh today is not known: weigh again before you order, sell or dose by weight.
}

first-week-losses-good = Lost up to day { $day }: { $losses }. Up to 1 % in the first week is good.
first-week-losses-behind = Lost up to day { $day }: { $losses }. A little over the 1 % that is good for a first week.
first-week-losses-ask = Lost up to day { $day }: { $losses }. At 2 % ask why: cold or hot chicks, dry drinkers, weak chicks from the hatchery.
first-week-losses-act = Lost up to day { $day }: { $losses }. That is much. Call the vet and the hatchery today.
first-week-weight-good = On day { $day } they weighed { $times } times what they weighed on arrival. 4 times by day 7 is good.
first-week-weight-behind = On day { $day } they weighed { $times } times what they weighed on arrival. 4 times by day 7 is good; this is a little under.
first-week-weight-ask = On day { $day } they weighed { $times } times what they weighed on arrival. Under 3.5 times by day 7, ask why: warmth at night, feed within reach, water, light.

losses-lead-label = Lost so far, of the live chicks placed
losses-lead = { $lost } of { $placed }; { $alive } alive.
caution-losses = You do not need this page to call the vet
caution-losses-1 = Sudden many dead, blue combs, twisted necks, sudden silence: call the vet now.
caution-losses-2 = Until somebody has come: move no bird, no litter and no person out, sell nothing, treat nothing.
caution-losses-3 = A day on which nothing was written counts here as no loss. Write 0 where none was found dead.

water-to-feed-lead-label = Water to feed, last written
water-to-feed-lead = { $ratio } L of water for each kg of feed
water-to-feed-note = About 1.6 to 1.9 in mild weather, 2 and more in heat, up to 4 in great heat. A fall in water at the same heat comes a day before less feed and more dead: look at drinkers, tank and line first.

fcr-lead-label = Feed for a kilogram of live bird, up to day { $day }
fcr-lead = { $fcr } kg
fcr-range = { $range }.
fcr-of-plan = The plan expects { $fcr } kg up to that day.
fcr-is-old = The birds were weighed more than a week ago. Feed eaten since then is not in this figure, nor is what they grew: it tells of that day and not of today.
feed-days-missing = { $count ->
    [one] On one day no feed is written. If birds were fed on it, the true figure is higher.
   *[other] On { $days } days no feed is written. If birds were fed on them, the true figure is higher.
}
fcr-note = Feed given is not feed eaten: what lies in the feeders, was spilled or went to rats counts too. Birds that died are not in the weight. It may be compared with another batch only at about the same weight: heavier birds need more feed a kilogram.

table-weighings = Weighings by day; the day leads to what was written
table-losses = Losses by day; the day leads to what was written
table-feed-water = Feed and water by day; the day leads to what was written

drawing-grown-weight-caption = Weight: what was weighed, your earlier batches, the plan, and the curve it follows
drawing-grown-gain-caption = Gain a day, from weighing to weighing, and as planned
drawing-grown-losses-caption = Lost so far, of the live chicks placed
drawing-grown-losses-of-day-caption = Lost on the day, of the birds alive that morning
drawing-grown-feed-caption = Feed of a bird and day
drawing-grown-water-caption = Water of a bird and day
drawing-grown-water-to-feed-caption = Litres of water for each kilogram of feed
drawing-grown-fcr-caption = Kilograms of feed for each kilogram of live bird, up to the day

section-past = From your earlier batches

field-book-left-kg = Live weight sold and otherwise gone
field-book-weight-before-g = Weight at the weighing before
field-book-weight-before-off-g = How far that may be off
field-book-weighed-before-d = Day of the weighing before
field-book-arrival-g = Chicks weighed on the day they came
field-book-week-weighed-d = Day of weighing nearest to day 7
field-past-batches = Earlier batches
field-past-weight-g = Weight in earlier batches
field-past-losses-percent = Losses to date in earlier batches
field-past-feed-a-bird-g = Feed a bird in earlier batches
field-past-water-a-bird-ml = Water a bird in earlier batches

figure-growing-gain = Gain a day up to the last weighing
figure-growing-against-plan = Weight against the plan
figure-growing-against-past = Weight against your earlier batches
figure-growing-weighed-ago = Days since the last weighing
figure-growing-feed = Feed given so far
figure-growing-feed-unwritten = Days with no feed written
figure-growing-fcr = Feed for a kilogram of live bird (FCR)
figure-growing-water-to-feed = Water to feed, last written
figure-growing-first-week-end = First week counted up to day
figure-growing-first-week-losses = Losses of the first week
figure-growing-arrival-weight = Weight of a chick on arrival
figure-growing-first-week-ratio = Weight at a week, times the weight on arrival
figure-growing-gain-by-day = Gain a day
figure-growing-feed-to-date = Feed given to date
figure-growing-days-fed = Days with feed written
figure-growing-left-kg-to-date = Live weight gone to date
figure-growing-fcr-by-day = Feed for a kg of live bird
figure-growing-water-to-feed-by-day = Water to feed
figure-growing-lost-share-by-day = Lost on the day
figure-expected-gain-by-day = Gain a day, as planned
figure-expected-lost-share-by-day = Lost on the day, as planned
figure-expected-losses-by-day = Losses to date, as planned
figure-expected-feed-to-date = Feed of a bird to date, as planned
figure-expected-water-a-bird-by-day = Water a bird, as planned
figure-expected-fcr-by-day = Feed for a kg of live bird, as planned
figure-past-weight-by-day = Weight, your earlier batches
figure-past-losses-by-day = Losses to date, your earlier batches
figure-past-feed-a-bird-by-day = Feed a bird, your earlier batches
figure-past-water-a-bird-by-day = Water a bird, your earlier batches

rule-gain-last-weighed = The gain a day between the last two weighings; from arrival where there was one weighing.
rule-weight-against-plan = The weight last weighed, against what the plan expects on that day.
rule-weight-against-past = The weight last weighed, against the mean of your earlier batches in this house on that day.
rule-weighed-ago = From the last weighing to today.
rule-feed-so-far = All feeds of all days added up, as written.
rule-days-without-feed = Days since the chicks came, today with them, less those with feed written.
rule-fcr-last-weighed = As it stood on the last day of weighing.
rule-water-to-feed-last = The last day with both water and feed written.
rule-first-week-so-far = The chick day is day 0, so the first week ends with day 6.
rule-losses-of-first-week = Dead and culled up to the end of the first week, of the live chicks placed. Breeders hope for 1 % and less.
rule-chick-from-boxes = The mean of the full boxes, less an empty box, shared by the chicks in one.
    .formula = (the mean of { $w } − { $e }) ÷ { $n }
rule-chick-weighed = Chicks weighed on the day they came.
rule-first-week-times = The weight on the day of weighing nearest to day 7, for each gram on arrival.
rule-gain-between-weighings = What they weigh more than at the weighing before, shared by the days between. Both weighings are off by chance; the range takes in both.
    .formula = ({ $w } − { $v }) ÷ ({ $d } − { $e })
rule-feed-added-up = Feed up to yesterday and today’s. A day without a word adds nothing.
rule-days-fed = Counts the days on which feed was written.
rule-left-added-up = Live weight of birds sold and otherwise gone: as written, or as many birds at the weight last weighed.
rule-fcr-so-far = All feed given up to the day, for each kilogram of birds alive and of birds that left alive.
rule-water-to-feed-written = Litres of water for each kilogram of feed, as written for the day.
rule-losses-of-the-day = Dead and culled of the day, of the birds alive that morning.
rule-gain-by-plan = What the plan expects on this day, less what it expects on the day before; on day 0 less the chicks as they came.
rule-losses-of-the-day-by-plan = What the plan loses on this day, of the birds it has alive.
rule-losses-to-date-by-plan = What the plan had lost the day before, and today’s share of what was left.
rule-feed-added-up-by-plan = The plan’s feed of a bird, added up day by day.
rule-water-a-bird-by-plan = The plan’s water of the day, shared by the birds it has alive.
rule-fcr-by-plan = The plan’s feed of a bird to date, for each gram it weighs.
rule-weight-of-past = The mean of your earlier batches in this house. Between two weighings a weight is taken on a straight line.
rule-losses-of-past = The mean of your earlier batches in this house.
rule-feed-of-past = The mean of your earlier batches in this house that wrote this day.
rule-water-of-past = The mean of your earlier batches in this house that wrote this day.
