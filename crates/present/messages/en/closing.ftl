# The accounts of a batch.

page-closing = Did it pay?
closing-profit-label = What the batch earned
closing-not-known = not known yet
closing-not-known-note = It is worked out once a sale with its income, and what the chicks and the feed cost, are written down.
closing-less = { $by } less than planned.
closing-more = { $by } more than planned.
closing-most-because = Most of it: { $causes }.
closing-because = { $cause } ({ $amount })
amount-below = −{ $amount }
amount-above = +{ $amount }
closing-not-whole = Not everything is in the book
closing-birds-left = { $birds } are still in the house: the accounts are of what was sold so far.
closing-birds-left-closed = The batch is closed and { $birds } are neither sold, dead nor taken out. Count again, or write down where they went.
closing-unpriced = Without a price: { $entries }. What they cost is missing below.
closing-unpriced-one = { $kind } on { $day }
closing-feed-unwritten = Feed was not written down on { $days }: feed conversion looks better than it was.
closing-head-unwritten = Planned and not written down: { $heads }. If money went there, the profit is too high.
closing-why = Why it is not what was planned
closing-why-caption = From the planned profit to the one that came
closing-why-note = Each step is what one thing did, everything else half as planned and half as it came: so no order is preferred, and the steps add up to the cent.
closing-drawing = Steps from the planned profit of { $planned } to { $profit }, by { $count } causes, the largest first.
closing-planned = Profit by the adopted plan
closing-came = Profit as it came
closing-birds = Birds, weight and feed
closing-money = Money
closing-heads = What was spent, beside what was planned
closing-cash-book = Cash book
column-cause = Because of
column-did = Did to the profit
column-by-plan = By plan
column-it-was = It was
column-head = Spent on
column-head-planned = By plan, { $unit }
column-head-came = It was, { $unit }
closing-cash-book-in = Every payment, { $unit }
column-came-in = Came in
column-went-out = Went out
column-later = On credit
column-in-hand = In hand

cause-chicks-placed = { $way ->
    [more] more chicks than planned
   *[less] fewer chicks than planned
}
cause-survival = { $way ->
    [more] more birds lived to be sold
   *[less] fewer birds lived to be sold
}
cause-weight = { $way ->
    [more] heavier birds than planned
   *[less] lighter birds than planned
}
cause-sale-price = { $way ->
    [more] the price of birds was higher
   *[less] the price of birds was lower
}
cause-feed-amount = { $way ->
    [more] more feed for each kilogram
   *[less] less feed for each kilogram
}
cause-feed-price = { $way ->
    [more] feed cost more
   *[less] feed cost less
}
cause-chick-price = { $way ->
    [more] chicks cost more
   *[less] chicks cost less
}
cause-litter-sold = { $way ->
    [more] more for the litter sold
   *[less] less for the litter sold
}
cause-litter = { $way ->
    [more] more spent on litter
   *[less] less spent on litter
}
cause-fuel = { $way ->
    [more] more spent on fuel
   *[less] less spent on fuel
}
cause-disinfectant = { $way ->
    [more] more spent on disinfectant
   *[less] less spent on disinfectant
}
cause-vaccines = { $way ->
    [more] more spent on vaccines
   *[less] less spent on vaccines
}
cause-medicine = { $way ->
    [more] more spent on medicine
   *[less] less spent on medicine
}
cause-equipment = { $way ->
    [more] more spent on equipment
   *[less] less spent on equipment
}
cause-labour = { $way ->
    [more] more paid for work
   *[less] less paid for work
}
cause-own-labour = { $way ->
    [more] more own work counted
   *[less] less own work counted
}
cause-transport = { $way ->
    [more] more spent on transport
   *[less] less spent on transport
}
cause-power = { $way ->
    [more] more spent on power and water
   *[less] less spent on power and water
}
cause-house = { $way ->
    [more] more spent on the house
   *[less] less spent on the house
}
cause-interest = { $way ->
    [more] more interest
   *[less] less interest
}
cause-other = { $way ->
    [more] more spent on other things
   *[less] less spent on other things
}

head-chicks = Chicks
head-feed = Feed
head-litter = Litter
head-fuel = Fuel
head-disinfectant = Disinfectant
head-vaccines = Vaccines
head-medicine = Medicine
head-equipment = Equipment
head-labour = Work that was paid
head-own-labour = Own work
head-transport = Transport
head-power = Power and water
head-house = House
head-interest = Interest
head-other = Other

figure-closing-birds-out = Birds that left alive
figure-closing-mean-weight = Weight of a bird, as sold or else as last weighed
figure-closing-sold-kg = Live weight sold
figure-closing-live-kg = Live weight that left the house
figure-closing-age = Age when sold, on the mean
figure-closing-livability = Survival (livability)
figure-closing-fcr = Feed for a kilogram of live bird (FCR)
figure-closing-fcr-at-2500 = The same as if they weighed 2 500 g
figure-closing-fcr-at-1500 = The same as if they weighed 1 500 g
figure-closing-daily-gain = Gain a day
figure-closing-epef = European index (EPEF)
figure-closing-income = Came in
figure-closing-cost = What it cost
figure-closing-profit = Profit
figure-closing-profit-with-own-work = Profit if your own work costs nothing
figure-closing-price-per-kg = Price reached, a kilogram
figure-closing-cost-per-kg = Cost of a kilogram
figure-closing-cost-per-bird = Cost of a bird sold
figure-closing-profit-per-bird = Profit on a bird
figure-closing-profit-per-kg = Profit on a kilogram
figure-closing-profit-per-m2 = Profit on a square metre
figure-closing-house-days = Days the house was taken, with the rest after it
figure-closing-profit-per-house-day = Profit on a day of the house
figure-closing-owed = You still owe
figure-closing-owing = Still owed to you

rule-birds-left-alive = Sold, and taken out alive: eaten at home, given, for the workers. Stolen birds are losses.
rule-mean-weight-of-sales = Of those sales that were weighed.
rule-mean-weight-as-last-weighed = No sale was weighed: the weight last taken in the house stands for it.
rule-kilograms-sold = What was weighed, and the birds sold unweighed at the mean weight.
rule-kilograms-left-alive = Birds that were taken out unsold weigh as much as those sold.
rule-mean-age-at-sale = Each bird counts with the day of age on which it left.
rule-survival-closed = Birds that left alive of all live chicks placed. Culled birds count as dead.
rule-fcr-closed = All feed given, that of the dead birds with it, over the live weight that left.
rule-fcr-closed-at-2500 = Holds from 2 300 to 2 700 g only: further off it flatters heavy birds.
rule-fcr-closed-at-1500 = The older way; holds near 1 500 g only.
rule-gain-a-day-closed = Weight at sale less that of the chick, over the age.
rule-gain-a-day-whole = The chick was not weighed: the whole weight counts as gain, which is about 2 % more.
rule-epef-closed = Survival times weight over age and feed conversion.
rule-income-of-the-batch = Birds and litter sold, paid or not.
rule-cost-of-the-batch = All that the book holds of this batch, paid or not. Feed that was left over is not taken off.
rule-profit-of-the-batch = What came in less what it cost.
rule-profit-if-own-work-is-free = Own work was counted as a cost; without it, this is what it leaves the family.
rule-price-reached = What the birds brought over what they weighed.
rule-cost-a-kilogram = Below this price a kilogram loses money.
rule-cost-a-bird = All costs over the birds sold.
rule-profit-a-bird = Over the birds sold.
rule-profit-a-kilogram = Over the kilograms sold.
rule-profit-a-square-metre = Over the whole floor.
rule-days-of-the-house = From the chick day to the last sale, and the rest planned after it.
rule-profit-a-house-day = What a day of the house earned: batches of different length can be held against each other.
rule-still-to-pay = Bought on credit, less what was paid since.
rule-still-to-receive = Sold on credit, less what was received since.

field-account-spent-chicks = Spent on chicks
field-account-spent-feed = Spent on feed
field-account-spent-litter = Spent on litter
field-account-spent-fuel = Spent on fuel
field-account-spent-disinfectant = Spent on disinfectant
field-account-spent-vaccines = Spent on vaccines
field-account-spent-medicine = Spent on medicine
field-account-spent-equipment = Spent on equipment
field-account-spent-labour = Paid for work
field-account-spent-own-labour = Own work, counted
field-account-spent-transport = Spent on transport
field-account-spent-power = Spent on power and water
field-account-spent-house = Spent on the house
field-account-spent-interest = Interest
field-account-spent-other = Spent on other things
section-account = Accounts of the batch
field-account-birds-sold = Birds sold
field-account-birds-taken = Birds taken out alive, not sold
field-account-birds-weighed = Birds of the sales that were weighed
field-account-live-weighed-kg = What those weighed
field-account-bird-days-d = Days of age at leaving, bird by bird
field-account-last-sale-d = Day of age of the last sale
field-account-income-birds = What the birds brought
field-account-income-litter = What the litter brought
field-account-owed = Bought on credit and not yet paid
field-account-owing = Sold on credit and not yet received

command-closing = The accounts of a batch: birds, kilograms, money, and why the profit is not what was planned
example-closing =
    Examples:
      broodwright closing --batch "June 2027"
      broodwright closing --json
