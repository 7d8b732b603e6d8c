# Sourced: a display of its own with a window manager, files of its own in $work, and `start`, which runs $program
# there and brings its window into place. Sets work, server, manager; start sets window_program and window.
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
