"""Peer of the cheapest way of buying: the same problems as benches/benches/buying.rs as whole-number programmes, solved by
scipy's milp (HiGHS). A bag goes to one of the days on which it may come; a day with a bag pays the delivery.

Prints the least cost and the time of each; hold them against what `cargo bench -p broodwright-benches --bench buying` prints.
Needs scipy and numpy.
"""

import sys
import time

import numpy as np
from scipy import optimize, sparse

DAYS, BAG_KG, KEEPS, FEE = 57, 50.0, 43, 9.0


def bags():
    """Price by day, last day to come and last day eaten of each bag."""
    found = []
    for first, until, price in ((0, 10, 31.0), (11, 24, 29.5), (25, 42, 28.75)):
        eaten = 1.6 * (12.0 + 4.2 * np.arange(first, until + 1))
        reached = np.cumsum(eaten)
        prices = price * (1.0 + 0.02 * np.arange(DAYS) / 30.0)
        day = lambda kg: first + min(int(np.searchsorted(reached, kg, side="right")), until - first)
        for bag in range(int(np.ceil(reached[-1] / BAG_KG - 1e-9))):
            opened = day(bag * BAG_KG + 1e-9)
            needed = 0 if opened <= 14 else opened + 7
            found.append((prices, needed, day((bag + 1) * BAG_KG - 1e-9) + 14))
    return found


def solve(room=None, credit=None, limit=None):
    all_bags = bags()
    pairs = [(at, day) for at, (_, needed, finished) in enumerate(all_bags)
             for day in range(max(0, finished - KEEPS + 1), needed + 1)]
    count, money = len(pairs), DAYS if credit else 0
    width = count + DAYS + money
    cost = np.concatenate([[all_bags[at][0][day] for at, day in pairs], np.full(DAYS, FEE),
                           np.full(money, credit[0] if credit else 0.0)])
    rows, low, high = sparse.lil_matrix((len(all_bags) + count + 2 * DAYS, width)), [], []
    for at in range(len(all_bags)):
        low.append(1), high.append(1)
    for column, (at, day) in enumerate(pairs):
        rows[at, column] = 1
        rows[len(all_bags) + column, column] = 1
        rows[len(all_bags) + column, count + day] = -1
        low.append(-np.inf), high.append(0)
    row = len(all_bags) + count
    for day in range(DAYS):
        standing = [column for column, (at, comes) in enumerate(pairs) if comes <= day < all_bags[at][2]]
        if room is not None and standing:
            rows[row, standing] = 1
        low.append(-np.inf), high.append(np.inf if room is None else room)
        row += 1
    for day in range(DAYS):
        if credit:
            for column, (at, comes) in enumerate(pairs):
                if comes <= day:
                    rows[row, column] = all_bags[at][0][comes]
            rows[row, count:count + day + 1] = FEE
            rows[row, count + DAYS + day] = -1
        low.append(-np.inf), high.append(credit[1][day] if credit else np.inf)
        row += 1
    whole = np.concatenate([np.ones(count + DAYS), np.zeros(money)])
    upper = np.concatenate([np.ones(count + DAYS), np.full(money, np.inf if limit is None else limit)])
    return optimize.milp(cost, constraints=optimize.LinearConstraint(rows.tocsr(), low, high), integrality=whole,
                         bounds=optimize.Bounds(0, upper), options={"mip_rel_gap": 1e-9, "time_limit": 300})


def solve_sizes(room=None):
    """In bags of 25 kg at 0.52 of the price of 50: how many of each size of each feed come on each day."""
    columns, cost, rows, low, high = [], [], [], [], []
    for first, until, price in ((0, 10, 31.0), (11, 24, 29.5), (25, 42, 28.75)):
        columns += [(first, day, size) for size in (1, 2) for day in range(DAYS)]
        cost += [price * (1.0 + 0.02 * day / 30.0) * (0.52 if size == 1 else 1.0) for size in (1, 2) for day in range(DAYS)]
    width = DAYS + len(columns)
    standing, eaten_all = np.zeros((DAYS, width)), np.zeros(DAYS)
    for first, until, _ in ((0, 10, 31.0), (11, 24, 29.5), (25, 42, 28.75)):
        eaten = np.cumsum(1.6 * (12.0 + 4.2 * np.arange(first, until + 1)))
        day = lambda kg: first + min(int(np.searchsorted(eaten, kg, side="right")), until - first)
        due = []
        for at in range(int(np.ceil(eaten[-1] / 25.0 - 1e-9))):
            opened = day(at * 25.0 + 1e-9)
            due.append((0 if opened <= 14 else opened + 7, day((at + 1) * 25.0 - 1e-9) + 14))
        for today in range(DAYS):
            row = np.zeros(width)
            for at, (feed, comes, size) in enumerate(columns):
                if feed == first and comes <= today:
                    row[DAYS + at] = size
            fresh = sum(finished < today + KEEPS for _, finished in due)
            rows.append(row), low.append(sum(needed <= today for needed, _ in due))
            high.append(fresh + (fresh == len(due)))
            standing[today] += row
            eaten_all[today] += sum(finished <= today for _, finished in due)
    for at, (_, comes, size) in enumerate(columns):
        row = np.zeros(width)
        row[DAYS + at], row[comes] = 1, -200
        rows.append(row), low.append(-np.inf), high.append(0)
    if room is not None:
        for today in range(DAYS):
            rows.append(standing[today]), low.append(-np.inf), high.append(room + eaten_all[today])
    upper = np.concatenate([np.ones(DAYS), np.full(len(columns), np.inf)])
    return optimize.milp(np.concatenate([np.full(DAYS, FEE), cost]),
                         constraints=optimize.LinearConstraint(sparse.csr_array(np.array(rows)), low, high),
                         integrality=np.ones(width), bounds=optimize.Bounds(0, upper),
                         options={"mip_rel_gap": 1e-9, "time_limit": 300})


def main():
    money = np.where(np.arange(DAYS) < 20, 1500.0, 400.0)
    day = np.arange(DAYS)
    purse = np.where(day < 30, 900.0, np.where(day < 42, 2400.0, 4200.0))
    cases = {"shared deliveries": {}, "with interest": {"credit": (0.3 / 365.0, money)},
             "within a limit": {"credit": (0.3 / 365.0, purse), "limit": 450.0}, "full store": {"room": 60},
             "two sizes": None, "two sizes, full store": {"room": 120}}
    for name in sys.argv[1:] or cases:
        begun = time.perf_counter()
        found = solve_sizes(**cases[name] or {}) if name.startswith("two sizes") else solve(**cases[name])
        taken = 1000 * (time.perf_counter() - begun)
        print(f"{name}: least cost {found.fun:.6f}, gap {found.fun - found.mip_dual_bound:.6f}, {taken:.0f} ms")


if __name__ == "__main__":
    main()
