## Pages.

app-name = Broodwright
skip-to-content = Skip to the content
page-today = Today
page-sums = Work it out
page-home-intro = What do you want to know?
nav-label = Pages
page-home = What do you want to know?
page-title = { $page } · Broodwright
on-this-page = On this page
to-the-start = To the start
version = Broodwright { $version }
demo-banner = An invented farm, to try things out. Nothing here is true.

home-intro = Plan a batch before the chicks are paid for: whether they fit, what to build, what to mix, what to buy.
home-no-plans = There is no plan yet.
new-plan = New plan
plan-without-name = Batch without a name
plan-holds-with-money = Holds as it is told, with { $short } ready by { $day }.
plan-holds = Holds as it is told.
plan-does-not-hold = Does not hold as it is told.
plan-unfinished = Not told to the end yet.
plan-is-adopted = Adopted.

plan-intro = Tell what you know and leave out the rest. “not known” is an answer too. Save as often as you like.
your-answers = Your answers
change-the-answers = Change the answers
answers-note = Saving keeps all sections. Numbers can carry their unit: 59 ft. A comma or a point is the same.
save = Save
saved-here = Saved on this machine.
section-answered = { $count ->
    [0] nothing said yet
    [one] { $n } of { $all } answered
   *[other] { $n } of { $all } answered
}
section-faults = { $count ->
    [one] { $n } does not hold
   *[other] { $n } do not hold
}

house-is-shared = The house is kept in the book. What you change here counts for every plan that stands in it; for another building choose “Another house” above.
which-house = Which house?
house-without-name = House without a name
another-house = Another house, to be described
take-this-house = Take this house

adopt = Adopt this plan
adopt-again = Adopt it as it is now
adopt-what = Adopting writes the plan into the book. What happens later is compared with it.
adopted-on = Adopted on { $day }
changed-since-adopted = It has changed since it was adopted.
since-adopted = What is otherwise
since-adopted-what = What
since-adopted-then = When adopted
since-adopted-now = Now
since-adopted-not-said = not said
since-adopted-no-figure = None of its figures moved by it.
since-adopted-rules = The program works some things out otherwise than it did then.
since-adopted-closed = This batch is closed. What was meant stays in the book as it was adopted.

kind-farm = Farm
kind-settings = How it is shown
kind-prices = Prices
kind-house = House
kind-equipment = Equipment
kind-plan-adopted = Adopted plan
conflict-title = { $what }: written twice. Which one counts?
conflict-why = Two devices changed this without seeing each other. Until you say, the later one counts. Nothing is lost: the other stays in the history.
conflict-written = Written on { $day } at { $time }
conflict-withdrawn = Taken back.
conflict-answer = { $field }: { $value }
conflict-settle = This one counts

to-print = To print
print-plan = The whole plan
print-cutting = Guard cutting sheet
print-mixing = Sprayer mixing card
print-workings = How each figure is worked out
print-a4 = { $sheet }, A4
print-us-letter = US Letter
plan-as-data = The plan as data (JSON)

sums-intro = Quick sums that need no plan: birds on a floor, a tank of mix, feed and water, how even the birds are, what a batch earned.
all-sums = All quick sums
work-it-out = Work it out

trouble-not-found = There is no such page
    .next = It may have been mistyped, or it belongs to another farm.
trouble-wrong-method = This page does not work that way
    .next = Go to the start and find it from there.
trouble-may-only-look = You may look, but not write
    .next = The owner of the farm can change that.
trouble-wrong-host = Not under this name
    .next = These pages are served to this machine alone. Open them as 127.0.0.1 or localhost.
trouble-foreign-form = That form was not ours
    .next = Another page tried to send something here. Nothing was written. If it was you, open the form here and send it again.
trouble-too-large = That is more than a form can hold
    .next = Nothing was written. Go back and shorten the answers.
trouble-unreadable = That form could not be read
    .next = Nothing was written. Go back, load the page again, and send it once more.
trouble-book = The book could not be read or written
    .next = What was saved before is still there. Try again; if it stays so, check the book and its disk.
trouble-disk-full = The disk is full
    .next = This was not saved. Make room on the disk and send it again.
trouble-busy = Another program holds the book
    .next = This was not saved. Wait a moment and send it again.
trouble-broken = Something broke, and it is our fault
    .next = What was saved before is still there. Go back and try again.

listen-refused = { $address } can be reached from other machines. There are no accounts yet, so only this machine may be served. Listen on 127.0.0.1.
listen-taken = Cannot listen on { $address }: { $why }. Perhaps it is being served already; else take another port.
listen-failed = Serving came to an end: { $why }.
