### The pages of a running batch: today, one entry, one day.

page-a-day = That day
page-batches = The batches

day-and-age = { $day }, day { $age }
other-days = Other days
written-in-the-book = Written in the book.
to-the-entry = To the entry
not-yet-written = Not yet written
day-lacks = { $day }: { $what }
type-a-week-in = Type a week in from paper
paste-rows = Paste rows from a table
jobs-of-the-day = To do
job-done = Done:
tick-off = Tick off
job-late = { $count ->
    [one] Late by { $days } day.
   *[other] Late by { $days } days.
}
job-why = Why?
write-the-day = Write the day down
save-the-day = Write it down
write-down = Write it down
kind-of-part = { $kind }: { $part }
so-many-bags = (about { $n } bags)
call-at = { $birds } dead in one day, or signs you do not know: call a veterinarian, move and sell nothing.
look-at = Look at
the-adopted-plan = The adopted plan
all-of-the-day = All that is written about the day
write-something-else = Write something else down
the-chicks-came = The chicks came
last-entries = Last entries
more-to-say = More, if you know it
is-it-so = Is it so?
it-is-so = Yes, it is so. Keep it.
why-changed = Why is it changed?
changes-what-was-written = This stands in the book already:
written-meanwhile = Somebody wrote this meanwhile:
reason-label = The reason
reason-hint = Such as: miscounted, wrong line, counted again in the evening. It stays beside the old number.
back-to-the-day = Back to the day
nothing-was-said = Nothing was filled in, so nothing was written.
about-which-day = About which day
counts-no-more = This was taken back and counts no more.
history = What stood here before
history-taken-back = Taken back.
put-right = Put it right
take-back = Take it back
take-back-what = It then counts no more. It stays in the history with your reason.
reason-is-needed = Say why, so that whoever reads the book later knows.
nothing-of-the-day = Nothing is written about this day.
conflict-of-day = { $kind }, { $day }
keep-this-one = Keep this one
conflict-sum = Each counted a part: keep the sum
conflict-both = Both happened: keep both
back-to-today = Back to today
batch-runs = Day { $age }, { $alive } alive
batch-not-begun = The chicks have not come yet
batch-is-closed = Closed

## What is said on top of a form

about-chicks-placed = Four numbers are kept apart: ordered, paid for, counted out of the boxes, and dead on arrival. Losses count from the chicks that were placed alive.
about-deaths = Count morning and evening, by ring while there are rings.
about-feed-delivered = Ask for the milling date: it stands on the bag, and feed keeps from that day on.
about-medicine-given = Give only what a veterinarian ordered, as the label says. Birds are not sold before the waiting time is over.
about-vaccine-given = Write down lot and expiry: if birds fall ill later, the veterinarian asks for them.
about-crop-fill = Feel the crops of 30 chicks or more, from all over the ring. Full is soft and round, with feed and water in it.
about-chick-check = Squat down and wait until they have forgotten you. Then see how they lie.
about-batch-closed = Close the batch when the house is empty. What is written afterwards still counts.
about-visitor = Whoever comes in from other birds brings what those have.

## A week from paper

week-of-age = days { $from } to { $to }
week-how = The boxes stand as on the sheet at the house door. Go from box to box with the tab key. 3+2 is read as 5. An empty box says nothing: write 0 for none.
other-weeks = Other weeks
week-before = The week before
week-after = The week after
write-the-week = Write the week down

## What the book finds odd

entry-of-day = the entry of { $day }
and-before = { $count ->
    [one] The same holds of { $n } entry before it.
   *[other] The same holds of { $n } entries before it.
}

## Rows from a table

paste-how = A row a day. The first line names the columns; cells stand apart by tabs, semicolons or commas.
paste-columns = Columns: day (or age_d), { $names }. Others by their whole name, such as crop_fill.felt.
paste-rows-label = The rows
write-all-down = Write all rows down
write-good-down = { $count ->
    [one] Write only the { $n } good row down
   *[other] Write only the { $n } good rows down
}
rows-bad = { $count ->
    [one] { $n } row cannot be written. Nothing is written yet.
   *[other] { $n } rows cannot be written. Nothing is written yet.
}
rows-change = These rows change what stands in the book already: { $lines }
row-line = Line { $line }:
row-in-the-future = This day has not come yet.
row-twice = Another row is about the same day and thing already.
row-too-many-cells = It has { $found } cells, and the first line names { $named } columns. A decimal comma between commas has to stand in quotes.
row-without-day = It does not say which day it is about.
row-no-day = “{ $typed }” is no day. Write it as 2027-05-12, or the age of the birds in a column age_d.
row-empty = It says nothing but the day.
table-nothing = Nothing was pasted.
table-no-day-column = The first line has no column day or age_d.
table-unknown-column = The first line has a column “{ $name }”, which is not known. Known are: day, age_d, { $names }.
table-column-twice = The first line has the column “{ $name }” twice.
table-too-many-lines = These are { $found } lines; { $most } are read at once.

## Weighing bird after bird

page-weigh = Weigh
weigh-how = Pen the birds with a board without choosing, in three places of the house. Weigh every bird that is penned, the last one too. After each bird it is told whether it is enough.
weigh-next = Weight of the next bird
weigh-add = Take it
weigh-where-and-which = Where, how many at once, cock or hen
weigh-spot = Spot in the house
weigh-together = Birds weighed at once
weigh-sex = This bird is
weigh-sex-not-said = not said
weigh-sex-cock = a cock
weigh-sex-hen = a hen
weigh-last = Last ones
weigh-take-off = Take the last one off
weigh-write = Write the weighing down
weigh-type-all = Type or paste many weights at once
weigh-one-at-a-time = Type one weight at a time.
weigh-too-many = A weighing holds { $most } readings. Write this one down and begin another.
weigh-birds-together = “{ $typed }” is no number of birds weighed at once. It can be 1 to { $most }.

## `weigh FILE`

command-weigh = What some birds weigh, how even they are, how sure that is, and whether they are enough
argument-weigh-file = A table of weights with a heading, or - for standard input: weight_g, a row a bird; or group_weight_g and birds, a row a crate; spot and sex where known
option-weigh-birds = Birds alive, of which these were weighed
example-weigh =
    Examples:
      broodwright weigh weights.csv --day 28
      broodwright weigh weights.csv --birds 1600 --json
sum-weighing = What do these birds weigh?
