"""Variance components of weights by spot, by statsmodels and scipy, for the table tests/whole/tables/spots.csv.

Python 3.11 or later; pip install numpy scipy statsmodels pandas. Run: python variance.py > ../../tests/whole/tables/spots.csv

The restricted likelihood is written here over the whole covariance matrix (not in the profiled form of the program) and
optimised by scipy; statsmodels' MixedLM must agree within 1e-4, which is as far as its own optimiser goes.
"""

import warnings

import numpy as np
import pandas as pd
import scipy
import statsmodels
import statsmodels.formula.api as smf
from scipy import optimize, stats

# mean, sd between, sd within, birds by spot
CASES = [
    (1800, 120, 180, [10, 10, 10]),
    (1800, 120, 180, [12, 7, 20, 5]),
    (2100, 60, 200, [8, 9, 15, 30, 6]),
    (950, 90, 80, [5, 6, 7, 8, 9, 10]),
    (2000, 0, 180, [10, 14, 9]),
    (42, 1.5, 3, [25, 18, 30, 22]),
    (1500, 200, 150, [1, 9, 4, 2, 12]),
    (2.2, 0.1, 0.25, [15, 16, 17, 3]),
]


def draw(seed, mean, between, within, birds):
    chance = np.random.default_rng(seed)
    digits = 3 if mean < 10 else 1 if mean < 100 else 0
    return [np.round(mean + between * chance.normal() + within * chance.normal(size=n), digits) for n in birds]


class Reml:
    """-2 log restricted likelihood over the full covariance matrix, without constants."""

    def __init__(self, spots):
        self.y = np.concatenate(spots)
        self.x = np.ones((len(self.y), 1))
        which = np.repeat(np.arange(len(spots)), [len(s) for s in spots])
        self.same = (which[:, None] == which[None, :]).astype(float)

    def parts(self, between, within):
        v = between * self.same + within * np.eye(len(self.y))
        inverse = np.linalg.inv(v)
        information = self.x.T @ inverse @ self.x
        mean = np.linalg.solve(information, self.x.T @ inverse @ self.y)
        return v, inverse, information, mean

    def deviance(self, between, within):
        v, inverse, information, mean = self.parts(between, within)
        rest = self.y - self.x @ mean
        return np.linalg.slogdet(v)[1] + np.linalg.slogdet(information)[1] + rest @ inverse @ rest

    def scores(self, between, within):
        """Slopes of the deviance by between and within: tr(P dV) - y'P dV P y."""
        v, inverse, information, _ = self.parts(between, within)
        p = inverse - inverse @ self.x @ np.linalg.solve(information, self.x.T @ inverse)
        py = p @ self.y
        return [np.trace(p @ d) - py @ d @ py for d in (self.same, np.eye(len(self.y)))]

    def fit(self):
        scale = self.y.var()
        best = None
        for share in (0.02, 0.2, 0.5, 0.8):
            found = optimize.minimize(lambda t: self.deviance(scale * np.exp(t[0]), scale * np.exp(t[1])),
                                      [np.log(share), np.log(1 - share)], method="Nelder-Mead",
                                      options=dict(xatol=1e-9, fatol=1e-12, maxiter=10000))
            if best is None or found.fun < best.fun:
                best = found
        between, within = scale * np.exp(best.x)
        alone = self.y.var(ddof=1)
        if self.scores(0.0, alone)[0] >= 0 and self.deviance(0.0, alone) <= best.fun + 1e-9:
            return 0.0, alone
        polished = optimize.root(lambda v: np.array(self.scores(*v)) * scale, [between, within], tol=1e-13)
        return tuple(polished.x)

    def profile(self, between, near):
        found = optimize.minimize_scalar(lambda t: self.deviance(between, np.exp(t)), method="bounded",
                                         bounds=(np.log(near) - 4, np.log(near) + 4), options=dict(xatol=1e-11))
        return found.fun

    def interval(self, between, within):
        limit = self.deviance(between, within) + stats.chi2.ppf(0.95, 1)
        off = lambda b: self.profile(b, within) - limit
        low = 0.0 if off(0.0) <= 0 else optimize.brentq(off, 0.0, between, xtol=1e-13, rtol=1e-12)
        top = max(between, within)
        while off(top) <= 0:
            top *= 2
        return low, optimize.brentq(off, between, top, xtol=1e-13, rtol=1e-12)


def anova(spots):
    n = np.array([len(s) for s in spots], float)
    means = np.array([s.mean() for s in spots])
    total = np.concatenate(spots)
    within = sum(((s - s.mean()) ** 2).sum() for s in spots) / (n.sum() - len(n))
    between = (n * (means - total.mean()) ** 2).sum() / (len(n) - 1)
    like = (n.sum() - (n**2).sum() / n.sum()) / (len(n) - 1)
    return (between - within) / like, within


def library(spots):
    frame = pd.DataFrame(dict(w=np.concatenate(spots), s=np.repeat(np.arange(len(spots)), [len(s) for s in spots])))
    frame["z"] = frame.w / frame.w.std()
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        fit = smf.mixedlm("z ~ 1", frame, groups="s").fit(reml=True, method=["powell", "bfgs"])
    return float(fit.cov_re.iloc[0, 0]) * frame.w.var(), float(fit.scale) * frame.w.var()


def main():
    print(f"# Variance components of weights by spot. Made with numpy {np.__version__}, scipy {scipy.__version__}; "
          f"statsmodels {statsmodels.__version__} MixedLM agrees within 1e-4.")
    print("# spots: birds joined by blanks, spots by semicolons; drawn weights. Variances in the weight's unit squared. "
          "between_low, between_high: 95 % by profile of the restricted likelihood; within_low, within_high: 95 % by chi-square.")
    print("# Suggested tolerance: 1e-6 relative.")
    print("spots,mean,anova_between,anova_within,reml_between,reml_within,between_low,between_high,within_low,within_high")
    for seed, case in enumerate(CASES, 1):
        spots = draw(seed, *case)
        reml = Reml(spots)
        between, within = reml.fit()
        their_between, their_within = library(spots)
        assert abs(their_between - between) < 1e-4 * (between + within), (their_between, between)
        assert abs(their_within - within) < 1e-4 * within, (their_within, within)
        mean = float(reml.parts(between, within)[3][0])
        freedom = sum(len(s) - 1 for s in spots)
        squares = freedom * anova(spots)[1]
        numbers = [mean, *anova(spots), between, within, *reml.interval(between, within),
                   squares / stats.chi2.ppf(0.975, freedom), squares / stats.chi2.ppf(0.025, freedom)]
        text = ";".join(" ".join(f"{w:g}" for w in s) for s in spots)
        print(",".join([text, *(f"{number:.12g}" for number in numbers)]))


if __name__ == "__main__":
    main()
