#!/usr/bin/env bash
# Kills the program in a real window with work that was never saved and with work saved before, starts it again,
# presses Recover with the keyboard and looks whether the work is there.
# Usage: crash.sh PROGRAM [SHOTS]
set -euo pipefail
program=$1 shots=${2:-}
source "$(dirname "$0")/real_window.sh"
kept() { find "$work/data" -name '*.underlawn' 2>/dev/null; }
shot() { [ -z "$shots" ] || import -window root "$shots/$1.png"; }
# How many corners the lot has in a file, and how many things are on it.
held() { python3 -c 'import json,sys; s=json.load(open(sys.argv[1]))["site"]; print(len(s["lot"]), len(s["features"]))' "$1"; }
kept_holds() { for f in $(kept); do [ "$(held "$f" 2>/dev/null)" = "$1" ] && return; done; return 1; }
wait_kept() {
  local drawn; drawn=$(date +%s.%N)
  for _ in $(seq 300); do kept_holds "$1" && break; sleep 0.1; done
  kept_holds "$1" || { echo "what was drawn was not kept aside"; exit 1; }
  echo "kept aside $(echo "$(date +%s.%N) - $drawn" | bc) s after it was drawn"
}
crash() { kill -9 $window_program; wait $window_program 2>/dev/null || true; }
save_as() { xdotool key ctrl+s; sleep 2; xdotool type --delay 12 -- "$1"; xdotool key Return; sleep 2; }
typed() { xdotool type --delay 12 -- "$1"; xdotool key "${2:-Return}"; sleep 0.2; }
found() { [ "$(held "$1")" = "$2" ] || { echo "$3: the file holds $(held "$1"), not $2"; exit 1; }; }

start
xdotool mousemove 600 500 key l
typed "0,0"; typed "#100,0"; typed "#100,150"; typed "#0,150" ctrl+Return
wait_kept "4 0"
crash
start
shot 1-never-saved
xdotool key space  # the notice's first button has the keyboard
sleep 2
shot 2-recovered
save_as "$work/lot.underlawn"
found "$work/lot.underlawn" "4 0" "after a crash of work that was never saved"

# A second's work behind what was saved: the notice has both dates.
sleep 2
xdotool mousemove 600 500 key t
typed "40,40"; typed "60,90"
wait_kept "4 2"
crash
found "$work/lot.underlawn" "4 0" "before recovering"
start
shot 3-saved-before
xdotool key space
sleep 2
shot 4-recovered
xdotool key ctrl+s
sleep 2
found "$work/lot.underlawn" "4 2" "after a crash of work saved before"
echo "recovered by keyboard after kill -9, twice"
