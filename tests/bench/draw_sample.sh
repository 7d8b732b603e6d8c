#!/usr/bin/env bash
# Draws the sample lot from an empty window with keys and mouse only, in a real window under Xvfb, counts
# actions and seconds, and compares what was saved with the sample. An action is a key of a command, a click,
# or one typed text with its Enter.
# Usage: draw_sample.sh PROGRAM SAMPLE [SHOTS]
set -euo pipefail
program=$1 sample=$2 shots=${3:-}
source "$(dirname "$0")/real_window.sh"
start

actions=0
key() { actions=$((actions + 1)); xdotool key --delay 20 "$1"; sleep 0.15; }
text() { actions=$((actions + 1)); xdotool type --delay 12 -- "$1"; xdotool key "${2:-Return}"; sleep 0.15; }
last() { text "$1" ctrl+Return; }
shot() { [ -n "$shots" ] && import -window root "$shots/$1.png" || true; }

xdotool mousemove 600 500
shot 0-empty
begun=$(date +%s.%N)
key l; text "0,0"; text "#112,0"; text "#118,196"; last "#-4,201"
key h; text "34,40"; key r; text "#80,40"; text "#80,66"; text "#58,66"; text "#58,74"; last "#34,74"
key e; text "80,47"
shot 1-house
key d; text "60,0"; key r; text "18x40"
key s; text "18,86"; text "9x5"
key f; text "6,112"; text "28x38"
key shift+f; text "6,156"; text "28x34"
key w; text "105,12"
key t; text "40,98"; text "111,186"; text "15,22"; text "15,48"
shot 2-trees
key u; text "54,0"; last "#54,40"
text "48,0"; key k; last "#48,40"
text "42,0"; key k; last "#42,40"
text "105,12"; key k; text "#100,60"; last "#80,60"
text "38,74"; key k; last "#24,86"
text "22,91"; last "#20,112"
key n; text "59,66.5"; text "17x9.5"; text "38,150"; text "14x38"
ended=$(date +%s.%N)
key_actions=$actions
xdotool key Escape; xdotool key Escape; sleep 3
shot 3-done
xdotool key ctrl+s; sleep 2
xdotool type --delay 12 -- "$work/drawn.underlawn"; xdotool key Return; sleep 2
shot 4-saved
echo "$key_actions actions, $(echo "$ended - $begun" | bc) s"
python3 - "$work/drawn.underlawn" "$sample" <<'P'
import json, sys
drawn, sample = (json.load(open(p)) for p in sys.argv[1:3])
def shape(f):
    points = [tuple(round(c, 6) for c in p) for p in f["points_m"]]
    return f["kind"], f.get("utility"), tuple(points if f["kind"] == "utility" else sorted(points))
def lot(p): return [(tuple(round(x, 6) for x in c["at_m"]), round(c["setback_m"], 6)) for c in p["site"]["lot"]]
wrong = set(map(shape, sample["site"]["features"])) ^ set(map(shape, drawn["site"]["features"]))
if lot(drawn) != lot(sample): wrong.add(("lot", lot(drawn), lot(sample)))
if not drawn["site"].get("entry") or max(abs(a - b) for a, b in zip(drawn["site"]["entry"]["at_m"], sample["site"]["entry"]["at_m"])) > 1e-6:
    wrong.add(("entry", str(drawn["site"].get("entry"))))
for w in wrong: print("differs:", w)
print("lot, entry point and", len(drawn["site"]["features"]), "things as in the sample" if not wrong else "things; not as in the sample")
sys.exit(bool(wrong))
P
