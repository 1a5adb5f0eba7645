## The crew's calendar: what is done on which day, and why. Text under 90 characters, reason under 160.

question-countdown = What is done on which day?
waiting-countdown = Then every job gets its date.
days-lead-label = From the first job to the next chicks
days-lead-label-no-sale = From the first job to the last that has a day yet
countdown-no-sale = The sale has no day yet, nor what hangs on it: weighing, buyers, catching, the next chicks. Answer: { $questions }.
days-lead = { $first } to { $last }
days-lead-note = { $count } jobs. Move the chick day and all of them move along. The day of placement is day 0; on papers where it is called day 1, take one off.
days-before-week = The week before: day { $from } to { $to }
days-week = Week { $week }: day { $from } to { $to }
days-weeks-before = { $week } weeks before: day { $from } to { $to }
date-to-date = { $from } to { $to }
sheet-countdown = Countdown checklist
print-countdown = Countdown checklist
checklist-age = The day of placement is day 0. Tick each job when it is done and write the hour beside it.
checklist-item = { $when }, { $age }: { $text }.
calendar-file = The jobs as a calendar file for the phone (iCalendar)
calendar-age = Day of age { $age }; the day of placement is day 0.
option-ics = Write the jobs with their days to this file, as a calendar for the phone

field-house-downtime-d = Days between the last bird out and the next chicks
    .hint = Washing, drying, two disinfections and rest; 14 is usual.
field-sale-kind = The birds are sold
    .hint = Feed is taken away before slaughter only; birds sold alive keep theirs.
choice-sale-kind-slaughter = For slaughter
choice-sale-kind-live = Alive, at the gate or the market

figure-house-empty-days = Days the house stands without birds
figure-house-empty-from = House empty of birds from
figure-batch-next-placement = Earliest next chick day
rule-house-empty-days = The days you want it empty, but never fewer than the work takes: 10 days to empty, wash, dry, disinfect twice and air, then the days litter lies before the chicks.
    .formula = the larger of { $d } and 10 + { $s }
rule-house-empty-from = The chick day less the days the house stands empty.
rule-next-placement = The chick day, the age at sale, and the days the house stands empty.
finding-downtime-short = { $asked } between batches are too few: emptying, washing, drying, two disinfections, airing and litter take { $needed }. The jobs are laid out over { $needed }.
finding-litter-late = Litter should be in { $wanted } before the chicks at least: warming starts then, and damp litter takes the heat.


task-birds-out = Old birds out, every one
    .why = One bird left keeps the old sickness for the new chicks. A new house begins with the wash.
    .short = House empty
task-pests = Bait for rats; treat beetles and mites while the house is warm
    .why = Beetles leave cooling litter and come back. Only by the label. Bait where no child, hen or dog gets at it.
task-feed-out = Old feed out of house and feeders
    .why = Old feed draws rats and grows mould. Never give it to the new chicks.
task-equipment-soak = Small feeders and drinkers out to soak
    .why = Dried dirt lets go after some hours. Gloves and goggles; rinse what birds eat and drink from.
task-litter-out = Old litter out, away from the house, to be sold or composted
    .why = It carries sickness: never near another flock. Mask on, for the dust.
task-brush-down = Brush down from roof to floor
    .why = Dust and webs use up soap and disinfectant. Mask on; power off before you wet wires and lamps.
task-earth-floor = Earth floor: scrape off 2 to 5 cm, and take it away
    .why = Earth cannot be disinfected as concrete can. What dripped on it goes with it; far from the house and from other flocks.
task-earth-limed = Earth floor, all dry: lime, then clean, dry soil, tamped down
    .why = Lime burns eyes and skin: goggles, gloves, and never in wind. Nothing is wetted after it: new soil would be mud.
task-wash = Wet, wash with detergent from roof to floor, rinse
    .earth = Wash roof, walls and equipment with detergent, rinse; no water on the earth floor
    .why = Disinfectant does not work through dirt. Detergent must be rinsed off: it can undo the disinfectant.
task-dry-and-mend = Let it dry; mend netting, holes and rat runs
    .why = Standing water thins the mix. Wild birds and rats bring sickness back in. Mend before you spray.
task-flush-lines = Flush water tank, lines and drinkers
    .why = Slime in the line feeds germs and blocks drinkers. No cleaner in the line once birds drink from it.
task-line-clean = Fill the drinker lines with { $mix } of mix, { $product } of sanitiser in it
    .unknown = Fill the drinker lines with sanitiser, by its label
    .why = Only with no bird in the house; as long as the label says, overnight as a rule. Gloves, goggles; nothing mixed: bleach with acid gives poison gas.
    .short = Sanitiser into the lines
task-line-rinse = Drain the lines and rinse with clean water until nothing smells
    .why = No chick may drink what cleans a pipe, and the rest of it spoils vaccines. Open every end; work each drinker by hand.
task-disinfect-first = Disinfect, ceiling first, floor last; keep it wet for { $contact }
    .earth = Disinfect roof, then walls, not the earth floor; keep it wet for the label’s time
    .unknown = Disinfect, ceiling first, floor last; keep it wet for the label’s time
    .why = Gloves, goggles, mask. Never mix two products: bleach with acid or dung gives poison gas. The label comes first.
    .short = First disinfection
task-dry-day = Let it dry for 24 hours
    .why = A second mix on a wet floor is a thin mix.
task-equipment-in = Clean, dry equipment back in
    .why = So that the second disinfection reaches it too.
task-disinfect-second = Disinfect a second time, as on the label; keep it wet for { $contact }
    .unknown = Disinfect a second time, as on the label; keep it wet for the label’s time
    .why = The first pass misses corners. Same care: gloves, goggles, mask, nothing mixed together.
    .short = Second disinfection
task-air = Open up and air until nothing smells and nothing is damp
    .why = Fumes and damp floors hurt chicks, and people. At least overnight, better three days.
task-foot-bath = Foot bath and house boots at the door; no visitors from now on
    .why = Boots carry sickness in. Renew the bath when dirty. Young birds first, sick ones last, other flocks never.
task-rest = House empty, dry and locked
    .why = Sun, air and time kill what the mix missed. Nobody in without house boots.
task-chicks-booked = Book { $chicks }; get the day in writing, and pay the deposit if one is asked
    .unknown = Book the chicks; get the day in writing, and pay the deposit if one is asked
    .why = Hatcheries want 2 to 4 weeks. Ask parent age, vaccines given, and what they pay for dead ones.
    .short = Book the chicks
task-vaccines-ordered = Get the vaccine plan from your vet, and order
    .why = Only the vet knows what is about. Ask if arrival is day 0 or day 1 on the paper. Keep them cold.
task-feed-order = Order feed in time
    .why = A shop or mill needs its days; empty feeders cost the batch. Ask for the milling day.
task-feed-in = First feed in the store, dry, on pallets, off the wall
    .why = Empty feeders cost the batch. Read the milling date, and on the bag whether a medicine is in it.
    .short = Feed in
task-guard-cut = Cut the brooder guard: { $strips_count ->
    [one] { $strips } strip
   *[other] { $strips } strips
}
    .unknown = Cut the brooder guard
    .why = The cutting sheet tells how. A week leaves time for a missing sheet. Sand the edges.
task-thermometer = Check the thermometer in warm water against the clinic’s
    .why = Two degrees wrong is a batch of cold or panting chicks. Hang it at chick height.
task-stand-by = Stand-by heat and light: a full spare cylinder or 2 nights’ charcoal, a lamp
    .why = Power and gas fail at night. No petrol set or charcoal indoors without air: the gas has no smell and kills.
task-dead-pit = A lidded pit or burner for dead birds, away from water
    .why = 30 m and more from a well; local rule first. Never eaten, sold, or thrown to dogs, pigs or fish.
task-litter-in = Litter in, dry: { $bags_count ->
    [one] { $bags } bag
   *[other] { $bags } bags
}
    .unknown = Litter in, dry
    .why = It must dry and warm through before chicks lie on it. Mask on. Never spray over litter.
    .short = Litter in
task-transport = Agree hour and road with the hatchery; who fetches, who waits
    .why = Chicks go in the cool of the day, out of sun and wind, with air between the boxes.
task-guard-set = Set up the guard: { $rings_count ->
    [one] { $rings } ring
   *[other] { $rings } rings
} of { $strips_count ->
    [one] { $strips } strip
   *[other] { $strips } strips
}, no gap at the floor
    .unknown = Set up the guard, no gap at the floor
    .why = Chicks slip through gaps and pack into corners. Plywood stays 1 m off the fire.
task-curtains = Fasten the curtains and try them, both sides
    .why = Closed from the bottom up, open from the top down. A gap at the top stays, day and night.
task-brooder-trial = Try every brooder for one night, with air open high and low
    .why = Light pots outside; nobody sleeps here: the gas has no smell and kills. Litter 0.5 m clear, sand at the door.
task-warming = Heat on: a day before the chicks, two in the cold season
    .why = Floor, litter and air must be warm, not the air alone. Nobody sleeps here; the gap at the top stays open.
    .short = Warm the house
task-husk-paper = Paper over the rice husk in the rings
    .why = Day-old chicks eat husk and fill their crops with it. Take the paper out after three days.
task-vehicle = Wash and dry the vehicle and whatever carries the boxes
    .why = It has been to other farms.
task-water-in = Water in the drinkers 2 to 4 hours before the chicks
    .why = Not cold and not sun-hot, 20 to 25 °C. A chick that does not drink does not eat.
task-water-sanitised = Sanitiser in the drinking water from now on: { $product } to a full tank
    .unknown = Sanitiser in the drinking water from now on, by its label
    .why = Stop it two days before a live vaccine until a day after, and with any medicine that forbids it. Product into water, by its label.
task-feed-on-paper = Feed on paper over a quarter to half of each ring
    .why = They find it by walking on it, and the noise calls the others. Just before they come, so it stays fresh.
task-boxes-counted = Count the boxes, and 1 box in 5 chick by chick
    .why = Paid, delivered, dead and alive are four numbers. Out of sun and wind; never stacked in the house.
    .short = Chicks come
task-boxes-weighed = Weigh 5 boxes, full and then empty
    .why = All gain is counted from this weight. The difference is the chicks.
task-beaks-dipped = All into the rings within 30 minutes; dip some beaks in the water
    .why = They have gone without for a day. Water first, feed at once. Card boxes are burnt.
task-crops-first = Feel 30 to 40 crops after 2, 4, 8 and 12 hours
    .why = Full in 75, 80, 80 and 85 of 100. Fewer: too cold, too hot, or water not found. From 3 places.
task-chicks-claimed = Short, dead or weak chicks: tell the hatchery within 24 hours
    .why = Claims close in a day or two. Photo with the box label; write down to whom you spoke.
task-crops-day = Feel 30 to 40 crops after 24 hours
    .why = Full in 95 of 100. Those still empty are cold, sick, or have not found the water.
task-night-rounds = Somebody awake: look in at 22:00, 02:00 and 05:00
    .why = Heaped up is cold, at the guard is hot. Never alone into a smoky house: headache means out, all of you.
task-dusk-and-dawn = Look in at dusk and at 04:00
    .why = The coldest hour kills. Heaped up is cold, panting is hot. Fill the fire outside; nobody sleeps in the house.
task-dark-taught = Teach them the dark: a short while, a little longer each night
    .why = Chicks that never knew the dark heap up and smother at the first power cut. Stay with them.
task-rings-widened = { $joined_count ->
    [one] Slide every ring open to an overlap of { $overlap }: { $density }
   *[other] Join { $joined } rings into one, overlap { $overlap }: { $density }
}
    .unknown = Widen the rings
    .why = They have grown. Move brooder edge, feeders and drinkers with the guard, in the warm of the day.
task-large-equipment = Large feeders and drinkers beside the small ones; small ones out on the last evening
    .why = Both stand for 2 to 3 days, until all have learnt. Lip as high as a bird’s back.
task-guards-out = Guards out; board up the corners
    .why = They need the room. In the morning, so that they know it by night. Watch for heaping at dusk.
    .short = Guards out
task-heat-ends = Last night of planned heat
    .why = Feathers carry them now. A cold wet night still needs heat: let the birds say.
task-weighing = Weigh { $birds }: all that are penned, in 3 places
    .unknown = Weigh: all that are penned, in 3 places
    .why = Same hour, before feed. Caught singly you get the slow ones. A week behind is found now, not at sale.
task-curtains-in-heat = Hot days from now on: curtains down from the top, lee side first, before 9
    .why = Big birds die of heat. Cool water, no feed or handling from 11 to 16; water is never taken away.
task-feed-mixed = New feed: mix 3 to 1, half and half, 1 to 3, then the new alone
    .why = A sudden change stops them eating. What is left of the old feed goes into the mix. Read the new bag: is a medicine in it?
task-feed-delivered = More feed comes: { $bags }
    .unknown = More feed comes
    .why = Look at the milling date before you pay. Oldest bag first; no old and new mixed in one stack.
task-buyers-booked = Speak to the buyers for { $birds }: days, price, who weighs
    .unknown = Speak to the buyers: days, price, who weighs
    .why = Birds left unsold eat every day. Agree the deposit, and whose scale counts.
task-medicine-stopped = No medicine from now on without asking the vet about the sale day
    .why = Birds may not be sold, eaten or given away before the withdrawal is over. Medicated feed counts too.
task-catchers-booked = Book catchers and clean crates
    .why = Tired or rough hands break wings; dirty crates bring sickness in.
task-withdrawal-checked = Check that every withdrawal is over: whole days from the last dose
    .why = Not on the label, not known: no sale, ask the vet. Feed with medicine counts to the last day fed.
    .short = Medicines clear?
task-feed-off = Feed off 8 to 12 hours before slaughter, counted to the knife; water stays
    .why = An empty gut keeps the meat clean. Over 12 hours harms meat and bird. Never take the water.
task-feed-stays = Sold alive: feed and water stay until they are caught
    .why = Taking feed away is for slaughter. A hungry bird loses weight and suffers on the road.
task-feed-asked = Ask the buyer: slaughter, feed off 8 to 12 hours before; alive, feed stays
    .why = Counted to the slaughter hour. Water stays until they are caught, always.
task-catching = Catch in the cool, in low light, calmly
    .why = Heat and fright kill. Both legs, few in a hand; fewer in a crate on hot days; air between crates.
task-sale = { $days_count ->
    [one] Sell { $birds }: count, weigh, write down every bird
   *[other] Sell about { $birds } a day: count, weigh, write down every bird
}
    .unknown = Sell: count, weigh, write down every bird
    .why = Many sudden dead, blue heads, twisted necks: sell nothing, move nothing, call the state vet.
    .short = First sale
task-batch-closed = Close the batch: birds, feed, money
    .why = Placed is sold, eaten, given, dead, culled and lost together. Who owes stands with a name and a day.
task-litter-sold = Litter out: sold or composted, away from the house
    .why = It is worth money to crop growers. After a sickness ask the vet first. Mask on.
task-next-wash = Wash the house while dirt is soft
    .why = Dirt that has dried on is slow to come off. Power off before you wet wires and lamps.
task-downtime = House without birds
    .why = Sickness dies out without birds to live on.
task-next-chicks = Earliest day for the next chicks
    .why = Sooner would cut short the cleaning or the rest. Book 2 to 4 weeks ahead.
    .short = Next chicks
phase-house = house empty, cleaned, at rest
phase-brooding = brooding
phase-growing = growing
phase-after = downtime
drawing-countdown = The days that must not slip: { $days }.
drawing-countdown-caption-no-sale = The jobs that have a day yet. Filled dots must not slip.
drawing-countdown-caption = From the empty house to the next chicks. Filled dots must not slip.
every-job = Every job, with its day and its reason
