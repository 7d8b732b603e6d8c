#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Reads a calculation report as poppler sees it and works figures out again from the inputs printed in it.

    recompute_report.py UNDERLAWN SOURCE_DIR

The formulas here are written from those the report prints; none of the program's code is used. Fails where a
figure differs by more than a millionth, where fewer figures than expected could be worked out, or where one is
printed that neither was entered nor says how it came about, from what, or by which source.
"""
import json
import math
import pathlib
import re
import subprocess
import sys
import tempfile

LINE = re.compile(r"^([a-z][A-Za-z0-9_.\-+,]*) = (-?[0-9][0-9.e+\-]*)(?:\s.*)?$")


def text_of(program, plan, *options):
    with tempfile.TemporaryDirectory() as folder:
        pdf = pathlib.Path(folder) / "report.pdf"
        subprocess.run([program, "sheet", str(plan), "--kind", "report", *options, "--out", str(pdf)], check=True,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        return subprocess.run(["pdftotext", "-raw", str(pdf), "-"], check=True, capture_output=True).stdout.decode()


def figures_in(text):
    found = {}
    for line in text.splitlines():
        match = LINE.match(line.strip())
        if match:
            found[match.group(1)] = float(match.group(2))
    return found


ENTRY = re.compile(r"^(\d+\.\d+)  ?\S")
HOW = ("How:", "Cómo:")
WHENCE = ("From:", "Source:", "A partir de:", "Fuente:")
ENTERED = ("(entered", "(anotado")


def unsourced(text):
    """Keys of figures that do not say whence they come, and numbers named that no figure has."""
    lines = [line.strip() for line in text.splitlines()]
    keys = [i for i, line in enumerate(lines) if LINE.match(line)]
    numbers, named, bad = set(), set(), []
    for k, i in enumerate(keys):
        # Its number stands over its key; a long name or value takes further lines.
        numbers.update(m.group(1) for m in map(ENTRY.match, lines[max(0, i - 5):i]) if m)
        block = " ".join(lines[i:keys[k + 1] if k + 1 < len(keys) else i + 40])
        named.update(re.findall(r"\[(\d+\.\d+)\]", block))
        entered = any(word in block for word in ENTERED)
        derived = any(word in block for word in HOW) and any(word in block for word in WHENCE)
        if not entered and not derived:
            bad.append(LINE.match(lines[i]).group(1))
    return bad, sorted(named - numbers)


def entries_in(text):
    """What stands under each key: how it came about, from what."""
    lines = [line.strip() for line in text.splitlines()]
    keys = [i for i, line in enumerate(lines) if LINE.match(line)]
    found = {}
    for k, i in enumerate(keys):
        end = keys[k + 1] if k + 1 < len(keys) else i + 40
        # The next one begins with its number.
        end = max((j for j in range(i + 1, min(end, len(lines))) if ENTRY.match(lines[j])), default=end)
        found[LINE.match(lines[i]).group(1)] = " ".join(lines[i:end])
    return found


def inputs_in(text):
    """The keys that each figure is said to come from, by their numbers in the report."""
    lines = [line.strip() for line in text.splitlines()]
    number_of, last = {}, None
    for line in lines:
        number, key = ENTRY.match(line), LINE.match(line)
        last = number.group(1) if number else last
        if key and last:
            number_of[last], last = key.group(1), None
    return {key: [number_of[n] for n in re.findall(r"\[(\d+\.\d+)\]", words) if n in number_of]
            for key, words in entries_in(text).items()}


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


def expect_work(f, put, trenches):
    """Hours, days and counts of the job, from amounts and rates."""
    day = f.get("crew.day_length_s")
    coils = [f"trench.{n}.coil_length_m" for n in trenches]
    put("cost.pipe_in_coils_m", coils, lambda *v: sum(v))
    put("days.coil_making", ["cost.pipe_in_coils_m", "crew.coil_making_s"], lambda m, s: m * s / day)
    put("days.coil_laying", ["crew.coil_laying_s"] + [f"trench.{n}.length_m" for n in trenches],
        lambda s, *v: sum(v) * s / day)
    if f.get("order.hauled") == 0:
        put("days.digging", ["dig.total.bank_volume_m3", "ground.swell_ratio", "crew.excavator_rate_m3",
                             "cost.met_by_hand", "crew.hand_crossing_s"],
            lambda v, s, r, n, h: (v * (1 + s) / r * 3600 + n * h) / day)
    if f.get("order.hauled") == 0 and f.get("order.filled_early") == 0:
        put("days.filling", ["dig.total.backfill_volume_m3", "dig.total.bedding_volume_m3", "ground.shrinkage_ratio",
                             "ground.swell_ratio", "crew.loader_rate_m3"],
            lambda v, b, k, s, r: (v / (1 - k) * (1 + s) + b) / r * 3600 / day)
    put("days.joining", ["header.length_m", "run.length_m", "crew.header_laying_s", "layout.joints",
                         "crew.joint_making_s", "crew.joiners"],
        lambda h, r, m, n, s, j: ((h + r) * m + n * s / j) / day)
    put("days.testing", ["crew.test_filling_s", "test.duration_s", "crew.coil_proving_s", "days.coils_proved"],
        lambda a, b, c, n: (a + b + c * n) / day)
    put("days.paid", ["days.open"], lambda d: math.ceil(d - 1e-9))
    put("days.open", ["calendar.filled"], lambda d: d)
    put("calendar.days", ["calendar.filled"], lambda d: math.ceil(d - 1e-9))
    put("calendar.reserve", ["calendar.days", "crew.rain_slack_ratio"], lambda d, r: math.ceil(d * r - 1e-9))
    for n in range(1, int(f.get("order.steps", 0)) + 1):
        step = f"order.step.{n}."
        put(step + "spoil_height_m", [step + "spoil_width_m", "ground.repose_rad"],
            lambda b, r: b / 2 * math.tan(r))
    put("need.joint", ["layout.joints"], lambda n: n)
    put("need.digging_m3", ["dig.total.bank_volume_m3"], lambda v: v)
    put("need.bedding_m3", ["dig.total.bedding_volume_m3"], lambda v: v)
    put("need.fill_earth_m3", ["dig.total.surplus_volume_m3"], lambda v: -v)
    put("need.earth_off_m3", ["dig.total.surplus_volume_m3"], lambda v: v)
    put("need.hand_crossing", ["cost.met_by_hand"], lambda n: n)
    put("need.crew_day_s", ["days.paid"], lambda d: d * 86400)
    put("need.crew_day", ["days.paid"], lambda d: d)
    put("need.lawn_m2", ["layout.lawn_m2"], lambda a: a)
    put("need.seed_kg", ["layout.lawn_m2", "counting.seed_kg"], lambda a, s: a * s)
    put("need.straw", ["layout.lawn_m2", "counting.straw_m2"], lambda a, s: math.ceil(a / s))
    put("need.warning_tape_m", ["dig.length_m", "counting.tape_lines"], lambda m, n: m * n)
    put("need.tracer_wire_m", ["dig.length_m"], lambda m: m)
    put("need.grout", ["counting.grout"], math.ceil)


def expect_running(f, put):
    """What heating and cooling costs, from its parts."""
    put("run.loop.running_money", ["run.loop.energy_cost_money", "run.loop.maintenance_money"], lambda a, b: a + b)
    for other in {m.group(1) for k in f for m in [re.match(r"(run\.other_\d+)\.first_money$", k)] if m}:
        put(other + ".running_money", [other + ".energy_cost_money", other + ".maintenance_money"], lambda a, b: a + b)
        put(other + ".extra_money", ["run.loop.first_money", other + ".first_money"], lambda a, b: a - b)
        put(other + ".saved_money", [other + ".running_money", "run.loop.running_money"], lambda a, b: a - b)
        put(other + ".payback", [other + ".extra_money", other + ".saved_money"], lambda a, b: a / b)
        put(other + ".net_savings_money", [other + ".life_cycle_money", "run.loop.life_cycle_money"],
            lambda a, b: a - b)
        put(other + ".emission_saved_kg", [other + ".emission_kg", "run.loop.emission_kg"], lambda a, b: a - b)


def corners_named(text):
    """The house corner that each taped distance is said to be from."""
    lines = [line.strip() for line in text.splitlines()]
    named = {}
    for i, line in enumerate(lines):
        match = LINE.match(line)
        if match and match.group(1).endswith("_distance_m"):
            said = re.search(r"from corner (\w+)", " ".join(lines[max(0, i - 3):i]).split(" = ")[-1])
            if said:
                named[match.group(1)] = said.group(1).lower()
    return named


def expect_places(f, put, corners):
    """Lot, crossings and stakes from their coordinates."""
    n = int(f.get("site.lot_corners", 0))
    corner = [(f"site.corner.{i + 1}.x_m", f"site.corner.{i + 1}.y_m") for i in range(n)]
    flat = [k for pair in corner for k in pair]
    put("site.lot_area_m2", flat, lambda *v: abs(sum(
        v[2 * i] * v[(2 * i + 3) % len(v)] - v[(2 * i + 2) % len(v)] * v[2 * i + 1] for i in range(n))) / 2)
    for i in range(n):
        put(f"site.edge.{i + 1}.length_m", [*corner[i], *corner[(i + 1) % n]],
            lambda a, b, c, d: math.hypot(c - a, d - b))
    put("site.lot_perimeter_m", [f"site.edge.{i + 1}.length_m" for i in range(n)], lambda *v: sum(v))
    put("layout.bearing_rad", ["site.north_rad", "layout.direction_rad"],
        lambda n, d: (n - d) % (2 * math.pi) if f["layout.bearing_rad"] >= 0 else n - d)
    put("layout.field_trenches", ["layout.circuits_placed", "layout.supply_trenches"], lambda a, b: a - b)
    for key, corner in corners.items():
        stake = key[:key.index(".", 6)]
        own = [stake + ".x_m", stake + ".y_m"]
        at = re.match(r"stake\.(\d+)-(head|end)", stake)
        place = own if own[0] in f or not at else [f"trench.{at.group(1)}.{at.group(2)}_{c}_m" for c in "xy"]
        put(key, place + [f"stake.corner.{corner}.{c}_m" for c in "xy"],
            lambda x, y, a, b: math.hypot(x - a, y - b))


def expect_bought(f, put):
    """Joints from fittings, goods from what they are counted by, what is bought from what is needed."""
    put("layout.joints", ["layout.tees", "layout.reducers", "layout.elbows", "layout.unions", "layout.couplings"],
        lambda t, r, e, u, c: 3 * t + r + 2 * e + u + 2 * c)
    for what in ("tee", "reducer", "elbow", "union"):
        spare = f.get("counting.fitting_spare_ratio", 0)
        if spare == 0:
            put(f"layout.{what}s", [k for k in f if k.startswith(f"need.{what}_")], lambda *v: sum(v))
    put("need.sleeve_m", ["counting.sleeve_m"], lambda m: 2 * m)
    put("need.insulation_m", ["counting.insulated_m"], lambda m: 2 * m)
    put("need.propylene_glycol_m3", ["flow.concentrate_m3", "counting.antifreeze_spare_ratio"], lambda v, s: v * (1 + s))
    for need in [k for k in f if k.startswith("need.")]:
        amount = "amount." + need[5:]
        if need in f and amount in f and f[amount] == f[need]:
            put(amount, [need], lambda v: v)
    put("buy.coils", ["layout.circuits_placed"], lambda n: n)
    for i in {m.group(1) for k in f for m in [re.match(r"terms\.incentive_(\d+)_\w+$", k)] if m}:
        put(f"bill.incentive_{i}_money", [f"terms.incentive_{i}_ratio", "cost.total_money"], lambda a, b: a * b)


def expect_heat(f, put):
    """Sums and ratios of the year's energies; what a year costs."""
    put("heat.electricity_j", ["heat.heating_power_j", "heat.cooling_power_j", "heat.pump_power_j", "heat.backup_j"],
        lambda *v: sum(v))
    put("heat.seasonal_heating", ["house.heating_j", "heat.backup_j", "heat.heating_power_j"],
        lambda q, b, p: (q - b) / p)
    put("heat.seasonal_cooling", ["house.cooling_j", "heat.unmet_cooling_j", "heat.cooling_power_j"],
        lambda q, u, p: (q - u) / p)
    put("heat.seasonal", ["house.heating_j", "house.cooling_j", "heat.unmet_cooling_j", "heat.electricity_j"],
        lambda h, c, u, e: (h + c - u) / e)
    put("heat.pipe_m", [k for k in f if re.match(r"trench\.\d+\.coil_length_m$", k)] + ["header.pipe_m", "run.pipe_m"],
        lambda *v: sum(v))
    put("soil.heat_capacity_j_m3k", ["soil.porosity_ratio", "soil.saturation_ratio"],
        lambda n, s: 2.0e6 * (1 - n) + 4.18e6 * n * s)
    put("run.loop.first_money", ["cost.net_money", "run.loop.unit_cost_money"], lambda a, b: a + b)
    put("run.loop.energy_cost_money", ["run.loop.energy_j", "run.electricity_price_money"], lambda e, p: e / 3.6e6 * p)
    for o in {m.group(1) for k in f for m in [re.match(r"(run\.other_\d+)\.fuel$", k)] if m}:
        put(o + ".fuel", ["run.heating_j", o + ".efficiency", o + ".heat_content_j"], lambda q, e, h: q / (e * h))
        if f.get(o + ".cooling_efficiency", 0) > 0:
            put(o + ".electricity_j", ["run.cooling_j", o + ".cooling_efficiency", o + ".auxiliary_ratio",
                                       "run.heating_j"], lambda c, e, a, q: c / e + a * q)
        put(o + ".first_money", [o + ".first_typed_money"], lambda v: v)
        put(o + ".energy_cost_money", [o + ".fuel", o + ".fuel_price_money", o + ".electricity_j",
                                       "run.electricity_price_money"], lambda n, p, e, k: n * p + e / 3.6e6 * k)


def expect_coils(f, put, trenches):
    """What lies in each trench, from its own length and pitch."""
    put("coil.loop_pipe_by_sum_m", ["coil.loops", "coil.loop_length_by_sum_m"], lambda n, l: n * l)
    for n in trenches:
        t = f"trench.{n}."
        put(t + "loops", [t + "length_m", "coil.loop_diameter_m", t + "pitch_m"], lambda l, d, p: (l - d) / p)
        put(t + "loop_pipe_m", [t + "loops", "coil.loop_diameter_m", t + "pitch_m"],
            lambda k, d, p: k * loop_length(d, p))
        put(t + "return_pipe_m", [t + "length_m"], lambda l: l)
        put(t + "coil_length_m", [t + "loop_pipe_m", t + "return_pipe_m"], lambda a, b: a + b)
        put(t + "width_m", ["dig.trench_width_m"], lambda w: w)
        if f.get(t + "depth_m") == f.get("dig.trench_depth_m"):
            put(t + "depth_m", ["dig.trench_depth_m"], lambda d: d)
    for c in {m.group(1) for k in f for m in [re.match(r"(crossing\.\d+)\.trench_depth_m$", k)] if m}:
        put(c + ".trench_depth_m", ["dig.run_depth_m"], lambda d: d)


# Outside diameter and least wall of DR 11, inches: ASTM D3035, sizes of iron pipe.
PIPE = {"3/4": (1.050, 0.095), "1": (1.315, 0.120), "1-1/4": (1.660, 0.151), "1-1/2": (1.900, 0.173), "2": (2.375, 0.216)}
# Horizontal per vertical: 29 CFR 1926 Subpart P, Appendix B, Table B-1.
SLOPE = {"A": 0.75, "B": 1.0, "C": 1.5}
# Cote and Konrad 2005: kappa; chi and eta of k_dry = chi 10^(-eta n). Lu et al. 2007: alpha. Johansen 1975: factor of
# the logarithm of the saturation.
COTE_KONRAD = {"gravel and coarse sand": (4.60, 1.70, 1.80), "medium and fine sand": (3.55, 0.75, 1.20),
               "silt and clay": (1.90, 0.75, 1.20)}


def expect_soil(f, put, told):
    """Conductivity by the three models as they were published, the year's wave at the depth of the pipe."""
    for model in ("johansen", "lu", "cote_konrad"):
        key = f"soil.conductivity.{model}_w_mk"
        grain = next((g for g in COTE_KONRAD if "constants for " + g in told.get(key, "")), None)
        if grain is None:
            continue

        def conductivity(n, q, s, model=model, grain=grain):
            solids = 7.7 ** q * (2.0 if q > 0.2 else 3.0) ** (1 - q)
            wet = solids ** (1 - n) * 0.57 ** n
            if model == "johansen":
                density = 2700 * (1 - n)
                dry = 0.039 * n ** -2.2 if grain.startswith("gravel") else (0.135 * density + 64.7) / (2700 - 0.947 * density)
                ke = (1.0 if grain.startswith("silt") else 0.7) * math.log10(s) + 1
            elif model == "lu":
                dry, alpha = 0.51 - 0.56 * n, 0.27 if grain.startswith("silt") else 0.96
                ke = math.exp(alpha * (1 - s ** (alpha - 1.33)))
            else:
                kappa, chi, eta = COTE_KONRAD[grain]
                dry, ke = chi * 10 ** (-eta * n), kappa * s / (1 + (kappa - 1) * s)
            return dry + ke * (wet - dry)

        put(key, ["soil.porosity_ratio", "soil.quartz_ratio", "soil.saturation_ratio"], conductivity)
    # Of every coil and of header and run, two pipes each: metres and depth of the axis.
    coils = sorted(m.group(1) for k in f for m in [re.match(r"trench\.(\d+)\.coil_length_m$", k)] if m)
    pipes = [k for n in coils for k in (f"trench.{n}.coil_length_m", f"trench.{n}.depth_m")]
    known = ["pipe.coil.outside_diameter_m", "pipe.header.outside_diameter_m", "header.pipe_m", "run.pipe_m",
             "dig.run_depth_m"] + pipes

    def laid(coil, header, of_header, of_run, run_depth, *v):
        return [(m, z - coil / 2) for m, z in zip(v[::2], v[1::2])] + [(of_header + of_run, run_depth - header / 2)]

    def ground(mean, amplitude, coldest, diffusivity, *v):
        d, all_pipes = math.sqrt(365 * 86400 * diffusivity / math.pi), laid(*v)
        metres = sum(m for m, _ in all_pipes)
        return [mean - sum(m / metres * amplitude * math.exp(-z / d) *
                           math.cos(2 * math.pi * ((hour + 1) / 24 - coldest) / 365 - z / d) for m, z in all_pipes)
                for hour in range(8760)]

    if f.get("run.shared_m") == 0:
        put("heat.depth_m", known, lambda *v: sum(m * z for m, z in laid(*v)) / sum(m for m, _ in laid(*v)))
    wave = ["climate.mean_c", "climate.amplitude_k", "climate.coldest_day", "soil.diffusivity_m2_s"] + known
    if f.get("run.shared_m") == 0:
        put("heat.ground_coldest_c", wave, lambda *v: min(ground(*v)))
        put("heat.ground_warmest_c", wave, lambda *v: max(ground(*v)))
    warmest = [f"heat.{year}.warmest_c" for year in ("first", "tenth", "last")]
    if f.get("heat.warmest_allowed_c") and all(k in f for k in warmest):
        put("heat.margin_warm_k", ["heat.warmest_allowed_c"] + warmest, lambda a, *v: a - max(v))


def expect_same(f, put, told, inputs):
    """What is taken over as it is from its one input, and sums of all inputs."""
    for key, words in told.items():
        one = inputs[key][0] if len(inputs[key]) == 1 else None
        if one and re.search(r"How: (as entered|the coil of every trench|that of the model chosen)", words):
            put(key, [one], lambda v: v)
    if inputs.get("bill.tax_money"):
        put("bill.tax_money", inputs["bill.tax_money"], lambda tax, *v: tax * sum(v))
    put("need.truck_hour_s", ["days.hauling", "crew.day_length_s"], lambda d, s: d * s)
    put("layout.circuits_placed", [k for k in f if re.match(r"trench\.\d+\.length_m$", k)], lambda *v: len(v))
    put("order.steps", [k for k in f if re.match(r"calendar\.open\.\d+_s$", k)], lambda *v: len(v))


def expect_tables(f, put, told, text):
    """Standards' tables, by what the report says it took from them."""
    flat = " ".join(text.split())
    for key in ("pipe.coil", "pipe.header", "pipe.laid_1", "pipe.laid_2", "pipe.laid_3"):
        label = re.search(r"pipe ([\d\-/]+) in DR 11, outside diameter " + re.escape(key + "."), flat)
        if label and label.group(1) in PIPE:
            put(key + ".outside_diameter_m", [], lambda n=label.group(1): PIPE[n][0] * 0.0254)
            put(key + ".minimum_wall_m", [], lambda n=label.group(1): PIPE[n][1] * 0.0254)
    soil = re.search(r"soil type typed: Type ([ABC])", told.get("dig.slope_h_per_v", ""))
    if soil:
        put("dig.slope_h_per_v", [], lambda: SLOPE[soil.group(1)])


def expect_tapes(f, put, tapes):
    """The angle at which two tapes cut, from the points that they are held at."""
    for key in [k for k in f if k.endswith(".cut_rad") and f[k] > 0]:
        stake = key[:-len(".cut_rad")]
        first, second = (tapes.get(f"{stake}.{which}_distance_m") for which in ("first", "second"))
        at = re.match(r"stake\.(\d+)-(head|end)", stake)
        place = [stake + ".x_m", stake + ".y_m"]
        if place[0] not in f and at:
            place = [f"trench.{at.group(1)}.{at.group(2)}_{c}_m" for c in "xy"]
        if first is None or second is None:
            continue

        def cut(x, y, a, b, c, d):
            angle = abs(math.atan2(b - y, a - x) - math.atan2(d - y, c - x)) % math.pi
            return min(angle, math.pi - angle)

        put(key, place + [f"stake.corner.{who}.{c}_m" for who in (first, second) for c in "xy"], cut)


def expect_heaps(f, put, told):
    """How far the machine casts: half of what is open above, the distance off the edge, half of the heap."""
    for n in range(1, int(f.get("order.steps", 0)) + 1):
        step = f"order.step.{n}."
        kind = "coil" if re.search(r"From: \[[\d.]+\] \d+\. Trench \d+", told.get(step + "cast_m", "")) else "run"
        width, depth = ("dig.trench_width_m", "dig.trench_depth_m") if kind == "coil" else ("dig.run_width_m", "dig.run_depth_m")
        put(step + "cast_m", [width, f"dig.{kind}_slope_h_per_v", depth, "order.spoil_off_m", step + "spoil_width_m"],
            lambda w, s, d, off, b: w / 2 + s * d + off + b / 2)


def expect_flows(f, put, told):
    """Balance, the pump's share, what may freeze; pipe and ties counted."""
    for season in ("design", "coldest"):
        put(f"flow.{season}.imbalance_ratio",
            [f"flow.{season}.most_circuit_m3_s", f"flow.{season}.least_circuit_m3_s", "flow.design_flow_m3_s",
             "layout.circuits_placed"], lambda a, b, q, n: (a - b) / (q / n))
    put("flow.pump.share_ratio", ["flow.pump.power_w", "flow.capacity_w"], lambda p, q: p / q)
    if f.get("flow.coldest_temperature_c", 99) - f.get("flow.freeze_margin_k", 0) == f.get("flow.wanted_freezing_c"):
        put("flow.wanted_freezing_c", ["flow.coldest_temperature_c", "flow.freeze_margin_k"], lambda t, m: min(0.0, t - m))
    coils = sorted(k for k in f if re.match(r"trench\.\d+\.coil_length_m$", k))
    for need in [k for k in f if re.match(r"need\.pipe_.*_coils_m$", k) and "header" not in told.get(k, "header").split("From:")[0]]:
        put(need, ["buy.tail_m", "counting.pipe_spare_ratio"] + coils, lambda t, s, *v: sum((c + 2 * t) * (1 + s) for c in v))
    loops = sorted(k for k in f if re.match(r"trench\.\d+\.loops$", k))
    put("need.tie", ["counting.ties_per_loop"] + loops, lambda n, *v: n * sum(math.ceil(l - 1e-9) for l in v))
    if f.get("heat.unmet_cooling_j") == 0 and f.get("heat.backup_j") == 0:
        put("run.heating_j", ["house.heating_j"], lambda q: q)
        put("run.cooling_j", ["house.cooling_j"], lambda q: q)


def expect_life_cycles(f, put):
    """NIST Handbook 135: what is paid in year t over (1 + discount)^t, what is bought again among it. Of the other ways,
    whose heat and cooling are the same in every year."""
    def worth_of_upkeep(first, energy, upkeep, again, life, d, inflation, years):
        yearly = [(t, upkeep + (again if life > 0 and t % life == 0 and t < years else 0)) for t in range(1, int(years) + 1)]
        return first + energy + sum(paid * (1 + inflation) ** t / (1 + d) ** t for t, paid in yearly)

    put("run.loop.life_cycle_money", ["run.loop.first_money", "run.loop.energy_worth_money", "run.loop.maintenance_money",
                                      "run.loop.unit_cost_money", "run.loop.unit_life", "run.discount_ratio",
                                      "run.inflation_ratio", "run.years"], worth_of_upkeep)
    put("run.loop.emission_kg", ["run.loop.energy_years_j", "run.electricity_emission_kg"], lambda e, g: e / 3.6e6 * g)
    if f.get("heat.unmet_cooling_j") != 0:
        return
    for o in {m.group(1) for k in f for m in [re.match(r"(run\.other_\d+)\.fuel$", k)] if m}:
        def life_cycle(first, fuel, price, rise, e, k, k_rise, upkeep, life, d, inflation, years):
            total = first
            for t in range(1, int(years) + 1):
                paid = fuel * price * (1 + rise) ** t + e / 3.6e6 * k * (1 + k_rise) ** t + upkeep * (1 + inflation) ** t
                if life > 0 and t % life == 0 and t < years:
                    paid += first * (1 + inflation) ** t
                total += paid / (1 + d) ** t
            return total

        put(o + ".life_cycle_money",
            [o + ".first_money", o + ".fuel", o + ".fuel_price_money", o + ".fuel_escalation_ratio", o + ".electricity_j",
             "run.electricity_price_money", "run.electricity_escalation_ratio", o + ".maintenance_money", o + ".life",
             "run.discount_ratio", "run.inflation_ratio", "run.years"], life_cycle)
        put(o + ".emission_kg", [o + ".fuel", o + ".fuel_emission_kg", o + ".electricity_j", "run.electricity_emission_kg",
                                 "run.years"], lambda n, c, e, g, y: y * (n * c + e / 3.6e6 * g))


def expected(f, corners, text=""):
    """Every figure worked out again, by key, from other printed figures."""
    out = {}
    told, inputs = entries_in(text), inputs_in(text)

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
    if "buy.over_edge_m" in f:
        put("buy.coil_end_m", ["buy.tail_m", "buy.head_depth_m", "buy.over_edge_m"], lambda *parts: sum(parts))
    else:
        put("buy.coil_end_m", ["buy.tail_m", "buy.head_depth_m", "dig.run_depth_m"], lambda t, h, r: max(t, h - r))
    put("buy.coil_length_m", ["coil.length_m", "buy.coil_end_m", "counting.pipe_spare_ratio"],
        lambda l, e, s: (l + 2 * e) * (1 + s))
    put("buy.coil_pipe_m", ["buy.coils", "buy.coil_length_m"], lambda n, l: n * l)
    put("buy.header_pipe_m", ["header.pipe_m", "run.pipe_m", "buy.allowance_ratio"], lambda h, r, a: (h + r) * (1 + a))
    put("buy.counted_pipe_m", ["buy.coil_pipe_m", "buy.header_pipe_m"], lambda a, b: a + b)
    put("buy.pipe_m", [k for k in f if k.startswith("amount.pipe_") and k.endswith("_m")], lambda *v: sum(v))
    put("heat.margin_cold_k", ["heat.coldest_c", "heat.coldest_allowed_c"], lambda a, b: a - b)
    for tree in {m.group(1) for k in f for m in [re.match(r"(site\.feature\.\d+)\.trunk_diameter_m$", k)] if m}:
        put(tree + ".root_zone_m", [tree + ".trunk_diameter_m", "site.root_zone_factor"], lambda d, n: d * n)
    for c in {m.group(1) for k in f for m in [re.match(r"(crossing\.\d+)\.hand_dig_m$", k)] if m}:
        # The tolerance zone of 18 in, and half our trench where the line runs aslant.
        put(c + ".hand_dig_m", [c + ".angle_rad", "dig.run_width_m"],
            lambda a, w: (0.4572 + w / 2 * math.cos(a)) / math.sin(a))
    put("cost.by_capacity_money", ["cost.total_money", "flow.capacity_w"], lambda c, p: c / (p / 1000))

    trenches = sorted({m.group(1) for k in f for m in [re.match(r"trench\.(\d+)\.length_m$", k)] if m}, key=int)
    for n in trenches:
        t = f"trench.{n}."
        if not any(k.startswith(t + "bend_") for k in f):
            put(t + "length_m", [t + "head_x_m", t + "head_y_m", t + "end_x_m", t + "end_y_m"],
                lambda a, b, c, d: math.hypot(c - a, d - b))

    parts = [(f"trench.{n}", f"trench.{n}.length_m", f"trench.{n}.width_m", f"trench.{n}.depth_m",
              "dig.coil_slope_h_per_v") for n in trenches]
    parts += [("header", "header.length_m", "dig.run_width_m", "dig.run_depth_m", "dig.run_slope_h_per_v"),
              ("run", "run.dug_length_m", "dig.run_width_m", "dig.run_depth_m", "dig.run_slope_h_per_v")]
    for part, length, width, depth, slope in parts:
        key = f"dig.{part}."
        # What two cuts hold together is off both; of a coil trench that the run shares there is sand twice.
        met = [k for k in [key + "bank_met_volume_m3"] if k in f]
        sand = [k for k in [key + "run_bedding_volume_m3"] if k in f]
        sand_met = [k for k in [key + "bedding_met_volume_m3"] if k in f]
        put(key + "bank_volume_m3", [length, width, depth, slope] + met,
            lambda l, w, d, s, *m: l * d * (w + s * d) - sum(m))
        put(key + "bedding_volume_m3", [length, width, "dig.bedding_m", slope] + sand + sand_met,
            lambda l, w, b, s, *v, n=len(sand): l * b * (w + s * b) + sum(v[:n]) - sum(v[n:]))
        if sand:
            put(part + ".run_floor_m", ["dig.run_depth_m", depth, "dig.bedding_m"], lambda r, d, b: min(r, d - b))
            put(sand[0], [part + ".shared_m", width, depth, part + ".run_floor_m", "dig.bedding_m", slope],
                lambda l, w, d, r, b, s: l * b * (w + s * (2 * (d - r) + b)))
        put(key + "loose_volume_m3", [key + "bank_volume_m3", "ground.swell_ratio"], lambda v, s: v * (1 + s))
        put(key + "backfill_volume_m3", [key + "bank_volume_m3", key + "bedding_volume_m3"], lambda a, b: a - b)
        put(key + "surplus_volume_m3",
            [key + "bank_volume_m3", key + "backfill_volume_m3", "ground.shrinkage_ratio", "ground.swell_ratio"],
            lambda v, b, k, s: (v - b / (1 - k)) * (1 + s))
    for what in ("bank", "bedding", "loose", "backfill", "surplus"):
        keys = [f"dig.{p[0]}.{what}_volume_m3" for p in parts]
        keys = [k for k in keys if k in f]
        put(f"dig.total.{what}_volume_m3", keys, lambda *v: sum(v))
    put("dig.length_m", [p[1] for p in parts if p[1] in f], lambda *v: sum(v))
    heaps = [k for n in trenches for k in (f"dig.trench.{n}.loose_volume_m3", f"trench.{n}.length_m")]
    put("dig.spoil_width_m", ["ground.repose_rad"] + heaps,
        lambda r, *v: max(math.sqrt(4 * a / (b * math.tan(r))) for a, b in zip(v[::2], v[1::2])))
    put("dig.spoil_height_m", ["dig.spoil_width_m", "ground.repose_rad"], lambda b, r: b / 2 * math.tan(r))
    for kind in ("coil", "run"):
        chosen = f.get(f"dig.{kind}_slope_h_per_v", 0)
        assert chosen in (0, f.get("dig.slope_h_per_v")), kind
    expect_work(f, put, trenches)
    expect_running(f, put)
    expect_places(f, put, corners)
    expect_bought(f, put)
    expect_heat(f, put)
    expect_coils(f, put, trenches)
    expect_soil(f, put, told)
    expect_same(f, put, told, inputs)
    expect_tables(f, put, told, text)
    expect_tapes(f, put, corners)
    expect_heaps(f, put, told)
    expect_flows(f, put, told)
    expect_life_cycles(f, put)

    for stake in {m.group(1) for k in f for m in [re.match(r"(stake\..*)\.cut_rad$", k)] if m}:
        if f[stake + ".cut_rad"] > 0 and stake + ".first_distance_m" in f:
            assert 0 <= f[stake + ".cut_rad"] <= math.pi / 2 + 1e-12, stake

    # The bill: a line is what is bought times its price; then what is put on top.
    lines = []
    for key in sorted(f):
        m = re.match(r"cost\.(.+)_money$", key)
        if not m or m.group(1) in ("total", "by_capacity", "net"):
            continue
        amounts = [k for k in f if re.match(r"amount\." + re.escape(m.group(1)) + r"(_m|_m2|_m3|_s|_kg)?$", k)]
        price = f"price.{m.group(1)}_money"
        if len(amounts) == 1 and price in f:
            lines.append(key)
            put(key, [amounts[0], price], lambda a, p: a * p)
    put("bill.cost_money", lines, lambda *v: sum(v))
    put("bill.overhead_money", ["terms.overhead_ratio", "bill.cost_money"], lambda a, b: a * b)
    put("bill.markup_money", ["terms.markup_ratio", "bill.cost_money", "bill.overhead_money"], lambda a, b, c: a * (b + c))
    put("cost.net_money", ["cost.total_money"] + [k for k in f if k.startswith("bill.incentive_")],
        lambda p, *v: max(0.0, p - sum(v)))
    put("cost.total_money", ["bill.cost_money", "bill.overhead_money", "bill.markup_money", "bill.tax_money"],
        lambda *v: sum(v))
    return out


# A trench that met rock after 21 m, and one that was not dug as deep as planned.
AS_BUILT = {"trenches": [{"number": 2, "length_m": 21, "stopped_by": "rock"}, {"number": 3, "depth_m": 1.7}]}


def check_as_built(program, plan, fail):
    """The figures of what was really dug, from what was written down on the job."""
    with tempfile.TemporaryDirectory() as folder:
        told = json.loads(plan.read_text(encoding="utf-8"))
        told["as_built"] = AS_BUILT
        dug = pathlib.Path(folder) / "dug.underlawn"
        dug.write_text(json.dumps(told), encoding="utf-8")
        text = text_of(program, dug)
    f = figures_in(text)
    built = {k[len("built."):]: v for k, v in f.items() if k.startswith("built.")}
    again = {k: v for k, v in expected({**f, **built}, {}).items() if k in built}
    for key, value in again.items():
        if abs(value - built[key]) > 1e-6 * max(1.0, abs(value)):
            fail(f"{plan.stem}, as built: {key} is printed as {built[key]!r}, worked out as {value!r}")
    print(f"{plan.stem}, as built: {len(built)} figures read, {len(again)} worked out again")
    if len(again) < 15:
        fail(f"{plan.stem}, as built: too few")


def main():
    program, source = sys.argv[1], pathlib.Path(sys.argv[2])
    wrong = 0

    def fail(words):
        nonlocal wrong
        print(words)
        wrong += 1

    for name in ("alder-lane", "kestrel-bend"):
        plan = source / "samples" / f"{name}.underlawn"
        text = text_of(program, plan)
        f = figures_in(text)
        again = expected(f, corners_named(text), text)
        for key, value in again.items():
            if abs(value - f[key]) > 1e-6 * max(1.0, abs(value)):
                fail(f"{name}: {key} is printed as {f[key]!r}, worked out as {value!r}")
        print(f"{name}: {len(f)} figures read, {len(again)} worked out again")
        check_as_built(program, plan, fail)
        if len(f) < 600 or len(again) < 280:
            fail(f"{name}: too few")
        for language in (text, text_of(program, plan, "--language", "es", "--units", "metric", "--paper", "a4")):
            bad, missing = unsourced(language)
            if len(figures_in(language)) != len(f):
                fail(f"{name}: {len(figures_in(language))} figures in another language")
            for key in bad:
                fail(f"{name}: {key} does not say whence it comes")
            for number in missing:
                fail(f"{name}: [{number}] is named and stands nowhere")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
