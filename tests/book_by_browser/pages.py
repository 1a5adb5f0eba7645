"""The batch written through the pages, by clicks and keys."""

import time

import batch
from browser import Keys
from farm import day_of, plan_answers
from sight import look_at


class Pages:
    """Writes into a farm's book by its pages."""

    def __init__(self, farm, browser, pictures):
        self.farm, self.browser, self.pictures = farm, browser, pictures
        self.origin = farm.serve()
        self.batch = None
        # What a page shows that it should not, by page.
        self.jars = {}

    def adopt(self):
        """Plans the batch with the form, a section after another, and adopts it."""
        browser = self.browser
        browser.open(self.origin)
        browser.click_to_go(browser.find("form[action='/before/new'] button"))
        for key, value in plan_answers().items():
            browser.fill(key, typed(value))
        self.look("answers")
        browser.send()
        self.look("plan")
        browser.click_to_go(browser.find("form[action$='/adopt'] button"))
        self.batch = browser.address.replace("/before/", "/batch/").split("?")[0]

    def write(self, evening):
        self.farm.turn_to(evening.age)
        self.browser.turn_clock(self.farm.now())
        for step in evening.steps:
            getattr(self, type(step).__name__.lower())(step)
        self.pictures.of_evening(evening.age)

    def at(self, age):
        """The address of a day; today needs no saying."""
        return self.batch if age in (None, self.farm.age) else f"{self.batch}?on={day_of(age)}"

    def written(self, step):
        browser = self.browser
        if step.kind == "chicks-placed":
            browser.open(self.batch)
            browser.click_to_go(browser.find("main a.button"))
        else:
            browser.open(f"{self.batch}/write/{step.kind}")
        for key, value in step.answers.items():
            browser.fill(f"{day_of(self.farm.age)}.{step.kind}..{key}", value)
        self.look(step.kind)
        browser.send()
        self.confirm(step.is_doubtful)

    def confirm(self, is_doubtful):
        """What is doubtful is asked once; then it is written."""
        browser = self.browser
        assert browser.has("#doubts") == is_doubtful, browser.text()
        if is_doubtful:
            self.pictures.take("doubt", "#doubts")
            self.look("doubt")
            browser.click(browser.find("#doubts input[name=sure]"))
            browser.send()
        assert "saved=1" in browser.address, browser.text()

    def day(self, step):
        browser = self.browser
        browser.open(self.batch)
        if step.age is not None:
            browser.click_to_go(browser.find(f".unwritten a[href*='{day_of(step.age)}']"))
        self.fill_day(self.farm.age if step.age is None else step.age, step.boxes)
        if self.farm.age % 7 in (0, 4):
            self.look("day")
        browser.send()
        self.confirm(step.is_doubtful)

    def fill_day(self, age, boxes):
        for (kind, feed), answers in boxes.items():
            for key, value in answers.items():
                self.browser.fill(f"{day_of(age)}.{kind}.{feed or ''}.{key}", value)

    def ticked(self, step):
        browser = self.browser
        browser.open(self.batch)
        browser.click_to_go(browser.find(f"button[name=task][value='{step.job}']"))
        assert not browser.has(f"button[name=task][value='{step.job}']"), f"{step.job} is not ticked"

    def weighed(self, step):
        """Bird after bird by the keypad: a number, and Enter."""
        browser = self.browser
        browser.open(self.batch)
        browser.click_to_go(browser.find("a[href*='/weigh']"))
        for grams in step.grams:
            page = browser.find("html")
            for key in f"{grams}\n":
                browser.key(key)
            browser.wait(lambda: page.id != browser.find("html").id)
        self.pictures.take("weighing")
        self.look("weigh")
        browser.click_to_go(browser.find("form[method=post] button"))
        assert "saved=1" in browser.address, browser.text()

    def entry(self, kind, age):
        """Goes to the last entry of a kind about a day, from the list of that day."""
        browser = self.browser
        browser.open(self.at(age))
        browser.click_to_go(browser.find(f"main a[href*='/day/{day_of(age)}']"))
        names = {"deaths": "Deaths and culls", "note": "A note"}
        browser.click_to_go(browser.link(names[kind]))

    def putright(self, step):
        browser = self.browser
        self.entry(step.kind, step.age)
        browser.click_to_go(browser.find("main a.button"))
        for key, value in step.answers.items():
            browser.fill(f"{day_of(step.age)}.{step.kind}..{key}", value)
        browser.send()
        assert browser.has("#unexplained"), "a change of another day was written without a reason"
        browser.fill("reason", step.reason)
        self.pictures.take("reason", "#unexplained")
        self.look("reason")
        browser.send()
        assert "saved=1" in browser.address, browser.text()
        self.entry(step.kind, step.age)
        self.pictures.take("history", "h2")
        self.look("entry")

    def takenback(self, step):
        browser = self.browser
        self.entry(step.kind, step.age)
        browser.fill("reason", step.reason)
        browser.click_to_go(browser.find("details button"))

    def paperweek(self, step):
        """Types a week without a pointer: from the top of its page by Tab and digits."""
        browser = self.browser
        browser.open(f"{self.batch}/week?on={day_of(step.ages[0])}")
        self.keys = WeekByKeys(browser, step.ages)
        self.keys.type()
        self.look("week")
        self.keys.send()
        assert "saved=1" in browser.address, browser.text()
        self.pictures.open_and_take("week", f"{self.batch}/week?on={day_of(step.ages[0])}", ".week-form")

    def pasted(self, step):
        browser = self.browser
        browser.open(f"{self.batch}/paste")
        known = self.farm.run("export").stdout.count("\n")
        browser.click(browser.find("textarea"))
        browser.find("textarea").send_keys(table(step))
        browser.send()
        assert browser.has("#faults"), "the bad line is not told"
        assert self.farm.run("export").stdout.count("\n") == known, "something was written although a line is bad"
        self.look("paste")
        self.pictures.take("paste", "#faults")
        browser.click_to_go(browser.find("button[name=good-only]"))
        assert "saved=1" in browser.address, browser.text()

    def look(self, page):
        """Looks at what the browser shows."""
        found = look_at(self.browser)
        if found:
            self.jars.setdefault(page, set()).update(found)

    def look_at_all(self):
        """Every page that a link of today's page leads to; what is printed is a PDF and no page."""
        browser = self.browser
        browser.open(self.batch)
        self.look("today")
        links = {link.get_attribute("href").split("#")[0] for link in browser.all("main a, header a")}
        for address in sorted(link for link in links if "/print/" not in link):
            browser.open(address)
            assert browser.has("h1"), f"{address} is no page"
            self.look(address.replace(self.origin, ""))


def typed(value):
    """An answer of the plan file as a form takes it."""
    if isinstance(value, list):
        return [str(one) for one in value]
    return str(value)


def table(step):
    """Rows as a spreadsheet has them. Of the bad one the deaths are no number."""
    lines = ["day;dead;culled;water_l;phase;feed_kg;coldest_c;warmest_c"]
    for age in step.ages:
        filled = batch.boxes(age)
        (feed,) = [feed for kind, feed in filled if kind == "feed-given"]
        said = {key: text for answers in filled.values() for key, text in answers.items()}
        dead = "none" if age == batch.BAD_AGE else said["dead"]
        cells = [day_of(age), dead, said["culled"], said["water_l"], feed, said["feed_kg"]]
        cells += [said["coldest_c"], said["warmest_c"]]
        lines.append(";".join(cells))
    return "\n".join(lines)


class WeekByKeys:
    """A week of paper typed with Tab and digits alone."""

    # A slow typist looks at the sheet and presses four keys a second.
    KEY_S = 0.25

    def __init__(self, browser, ages):
        self.browser, self.count = browser, 0
        self.began = time.monotonic()
        # What is still to be typed, by the names of the boxes.
        self.texts = {
            f"{day_of(age)}.{kind}.{feed or ''}.{key}": text
            for age in ages
            for (kind, feed), answers in batch.boxes(age).items()
            for key, text in answers.items()
        }

    def press(self, key):
        self.browser.key(key)
        self.count += 1
        time.sleep(max(0.0, self.began + self.count * self.KEY_S - time.monotonic()))

    def focused(self):
        return self.browser.driver.switch_to.active_element

    def type(self):
        for _ in range(200):
            if not self.texts:
                break
            self.press(Keys.TAB)
            text = self.texts.pop(self.focused().get_attribute("name") or "", None)
            for digit in text or "":
                self.press(digit)
        assert not self.texts, f"Tab does not lead to {sorted(self.texts)}"

    def send(self):
        page = self.browser.find("html")
        while self.focused().tag_name != "button":
            self.press(Keys.TAB)
        self.press(Keys.ENTER)
        self.browser.wait(lambda: page.id != self.browser.find("html").id)
        self.seconds = time.monotonic() - self.began
