## What is wrong with an answer: the value as typed, what is allowed, what to do next.

fault-missing = { $key } is missing. Write it, or write "not known" and what hangs on it is left out.
fault-missing-table = [{ $key }] is missing. It needs { $needs }. Write "not known" for what you do not know.
fault-unknown-key = { $key } is not a key of a plan.
fault-not-a-number = { $key } is “{ $typed }”, which is no number. Type digits, with a unit behind if you like.
fault-comma-decimal = { $key } is “{ $typed }”. In a file, write a point: { $suggestion }.
fault-two-ways = { $key } is “{ $typed }”, which can be read two ways. Type { $decimal } or { $thousands }.
fault-wrong-unit = { $key } is “{ $typed }”, whose unit does not fit. Use { $unit }, or leave the unit out.
fault-out-of-range = { $key } is { $typed }, outside { $low } to { $high }.
fault-not-whole = { $key } is { $typed }; only whole ones can be counted.
fault-not-a-ratio = { $key } is “{ $typed }”. Read it off the label and write it like 1:400.
fault-not-a-day = { $key } is “{ $typed }”. Write the day as year-month-day, like 2027-09-14.
fault-not-a-choice = { $key } is “{ $typed }”. It can be: { $allowed }.
fault-not-months = { $key } is “{ $typed }”. Write months as numbers from 1 to 12.
fault-not-a-currency = { $key } is “{ $typed }”. Write three capital letters.
fault-given-twice = { $key } says the same as { $other }. Keep one of them.
fault-same-name = { $key } is { $typed }, and so is { $other }. Give each its own name, so that the batch’s house is the one you mean.
fault-too-long = { $key } is longer than { $limit } characters.
fault-did-you-mean = { $fault } Did you mean { $meant }?
fault-on-line = line { $line }: { $fault }
against-overlap-longer-than-sheet = { $key } is { $typed }, but a sheet of { $value } leaves room for { $low } to { $high }.
against-half-wall-above-eave = { $key } is { $typed }, but the eave is at { $value }. It can be { $low } to { $high }.
against-ridge-below-eave = { $key } is { $typed }, but the eave is at { $value }. The ridge is at least { $low }.
against-poured-more-than-tank = { $key } is { $typed }, but the tank holds { $value }. It can be { $low } to { $high }.
against-standard-too-short = { $key } is { $typed }, but the weight curve goes from { $low } to { $high }. Sell within it, or type the weight at sale (batch.sale_weight_kg).
against-house-narrower-than-ring = { $key } is { $typed }, but one ring is { $value } across. Put fewer chicks in a ring ({ $other }), or the house must be at least { $low }.
faults-title = { $count ->
    [one] One answer does not hold yet
   *[other] { $count } answers do not hold yet
}

file-too-large = the file has { $size } MB; a plan has at most { $limit } MB. Is this the right file?
file-not-text = this is not a text file. A plan is text in TOML, saved as UTF-8.
file-unreadable = { $key } = { $typed } cannot be read ({ $why }). A day is written 2027-09-14 and must be in the calendar, a number 18.5, a word "in quotes". docs/plan-file.md has the range of each key.
file-no-value = { $key } has no value. Write one behind the =, or leave the line out.
file-not-toml = line { $line }: this is not TOML: { $why }. Mostly a sign is missing here or in the line above: a section is [house], a word stands "in quotes", a list is [1, 2], and each line has one key = value. Mend it, or put # before the line to leave it out. See docs/plan-file.md for the keys.
file-too-deep = line { $line }: { $key } holds a table or a list of lists; a plan has keys and values under [names] only.
