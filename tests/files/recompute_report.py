#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads a calculation report as poppler sees it and works figures out again from the inputs printed in it.

    recompute_report.py UNDERLAWN SOURCE_DIR

The formulas here are written from those the report prints; none of the program's code is used. Fails where a
figure differs by more than a millionth, or where fewer figures than expected could be worked out.
"""
import math
import pathlib
import re
import subprocess
import sys
import tempfile

LINE = re.compile(r"^([a-z][a-z0-9_.\-+,]*) = (-?[0-9][0-9.e+\-]*)(?:\s.*)?$")


def figures_of(program, plan):
    with tempfile.TemporaryDirectory() as folder:
        pdf = pathlib.Path(folder) / "report.pdf"
        subprocess.run([program, "sheet", str(plan), "--kind", "report", "--out", str(pdf)], check=True,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        text = subprocess.run(["pdftotext", "-raw", str(pdf), "-"], check=True, capture_output=True).stdout.decode()
    found = {}
    for line in text.splitlines():
        match = LINE.match(line.strip())
        if match:
            found[match.group(1)] = float(match.group(2))
    return found


def elliptic_e(m):
    """Complete elliptic integral of the second kind by the arithmetic-geometric mean."""
    a, b, c, total, power = 1.0, math.sqrt(1 - m), math.sqrt(m), 0.0, 0.5
    total = power * c * c
    for _ in range(40):
        a, b, c = (a + b) / 2, math.sqrt(a * b), (a - b) / 2
        power *= 2
        total += power * c * c
        if c < 1e-17:
            break
    return math.pi / (2 * a) * (1 - total)


def loop_length(diameter, pitch):
    r, c = diameter / 2, pitch / (2 * math.pi)
    return 4 * (r + c) * elliptic_e(4 * r * c / (r + c) ** 2)


def expected(f):
    """Every figure worked out again, by key, from other printed figures."""
    out = {}

    def put(key, needs, formula):
        if key in f and all(n in f for n in needs):
            out[key] = formula(*[f[n] for n in needs])

    put("coil.loop_length_m", ["coil.loop_diameter_m", "coil.pitch_m"], loop_length)
    put("coil.loop_length_by_sum_m", ["coil.loop_diameter_m", "coil.pitch_m"], lambda d, p: math.pi * d + p)
    put("coil.loops", ["coil.trench_length_m", "coil.loop_diameter_m", "coil.pitch_m"], lambda l, d, p: (l - d) / p)
    put("coil.loop_pipe_m", ["coil.loops", "coil.loop_length_m"], lambda n, l: n * l)
    put("coil.return_pipe_m", ["coil.trench_length_m"], lambda l: l)
    put("coil.length_m", ["coil.loop_pipe_m", "coil.return_pipe_m"], lambda a, b: a + b)
    put("coil.pipe_per_trench", ["coil.length_m", "coil.trench_length_m"], lambda a, b: a / b)
    put("soil.diffusivity_m2_s", ["soil.conductivity_w_mk", "soil.heat_capacity_j_m3k"], lambda k, c: k / c)
    put("dig.top_width_m", ["dig.trench_width_m", "dig.slope_h_per_v", "dig.trench_depth_m"],
        lambda w, s, d: w + 2 * s * d)
    put("header.pipe_m", ["header.length_m"], lambda l: 2 * l)
    put("run.pipe_m", ["run.length_m"], lambda l: 2 * l)
    put("run.dug_length_m", ["run.length_m", "run.shared_m"], lambda a, b: a - b)
    put("buy.header_pipe_m", ["header.pipe_m", "run.pipe_m", "buy.allowance_ratio"], lambda h, r, a: (h + r) * (1 + a))
    put("buy.coil_pipe_m", ["buy.coils", "buy.coil_length_m"], lambda n, l: n * l)
    put("buy.pipe_m", ["buy.coil_pipe_m", "buy.header_pipe_m"], lambda a, b: a + b)
    put("heat.margin_cold_k", ["heat.coldest_c", "heat.coldest_allowed_c"], lambda a, b: a - b)
    put("cost.by_capacity_money", ["cost.total_money", "flow.capacity_w"], lambda c, p: c / (p / 1000))

    trenches = sorted({m.group(1) for k in f for m in [re.match(r"trench\.(\d+)\.length_m$", k)] if m}, key=int)
    for n in trenches:
        t = f"trench.{n}."
        if not any(k.startswith(t + "bend_") for k in f):
            put(t + "length_m", [t + "head_x_m", t + "head_y_m", t + "end_x_m", t + "end_y_m"],
                lambda a, b, c, d: math.hypot(c - a, d - b))

    parts = [(f"trench.{n}", f"trench.{n}.length_m", f"trench.{n}.width_m", f"trench.{n}.depth_m") for n in trenches]
    parts += [("header", "header.length_m", "dig.run_width_m", "dig.run_depth_m"),
              ("run", "run.dug_length_m", "dig.run_width_m", "dig.run_depth_m")]
    for sides, sloped in (("vertical", False), ("sloped", True)):
        for part, length, width, depth in parts:
            key = f"dig.{sides}.{part}."
            slope = f.get("dig.slope_h_per_v", 0) if sloped else 0
            put(key + "bank_volume_m3", [length, width, depth], lambda l, w, d, s=slope: l * d * (w + s * d))
            put(key + "bedding_volume_m3", [length, width, "dig.bedding_m"], lambda l, w, b, s=slope: l * b * (w + s * b))
            put(key + "loose_volume_m3", [key + "bank_volume_m3", "ground.swell_ratio"], lambda v, s: v * (1 + s))
            put(key + "backfill_volume_m3", [key + "bank_volume_m3", key + "bedding_volume_m3"], lambda a, b: a - b)
            put(key + "surplus_volume_m3",
                [key + "bank_volume_m3", key + "backfill_volume_m3", "ground.shrinkage_ratio", "ground.swell_ratio"],
                lambda v, b, k, s: (v - b / (1 - k)) * (1 + s))
        for what in ("bank", "bedding", "loose", "backfill", "surplus"):
            keys = [f"dig.{sides}.{p[0]}.{what}_volume_m3" for p in parts]
            keys = [k for k in keys if k in f]
            put(f"dig.{sides}.total.{what}_volume_m3", keys, lambda *v: sum(v))

    for stake in {m.group(1) for k in f for m in [re.match(r"(stake\..*)\.cut_rad$", k)] if m}:
        if f[stake + ".cut_rad"] > 0 and stake + ".first_distance_m" in f:
            assert 0 <= f[stake + ".cut_rad"] <= math.pi / 2 + 1e-12, stake

    # The bill: a line is what is bought times its price; then what is put on top.
    lines = []
    for key in sorted(f):
        m = re.match(r"cost\.(.+)_money$", key)
        if not m or m.group(1) in ("total", "by_capacity"):
            continue
        amounts = [k for k in f if re.match(r"amount\." + re.escape(m.group(1)) + r"(_m|_m2|_m3|_s|_kg)?$", k)]
        price = f"price.{m.group(1)}_money"
        if len(amounts) == 1 and price in f:
            lines.append(key)
            put(key, [amounts[0], price], lambda a, p: a * p)
    put("bill.cost_money", lines, lambda *v: sum(v))
    put("cost.total_money", ["bill.cost_money", "bill.overhead_money", "bill.markup_money", "bill.tax_money"],
        lambda *v: sum(v))
    return out


def main():
    program, source = sys.argv[1], pathlib.Path(sys.argv[2])
    wrong = 0
    for name in ("alder-lane", "kestrel-bend"):
        f = figures_of(program, source / "samples" / f"{name}.underlawn")
        again = expected(f)
        for key, value in again.items():
            if abs(value - f[key]) > 1e-6 * max(1.0, abs(value)):
                print(f"{name}: {key} is printed as {f[key]!r}, worked out as {value!r}")
                wrong += 1
        print(f"{name}: {len(f)} figures read, {len(again)} worked out again")
        if len(f) < 300 or len(again) < 80:
            print(f"{name}: too few")
            wrong += 1
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
