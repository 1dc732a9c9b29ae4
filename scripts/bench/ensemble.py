"""An ensemble of a drink in numpy: as many draws, closures, totals, quantiles and shares as
BenchmarkLarge of internal/assay makes of sixty foods. The figures are invented; what counts is the work.

Prints a line [wall, processor] in seconds for each run after one that warms up."""

import argparse
import json
import time

import numpy as np

DRAWS = 1000
LIMITS = (0.05, 0.95)


def work(rng, a, of, mean, sigma, members):
    """One run: grams of each cell, what adds up, its interval, and who brings how much of it."""
    columns = members.shape[1]
    grams = rng.standard_normal((a.cells, DRAWS))
    np.exp(grams * sigma[:, None] - (sigma * sigma / 2)[:, None], out=grams)
    grams *= mean[:, None]
    edges = np.flatnonzero(np.r_[True, of[1:] != of[:-1]])  # cells stand food by food
    whole = np.add.reduceat(grams, edges, axis=0)
    grams /= whole[of]  # closure: a gram is a gram
    amounts = np.exp(0.05 * rng.standard_normal((a.foods, DRAWS))) * 40.0
    grams *= amounts[of]

    by_food = np.zeros((a.foods, columns, DRAWS))
    by_food[of, np.arange(a.cells) % columns] = grams
    food = members @ by_food  # (foods, figures, draws)
    part = food.reshape(a.parts, -1, a.figures, DRAWS).sum(axis=1)
    total = part.sum(axis=0)
    total.mean(axis=1), total.std(axis=1, ddof=1), np.quantile(total, LIMITS, axis=1)

    bring = np.concatenate([part, food])[: max(a.shares // a.figures, 1)]  # who brings how much of each figure
    share = np.divide(bring, total, out=np.zeros_like(bring), where=total > 0)
    np.quantile(share, LIMITS, axis=2)


def main():
    p = argparse.ArgumentParser()
    for name in ("runs", "foods", "parts", "cells", "figures", "shares"):
        p.add_argument("--" + name, type=int, required=True)
    a = p.parse_args()
    rng = np.random.default_rng(1)
    columns = a.cells // a.foods + 1
    of = np.arange(a.cells) * a.foods // a.cells
    mean, sigma = rng.random(a.cells) + 0.01, 0.1 + 0.3 * rng.random(a.cells)
    members = (rng.random((a.figures, columns)) < 0.2).astype(float)  # a total has some of the columns below it
    for i in range(a.runs + 1):
        wall, processor = time.perf_counter(), time.process_time()
        work(rng, a, of, mean, sigma, members)
        if i:
            print(json.dumps([time.perf_counter() - wall, time.process_time() - processor]))


if __name__ == "__main__":
    main()
