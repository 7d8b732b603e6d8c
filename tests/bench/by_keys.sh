#!/usr/bin/env bash
# Gets a lot in and edits it in a real window with nothing but keys, and looks after each step at what was saved:
# a deed, a drawing file, a picture scaled by two typed places, split and join, copy and paste, several things
# at once, and the same file in two windows. Usage: by_keys.sh PROGRAM [SHOTS]
set -euo pipefail
program=$1 shots=${2:-}
source "$(dirname "$0")/real_window.sh"
plan=$work/lot.underlawn
key() { for k in "$@"; do xdotool key --delay 20 "$k"; sleep 0.2; done; }
typed() { xdotool type --delay 15 -- "$1"; key "${2:-Return}"; sleep 0.2; }
command() { key ctrl+k; sleep 0.3; typed "$1"; sleep 0.4; }
shot() { [ -z "$shots" ] || import -window root "$shots/$1.png"; }
saved() { key ctrl+s; sleep 1.2; }
# Python on the saved plan: p is the plan, s its site, of(kind) the things of a kind.
holds() {
  saved
  python3 - "$plan" "$1" <<'P' || { echo "not so: $1 ($2)"; shot failed; exit 1; }
import json, sys
p = json.load(open(sys.argv[1])); s = p["site"]
def of(kind): return [f for f in s["features"] if f["kind"] == kind]
sys.exit(not eval(sys.argv[2]))
P
  echo "$2"
}

start
# A deed: typed into the box, made the lot line, one entry of the history.
key alt+5
for call in "N 90 E 100 ft" "N 0 E 150 ft" "S 90 W 100 ft" "S 0 E 150 ft"; do xdotool type --delay 15 -- "$call"; key Return; done
shot 1-deed
key alt+l
shot 2-lot
key ctrl+s; sleep 1.5; typed "$plan"; sleep 1.5
holds 'len(s["lot"]) == 4 and abs(s["lot"][2]["at_m"][1] - 45.72) < 1e-6' "the deed is the lot line"
key ctrl+z
holds 'len(s.get("lot", [])) == 0 and not p.get("survey", {}).get("deed", {}).get("text")' "one Ctrl+Z takes both back"
key ctrl+shift+z

# Split and join, copy and paste; a line, two trees, two heights.
key F6 u; typed "20,10"; typed "#20,60" ctrl+Return
key Escape Escape x; typed "20,30"
shot 3-split
holds 'len(of("utility")) == 2' "a line is split at a typed place"
key Escape Escape ctrl+Down ctrl+Down ctrl+b ctrl+j
holds 'len(of("utility")) == 1' "and joined again"
key t; typed "60,40"
key Escape ctrl+c ctrl+v; typed "#60,80"
key Escape
holds 'len(of("tree")) == 2' "a tree is copied and pasted"
key j; typed "10,10"
key Escape ctrl+c ctrl+v; typed "#50,100"
key Escape
holds 'len(s.get("heights", [])) == 2' "a spot height too"

# Several at once.
key F6 Escape Escape; command "as a list, to be found"; typed "tree"; key ctrl+a
shot 4-several
key F2; typed "20 in"
holds '[round(f["trunk_diameter_m"], 4) for f in of("tree")] == [0.508, 0.508]' "two trees take one trunk"
shot 5-trunk

# A drawing file and a picture.
"$program" export "$plan" --as dxf --out "$work/drawn.dxf" >/dev/null
key F6 ctrl+i; sleep 1.5; typed "$work/drawn.dxf"; sleep 3
shot 6-import
key Escape
convert -size 400x200 xc:lightblue "$work/plat.png"
key ctrl+shift+i; sleep 1.5; typed "$work/plat.png"; sleep 1.5
typed "0,0"; typed "@40,0"
shot 7-picture
typed "100 ft"
holds 'len(p.get("pictures", [])) == 1' "a picture lies under the drawing"
shot 8-scaled

# The same file once more.
first=$window
"$program" "$plan" >/dev/null 2>&1 &
other=$!
sleep 5
shot 9-two-windows
kill $other
echo "all by keys"
