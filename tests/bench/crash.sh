#!/usr/bin/env bash
# Kills the program in a real window with work that was never saved, starts it again and looks whether the work
# is offered and comes back. Usage: crash.sh PROGRAM [SHOTS]
set -euo pipefail
program=$1 shots=${2:-}
work=$(mktemp -d)
trap 'kill -9 "${window_program:-}" 2>/dev/null; kill "${manager:-}" "${server:-}" 2>/dev/null; wait 2>/dev/null || true; rm -rf "$work"' EXIT
export HOME=$work XDG_DATA_HOME=$work/data XDG_CONFIG_HOME=$work/config XDG_RUNTIME_DIR=$work
unset QT_QPA_PLATFORM WAYLAND_DISPLAY
Xvfb -displayfd 3 -screen 0 1600x1000x24 -nolisten tcp -noreset 3>"$work/display" 2>/dev/null &
server=$!
for _ in $(seq 300); do [ -s "$work/display" ] && break; sleep 0.1; done
export DISPLAY=:$(cat "$work/display")
openbox >/dev/null 2>&1 &
manager=$!
start() {
  "$program" >"$work/out" 2>"$work/err" &
  window_program=$!
  for _ in $(seq 600); do
    window=$(xdotool search --onlyvisible --name 'Underlawn' 2>/dev/null | head -1) && [ -n "$window" ] && break
    sleep 0.1
  done
  xdotool windowsize --sync "$window" 1600 1000 windowmove "$window" 0 0 windowfocus --sync "$window"
  sleep 2
}
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
