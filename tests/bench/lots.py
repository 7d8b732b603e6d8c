# SPDX-License-Identifier: GPL-3.0-or-later
"""Seeded lots of varied shape for exact_layouts.py, and their plain-text form."""
import math
import random

SHAPES = ("convex", "l_shaped", "wedge", "concave")


def box(x, y, w, d):
    return [(x, y), (x + w, y), (x + w, y + d), (x, y + d)]


class Maker:
    def __init__(self, seed):
        self.r = random.Random(seed)
        self.seed = seed
        self.shape = SHAPES[seed % len(SHAPES)]
        self.features = []

    def between(self, low, high):
        return round(low + (high - low) * self.r.random(), 2)

    def chance(self, p):
        return self.r.random() < p

    def outline(self):
        w, d = self.w, self.d
        if self.shape == "l_shaped":
            a, b = self.between(0.35 * w, 0.65 * w), self.between(0.35 * d, 0.65 * d)
            return [(0, 0), (w, 0), (w, b), (a, b), (a, d), (0, d)]
        if self.shape == "wedge":
            return [(0, 0), (w, self.between(0, 0.2 * d)), (self.between(0.5 * w, w), d),
                    (self.between(0, 0.3 * w), self.between(0.7 * d, d))]
        n = self.r.randint(5, 9)
        star = self.shape == "concave"
        ring = []
        for i in range(n):
            at = 2 * math.pi * (i + 0.4 * self.r.random()) / n
            far = self.between(0.55, 1.1) if star else 1.0
            ring.append((round(w / 2 * (1 + far * math.cos(at)), 2), round(d / 2 * (1 + far * math.sin(at)), 2)))
        return ring

    def add(self, kind, trench, run, points, crossed=False):
        self.features.append({"kind": kind, "trench": trench, "run": run, "cross": crossed,
                              "points": [(round(x, 2), round(y, 2)) for x, y in points]})

    def anywhere(self):
        return (self.between(0.1 * self.w, 0.9 * self.w), self.between(0.1 * self.d, 0.9 * self.d))

    def make(self):
        self.w, self.d = self.between(28, 50), self.between(30, 56)
        lot = self.outline()
        edges = [self.between(1, 4) if self.chance(0.5) else 3.0 for _ in lot]
        cx = sum(p[0] for p in lot) / len(lot)
        hw, hd = self.between(8, 13), self.between(7, 10)
        house = box(cx - hw / 2, self.between(0.08, 0.3) * self.d, hw, hd)
        self.add("house", self.between(1.5, 3), 0.6, house)
        if self.chance(0.5):
            x, y = self.anywhere()
            self.add("drain_field", self.between(1, 3), self.between(1, 2), box(x, y, self.between(4, 8), 4))
        if self.chance(0.5):
            self.add("well", self.between(2, 5), self.between(1, 2), [self.anywhere()])
        for _ in range(self.r.randint(0, 3)):
            self.add("tree", self.between(1.5, 3.5), self.between(1, 1.5), [self.anywhere()])
        for _ in range(self.r.randint(0, 2)):
            self.add("utility", self.between(0.5, 1), 0.0, [self.anywhere(), (self.between(0, self.w), 0.0)], True)
        wishes = {"length": self.between(9, 22), "width": self.between(0.4, 1), "spacing": self.between(2.8, 4.5),
                  "gap": self.between(0.6, 2), "run": self.between(0.3, 0.6)}
        turn = self.between(0, 3) if self.chance(0.5) else 0.0
        c, s = math.cos(turn), math.sin(turn)

        def move(p):
            return (round(c * p[0] - s * p[1], 3), round(s * p[0] + c * p[1], 3))

        for f in self.features:
            f["points"] = [move(p) for p in f["points"]]
        return {"seed": self.seed, "shape": self.shape, "wishes": wishes,
                "lot": [(move(p), e) for p, e in zip(lot, edges)], "features": self.features}


def make(seed):
    return Maker(seed).make()


def text(lot):
    """As tests/files/exact_lots.txt has it; tests/support/exact_lots.h reads it."""
    w = lot["wishes"]
    out = ["lot %d %s" % (lot["seed"], lot["shape"]),
           "trench %g %g %g %g %g" % (w["length"], w["width"], w["spacing"], w["gap"], w["run"])]
    for (x, y), setback in lot["lot"]:
        out.append("corner %.3f %.3f %g" % (x, y, setback))
    for f in lot["features"]:
        points = " ".join("%.3f %.3f" % p for p in f["points"])
        out.append("feature %s %g %g %d %s" % (f["kind"], f["trench"], f["run"], f["cross"], points))
    return "\n".join(out)
