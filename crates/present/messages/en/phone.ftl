# What waits on a phone, and how a phone is joined to the book.

queue-unreadable = This program does not know all of it. Load the page again and write it once more.
queue-no-such-batch = The book has no such batch.
queue-clock-ahead = This phone’s clock is about { $count ->
    [one] an hour
   *[other] { $hours } hours
} ahead. Set it, and look at which day each thing was written for.
queue-clock-behind = This phone’s clock is about { $count ->
    [one] an hour
   *[other] { $hours } hours
} behind. Set it, and look at which day each thing was written for.

page-waiting = What waits on this phone
waiting-about = What you write without signal is kept on this phone first. It goes into the book by itself, once and in the order you wrote it.
waiting-no-script = JavaScript is off in this browser: nothing can wait here. Each form is sent as you press its button, and needs signal.
page-no-signal = No signal
no-signal-about = The book cannot be reached just now, and this page is not kept on the phone. What you have written is safe: it waits here until there is signal.
no-signal-kept = Pages that open without signal

kept-the-day = The day
kept-waiting = { $n } waiting
kept-to-look = { $n } to look at
kept-goes-up = Kept on this phone, not in the book yet. It goes up by itself when there is signal.
kept-here = No signal. What you wrote is kept on this phone.
kept-full = This phone’s storage is full. What you wrote stands in this open page alone: leave it open until there is signal, or write it on paper.
kept-only-open = Some of it could not be kept on the phone and stands in this open page alone. Do not close the page.
kept-insecure = This page came without a certificate, so it cannot be opened again without signal. Leave it open until all is sent. The page “Phones” of the book’s machine tells how to install the certificate.
kept-sending = Sending …
kept-trouble = The book’s machine answered, but could not write. It is tried again every minute; look whether its disk is full.
kept-clock = This phone’s clock is wrong
kept-none = Nothing waits on this phone.
kept-doubted = Not written yet: is it so?
kept-refused = Not written: something does not hold.
kept-asked = Written. Somebody else wrote this too: which one counts?
kept-look = Look at it
kept-take-away = Throw it away
kept-take-away-sure = Sure? It is written nowhere else
kept-other-day = This page was made for { $at }. By this phone’s clock it is { $by }. Which day do you write about?
kept-other-day-take = About { $by }
kept-other-day-stay = About { $at }
