"""Pictures of the pages for the manual."""

import base64

from browser import WIDTH

TALLEST = 640


class Pictures:
    """Takes the pictures that are asked for, or none."""

    def __init__(self, browser, folder):
        self.browser, self.folder = browser, folder
        # The address of the batch, once it is known.
        self.batch = None

    def take(self, name, selector=None, height=TALLEST):
        """Takes what is shown, from an element downwards or from the top."""
        if self.folder is None:
            return
        top = 0
        if selector:
            script = "return arguments[0].getBoundingClientRect().top + window.scrollY"
            top = max(0, self.browser.driver.execute_script(script, self.browser.find(selector)) - 8)
        whole = self.browser.driver.execute_script("return document.scrollingElement.scrollHeight")
        clip = {"x": 0, "y": top, "width": WIDTH, "height": min(height, whole - top), "scale": 1}
        ask = {"format": "png", "clip": clip, "captureBeyondViewport": True}
        taken = self.browser.driver.execute_cdp_cmd("Page.captureScreenshot", ask)
        (self.folder / f"page-{name}.png").write_bytes(base64.b64decode(taken["data"]))

    def open_and_take(self, name, address, selector=None, height=TALLEST):
        if self.folder is not None:
            self.browser.open(address)
            self.take(name, selector, height)

    def of_evening(self, age):
        """The pictures of some evenings, when what is to be seen has been written."""
        wanted = {
            3: [("brooding", "/brooding", None)],
            21: [("health", "/health", None)],
            25: [("growing", "/growing", None), ("store", "/store", None)],
            26: [("today", "", None), ("boxes", "", "#write")],
        }
        for name, page, selector in wanted.get(age, []):
            self.open_and_take(name, self.batch + page, selector)
