#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The most equal trenches of one direction on 40 seeded lots, by mixed-integer programming.

    exact_layouts.py [first last] > lots.txt      # needs Debian's coinor-cbc

Shares no code with the program. A trench is a rectangle; its place in the plane turned to its direction is the
lower end (x, y) of its middle line. Two trenches keep the spacing sideways or the gap lengthwise, so they are
disjoint boxes of (length + gap) by spacing. At one end of a trench at least, a header trench has room: the
middle of that end keeps half a header's width and the header's clearance off everything.

For each direction:
  upper bound  lines a spacing apart: every box meets one of them, and boxes that meet the same line are disjoint
               along it. Likewise lines across, a length and a gap apart.
  lower bound  rows each packed from the left, rows chosen by dynamic programming; and columns likewise.
  where they differ and the upper one beats the best direction so far: candidates at event positions and whole
  spacings (lengths and gaps) from them, conflicts as cliques, solved by Cbc with `at least one more` asked.
"""
import math
import os
import subprocess
import sys
import tempfile
import time
from bisect import bisect_left, bisect_right

import lots

EPS = 1e-6
STEP = 0.25  # m between sampled rows and columns
MOST_CANDIDATES = 1400
CBC_SECONDS = 40  # for one direction
LOT_SECONDS = 150


def chord(c, y):
    """x-range of a capsule (ax, ay, bx, by, r) at height y, or None."""
    ax, ay, bx, by, r = c
    lo, hi = math.inf, -math.inf
    for px, py in ((ax, ay), (bx, by)):
        off = y - py
        if abs(off) <= r:
            h = math.sqrt(r * r - off * off)
            lo, hi = min(lo, px - h), max(hi, px + h)
    dx, dy = bx - ax, by - ay
    n = math.hypot(dx, dy)
    if n > 0:
        nx, ny = -dy / n * r, dx / n * r
        for sx, sy in ((nx, ny), (-nx, -ny)):
            y0, y1 = ay + sy, by + sy
            if y0 == y1:
                if y == y0:
                    lo, hi = min(lo, ax + sx, bx + sx), max(hi, ax + sx, bx + sx)
            elif min(y0, y1) <= y <= max(y0, y1):
                x = ax + sx + (y - y0) / (y1 - y0) * dx
                lo, hi = min(lo, x), max(hi, x)
    return (lo, hi) if lo <= hi else None


def reach_in_strip(c, low, high):
    """x-range of a capsule within a strip, or None: a convex set is farthest out in the strip's edges or at its
    own extreme points."""
    ax, ay, bx, by, r = c
    if max(ay, by) + r <= low or min(ay, by) - r >= high:
        return None
    lo, hi = math.inf, -math.inf
    for px, py in ((ax, ay), (bx, by)):
        if low <= py <= high:
            lo, hi = min(lo, px - r), max(hi, px + r)
    for y in (low, high):
        e = chord(c, y)
        if e:
            lo, hi = min(lo, e[0]), max(hi, e[1])
    return (lo, hi) if lo <= hi else None


def gaps(blocked, low, high):
    blocked.sort()
    out, at = [], low
    for a, b in blocked:
        if a >= high:
            break
        if a >= at:
            out.append((at, a))
        if b > at:
            at = b
    if at <= high:
        out.append((at, high))
    return out


def meet(a, b):
    out, i, j = [], 0, 0
    while i < len(a) and j < len(b):
        lo, hi = max(a[i][0], b[j][0]), min(a[i][1], b[j][1])
        if lo <= hi:
            out.append((lo, hi))
        if a[i][1] < b[j][1]:
            i += 1
        else:
            j += 1
    return out


def join(parts):
    out = []
    for a, b in sorted(parts):
        if out and a <= out[-1][1] + EPS:
            out[-1][1] = max(out[-1][1], b)
        else:
            out.append([a, b])
    return [(a, b) for a, b in out]


def packed(intervals, pitch):
    """The most points of the intervals that keep the pitch: always the lowest that may be taken."""
    n, at = 0, -math.inf
    for a, b in intervals:
        x = max(a, at)
        if x <= b + EPS:
            k = int((b + EPS - x) / pitch) + 1
            n += k
            at = x + k * pitch
    return n


class Plane:
    """One lot turned by -angle."""

    def __init__(self, lot, angle):
        w = lot["wishes"]
        self.length, self.width = w["length"], w["width"]
        self.spacing, self.pitch = w["spacing"], w["length"] + w["gap"]
        c, s = math.cos(angle), math.sin(angle)

        def turn(p):
            return (c * p[0] + s * p[1], c * p[1] - s * p[0])

        ring = [turn(p) for p, _ in lot["lot"]]
        self.ring, self.areas, self.head_areas = ring, [], []
        self.trench, self.head = [], []
        half = w["run"] / 2
        for i, (_, setback) in enumerate(lot["lot"]):
            a, b = ring[i], ring[(i + 1) % len(ring)]
            self.trench.append((*a, *b, setback))
            self.head.append((*a, *b, setback + half))
        for f in lot["features"]:
            p = [turn(q) for q in f["points"]]
            pairs = [(p[0], p[0])] if len(p) == 1 else list(zip(p, p[1:]))
            if len(p) > 2:
                pairs.append((p[-1], p[0]))
                self.areas.append(p)
                self.head_areas.append(p)
            for a, b in pairs:
                self.trench.append((*a, *b, f["trench"]))
                if not f["cross"]:
                    self.head.append((*a, *b, f["run"] + half))
        self.flip = [tuple((c[1], c[0], c[3], c[2], c[4])) for c in self.trench]
        self.head_flip = [tuple((c[1], c[0], c[3], c[2], c[4])) for c in self.head]
        xs, ys = [p[0] for p in ring], [p[1] for p in ring]
        self.x0, self.x1, self.y0, self.y1 = min(xs), max(xs), min(ys), max(ys)

    def open(self, x, y):
        def within(ring):
            odd = False
            for i in range(len(ring)):
                (ax, ay), (bx, by) = ring[i - 1], ring[i]
                if (ay > y) != (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
                    odd = not odd
            return odd

        return within(self.ring) and not any(within(a) for a in self.areas)

    def heads(self, at, flipped):
        caps = self.head_flip if flipped else self.head
        low, high = (self.y0, self.y1) if flipped else (self.x0, self.x1)
        return gaps([(e[0] + EPS, e[1] - EPS) for e in (chord(c, at) for c in caps) if e], low, high)

    def row(self, y):
        """The x at which a trench with its middle line at y may begin."""
        h = self.width / 2 - EPS
        free = gaps([(e[0] + EPS, e[1] - EPS) for e in (reach_in_strip(c, y - h, y + h) for c in self.trench) if e],
                    self.x0, self.x1)
        free = [(a, b - self.length) for a, b in free if b - a >= self.length - EPS and self.open((a + b) / 2, y)]
        free = [(a, max(a, b)) for a, b in free]
        if not free:
            return free
        heads = self.heads(y, False)
        return meet(free, join(heads + [(a - self.length, b - self.length) for a, b in heads]))

    def column(self, x):
        """The y at which a trench from x on may lie."""
        h = self.width / 2
        low, high = x + EPS, x + self.length - EPS
        free = gaps([(e[0] - h + EPS, e[1] + h - EPS)
                     for e in (reach_in_strip(c, low, high) for c in self.flip) if e], self.y0, self.y1)
        free = [(a, b) for a, b in free if self.open(x + self.length / 2, (a + b) / 2)]
        if not free:
            return free
        return meet(free, join(self.heads(x, True) + self.heads(x + self.length, True)))


def lines_bound(samples, step, across, along):
    """Every box (`along` long, `across` deep) meets one of the lines `across` apart."""
    n = len(samples)
    reach = int(math.ceil(across / step)) + 1  # a sample more, for what lies between samples
    caps = []
    for i in range(n):
        parts = [iv for s in samples[max(0, i - reach):i + 2] for iv in s]
        caps.append(packed(join(parts), along) if parts else 0)
    best = math.inf
    offsets = max(1, int(across / step))
    for k in range(offsets):
        total, at = 0, k * step
        while True:
            i = int(round(at / step))
            total += caps[min(i, n - 1)]
            if at > (n - 1) * step:
                break
            at += across
            if total >= best:
                break
        best = min(best, total)
    return best


def levels(cut, low, samples, step, pitch):
    """Heights at which what an interval holds changes, on both sides."""
    events = []

    def capacity(free):
        return tuple(packed([i], pitch) for i in free)

    def narrow(a, na, b, nb, depth):
        if na == nb:
            return
        if depth == 0:
            events.extend((a, b))
            return
        m = (a + b) / 2
        nm = capacity(cut(m))
        narrow(a, na, m, nm, depth - 1)
        narrow(m, nm, b, nb, depth - 1)

    counts = [capacity(s) for s in samples]
    for i in range(1, len(samples)):
        narrow(low + (i - 1) * step, counts[i - 1], low + i * step, counts[i], 16)
    return events


def multiples(events, pitch, low, high):
    out = set()
    for e in events:
        k = math.ceil((low - e) / pitch)
        while e + k * pitch <= high:
            out.add(round(e + k * pitch, 7))
            k += 1
    return sorted(out)


def best_set(at, cuts, pitch_across, pitch_along):
    """Dynamic programming over the heights."""
    best = [0] * (len(at) + 1)
    for i, y in enumerate(at):
        j = bisect_right(at, y - pitch_across + EPS, 0, i)
        best[i + 1] = max(best[i], best[j] + packed(cuts[i], pitch_along))
    return best[-1]


class Direction:
    def __init__(self, lot, angle):
        self.angle, self.p = angle, Plane(lot, angle)
        p = self.p
        self.rows = [p.row(p.y0 + i * STEP) for i in range(int((p.y1 - p.y0) / STEP) + 2)]
        across = max(0.0, p.x1 - p.length - p.x0)
        self.columns = [p.column(p.x0 + i * 2 * STEP) for i in range(int(across / STEP / 2) + 2)]
        self.upper = min(lines_bound(self.rows, STEP, p.spacing, p.pitch),
                         lines_bound(self.columns, 2 * STEP, p.pitch, p.spacing))
        y = [p.y0 + i * STEP for i in range(len(self.rows))]
        self.rough = best_set(y, self.rows, p.spacing, p.pitch)

    def lower(self):
        p = self.p
        y = multiples(levels(p.row, p.y0, self.rows, STEP, p.pitch), p.spacing, p.y0, p.y1)
        x = multiples(levels(p.column, p.x0, self.columns, 2 * STEP, p.spacing), p.pitch,
                      p.x0, p.x1 - p.length)
        self.at_y = [(h, r) for h, r in ((h, p.row(h)) for h in y) if r]
        self.at_x = [(h, r) for h, r in ((h, p.column(h)) for h in x) if r]
        return max(best_set([h for h, _ in self.at_y], [r for _, r in self.at_y], p.spacing, p.pitch),
                   best_set([h for h, _ in self.at_x], [r for _, r in self.at_x], p.pitch, p.spacing))

    def candidates(self):
        p, seen = self.p, {}
        for cuts, pitch, turned in ((self.at_y, p.pitch, False), (self.at_x, p.spacing, True)):
            for h, free in cuts:
                at = set()
                for a, b in free:
                    k = 0
                    while a + k * pitch <= b + EPS:
                        at.add(min(b, a + k * pitch))
                        at.add(max(a, b - k * pitch))
                        k += 1
                for v in at:
                    c = (v, h) if not turned else (h, v)
                    seen.setdefault((round(c[0], 3), round(c[1], 3)), c)
        return sorted(seen.values())

    def solve(self, at_least, seconds):
        """(the most trenches or None, proved)"""
        c = self.candidates()
        proved = len(c) <= MOST_CANDIDATES
        if not proved:
            c = c[::len(c) // MOST_CANDIDATES + 1]
        n, status = run_cbc(cliques(c, self.p.pitch, self.p.spacing), len(c), at_least, seconds)
        return n, proved and status


def cliques(c, pitch, spacing):
    """Boxes over the lower left and the upper left corner of each box: together they hold every conflict."""
    xs = [p[0] for p in c]
    found = set()
    for x, y in c:
        near = range(bisect_right(xs, x - pitch + 2 * EPS), bisect_right(xs, x))
        found.add(frozenset(i for i in near if y - spacing + 2 * EPS < c[i][1] <= y))
        found.add(frozenset(i for i in near if y <= c[i][1] < y + spacing - 2 * EPS))
    return [sorted(s) for s in found if len(s) > 1]


def run_cbc(rows, n, at_least, seconds):
    with tempfile.TemporaryDirectory() as d:
        lp, sol = os.path.join(d, "m.lp"), os.path.join(d, "m.sol")
        with open(lp, "w") as f:
            every = ["x%d" % i for i in range(n)]
            f.write("Maximize\n obj: " + wrapped(every) + "\nSubject To\n")
            f.write(" least: " + wrapped(every) + " >= %d\n" % at_least)
            for k, row in enumerate(rows):
                f.write(" c%d: " % k + wrapped(["x%d" % i for i in row]) + " <= 1\n")
            f.write("Binaries\n" + "\n".join(every) + "\nEnd\n")
        out = subprocess.run(["cbc", lp, "-sec", str(int(seconds)), "-solve", "-solu", sol], capture_output=True,
                             text=True).stdout
        head = open(sol).readline() if os.path.exists(sol) else ""
    if "Infeasible" in head or "infeasible" in out:
        return None, True
    if head.startswith("Optimal"):
        return int(round(abs(float(head.split()[-1])))), True
    if "objective value" in head and "Stopped" in head and "no integer solution" not in out:
        value = abs(float(head.split()[-1]))
        return (int(round(value)) if at_least <= value < 1e6 else None), False
    return None, False


def wrapped(names):
    return "\n + ".join(" + ".join(names[i:i + 20]) for i in range(0, len(names), 20))


def angles(lot):
    rings = [[p for p, _ in lot["lot"]]] + [f["points"] for f in lot["features"] if f["kind"] == "house"]
    out = []
    for ring in rings:
        for i in range(len(ring)):
            a = math.atan2(ring[i][1] - ring[i - 1][1], ring[i][0] - ring[i - 1][0]) % math.pi
            out += [a, (a + math.pi / 2) % math.pi]
    out += [math.radians(d) for d in range(180)]
    kept = []
    for a in out:
        if all(min(abs(a - b), math.pi - abs(a - b)) > 1e-5 for b in kept):
            kept.append(a)
    return kept


def solve(lot):
    start = time.process_time()
    every = [Direction(lot, a) for a in angles(lot)]
    best, at = max((d.rough, -i) for i, d in enumerate(every))
    angle = every[-at].angle
    every.sort(key=lambda d: (-d.rough, -d.upper))
    tight = []
    for d in every:
        if d.upper <= best:
            continue
        low = d.lower()
        if low > best:
            best, angle = low, d.angle
        tight.append(d)
    proved, wall, mips = True, time.time(), 0
    for d in sorted(tight, key=lambda d: -d.upper):
        while d.upper > best:
            left = LOT_SECONDS - (time.time() - wall)
            if left < 2:
                proved = False
                break
            mips += 1
            n, sure = d.solve(best + 1, min(left, CBC_SECONDS))
            proved = proved and sure
            if n is None:
                break
            best, angle = n, d.angle
            if sure:
                break
    upper = max([best] + [d.upper for d in every])
    used = time.process_time() - start + (time.time() - wall if mips else 0)
    return {"count": best, "angle": angle, "proved": proved, "bound": upper, "seconds": used, "mips": mips}


def worth_solving(lot):
    """Neither empty nor as large as no garden is."""
    return 5 <= max(Direction(lot, math.radians(d)).rough for d in range(0, 180, 20)) <= 24


def main():
    first, last = (int(sys.argv[1]), int(sys.argv[2])) if len(sys.argv) > 2 else (1, 40)
    for seed in range(first, last + 1):
        lot = next(lot for lot in (lots.make(seed + 1000 * k) for k in range(100)) if worth_solving(lot))
        r = solve(lot)
        print(lots.text(lot))
        print("most %d %.6f %s %d %.1f" % (r["count"], r["angle"], "proved" if r["proved"] else "unproved",
                                           r["bound"], r["seconds"]))
        print("seed", seed, lot["shape"], r, file=sys.stderr)
        sys.stdout.flush()


if __name__ == "__main__":
    main()
