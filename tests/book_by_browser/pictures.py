"""Pictures of the pages for the manual."""

import base64


class Pictures:
    """Takes the pictures that are asked for, or none."""

    def __init__(self, browser, folder):
        self.browser, self.folder = browser, folder
        # The address of the batch, once it is known.
        self.batch = None

    def take(self, name, selector=None):
        """Takes what the screen shows: the top of the page, or from an element downwards."""
        if self.folder is None:
            return
        top = "arguments[0] ? arguments[0].getBoundingClientRect().top + window.scrollY - 8 : 0"
        element = self.browser.find(selector) if selector else None
        self.browser.driver.execute_script(f"window.scrollTo(0, {top})", element)
        taken = self.browser.driver.execute_cdp_cmd("Page.captureScreenshot", {"format": "png"})
        (self.folder / f"page-{name}.png").write_bytes(base64.b64decode(taken["data"]))

    def open_and_take(self, name, address, selector=None):
        if self.folder is not None:
            self.browser.open(address)
            self.take(name, selector)

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
