## The pages of a plan: what they say in short, and the ways between them.

in-short = In short
summary-problems = Does not hold
summary-looks = Look again
summary-looks-more = Look again: { $count } things
how-columns-worked-out = How are the columns worked out?
back-to-plan = Back to the plan
working-answer = The answer
working-of-another-day = On another day of age
working-show-day = Show that day
page-answers = Your answers
answers-on-page = The boxes below are in sections that fold away. Nothing has to be filled in; “not known” is an answer too.
more-if-known = More, if you know it
new-plan-in = In which house?
sums-before = Before the chicks
sums-growing = While they grow
sums-selling = When they are sold
fill-example = Fill the boxes with an example
example-note = These numbers are invented, to show how it goes. Put your own in their place.
start-empty = Empty boxes
house-keeps-answers = What you typed about this house stays with it. The chicks, prices and all else move along.
answer-not-known = not known
store-by-day = The store room day by day
