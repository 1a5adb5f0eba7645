# When to sell.

page-sale = When do I sell?
sale-calendar = Calendar
sale-lead = Sell on
sale-earns = Then { $birds } of { $weight } are likely to be left, and the batch earns about { $profit }, nine times in ten between { $low } and { $high }.
sale-as-good = Any day from { $first } to { $last } is as good for the house, within 2 %.
sale-batch-later = The batch by itself would earn most on { $day }; but while it waits the house cannot begin the next one.
sale-batch-earlier = The batch by itself would lose least on { $day }; a house that loses with each batch gains nothing by hurrying to the next. Ask first whether to fill it again.
sale-loses = That is a loss. It is the smallest there is, by what is known today.
sale-full = The floor carries as much as it may, so sell as soon as you can.
sale-or-later = That is the last day that is looked at: it may be later.
sale-no-day = no day yet
sale-no-day-note = On none of the days ahead may birds be sold. See below why.
sale-is-closed = This batch is closed. What it earned stands under “Did it pay?”.
sale-not-placed = Nothing can be said before the chicks come.
sale-unknown = Nothing can be said yet. It takes an adopted plan with a growth curve and a price of birds, what chicks and feed cost, and chicks that came.
sale-figures = The figures
sale-counts-stock = Feed on hand counts at what it cost, and what is left of it is worth as much. Of what the plan expects to spend, all that is not yet written down is counted as still to come. All birds go at the end of one day; days from tomorrow on are looked at.

sale-held = Do not sell now. Call your veterinarian
sale-held-1 = Nothing is said here of when a sale would pay: birds that may be sick are not sold, eaten, given away or moved.
sale-held-2 = You do not need us to call. Blue combs, twisted necks, many dead at once: call now, move nothing, sell nothing, do not treat first.
sale-held-3 = Keep visitors out, and litter and manure in. Your state veterinarian may have to be told: that is the law in most places.

sale-waits = Birds may not be sold yet
sale-wait = { $product }: the wait ends on { $day } at { $hour }:00. Birds may be sold from { $free }: not sold, eaten, given away or culled for food before.
sale-wait-unknown = { $product }: nobody wrote down how many days to wait. All days are blocked until you know. Read the label, or ask your veterinarian.

sale-crowded-title = The floor has a limit
sale-crowded = From { $day } on the birds weigh { $density } on the floor, and it should carry { $limit } at most.
sale-thin = Sell { $birds } by { $day }, and the others can stay until { $until }.
sale-crowded-first = The limit comes first and the money second: heavy birds packed closely die of heat in an hour.

sale-by-day = What it earns, by the day you sell
sale-by-day-caption = Profit of the whole batch if all birds are sold on that day. The shaded range is where nine futures in ten lie.
sale-axis-profit = Profit
sale-range = nine of ten lie here
sale-nothing-earned = nothing earned
sale-mark-house = best for the house
sale-mark-batch = best for the batch
sale-mark-both = best

sale-one-more-day = What one more day brings
sale-one-more-caption = One more day, { $unit }
sale-from-to = Day { $from } to { $to }
sale-step-gain = They gain weight
sale-step-deaths = Some die
sale-step-feed = They eat
sale-step-work = Work, power
sale-step-interest = Interest on what is owed
sale-step-left = The day brings
sale-day-below-house = After the best day, one more brings { $worth }. A day of the house is worth { $rate }, the { $days } that it then stands empty counted with it. So do not wait.
sale-day-above-house = One more day would bring { $worth }, and a day of the house is worth { $rate }; but you cannot wait, see above.
sale-a-bird-left = Every bird that waits another day costs { $cost }.

sale-risk = What may be lost
sale-loss-times = { $count ->
        [one] In one future of 100
       *[other] In { $times } futures of 100
    } the batch loses money if it is sold on its best day. In one of ten it earns less than { $tenth }; the average of those worst ones is { $worst }.
sale-loss-hardly = Hardly ever does the batch lose money if it is sold on its best day. In one future of ten it earns less than { $tenth }; the average of those worst ones is { $worst }.
sale-loss-surely = The batch loses money in nearly every future, even on its best day. In one of ten it earns less than { $tenth }; the average of those worst ones is { $worst }.
sale-matters = What matters most
sale-matters-most = What is not known and matters most: { $what }.
sale-matters-caption = How much of the uncertainty of the profit each has a part in, sold on { $day }
sale-matters-shown = { $share } (± { $error })
sale-matters-note = Each is counted with what it does together with others, so that they may add up to a little over 100 %. How far a share may be off is for 95 of 100. Where birds and feed get dearer together, that counts as the price of feed.
sale-luck = Not known
sale-matters-alone = Alone
sale-matters-with = With others
sale-matters-error = ±
sale-luck-growth = how they grow from here
sale-luck-losses = how many more die
sale-luck-appetite = how much they eat
sale-luck-feed-price = what feed will cost
sale-luck-sale-price = what birds will bring

sale-all-days = All days
sale-column-weight = Weight, { $unit }
sale-column-density = On the floor, { $unit }
sale-column-low = At least, { $unit }
sale-column-mean = Likely, { $unit }
sale-column-high = At most, { $unit }
sale-column-stands = But
sale-day-blocked = blocked: a wait after something given
sale-day-crowded = too many for the floor

calendar-delivery = Deliver { $birds } to { $buyer }
calendar-clear = From today birds are clear of { $product }

figure-sale-price = Price of birds
figure-sale-day-cost = Cost of a day beside feed
figure-sale-profit-by-day = Profit by day of sale
figure-sale-best-day-batch = Day that is best for this batch
figure-sale-best-day-house = Day that is best for the house
figure-sale-profit-best = Profit on the best day for the batch
figure-sale-profit-best-house = Profit on the best day for the house
figure-sale-cash-low-point = Money in hand just before the birds are paid
figure-risk-profit-tenth = One future in ten earns less than

rule-price-seen-last = The price of live birds that was seen last
rule-price-of-a-bird-planned = The price of a bird by the plan
rule-price-of-a-kilogram-planned = The price of a kilogram alive by the plan
rule-cost-of-a-day = Work and power of the plan, spread over its days
procedure-day-of-sale = Every day of the same futures that the outlook draws is taken as a day of sale: what the birds then bring, less all that was spent and is still to be spent up to it. The day whose mean over the futures is greatest is the batch's; for the house the mean is shared out over all days from the chicks to the next chicks, as a house that waits cannot be filled. Only days on which no wait after a medicine, vaccine or feed holds the birds back, and on which the floor carries them, are looked at.
procedure-futures-on-best-day = What the futures earn if all birds are sold on the day that is best for the batch

section-selling = What the sale goes by
field-selling-spent = What the batch cost so far and will cost whatever the day
field-selling-got = What it has brought
field-selling-stock-price-kg = What a kilogram of the feed on hand cost
field-selling-cash = Money in hand
field-selling-seen-price = Price of live birds seen last
field-selling-planned-d = Day of age on which the plan sells the last bird
field-selling-blocked = Days on which birds may not be sold
field-selling-limit-kg-m2 = What the floor may carry

command-sale = When to sell: the best day for the batch and for the house, what it earns and what may be lost
example-sale =
    Example:
      broodwright sale --on 2027-10-20 --json

sale-orders = Orders, and the birds there are
sale-orders-caption = What the birds are likely to weigh on { $day }
sale-orders-drawing = Columns of birds by weight, likely on { $day }; the mean is { $mean }. The numbers stand below.
sale-orders-birds = Birds
sale-orders-weight = Weight, { $unit }
sale-orders-mean = mean
sale-orders-from = From, { $unit }
sale-orders-to = To, { $unit }
sale-orders-table = Who gets what: the most birds where they were promised, and among such ways the one that brings most
sale-orders-buyer = Buyer
sale-orders-wants = Wants, birds
sale-orders-band = Each weighs, { $unit }
sale-orders-gets = Gets, birds
sale-orders-each = Mean, { $unit }
sale-orders-pays = Pays, { $unit }
sale-orders-chance = Times in 100 that so many weigh so much
sale-orders-between = { $least } to { $most }
sale-orders-least = { $least } and over
sale-orders-most = up to { $most }
sale-orders-any = any
sale-orders-any-weight = any weight
sale-orders-kilograms = { $band } kg
sale-orders-left = { $birds } are in no order. They weigh { $left } each on average, where the whole flock weighs { $flock }: a buyer who picks the big ones leaves you the small.
sale-orders-cv-weighed = Birds differ by { $cv } (coefficient of variation), as the last weighing says. A kilogram dressed is taken as 0.70 of a kilogram alive, without feet, head and giblets (from memory): ask what your buyer counts in. An order without a price is paid by today’s.
sale-orders-cv-usual = Birds are taken to differ by { $cv } (coefficient of variation; common practice), as none was weighed one by one. A kilogram dressed is taken as 0.70 of a kilogram alive, without feet, head and giblets (from memory): ask what your buyer counts in. An order without a price is paid by today’s.
sale-short-over = { $buyer }: the last day was { $latest }, and { $missing } were not delivered. Talk to the buyer, or take the order back.
sale-short-held = { $buyer }: no bird may be sold up to { $latest }, because of what was given. Tell the buyer today, and agree on a later day.
sale-short-no-bird = { $buyer }: no bird can meet this order. It asks for { $band }, and on no day up to the last will any weigh that. Agree on another weight, or on another day.
sale-short-too-few = { $buyer }: { $missing } are missing ({ $band }). Agree on fewer, on another weight, or on another day.
