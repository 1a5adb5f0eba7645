# What to buy when.
command-purchases = What feed to buy on which day, at least cost: of a plan file before the batch, or of a batch by what is in its store room
argument-purchases-file = Plan file; without it a batch of the book is read
example-purchases =
    Examples:
      broodwright purchases plan.toml
      broodwright purchases --batch "March batch" --on 2027-04-01 --json
choice-feed-buying-cheapest = On the days that cost least
field-cash-credit-limit = The most you can owe on a day
    .hint = What the shop, a savings group or family would let you owe in all. Leave it out where there is no limit.
field-feed-lead-d = Days from ordering feed to its coming
field-costs-feed-delivery-each = One delivery of feed, whatever it brings
    .hint = The lorry, or your own trip.
field-prices-feed-rise-percent = Feed prices rise each month by
    .hint = From the first day you buy. Below nothing where they fall, as after the maize harvest.
field-prices-feed-weeks-percent = Feed price week by week, first day 100
    .hint = 100 100 103 means that feed costs 3 % more in the third week from the first delivery. The last goes on.
figure-feed-rise-and-deliveries = Feed: what days, sizes of bag and deliveries add to its first price
rule-feed-rise-and-deliveries = All that is paid for feed, less its bags of the first size at the price of the first day. Less than nothing where bags of another size or later days are cheaper.
figure-feed-order-by = Order the first feed by
rule-order-by = The day it comes, less the days it takes.
figure-feed-paid-by-day = Paid for feed that day
rule-feed-paid-by-day = The bags that come that day at that day's price, and the delivery.
list-feed-paid = All that is paid for feed that day
figure-purchases-cost = Feed, bought on the days that cost least
figure-purchases-lower-bound = Feed cannot cost less than
procedure-cheapest-buying = Every way of buying is weighed: each day, each number of bags, each feed. Feed is there in time, is eaten before it is too old, and finds room. Prices are those of the day; each delivery costs; borrowed money costs interest, and no more is owed than you told. The oldest bags are eaten first.
procedure-without-chance = Nothing is left to chance: the same answers give the same result
purchase-feed-delivery = Feed, bringing it
against-feed-price-below-zero = { $key } is { $typed }: at that rate feed costs nothing from day { $value }, before the last birds are sold. It is at least { $low } a month.
finding-no-cheapest-days = The days that cost least cannot be found: a bag would be too old before it is eaten, the store room is too small, no more money is lent, or a price is missing. Each feed is put down in time before it is opened instead.

calendar-order = Order feed today at the latest: { $feeds }
calendar-order-feed = { $count ->
    [one] { $bags } bag of { $feed }
   *[other] { $bags } bags of { $feed }
}
calendar-order-why = It comes on { $comes }, { $count ->
    [0] the day it is ordered
    [one] { $days } day after it is ordered
   *[other] { $days } days after it is ordered
}. Ask for the milling date before you pay.

buying = What to buy when
buying-label = Cheapest way to buy the feed that is still needed
buying-lead = { $count ->
    [one] { $bags } bags in one delivery
   *[other] { $bags } bags in { $trips } deliveries
}
buying-next = Order the next by { $day }.
buying-cost = { $total } in all: bags { $bags }, deliveries { $fees }, interest { $interest }.
buying-range = As feed prices stray, { $low } to { $high }, nine times in ten.
buying-proven = No other way costs less.
buying-gap = Another way could save { $gap } at most.
buying-caption = What comes when
buying-drawn = { $day }: { $bags } bags of { $feed }
buying-alternative = Deliveries of feed, each with the days on which it is eaten and the last on which it is good: { $deliveries }
buying-drawing-key = Black: the days it is eaten. White: the days it lies in the store and is still good.
buying-drawing-caption = How long each delivery lies, and until when it is good if it is milled the day it comes
buying-day-of-age = day { $day }
buying-much-at-once = Buying as much at once as keeps and finds room costs { $more } more.
buying-much-at-once-same = Buying as much at once as keeps and finds room costs the same.
buying-little-by-little-same = Buying each bag as late as possible costs the same.
buying-little-by-little = Buying each bag as late as possible costs { $more } more.
buying-hangs = What this hangs on
buying-hangs-on-nothing = Nothing near changes the answer: neither the price, nor a delivery, nor interest, nor how long feed keeps.
buying-hang-price-rise-more = If feed prices rise by { $at } a month more than you told, buy otherwise: { $otherwise }.
buying-hang-price-rise-less = If feed prices fall by { $at } a month against what you told, buy otherwise: { $otherwise }.
buying-hang-price-rise-more-at-all = As soon as feed prices rise more than you told, buy otherwise: { $otherwise }.
buying-hang-price-rise-less-at-all = As soon as feed prices fall against what you told, buy otherwise: { $otherwise }.
buying-hang-delivery-fee-more = If a delivery costs more than { $at } in place of { $told }, buy otherwise: { $otherwise }.
buying-hang-delivery-fee-less = If a delivery costs less than { $at } in place of { $told }, buy otherwise: { $otherwise }.
buying-hang-interest-more = If a loan costs more than { $at } a year in place of { $told }, buy otherwise: { $otherwise }.
buying-hang-interest-less = If a loan costs less than { $at } a year in place of { $told }, buy otherwise: { $otherwise }.
buying-hang-keeping-more = If the store keeps feed good to the label's { $at } and not only { $told }, buy otherwise: { $otherwise }.
buying-then-trips = { $then } deliveries in place of { $trips }
buying-then-amounts = other days or amounts
buying-note = Feed counts as milled on the day it comes: ask the miller for the date, and take off the days it has lain there. Keep the oldest bags in front.
buying-nothing = Nothing more needs to be bought.
buying-not-known = Not known yet: { $name } ({ $key }).
buying-feed-by-day = what the birds eat each day
buying-price-below-zero = { $feed } would cost less than nothing on { $day }: look at how prices rise or fall.
buying-cannot-keep = { $feed } that is eaten until { $day } cannot come in time and still be good by then: let it come later, or buy fewer days ahead.
buying-room-too-small = On { $day } { $bags } bags must stand in the store, which holds { $room }.
buying-credit-too-small = The feed cannot be paid. On { $day } at least { $needed } must be owed, whatever is bought when, and you told that { $limit } is the most: { $short } is missing. Ways out: put that much money aside before, ask the shop for feed on account until birds are sold, buy fewer chicks, or sell some birds earlier.
buying-credit-too-small-hidden = The feed cannot be paid: on { $day } more must be owed than you told is the most. Ways out: put money aside before, ask the shop for feed on account until birds are sold, buy fewer chicks, or sell some birds earlier.
buying-limit = Never more than { $limit } is owed; without that limit it would cost { $more } less.
buying-limit-free = Never more than { $limit } is owed, which costs nothing more.
buying-sizes-apart = Bags of { $kg } and of { $other } have no weight in common. Type both in whole kilograms, or leave the other bag out.
bags-of = { $n } × { $size }
buying-no-way = No way of buying keeps to all of it: time, freshness and room.
buying-never-bought = { $feed }: more was given than came. Write down the delivery that is missing; until then none of it counts as in hand.
buying-runs-out = { $feed } runs out before any can come. Order now, or ask who can lend some bags.
column-order-by = Order by
column-good-until = Good until
column-costs = Costs
