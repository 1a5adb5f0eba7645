## Medicine in water, withdrawal, and the vaccine programme.

section-medicine = Medicine
section-withdrawal = Waiting after medicine

unit-mg-kg = { $n } mg a kg
unit-label-mg-kg = mg a kg
unit-mg-g = { $n } mg in a g
unit-label-mg-g = mg in a g
unit-mg-ml = { $n } mg in a mL
unit-label-mg-ml = mg in a mL
unit-g-l = { $n } g a litre
unit-label-g-l = g a litre
unit-ml-kg = { $n } mL a kg
unit-label-ml-kg = mL a kg
unit-ml-day = { $n } mL a day
unit-label-ml-day = mL a day
unit-g-day = { $n } g a day
unit-label-g-day = g a day

## Quick sums.

sum-dose = Medicine in water: a liquid, by its label
sum-dose-powder = Medicine in water: a powder, by its label
sum-withdrawal = When may birds be sold or eaten after medicine?

field-medicine-birds = Birds
    .hint = Those that drink from this water, counted today.
field-medicine-weight-kg = Mean weight of a bird
    .hint = Weigh a few dozen today. A guess is how birds get too much or too little.
field-medicine-drunk-l = Water they will drink in 24 hours
    .hint = In litres: what they drank yesterday, if tomorrow is no hotter. More on a hotter day.
field-medicine-dose-mg-per-kg = Label or vet: active for a kg of bird
    .hint = In mg a day. Write nothing here that is not on the label or on your vet’s paper.
field-medicine-days-d = Days of treatment
    .hint = As the label or the vet says. Never fewer because the birds look better.
field-medicine-yesterday-c = Warmest hour of the day you measured the water
field-medicine-tomorrow-c = Warmest hour expected on the day of treatment
field-medicine-strength-mg-per-ml = Active in the product
    .hint = In mg in one mL. A label in percent: 1 % is 10 mg in a mL, if the percent are grams in 100 mL.
field-medicine-product-ml-per-kg = Or: product for a kg of bird
    .hint = In mL a day. Only where the label gives no mg of active.
field-medicine-label-ml-per-l = Label’s other line: product in a litre of water
    .hint = In mL. Both lines together show a mistake before the birds feel it.
field-medicine-pack-ml = Product in a bottle
field-medicine-strength-mg-per-g = Active in the product
    .hint = In mg in one g. A label in percent: 1 % is 10 mg in a g.
field-medicine-product-g-per-kg = Or: product for a kg of bird
    .hint = In g a day. Only where the label gives no mg of active.
field-medicine-label-g-per-l = Label’s other line: product in a litre of water
    .hint = In g. Both lines together show a mistake before the birds feel it.
field-medicine-pack-g = Product in a sachet
field-withdrawal-last = Day the last medicated water or feed was gone
    .hint = Drinkers empty and lines flushed. For a feed: the last day any of it was fed, days of mixing too.
field-withdrawal-hour-h = Hour by which it was gone
    .hint = 0 to 24, the next full hour: 18 for half past five. Left out, the end of that day counts.
field-withdrawal-days-d = Waiting time on the label
    .hint = Withdrawal days for meat. 0 only if the label says 0 in so many words. Not on the label, or another kind of bird: leave it empty and ask your vet.

## Figures.

figure-medicine-live-weight = Live weight of the birds
figure-medicine-active = Active for one day
figure-medicine-by-weight-ml = Product by the weight of the birds
figure-medicine-by-weight-g = Product by the weight of the birds
figure-medicine-by-water-ml = Product by the water they drink
figure-medicine-by-water-g = Product by the water they drink
figure-medicine-agreement-ml = The water line gives, of what the weight line gives
figure-medicine-agreement-g = The water line gives, of what the weight line gives
figure-medicine-product-ml = Product for one day
figure-medicine-product-g = Product for one day
figure-medicine-per-litre-ml = Product in each litre they drink
figure-medicine-per-litre-g = Product in each litre they drink
figure-medicine-bottles = Bottles for all days
figure-medicine-sachets = Sachets for all days
figure-withdrawal-earliest-day = First day to slaughter, sell, eat or give away
figure-withdrawal-clear-day = The waiting time ends on
figure-withdrawal-clear-hour = At this hour of that day

rule-medicine-live-weight = All birds that drink, times their mean weight.
rule-medicine-active = The label’s or the vet’s mg for a kg of bird, times the kilograms.
rule-liquid-by-product = The label’s mL for a kg of bird, times the kilograms.
rule-liquid-by-active = The active for the day, through the strength of the product.
rule-liquid-by-water = The label’s mL for a litre, times the litres they drink.
rule-liquid-agreement = Both lines of the label, one against the other. From 83 to 120 % they agree; else no amount is given.
rule-liquid-weighed = By the weight of the birds: it is the birds that are treated, the water only carries.
rule-liquid-drunk = By the water alone, since the label’s dose for a kg was not typed. Nothing checks it.
rule-liquid-per-litre = The day’s product spread over all they drink in 24 hours.
rule-bottles = All days together, in whole bottles.
rule-powder-by-product = The label’s g for a kg of bird, times the kilograms.
rule-powder-by-active = The active for the day, through the strength of the product.
rule-powder-by-water = The label’s g for a litre, times the litres they drink.
rule-powder-agreement = Both lines of the label, one against the other. From 83 to 120 % they agree; else no amount is given.
rule-powder-weighed = By the weight of the birds: it is the birds that are treated, the water only carries.
rule-powder-drunk = By the water alone, since the label’s dose for a kg was not typed. Nothing checks it.
rule-powder-per-litre = The day’s product spread over all they drink in 24 hours.
rule-sachets = Whole sachets for each day: an open one is not kept for the next.
rule-withdrawal-earliest-day = The first day that lies wholly behind the end of the waiting time. Nobody should watch the clock at the knife.
rule-withdrawal-clear-day = Whole periods of 24 hours, counted from the last medicated water or feed.
rule-withdrawal-clear-hour = The hour at which the last was gone; the end of a day is hour 0 of the next.

## What the answers say about themselves.

finding-medicine-water-gives-more = No amount is given. For { $live } of birds the label’s water line gives { $times } times what its weight line gives: one of the numbers is wrong, and the birds could get too much. Ask your veterinarian before you mix anything.
finding-medicine-water-gives-less = No amount is given. For { $live } of birds the label’s weight line gives { $times } times what its water line gives: one of the numbers is wrong, and the birds could get too much or too little. Ask your veterinarian before you mix anything.
way-out-medicine-weigh = Weigh birds again: is the mean weight in kilograms, and are all birds counted?
way-out-medicine-measure-water = Measure again what they drink in 24 hours; look for leaks and count the cans.
way-out-medicine-ask-units = Read the label aloud to your vet: is the dose in mg of active or in product, for a kg of bird or for a litre, for a day or for a meal of some hours, and which strength is this pack?
finding-medicine-one-line-only = Only one line of the label was typed, so nothing checks the answer. Type the dose for a kg of bird and the dose for a litre; if the label has only one, ask your veterinarian for the other.
finding-medicine-label-wanted = Type the dose from the label or from your veterinarian. This program suggests no medicine and no dose.
finding-medicine-water-wanted = Type the water they will drink in 24 hours: without it there is no amount for a litre, and no second check.
finding-medicine-hotter-day = It will be { $degrees } degrees hotter than when you measured the water. Birds drink more, so the same amount in a litre is too much medicine. Type the water you now expect, mix the day’s amount into that, and mix it anew each day.
finding-medicine-part-of-a-sachet = A day takes { $sachets } sachets. Do not split one by eye and do not keep an open one for the next day: weigh the powder, or ask your vet for another pack.
finding-withdrawal-unknown = Blocked: nobody has said how long to wait. Do not sell, slaughter, eat or give away these birds, and cull none for food. Ask your veterinarian how many days. Not known never means none.
finding-withdrawal-hour-not-told = No hour was given, so the end of the last day counts.

## Cautions.

sum-dose-caution = The label, the law and your veterinarian come first: they say which medicine, how much and how long. This sum only multiplies what you typed. Antibiotics only from a veterinarian; no medicine made for people, nothing left over from last time.
sum-dose-caution-2 = Sick or dying birds: call the veterinarian before you treat. Many sudden deaths, blue combs, twisted necks: call at once, move nothing, sell nothing, do not treat first.
sum-dose-caution-3 = Medicated water is their only water. Mix it fresh every 24 hours and throw the rest where no bird or beast drinks. Never stretch one vial or sachet over several days.
sum-dose-caution-4 = On a hotter day birds drink more: work out the amount in a litre anew each morning.
sum-dose-caution-5 = Gloves, and no dust in your face. Label in view. One medicine at a time unless the vet says so; chlorine off where the label says so.
sum-dose-caution-6 = Write down product, batch number, expiry, amount, first and last hour. Before any sale count the waiting time from the last dose.

sum-withdrawal-caution = It holds for sale, for your own table, for gifts and for culls. Eggs and manure have rules of their own.
sum-withdrawal-caution-2 = The label of your own pack and your veterinarian come first, and a buyer or the law may ask for longer. With several treatments the latest one rules, and one that nobody knows stops all.
sum-withdrawal-caution-3 = Feed can carry a waiting time too, against coccidiosis for one: read the bag, and count from the last day any of it was fed.
sum-withdrawal-caution-4 = Another dose, another bird or another way of giving than the label’s: its days no longer hold. Ask the veterinarian.

## Vials.

field-vaccine-doses-per-vial = Doses in a vial
    .hint = By its label.
figure-vaccine-vials = Vials to open, whole
rule-vaccine-vials = Never fewer doses than birds. What is left in the last vial is destroyed, not kept.

## The vaccine programme of your own veterinarian.

vaccine-route-drinking-water = in the drinking water
vaccine-route-eye-drop = a drop into the eye
vaccine-route-spray = coarse spray
vaccine-route-injection = injection
vaccine-route-wing-web = through the wing web

programme-parts = Line { $line } has { $found } parts. Write four, parted by semicolons: vaccine; day on your paper; how it is given; doses in a vial.
programme-no-name = Line { $line } names no vaccine. Copy its name from your veterinarian’s paper, in at most 80 letters.
programme-not-a-day = Line { $line }: “{ $typed }” is no day. Write the day on your paper as a number up to 84.
programme-before-arrival = Line { $line }: day { $day } lies before the chicks come, since your paper calls that day 1. Ask your veterinarian which day is meant.
programme-not-a-route = Line { $line }: “{ $typed }” is no way to give a vaccine that is known here. Write drinking-water, eye-drop, spray, injection or wing-web.
programme-not-doses = Line { $line }: “{ $typed }” is no number of doses. Read it on the vial, and write it without marks: 1000.
programme-twice = Line { $line } repeats line { $first }: the same vaccine on the same day. Take one out.

vaccine-step-healthy = Look at the birds: vaccinate healthy birds only
    .why = Sick or panting birds are harmed and not protected. Call your vet and choose another day.
vaccine-step-ice-box = Fetch the vaccine in a box with ice, and keep it at 2 to 8 °C
    .why = A live vaccine that was warm once, or frozen where its label forbids it, looks the same and does nothing.
vaccine-step-expiry = Read the vial: the right vaccine, not expired, whole seal
    .why = An old or wrong vial cannot be taken back out of the birds.
vaccine-step-clean-water = No chlorine, acid or medicine in the water from 24 to 48 hours before until 24 hours after
    .why = They kill a live vaccine. Let mains water stand 12 hours.
vaccine-step-measure-water = The day before, measure what the birds drink in two hours at that hour
    .why = It is the right amount to mix into. In heat the rule of age is drunk too fast, and the timid get none.
vaccine-step-cool-hour = Begin in the coolest hour
    .why = Warmth kills the vaccine and stresses the birds.
vaccine-step-thirst = Lift the drinkers for 1 to 2 hours; only 30 to 60 minutes above 30 °C; never with panting birds
    .why = A little thirst makes all drink at once. In heat a long thirst kills.
vaccine-step-milk = If the leaflet allows it, stir in skimmed milk powder, 2 to 4 g to a litre, 20 to 30 minutes before the vaccine
    .why = It binds what is left of the chlorine.
vaccine-step-whole-vials = Open as many whole vials as the birds need, under the water, and never fewer doses than birds
    .why = Half a dose protects nobody. No vial is split between houses or kept for the next day.
vaccine-step-no-sun = Mix in the shade, in clean things that never held soap or disinfectant
    .why = Sun and soap kill the vaccine within minutes.
vaccine-step-two-hours = Use what is mixed within 2 hours
    .why = After that too little of it is alive.
vaccine-step-all-drink = Walk the birds up gently, see that all drink, and that it is gone within about 2 hours
    .why = A bird that did not drink is not protected and can fall ill later.
vaccine-step-write-down = Write down vaccine, batch number, expiry, hour and birds
    .why = If the flock falls ill your vet asks for exactly that.
vaccine-step-empty-vials = Tip what is left into disinfectant, boil or burn the vials, wash your hands
    .why = It is alive: it must not reach other birds or a stream.

## Vaccines and medicines of a batch.

page-health = Vaccines and medicines
health-selling = May birds be sold?
health-earliest = First day to sell, slaughter, eat or give away
health-blocked = Blocked
health-blocked-by = Nobody has said how long to wait after { $product }. Not known never means none.
health-over-since = The wait after { $product } ended on { $day } at { $hour }:00. By what is written, nothing holds birds back today.
health-wait-for = The wait after { $product } ends on { $day } at { $hour }:00. The first whole day after it counts.
health-nothing-holds = Nothing that is written holds them back
health-nothing-holds-note = It cannot know of a medicine that was given and not written down. Ask everybody who works with the birds.
health-unknown = Sell none, slaughter none, eat none, give none away, cull none for food
health-unknown-medicine = { $product }, given last on { $day }: read the waiting time on the label and write it into that entry. Not on the label, or another kind of bird? Ask your veterinarian.
health-unknown-vaccine = { $product }, given on { $day }: a vaccine has a waiting time too. Read its label or leaflet and write the days into that entry, 0 only if it says 0. Ask your veterinarian if you cannot find it.
health-unknown-feed = { $product }, fed last on { $day }: read the waiting time on the bag and write it into the delivery.
health-sale-days = Days on which birds are to be sold
health-column-verdict = May they be sold?
health-sale-first = first day of sale by your plan
health-sale-last = last day of sale by your plan
health-sale-order = order of { $buyer }
health-day-free = yes, by what is written today
health-day-held = no: { $products }
health-waits = What was given, and how long it holds birds back
health-column-product = What
health-column-last = Last given
health-column-days = Waiting time
health-column-earliest = First day to sell
health-days-unknown = not known
health-last-at = { $day }, gone by { $hour }:00
health-last-day = { $day }, to the day’s end
health-feed = feed: { $phase }
health-worked-out = How these days were worked out
health-selling-caution = Before any bird is sold or eaten

health-vaccines = Which vaccination is due?
health-next-label = Next
health-next = { $vaccine } on { $day }
health-all-given = All are given
health-no-programme = No programme is written down. Ask your veterinarian for one and type it in, a line a vaccine. This program suggests none: which diseases are about is known where you live.
health-no-chick-day = Say when the chicks come: the days of the programme are counted from it.
health-programme-unreadable = Some lines of the programme cannot be read, so no day is shown
health-programme = The programme, on the calendar
health-column-vaccine = Vaccine
health-column-route = How it is given
health-column-vials = Open
health-column-standing = Where it stands
health-vials = { $count ->
    [one] { $vials } vial, { $doses } doses
   *[other] { $vials } vials, { $doses } doses
}
health-done = given { $day }
health-done-late = given { $day }, { $days } late
health-done-early = given { $day }, { $days } early
health-at-hatchery = given at the hatchery
health-late = { $days } late, nothing is written
health-today = today
health-coming = to come
health-see-to = What to see to: { $vaccine }
health-late-ask = Given after all? Write it down for the day it was given. If not: ask your veterinarian whether it still helps now. A late dose can be wasted, and all later ones may have to move.
health-drink = For { $day }: no chlorine, acid or medicine in the water from { $from } to { $until }. Thirst { $thirst } minutes, { $hot } minutes above { $hot_c }.
health-drink-water = { $clean } Water { $water }, by the rule of age; what they drank in two hours the day before counts more. Skimmed milk powder { $least } to { $most } g, if the leaflet allows it.
health-beside = Given, but under a name that is in no open line of the programme
health-beside-nothing = Vaccines given
health-beside-given = { $vaccine } on { $day }
