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
kept-shut = The book’s machine does not know this phone any more. What you wrote is kept; join the phone again on its page “Phones”.
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

page-phones = Phones
phones-about = A phone on the farm’s own network can open the book, write in it without signal, and send what waits when it is back.
phones-not-served = Phones are not served yet. Start the book with the address that this machine has on the farm’s network:
phones-example = broodwright serve --network 192.168.1.20:8443
phones-step-net = Bring the phone into the same network as this machine.
phones-step-scan = Read this with the phone’s camera. It holds for half an hour, and for one phone.
phones-code = A code to read with a camera. It leads to the address below.
phones-step-warning = The phone warns: it does not know this machine yet. Go on; that is what the next step mends.
phones-step-install = Load the certificate from that page and install it.
phones-where-android = Android: Settings, Security, Encryption and credentials, Install a certificate, CA certificate.
phones-where-ios = iPhone: Settings, Profile downloaded, Install; then General, About, Certificate Trust Settings, switch it on.
phones-fingerprint = The phone shows the same letters and digits under SHA-256. If they differ, do not install it: somebody is in between.
phones-step-join = Come back to the page and press “Join this phone”.
phones-means = What installing it means
phones-means-names = The phone will believe that whoever shows this certificate is { $names }. It is good for nothing else: a page of any other name that was signed with it is refused.
phones-means-key = The key that signed it was destroyed at once. Nobody can sign with it again, neither we nor a thief of this machine. That is also why there is a new one when the address or the name changes, and after two years.
phones-means-away = To be rid of it: where it was installed, take “Broodwright” off the list.
phones-certificate = The certificate
phones-joined = Phones that are joined
phones-joined-on = Joined on { $day } at { $time }
phones-forget = Forget it
phones-authority = Broodwright, { $names }
page-join = Join this phone
join-about = This phone is about to be joined to the farm’s book. Whoever holds it may then read the book and write in it.
join-certificate = Load the certificate. Without it the phone cannot open a page without signal.
join-fingerprint = The same letters and digits stand on the page “Phones” of the book’s machine. If they differ, do not install it.
join-install = Install it.
join-then = Then press this:
join-this-phone = Join this phone
trouble-not-joined = This phone is not joined to the book
    .next = Open “Phones” on the book’s own machine, and read the code there with this phone’s camera.
trouble-not-invited = This code holds no more
    .next = Each code is for one phone and for half an hour. Look at “Phones” on the book’s own machine again.
listen-not-near = { $address } is no address of a network of your own. Take the one that this machine has on the farm’s network, such as 192.168.1.20:8443.
listen-certificate = The certificate { $why }.
serve-phones = Phones: open http://{ $address }/phones on this machine to join one. They come to { $origin }.
serve-certificate-made = A certificate was made for { $names }, in { $folder }. Phones that had an earlier one need the new one.
serve-network-unusable = “{ $typed }” is no address of this machine on the farm’s network. Write for example 192.168.1.20:8443.
serve-certificate-unreadable = { $file } cannot be read or written: { $why }
serve-certificate-failed = No certificate could be made for { $names }: { $why }
serve-certificate-where = With --database, give the certificate too: --certificate FILE --key FILE.
