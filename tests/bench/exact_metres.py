#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The most metres of trench of free length in one direction, on the lots of tests/files/exact_lots.txt.

    exact_metres.py tests/files/exact_lots.txt [first last] > metres.txt

Shares no code with the program. What is solved, for each of the directions of exact_layouts.py:

  A trench is a rectangle of the lot's width, between LEAST and MOST times the lot's trench length long. Any number
  of them lie in one direction. Two keep the spacing between middle lines sideways, or the gap lengthwise. At one
  end of each at least the middle of that end keeps half a header's width and the header's clearance off everything.
  The sum of the lengths is made greatest. Header and run themselves take no room.

  best   the greatest sum over all ways to cut the lot into columns by lines across the trenches, a gap wide each,
         and to pack every column in rows: dynamic programming over the cuts, and for each column over the rows.
         One column is what common rows give, many are staggered columns. Cuts are tried every CUT m and where an
         obstacle begins or ends, rows at event heights and at RESIDUES heights in a spacing, with whole spacings
         from all of them.
  bound  what no set of trenches of that direction exceeds: at every x the most middle lines that keep the spacing,
         integrated over x; and the same for trenches each longer by a gap, times MOST / (MOST + gap). The greatest
         over all directions.
"""
import math
import sys
import time
from bisect import bisect_left, bisect_right

from exact_layouts import EPS, Plane, angles, chord, gaps, join, packed, reach_in_strip

LEAST, MOST = 0.6, 1.5
CUT = 1.0
RESIDUES = 16
X_STEP = 0.25  # m between samples of the bound


def read(path):
    found = []
    for line in open(path):
        key, *rest = line.split()
        if key == "lot":
            found.append({"seed": int(rest[0]), "shape": rest[1], "lot": [], "features": []})
        elif key == "trench":
            v = [float(x) for x in rest]
            found[-1]["wishes"] = dict(zip(("length", "width", "spacing", "gap", "run"), v))
        elif key == "corner":
            v = [float(x) for x in rest]
            found[-1]["lot"].append(((v[0], v[1]), v[2]))
        elif key == "feature":
            v = [float(x) for x in rest[3:]]
            found[-1]["features"].append({"kind": rest[0], "trench": float(rest[1]), "run": float(rest[2]),
                                          "cross": rest[3] == "1", "points": list(zip(v[1::2], v[2::2]))})
    return found


class Row:
    """Where a trench with its middle line at y is free, and where its head may be."""

    def __init__(self, p, y, least):
        h = p.width / 2 - EPS
        free = gaps([(e[0] + EPS, e[1] - EPS) for e in (reach_in_strip(c, y - h, y + h) for c in p.trench) if e],
                    p.x0, p.x1)
        self.free = [(a, b) for a, b in free if b - a >= least - EPS and p.open((a + b) / 2, y)]
        self.heads = p.heads(y, False) if self.free else []


def head_low(heads, a, b):
    """The lowest place for a head in a..b, or None."""
    for lo, hi in heads:
        if hi >= a:
            return max(lo, a) if max(lo, a) <= b else None
    return None


def head_high(heads, a, b):
    for lo, hi in reversed(heads):
        if lo <= b:
            return min(hi, b) if min(hi, b) >= a else None
    return None


class Packer:
    def __init__(self, least, most, gap):
        self.least, self.most, self.gap = least, most, gap

    def one(self, heads, a, b):
        if b - a < self.least - EPS:
            return 0.0
        best = 0.0
        for h in (head_low(heads, a, b), head_high(heads, a, b)):
            if h is not None:
                best = max(best, min(self.most, max(b - h, h - a)))
        return best if best >= self.least - EPS else 0.0

    def stretch(self, heads, a, b):
        """The most metres in a free stretch."""
        w, best = b - a, self.one(heads, a, b)
        k = 2
        while k * self.least + (k - 1) * self.gap <= w + EPS:
            total = min(k * self.most, w - (k - 1) * self.gap)
            if total > best:
                best = max(best, self.several(heads, a, b, k, total))
            k += 1
        return best

    def several(self, heads, a, b, k, total):
        """Equal trenches from a on: every one needs a head; where one has none, what its neighbours leave it."""
        size, at, got = total / k, a, 0.0
        slack = (b - a) - total - (k - 1) * self.gap
        for i in range(k):
            # what is left over lies where it helps the heads: at both ends by halves
            low = a if i == 0 else at
            high = b if i == k - 1 else at + size + (slack / 2 if i == 0 else 0)
            got += min(self.one(heads, low, high), self.most)
            at = high + self.gap
        return min(got, total)

    def row(self, row, low, high):
        """The most metres of a row between low and high."""
        parts = []
        for a, b in row.free:
            a, b = max(a, low), min(b, high)
            if b - a >= self.least - EPS:
                parts.append((a, b))
        if not parts:
            return 0.0
        if len(parts) == 1:
            return self.stretch(row.heads, *parts[0])
        return self.chain(row.heads, parts)

    def chain(self, heads, parts):
        """Neighbouring stretches nearer than the gap: one of the two gives way."""
        if len(parts) == 1:
            return self.stretch(heads, *parts[0])
        (a, b), (c, d) = parts[-2], parts[-1]
        short = self.gap - (c - b)
        if short <= EPS:
            return self.chain(heads, parts[:-1]) + self.stretch(heads, c, d)
        left = self.chain(heads, parts[:-2] + [(a, b - short)]) if b - short > a else (
            self.chain(heads, parts[:-2]) if parts[:-2] else 0.0)
        best = left + self.stretch(heads, c, d)
        if d > c + short:
            best = max(best, self.chain(heads, parts[:-1]) + self.stretch(heads, c + short, d))
        return max(best, self.chain(heads, parts[:-1]))


def heights(p, residues):
    """At event heights, at so many in a spacing, and whole spacings from them."""
    h, out = p.width / 2, set()
    at = [p.y0 + i * p.spacing / residues for i in range(residues)]
    for ax, ay, bx, by, r in p.trench:
        for y in (ay, by):
            at += [y - r - h, y + r + h]
    for e in at:
        k = math.ceil((p.y0 - e) / p.spacing)
        while e + k * p.spacing <= p.y1:
            out.add(round(e + k * p.spacing, 6))
            k += 1
    return sorted(out)


class Metres:
    def __init__(self, lot, angle):
        w = lot["wishes"]
        self.angle = angle
        self.p = p = Plane(lot, angle)
        self.least, self.most = LEAST * w["length"], MOST * w["length"]
        self.packer = Packer(self.least, self.most, w["gap"])
        self.gap = w["gap"]
        self.upper = self.bound()

    def bound(self):
        p, h = self.p, self.p.width / 2 - EPS

        def lines(x):
            free = gaps([(e[0] - h, e[1] + h) for e in (chord(c, x) for c in p.flip) if e], p.y0, p.y1)
            return [(a, b) for a, b in free if p.open(x, (a + b) / 2)]

        n = int((p.x1 - p.x0) / X_STEP) + 1
        cuts = [lines(p.x0 + (i + 0.5) * X_STEP) for i in range(n)]
        plain = sum(packed(c, p.spacing) for c in cuts if c) * X_STEP
        reach = int(self.gap / 2 / X_STEP)
        longer = 0.0
        for i in range(-reach, n + reach):
            near = [iv for c in cuts[max(0, i - reach):max(0, i + reach + 1)] for iv in c]
            longer += packed(join(near), p.spacing) * X_STEP if near else 0.0
        return min(plain, longer * self.most / (self.most + self.gap))

    def rows(self, residues):
        all_y = heights(self.p, residues)
        self.y, self.row = [], []
        for y in all_y:
            r = Row(self.p, y, self.least)
            if r.free:
                self.y.append(y)
                self.row.append(r)
        self.below = [bisect_right(self.y, y - self.p.spacing + EPS) for y in self.y]

    def column(self, low, high):
        """The most metres in rows between low and high."""
        best = [0.0]
        row = self.packer.row
        for i, r in enumerate(self.row):
            v = 0.0
            if r.free[0][0] < high and r.free[-1][1] > low:
                v = row(r, low, high)
            best.append(max(best[i], best[self.below[i]] + v))
        return best[-1]

    def common(self):
        return self.column(-math.inf, math.inf)

    def staggered(self):
        """Columns between cuts."""
        p = self.p
        ends = {p.x0, p.x1}
        for i in range(int((p.x1 - p.x0) / CUT) + 1):
            ends.add(p.x0 + i * CUT)
        ends = sorted(ends)
        best = {0: 0.0}
        value = [0.0] * len(ends)
        for j in range(1, len(ends)):
            value[j] = value[j - 1]
            for i in range(j):
                low = ends[i] + (self.gap if i else 0)
                if ends[j] - low < self.least:
                    break
                if value[i] + self.room(i, j, ends) <= value[j]:
                    continue
                value[j] = max(value[j], value[i] + self.column(low, ends[j]))
        return value[-1]

    def room(self, i, j, ends):
        """Of the column, what it cannot exceed: the integral of the bound over it."""
        if not hasattr(self, "integral"):
            h, p = self.p.width / 2 - EPS, self.p
            self.integral, total = [0.0], 0.0
            n = int((p.x1 - p.x0) / X_STEP) + 1
            for k in range(n):
                x = p.x0 + (k + 0.5) * X_STEP
                free = gaps([(e[0] - h, e[1] + h) for e in (chord(c, x) for c in p.flip) if e], p.y0, p.y1)
                total += packed([(a, b) for a, b in free if p.open(x, (a + b) / 2)], p.spacing) * X_STEP
                self.integral.append(total)
        at = [min(len(self.integral) - 1, max(0, int((e - self.p.x0) / X_STEP))) for e in (ends[i], ends[j])]
        return self.integral[min(at[1] + 1, len(self.integral) - 1)] - self.integral[at[0]] + 1e-6


def solve(lot):
    start = time.process_time()
    every = sorted((Metres(lot, a) for a in angles(lot)), key=lambda m: -m.upper)
    best, angle, common = 0.0, 0.0, 0.0
    rough = []
    for m in every:
        if m.upper <= best:
            break
        m.rows(4)
        v = m.common()
        rough.append((v, m))
        if v > best:
            best, angle = v, m.angle
    rough.sort(key=lambda r: -r[0])
    for v, m in rough:
        if m.upper <= best or v < 0.93 * best:
            continue
        m.rows(RESIDUES)
        v = m.common()
        common = max(common, v)
        s = m.staggered()
        if max(v, s) > best:
            best, angle = max(v, s), m.angle
    upper = max([best] + [m.upper for m in every])
    return {"metres": best, "common": common, "angle": angle, "bound": upper, "seconds": time.process_time() - start}


def main():
    found = read(sys.argv[1])
    first, last = (int(sys.argv[2]), int(sys.argv[3])) if len(sys.argv) > 3 else (1, len(found))
    for lot in found[first - 1:last]:
        r = solve(lot)
        print("metres %d %.3f %.6f %.3f %.3f %.1f" % (lot["seed"], r["metres"], r["angle"], r["common"], r["bound"],
                                                      r["seconds"]))
        sys.stdout.flush()


if __name__ == "__main__":
    main()
