#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Validates what the program writes against the published JSON Schemas, with an independent validator.

    validate_schema.py PROGRAM SOURCE_DIR

Plans: every sample as committed and as saved again, and a new plan. Results: those of every sample. Each schema must
also refuse documents that are wrong, or it would prove nothing.
"""
import copy
import json
import pathlib
import subprocess
import sys
import tempfile

import jsonschema

program, source = sys.argv[1], pathlib.Path(sys.argv[2])
failures = 0


def load(path):
    return json.loads(pathlib.Path(path).read_text(encoding="utf-8"))


def validator(name):
    schema = load(source / "resources" / name)
    cls = jsonschema.validators.validator_for(schema)
    cls.check_schema(schema)
    return cls(schema)


def fail(what):
    global failures
    failures += 1
    print("FAILED:", what)


def check(which, path):
    errors = list(which.iter_errors(load(path)))
    for error in errors[:10]:
        fail(f"{path}: {list(error.absolute_path)}: {error.message}")
    if not errors:
        print("valid:", path)


def run(*arguments):
    done = subprocess.run([program, *map(str, arguments)], capture_output=True, text=True)
    if done.returncode != 0:
        fail(f"{arguments} ended with {done.returncode}: {done.stderr}")


def must_refuse(which, document, what, damage):
    wrong = copy.deepcopy(document)
    damage(wrong)
    if which.is_valid(wrong):
        fail(f"the schema accepts {what}")


plan_schema, results_schema = validator("plan.schema.json"), validator("results.schema.json")
samples = sorted((source / "samples").glob("*.underlawn"))
if not samples:
    fail("there are no samples")
with tempfile.TemporaryDirectory() as folder:
    folder = pathlib.Path(folder)
    new = folder / "new.underlawn"
    run("new", new)
    check(plan_schema, new)
    for sample in samples:
        check(plan_schema, sample)
        again = folder / sample.name
        again.write_bytes(sample.read_bytes())
        run("resave", again)
        check(plan_schema, again)
        out = folder / sample.stem
        run("solve", sample, "--out", out)
        check(results_schema, out / "results.json")

    if samples:
        plan, results = load(samples[0]), load(folder / samples[0].stem / "results.json")
        must_refuse(plan_schema, plan, "a newer format", lambda p: p.update(format_version=4))
        must_refuse(plan_schema, plan, "an unknown key", lambda p: p["site"].update(colour=1))
        must_refuse(plan_schema, plan, "a depth in words", lambda p: p["wishes"].update(trench_depth_m="deep"))
        must_refuse(plan_schema, plan, "a shrub", lambda p: p["site"]["features"][0].update(kind="shrub"))
        must_refuse(plan_schema, plan, "a point of three numbers", lambda p: p["site"]["lot"][0]["at_m"].append(1))
        must_refuse(results_schema, results, "results without trenches", lambda r: r["layout"].pop("trenches"))
        must_refuse(results_schema, results, "a figure without a method", lambda r: r["figures"][0].pop("method"))

sys.exit(1 if failures else 0)
