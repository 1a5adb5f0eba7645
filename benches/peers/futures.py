"""Peer of the futures of a batch on its way: the same laws in numpy, whole columns of futures at a time, one core.

Runs the program given (the example `futures_speed` of the crate `model`, built for speed) in the same run, prints the processor's
time of both a future and day, their ratio, and what both say, and fails where they disagree by more than their chance allows. Needs numpy.

    cargo build --release -p model --example futures_speed
    python futures.py target/release/examples/futures_speed
"""

import json
import resource
import subprocess
import sys
import time

import numpy as np

COUNT, DAYS, RUNS = 10_000, 28, 20
LOSSES_SPREAD = 0.7


def futures(seed):
    """Weight, birds and feed eaten of every future and day, and its prices."""
    rng = np.random.default_rng(seed)
    ahead = np.arange(1, DAYS + 1)
    standard, feed = 500.0 + 62.0 * ahead, 75.0 + 4.0 * ahead
    level = -0.03 + 0.02 * rng.standard_normal(COUNT)
    slope = -0.0005 + 0.001 * rng.standard_normal(COUNT)
    losses = rng.standard_normal(COUNT)
    shape = rate = 12.0
    before = 1.0 / np.expm1(LOSSES_SPREAD**2)
    heat = np.maximum(2.0 + 1.5 * rng.standard_normal(COUNT), 0.0)
    appetite, cooler = 0.04 * rng.standard_normal(COUNT), 1.0 - 0.015 * heat
    kept = 0.5 ** (1.0 / 10.0)
    birds = np.full(COUNT, 1600.0)
    weights, alive, eaten = (np.empty((DAYS, COUNT)) for _ in range(3))
    for day in range(DAYS):
        growth = rng.standard_normal(COUNT)
        level = level + slope + 0.01 * growth
        slope = 0.95 * slope + 1e-4 * rng.standard_normal(COUNT)
        fed = rng.standard_normal(COUNT)
        luck = 1.0 + 0.05 * (0.5 * growth + np.sqrt(0.75) * fed)
        appetite = kept * appetite + 0.08 * np.sqrt(1.0 - kept**2) * fed
        eaten[day] = birds * feed[day] * np.exp(0.75 * level + appetite) * cooler * luck / 1000.0
        shape, rate = before + 0.95 * (shape - before), before + 0.95 * (rate - before)
        ninth = 1.0 / (9.0 * shape)
        factor = shape / rate * np.maximum(1.0 - ninth + losses * np.sqrt(ninth), 0.0) ** 3
        mean = birds * 0.0008 * factor
        birds = birds - rng.negative_binomial(4.0, 4.0 / (4.0 + mean))
        weights[day], alive[day] = standard[day] * np.exp(level), birds
    feed_z, other = rng.standard_normal(COUNT), rng.standard_normal(COUNT)
    sale_z = 0.3 * feed_z + np.sqrt(1.0 - 0.09) * other
    feed_price = 12.0 * np.exp(0.05 * feed_z - 0.05**2 / 2)
    sale_price = 60.0 * np.exp(0.08 * sale_z - 0.08**2 / 2)
    left = 6000.0 - np.cumsum(eaten, axis=0)
    return weights, alive, left, feed_price, sale_price


def main():
    started = time.process_time()
    for _ in range(RUNS):
        weights, alive, left, _, sale_price = futures(1)
    peer = time.process_time() - started
    ours = json.loads(subprocess.run(sys.argv[1], capture_output=True, check=True, text=True).stdout)
    child = resource.getrusage(resource.RUSAGE_CHILDREN)
    per = 1e9 / (COUNT * DAYS)
    peer_ns, ours_ns = per * peer / RUNS, per * (child.ru_utime + child.ru_stime) / ours["runs"]
    print(
        f"numpy {np.__version__}: {peer_ns:.1f} ns a future and day; ours: {ours_ns:.1f} ns; "
        f"ratio {peer_ns / ours_ns:.2f}, processor time of one core each"
    )
    columns = {
        "weight_g": weights[-1],
        "birds": alive[-1],
        "left_kg": left[-1],
        "worth": alive[-1] * weights[-1] / 1000.0 * sale_price,
    }
    for name, column in columns.items():
        peer = np.quantile(column, [0.5, 0.05, 0.95])
        # Ends of nine tenths are off by about 2 % of a deviation each.
        allowed = 0.12 * column.std()
        print(f"{name}: ours {np.round(ours[name], 1)}, peer {np.round(peer, 1)}")
        assert np.all(np.abs(peer - ours[name]) < allowed + 1.0), name


if __name__ == "__main__":
    main()
