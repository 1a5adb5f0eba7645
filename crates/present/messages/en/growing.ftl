### How a running batch grows, what is in the store room, how the chicks are brooded.

page-growing = How are they growing?
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

## What is in the store room.

page-store = What is in the store room?
store-feed = How much feed is left?
store-other = Litter, fuel, medicine
waiting-feed-delivered = No feed that came is written yet. Write each delivery with its bags and the weight of a bag.
waiting-bought = No litter, fuel or medicine is written as bought yet.
store-feed-label = All feed left
store-no-plan = How long it lasts can be said once a plan was adopted.
store-feed-lasts = { $count ->
    [one] { $days } day
   *[other] { $days } days
}
store-feed-until = { $count ->
    [one] { $left } by the book, as much as the birds alive are expected to eat in one full day: until { $day }. Of whichever feed.
   *[other] { $left } by the book, as much as the birds alive are expected to eat until { $day }, of whichever feed.
}
store-feed-under-a-day = { $left } by the book: less than the birds alive eat in a day, of whichever feed. Buy today.
store-feed-to-the-end = { $left } by the book: enough to the end of the plan for the birds alive, of whichever feed.
store-phase-lasts = { $count ->
    [one] { $feed } alone lasts { $days } day.
   *[other] { $feed } alone lasts { $days } days.
}
store-more-given = { $feed }: more was given than came, by the book. A delivery is not written yet, or a feed went under the wrong name.
store-by-book = By the book, not by eye: count the full bags. Where they are fewer, something was not written, was spoiled, or was taken; write it down.
store-feed-caption = Feed by kind; one that is not begun yet lasts from its own first day
store-deliveries = Deliveries; the date leads to what was written
store-bought = Bought
store-burnt = Fuel burnt
store-medicine = Medicines given
store-count-what-stands = Sacks and cylinders differ: a full one is not weighed here. Count what stands there, and keep one full cylinder or charcoal for two nights in hand.
amount-of = { $amount } { $unit }
column-feed = Feed
column-bags-came = Bags that came
column-bags-opened = Opened
column-given = Given, { $unit }
column-spoiled = Spoiled, { $unit }
column-left = Left, { $unit }
column-bags-left = Bags left
column-days-left = Lasts, days
column-bag-weight = A bag
column-milled = Milled
column-name = Name
column-bought = How much
column-last-bought = Last on
column-fuel = Fuel
column-burnt = In all
column-days-burnt = Days written
column-a-day = On such a day
column-last-burnt = Last on
column-medicine = Medicine
column-amount = How much

section-stock = From the store room
section-chicks = From the checks on chicks

formula-lasts = days that it lasts:
table-store-left = Feed left by day; the day leads to what was written
drawing-store-left-caption = All feed left in the evening, by the book
field-stock-came-by-day-kg = Feed that came
field-stock-spoiled-by-day-kg = Feed that spoiled
figure-store-feed-by-day = All feed left
rule-store-by-day = What was left the evening before and what came, less what was given and what spoiled. Feed that came before the chicks counts on day 0.
field-stock-ahead-kg = Feed of each day to come
    .many = the feed of { $n } days to come
field-stock-starter-came-kg = Feed that came, starter
field-stock-starter-bags = Bags that came, starter
field-stock-starter-opened = Bags opened, starter
field-stock-starter-given-kg = Feed given, starter
field-stock-starter-spoiled-kg = Feed spoiled, starter
field-stock-starter-bag-kg = Weight of a bag, starter
field-stock-starter-ahead-kg = Feed of each day to come, starter
    .many = the starter of { $n } days to come
figure-store-starter-left = Left of starter
figure-store-starter-bags-left = Bags left of starter
figure-store-starter-lasts = How long the starter lasts
rule-store-left-starter = What came, less what was given and what was spoiled.
rule-store-bags-left-starter = In bags of the weight that came last.
rule-store-lasts-starter = The plan’s feed of each day to come, for the birds that are alive, taken from what is left until a day asks for more. A feed that is not begun yet is counted from its first day.
    .formula = { $L } less { $w }, day by day
field-stock-grower-came-kg = Feed that came, grower
field-stock-grower-bags = Bags that came, grower
field-stock-grower-opened = Bags opened, grower
field-stock-grower-given-kg = Feed given, grower
field-stock-grower-spoiled-kg = Feed spoiled, grower
field-stock-grower-bag-kg = Weight of a bag, grower
field-stock-grower-ahead-kg = Feed of each day to come, grower
    .many = the grower of { $n } days to come
figure-store-grower-left = Left of grower
figure-store-grower-bags-left = Bags left of grower
figure-store-grower-lasts = How long the grower lasts
rule-store-left-grower = What came, less what was given and what was spoiled.
rule-store-bags-left-grower = In bags of the weight that came last.
rule-store-lasts-grower = The plan’s feed of each day to come, for the birds that are alive, taken from what is left until a day asks for more. A feed that is not begun yet is counted from its first day.
    .formula = { $L } less { $w }, day by day
field-stock-finisher-came-kg = Feed that came, finisher
field-stock-finisher-bags = Bags that came, finisher
field-stock-finisher-opened = Bags opened, finisher
field-stock-finisher-given-kg = Feed given, finisher
field-stock-finisher-spoiled-kg = Feed spoiled, finisher
field-stock-finisher-bag-kg = Weight of a bag, finisher
field-stock-finisher-ahead-kg = Feed of each day to come, finisher
    .many = the finisher of { $n } days to come
figure-store-finisher-left = Left of finisher
figure-store-finisher-bags-left = Bags left of finisher
figure-store-finisher-lasts = How long the finisher lasts
rule-store-left-finisher = What came, less what was given and what was spoiled.
rule-store-bags-left-finisher = In bags of the weight that came last.
rule-store-lasts-finisher = The plan’s feed of each day to come, for the birds that are alive, taken from what is left until a day asks for more. A feed that is not begun yet is counted from its first day.
    .formula = { $L } less { $w }, day by day
field-stock-last-came-kg = Feed that came, last feed
field-stock-last-bags = Bags that came, last feed
field-stock-last-opened = Bags opened, last feed
field-stock-last-given-kg = Feed given, last feed
field-stock-last-spoiled-kg = Feed spoiled, last feed
field-stock-last-bag-kg = Weight of a bag, last feed
field-stock-last-ahead-kg = Feed of each day to come, last feed
    .many = the last feed of { $n } days to come
figure-store-last-left = Left of last feed
figure-store-last-bags-left = Bags left of last feed
figure-store-last-lasts = How long the last feed lasts
rule-store-left-last = What came, less what was given and what was spoiled.
rule-store-bags-left-last = In bags of the weight that came last.
rule-store-lasts-last = The plan’s feed of each day to come, for the birds that are alive, taken from what is left until a day asks for more. A feed that is not begun yet is counted from its first day.
    .formula = { $L } less { $w }, day by day
figure-store-feed-left = Left of all feeds
figure-store-feed-lasts = How long all feed lasts
rule-store-left-all = All feeds added up.
rule-store-lasts-all = The plan’s feed of each day to come, for the birds that are alive, taken from what is left until a day asks for more.
    .formula = { $L } less { $w }, day by day

## Are the chicks warm and fed?

page-brooding = Are the chicks warm and fed?
brooding-lying = How do they lie?
brooding-crops = Have they eaten and drunk?
brooding-vent = Are they warm inside?
waiting-chick-check = Nobody wrote yet how they lie. Look from the door before they see you, at 1, 2, 4, 8, 12 and 24 hours, and by night.
chicks-lay = { $when }: { $how }.
day-and-hour = { $day }, { $hour } h
behaviour-first = What the chicks do goes before what the thermometer says: panting far from the heat is too hot, whatever it reads.
ways-of-lying = What each way of lying means
looks-caption = Looks at the chicks; the day leads to what was written
column-when = When
column-lying = How they lay
column-vent = At the vent, { $unit }
column-at-chicks = At chick height, { $unit }
chicks-lie-even = Evenly spread, eating, quiet: right. Change nothing.
chicks-lie-under-the-heat = Huddled under the heat, loud: cold. More heat, shut the curtain on the windy side, keep the gap high up open.
chicks-lie-away-from-the-heat = Pushed to the guard, quiet: too hot. Raise the brooder or turn it down, widen the guard, let air out above their heads.
chicks-lie-to-one-side = All to one side: a draught, a glare or a noise from the other. Find it and stop it.
chicks-lie-panting = Apart, beaks open, wings off the body: far too hot. Less heat now, air above their heads, cool water. Sleepy in stuffy air: open now and go out yourself.
drawing-chicks-even = A guard from above with a brooder in the middle; chicks everywhere in it, each way they look.
drawing-chicks-under-the-heat = A guard from above; all chicks in a heap on and round the brooder in the middle, the rest of the floor empty.
drawing-chicks-away-from-the-heat = A guard from above; all chicks in a ring along the guard, none near the brooder in the middle.
drawing-chicks-to-one-side = A guard from above; arrows of air come from the left, all chicks stand in a heap on the right.
drawing-chicks-panting = A guard from above; chicks far from each other and from the brooder, with open beaks and wings off the body.

waiting-crops = No crops were felt yet. Feel 30 to 40 chicks from three spots, 2, 4, 8, 12 and 24 hours after they came.
crops-good = At { $hours } hours { $share } of the chicks felt had a full crop; { $wanted } is wanted. Good.
crops-behind = At { $hours } hours { $share } of the chicks felt had a full crop; { $wanted } is wanted. So few were felt that all of them may still be there ({ $range }): feel as many again.
crops-act = At { $hours } hours { $share } of the chicks felt had a full crop; { $wanted } is wanted ({ $range }). Now: is the floor warm, is there feed on paper under every chick, does each drinker have water, is there light in every corner?
crops-how = Full and soft like porridge: feed and water. Hard: feed, no water. Watery: water, no feed. Feel again after two hours when it was too few.
crops-caption = Full crops by hours after they came
column-hours-after = After
column-crops-wanted = Wanted full
column-felt = Felt
column-full = Of them full
column-of-all = What that says of all

waiting-vent = Warmth at the vent was not written yet.
vent-cold = Mean of the last day’s checks { $vent }: cold. { $low } to { $high } is right in the first two days. Cold feet on your cheek say the same.
vent-right = Mean of the last day’s checks { $vent }: right. { $low } to { $high } is wanted in the first two days.
vent-hot = Mean of the last day’s checks { $vent }: hot. { $low } to { $high } is right in the first two days. Less heat, and let air out above their heads.
vent-how = With an ear thermometer at the dry vent, chicks from three spots of each guard. Chicks hold their own warmth only from day 12 to 14 on.
table-vent = Warmth at the vent by day; the day leads to what was written

field-chicks-vent-c = Warmth at the vent, mean of the day
figure-chicks-vent = Warmth at the vent, last written
figure-chicks-vent-by-day = Warmth at the vent
rule-vent-last = The mean of the last day on which it was written.
rule-vent-written = The mean of the checks of the day.
field-chicks-crop-2h-felt = Crops felt at 2 hours
field-chicks-crop-2h-full = Of them full at 2 hours
figure-chicks-crop-2h = Full crops at 2 hours
rule-crops-full-2 = Of 100 chicks felt, so many had a full crop. The range is what so few say of all of them, Wilson’s.
field-chicks-crop-4h-felt = Crops felt at 4 hours
field-chicks-crop-4h-full = Of them full at 4 hours
figure-chicks-crop-4h = Full crops at 4 hours
rule-crops-full-4 = Of 100 chicks felt, so many had a full crop. The range is what so few say of all of them, Wilson’s.
field-chicks-crop-8h-felt = Crops felt at 8 hours
field-chicks-crop-8h-full = Of them full at 8 hours
figure-chicks-crop-8h = Full crops at 8 hours
rule-crops-full-8 = Of 100 chicks felt, so many had a full crop. The range is what so few say of all of them, Wilson’s.
field-chicks-crop-12h-felt = Crops felt at 12 hours
field-chicks-crop-12h-full = Of them full at 12 hours
figure-chicks-crop-12h = Full crops at 12 hours
rule-crops-full-12 = Of 100 chicks felt, so many had a full crop. The range is what so few say of all of them, Wilson’s.
field-chicks-crop-24h-felt = Crops felt at 24 hours
field-chicks-crop-24h-full = Of them full at 24 hours
figure-chicks-crop-24h = Full crops at 24 hours
rule-crops-full-24 = Of 100 chicks felt, so many had a full crop. The range is what so few say of all of them, Wilson’s.
field-chicks-crop-48h-felt = Crops felt at 48 hours
field-chicks-crop-48h-full = Of them full at 48 hours
figure-chicks-crop-48h = Full crops at 48 hours
rule-crops-full-48 = Of 100 chicks felt, so many had a full crop. The range is what so few say of all of them, Wilson’s.
