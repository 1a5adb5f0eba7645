### Writing in the book by command, and what the book has to say: questions, findings, history.

## Questions about what is being written. Each names what was typed and what it is held against.

ask-more-dead-than-alive = { $typed } in one day are more than were alive: { $alive }. Is one number the total so far, or is a death before written twice?
ask-running-total = { $typed }, after { $yesterday } the day before: it looks like the total so far. What is wanted is the deaths of this day alone.
ask-feed-too-much = { $typed } is { $each } for each bird. Are these bags and not kilograms, or more than one day?
ask-water-too-little = { $typed } is less than birds drink that ate { $feed }. Was a tank not counted, or is a line blocked?
ask-weight-far-off = { $typed } on average, where { $standard } is usual at this age. Is the unit right?
ask-sold-for-nothing = The birds bring { $typed }. What is given away or eaten at home is written as birds that left. Is it right so?
ask-birds-not-accounted = { $typed } are left, and by the book it is { $alive }. Where are the others? Count again, or write down a count, the dead or birds that left, before the batch is closed.
ask-more-gone-than-alive = { $typed } leave, and only { $alive } were alive. Is a day of deaths written twice, or is the number wrong?

ask-day-ahead = This day is { $days } ahead of today. Is the date right?
ask-before-the-chicks = This day is { $days } before the chicks came. Is the date right?
ask-written-already = The very same stands in the book for this day already. Did it happen twice?
ask-wait-not-over = Birds were given something whose waiting time ends on { $day } at { $hour }. Until then none may be sold, given away or eaten. Is the day right, and was a veterinarian asked?
ask-wait-unknown = Birds were given something whose waiting time nobody wrote down. Until a veterinarian says how long it is, none may be sold, given away or eaten. Is it so that these left?

## What the book finds

book-cloned-device = Device { $device } wrote number { $sequence } of its series more than once: its book file was copied. Both are kept.
book-missing-sequence = Of device { $device } numbers { $first } to { $last } have not come here. Import its export, or sync with it.
book-broken-chain = Number { $sequence } of device { $device } does not follow from the one before it: { $entry }. One of the two was changed outside this program, or damaged.
book-unreadable-version = { $entry } ({ $kind }) was written by a newer program (version { $version }). It is kept and not read. Get the newer program.
book-plan-for-unknown-house = The plan { $entry } stands in a house that nobody has described: { $house }.
book-more-gone-than-alive = By { $entry } more birds were gone than came, { $birds } too many. Count the birds, then put the wrong number right.
book-more-feed-than-delivered = By { $entry } more of { $feed } was given than came, { $kilograms } kg. Write the delivery down that is missing.
book-more-full-than-felt = { $entry } has more full crops than crops felt.
book-placed-far-from-plan = { $entry } has the chicks come { $days } days from the day of the plan. Is the month right?
book-same-id = { $entry } stands in the book { $count } times with different contents. All are kept; say which holds.
book-cycle = These entries each put the other right, so none is the last: { $entries }. Write which holds.
book-other-farm = { $entry } belongs to another farm, { $farm }. It is kept apart and counts as nothing.
book-put-right-twice = { $kind }, { $day }: put right on two devices that had not seen each other. For now { $winner } counts, and not { $others }.
book-written-apart = { $kind }, { $day }: written on two devices that had not seen each other. For now { $winner } counts, and not { $others }.

## History

kind-note = a note
entry-typed = { $shown } (typed: { $typed })
history-empty = Nothing was written.
history-entry = { $day } · { $kind } · { $standing }
history-counts = counts
history-counts-for-now = counts for now, another says otherwise
history-superseded = put right or taken back since
history-takes-back = takes back
history-set-aside = set aside, another counts in its place
history-written = written { $day } { $time } on { $device }, entry { $entry }
history-written-by = written { $day } { $time } by { $person } on { $device }, entry { $entry }
history-own-device = this device
history-superseded-by = after it: { $entry }
history-puts-right = puts right { $entry }
history-takes-back-what = takes back { $entry }
history-reason = because: { $reason }

## The walk of a day

walk-day = { $name } · { $day } · day { $age }
walk-day-before = { $name } · { $day } · { $days } days before the chicks
walk-day-unknown = { $name } · { $day }
walk-jobs = To do
walk-late = { $count ->
    [one] a day late
   *[other] { $days } days late
}
walk-expected = Expected today
walk-feeds = Feed: { $feeds }
walk-call-at = Call for help from { $deaths } deaths in a day
walk-stands = How the batch stands
walk-written = Written today
walk-unwritten = Not written yet

## Commands that read and write the book

command-record = Write something down about a batch; without a kind, the list of kinds; with a kind alone, what it asks
command-walk = A day of a batch: what to do, what is expected, what is written and what is not
command-history = All entries behind a figure, a kind, a key or an entry: when they were written, what was put right, and why
command-export = Every entry of the book as JSON Lines, to the byte as it was written
command-import = Take in an export; the order does not matter, and taking it in twice changes nothing
command-check = Read a book or an export from end to end and say what is damaged or does not hold; exit 1 where anything is

argument-kind = The kind of entry, such as deaths or feed-given; or plan, with a plan file behind it
argument-record-input = What is written, such as dead=3; a key with nothing behind the = takes its answer away
argument-history-what = An entry (its id, or the end of it), a kind (deaths), a key (deaths.dead, house.length_m) or a figure (growing.alive); without it the whole batch
argument-export-file = The file to write; without it, standard output. Names of persons are not in it
argument-import-file = The export; - for standard input
argument-check-file = A book or an export; without it the book named with --book

option-batch = Which batch: its name, or its id; need not be said while only one is open
option-day = The day it is about, YYYY-MM-DD; without it, today at the farm
option-on = The day to look at, YYYY-MM-DD; without it, today at the farm
option-reason = Why something that was written before is changed or taken back
option-correct = Put this entry right: what is not said again stays
option-withdraw = Take this entry back; it stays in the history
option-from = A file of rows. CSV: kind,day,key=value,key=value … ; or JSON Lines: {"{"}"kind":"deaths","day":"2027-09-15","dead":3{"}"}
option-sure = What is asked about is true: write it
option-good-only = Take the good lines, and leave the bad ones out

example-record =
    Examples:
      broodwright record plan batch.toml
      broodwright record chicks-placed --day 2027-09-14 counted=1632 dead_on_arrival=4
      broodwright record deaths dead=3 culled=1
      broodwright record feed-given phase=starter feed_kg=42,5
      broodwright record weighing weights_g="410 395 428 402"
      broodwright record --correct 4f2a90c1 dead=2 --reason "counted again"
      broodwright record --withdraw 4f2a90c1 --reason "wrong batch"
      broodwright record --from week.csv
example-walk =
    Examples:
      broodwright walk --on 2027-09-20 --json
      broodwright walk --pdf adviser.pdf --sheet adviser
option-batch-sheet = Which sheets; without it the week for the owner
example-history =
    Examples:
      broodwright history growing.alive
      broodwright history deaths --day 2027-09-15
      broodwright history 4f2a90c1
example-export =
    Example:
      broodwright export farm.jsonl --book farm.book
example-import =
    Example:
      broodwright import farm.jsonl --book new.book
example-check =
    Examples:
      broodwright check --book farm.book
      broodwright check farm.jsonl

book-none = There is no book { $book }. Name another with --book, or begin one: broodwright record plan FILE.
book-is-none = { $book } is no book. Nothing in it was touched.
book-empty = { $book } holds no farm yet. Begin one: broodwright record plan FILE.
book-no-batches = { $book } holds no batch yet. Adopt a plan first: broodwright record plan FILE.
book-no-batch = There is no batch “{ $said }”. There are: { $known }.
book-which-batch = Several batches are meant. Name one with --batch: { $known }.
book-no-entry = There is no entry { $said }. Give its id, or at least 8 characters of its beginning or end; broodwright history shows them.
book-which-entry = Several entries are meant by { $said }. Give more of the id.
book-cannot-write = { $book } cannot be written: { $why }. Nothing was written.

record-plan = the plan of a file: record plan FILE
record-plan-file = Name the plan file: broodwright record plan FILE.
record-plan-of-another-farm = This book is of { $known }, and the plan is of { $told }: prices, drinkers, brooders and the like would be changed for every batch in it. Keep a book of its own for each farm, or give the farm one name.
record-plan-reason = This changes a plan or house that is in the book already. Say why: --reason TEXT. For another batch, give it another name in the file. Nothing was written.
record-no-kind = There is no kind “{ $name }” to write down. There are: { $known }.
record-missing = { $kind } needs { $key }=… ; broodwright record { $kind } tells what it is.
record-says-nothing = That would be an entry without a word in it. broodwright record { $kind } tells what can be written.
record-no-key = { $kind } has no answer “{ $key }”. It has: { $known }.
record-not-key-value = “{ $input }” is not key=value. Write for example dead=3.
record-no-day = “{ $typed }” is no day. Write it as YYYY-MM-DD, such as 2027-09-15.
record-sure = Nothing was written. If it is true, say the same again with --sure.
record-reason = { $kind }, { $day }: this changes what was written before. Say why: --reason TEXT. Nothing was written.
record-withdraw-reason = Say why it is taken back: --reason TEXT. Nothing was written.
record-of-the-farm = { $entry } stays with the farm and not with a batch. Put it right in the plan file, and adopt that again.
record-other-kind = That entry is of the kind { $kind }, not { $said }.
record-takes-back = { $entry } takes another entry back. Write that one anew.
record-not-the-last = That entry was put right or taken back already. The one after it is { $later }.
record-row-no-json = This is no JSON object. Write a row on a line: {"{"}"kind":"deaths","day":"2027-09-15","dead":3{"}"}
record-row-no-csv = This line cannot be read as CSV. Is a quotation mark missing?
record-row-short = A row needs a kind and a day: deaths,2027-09-15,dead=3
record-rows-nothing = Nothing was written. Put the lines right, or take only the good ones with --good-only.
record-written = Written: { $day } · { $kind } · entry { $entry }
record-taken-back = Taken back: { $day } · { $kind } · by entry { $entry }
record-unchanged = { $count ->
    [one] The book says the same already. Nothing was written for it.
   *[other] Of { $count } the book says the same already. Nothing was written for them.
}

history-no-such = “{ $what }” is no entry, kind, key or figure. Kinds: { $known }.
export-done = { $count } entries written to { $file }. Names of persons are not among them.
import-bad-line = Line { $line } is no entry of a book. Was the file cut off or changed?
import-nothing = Nothing was taken in. Take only the good lines with --good-only.
import-empty = There is no entry in { $file }.
import-done = Taken in: { $added } entries. There already: { $known }.
import-other-farm = The file holds entries of another farm than { $book }. Import it into a book of its own: --book FILE. Nothing was taken in.
import-unfit = An entry cannot be kept: { $why }. Nothing was taken in.
import-clashes = { $count } entries stand in the book with other contents too, or in a place of a device’s series that is taken. All are kept; broodwright check names them.

check-damaged = Entry { $entry } is damaged: { $why }. It is left out; take it in again from an export.
check-engine = The file itself is damaged: { $why }. Restore a copy, or take in an export.
check-unfit = Entry { $entry } ({ $kind }) does not hold: { $why }
check-done = Entries read: { $entries }. To look at: { $found }.
check-found = Not all of it holds; what to look at stands above.
