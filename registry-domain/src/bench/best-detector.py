#!/usr/bin/env python3
"""Estimates how many seeded faults any check on girth, height, spread and name can find.

    best-detector.py TABLES CITY.csv ...

TABLES is the folder of tree-forms.csv and genera.csv; the city files are those of fit-tree-forms.py. By the lemma of
Neyman and Pearson (1933) no test that asks about 2 % of sound trees finds more of a fault than the one that asks where
the fault's likelihood exceeds that of a sound tree by most. The likelihoods are fitted, so it is an estimate: given
the girth, the logarithms of height and spread are Student's, about a curve of the species' own that is drawn towards
table and county; the girths of a species are as those of its other trees there (a kernel). Each tree is left out of
what it is compared with. The constants were chosen by likelihood on the five cities of the table. Prints the shares
found at 2 % of the sound trees: by the best test for that fault alone, and by one for all four at once.
Needs numpy.
"""
import collections
import csv
import math
import sys

import numpy as np

CURVE = np.array([0.0287, 0.0109, 0.0037])  # variances of a species' own intercept, slope, curve
SCATTER, USUAL = (0.0756, 0.0711), 26.7     # scatter of height and spread before the county's own is seen, its weight
OWN, CORRELATED = 16, (40, 0.204)           # weight of the county's scatter against the species'; of the correlation
NU, SMALL, SMALL_TO = 9, 1.01, 12           # degrees of freedom; saplings scatter more
KERNEL, BASE = 0.19, 3.4                    # of ln girth; weight of the girths of all trees
WIDER = {"broadleaf": 1, "conifer": 1.06, "palm": 1.63}
SLIPS = [(0, 2.54), (0, 1 / 2.54), (0, np.pi), (0, 1 / np.pi), (1, 1 / .3048), (1, .3048), (2, 1 / .3048), (2, .3048)]
THIRDS = [(figure, factor) for figure in range(3) for factor in (4 / 3, 2 / 3)]
ANY = [(figure, math.exp(d)) for figure in range(3) for d in np.linspace(-1.5, 1.5, 13)]  # for transposed digits
FAULTS = ("unit slip", "transposed", "wrong species", "off by a third")


def table(path):
    return csv.DictReader(line for line in open(path, encoding="utf-8") if not line.startswith("#"))


def short(name):
    words = name.split()
    if len(words) > 2 and words[1] in ("x", "×"):
        return " ".join([words[0], "x", words[2]])
    return words[0] if len(words) < 2 or words[1].endswith(".") else " ".join(words[:2])


def logsumexp(a):
    most = a.max(axis=1, keepdims=True)
    return (most + np.log(np.exp(a - most).sum(axis=1, keepdims=True)))[:, 0]


class City:
    def __init__(self, path, kinds, forms):
        self.names, self.figures = [], []
        for row in csv.DictReader(open(path, encoding="utf-8")):
            dbh, height, crown = (float(row[c] or 0) for c in ("DBH (cm)", "TreeHt (m)", "AvgCdia (m)"))
            if min(dbh, height, crown) > 0:
                self.names.append(short(row["ScientificName"]))
                self.figures.append((round(dbh * np.pi / 2.54, 1), max(1, round(height / .3048)), max(1, round(crown / .3048))))
        self.figures = np.array(self.figures)
        self.logs = np.log(self.figures)
        self.members = {name: np.array([i for i, one in enumerate(self.names) if one == name]) for name in sorted(set(self.names))}
        self.kind = {name: kinds.get(name.split()[0], "broadleaf") for name in self.members}
        self.form = {name: forms.get(name) or forms.get(name.split()[0]) or forms[self.kind[name]] for name in self.members}
        self.over = np.array([np.clip(self.logs[i, 1:] - self.told(name, self.logs[i, :1])[0], -1, 1)
                              for i, name in enumerate(self.names)])
        self.means = {name: self.over[at].mean(axis=0) for name, at in self.members.items()}
        self.squares, self.fits = {}, {}
        self.squares = {name: self.fit(name, -1)[-1] for name in self.members}
        self.fits = {}

    def told(self, name, x):
        return np.column_stack([np.polyval(curve[::-1], x) for curve in self.form[name]])

    def fit(self, name, but):
        """Offset, curve, its covariance and scatter for height and spread, girths, correlation, squares."""
        key = name, but if but >= 0 and self.names[but] == name else -1
        if key in self.fits:
            return self.fits[key]
        at = self.members[name][self.members[name] != but]
        x = self.logs[at, 0]
        powers = np.vander(x - 3.5, 3, increasing=True)
        wider = 1 + SMALL * np.exp(-np.exp(x) / SMALL_TO)
        like = [m for other, m in self.means.items() if other != name and self.kind[other] == self.kind[name]]
        offset = np.sum(like, axis=0) / (len(like) + 3) if like else np.zeros(2)
        others = np.array([s for other, s in self.squares.items() if other != name] or [(0, 0, 0)]).sum(axis=0)
        fits, rests = [], []
        for j in (0, 1):
            scatter = SCATTER[j] * WIDER[self.kind[name]] * math.sqrt((USUAL + others[1 + j]) / (USUAL + others[0]))
            weights = wider ** -2
            for _ in range(2):
                covariance = np.linalg.inv(np.diag(1 / CURVE) + powers.T @ (powers * (weights / scatter ** 2)[:, None]))
                own = covariance @ (powers.T @ (weights / scatter ** 2 * (self.over[at, j] - offset[j])))
                rest = (self.over[at, j] - offset[j] - powers @ own) / wider / scatter
                weights = wider ** -2 * (NU + 1) / (NU + rest ** 2)
            rest = np.clip(rest, -3, 3)
            fits.append((offset[j], own, covariance, scatter ** 2 * (OWN + (rest ** 2).sum()) / (OWN + len(at))))
            rests.append(rest)
        both = [(rest ** 2).sum() for rest in rests]
        rho = (CORRELATED[0] * CORRELATED[1] + (rests[0] * rests[1]).sum()) / (CORRELATED[0] + math.sqrt(both[0] * both[1]))
        self.fits[key] = fits, x, rho, (len(at), *both)
        return self.fits[key]

    def likelihood(self, name, but, logs):
        """Natural logarithms of the densities of rows of ln girth, ln height, ln spread."""
        fits, girths, rho, _ = self.fit(name, but)
        x, powers, told = logs[:, 0], np.vander(logs[:, 0] - 3.5, 3, increasing=True), self.told(name, logs[:, 0])
        wider, z, scale = 1 + SMALL * np.exp(-np.exp(x) / SMALL_TO), [], 0
        for j, (offset, own, covariance, variance) in enumerate(fits):
            deviation = np.sqrt(variance * wider ** 2 + ((powers @ covariance) * powers).sum(axis=1))
            z.append((logs[:, 1 + j] - told[:, j] - offset - powers @ own) / deviation)
            scale = scale + np.log(deviation)
        squared = (z[0] ** 2 - 2 * rho * z[0] * z[1] + z[1] ** 2) / (1 - rho ** 2)
        near = np.exp(-((x[:, None] - girths) / KERNEL) ** 2 / 2).sum(axis=1) / KERNEL
        seen = (near + BASE * np.exp(-((x - 3.5) / 1.1) ** 2 / 2) / 1.1) / (len(girths) + BASE)
        return -(NU + 2) / 2 * np.log1p(squared / NU) - math.log(1 - rho ** 2) / 2 - scale + np.log(seen + 1e-300)

    def ratios(self, i, name, figures):
        """Log likelihood ratio of each of FAULTS to a sound tree."""
        log = np.log(figures)[None]
        sound = self.likelihood(name, i, log)[0]

        def mended(factors):
            back = np.array([[math.log(factor) if k == figure else 0 for k in range(3)] for figure, factor in factors])
            return logsumexp(self.likelihood(name, i, log - back)[None])[0] - math.log(len(factors)) - sound

        named = np.array([[self.likelihood(other, i, log)[0] for other in self.members if other != name]])
        return mended(SLIPS), mended(ANY), logsumexp(named)[0] - math.log(named.size) - sound, mended(THIRDS)

    def seeded(self, random):
        """Of each tree its figures as they are, and with each fault."""
        for i, (name, figures) in enumerate(zip(self.names, self.figures)):
            yield "sound", i, name, figures
            for fault, factors in (("unit slip", SLIPS), ("off by a third", THIRDS)):
                figure, factor = factors[random.integers(len(factors))]
                spoilt = figures.copy()
                spoilt[figure] *= factor
                yield fault, i, name, spoilt
            others = [other for other in self.members if other != name]
            yield "wrong species", i, others[random.integers(len(others))], figures
            for figure in random.permutation(3):
                digits = list(str(round(figures[figure])))
                swaps = [float("".join(digits[:k] + [digits[k + 1], digits[k]] + digits[k + 2:]))
                         for k in range(len(digits) - 1) if digits[k] != digits[k + 1]]
                swaps = [one for one in swaps if one > 0]
                if swaps:
                    spoilt = figures.copy()
                    spoilt[figure] = swaps[random.integers(len(swaps))]
                    yield "transposed", i, name, spoilt
                    break


def main():
    kinds = {row["genus"]: row["kind"] for row in table(sys.argv[1] + "/genera.csv")}
    forms = {row["name"]: [[float(row[c + "_" + of]) for c in "abc"] for of in ("height", "spread")]
             for row in table(sys.argv[1] + "/tree-forms.csv")}
    ratios = collections.defaultdict(list)
    for path in sys.argv[2:]:
        city = City(path, kinds, forms)
        for fault, i, name, figures in city.seeded(np.random.default_rng(1)):
            ratios[fault].append(city.ratios(i, name, figures))
    ratios = {fault: np.array(rows) for fault, rows in ratios.items()}
    tests = {fault: (lambda a, k=k: a[:, k]) for k, fault in enumerate(FAULTS)}
    tests["all four"] = logsumexp
    for test, of in tests.items():
        beyond = np.quantile(of(ratios["sound"]), 0.98)
        print(f"{test:16s}", *(f"{fault} {100 * np.mean(of(ratios[fault]) > beyond):.1f} %" for fault in FAULTS), sep="   ")


main()
