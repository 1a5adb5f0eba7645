"""Peer of a weighing: scipy and statsmodels work out the weighings of 45 to 50 real chicks, day by day, from
tests/whole/tables/chickweight.csv (its source and licence stand on top of it).

Mean by Student's t; coefficient of variation by inverting the noncentral t, which is exact for a bell curve; evenness by
Wilson's score; and the mean by diets, as if each diet were a spot, by the ratio of totals.

Prints the check table tests/whole/tables/chick_weighings.csv. Needs numpy, scipy and statsmodels.
"""

import csv
import pathlib

import numpy as np
import scipy
import statsmodels
from scipy import optimize, stats
from statsmodels.stats.proportion import proportion_confint

TABLE = pathlib.Path(__file__).parents[2] / "tests/whole/tables/chickweight.csv"


def by_day():
    lines = [line for line in TABLE.read_text().splitlines() if not line.startswith("#")]
    days = {}
    for row in csv.DictReader(lines):
        days.setdefault(int(row["time_d"]), []).append((row["diet"], float(row["weight_g"])))
    return days


def exact_variation(n, k):
    def end(share):
        off = lambda c: stats.nct.cdf(np.sqrt(n) / k, n - 1, np.sqrt(n) / c) - share
        return optimize.brentq(off, k / 4, k * 6, xtol=1e-13)

    return end(0.025), end(0.975)


def by_spots(rows):
    diets = sorted({diet for diet, _ in rows})
    totals = np.array([sum(weight for own, weight in rows if own == diet) for diet in diets])
    counts = np.array([sum(own == diet for own, _ in rows) for diet in diets])
    mean, g = totals.sum() / counts.sum(), len(diets)
    error = np.sqrt(g / (g - 1) * ((totals - mean * counts) ** 2).sum()) / counts.sum()
    half = stats.t.ppf(0.975, g - 1) * error
    return mean - half, mean + half


def main():
    print(f"# Weighings of real chicks by scipy {scipy.__version__}, statsmodels {statsmodels.__version__}, numpy {np.__version__}.")
    print("# Made by benches/peers/chick_weighings.py from chickweight.csv, whose head names source and licence.")
    print("# Weights in g; cv and uniform (within a tenth of the mean) 0 to 1; ends at 95 %. cv_low and cv_high are exact for a bell curve.")
    print("time_d,n,mean,low,high,cv,cv_low,cv_high,uniform,uniform_low,uniform_high,spots_low,spots_high")
    for day, rows in sorted(by_day().items()):
        weights = np.array([weight for _, weight in rows])
        n, mean, sd = len(weights), weights.mean(), weights.std(ddof=1)
        ends = stats.t.interval(0.95, n - 1, mean, sd / np.sqrt(n))
        inside = int(((weights >= 0.9 * mean) & (weights <= 1.1 * mean)).sum())
        numbers = (mean, *ends, sd / mean, *exact_variation(n, sd / mean), inside / n,
                   *proportion_confint(inside, n, 0.05, "wilson"), *by_spots(rows))
        print(f"{day},{n}," + ",".join(f"{number:.9g}" for number in numbers))


if __name__ == "__main__":
    main()
