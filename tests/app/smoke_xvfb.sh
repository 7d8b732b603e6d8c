#!/usr/bin/env bash
# The built program in a real window: opens a sample, takes keys, shows something, closes cleanly.
# Usage: smoke_xvfb.sh PROGRAM PLAN
set -euo pipefail
program=$1 plan=$2
work=$(mktemp -d)
trap 'kill "${server:-}" 2>/dev/null || true; wait 2>/dev/null || true; rm -rf "$work"' EXIT
export HOME=$work XDG_DATA_HOME=$work/data XDG_CONFIG_HOME=$work/config XDG_RUNTIME_DIR=$work
unset QT_QPA_PLATFORM WAYLAND_DISPLAY

# Without -noreset the server starts anew when its last client goes, and turns away whoever comes just then.
Xvfb -displayfd 3 -screen 0 1280x800x24 -nolisten tcp -noreset 3>"$work/display" 2>"$work/xvfb.log" &
server=$!
for _ in $(seq 300); do [ -s "$work/display" ] && break; sleep 0.1; done
[ -s "$work/display" ] || { echo "Xvfb did not start"; cat "$work/xvfb.log"; exit 1; }
export DISPLAY=:$(cat "$work/display")

"$program" "$plan" >"$work/out" 2>"$work/err" &
window_program=$!
for _ in $(seq 600); do
  window=$(xdotool search --onlyvisible --name 'Underlawn' 2>/dev/null | head -1) && [ -n "$window" ] && break
  kill -0 $window_program || { echo "the program ended early"; cat "$work/err"; exit 1; }
  sleep 0.1
done
[ -n "$window" ] || { echo "no window"; exit 1; }
xdotool windowsize "$window" 1280 800 windowmove "$window" 0 0 windowfocus "$window"

# How many colours are on the screen: a blank one has a handful.
colours() { import -window root "$work/$1.png" && identify -format '%k' "$work/$1.png"; }
for _ in $(seq 300); do
  first=$(colours first)
  [ "$first" -gt 200 ] && break
  sleep 0.2
done
[ "$first" -gt 200 ] || { echo "the window is blank: $first colours"; exit 1; }

# F1 lays the sheet of keys over the window: the picture must change, and Esc must bring it back.
xdotool key F1
sleep 1
import -window root "$work/keys.png"
changed=$(compare -metric AE "$work/first.png" "$work/keys.png" null: 2>&1 || true)
[ "$(printf %.0f "$changed")" -gt 20000 ] 2>/dev/null || { echo "F1 changed $changed pixels only"; exit 1; }
xdotool key Escape
sleep 0.5

[ -n "${UNDERLAWN_SHOTS:-}" ] && cp "$work"/*.png "$UNDERLAWN_SHOTS"/
# A change of units is unsaved work: it is kept aside by itself, and gone again once it is taken back.
kept() { find "$work/data" -name '*.underlawn' 2>/dev/null | wc -l; }
xdotool key ctrl+u
for _ in $(seq 300); do [ "$(kept)" -eq 1 ] && break; sleep 0.1; done
[ "$(kept)" -eq 1 ] || { echo "unsaved work was not kept aside"; exit 1; }
xdotool key ctrl+z
for _ in $(seq 300); do [ "$(kept)" -eq 0 ] && break; sleep 0.1; done
[ "$(kept)" -eq 0 ] || { echo "the copy of saved work was not dropped"; exit 1; }

xdotool key ctrl+q
for _ in $(seq 300); do kill -0 $window_program 2>/dev/null || break; sleep 0.1; done
if kill -0 $window_program 2>/dev/null; then echo "Ctrl+Q did not close the window"; kill $window_program; exit 1; fi
wait $window_program || { echo "exit status $?"; cat "$work/err"; exit 1; }
[ -s "$work/err" ] && { echo "on standard error:"; cat "$work/err"; exit 1; }
echo "window shown with $first colours, keys taken, closed cleanly"
