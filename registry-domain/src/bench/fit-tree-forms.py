#!/usr/bin/env python3
"""Fits tree-forms.csv: how high and how wide a tree of a given girth is, by species, genus and kind.

    fit-tree-forms.py GENERA CITY.csv ... > tree-forms.csv

GENERA is genera.csv beside the table; the city files are those of McPherson, E.G.; van Doorn, N.S.; Peper, P.J. 2016,
Urban tree database, Fort Collins, CO: USDA Forest Service Research Data Archive, RDS-2016-0005. For each kind
(broadleaf, conifer, palm) and with x = ln(girth in inches):

    ln(height in feet) = a + b x + c x^2        ln(spread in feet) = a' + b' x + c' x^2

b and c are of the kind (least squares about each species' own mean; c = 0 for palms), a of the species. A species
counts by the number of its cities and is drawn towards its genus (weight 0.3), a genus towards its kind (weight 1).
Needs numpy.
"""
import collections
import csv
import sys

import numpy as np


def trees(path, kinds):
    for row in csv.DictReader(open(path, encoding="utf-8")):
        try:
            dbh, height, crown = (float(row[c]) for c in ("DBH (cm)", "TreeHt (m)", "AvgCdia (m)"))
        except ValueError:
            continue
        words = row["ScientificName"].split()
        if min(dbh, height, crown) <= 0:
            continue
        species = None if words[1].startswith("sp") and words[1].endswith(".") else " ".join(
            words[:3] if words[1] == "x" else words[:2])
        yield path, words[0], species, kinds.get(words[0], "broadleaf"), dbh * np.pi / 2.54, height / 0.3048, crown / 0.3048


def main():
    kinds = {row["genus"]: row["kind"] for row in csv.DictReader(line for line in open(sys.argv[1]) if not line.startswith("#"))}
    everything = [tree for path in sys.argv[2:] for tree in trees(path, kinds)]
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["level", "name", "a_height", "b_height", "c_height", "a_spread", "b_spread", "c_spread", "trees", "cities"])

    def row(level, name, at, slopes, of):
        figures = [f"{value:.4f}" for i in (0, 1) for value in (at[i], slopes[0][i], slopes[1][i])]
        out.writerow([level, name, *figures, len(of), len({everything[j][0] for j in of})])

    for kind in ("broadleaf", "conifer", "palm"):
        chosen = [j for j, tree in enumerate(everything) if tree[3] == kind]
        x = np.log([everything[j][4] for j in chosen])
        y = np.log([[everything[j][5], everything[j][6]] for j in chosen])
        powers = np.column_stack([x, x * x]) if kind != "palm" else x[:, None]
        groups = collections.defaultdict(list)
        for i, j in enumerate(chosen):
            groups[(everything[j][1], everything[j][2] or "")].append(i)
        px, py = powers.copy(), y.copy()
        for members in groups.values():
            px[members] -= px[members].mean(axis=0)
            py[members] -= py[members].mean(axis=0)
        slopes = np.linalg.lstsq(px, py, rcond=None)[0]
        rest = y - powers @ slopes
        if kind == "palm":
            slopes = np.vstack([slopes, [0, 0]])
        means = {group: rest[members].mean(axis=0) for group, members in groups.items()}
        of_kind = np.mean(list(means.values()), axis=0)
        row("kind", kind, of_kind, slopes, chosen)
        for genus in sorted({group[0] for group in groups}):
            own = [group for group in sorted(groups) if group[0] == genus]
            of_genus = (sum(means[group] for group in own) + of_kind) / (len(own) + 1)
            row("genus", genus, of_genus, slopes, [chosen[i] for group in own for i in groups[group]])
            for group in own:
                if group[1]:
                    members = [chosen[i] for i in groups[group]]
                    cities = len({everything[j][0] for j in members})
                    row("species", group[1], (cities * means[group] + 0.3 * of_genus) / (cities + 0.3), slopes, members)


main()
