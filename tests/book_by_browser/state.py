"""What two books say, without what makes them two books."""

import json
import re

from farm import day_of

UUID = re.compile(r"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}")
# Which device wrote when, in which order, for whom, and what of other devices it had seen by then.
OF_ITS_OWN = ("id", "farm", "device", "sequence", "previous", "clock", "person", "seen", "supersedes")


def walks(farm, ages):
    """The walk of some days, ids left out."""
    return {age: UUID.sub("id", farm.run("walk", "--on", day_of(age), "--json").stdout) for age in ages}


def entries(farm):
    """Every entry of the book, as one text each: what it says, and what that stands in place of."""
    all_by_id = {}
    for line in farm.run("export").stdout.splitlines():
        entry = json.loads(line)
        all_by_id[entry["id"]] = entry

    def text(entry):
        said = {key: value for key, value in entry.items() if key not in OF_ITS_OWN}
        # The seed of a plan's futures is made of the batch's id.
        said.get("body", {}).pop("seed", None)
        before = sorted(text(all_by_id[id]) for id in entry.get("supersedes", []))
        return json.dumps(strip(said) | ({"before": before} if before else {}), sort_keys=True)

    return sorted(text(entry) for entry in all_by_id.values())


def strip(said):
    return json.loads(UUID.sub("id", json.dumps(said)))


def differences(one, other):
    """What only one of two sorted lists has, a line each."""
    left, right = list(one), list(other)
    for text in one:
        if text in right:
            right.remove(text)
            left.remove(text)
    return [f"only by the pages: {text}" for text in left] + [f"only by command: {text}" for text in right]
