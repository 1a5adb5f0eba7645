# What is likely from here.

page-outlook = What is likely from here?
growing-ahead = What is likely from here?

ahead-day = day { $day }, { $date }
ahead-between = Nine times in ten between { $low } and { $high }.
ahead-between-or-later = Nine times in ten between { $low } and { $high } or later.
ahead-lead-label = They weigh { $weight } on
ahead-no-day = They are not likely to weigh what you sell them at within the days that are looked at.
ahead-not-yet = Nothing can be said yet: it takes an adopted plan with a growth curve, chicks that came, and a batch that is not closed.
ahead-doubted-heavy = The weighing of day { $day } is heavier than it should be: { $low } to { $high } was likely.
ahead-doubted-light = The weighing of day { $day } is lighter than it should be: { $low } to { $high } was likely.
ahead-doubted-why = Was it another batch, or kilograms typed as grams? Were only the biggest or the smallest caught? Was the scale at zero?
ahead-doubted-next = It counts for little here until the next weighing agrees with it. Weigh again in a day or two.
ahead-unweighed = No bird was weighed yet. So the range is as wide as houses differ: { $percent } either way on the last day shown. One weighing of 50 birds makes it much narrower.
ahead-taught =
    { $count ->
        [0] No earlier batch of this house is known, so it goes by what open houses do.
        [one] { $batches } earlier batch of this house taught it how yours grow and how much they eat at each age.
       *[other] { $batches } earlier batches of this house taught it how yours grow and how much they eat at each age.
    }
ahead-at-sale = On { $day } there are { $birds }, which weigh { $weight } each. Until then they eat { $feed }.
ahead-feed-lasts = Feed on hand runs out on { $day }. { $between }
ahead-feed-is-enough = Feed on hand lasts for all days that are looked at.
ahead-feed-never-came = More feed was given than ever came. Write down the delivery that is missing: till then nobody can say how long the feed lasts.
drawing-foretold = foretold: nine of ten lie here
drawing-ahead-weight-caption = Weight, foretold and weighed. Up to today the shaded range is what was foretold after the weighing before; a dot outside it was a surprise.
table-ahead = Weight on each day to come, nine times in ten
column-low = at least, { $unit }
column-middle = likely, { $unit }
column-high = at most, { $unit }

ahead-likely = nine times in ten { $low } to { $high }
ahead-birds = Birds differ. On { $day } nine birds in ten likely weigh from { $light } ({ $light_range }) to { $heavy } ({ $heavy_range }): one in twenty is lighter, one in twenty heavier.
ahead-birds-at-target = On the day they weigh { $weight } on average, nine in ten weigh between { $light } and { $heavy }.
ahead-birds-cv-weighed = They differ by a CV of { $cv } ({ $range }), by the weighings up to day { $day }.
ahead-birds-cv-unweighed = No weighing tells yet how far they differ: a CV of { $cv } ({ $range }) is usual. Weigh 50 birds one by one, all that are in a penned corner.
ahead-birds-taken = { $share } of them ({ $range }) weigh what the buyer takes on that day: { $between }.
ahead-birds-taken-none = No buyer's weights are told yet. Tell the plan which weights the buyer takes, and here stands how many birds lie between.
buyer-takes-between = { $least } to { $most }
buyer-takes-from = { $least } and more
buyer-takes-to = { $most } and less
drawing-ahead-birds-caption = Where nine of ten birds lie on the days to come, the mean between them
drawing-birds-lie = nine of ten birds
drawing-buyer-least = the least the buyer takes
drawing-buyer-most = the most the buyer takes
ahead-water = Tomorrow they likely drink { $tomorrow } ({ $tomorrow_range }). Up to the sale the most on a day is { $most } ({ $most_range }): by what they eat, by what they drank of late, and by the heat of late.
ahead-water-tank = The tank holds { $tank }: { $days } of such a day.
ahead-water-tank-short = From { $day } on a day takes more than the tank holds. { $between } Fill it twice a day from then on, or put a second tank beside it.
ahead-water-tank-tight = In one case of twenty or more a day before the sale takes more than the tank holds. Two days of water in store are better than one.
drawing-ahead-water-caption = Water of each day, written so far and likely to come, with nine times in ten shaded
drawing-water-likely = likely: nine times in ten
drawing-tank = the tank
drawing-water-up = Water a day
drawing-birds-up = Weight of a bird
table-ahead-water = Water on each day to come, nine times in ten

calendar-heavy-enough = They likely weigh { $weight } from today
calendar-heavy-enough-how-sure = { $between } Fetch this calendar again after each weighing: the day moves. Weigh again before you promise birds to anybody.

figure-outlook-mean-weight = Likely mean weight
figure-outlook-said-by-day = Weight foretold after the weighing before
figure-outlook-believed-by-day = How far the weighing was believed
figure-outlook-surprise-by-day = How far the weighing lay from what was foretold, in deviations
figure-outlook-day-of-target = Day on which they weigh what you sell them at
figure-outlook-feed-left-day = Day on which all feed on hand is eaten
figure-outlook-starter-left-day = Day on which the starter is eaten
figure-outlook-grower-left-day = Day on which the grower is eaten
figure-outlook-finisher-left-day = Day on which the finisher is eaten
figure-outlook-last-left-day = Day on which the last feed is eaten
figure-outlook-birds-at-sale = Birds alive on the first day of sale
figure-outlook-weight-at-sale = Mean weight on the first day of sale
figure-outlook-feed-to-sale = Feed eaten from tomorrow to the first day of sale
figure-outlook-light-bird = What 19 of 20 birds weigh at least
figure-outlook-heavy-bird = What 19 of 20 birds weigh at most
figure-outlook-birds-cv = How far birds differ in weight (CV)
figure-outlook-light-at-sale = What 19 of 20 birds weigh at least on the first day of sale
figure-outlook-heavy-at-sale = What 19 of 20 birds weigh at most on the first day of sale
figure-outlook-light-at-target = What 19 of 20 birds weigh at least when they are heavy enough on average
figure-outlook-heavy-at-target = What 19 of 20 birds weigh at most when they are heavy enough on average
figure-outlook-birds-taken = Birds that weigh what the buyer takes on the first day of sale
figure-outlook-water = Likely water on each day to come
figure-outlook-water-peak = The most water on a day up to the first day of sale
figure-outlook-tank-days = Days that the tank holds of the day with most water
figure-outlook-tank-short-day = First day that takes more water than the tank holds
rule-tank-days-ahead = What the tank holds, by the most that is drunk on a day.

procedure-days-ahead = The days to come are played through many times. Growth goes on from where the weighings and earlier batches put it, and strays a little each day; losses go by age and by what this batch lost so far; feed goes by weight, by what they ate of late, and by heat; water by feed, by what they drank of late, and by heat; birds differ as the weighings tell. Half of the futures lie below the figure, half above.
rule-weight-foretold = What the weighings before that day foretold of it
rule-believed-by-filter = A weighing far from what was foretold counts the less the further off it is; two that agree count whole
rule-surprise-of-weighing = How far the weighing lay from what was foretold

section-ahead = The days ahead
field-ahead-level-percent = How much heavier than the standard
field-ahead-level-off-percent = How far that may be off
field-ahead-slope-percent = How much more a day
field-ahead-slope-off-percent = How far that may be off, a day
field-ahead-level-with-slope = How far the two are off together
field-ahead-damping = What is left of a trend the next day
field-ahead-level-noise-percent = How far a day strays in weight
field-ahead-slope-noise-percent = How far a day strays in trend
field-ahead-taught-by = Earlier batches that taught it
field-ahead-losses-shape = Losses seen, with those taken for granted
field-ahead-losses-rate = Losses expected, with those taken for granted
field-ahead-appetite-percent = How much more than expected they eat
field-ahead-appetite-off-percent = How far their appetite may be off
field-ahead-appetite-far-off-percent = How far their appetite may be off in some weeks
field-ahead-thirst-percent = How much more than expected they drink for what they eat
field-ahead-thirst-off-percent = How far their thirst may be off
field-ahead-cv-percent = How far birds differ in weight (CV)
field-ahead-cv-off-percent = How far that CV may be off
field-ahead-cv-seen-d = Last weighing that tells how far birds differ
field-ahead-water-l-per-kg = Water for a kilogram of feed on the days ahead, without heat
field-sale-bird-least-kg = The lightest bird that your buyer takes
    .hint = Leave it out where any bird is taken.
field-sale-bird-most-kg = The heaviest bird that your buyer takes
    .hint = Leave it out where none is too heavy.
against-bird-most-below-least = { $key } is { $typed }, but the lightest that is taken weighs { $value }. Give { $low } or more.
field-ahead-too-hot = Degrees by which it was too hot of late
field-ahead-unfed = Whether today's feed is still to be given
field-ahead-standard-g = Standard weight of the days ahead
field-ahead-feed-a-bird-g = Feed a bird of standard weight eats on the days ahead, by the plan and by this house's earlier batches
field-ahead-lost-percent = Losses that the plan expects of the days ahead
field-ahead-believed-percent = How far each weighing was believed
field-ahead-surprise = How far each weighing lay from what was foretold
field-ahead-said-g = Weight foretold after the weighing before
field-ahead-said-low-g = Lower end of what was foretold
field-ahead-said-high-g = Upper end of what was foretold

command-outlook = What is likely from here: when they are heavy enough, how many are left, how long the feed lasts
option-outlook-scenarios = Write the futures that the outlook is counted from, a line a future and day, as CSV
command-no-outlook = There is nothing to look ahead to: it takes an adopted plan with a growth curve, chicks that came, and a batch that is not closed.
example-outlook =
    Example:
      broodwright outlook --on 2027-10-05 --scenarios futures.csv
