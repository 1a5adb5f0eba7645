## The command line.

command-about = Plan a batch of broiler chicks, record it, see what is off, sell it well, and learn for the next one.
command-plan = Work out a plan file: space, guard, heat, feed, water, light, money, and what is due when
command-sums = Quick sums: key=value … ; without a name, the list of them
command-verify = Work out the outputs of a table of check values from its inputs
command-serve = Serve the pages on this machine
command-schema = Print the JSON schema of everything this program sends
argument-plan-file = A plan file in TOML, or - for standard input
argument-sum-name = The sum
argument-sum-input = What the sum asks; without any, the list of it
argument-table = A table in CSV, or - for standard input
option-json = Print as JSON, units and names fixed
option-working = Show how each figure is worked out
option-pdf = Write sheets to print to this file
option-sheet = Which sheets; without it the booklet, shopping list, guard cutting sheet and sprayer mixing card
option-figure = The figure that a handout works through, such as guard.true_density
option-paper = Paper of the sheets
option-units = Show metres and kilograms, or feet and pounds
option-language = Language of the words: en, en-XA, ar-XB
option-demo = Open the invented farm Mango Ridge; nothing is kept
option-book = The book file; without it farm.book. Serving, importing and adopting a plan make it when it is not there
option-database = A PostgreSQL database in place of a book file
option-network = Let phones of the farm’s network in: the address this machine has there, such as 192.168.1.20:8443. Only phones that were joined on the page “Phones” are answered. A certificate is made for the address and the name, and for nothing else; the key that signed it is destroyed at once
option-name = What this machine is called on the farm’s network, besides its address
option-certificate = A certificate of your own instead, in PEM, with all that it hangs on
option-key = Its key, in PEM
example-serve =
    Examples:
      broodwright serve
      broodwright serve --network 192.168.1.20:8443 --name farm.home.arpa
      broodwright serve --network 192.168.1.20:8443 --certificate farm.pem --key farm.key
option-listen = Where to listen; only addresses of this machine
command-in-file = { $file }: { $fault }
command-cannot-read = { $file } cannot be read: { $why }. Is the name right?
command-cannot-write = The output cannot be written: { $why }
command-cannot-write-file = { $file } cannot be written: { $why }. Nothing was written.
command-cannot-print = The sheets cannot be set: { $why }
command-no-house-in-book = The book has no house of the name that the plan file gives under house.name. Give it the name the book has, or leave out --book.
option-past-book = A book whose last batch in this house stands beside what the house-door sheets expect, and whose batch the calendar’s jobs belong to, as on its page
command-no-figure = There is no figure “{ $figure }” in this plan to work through.
command-not-key-value = “{ $input }” is not key=value. Write for example tank_l=10.
command-no-sum = There is no sum “{ $name }”. There are: { $known }.
sum-range = { $low } to { $high }
sum-curve = CSV with a header, or @ and the name of its file
sum-needed = needed
sum-not-needed = may be left out
verify-not-a-table = this is no table: { $why }
verify-unknown-shape = columns { $columns } are of no known table. Known are: { $known }
verify-cell = row { $row }: { $column } is “{ $typed }”, not { $allowed }

sum-space = How many birds does a floor carry?
sum-ring = A brooder ring from sheets
sum-dilution = Mix a tank by the label
sum-litter = Litter for a floor

serve-open = Open http://{ $address } in a browser on this machine. Book: { $book }. Ctrl+C ends it.
serve-no-address = “{ $typed }” is no address to listen on. Write for example 127.0.0.1:8080.
serve-cannot-open = The book cannot be opened ({ $book }): { $why }
serve-demo-book = invented, nothing is kept
serve-database = the database
option-scenarios = Write the futures that profit and chance of a loss are counted from, as CSV
option-curve = Your own target weights and feed, as CSV: age_d, body_weight_g, cum_feed_g or daily_feed_g
command-no-scenarios = There are no futures yet: the plan needs a growth curve that reaches the last sale, the kg in a bag, the price of a chick, of a bag of each feed, and of a kg or a bird sold; and all birds must be sold.
command-money-hidden = Amounts are hidden in this plan (settings.money), and scenarios are amounts.
