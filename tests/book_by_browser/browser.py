"""A browser of 360 pixels, and what hands do in it."""

import datetime

from selenium import webdriver
from selenium.webdriver.chrome.options import Options
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.action_chains import ActionChains
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.support.ui import WebDriverWait

WIDTH, HEIGHT = 360, 640
CALM = ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"]
CALM += ["--disable-background-networking", "--disable-component-update", "--hide-scrollbars", "--lang=en"]

# The boxes of a name, of which kind they are, whether something stands in them, and what they are folded away in, the
# outermost first.
BOX = """
const boxes = [...document.getElementsByName(arguments[0])];
if (!boxes.length) return null;
const folded = [];
for (let e = boxes[0]; e; e = e.parentElement) if (e.matches('details:not([open])')) folded.unshift(e.querySelector('summary'));
return [boxes, boxes[0].type, boxes[0].value !== '', folded];
"""


# A clock that is so many milliseconds ahead of the machine's.
CLOCK = """
const machine = Date;
window.Date = class extends machine {
  constructor(...given) { if (given.length) super(...given); else super(machine.now() + AHEAD); }
  static now() { return machine.now() + AHEAD; }
};
"""


class Browser:
    """A phone's browser."""

    def __init__(self, folder):
        options = Options()
        options.binary_location = "/usr/bin/chromium"
        for switch in [*CALM, f"--user-data-dir={folder / 'profile'}"]:
            options.add_argument(switch)
        screen = {"width": WIDTH, "height": HEIGHT, "pixelRatio": 1.0, "touch": True}
        options.add_experimental_option("mobileEmulation", {"deviceMetrics": screen})
        options.set_capability("goog:loggingPrefs", {"browser": "ALL"})
        self.driver = webdriver.Chrome(service=Service("/usr/bin/chromedriver"), options=options)

        self.clock = None

    def turn_clock(self, now):
        """Makes it another time on the phone, from the next page on."""
        if self.clock is not None:
            self.driver.execute_cdp_cmd("Page.removeScriptToEvaluateOnNewDocument", {"identifier": self.clock})
        ahead = (now - datetime.datetime.now(datetime.timezone.utc)).total_seconds() * 1000
        source = {"source": CLOCK.replace("AHEAD", str(round(ahead)))}
        self.clock = self.driver.execute_cdp_cmd("Page.addScriptToEvaluateOnNewDocument", source)["identifier"]

    def close(self):
        self.driver.quit()

    def open(self, address):
        self.driver.get(address)

    @property
    def address(self):
        return self.driver.current_url

    def find(self, selector):
        return self.driver.find_element(By.CSS_SELECTOR, selector)

    def all(self, selector):
        return self.driver.find_elements(By.CSS_SELECTOR, selector)

    def has(self, selector):
        return bool(self.all(selector))

    def text(self):
        return self.find("main").text

    def click(self, element):
        """Brings it into the middle, clear of the bar at the foot, and clicks it."""
        self.driver.execute_script("arguments[0].scrollIntoView({block: 'center'})", element)
        element.click()

    def click_to_go(self, element):
        """Clicks what leads to another page, and waits until that is there."""
        page = self.find("html")
        self.click(element)
        self.wait(lambda: page.id != self.find("html").id)

    def wait(self, holds):
        WebDriverWait(self.driver, 20, poll_frequency=0.03).until(lambda _: holds())

    def link(self, words):
        """The link that begins with some words."""
        links = [link for link in self.all("main a") if link.text.lower().startswith(words.lower())]
        assert links, f"no link “{words}” on {self.address}"
        return links[0]

    def fill(self, name, value):
        """Answers a question of a form by the name of its box."""
        found = self.driver.execute_script(BOX, name)
        assert found, f"no box {name} on {self.address}"
        boxes, kind, is_filled, folded = found
        for part in folded:
            self.click(part)
        box = boxes[0]
        if kind == "select-one":
            return box.find_element(By.CSS_SELECTOR, f'option[value="{value}"]').click()
        if kind in ("radio", "checkbox"):
            return self.choose(boxes, value)
        # Typing brings a box into sight and focuses it. Clicked so fast one after another, boxes would be clicked twice.
        if kind == "date":
            year, month, day = value.split("-")
            return box.send_keys(month + day + year)
        box.send_keys(*([Keys.CONTROL, "a", Keys.NULL] if is_filled else []), value)

    def choose(self, boxes, value):
        wanted = [str(one) for one in value] if isinstance(value, list) else [str(value)]
        script = "return arguments[0].filter(box => arguments[1].includes(box.value) !== box.checked)"
        for box in self.driver.execute_script(script, boxes, wanted):
            if box.get_attribute("value") in wanted or box.get_attribute("type") == "checkbox":
                self.click(box)

    def send(self, within="main"):
        """Sends a form by its one button at the foot."""
        self.click_to_go(self.find(f"{within} .save-bar button"))

    def key(self, key):
        """One key, wherever the focus is."""
        ActionChains(self.driver, duration=0).send_keys(key).perform()

    def complaints(self):
        """What the browser complained about since it was last asked."""
        said = [line["message"] for line in self.driver.get_log("browser") if line["level"] in ("SEVERE", "WARNING")]
        # A form that does not hold is answered with status 422 and the form: the browser notes that, and nothing is wrong.
        return [line for line in said if "status of 422" not in line]
