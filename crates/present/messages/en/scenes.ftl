# Words on drawings of what stands on the floor.

piece-brooder = Brooder
piece-tray = Chick feeder, { $size } across
piece-fount = Chick drinker, { $size } across
piece-feeder = Hanging feeder, { $size } across
piece-bell = Bell drinker, { $size } across
pieces-left = { $count ->
    [one] 1 finds no place
   *[other] { $n } find no place
}
pieces-standing = { $feeders } feeders, { $drinkers } drinkers
scene-from-day = From day { $day }
drawing-floor-outfit = The floor from above, { $length } by { $width }, with { $rings } rings of { $diameter }, a brooder in the middle of each, and round it { $feeders } chick feeders of { $tray } and { $drinkers } chick drinkers of { $fount } by turns.
drawing-widening = A ring from above at each step of its widening, all to one scale. { $steps } steps, from { $first } across on day 0 to { $last } across.
drawing-widening-caption = A ring as it widens, to one scale
drawing-widening-ring = { $how }, { $diameter } across
drawing-hall = The whole floor from above, { $length } by { $width }, with { $feeders } hanging feeders of { $feeder } and { $drinkers } bell drinkers of { $bell } in rows by turns.
drawing-hall-caption = Where feeders and drinkers hang once the guards are out, to scale
drawing-feeders = Feeders drawn
drawing-drinkers = Drinkers drawn
drawing-left = Without a place
