"""The invented batch of the trial: every number in it is ours. Both ways of writing take their entries from here.

The plan is demo/mango-ridge.toml: 1600 chicks on 14 September 2027. The numbers of its days rise along straight lines, so
that a slip of the trial stands out; they lie near what the plan expects, so that the book asks about nothing by chance.
"""

from dataclasses import dataclass, field

FIRST_DAY = "2027-09-14"
LAST_AGE = 42


@dataclass
class Written:
    """One entry by its own page."""

    kind: str
    answers: dict
    # What only the book finds unlikely, and somebody says it is so.
    is_doubtful: bool = False


@dataclass
class Day:
    """The boxes of a day's page. `boxes` by kind; of feed by kind and feed."""

    boxes: dict
    # The day they are about; without it the day on which they are written.
    age: int | None = None
    is_doubtful: bool = False


@dataclass
class Ticked:
    """A job of the day ticked off."""

    job: str


@dataclass
class Weighed:
    """Birds weighed one by one, by keypad."""

    grams: list


@dataclass
class PutRight:
    """The last entry of a kind about a day, put right."""

    kind: str
    age: int
    answers: dict
    reason: str


@dataclass
class TakenBack:
    """The last entry of a kind about a day, taken back."""

    kind: str
    age: int
    reason: str


@dataclass
class PaperWeek:
    """A week of paper, typed in afterwards."""

    ages: range


@dataclass
class Pasted:
    """Days of a table; the bad line is left out when the good ones are written."""

    ages: range
    bad: str


@dataclass
class Evening:
    """What is written on a day."""

    age: int
    steps: list = field(default_factory=list)


def feeds(age):
    """Kilograms by feed: what is eaten, the two feeds mixed for three days at a change."""
    eaten = round(6.5 * age + 0.5, 1)
    for first, old, new in [(11, "starter", "grower"), (25, "grower", "finisher")]:
        if first <= age < first + 3:
            part = round(eaten * (age - first + 1) / 4, 1)
            return {old: str(round(eaten - part, 1)), new: str(part)}
    name = "starter" if age < 11 else "grower" if age < 25 else "finisher"
    return {name: str(eaten)}


def deaths(age):
    """Found dead, and culled."""
    dead = 4 - age // 2 if age < 7 else age % 3
    return {"dead": str(dead), "culled": "1" if age in (2, 3, 16) else "0"}


def air(age):
    """The coldest and the warmest in the house."""
    coldest = max(29 - age * 0.4, 18)
    return {"coldest_c": f"{coldest:.1f}", "warmest_c": f"{coldest + 4.5:.1f}"}


def boxes(age):
    """What is written of a day."""
    by_kind = {("deaths", None): deaths(age)}
    if age > 0:
        by_kind |= {("feed-given", feed): {"feed_kg": kg} for feed, kg in feeds(age).items()}
        by_kind[("water", None)] = {"water_l": str(15 * age + 10)}
    by_kind[("house-air", None)] = air(age)
    return by_kind


def look(age):
    """The look round the house."""
    spread = {0: "under-the-heat", 19: "panting"}.get(age, "even")
    return {
        ("look", None): {
            "spread": spread,
            "smell_entering": "slight" if age > 20 else "none",
            "handful": "falls-apart",
            "sound": "content",
        }
    }


def weights(age, birds):
    """Birds around the weight that the trial gives them, in steps of the scale of 10 g."""
    middle = {7: 135, 14: 320, 21: 625, 28: 1030, 35: 1500, 41: 1930}[age]
    step = 5 if age < 14 else 10
    return [middle + step * ((bird * 7) % 11 - 5) * (1 if age < 21 else 3) for bird in range(birds)]


BEFORE = [
    Evening(
        -2,
        [
            Ticked("foot-bath/0"),
            Written(
                "feed-delivered",
                {
                    "phase": "starter",
                    "bags": "10",
                    "bag_kg": "50",
                    "price_each": "612",
                    "milled": "2027-09-02",
                    "seller": "Hill Mill",
                },
            ),
        ],
    ),
]

# What is written beside the boxes of the day.
BESIDE = {
    0: [
        Ticked("boxes-counted/0"),
        Written("crop-fill", {"hours_h": "8", "felt": "40", "full": "37"}),
        Written("chick-check", {"hour_h": "20", "spread": "under-the-heat", "vent_c": "40.1", "at_chicks_c": "30.5"}),
        Written("visitor", {"name": "Feed lorry", "from": "Hill Mill", "boots": "yes", "other_birds": "no"}),
    ],
    1: [
        Ticked("crops-day/0"),
        Written(
            "vaccine-programme",
            {
                "arrival_day": "0",
                "lines": "Newcastle; 7; drinking-water; 1000\nGumboro; 14; drinking-water; 1000",
                "from": "The veterinarian",
            },
        ),
    ],
    3: [Ticked("rings-widened/0"), PutRight("deaths", 2, {"dead": "2"}, "one was counted twice")],
    4: [Written("litter-check", {"spot": "by the tank", "handful": "holds-together", "depth_cm": "7"})],
    7: [
        Written(
            "vaccine-given",
            {
                "vaccine": "Newcastle",
                "route": "drinking-water",
                "doses": "2000",
                "water_l": "16",
                "lot": "N-114",
                "withdrawal_d": "0",
            },
        ),
        Weighed(weights(7, 12)),
    ],
    9: [
        Written(
            "feed-delivered",
            {
                "phase": "grower",
                "bags": "36",
                "bag_kg": "50",
                "price_each": "588",
                "milled": "2027-09-20",
                "payment": "on-credit",
                "due": "2027-10-10",
                "seller": "Hill Mill",
            },
        )
    ],
    10: [
        Written("note", {"text": "The east curtain is torn."}),
        Written("power-cut", {"hours_h": "2.5", "from_h": "18"}),
    ],
    11: [TakenBack("note", 10, "it was the neighbour's house"), Written("foot-bath", {"state": "fresh"})],
    14: [
        Written(
            "vaccine-given",
            {
                "vaccine": "Gumboro",
                "route": "drinking-water",
                "doses": "2000",
                "water_l": "27",
                "lot": "G-20",
                "withdrawal_d": "0",
            },
        ),
        Written("weighing", {"weights_g": " ".join(map(str, weights(14, 30)))}),
    ],
    16: [Written("fuel-burnt", {"fuel": "charcoal", "amount_kg": "38"})],
    21: [
        Written(
            "medicine-given",
            {
                "medicine": "Vitamins in water",
                "last_day": "2027-10-07",
                "hour_h": "18",
                "withdrawal_d": "0",
                "amount": "1 g in 2 L",
            },
        ),
        Written("weighing", {"weights_g": " ".join(map(str, weights(21, 30)))}),
    ],
    23: [
        Written(
            "feed-delivered",
            {
                "phase": "finisher",
                "bags": "80",
                "bag_kg": "50",
                "price_each": "575",
                "milled": "2027-10-01",
                "seller": "Hill Mill",
            },
        )
    ],
    24: [Written("feed-spoiled", {"phase": "grower", "feed_kg": "4", "why": "a bag stood in the rain"})],
    28: [
        Written("weighing", {"group_weights_g": "10300; 10500; 10150", "group_birds": "10; 10; 10"}),
        Ticked("weighing/3"),
    ],
    30: [Written("price-seen", {"what": "live-bird", "price": "64", "per": "kg", "where": "the market"})],
    33: [
        Written(
            "order",
            {
                "buyer": "Green Kitchen",
                "birds": "400",
                "least_kg": "1.8",
                "most_kg": "2.2",
                "basis": "live-kg",
                "price": "62",
            },
        )
    ],
    36: [Written("birds-out", {"birds": "4", "why": "home"})],
    39: [
        Written("cost", {"what": "airtime", "cost": "60"}),
        Written("purchase", {"what": "litter", "name": "husk", "amount": "6", "unit": "bag", "cost": "135"}),
    ],
    41: [Written("weighing", {"weights_g": " ".join(map(str, weights(41, 50)))}), Ticked("catchers-booked/0")],
    42: [
        Written(
            "sale", {"birds": "400", "live_kg": "780", "income": "48360", "buyer": "Green Kitchen", "basis": "live-kg"}
        )
    ],
}

MISSED = 17  # filled in the next evening
OF_PAPER = range(28, 35)  # a week of paper, typed in when it was over
OF_A_TABLE = range(36, 39)
BAD_AGE = 38  # its line of the table is bad; the day is then typed on its own page
RISING = 21  # the third day on which one more died: the book asks whether a running total was typed


def of_day(age):
    """What is written about a day, with the look where its page is filled."""
    filled = boxes(age) | look(age)
    if age == RISING:
        filled[("deaths", None)] = {"dead": "3", "culled": "0"}
    return filled


def evening(age):
    """What is written in the evening of a day."""
    steps = []
    if age == 0:
        steps.append(
            Written(
                "chicks-placed",
                {
                    "counted": "1632",
                    "dead_on_arrival": "4",
                    "weak_culled": "3",
                    "ordered": "1600",
                    "boxes": "16",
                    "hour_h": "11",
                },
            )
        )
    if age == MISSED + 1:
        steps.append(Day(of_day(MISSED), age=MISSED))
    if age == OF_PAPER.stop:
        steps.append(PaperWeek(OF_PAPER))
    if age == OF_A_TABLE.stop:
        steps += [Pasted(OF_A_TABLE, bad=f"{BAD_AGE}"), Day(boxes(BAD_AGE), age=BAD_AGE)]
    if age != MISSED and age not in OF_PAPER and age not in OF_A_TABLE:
        steps.append(Day(of_day(age), is_doubtful=age == RISING))
    return Evening(age, steps + BESIDE.get(age, []))


EVENINGS = BEFORE + [evening(age) for age in range(LAST_AGE + 1)]
