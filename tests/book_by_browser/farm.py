"""The invented farm's clock, and the program run by it."""

import datetime
import os
import socket
import subprocess
import time
import tomllib
from pathlib import Path

import batch

ROOT = Path(__file__).resolve().parents[2]
PLAN = ROOT / "demo" / "mango-ridge.toml"
# The hour at which the day is written down.
EVENING = 17


def day_of(age):
    """The date of a day of age."""
    return (datetime.date.fromisoformat(batch.FIRST_DAY) + datetime.timedelta(age)).isoformat()


def plan_answers():
    """The answers of the plan as typed, by key."""
    sections = tomllib.loads(PLAN.read_text(), parse_float=str)
    return {f"{section}.{key}": value for section, keys in sections.items() for key, value in keys.items()}


class Farm:
    """A book in a folder of its own, where it is whatever day the trial says."""

    def __init__(self, program, folder):
        folder.mkdir()
        self.program, self.book, self.clock = str(program), folder / "farm.book", folder / "clock"
        self.server = None
        self.turn_to(-30)

    def turn_to(self, age):
        """Makes it the evening of a day; from there the clock goes on by itself."""
        self.age = age
        new = self.clock.with_suffix(".new")
        new.write_text(f"@{self.now():%Y-%m-%d %H:%M:%S}\n")
        new.replace(self.clock)

    def now(self):
        """The evening, in UTC."""
        return datetime.datetime.fromisoformat(f"{day_of(self.age)}T{EVENING:02}:00:00+00:00")

    def environment(self):
        library = next(Path("/usr/lib").glob("*/faketime/libfaketime.so.1"), None)
        if library is None:
            raise SystemExit("libfaketime is missing: apt-get install faketime")
        own = {"LD_PRELOAD": str(library), "FAKETIME_TIMESTAMP_FILE": str(self.clock), "FAKETIME_NO_CACHE": "1"}
        return os.environ | own | {"DONT_FAKE_MONOTONIC": "1", "TZ": "UTC"}

    def run(self, *words, check=True):
        """One command in this farm's book; what it printed."""
        command = [self.program, *words, "--book", str(self.book)]
        done = subprocess.run(command, env=self.environment(), capture_output=True, text=True)
        if check and done.returncode != 0:
            raise AssertionError(f"exit {done.returncode}: {' '.join(words)}\n{done.stderr}")
        return done

    def serve(self):
        """Serves the book; the address of its pages."""
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            port = free.getsockname()[1]
        command = [self.program, "serve", "--listen", f"127.0.0.1:{port}", "--book", str(self.book)]
        self.log = open(self.book.with_suffix(".log"), "w")
        self.server = subprocess.Popen(command, env=self.environment(), stdout=self.log, stderr=self.log)
        for _ in range(100):
            with socket.socket() as asked:
                if asked.connect_ex(("127.0.0.1", port)) == 0:
                    return f"http://127.0.0.1:{port}"
            time.sleep(0.1)
        raise AssertionError("the pages are not served")

    def close(self):
        if self.server:
            self.server.terminate()
            self.server.wait(20)
            self.log.close()
