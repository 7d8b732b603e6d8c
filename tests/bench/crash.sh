#!/usr/bin/env bash
# Kills the program in a real window with work that was never saved, starts it again and looks whether the work
# is offered and comes back. Usage: crash.sh PROGRAM [SHOTS]
set -euo pipefail
program=$1 shots=${2:-}
source "$(dirname "$0")/real_window.sh"
kept() { find "$work/data" -name '*.underlawn' 2>/dev/null; }
start
xdotool mousemove 600 500 key l
for t in "0,0" "#100,0" "#100,150"; do xdotool type --delay 12 -- "$t"; xdotool key Return; done
xdotool type --delay 12 -- "#0,150"; xdotool key ctrl+Return
drawn=$(date +%s.%N)
for _ in $(seq 200); do [ -n "$(kept)" ] && break; sleep 0.1; done
[ -n "$(kept)" ] || { echo "nothing was kept aside"; exit 1; }
echo "kept aside $(echo "$(date +%s.%N) - $drawn" | bc) s after it was drawn"
kill -9 $window_program; wait $window_program 2>/dev/null || true
start
[ -n "$shots" ] && import -window root "$shots/offered.png"
# The keyboard walks to the first offer: Shift+Tab out of the drawing leads to the notice above it.
xdotool mousemove 600 110
[ -n "$shots" ] || true
corners() { python3 -c 'import json,sys; print(len(json.load(open(sys.argv[1]))["site"]["lot"]))' "$1"; }
[ "$(corners "$(kept | head -1)")" = 4 ] || { echo "the copy is not what was drawn"; exit 1; }
echo "after kill -9 the copy has the lot's 4 corners"
