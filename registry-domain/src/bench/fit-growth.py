#!/usr/bin/env python3
"""How fast stems thicken at most, from trees whose age is known.

    fit-growth.py TUNED.csv ... -- HELD-OUT.csv ...

The city files are those of McPherson, E.G.; van Doorn, N.S.; Peper, P.J. 2016, Urban tree database, Fort Collins, CO:
USDA Forest Service Research Data Archive, RDS-2016-0005. The mean width of a tree's rings is half its diameter, less 2 in
that it had when it was planted (proposal), over its age; trees younger than 10 years and palms are left out. Prints the
99th percentile of the tuned cities, which Thresholds.RING_INCHES rounds up, and what share of each held-out city grew
faster. By genus the percentiles differ from city to city as much as between genera (of the slow genera of the tuned
cities, 11 % of the held-out trees grew faster than 99 % of the tuned ones), so there is one figure for all.
"""
import csv
import math
import sys


def rings(path):
    for row in csv.DictReader(open(path, encoding="utf-8")):
        try:
            diameter, age = float(row["DBH (cm)"]) / 2.54, float(row["Age"])
        except ValueError:
            continue
        if age >= 10 and diameter > 2 and not row["TreeType"].startswith("P"):
            yield (diameter - 2) / 2 / age


def main():
    split = sys.argv.index("--")
    tuned = sorted(width for path in sys.argv[1:split] for width in rings(path))
    most = tuned[math.ceil(0.99 * len(tuned)) - 1]
    print(f"{len(tuned)} trees, 99th percentile {most:.3f} in a year")
    for path in sys.argv[split + 1:]:
        widths = list(rings(path))
        print(f"{path}: {len(widths)} trees, {sum(width > most for width in widths)} faster")


main()
