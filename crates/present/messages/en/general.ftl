## Numbers, units, days, money.

unit-one = { $n }
unit-m = { $n } m
unit-cm = { $n } cm
unit-mm = { $n } mm
unit-ft = { $n } ft
unit-in = { $n } in
unit-m2 = { $n } m²
unit-cm2 = { $n } cm²
unit-ft2 = { $n } ft²
unit-m3 = { $n } m³
unit-ft3 = { $n } ft³
unit-l = { $n } L
unit-ml = { $n } mL
unit-us-gal = { $n } US gal
unit-us-fl-oz = { $n } US fl oz
unit-kg = { $n } kg
unit-g = { $n } g
unit-lb = { $n } lb
unit-c = { $n } °C
unit-f = { $n } °F
unit-kg-m2 = { $n } kg/m²
unit-lb-ft2 = { $n } lb/ft²
unit-ml-m2 = { $n } mL/m²
unit-us-gal-100-ft2 = { $n } US gal/100 ft²
unit-1-m2 = { $n } chicks a m²
unit-1-ft2 = { $n } chicks a ft²
unit-cm2-bird = { $n } cm² a bird
unit-ml-l = { $n } mL a litre
unit-kg-m3 = { $n } kg/m³
unit-birds = { $count ->
    [one] { $n } bird
   *[other] { $n } birds
}
unit-chicks = { $count ->
    [one] { $n } chick
   *[other] { $n } chicks
}
unit-pieces = { $n }
unit-percent = { $n } %
unit-deg = { $n }°
unit-d = { $count ->
    [one] { $n } day
   *[other] { $n } days
}
unit-h = { $n } h
unit-min = { $n } min

unit-label-one = {""}
unit-label-m = m
unit-label-cm = cm
unit-label-mm = mm
unit-label-ft = ft
unit-label-in = in
unit-label-m2 = m²
unit-label-cm2 = cm²
unit-label-ft2 = ft²
unit-label-m3 = m³
unit-label-ft3 = ft³
unit-label-l = L
unit-label-ml = mL
unit-label-us-gal = US gal
unit-label-us-fl-oz = US fl oz
unit-label-kg = kg
unit-label-g = g
unit-label-lb = lb
unit-label-c = °C
unit-label-f = °F
unit-label-kg-m2 = kg/m²
unit-label-lb-ft2 = lb/ft²
unit-label-ml-m2 = mL/m²
unit-label-us-gal-100-ft2 = US gal/100 ft²
unit-label-1-m2 = chicks a m²
unit-label-1-ft2 = chicks a ft²
unit-label-cm2-bird = cm² a bird
unit-label-ml-l = mL a litre
unit-label-kg-m3 = kg/m³
unit-label-birds = birds
unit-label-chicks = chicks
unit-label-pieces = {""}
unit-label-percent = %
unit-label-deg = °
unit-label-d = days
unit-label-h = h
unit-label-min = min
unit-label-money = money
unit-label-date = date

money-with-code = { $n } { $code }
money-hidden = money hidden
civil-day = { $day } { $month } { $year }
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December
no-limit = no limit
utc-offset = UTC{ $hours }
zone-from-longitude = assumed from longitude, to the hour; no figure rests on it

## Likely ranges.

band-confidence-95 = likely range { $low } to { $high } (19 samples in 20)
band-prediction-50 = likely range { $low } to { $high } (every second time)
band-prediction-90 = likely range { $low } to { $high } (9 times in 10)
band-as-good = as good from { $low } to { $high }
band-range-of-sources = sources and houses differ: { $low } to { $high }

## How far a number can be trusted.

status-exact = mathematics
status-published = published
status-published-second-hand = published, read in a copy
status-derived = our arithmetic on a published or printed rule
status-interpolated = our curve between published points
status-modelled = our estimate
status-from-memory = from memory, not looked up again
status-common-practice = common practice, no source
status-our-judgement = our judgement
status-assumed = assumed
status-told = as you said

## Workings.

how-worked-out = How is this worked out?
on-a-blackboard = In round figures:
equals = { $left } = { $right }
about-equals = { $left } ≈ { $right }
working-inputs = What goes in
origin-typed = as you said
origin-usual = not said, so the usual value ({ $status })
origin-figure = itself worked out
origin-if-chosen = if you ticked it, else 0
origin-table = from a table
origin-chosen-label = 1 if “{ $choice }” is treated, else 0
origin-chosen = as you ticked
source-and-status = Source: { $source } ({ $status }).
formula-ceil = round up
formula-floor = round down
formula-round = round
formula-max = the larger of
formula-min = the smaller of
formula-tan = tan
formula-sin = sin
formula-growth-fast = fast-line weight in g on day
formula-growth-slow = slow-line weight in g on day
formula-growth-open-house = open-house weight in g on day
table-density-open-sided = Advised limit for open-sided houses
table-density-open-peak-heat = Advised limit for open-sided houses in the hottest season
table-brooder-chicks-charcoal-pot = Chicks one charcoal pot keeps warm, lowest figure met
table-brooder-chicks-gas-hover = Chicks one small gas brooder keeps warm, lowest figure met
table-litter-density-wood-shavings = Weight of a cubic metre of fresh shavings
table-litter-density-rice-husk = Weight of a cubic metre of fresh husk

## Tables and drawings.

column-symbol = Symbol
column-what = What
column-value = Value
column-taken = Taken
column-why = Why
columns-worked-out-at = How the columns are worked out:
drawing-in-words = The drawing in words and numbers

## Pages of the manual that the program makes itself.

manual-plan-file = The keys of a plan file
manual-plan-file-intro = Made by the program from its table of fields. Every key may be given in another unit of its kind (`length_ft`, `overlap_in`, `limit_lb_ft2`, `sprayer_us_gal`), numbers may carry a unit in quotes (`"7 ft 6 in"`), and `"not known"` is an answer: what hangs on it is left out.
manual-key = Key
manual-meaning = Meaning
manual-range = Can be
manual-left-out = Left out
manual-needed = needed
manual-optional = may be left out
manual-usual = { $value } ({ $status })
manual-characters = text of at most { $limit } characters
manual-figures = The figures
manual-figures-intro = Made by the program from its declarations. A figure keeps its name and unit for ever. Where several formulae stand, the first that applies is taken.
