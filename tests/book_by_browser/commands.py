"""The batch written by command."""

import json

import batch
from farm import PLAN, day_of


class Commands:
    """Writes into a farm's book by `record`."""

    def __init__(self, farm, folder):
        self.farm, self.folder = farm, folder
        # The last entry of a kind about a day, by which it is put right or taken back.
        self.last = {}

    def adopt(self):
        self.farm.run("record", "plan", str(PLAN))

    def write(self, evening):
        self.farm.turn_to(evening.age)
        for step in evening.steps:
            getattr(self, type(step).__name__.lower())(step)

    def record(self, kind, answers, age=None, *options):
        about = self.farm.age if age is None else age
        words = [f"{key}={text}" for key, text in answers.items()]
        said = self.farm.run("record", kind, "--day", day_of(about), "--json", *options, *words)
        for one in json.loads(said.stdout)["written"]:
            self.last[one["kind"], one["day"]] = one["entry"]

    def written(self, step):
        self.asked(step.is_doubtful, step.kind, step.answers)

    def asked(self, is_doubtful, kind, answers, age=None):
        """What is doubtful is first refused with a question."""
        if is_doubtful:
            words = [f"{key}={text}" for key, text in answers.items()]
            refused = self.farm.run("record", kind, "--day", day_of(self.farm.age), *words, check=False)
            assert refused.returncode == 2 and "--sure" in refused.stderr, refused
        self.record(kind, answers, age, *(["--sure"] if is_doubtful else []))

    def day(self, step):
        for (kind, feed), answers in step.boxes.items():
            part = {"phase": feed} if feed else {}
            self.asked(step.is_doubtful and kind == "deaths", kind, part | answers, step.age)

    def ticked(self, step):
        self.record("task-done", {"task": step.job})

    def weighed(self, step):
        self.record("weighing", {"weights_g": " ".join(map(str, step.grams))})

    def putright(self, step):
        entry = self.last[step.kind, day_of(step.age)]
        words = [f"{key}={text}" for key, text in step.answers.items()]
        refused = self.farm.run("record", "--correct", entry, *words, check=False)
        assert refused.returncode == 2, "a change without a reason was written"
        self.farm.run("record", "--correct", entry, "--reason", step.reason, *words)

    def takenback(self, step):
        entry = self.last[step.kind, day_of(step.age)]
        self.farm.run("record", "--withdraw", entry, "--reason", step.reason)

    def paperweek(self, step):
        self.rows(step.ages, "week.jsonl")

    def pasted(self, step):
        self.rows([age for age in step.ages if age != batch.BAD_AGE], "table.jsonl")

    def rows(self, ages, name):
        rows = []
        for age in ages:
            for (kind, feed), answers in batch.boxes(age).items():
                part = {"phase": feed} if feed else {}
                rows.append(json.dumps({"kind": kind, "day": day_of(age)} | part | answers))
        (self.folder / name).write_text("\n".join(rows) + "\n")
        self.farm.run("record", "--from", str(self.folder / name))
