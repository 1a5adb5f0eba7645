### Writing in the book by command, and what the book has to say: questions, findings, history.

## Questions about what is being written. Each names what was typed and what it is held against.

ask-more-dead-than-alive = { $typed } in one day are more than were alive: { $alive }. Is one number the total so far, or is a death before written twice?
ask-running-total = { $typed }, after { $yesterday } the day before: it looks like the total so far. What is wanted is the deaths of this day alone.
ask-feed-too-much = { $typed } is { $each } for each bird. Are these bags and not kilograms, or more than one day?
ask-water-too-little = { $typed } is less than birds drink that ate { $feed }. Was a tank not counted, or is a line blocked?
ask-weight-far-off = { $typed } on average, where { $standard } is usual at this age. Is the unit right?
ask-more-gone-than-alive = { $typed } leave, and only { $alive } were alive. Is a day of deaths written twice, or is the number wrong?

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
ask-wait-not-over = Birds were given something whose waiting time ends on { $day } at { $hour }. Until then none may be sold, given away or eaten. Is the day right, and was a veterinarian asked?
ask-wait-unknown = Birds were given something whose waiting time nobody wrote down. Until a veterinarian says how long it is, none may be sold, given away or eaten. Is it so that these left?
