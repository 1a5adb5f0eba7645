# Weather by the hour out of a file.

option-weather = Run the house through weather by the hour from this file: EPW, or a table with the heading time,temperature_c,humidity_pct,wind_m_s,sun_w_m2

weather-file-named = { $file }
weather-file-of = { $file } ({ $place })
weather-place = { $name }: latitude { $latitude }°, longitude { $longitude }°, { $altitude } above the sea
weather-of-no-year = Worked out hour by hour through the weather of { $file }, a year put together out of many. It has usual days and few of the worst: heaters and curtains must do for more than it asks. Hours are by the clock of the file.
weather-of-one-year = Worked out hour by hour through the weather of { $year } in { $file }. One year tells little of the next. Hours are by the clock of the file.
weather-of-years = { $count ->
    [one] Worked out hour by hour through the weather of { $year } in { $file }. Hours are by the clock of the file.
   *[other] Worked out hour by hour through { $count } years of weather in { $file }. Shown by the hour is { $year }, which takes the middlemost heat of them; the table has them all. Hours are by the clock of the file.
}
weather-table-caption = What each year of weather would ask of the house, and the hours in it that are an alert or a danger for the birds of their day
weather-column-year = Year
weather-column-peak = Most heat, { $unit }
weather-column-heat = All heat, { $unit }
weather-column-fuel = Fuel, { $unit }
weather-column-alert = Alert or worse, { $unit }
weather-column-danger = Danger or worse, { $unit }
weather-typical = usual
weather-all-years = all
weather-between = { $low }–{ $high }

weather-not-held = No year of the weather holds every day from { $first }, two days before the chicks come, to { $last }; the file goes from { $from } to { $to }. Give a file that holds these days of some year, or move the chick day.
weather-other-place = The weather is of latitude { $file }°, the farm lies at { $farm }° (south is below 0): other seasons, another sun. Give weather of a place nearby, or put farm.latitude_deg right.

weather-other-clock = The clock of the file is { $ahead } h ahead of universal time, the sun of the farm { $sun } h. Write its times by the clock of the farm; if that is what clocks there show, leave the “+02:00” or “Z” behind the times out.
weather-fault-nothing = There is no whole day of weather in it. It needs a heading and 24 rows a day, or the lines of an EPW file.
weather-fault-long-line = Line { $line } is longer than any line of weather. Is it another file?
weather-fault-too-many = Line { $line }: more than { $most } hours are not read. Cut the file to fewer years.
weather-fault-no-column = Line { $line }: the heading has no column { $column }. Columns that are read: { $known }.
weather-fault-column = Line { $line }: there is no column “{ $typed }”. Did you mean { $nearest }?
weather-fault-head = Line { $line }: this is no head of an EPW file: LOCATION with latitude, longitude, clock and altitude first, DATA PERIODS last. Get the file again.
weather-fault-rows-an-hour = Line { $line }: the file has { $rows } rows an hour; one is read. Make it hourly.
weather-fault-zone = Line { $line }: the clock { $zone } h is not that of a place at longitude { $longitude }°. East is above 0 for both; put the line right.
weather-fault-cells = Line { $line } has { $found } cells, not { $wanted }: half a line, or commas in numbers. Put the row right; write numbers with a point, or set cells apart with semicolons.
weather-fault-not-a-time = Line { $line }, column { $column }: “{ $cell }” is no time. Write the hour that begins then, as 2027-09-14 05:00.
weather-fault-no-such-day = Line { $line }, column { $column }: there is no day “{ $cell }” in the calendar. Take the row out, or put its date right.
weather-fault-not-on-the-hour = Line { $line }, column { $column }: “{ $cell }” is not on the hour. Give one row an hour, the mean of that hour.
weather-fault-not-a-number = Line { $line }, column { $column }: “{ $cell }” is no number. Write it with a point and without its unit.
weather-fault-no-reading = Line { $line }, column { $column }: “{ $cell }” stands for no reading. Fill the hour in by those beside it, or leave that column out of the file.
weather-fault-clock-changes = Line { $line }: the clock is “{ $zone }” and was “{ $before }” before. Write all rows by one clock, without summer time.
weather-fault-out-of-range = Line { $line }, column { $column }: { $value } is outside { $low } to { $high }.
weather-fault-column-unit = Column { $column }: no weather has numbers of which the greatest is { $greatest }.
weather-fault-gap = Line { $line }: { $hours ->
    [one] an hour is missing
   *[other] { $hours } hours are missing
} after { $after }. Fill them in, or give a file without the gap.
weather-fault-twice = Line { $line } tells the hour { $hour } again, after line { $first }. Keep one of the two.
weather-fault-back = Line { $line }: { $hour } comes after { $after }. Put the rows in the order of time.
weather-fault-clock = The sun is highest at about { $hour } in this file, so its clock is that of another place. Write its times by the clock of the farm.
weather-perhaps-fahrenheit = Are they degrees Fahrenheit? Then call the column temperature_f.
weather-perhaps-kelvin = Is it in kelvin? Take 273.15 off.
weather-perhaps-tenths = Is it in tenths of a degree? Divide by 10.
weather-perhaps-share = Is it a share from 0 to 1? Write percent, from 0 to 100.
weather-perhaps-thousands = Is it in kilowatts or megajoules? Watts a square metre are read: the kilowatts × 1000, the megajoules of an hour ÷ 0.0036.
weather-perhaps-joules = Is it in joules or kilojoules of an hour? Watts a square metre are read: the kilojoules ÷ 3.6.
weather-perhaps-kilometres-per-hour = Is it in kilometres an hour? Metres a second are read: divide by 3.6.
