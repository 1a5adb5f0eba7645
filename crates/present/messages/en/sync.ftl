# Two books of one farm, made the same over a line.
command-sync = Make this book and one that is served elsewhere the same, both ways; cut off, run it again and it goes on
argument-sync-url = Where the other book is served, such as http://127.0.0.1:8080
example-sync =
    Examples:
      broodwright sync http://127.0.0.1:8080 --book farm.book
      broodwright sync http://127.0.0.1:8080 --book new.book
sync-done = New here: { $added } entries. New there: { $sent }.
sync-left-out = Left out: { $count } entries. They are of another farm, too large, or of no form this program knows.
sync-not-even = The books are not yet the same: somebody is writing in one of them. Run it again.
sync-device-copied = Another book writes as the same device, so this one is a copy of it. All that both wrote is kept; from here on this book writes as a device of its own.
sync-no-address = { $typed } is no address of a book. Write it like http://127.0.0.1:8080; https cannot be used yet.
sync-far = { $url } is { $address }, which is not on this machine or its own network. On the way there anybody could read and change the book.
sync-cut = { $url } does not answer: { $why }. What has arrived is kept. Run it again, and it goes on from there.
sync-no-book = What answers at { $url } does not speak as a book does. Is it broodwright serve, of a version that can sync?
sync-other-farm = The book at { $url } is of another farm than { $book }. Nothing was exchanged. To have that farm here, name a new book: --book FILE.
sync-version = The program at { $url } is of another version, which speaks otherwise. Nothing was lost. Update the older one.
sync-read-only = Whoever syncs with { $url } may only read there. Nothing was sent.
