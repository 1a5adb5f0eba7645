## Money: what it costs, what it brings, how sure that is.

section-costs = Other costs
section-cash = Cash

field-batch-deposit-percent = Deposit for the chicks
    .hint = Percent of their price, paid when they are booked.
field-batch-deposit-before-d = Days before the chicks that the deposit is paid
field-prices-chick-each = A chick
field-prices-sale-per-kg = Sale, for each kg live
field-prices-sale-per-bird = Sale, for each bird
    .hint = Only counted when no price for a kg is given.
field-prices-litter-sold = Used litter, sold for
field-costs-vaccines = Vaccines
field-costs-medicine = Medicine
field-costs-labour = Hired work
field-costs-own-labour = Your own work, at a helper’s wage
    .hint = Not cash, but it costs you a season. Profit is shown with it and without it.
field-costs-transport = Transport and market
field-costs-power = Power and light
field-costs-other = Everything else
    .hint = Crates, airtime, broker, birds given away.
field-costs-house = House and equipment, for one batch
    .hint = Rent, or what wears off in one batch.
field-cash-at-start = Money on hand at the start
field-cash-interest-percent = Interest on what you owe, a year
field-settings-seed = Seed of the futures
    .hint = The same seed gives the same futures.
field-settings-futures = How many futures

figure-money-chicks = Chicks, in money
figure-money-equipment = Feeders, drinkers and brooders to buy
figure-space-box-lids = Lids of chick boxes
figure-space-chick-feeders-cost = Chick feeders to buy, in money
figure-space-chick-drinkers-cost = Chick drinkers to buy, in money
figure-space-feeders-cost = Large feeders to buy, in money
figure-space-drinkers-cost = Large drinkers to buy, in money
figure-guard-brooders-cost = Brooders to buy, in money
figure-money-other = Other costs
figure-money-cost-total = All costs
figure-money-cost-per-chick = Cost for each chick placed
figure-money-cost-per-bird = Cost for each bird sold
figure-money-cost-per-kg = Cost for each kg sold
figure-money-break-even-price = Price a kg below which you lose
figure-money-break-even-price-bird = Price a bird below which you lose
figure-money-break-even-price-cash = Price a kg that still pays what you pay out
figure-money-price-per-kg = Price a kg you expect
figure-money-break-even-weight = Weight a bird below which you lose
figure-money-break-even-fcr = Feed for each kg (FCR) above which you lose
figure-money-sales = Birds sold, in money
figure-money-income = Income
figure-money-profit = Profit as planned
figure-money-profit-with-own-work = Profit and pay for your own work
figure-money-profit-per-m2 = Profit for each square metre of floor
figure-money-feed-share = Feed’s share of the cost
figure-money-chick-share = The chicks’ share of the cost
figure-money-bird-a-day = One more day of one bird costs, in feed
figure-money-cash-low-point = Least money on hand
figure-money-cash-low-day = Day of least money
figure-money-cash-short = Money you must find
figure-money-credit = Money that you may owe
figure-money-beyond-credit = Money missing beyond what you may owe
figure-money-first-day-beyond-credit = First day on which more is owed than you may
figure-money-first-day-short = First day without money
figure-money-cash-at-end = Money on hand on the last day of sale, before interest and used litter
figure-money-interest = Interest
figure-money-deposit = Deposit for the chicks, in money
figure-cash-spent-by-day = Spent that day
figure-cash-received-by-day = Received that day
figure-cash-by-day = Money on hand
figure-cash-debt-by-day = Money owed
figure-risk-loss-probability = Chance of a loss
figure-risk-profit = Profit, the middle of all futures
figure-risk-expected-shortfall = Average of the worst one in ten

rule-chicks-cost = Chicks paid times the price of one.
rule-equipment-to-buy = What is too few, at its price; what has no price counts nothing. It serves many batches: this one pays for it whole.
rule-box-lids = One for each box of 100 chicks.
rule-chick-feeders-beside-lids-short = What is needed, less what you have and the lids that come with the chicks.
rule-chick-feeders-cost = Those that are too few times the price of one.
rule-chick-drinkers-cost = Those that are too few times the price of one.
rule-feeders-cost = Those that are too few times the price of one.
rule-drinkers-cost = Those that are too few times the price of one.
rule-brooders-cost = Those that are too few times the price of one.
rule-other-costs = What you told, added up; what you did not tell counts nothing.
rule-cost-total = All that is bought, your own work and interest. What you have not priced counts nothing.
rule-cost-per-chick = All costs over the chicks placed.
rule-cost-per-bird = All costs over the birds sold.
rule-cost-per-kg = All costs over the live weight sold.
rule-break-even-price-planned = All costs less what the used litter brings, over the live weight sold: below it the batch loses.
rule-break-even-price-bird = All costs less what the used litter brings, over the birds sold: below it the batch loses.
rule-break-even-price-cash = The same without your own work: above it you still get back what you paid out.
rule-price-of-a-bird-per-kg = The price of a bird over its mean weight.
rule-price-per-kg = You said it.
rule-break-even-weight-planned = All costs over what the birds bring a kg: lighter than that, the batch loses.
rule-break-even-fcr-planned = What a kg brings, less the costs that are not feed, in kg of feed.
rule-sales-by-the-bird = Birds sold times the price of one.
rule-sales-by-weight = Live weight sold times the price of a kg.
rule-income = Birds and used litter.
rule-profit-planned = Income less all costs.
rule-profit-with-own-work = Profit, and the wage you set for yourself.
rule-profit-per-m2 = Profit over the floor.
rule-feed-share = Feed over all costs.
rule-chick-share = Chicks over all costs.
rule-a-bird-another-day = The last day’s feed of one bird, at your price.
rule-cash-low-point = The least of all days, from the first payment to the last sale.
rule-cash-low-day = The day of age of that least; before the chicks it is less than 0.
rule-cash-short = How far the least goes below nothing.
rule-credit = You said it.
rule-beyond-credit = What is missing at the worst, less what you may owe.
rule-first-day-beyond-credit = The first day on which more is owed than that.
rule-first-day-short = The first day on which more is paid than there is.
rule-cash-at-end = The last day of sale.
rule-interest = Money owed, day for day, at the rate for a year.
rule-chick-deposit = The part of the chicks’ price that is paid when they are booked.
rule-spent-by-day = All that falls due that day.
rule-received-by-the-bird = Birds sold that day times the price of one, paid on the day.
rule-received-by-weight = Live weight sold that day times the price of a kg, paid on the day.
rule-cash-by-day = The day before, less what is paid, plus what comes in.
rule-debt-by-day = What is missing to nothing.
procedure-futures = The batch is played through many times, each time with other losses, weight, feed for each kg and prices, as they stray from batch to batch. Light birds also need more feed for each kg. How far each strays is our judgement until your own batches tell it.
procedure-repeat = { $count } futures, seed { $seed }: the same seed gives the same answer
accuracy-standard-error = another seed would move it by about { $size }
accuracy-residual = what is left over when it is put back: { $size }
accuracy-bound = no choice beats it by more than { $size }
origin-if-told = as you said, 0 where you did not
list-purchases = All that is paid that day

finding-cash-short = { $credit ->
    [told] Money runs out on day { $day }. You may owe { $limit }; on day { $first } that is used up. At the worst, on day { $worst }, { $short } are owed: { $beyond } more than you may. The chick day is day 0.
   *[none] Money runs out on day { $day }; at the worst, on day { $worst }, { $short } are missing. The chick day is day 0.
}
finding-cash-within-credit = Money runs out on day { $day }; at the worst, on day { $worst }, { $short } are owed. That is within the { $limit } you may owe. The chick day is day 0.
finding-deposit-not-told = Whether the hatchery asks for a deposit is not said, so all { $chicks } for the chicks is paid on the chick day. Half or all of it 2 to 4 weeks before is common; write 0 if none is asked.
finding-cash-not-told = { $credit ->
    [told] You did not say what money you have. This batch wants { $short }, the first on day { $day }, all of it by day { $worst }: { $beyond } more than the { $limit } you may owe. The chick day is day 0.
   *[none] You did not say what money you have. This batch wants { $short } of it, the first on day { $day }, all of it by day { $worst }. The chick day is day 0.
}
way-out-money-set-aside = Set the feed money aside before you pay the chicks.
way-out-chicks-carried = Or order fewer: your money lasts for about { $chicks }.
way-out-no-chicks-carried = Fewer chicks alone do not mend it: even 50 cost more than there is, with all else as planned.
way-out-feed-nearer = { $nearer ->
    [enough] Or buy feed nearer to its day: if the first delivery lasts { $covers } (feed.on_hand_days_d) and the rest comes { $ahead } before it is opened (feed.ahead_d), the money is enough.
   *[later] Or buy feed nearer to its day: if the first delivery lasts { $covers } (feed.on_hand_days_d) and the rest comes { $ahead } before it is opened (feed.ahead_d), nothing is missing before day { $then_day }, and { $then } at the worst.
}
way-out-sell-some-early = Or sell some birds before day { $by }, or agree with the feed shop before you need it.
way-out-agree-with-shop = Or agree with hatchery and feed shop before you order. No bird is heavy enough to sell by day { $by }.
way-out-price-that-pays = { $each ->
    [bird] Find buyers at { $even } or more a bird before you order.
   *[kg] Find buyers at { $even } or more a kg before you order.
}
way-out-feed-that-pays = Or waste less feed: it pays from { $conversion } kg of feed for each kg sold.
way-out-leave-it-out = Or leave this batch out: an empty house costs less than a loss.
finding-price-is-zero = { $case ->
    [sold] By your answer birds sell for 0: { $amount }, from day { $day } on, bring nothing. Income, profit and money on hand leave them out, and the chance of a loss counts them so.
   *[bought] By your answer this costs 0: { $thing } ({ $amount }, day { $day }). All costs, the cost of a kg, the price below which you lose and money on hand leave it out.
}
way-out-price-or-nothing = Write the price. If it is truly free, let it stand.
way-out-price-not-known = Or write “not known” while you do not know it: then what hangs on it is left out, not worked out wrongly.
finding-loss-planned = { $each ->
    [bird] As planned the batch loses: a bird costs { $cost } and brings { $price }.
   *[kg] As planned the batch loses: a kg costs { $cost } and brings { $price }.
}
finding-loss-likely = About { $of_ten } batches of ten like this lose money; the worst one in ten end at { $worst } on average.
finding-price-missing-chick = The price of a chick is missing, so the money cannot be added up.
finding-price-missing-starter = The price of a bag of starter is missing, so the money cannot be added up.
finding-price-missing-grower = The price of a bag of grower is missing, so the money cannot be added up.
finding-price-missing-finisher = The price of a bag of finisher is missing, so the money cannot be added up.
way-out-write-the-price = Ask for it and write it here. One price from the shop is enough; it can be changed any day.
finding-not-all-priced = On the list, { $count } have no price yet: { $items }. All costs, profit and the chance of a loss leave them out.
way-out-write-prices = Write the price of each. What has no field of its own, such as firewood, goes to everything else (costs.other).

question-money = What does it cost, and does it pay?
waiting-money = Then all costs are added up.
money-lead-label = As planned
money-lead = { $total } in all, { $each } for each kg sold
money-lead-by-the-bird = { $total } in all, { $each } for each bird sold
money-lead-note-not-told = { $other } a bird sold. You lose below { $even } a kg. Have { $short } ready, all of it by day { $day }.
money-lead-note-not-told-by-the-bird = You lose below { $even } a bird ({ $other } for each kg sold). Have { $short } ready, all of it by day { $day }.
money-lead-note = { $other } a bird sold. You lose below { $even } a kg. The least money on hand is { $low }, on day { $day }.
money-lead-note-by-the-bird = You lose below { $even } a bird ({ $other } for each kg sold). The least money on hand is { $low }, on day { $day }.
risk-lead-label = Profit, nine batches in ten
risk-lead = { $low } to { $high }
risk-lead-note = Middle { $middle }; as planned { $planned }. { $of_hundred } of a hundred such batches lose money; the worst one in ten end at { $worst } on average.
risk-leaves-out = This counts the usual ups and downs only. It holds no disease, no theft, no price that collapses, and no day on which all birds must go at once: keep something back for those.
equipment-lasts-kg = Feeders, drinkers and brooders for { $equipment } serve many batches, but this one pays for all of them here. Without them each kg sold costs { $without }.
equipment-lasts-bird = Feeders, drinkers and brooders for { $equipment } serve many batches, but this one pays for all of them here. Without them each bird sold costs { $without }.
money-note = Limits of heat and room come first, profit second. A price below is never a reason to crowd birds or to hold sick ones.
purchases-caption = What to buy, by the day it is paid
column-pay-on = Pay on
column-how-much = How much
not-priced = no price
where-it-goes-caption = Where the money goes
purchase-chick-deposit = Chicks, deposit
purchase-chicks = Chicks
purchase-feed-starter = Starter
purchase-feed-grower = Grower
purchase-feed-finisher = Finisher
purchase-feed-last = Last feed
purchase-litter = Litter
purchase-disinfectant = Disinfectant
purchase-guard = Sheets for the guard
purchase-spare-fuel = Spare fuel, kept in hand
purchase-second-fuel = Fuel for the second kind of brooder
purchase-second-spare-fuel = Spare second fuel
purchase-box-lids = Box lids as chick feeders: they come with the chicks
purchase-chick-trays = More chick feeders
purchase-small-drinkers = More small drinkers
purchase-brooders = More brooders, one for each ring
purchase-large-feeders = More large feeders
purchase-large-drinkers = More large drinkers
purchase-nipples = More nipples
purchase-fuel = Fuel for brooding
purchase-vaccines = Vaccines
purchase-medicine = Medicine
purchase-other = Everything else
purchase-transport = Transport and market
purchase-labour = Hired work
purchase-power = Power and light
purchase-house = House and equipment
n-bags = { $count ->
    [one] { $n } bag
   *[other] { $n } bags
}
n-sheets = { $count ->
    [one] { $n } sheet
   *[other] { $n } sheets
}
