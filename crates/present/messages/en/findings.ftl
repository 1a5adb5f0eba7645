## What a plan has to say about itself.

weight-problem = Does not hold:
weight-look = Look again:
weight-note = Good to know:
ways-out = Ways out:
change-this = Change the answer

finding-does-not-fit = Too many birds for this floor: { $allowed } fit at { $limit }.
way-out-fewer-chicks = Order { $order } instead; in boxes of 100 that is { $boxes }.
way-out-sell-all-earlier = Sell all by the time they are { $day } old (the chick day is day 0; counted as if none were lost, to be sure).
way-out-sell-part-by-day = Sell { $early } by the time they are { $day } old (counted likewise) and keep the rest.
way-out-sell-lighter = Sell at a lower weight.
way-out-sell-part = Sell { $early } before the rest.
finding-limit-above-hot-advice = Your limit of { $typed } is above the { $low } to { $high } advised for open houses in the hottest months. Heat kills heavy birds first.
finding-fits-by-own-limit-only = They fit only by your own limit of { $typed }. At the { $high } advised for this house and month the house carries { $advised }.
finding-limit-above-advice = Your limit of { $typed } is above the { $low } to { $high } advised for this house.
finding-limit-of-hot-season = The sale falls into the hottest months, when an open house carries { $low } to { $high } and not { $usual }.
finding-season-not-known = Whether the sale falls into the hottest months is not known (say the chick day, the age at sale and the latitude or your hottest months). Until then the limit lies between the hot season’s and the usual one.
finding-hottest-months-assumed = The hottest months are guessed from latitude. Tick your own if they differ.
finding-curve-is-an-objective = { $weight } is what breeders of fast lines aim for. Small open houses mostly reach 60 to 80 % of it. On the open-house curve a bird weighs { $open }, and the house carries { $open_birds }.
finding-slower-in-heat = At a mean of { $mean } birds of this curve put on about { $gain } less a day from day 22 on, and eat about { $feed } less: each kilogram put on takes about { $more } more feed. Sources differ widely. Shade, air and open curtains win some of it back.
finding-rings-do-not-fit = { $rings } rings of { $diameter } do not stand on this floor in straight rows with a path around them; { $fit } do.
way-out-other-ring-count = Take another number of rings from the table below.
way-out-narrower-walkway = Make the path between them narrower, but leave room to walk.
finding-fire-too-near-guard = Fire: on the first day the ring is { $across } across. Between a pot of { $pot } in its middle and the plywood are { $clear }, and { $wanted } are wanted. Plywood so near a fire can burn.
finding-fire-just-clear-of-guard = Fire: on the first day the ring is { $across } across. Between a pot of { $pot } in its middle and the plywood are { $clear }, just the { $wanted } that are wanted. A pot set out of the middle or a ring bent out of round brings them nearer.
way-out-open-rings-for-fire = Open the rings wide from the first day: then there are { $opened }.
way-out-larger-rings-for-fire = Plan larger rings: { $density } or fewer, with more strips in each.
way-out-gas-hung-for-fire = Take a gas brooder that hangs on a chain, at the height its label says.
finding-pieces-without-place = From day { $day } each ring, { $across } across, is to hold { $feeders } chick feeders and { $drinkers } chick drinkers. { $standing } stand with room for a chick to pass between them; { $left } find no place.
way-out-open-rings-for-pieces = Open the rings to { $opened } from that day: then all find a place.
way-out-trays-for-room = Trays take less room than lids of boxes and troughs.
way-out-more-room-for-pieces = Give a ring more room: fewer chicks for each square metre, or one strip more.
way-out-more-rings-for-pieces = Have more rings of this size, with fewer chicks and fewer pieces in each.
way-out-fewer-pieces = Take larger ones that serve more chicks each, and fewer of them.
finding-brooder-caps-ring = You asked for { $asked } in a ring, but one brooder keeps { $taken } warm. So there { $rings_count ->
    [one] is { $rings } ring
   *[other] are { $rings } rings
}.
finding-time-zone-not-needed = You told a time zone. It is no longer asked, and nothing is lost: jobs in the calendar go by the clock on the wall, daylight by your latitude.
finding-brooders-carry-too-few = All brooders of both kinds keep { $carry } warm, with no more than { $most } in a ring: { $left } would have no heat. Put at most { $first } under each of the first kind and { $second } under each of the second.
way-out-brooder-for-the-rest = Have brooders for the others too, each with the air that its fire wants.
way-out-fewer-chicks-for-brooders = Or order no more than they keep warm.
finding-two-kinds-of-brooder = Two kinds of brooder: share the chicks out by what each keeps warm, { $first } under each of the first kind and { $second } under each of the second. Rings are drawn alike, for what one keeps warm on average.
finding-ring-without-brooder = { $brooders } brooders for { $rings } rings: { $missing } would have no heat.
finding-brooder-not-told = { $in_ring } in a ring need a brooder rated for them. A charcoal pot keeps about { $pot } warm, a small gas brooder { $gas_low } to { $gas_high }. Chicks at the edge of too small a brooder are cold.
finding-sheet-does-not-bend = This sheet bends to a radius of { $low } at best; the ring has { $radius } on the first day. Take thinner sheet, or fewer and larger rings.
finding-sheet-hardly-bends = This sheet bends to a radius of { $low } to { $high }; the ring has { $radius } on the first day. Try one sheet before you saw them all.
finding-sheet-stands-straight = This sheet stays straight, so the ring has { $corners } corners of { $angle }. Chicks pack into corners sharper than about 120°: round them with card.
finding-ratio-meaning-not-told = 1:{ $parts } can mean 1 cup in { $parts } cups of water ({ $water } in a tank) or 1 cup made up to { $parts } cups ({ $total }). They differ by { $percent }. The first is taken; look at the label.
finding-ceiling-without-ceiling = The house has no ceiling, yet a flat one is counted in the mix because you ticked it. Tick the underside of the roof and the gables instead.
finding-stronger-than-label = What was poured is 1:{ $ratio }, { $times } times the label. More does not clean better: it costs more, burns lungs, eyes and skin, corrodes feeders, and harms chicks on floors that are not yet dry. Next tank: the label’s dose.
way-out-extra-cost = Poured like this into every tank it wastes { $cost }.
finding-weaker-than-label = { $poured } is { $times } times the label’s dose: too weak to count as disinfected. Treat again at the label’s dose.
finding-earth-floor = An earth floor cannot be disinfected like concrete, and is still counted in the mix because you ticked the floor. Scrape off 2 to 5 cm, lime it (gloves, eyes) and bring new soil.
finding-husk-is-eaten = Day-old chicks eat rice husk. Lay paper over it for days 0 to 3, but no paper and no husk within 1 m of a charcoal pot or flame.
