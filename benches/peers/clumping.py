"""Clumping (1 / size) of negative binomial day counts with given expectations, by scipy, for tests/whole/tables/clumping.csv.

Python 3.11 or later; pip install numpy scipy. Run: python clumping.py > ../../tests/whole/tables/clumping.csv
"""

import numpy as np
import scipy
from scipy import optimize, stats

# days, size drawn with (0: Poisson), expected by day
CASES = [(42, 2, 2.0), (42, 4, 2.0), (42, 6, 5.0), (84, 3, 1.0), (42, 2, 8.0), (200, 4, 2.0), (42, 0, 5.0), (120, 0, 3.0), (30, 1, 4.0)]


def deviance(clumping, cases, expected):
    law = stats.poisson(expected) if clumping == 0 else stats.nbinom(1 / clumping, 1 / (1 + clumping * expected))
    return -2 * law.logpmf(cases).sum()


def fit(cases, expected):
    def of(clumping):
        return deviance(clumping, cases, expected)

    found = min((optimize.minimize_scalar(of, bounds=bounds, method="bounded", options=dict(xatol=1e-12))
                 for bounds in ((1e-6, 0.1), (0.05, 1), (0.5, 5))), key=lambda result: result.fun)
    best, least = (0.0, of(0)) if of(0) <= found.fun else (found.x, found.fun)
    off = lambda clumping: of(clumping) - least - stats.chi2.ppf(0.95, 1)
    low = 0.0 if off(0) <= 0 else optimize.brentq(off, 1e-9, best, xtol=1e-13)
    high = 5.0 if off(5) <= 0 else optimize.brentq(off, max(best, 1e-9), 5, xtol=1e-13)
    return best, low, high


def main():
    print(f"# Clumping of day counts, 1 / size of the negative binomial law, 0 for Poisson. Made with numpy {np.__version__}, scipy {scipy.__version__}.")
    print("# cases and expected: one a day, joined by blanks; drawn counts. clumping: maximum likelihood over 0 to 5; "
          "low and high: 95 % by profile likelihood. Kept are the cases whose interval does not reach from 0 to 1.")
    print("# Suggested tolerance: 1e-6 relative, best values 1e-5 (an optimum is flat).")
    print("cases,expected,clumping,clumping_low,clumping_high")
    for seed, (days, size, mean) in enumerate(CASES, 1):
        chance = np.random.default_rng(seed)
        expected = np.round(mean * (0.6 + 0.8 * np.arange(days) / days), 3)
        cases = chance.poisson(expected) if size == 0 else chance.negative_binomial(size, size / (size + expected))
        best, low, high = fit(cases, expected)
        if low > 0 or high < 1:
            lists = (" ".join(f"{number:g}" for number in list_) for list_ in (cases, expected))
            print(",".join([*lists, *(f"{number:.12g}" for number in (best, low, high))]))


if __name__ == "__main__":
    main()
