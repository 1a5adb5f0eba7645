# The air they breathe.

page-air = The air they breathe
command-air = The air of a planned house by the hour: heat, damp, stale air, curtain and heaters
option-air-csv = Write every hour to this file, as comma-separated values
example-air = Example: broodwright air plan.toml --weather station.csv --csv hours.csv
command-no-air = The air cannot be worked out: the plan does not tell “{ $field }” ({ $key }). Add it to the file.

air-waiting = What heaters and curtains must do hour by hour is told once you say: { $field }
air-fault = { $field } is { $value }, not { $low } to { $high }
air-heaters = What heaters must give
air-lead-label = Heaters must give, in the coldest hour
air-lead-enough = Those you have can.
air-lead-short = Those you have lack { $short } then. Heat a smaller part, close it better, or add a heater.
air-lead-stale = But too little air comes in: see below before anything else.
air-stale = Birds and people cannot breathe here
air-stale-1 = Stale air (carbon dioxide) would reach { $ppm } in the worst hour; 3000 ppm is the limit. What leaks in and the opening together let in too little.
air-stale-2 = Make an opening that can be let down on both long sides, take fewer birds, and light no open fire in this house.
air-gas = The gas nobody smells (carbon monoxide) would even out at up to { $ppm } in the house. People’s guide for eight hours is 9 ppm. It is a rough warning and no target: there is no amount to stay in.
air-which-day = Worked out hour by hour for days that have both the coldest night and the hottest afternoon of your plan: what heaters and curtains must be able to do, not what every day will be. Times are by the sun: it is highest at 12.
air-with-fire = In that hour { $air } of fresh air go through, so that what chicks and fire give off stays under 3000 parts in a million of stale air (carbon dioxide), as the law asks of large houses. It does not make charcoal gas harmless.
air-first-day = The first day, { $day }
air-last-day = The day of sale, { $day }
air-inside = inside
air-outside = outside
air-wanted = wanted
air-axis = Air
air-axis-hours = Hour of the day
air-caption = Air inside, outside and as wanted on { $day }
air-drawn = On { $day } it is { $low } to { $high } inside while it is { $outside_low } to { $outside_high } outside.
air-table-caption = Through { $day }: how warm and damp, how far each long side stands open, what heaters give, and what the air is let in for
air-column-hour = Hour
air-column-inside = In, { $unit }
air-column-humidity = Damp, { $unit }
air-column-opening = Open, { $unit }
air-column-heaters = Heat, { $unit }
air-column-binding = For
air-binding-minimum = leaks do
air-binding-moisture = damp
air-binding-carbon-dioxide = breath
air-binding-heat = heat
air-binding-wind = all open
air-not-in-it = Not in it: birds that crowd together, curtains that nobody moves at night. Watch the birds: their bodies feel what no sum does.

figure-air-heat-short = Heat that your heaters lack then
figure-air-hot-hours = Hours of the day of sale that are hot or worse for them
procedure-hours-of-air = The house is followed hour by hour. Birds, heaters, sun on the roof and warm litter bring heat; walls, curtains, roof, fresh air and the water that litter gives up take it. As much air goes through as damp, stale air or heat asks for, by wind and warm air that rises. The range is from a tight house (walls a fifth better, half the leaks) to a leaky one (a fifth worse, twice the leaks).
