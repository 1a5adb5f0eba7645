## Quick sums about weighing, performance, vaccine water and daylight.

sum-sample-size = How many birds to weigh?
sum-uniformity = How even are the birds?
sum-index = European index of a batch (EPEF)
sum-feed-conversion = Feed conversion (FCR)
sum-break-even = At what price does the batch break even?
sum-vaccine-water = Water for a vaccine the birds drink
sum-daylength = How long is the day?

section-weighing = Weighing
section-performance = How the batch did
section-vaccine = Vaccine water
section-light = Light

unit-money-kg = { $n } a kg
unit-label-money-kg = { $money } a kg
list-and-more = { $list } … and { $more } more
formula-t95 = Student’s t for 19 in 20 at
formula-phi = share of a bell curve below

fault-in-list = { $key }: number { $at } is “{ $item }”. Each must be a number from { $low } to { $high }.
fault-too-few = { $count ->
    [one] { $key } holds 1 number; at least { $least } are needed. One alone cannot tell how much they differ, so there is no CV.
   *[other] { $key } holds { $found } numbers; at least { $least } are needed.
}
fault-too-many = { $key } holds { $found } numbers; at most { $most } can be taken.
against-weighed-more-than-flock = { $key } is { $typed }, but the flock has { $value }. It can be { $low } to { $high }.
against-chicks-heavier-than-sold = { $key } is { $typed }, but only { $value } was sold. Type the weight of all chicks together, in kilograms.
against-sold-more-than-placed = { $key } is { $typed }, but only { $value } were placed. Count both again.
against-birds-do-not-fit-weight = { $key } is { $typed }, but then a bird would be too light or too heavy to be true. For the weight sold it can be { $low } to { $high }.
against-feed-costs-more-than-all = { $key } is { $typed }; at that price the feed alone costs { $value }, more than all costs together. It can be at most { $high }, or the total is too small.

## Weighing.

field-weighing-weights-g = Weights, bird by bird
    .hint = In grams, as many as you have, with blanks or new lines between: 1820 1950 2010. Write kg behind a number typed in kilograms.
    .many = { $n } weights
field-weighing-cv-percent = How much they differ (CV)
    .hint = From an earlier weighing. If you do not know it, take 10.
field-weighing-error-percent = How near the mean should be
    .hint = 3 means: within 3 % of the true mean, 19 times in 20.
field-weighing-birds = Birds in the flock
    .hint = In a small flock fewer need weighing.
field-weighing-weighed = Birds you weighed, or can weigh
    .hint = Shows how near the mean comes with so many.

figure-weighing-sample-size = Birds to weigh
figure-weighing-sample-size-normal = Birds to weigh by the short formula
figure-weighing-mean-error = The mean is within, either way
figure-weighing-mean = Mean weight
figure-weighing-sd = Spread of the weights (standard deviation)
figure-weighing-cv = How much they differ (CV)
figure-weighing-uniformity = Birds within a tenth of the mean, counted
figure-weighing-uniformity-normal = Birds within a tenth of the mean, by the bell curve

rule-sample-of-flock = The fewest birds whose mean is near enough 19 times in 20, by Student’s t; less for a small flock.
    .formula = the least whole number n, not under { $n0 }, for which t × { $k } × √(1 − n ÷ { $N }) ÷ √n is not over { $e }, t from Student’s table at n − 1
rule-sample = The fewest birds whose mean is near enough 19 times in 20, by Student’s t, in a large flock.
    .formula = the least whole number n, not under { $n0 }, for which t × { $k } ÷ √n is not over { $e }, t from Student’s table at n − 1
rule-sample-normal-of-flock = The short formula for a blackboard: m is (1.96 × CV ÷ error) squared, then m ÷ (1 + m ÷ flock), rounded up.
    .formula = round up (m ÷ (1 + m ÷ { $N })) with m = (1.96 × { $k } ÷ { $e })²
rule-sample-normal = The short formula for a blackboard: (1.96 × CV ÷ error) squared, rounded up.
    .formula = round up (1.96 × { $k } ÷ { $e })²
rule-mean-error-of-flock = 19 times in 20 the true mean of the flock lies so near, if the birds were caught by chance; nearer in a small flock.
rule-mean-error = 19 times in 20 the true mean of the flock lies so near, if the birds were caught by chance.
rule-birds-weighed = The weights you typed, counted.
    .formula = { $w }, counted
rule-weights-sd = The square root of: every weight’s distance from the mean squared, all added, divided by one less than the number of birds. The range is by chi-square and holds for weights that follow a bell curve.
    .formula = √(sum of (weight − mean)² over { $w } ÷ (how many − 1))
rule-weights-cv = The spread as a share of the mean. The range is McKay’s in Vangel’s form.
    .formula = 100 × √(sum of (weight − mean)² over { $w } ÷ (how many − 1)) ÷ mean
rule-weights-uniformity = Of 100 birds, so many weigh from nine to eleven tenths of the mean of these very birds, both limits counted in. The range is Wilson’s.
    .formula = 100 × (how many of { $w } lie from 0.9 × mean to 1.1 × mean) ÷ how many they are
rule-cv-told = You typed it.
rule-uniformity-of-bell-curve = What a flock with this CV would have if its weights followed a bell curve. Cocks and hens together mostly do not quite.

finding-sample-below-thirty = By arithmetic { $birds } would do, but never weigh fewer than { $fewest }: the CV itself is only a guess (common practice).
finding-odd-weights = Weights far from the others: { $count }; the furthest is { $worst }. A slip of the pen, pounds for kilograms, a bird twice? Without them the mean is { $mean } and the CV { $cv }. If the bird was truly so, leave it in.
finding-many-odd-weights = { $count } of { $of } weights stand far from the others. So many are no slips: the flock has stragglers. Look for them, and for the reason.
finding-few-weighed = Only { $birds }. By luck alone the share counted can lie 7 to 15 points off, so read the ranges. { $enough } or more tell better.
finding-uneven = Above { $uneven } a flock of cocks and hens is uneven (from memory). Usual reasons: too few feeders or drinkers, a cold start, heat, a sick spell, chicks from several parent flocks.
finding-cv-scale = For cocks and hens together a CV of 8 to 10 % is good, 10 to 12 % fair, above that uneven (from memory). Compare with your own batches first.
finding-weigh-all-penned = Pen birds gently in three or more spots, away from doors and walls, and weigh every bird penned: birds picked by hand are the slow ones. Birds of one spot are alike, so the true range is a little wider than shown.

## Performance.

field-performance-livability-percent = Survival
    .hint = Sold alive of 100 chicks placed; culls count as dead.
field-performance-weight-kg = Mean weight of a bird sold
field-performance-age-d = Age at sale
    .hint = Days; the chick day is day 0. Sold over several days: the mean age, counted by birds.
field-performance-fcr = Feed conversion (FCR)
    .hint = Feed eaten divided by live weight sold, both in kg.
field-performance-chick-g = Weight of a chick
    .hint = When placed; mostly 40 to 44 g.
field-performance-feed-kg = Feed eaten
    .hint = In kg, not bags: bags bought and left from before, less what is left over or given away.
field-performance-live-kg = Live weight sold
    .hint = All birds together.
field-performance-dead-kg = Weight of the dead and culled birds
    .hint = All together. Needed only for the form by weight gained.
field-performance-chicks-kg = Weight of the chicks placed
    .hint = All together: 1000 chicks of 42 g are 42 kg. Needed only for the form by weight gained.
field-performance-mean-weight-g = Mean weight of a bird sold
    .hint = To compare batches sold at different weights.
field-performance-cost-total = All costs of the batch
    .hint = Chicks, feed, heat, litter, vaccine, transport, and your own work at the wage you would pay.
field-performance-birds-sold = Birds sold
field-performance-chicks-placed = Chicks placed
field-performance-price-per-kg = Price of live weight
field-performance-feed-price-per-kg = Price of feed
    .hint = The price of a bag divided by its kilograms.

figure-performance-epef = European index (EPEF), points
figure-performance-daily-gain = Gain of a bird a day
figure-performance-fcr-sold = Feed conversion by weight sold
figure-performance-gain = Weight gained, the dead counted in
figure-performance-fcr-gain = Feed conversion by weight gained
figure-performance-fcr-at-2500 = Feed conversion, as if sold at 2 500 g
figure-performance-fcr-at-1500 = Feed conversion, as if sold at 1 500 g
figure-performance-break-even-price = Break-even price, live weight
figure-performance-profit = Left over (minus: lost)
figure-performance-mean-weight = Mean weight of a bird sold
figure-performance-break-even-weight = Break-even weight of a bird
figure-performance-livability = Survival
figure-performance-break-even-livability = Break-even survival
figure-performance-break-even-fcr = Break-even feed conversion
figure-performance-break-even-feed-price = Break-even price of feed

rule-epef = Survival times weight times 100, divided by days times feed conversion.
rule-daily-gain = The weight less the chick’s, divided by the days.
rule-daily-gain-whole = The whole weight divided by the days; the chick’s weight is not taken off, which makes it about 2 % more.
rule-fcr-sold = Feed eaten divided by live weight sold. The feed of birds that died stays in: you paid for it.
rule-weight-gained = Weight sold and weight of the dead, less the weight of the chicks.
rule-fcr-gain = Feed eaten divided by all weight gained: the form of trials, which differs from the other by 2 to 4 %.
rule-fcr-at-2500 = 0.02 more or less for every 100 g from 2 500 g; it holds from 2 300 to 2 700 g only.
rule-fcr-at-1500 = The older correction: 0.04 more or less for every 100 g from 1 500 g. Kept to 1 300 to 1 700 g, as far as its printed example goes.
rule-break-even-price = All costs divided by the weight sold: what a kg cost you.
rule-profit = Price times weight sold, less all costs.
rule-mean-weight-sold = Weight sold divided by birds sold.
rule-break-even-weight = All costs divided by what the birds sold bring for each kg they weigh. More feed for the heavier bird is not counted.
rule-survival = Birds sold alive of 100 chicks placed; eaten at home or given away counts as alive, culled as dead. Deaths are the rest to 100.
rule-break-even-livability = All costs divided by what all chicks placed would have brought at this weight and price. Above 100 it cannot be reached. More feed for more birds is not counted.
rule-break-even-fcr = Income less all costs but feed is what the feed may cost; divided by the feed price and the weight sold.
rule-break-even-feed-price = Income less all costs but feed, divided by the feed eaten.

finding-fcr-hardly-possible = A feed conversion of { $fcr } is hardly possible. Is the feed in kg and not in bags, is all of it counted, and the weight of all birds sold?
finding-correction-misleads = At { $weight } no correction is shown, because it would mislead: the newer one holds from { $low_heavy } to { $high_heavy }, the older one near { $low_light } to { $high_light }. Beyond that they make heavy birds look far better than they are. Compare batches sold at like weights.
finding-gain-needs-both = For the form by weight gained both are needed: the weight of the dead and of the chicks.
finding-epef-scale = Around 1998, 200 to 225 points were held acceptable (published); good open-sided houses now reach 250 to 330 (common practice). Your own last batches are the better yardstick. Fewer birds on the floor lift the points and can lower what the house earns.
finding-sells-at-a-loss = At this price the batch loses { $loss }. It breaks even at { $price }.
finding-nothing-left-for-feed = The other costs alone are more than the birds bring: no feed conversion and no feed price saves this batch.
finding-break-even-means = Below the break-even price a batch loses. Birds kept longer in hope of a better price also eat, and the limits of heat and floor come before any price.

## Vaccine water.

field-vaccine-birds = Birds
field-vaccine-age-d = Age of the birds
    .hint = In days; the day they came is day 0 here. If your paper calls that day 1, take one off.
field-vaccine-measured-2h-l = What they drank in two hours yesterday
    .hint = In litres, at the same hour in the same weather. Goes before the rule.

figure-vaccine-water = Water to mix the vaccine into
figure-vaccine-water-by-age = Water by the rule of age
figure-vaccine-milk-powder = Skimmed milk powder, if the leaflet allows it

rule-vaccine-water-by-age = As many litres for 1 000 birds as they are days old, at most 40.
rule-vaccine-water-measured = What your own birds drank in two hours.
rule-vaccine-water-as-by-age = By the rule of age, since you did not measure.
rule-milk-powder = 2 to 4 g to a litre, 3 as the figure; below 1 % fat. Stirred in 20 to 30 minutes before the vaccine.

finding-vaccine-water-far-from-rule = Your birds drank { $measured }; the rule of age says { $rule }. Look again at clock, counts and leaks, and follow the leaflet if it names a most.
finding-vaccine-measure-two-hours = Better than the rule: measure the day before what your own birds drink in two hours. In heat they drink the rule’s litres so fast that the timid get none.
finding-vaccine-day-count = The day the chicks came is day 0 here; your vet’s paper may call it day 1. Ask which, and go by the date, or every vaccine slips by a day.

sum-vaccine-water-caution = Your veterinarian and the leaflet come first: which vaccine, which day, how many doses. Never fewer doses than birds, never part of a vial, never one vial over two days.
sum-vaccine-water-caution-2 = Vaccinate in a cool hour. Thirst before it as the leaflet says; only 30 to 60 minutes when it is above 30 °C; never for panting birds: wait for another day.
sum-vaccine-water-caution-3 = No chlorine, acid or medicine in the water from 24 to 48 hours before until 24 hours after, as the leaflet says.
sum-vaccine-water-caution-4 = Keep the vaccine cool and out of the sun. Healthy birds only. Write down the vial’s batch number.

## Light.

field-light-date = Day
figure-light-daylength = From sunrise to sunset
rule-daylength = By the sunrise equation: the upper edge of the sun on the horizon, good to a few minutes between the tropics. Hills and clouds take from it.
    .formula = 24 ÷ π × arc cosine of (−(sin 0.8333° + sin { $f }° × sin δ) ÷ (cos { $f }° × cos δ)), δ the height of the sun over the equator on { $p }
