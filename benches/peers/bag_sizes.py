"""Feed sold in bags of several sizes, as whole-number programmes solved by scipy's milp (HiGHS): how many bags of each size of each
feed on each day. Writes the table tests/whole/tables/bag_sizes.csv. Numbers are invented. Needs scipy and numpy.
"""

import numpy as np
import scipy
from scipy import optimize, sparse


def case(seed):
    """Measures of two feeds with prices of their own over 12 days, or of three whose prices rise alike over 40."""
    draw = np.random.default_rng(seed)
    days, feeds, count, alike = (12, 2, 10, False) if seed <= 8 else (40, 3, 25, True)
    keeps = int(draw.integers(5, 9)) if seed <= 8 else 25
    fee = [float(fee) for fee in draw.choice([3.0, 8.0, 20.0, 45.0], days)]
    rises = np.round(1.0 + np.cumsum(draw.normal(0.0, 0.03, days)), 3)
    measures, sizes, start = [], [], 0
    for _ in range(feeds):
        finished = np.sort(draw.integers(start, start + days // feeds, count))
        start += days // feeds
        needed = np.maximum(finished - draw.integers(0, 3), 0)
        measures.append([(int(one), int(other)) for one, other in zip(needed, finished)])
        each = float(draw.integers(10, 20))
        of_feed = []
        for holds in sorted(draw.choice([1, 2, 3, 5], int(draw.integers(1, 4)), replace=False)):
            first = round(each * holds * float(draw.choice([1.05, 1.0, 0.95, 0.9])), 2)
            own = rises if alike else np.round(1.0 + np.cumsum(draw.normal(0.0, 0.06, days)), 3)
            of_feed.append((int(holds), [float(first * rise) for rise in own]))
        sizes.append(of_feed)
    return days, keeps, fee, measures, sizes


def solve(days, keeps, fee, measures, sizes):
    columns = [(feed, size, day) for feed, of_feed in enumerate(sizes) for size in range(len(of_feed)) for day in range(days)]
    width = len(columns) + days
    cost = np.array([sizes[feed][size][1][day] for feed, size, day in columns] + fee)
    rows, low, high = [], [], []
    for feed, of_feed in enumerate(measures):
        largest = max(holds for holds, _ in sizes[feed])
        for day in range(days):
            row = np.zeros(width)
            for at, (other, size, comes) in enumerate(columns):
                if other == feed and comes <= day:
                    row[at] = sizes[feed][size][0]
            fresh = sum(finished < day + keeps for _, finished in of_feed)
            rows.append(row), low.append(sum(needed <= day for needed, _ in of_feed))
            high.append(fresh + largest - 1 if fresh == len(of_feed) else fresh)
    for at, (feed, _, day) in enumerate(columns):
        row = np.zeros(width)
        row[at], row[len(columns) + day] = 1, -len(measures[feed])
        rows.append(row), low.append(-np.inf), high.append(0)
    upper = np.concatenate([np.full(len(columns), np.inf), np.ones(days)])
    found = optimize.milp(cost, constraints=optimize.LinearConstraint(sparse.csr_array(np.array(rows)), low, high),
                          integrality=np.ones(width), bounds=optimize.Bounds(0, upper),
                          options={"mip_rel_gap": 1e-10, "time_limit": 600})
    return found.fun if found.status == 0 else None


def main():
    print(f"# Feed in bags of several sizes: whole-number programme, scipy {scipy.__version__} (HiGHS); numbers invented")
    print("# status: exact")
    print("# by benches/peers/bag_sizes.py; of each feed its measures as needed:finished, and of each size what it holds and its prices")
    print("case,keeps,fee,measures,sizes,cost")
    written, seed = 0, 0
    while written < 12:
        seed += 1
        problem = case(seed if written < 8 else 100 + seed)
        least = solve(*problem)
        if least is None:
            continue
        _, keeps, fee, measures, sizes = problem
        written += 1
        said = ";".join(" ".join(f"{needed}:{finished}" for needed, finished in one) for one in measures)
        priced = ";".join("/".join(f"{holds}|" + " ".join(repr(price) for price in prices) for holds, prices in one) for one in sizes)
        print(f"{written},{keeps},{' '.join(map(repr, fee))},{said},{priced},{least:.9f}", flush=True)


if __name__ == "__main__":
    main()
