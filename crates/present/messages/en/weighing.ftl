## A weighing: its fields, figures and rules.

field-weighing-group-weights-g = Weight of each crate or bucket, its birds together
    .hint = In grams, without the crate: weigh it empty, or set the scale to zero with it.
    .many = { $n } crates
field-weighing-group-birds = Birds in each crate or bucket
    .hint = In the same order as the weights.
    .many = birds of { $n } crates
field-weighing-spot-weights-g = Weight of each spot, all its birds together
    .many = { $n } spots
field-weighing-spot-birds = Birds weighed in each spot
    .many = birds of { $n } spots
field-weighing-cocks = Cock or hen, bird by bird
    .hint = 1 for a cock and 0 for a hen, in the same order as the weights.
    .many = cock (1) or hen (0) for { $n } birds
field-weighing-age-d = Age
    .hint = In days; the chick day is day 0.
field-weighing-standard = Target weight to compare with
choice-weighing-standard-fast = the fast curve
choice-weighing-standard-open-house = the open-house curve
choice-weighing-standard-slow = the slow curve
field-weighing-target-g = Target weight of your own
field-weighing-scale-step-g = Step of the scale
    .hint = From one mark or number to the next, in grams.
field-weighing-test-weight-g = Test weight, as it truly is
    .hint = Such as a sealed 2 L bottle of water: 2 000 g and the bottle.
field-weighing-test-shown-g = Test weight, as the scale shows it
field-weighing-correct-scale = Put the mean right for the scale
choice-weighing-correct-scale-no = no
choice-weighing-correct-scale-yes = yes

figure-weighing-n = Birds weighed
figure-weighing-scale-bias = The scale shows too much (minus: too little)
figure-weighing-bias-taken-off = Taken off for the scale
figure-weighing-scale-error = The scale alone can put the mean off, either way
figure-weighing-mean-within = The mean is within, either way, in grams
figure-weighing-birds-wanted = Birds to weigh in all
figure-weighing-more-birds = Birds still to weigh
figure-weighing-target = Target weight
figure-weighing-off-target = Above the target (minus: below)
figure-weighing-mean-cocks = Mean weight of the cocks
figure-weighing-mean-hens = Mean weight of the hens
figure-weighing-cv-cocks = How much the cocks differ (CV)
figure-weighing-cv-hens = How much the hens differ (CV)
figure-weighing-sex-gap = Cocks above hens
figure-weighing-cv-within-sex = How much birds of one sex differ (CV)
figure-weighing-cv-mixed = How much a flock of both differs (CV), by the gap

rule-groups-counted = The birds of all crates, added.
    .formula = sum of { $n }
rule-scale-bias = What the scale shows less what the test weight truly is, by what it truly is.
rule-bias-taken-off = Nothing, unless you ask for it: then what the scale shows too much.
rule-scale-error = A scale that reads in steps can be off by half a step for all birds alike; 19 times in 20 by 1.96 × step ÷ √12. More birds do not make it less.
rule-scale-error-corrected = The step of the scale stands in the birds’ weights and in that of the test weight.
    .formula = 1.96 × { $d } ÷ √12 × √(1 + (mean weight ÷ { $t })²)
rule-scale-error-of-groups = As for single birds, shared among the birds of a crate.
    .formula = 1.96 × { $d } ÷ √12 × crates ÷ birds in all
rule-scale-error-of-groups-corrected = The step of the scale stands in the weights of the crates and in that of the test weight.
    .formula = 1.96 × { $d } ÷ √12 × √((crates ÷ birds)² + (mean weight ÷ { $t })²)
rule-within = 19 times in 20 the flock’s mean lies so near, if the birds were caught by chance; by Student’s t, with the scale’s own error.
    .formula = √((t × spread of { $w } ÷ √(how many))² + { $s }²) ÷ (1 + { $b } ÷ 100), t from Student’s table at how many − 1
rule-within-of-flock = 19 times in 20 the flock’s mean lies so near, if the birds were caught by chance; nearer, the more of the flock were weighed.
    .formula = √((t × spread of { $w } ÷ √(how many))² × (1 − how many ÷ { $N }) + { $s }²) ÷ (1 + { $b } ÷ 100), t from Student’s table at how many − 1
rule-within-by-groups = Birds of one crate are weighed as one, so crates are counted, not birds: t × standard error of the mean of totals.
    .formula = √((t × √(g ÷ (g − 1) × sum of (crate − mean × its birds)²) ÷ all birds)² + { $s }²) ÷ (1 + { $b } ÷ 100) over { $T } with { $n }, g how many, t from Student’s table at g − 1
rule-within-by-spots = Birds penned together are alike, so spots are counted, not birds: the range is wider and true.
    .formula = √((t × √(g ÷ (g − 1) × sum of (spot − mean × its birds)²) ÷ all birds)² + { $s }²) ÷ (1 + { $b } ÷ 100) over { $T } with { $n }, g how many, t from Student’s table at g − 1
rule-groups-mean = The weight of all crates by the birds in all of them. The range is by crates.
    .formula = sum of { $T } ÷ sum of { $n } ÷ (1 + { $b } ÷ 100)
rule-spots-mean = The weight of all birds by how many they are. The range is by spots, since birds penned together are alike.
    .formula = sum of { $T } ÷ sum of { $n } ÷ (1 + { $b } ÷ 100)
rule-weights-mean = All weights added, divided by how many they are. The range is by Student’s t.
    .formula = sum of { $w } ÷ how many they are ÷ (1 + { $b } ÷ 100)
rule-groups-sd = From how far the crates stray from the mean, as if birds fell into them by chance. Catching the near ones is not chance.
    .formula = √(sum of ((crate − mean × its birds)² ÷ its birds) ÷ (crates − 1)) over { $T } with { $n }
rule-groups-cv = The spread of single birds as told by how far the crates stray, by the mean. The range is by chi-square and wide: crates tell little about single birds.
    .formula = 100 × √(sum of ((crate − mean × its birds)² ÷ its birds) ÷ (crates − 1)) ÷ mean over { $T } with { $n }
rule-birds-wanted = The fewest birds, not under 30, whose mean is near enough 19 times in 20 although you look after every bird. Looking costs about two birds; tried on 40 000 invented flocks.
    .formula = the least whole number m, not under { $n } and 30, for which t × { $k } × √((1 + 4 ÷ m) ÷ m) is not over { $e }, t from Student’s table at m − 1
rule-birds-wanted-of-flock = The fewest birds, not under 30, whose mean is near enough 19 times in 20 although you look after every bird; less for a small flock. Looking costs about two birds; tried on 40 000 invented flocks.
    .formula = the least whole number m, not under { $n } and 30, for which t × { $k } × √((1 + 4 ÷ m) ÷ m × (1 − m ÷ { $N })) is not over { $e }, t from Student’s table at m − 1
rule-birds-wanted-together = Where birds hang together by spot or crate: as many times more as the range must shrink, squared. Go to new spots, or fill new crates.
    .formula = round up ({ $n } × the greater of 1 and ({ $h } ÷ ({ $e } of { $m }))²)
rule-more-birds = Birds to weigh in all, less those weighed. 0 is enough.
    .formula = { $a } − { $n }, not under 0
rule-target-told = You typed it.
rule-target-fast = Read off the fast curve, which is breeders’ objective and not what most small open houses reach.
rule-target-slow = Read off the slow curve.
rule-target-open-house = Read off the curve for open-sided houses in the tropics.
rule-off-target = Mean weight less target, by the target.
rule-mean-of-cocks = The cocks’ weights added, divided by how many they are. The range is by Student’s t.
    .formula = sum of the cocks’ weights ÷ how many they are ÷ (1 + { $b } ÷ 100), out of { $w } and { $s }
rule-mean-of-hens = The hens’ weights added, divided by how many they are. The range is by Student’s t.
    .formula = sum of the hens’ weights ÷ how many they are ÷ (1 + { $b } ÷ 100), out of { $w } and { $s }
rule-cv-of-cocks = The spread of the cocks as a share of their mean. The range is McKay’s in Vangel’s form.
    .formula = 100 × √(sum of (cock − mean of the cocks)² ÷ (cocks − 1)) ÷ mean of the cocks, out of { $w } and { $s }
rule-cv-of-hens = The spread of the hens as a share of their mean. The range is McKay’s in Vangel’s form.
    .formula = 100 × √(sum of (hen − mean of the hens)² ÷ (hens − 1)) ÷ mean of the hens, out of { $w } and { $s }
rule-sex-gap = Mean of the cocks less mean of the hens, by the mean of all.
    .formula = 100 × (mean of the cocks − mean of the hens) ÷ mean of all, out of { $w } and { $s }
rule-cv-within-sex = Every bird’s distance from the mean of its own sex, squared; added, divided by two less than the birds; the root of that by the mean of all.
    .formula = 100 × √(sum of (weight − mean of its sex)² ÷ (birds − 2)) ÷ mean of all, out of { $w } and { $s }
rule-cv-mixed = What cocks and hens together differ: their own spread, and what the gap between them adds.
    .formula = √({ $k }² + share of cocks × share of hens × { $g }²), the shares out of { $s }

against-as-many = { $key }: one is wanted for each of { $other }, { $value } in all.
against-one-bird = { $key } is { $typed } beside weight_g, which is the weight of one bird. Put the weight of a crate under { $other }.

finding-scale-off = The scale is { $off } off at the test weight, and every bird with it. The mean is shown as weighed.
way-out-check-scale = Set the scale to zero and weigh the test weight again; if it is still off, ask for the mean to be put right.
finding-few-spots = Weighed at { $spots } named spots. Birds penned together are alike: three spots or more, away from doors and walls, tell how sure the mean is.
finding-crates-no-evenness = Crates tell the mean and not how even the birds are. For evenness weigh birds one by one.
finding-counted-by-spots = The range of the mean is by { $spots } spots and not by single birds, since birds penned together are alike. The ranges of CV and evenness are by birds.
finding-sexes-not-told = Cocks and hens cannot be told apart by these weights alone. To know them apart, look at each bird.
finding-two-sizes = These weights fall into two sizes, most likely hens of about { $light } and cocks of about { $heavy } ({ $share } of the birds); within one sex they differ by { $cv } (CV). To be sure, look at each bird.

## A weighing in words.

weighed-title = A weighing
weighed-mean-of = Mean weight of { $birds } weighed
weighed-mean-range = The flock’s mean lies between { $low } and { $high }, 19 times in 20.
weighed-mean-alone = So few cannot tell how far the flock’s mean may lie from it.
weighed-cv-range = Birds differ by { $cv } (CV). In the flock it can be { $low } to { $high }: so many weights say no more.
weighed-even-range = { $share } of the birds weighed are within a tenth of their mean. In the flock it can be { $low } to { $high }.
weighed-enough = Enough: the mean is known to { $error } either way.
weighed-more = Weigh about { $birds } more to know the mean to { $error } either way. You may look after every bird.
weighed-more-elsewhere = Weigh about { $birds } more to know the mean to { $error } either way, at new spots or in new crates.
weighed-above-expected = That is { $off } above the { $target } expected, and not by luck of the draw alone.
weighed-below-expected = That is { $off } below the { $target } expected, and not by luck of the draw alone.
weighed-as-expected = { $target } was expected. By these weights the flock can be on it: { $off } off is within the range.

weights-caption = How the weights lie
weights-up = Birds
weights-across = Weight, { $unit }
weights-from = From, { $unit }
weights-to = Under, { $unit }
weights-mean = Mean of these birds
weights-near = A tenth below and above it
weights-expected = Expected
weights-alternative = { $count } weights from { $least } to { $most } { $unit }. Most lie from { $from } to { $to } { $unit }: { $fullest } birds.
weights-alternative-expected = { $said } Expected were { $expected } { $unit }.

odd-weights-heading = Is that right?
odd-weight = Weight { $which }: { $weight }
odd-slip-ten = A digit too many or too few? Then { $meant }.
odd-slip-kilograms = Kilograms for grams? Then { $meant }.
odd-slip-pounds = Pounds and kilograms mixed up? Then { $meant }.
odd-slip-swapped = Two digits swapped? Then { $meant }.
odd-slip-twice = The same bird written down twice?
odd-slip-two-birds = Two birds on the scale? Then { $meant } each.
odd-no-slip = No slip of the pen explains it. If the bird was truly so, leave it in.

weigh-file-nothing = There are no weights in this file. Write a heading such as weight_g, and below it a weight a line.
weigh-file-no-weights = Line { $line }: no column of weights. Name one weight_g, a row a bird; or group_weight_g and birds, a row a crate. These are read: { $known }.
weigh-file-column = Line { $line }: column “{ $typed }” is not read. Did you mean { $nearest }?

slip-title = Weighing slip
slip-expected = expected { $weight }
slip-birds = weigh { $birds }
slip-how = Same hour as last time, before feed. Set the scale to zero with the empty crate or sling on it, and weigh the test weight first. Pen birds without choosing, at three spots or more, away from doors and walls. Weigh every bird you pen, the small ones too.
slip-hour = Hour
slip-who = Weighed by
slip-step = Step of the scale, g
slip-test-true = Test weight, truly, g
slip-test-shown = The scale shows, g
slip-caption = A box a bird, in grams
slip-bird = Bird
slip-spot = Spot { $n }
slip-where = where
slip-crates = By the crate: write the weight and the birds in one box, such as 18 200 / 10. Cock or hen: put c or h behind the weight.
slip-n = Birds
slip-mean = Mean, g
slip-cv = CV, %
slip-even = Within a tenth, %

## The command.

command-weigh = What a file of weights says of the flock: mean, CV and evenness with how sure each is, and whether it is enough
argument-weights-file = A CSV file with a heading, or - for standard input: weight_g, a row a bird; or group_weight_g and birds, a row a crate; where wanted spot and sex
option-age = Day of age, to read the target weight off a curve; the chick day is day 0
option-expected = What a bird should weigh, g
option-standard = The curve to read the target weight off
option-birds = Birds in the flock
option-within = How near the mean should be known, %; without it 3
option-step = Step of the scale, g
example-weigh =
    Examples:
      broodwright weigh weights.csv --day 28 --birds 1500
      broodwright weigh weights.csv --expected 1400 --json
