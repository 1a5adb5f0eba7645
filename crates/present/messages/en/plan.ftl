## The plan page and its sheets.

page-before = Before the chicks
sheet-cutting = Guard cutting sheet
sheet-mixing = Sprayer mixing card
sheet-workings = How each figure is worked out
chicks-on-day = { $chicks } on { $day }
print-footer = The product label, local rules and your veterinarian come first.
print-page = Page { $page } of { $pages }

question-fit = Do the chicks fit?
question-guard = How is the brooder guard cut and joined?
question-mix = How is the sprayer mixed?
question-litter = How much litter?
question-assumed = What was taken because nothing was said
assumed-caption = Usual values taken. Change any of them by answering.
answer-first = { $count ->
    [0] The answers so far do not give this.
   *[other] Answer first: { $questions }{ $more_count ->
        [0] {""}
       *[other] {""}; and { $more } more
    }.
} { $then }
to-answer = To answer first
price-of = Price: { $what }
to-answer-above = What is named above already.
waiting-space = Then you read whether they fit.
waiting-guard = Then rings, strips and sheets are worked out.
waiting-mix = Then the dose for a tank is worked out.
waiting-litter = Then bags of litter are counted.

verdict-label = At sale
verdict-label-in-parts = On the fullest day
verdict-fits = Yes, they fit
verdict-does-not-fit = No, they do not fit
space-fits = { $birds } alive at sale are { $density }, within { $limit }; the house carries { $allowed }.
space-were-all-sold-at-once = Were all sold at once, at the age of sale alone:
space-fits-in-parts = { $birds } at { $day } are { $density }, within { $limit }. On every other day there is more room.
space-does-not-fit-in-parts = { $birds } at { $day } would be { $density }, over { $limit }.
space-does-not-fit = { $birds } alive at sale would be { $density }, over { $limit }; the house carries { $allowed }.

guard-lead-label = To build
guard-lead = { $rings_count ->
    [one] { $rings } ring
   *[other] { $rings } rings
} of { $strips_count ->
    [one] { $strips } strip
   *[other] { $strips } strips
}, from { $sheets_count ->
    [one] { $sheets } sheet
   *[other] { $sheets } sheets
}
guard-sheets-lacking = You have { $owned } of the sheets: buy { $buy }.
guard-sheets-enough = You have { $owned } sheets: none is to be bought.
guard-lead-note = First day: overlap { $overlap } gives { $asked }. From day 3, opened to an overlap of { $open }: { $density }. More room needs heat right across the ring.
layouts-caption = Other numbers of rings; yours stands out
column-rings = Rings
column-brooder-for = Brooder for chicks
column-strips-each = Strips in each
column-sheets = Sheets
column-across = Across
column-true-density = Opened wide, { $unit }
column-against = Against it
against-fire = too narrow for a pot
against-sheet = the sheet does not bend so far
against-fit = { $count ->
    [0] none stands in the heat
    [one] only 1 stands in the heat
   *[other] only { $fit } stand in the heat
}
list-comma = {", "}
rings-by-kind-caption = Rings by the kind of brooder over them
column-brooder = Brooder
column-chicks-each = Chicks in each, at most
brooder-first-kind = The first kind
brooder-second-kind = The second kind
brooder-none = None is left
widening-caption = Room as they grow. The steps are common practice; watch the chicks
column-from-day = From
column-how = How the guard stands
column-density = { $unit }
column-room = { $unit } for each
day-of-age = day { $day }
rings-single = Every ring by itself, overlap { $overlap }
rings-joined = { $joined } rings joined into one, overlap { $overlap }
whole-house = Guards out, the whole floor
strip-number = strip { $number }
overlap-of = overlap { $overlap }, opened wide
across = { $diameter } across
ring-number = Ring { $number }
ring-place = { $x } along, { $y } across
drawing-cutting = A sheet of { $length } by { $width }, sawn lengthwise into { $strips_count ->
    [one] { $strips } strip
   *[other] { $strips } strips
}, each { $height } high.
drawing-cutting-caption = Saw along the dashed lines
drawing-ring = A ring from above: { $strips_count ->
    [one] { $strips } strip
   *[other] { $strips } strips
} joined end over end with { $overlap } overlap, { $diameter } across. The thick marks outside are the overlaps.
drawing-ring-caption = One ring, joined and opened wide
drawing-floor = The floor from above, { $length } by { $width }, with its rings at each step, none on another and all inside the walls. { $steps }
drawing-floor-caption = The rings on the floor as they widen, to scale

step-cutting-1 = Mark the sheet along its length, so that every strip is { $height } high.
step-cutting-2 = Saw { $strips_count ->
    [one] { $strips } strip
   *[other] { $strips } strips
}. Sand the edges that chicks and hands touch.
    .why = The saw eats about 3 mm a cut.
step-cutting-3 = { $each_count ->
    [one] Bend the { $each } strip round to a ring, one end outside the other.
   *[other] Stand { $each } strips in a ring, each end outside the next strip, all the same way round.
}
step-cutting-4 = For the first day slide every join to an overlap of { $overlap } and clamp or tie it top and bottom.
    .why = That gives the density you asked.
step-cutting-5 = From day 3 slide every join open to { $open }.
    .why = Chicks grow; move the brooder edge, feeders and drinkers with them.
step-cutting-6 = Card across every corner or dent, and no gap at the floor.
    .why = Chicks pack into corners and get out through gaps.
caution-guard = Heat in a ring: fire and gas you cannot smell
caution-guard-1 = Charcoal gas has no smell and kills people first asleep. Light pots outside, keep a gap open high and low all night, nobody sleeps here. Headache: out, all of you, air first.
caution-guard-2 = Litter 0.5 m clear under and around a pot, 1 m from plywood and curtain. Sand bucket at the door.
caution-guard-3 = Gas cylinder outside, upright. Soap test at every change. Hang the brooder by a chain.
caution-guard-4 = Chicks tell the heat: heaped up is cold, at the guard with wings out is hot. Too hot: raise the brooder or widen the ring; the gap for air stays open.

mix-lead-label = Into every full tank
mix-lead = { $dose } in { $tank }
mix-lead-note = { $count ->
    [one] { $loads } tankful
   *[other] { $loads } tankfuls
}, { $solution } of mix for one disinfection. To buy for both disinfections: { $buy }.
mix-lead-note-tub = { $count ->
    [one] { $loads } tankful
   *[other] { $loads } tankfuls
}, { $solution } of mix for one disinfection. To buy for both disinfections and the tub: { $buy }.
own-measure = your own measure
in-own-measure = Measured with the { $name } of { $holds }: { $full } to a full tank, { $half } to half a tank.
the-tub = the tub
meaning-parts-water = 1:{ $parts } is read as 1 cup in { $parts } cups of water.
meaning-parts-total = 1:{ $parts } is read as 1 cup made up to { $parts } cups.
areas-convention = How areas are counted: walls are the inner faces up to the eave, solid wall and curtain together; gables are the triangles above; a ceiling is flat and as large as the floor; the roof is its underside along the slope; curtains outside come on top. Only what you ticked counts.
drawing-tankfuls = { $full } full tankfuls of { $tank } with { $dose } of disinfectant in each, and a last one of { $last } with { $last_dose }.
drawing-tankfuls-caption = What goes into each tank
tanks-full = { $count ->
    [one] { $n } full tank
   *[other] { $n } full tanks, in each
}
tank-last = the last tank
overdose-caption = “A little more” in a full tank, and what it truly is
column-poured = Poured
column-truly = Truly mixed
column-times = Of the label
column-wasted = Wasted in all
ratio-of = 1:{ $parts }
times-label = { $times } times
as-the-label-says = as the label says
caution-disinfectant = Before you open the bottle
caution-disinfectant-1 = The label and local rules come first. This card only does the label’s arithmetic.
caution-disinfectant-2 = Gloves, goggles, long sleeves, boots, and the mask or respirator the label names. On skin: wash off with much water at once. In the eyes: rinse 15 minutes with clean water, then to the clinic with the bottle.
caution-disinfectant-3 = Never mix two products. Bleach with acid, ammonia or dung gives poison gas.
caution-disinfectant-4 = Not the sprayer used for weedkiller. Never in drink bottles. Rinse what birds eat and drink from.
caution-disinfectant-5 = More is not better: it costs more, hurts lungs, eyes and skin, eats feeders, and harms chicks on a damp floor.
caution-disinfectant-6 = Chicks only when the house is dry and aired: the label’s time, at least overnight.
caution-disinfectant-7 = Never smoke out or fume a house with chemicals: licensed operators only.
step-mixing-1 = Fill the tank half with clean water.
step-mixing-2 = Measure { $dose } for a full tank of { $tank } with a syringe or your own measured cap.
step-mixing-3 = Pour the disinfectant into the water, never water onto the disinfectant.
step-mixing-4 = Fill up to the line of { $tank }, close, shake.
step-mixing-5 = Spray until the surface is wet, ceiling first, floor last, walking towards the door.
step-mixing-5-earth = Spray until wet, ceiling first, then walls, towards the door; not the earth floor.
order-of-work = Order of work
step-readying-1 = Birds out; feed and litter out, away from the house.
step-readying-2 = Small feeders and drinkers out to soak: { $soak } of disinfectant in { $tub } of water, if the label has no other strength for soaking. Then rinse and dry in the sun.
    .unknown = Small feeders and drinkers out to soak in disinfectant, as the label says. Then rinse and dry in the sun.
    .why = What birds eat and drink from is rinsed.
step-readying-3 = Brush down from roof to floor.
step-readying-4 = Wet, wash with detergent, rinse.
    .why = Dirt and soap use up the disinfectant.
step-readying-4-earth = Wash walls, roof and equipment with detergent, rinse. Keep water off the earth floor.
    .why = Water makes mud of it. Dirt and soap use up the disinfectant.
step-readying-5 = Let it dry.
    .why = Standing water thins the mix.
step-readying-5-earth-then = Earth floor: scrape off 2 to 5 cm, with all that dripped on it, and take it away.
    .why = Earth cannot be disinfected as concrete can.
step-readying-6 = Mend holes, netting, rat runs; flush the water tank and lines.
step-readying-7 = Disinfect, ceiling first and floor last. Keep it wet for the contact time: { $contact }.
step-readying-7-earth = Disinfect, ceiling first and walls last; the earth floor is not sprayed. Keep it wet for the contact time: { $contact }.
step-readying-8 = Dry for 24 hours.
step-readying-9 = Equipment in, clean; disinfect a second time.
step-readying-10 = Close for the contact time, then open and air until there is no smell and nothing is damp: at least overnight, better three days.
step-readying-10-earth-then = Lime the earth floor, then bring clean, dry soil and tamp it down.
    .why = Lime burns eyes and skin: goggles, gloves, and never in wind.
step-readying-11 = Leave it empty and locked: 10 to 14 days in all.
step-readying-12 = Litter in, dry, on { $spread }.
    .unknown = Litter in, dry, some days before the chicks.
    .why = Early enough to dry. Never spray over litter or dung.
step-readying-13 = Guards up, curtains fastened, brooders tried for one night.
step-readying-14 = Warm the house 24 hours before the chicks, 48 in the cold season.

litter-lead = { $count ->
    [one] { $bags } bag
   *[other] { $bags } bags
}
litter-lead-note = { $volume }, spread by { $day } so that it dries.
caution-sum = Before you begin
caution-litter = Litter
caution-litter-1 = Dry and free of dust and mould. Squeeze a handful: it falls apart. A ball is too wet, a puff of dust too dry.
caution-litter-2 = No treated wood, no cedar.
caution-litter-3 = Wear a mask when you spread it; keep it clear of pots and brooders.
caution-litter-4 = Turn it and take out cakes round the drinkers.
sum-dilution-caution = The label and local rules come first. Gloves, goggles, mask. Never mix two products. More is not better: it costs more, hurts lungs, eyes and skin, eats feeders, and harms chicks on a damp floor.
