## Sheets to print from a plan: house-door sheet, shopping list, booklet, handout.

weekday-1 = Mon
weekday-2 = Tue
weekday-3 = Wed
weekday-4 = Thu
weekday-5 = Fri
weekday-6 = Sat
weekday-7 = Sun
month-short-1 = Jan
month-short-2 = Feb
month-short-3 = Mar
month-short-4 = Apr
month-short-5 = May
month-short-6 = Jun
month-short-7 = Jul
month-short-8 = Aug
month-short-9 = Sep
month-short-10 = Oct
month-short-11 = Nov
month-short-12 = Dec
weekday-and-day = { $weekday } { $day } { $month }

print-wall = House-door sheets, one a week
sheet-wall = House-door sheets
wall-title = House-door sheet, week { $week }
wall-head = { $title } · { $whose }
wall-alive-first = Alive on the first of these days
wall-date = Date:
waiting-wall = Then each day shows what to expect.
wall-alive = Alive { $day }, expected { $birds }
wall-next-medicine = Next vaccine or medicine: which
wall-medicine-day = On which day
wall-last-dose = Last dose gone: day and hour
wall-sale-date = EARLIEST SALE DATE. Not known: no sale
wall-vet = Vet, phone
wall-state-vet = State vet, phone
wall-owner = Owner, phone
wall-hatchery = Hatchery, phone
wall-feed-shop = Feed shop, phone
wall-corner = Write 0 for none. Left blank means: not written.
wall-row-todo = Do today
wall-row-feed = Feed given
    .note = Say which: kg, bags, tins. Expected below
wall-row-water = Water drunk
    .note = Litres or cans
wall-row-warmth = Warmest, coldest
    .note = At chick height
wall-row-deaths = Dead and culled
    .note = Call number: common practice, no source
wall-row-look = Look, smell, feel
    .note = Tick what is right, the lamps as told below; say at the foot what is not
wall-row-curtain = Curtain, initials
    .note = Marks open, each side; who wrote
wall-warmest = warmest
wall-coldest = coldest
wall-lamps = lamps
wall-curtain = curtain
wall-initials = initials
wall-morning = morning
wall-evening = evening
wall-spread = spread
wall-smell = smell
wall-litter = litter
wall-target = target { $warmth }
wall-light = { $hours } light
wall-call = call at { $n } or more
wall-with-chick-day = { $amount }, with the chick day’s
wall-feed-first-none = on paper before they come
wall-water-first-none = in the founts 2 to 4 h before
wall-last-time = { $expected }; last batch { $had }
wall-warmth-and-spread = At chick height. Tick how they lie: even; under the heat, cold; at the guard, hot; to one side, draught
wall-rest = The last birds go on { $day }, day { $age }, by this plan. Birds left after that: write their days here.
todo-weighed-last-time = Last batch { $weight }.
wall-feed-first = { $amount }, on paper before they come
wall-water-first = { $amount }, in the founts 2 to 4 h before
wall-bags = { $count ->
    [one] { $n } bag
   *[other] { $n } bags
}
wall-tins = { $count ->
    [one] { $n } tin
   *[other] { $n } tins
}
wall-cans = { $count ->
    [one] { $n } can
   *[other] { $n } cans
}
wall-bags-left = Bags left, which feed
wall-last-fed = Last day fed
wall-weighed = Weighed: birds, mean
wall-money-spent = Money spent
wall-remarks = Remarks
wall-no-label = {""}
todo-guard = { $how }.
todo-delivery = { $count ->
    [one] { $n } bag of { $feed } comes.
   *[other] { $n } bags of { $feed } come.
} Milling day?
todo-mix-1 = { $feed }: 1 part new, 3 old.
todo-mix-2 = { $feed }: half and half.
todo-mix-3 = { $feed }: 3 parts new, 1 old.
todo-boxes = Count 1 box in 5, weigh 5 boxes full and empty.
todo-large-beside-small = Hang large feeders and drinkers; leave the small ones.
todo-small-out = Small feeders and drinkers out this evening.
todo-weigh = Weigh { $birds }, all you pen. Target { $target }.
todo-weigh-all = Weigh birds, all you pen.
todo-sell = SELL { $birds }. Count and weigh.
todo-sell-last = SELL the last: { $birds }. Count and weigh.
todo-sell-some = SELL. Count and weigh.
todo-job-withdrawal-checked = CHECK: every withdrawal over? Whole days.
todo-job-medicine-stopped = From now no medicine without the vet.
todo-job-curtains-in-heat = Hot days from now: curtains down from the top by 9.
todo-job-feed-off = Evening: feed off 8 to 12 h before slaughter. Water stays.
todo-job-feed-stays = Feed and water stay until they are caught.
todo-job-feed-asked = Ask the buyer: slaughter? Feed off 8 to 12 h before. Alive: feed stays. Water always.
todo-job-dark-taught = Evening: teach them the dark, a little longer each night.
todo-job-heat-ends = Last night of heat, if it is not cold and wet.
todo-job-night-rounds = Look in at 22:00, 02:00 and 05:00.
todo-job-dusk-and-dawn = From tonight: look in at dusk and 04:00.
caution-wall = Call now, and stay alive
caution-wall-1 = You do not need us to call the vet: blue combs, twisted necks, sudden many dead: call now, move nothing, sell nothing, do not treat first.
caution-wall-2 = Deaths at the call number, or two bad days running: call. Dead birds out morning and evening, with gloves; never eaten, sold or fed. The label, local rules and the vet come first.
caution-wall-3 = Charcoal gas has no smell and kills people first asleep. Light pots outside, keep a gap open high and low all night, nobody sleeps here. Headache: out, all of you, air first.

print-shopping = Shopping list with dates
sheet-shopping = Shopping list
shopping-total-label = To pay in all
shopping-total-besides = All costs of the plan are { $all }: { $besides } of them is your own work and interest, which nobody is paid for here.
shopping-total-note = As far as prices are known. The least money on hand is { $low }, at { $day } of age.
shopping-caption = What is paid in which week; tick it when it is there
column-bought-at = Bought at, for
column-costs-in = Costs, { $currency }
column-until-then = In all by then, { $currency }
shopping-weeks-before = { $count ->
    [one] The week before the chicks, to { $last }
   *[other] { $n } weeks before the chicks, to { $last }
}
shopping-lacks = Not on this list yet, until it is answered
shopping-feed = Feed
shopping-prices = What it costs
shopping-order-by = { $what }, order by { $day }
shopping-week = Week { $n }, from { $first }
shopping-sheets = { $count ->
    [one] { $n } sheet
   *[other] { $n } sheets
}
shopping-cylinders = { $amount }: { $count ->
    [one] { $n } cylinder
   *[other] { $n } cylinders
}
shopping-sacks = { $amount }: { $count ->
    [one] { $n } sack
   *[other] { $n } sacks
}
question-short = What is short
short-caption = Too few by this plan
shopping-equipment-note = Feeders, drinkers and brooders serve many batches; this list lets one batch pay for them whole.
shopping-note = Ask for the milling day of feed, the hatch day and vaccines of chicks, and a receipt. What has no price yet is in no sum.

print-booklet = Plan booklet
sheet-booklet = The plan in short
booklet-caption = The answers in short
column-question = Question
column-answer = Answer
column-more = More
question-problems = What does not hold
booklet-no-problems = Nothing was found that stands against this plan.
booklet-not-all-checked = Nothing was found against what could be checked. What stands below is not checked yet: it waits for the answers named.
booklet-nothing-checked = Nothing could be checked yet: all of it waits for the answers named below.

print-handout = Handout for a class: one figure worked through
sheet-handout = Worked through: { $figure }
handout-question = How does this figure come about?
handout-chain = Where its numbers come from
handout-exercises = Now you
handout-exercise = { $number }. Everything as above, but “{ $field }” is { $to } in place of { $from }. What is “{ $figure }” then?
handout-weeks = By the week: { $what }
handout-first-day = From day
handout-last-day = To day
handout-of-week = In all
handout-until = { $number }. “{ $figure }” is all these weeks added up. What does it come to by the end of day { $day }?
handout-from = { $number }. And what is still to come from day { $day } on?
handout-formula = The formula with your numbers
handout-work = Working
handout-result = Answer
handout-answer = { $number }. { $answer }
handout-check = Work it out on paper first. The answers stand below, upside down.
handout-waiting = Answer more of the plan first: nothing can be worked through yet.
handout-below = worked out below
handout-in-plan = worked out in the plan
