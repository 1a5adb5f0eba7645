# Words on drawings of what stands on the floor.

piece-brooder = Brooder
piece-tray = Chick feeder, { $size } across
piece-brooder-of-either-kind = Brooder, of either kind
piece-box-lid = Lid of a chick box, { $size } corner to corner
piece-small-trough = Small trough, { $size } long
piece-fount = Chick drinker, { $size } across
piece-hanging-tube = Hanging feeder, { $size } across
piece-pan = Feeder pan, { $size } across
piece-bell = Bell drinker, { $size } across
piece-large-fount = Large fount, { $size } across
pieces-left = { $count ->
    [one] 1 finds no place
   *[other] { $n } find no place
}
pieces-standing = { $feeders } feeders, { $drinkers } drinkers
ring-from-day = From day { $day }: { $diameter } wide
scene-from-day = From day { $day }
floor-rings = { $day }: { $count ->
    [one] 1 ring
   *[other] { $n } rings
}, { $diameter } across
floor-rings-in-heat = { $count ->
    [0] None in the heat.
    [one] Only 1 in the heat.
   *[other] Only { $fit } in the heat.
}
floor-rings-too-many = So many do not stand on this floor.
drawing-floor-partition = Partition, { $length } from the end wall
drawing-floor-step = { $count ->
    [one] 1 ring
   *[other] { $n } rings
} { $diameter } across, each with { $brooders_count ->
    [one] a brooder in the middle
   *[other] { $brooders } brooders round the middle
}{ $outfit ->
    [yes] {""}, { $feeders } chick feeders of { $tray } and { $drinkers } chick drinkers of { $fount } by turns
   *[no] {""}
}{ $left_count ->
    [0] .
    [one] ; 1 more finds no place in it.
   *[other] ; { $left } more find no place in it.
}
step-and-what = { $day }: { $what }
step-and-ring = { $day }, { $ring }
drawing-widening = A ring from above at each step of its widening, all to one scale. { $steps } steps, from { $first } across on day 0 to { $last } across.
drawing-widening-caption = A ring as it widens, to one scale
drawing-widening-ring = { $how }, { $diameter } across
drawing-hall = { $nipples ->
    [yes] The whole floor from above, { $length } by { $width }, with { $feeders } feeders of { $feeder } in rows. Nipples hang in lines along the house and are not drawn.
   *[no] The whole floor from above, { $length } by { $width }, with { $feeders } feeders of { $feeder } and { $drinkers } drinkers of { $drinker } in rows by turns.
}
drawing-hall-caption = { $nipples ->
    [yes] Where feeders hang once the guards are out, to scale; lines of nipples are not drawn
   *[no] Where feeders and drinkers hang once the guards are out, to scale
}
drawing-feeders = Feeders drawn
drawing-drinkers = Drinkers drawn
drawing-left = Without a place
