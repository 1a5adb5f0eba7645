"""Orders filled by a general solver (scipy, HiGHS): the table that the program's own way is held against.

python3 benches/peers/orders.py > tests/whole/tables/order_filling.csv
"""
import random

import scipy
from scipy.optimize import linprog

PROMISE = 10_000.0


def case(number):
    chance = random.Random(number)
    classes, orders = 30, 8
    birds = [chance.randrange(0, 60) for _ in range(classes)]
    elsewhere = [chance.randrange(40, 90) for _ in range(classes)]
    wanted = [chance.randrange(20, 260) for _ in range(orders)]
    pays = []
    for _ in range(orders):
        low = chance.randrange(0, classes)
        high = chance.randrange(low, classes)
        price = chance.randrange(30, 110)
        pays.append([price + chance.randrange(0, 25) if low <= at <= high else -1 for at in range(classes)])
    return birds, elsewhere, wanted, pays


def solve(birds, elsewhere, wanted, pays):
    pairs = [(o, c) for o in range(len(wanted)) for c in range(len(birds)) if pays[o][c] >= 0]
    cost = [-(PROMISE + pays[o][c] - elsewhere[c]) for o, c in pairs]
    of_class = [[1.0 if pair[1] == c else 0.0 for pair in pairs] for c in range(len(birds))]
    of_order = [[1.0 if pair[0] == o else 0.0 for pair in pairs] for o in range(len(wanted))]
    found = linprog(cost, A_ub=of_class + of_order, b_ub=birds + wanted, method="highs")
    assert found.success
    filled = round(sum(found.x))
    gain = sum(x * (pays[o][c] - elsewhere[c]) for x, (o, c) in zip(found.x, pairs))
    return filled, gain + sum(b * e for b, e in zip(birds, elsewhere))


def main():
    print(f"# Orders filled from 30 classes of birds: linear programme, scipy {scipy.__version__} (HiGHS); numbers invented")
    print("# status: exact")
    print("# by benches/peers/orders.py; pays -1: the order does not take the class")
    print("case,birds,elsewhere,wanted,pays,filled,brings")
    for number in range(1, 13):
        birds, elsewhere, wanted, pays = case(number)
        filled, brings = solve(birds, elsewhere, wanted, pays)
        words = [" ".join(map(str, row)) for row in [birds, elsewhere, wanted]]
        rows = ";".join(" ".join(map(str, row)) for row in pays)
        print(f"{number},{words[0]},{words[1]},{words[2]},{rows},{filled},{brings:.6f}")


main()
