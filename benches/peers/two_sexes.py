"""Peer of the two bell curves that share one coefficient of variation: scipy finds the likeliest four numbers by brute climbing
(Nelder-Mead from several starts on the log likelihood), which shares nothing with the rounds of expectation and maximisation.

Prints the check table tests/whole/tables/two_sexes.csv. Needs scipy and numpy.
"""

import numpy as np
import scipy
from scipy import optimize, special, stats


def log_likelihood(numbers, weights):
    share = special.expit(numbers[0])
    light, heavy, variation = np.exp(numbers[1:])
    parts = (
        np.log1p(-share) + stats.norm.logpdf(weights, light, variation * light),
        np.log(share) + stats.norm.logpdf(weights, heavy, variation * heavy),
    )
    return np.logaddexp(*parts).sum()


def fit(weights):
    mean, sd = weights.mean(), weights.std()
    best = None
    for share, apart in ((0.5, 1.7), (0.3, 1.9), (0.7, 1.9), (0.5, 1.0)):
        start = [special.logit(share), np.log(mean - apart * share * sd), np.log(mean + apart * (1 - share) * sd),
                 np.log(0.5 * sd / mean)]
        options = {"xatol": 1e-11, "fatol": 1e-12, "maxiter": 40_000, "maxfev": 40_000}
        found = optimize.minimize(lambda x: -log_likelihood(x, weights), start, method="Nelder-Mead", options=options)
        found = optimize.minimize(lambda x: -log_likelihood(x, weights), found.x, method="Nelder-Mead", options=options)
        if best is None or found.fun < best.fun:
            best = found
    share = special.expit(best.x[0])
    light, heavy, variation = np.exp(best.x[1:])
    if light > heavy:
        share, light, heavy = 1 - share, heavy, light
    return share, light, heavy, variation, -best.fun


def flocks():
    chance = np.random.default_rng(20261125)
    for birds, variation, gap in ((40, 0.05, 0.18), (60, 0.06, 0.2), (100, 0.05, 0.15), (200, 0.07, 0.22), (80, 0.08, 0.0)):
        half = birds // 2
        low = 2000 * (1 - gap / 2) * (1 + variation * chance.standard_normal(half))
        high = 2000 * (1 + gap / 2) * (1 + variation * chance.standard_normal(birds - half))
        yield np.round(np.concatenate([low, high]) / 5) * 5


def main():
    print(f"# Two bell curves that share one coefficient of variation, fitted to invented weights by scipy {scipy.__version__}, numpy {np.__version__}.")
    print("# Made by benches/peers/two_sexes.py. Weights in g, joined by spaces. Suggested tolerance 1e-4 of the value; log likelihood 1e-6.")
    print("weights_g,heavy_share,light_g,heavy_g,variation,log_likelihood,log_likelihood_of_one")
    for weights in flocks():
        found = fit(weights)
        one = stats.norm.logpdf(weights, weights.mean(), weights.std()).sum()
        numbers = ",".join(f"{number:.9g}" for number in (*found, one))
        print(" ".join(f"{weight:.0f}" for weight in weights) + "," + numbers)


if __name__ == "__main__":
    main()
