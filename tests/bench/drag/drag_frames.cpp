// SPDX-License-Identifier: GPL-3.0-or-later
// Drags a corner of a plan's lot in the real window, and reports how long a frame took: from the move of the
// pointer until the drawing shows the solved plan of that place (whole), how long the window's thread was
// held up of that (held), and on how many frames trenches jumped. With a count of moves beyond the path it
// goes to and fro, and the memory in use is reported.
//   underlawn_drag PLAN [MOVES] [FRAMES_FOLDER]
#include <QAbstractEventDispatcher>
#include <QApplication>
#include <QElapsedTimer>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <numbers>

#include "canvas/canvas.h"
#include "window/main_window.h"

using namespace underlawn;

namespace {

double resident_mb() {
  long pages = 0, all = 0;
  std::ifstream("/proc/self/statm") >> all >> pages;
  return static_cast<double>(pages) * 4096 / 1e6;
}

void send(Canvas& canvas, QEvent::Type type, QPointF at, Qt::MouseButton button) {
  const Qt::MouseButtons down = type == QEvent::MouseButtonRelease ? Qt::NoButton : Qt::LeftButton;
  // Alt: nothing catches the pointer.
  QMouseEvent event(type, at, canvas.mapToGlobal(at), button, down, Qt::AltModifier);
  QApplication::sendEvent(&canvas, &event);
}

double at_share(std::vector<double> all, double share) {
  std::sort(all.begin(), all.end());
  return all.empty() ? 0
                     : all[std::min(all.size() - 1,
                                    static_cast<std::size_t>(share * static_cast<double>(all.size())))];
}

void report(const char* what, const std::vector<double>& ms) {
  std::printf("%s: median %.1f ms, p95 %.1f ms, most %.1f ms\n", what, at_share(ms, 0.5), at_share(ms, 0.95),
              at_share(ms, 1));
}

// The furthest that a trench moved, matched to the nearest of the frame before; a change of their number is
// 1e9.
double jump(const std::vector<Trench>& before, const std::vector<Trench>& after) {
  if (before.size() != after.size()) return 1e9;
  double most = 0;
  for (const Trench& t : after) {
    double least = 1e9;
    for (const Trench& b : before)
      least = std::min(least, std::max(distance(t.head, b.head), distance(t.end, b.end)));
    most = std::max(most, least);
  }
  return most;
}

// How long the window's thread has waited for something to do, ms.
class Waited {
 public:
  Waited() {
    auto* d = QAbstractEventDispatcher::instance();
    QObject::connect(d, &QAbstractEventDispatcher::aboutToBlock, d, [this] { since_.start(); });
    QObject::connect(d, &QAbstractEventDispatcher::awake, d, [this] {
      if (since_.isValid()) sum_ += static_cast<double>(since_.nsecsElapsed()) / 1e6;
      since_.invalidate();
    });
  }
  double take() { return std::exchange(sum_, 0); }

 private:
  QElapsedTimer since_;
  double sum_ = 0;
};

// From the corner out and round in a loop of 4 m, 5 cm a move at first, so that it passes its start.
Point path(Point start, int i) {
  const double turn = 2 * std::numbers::pi * i / 300;
  return start + Point{2 * std::sin(turn), 2 * (1 - std::cos(turn))};
}

}  // namespace

int main(int argc, char** argv) {
  QApplication app(argc, argv);
  if (argc < 2) return std::fprintf(stderr, "underlawn_drag PLAN [MOVES] [FRAMES_FOLDER]\n"), 2;
  const int moves = argc > 2 ? std::max(1, std::atoi(argv[2])) : 300;
  QTemporaryDir kept;
  MainWindow window(kept.path());
  window.resize(1600, 1000);
  window.show();
  Document& document = window.document();
  if (!document.open(argv[1])) return std::fprintf(stderr, "cannot open %s\n", argv[1]), 3;
  const auto settle = [&] {
    while (document.stale()) app.processEvents(QEventLoop::WaitForMoreEvents);
    app.processEvents();
  };
  settle();
  Canvas& canvas = *window.canvas();
  std::fprintf(stderr, "at the start %.1f MB\n", resident_mb());
  const Point corner = document.plan().site.lot.front().at;
  window.selection().select({Selected::Kind::lot, 0, 0});
  send(canvas, QEvent::MouseButtonPress, canvas.view().to_device(corner), Qt::LeftButton);
  std::vector<double> whole, held;
  Waited waited;
  std::vector<Trench> before = document.outcome()->layout.trenches;
  int jumps = 0, recounts = 0;
  double memory = 0;
  for (int i = 1; i <= moves; ++i) {
    waited.take();
    QElapsedTimer clock;
    clock.start();
    send(canvas, QEvent::MouseMove, canvas.view().to_device(path(corner, i)), Qt::NoButton);
    while (document.stale()) app.processEvents(QEventLoop::WaitForMoreEvents);
    app.processEvents();  // the answer is painted
    const double all = static_cast<double>(clock.nsecsElapsed()) / 1e6;
    whole.push_back(all);
    held.push_back(all - waited.take());
    const double moved = jump(before, document.outcome()->layout.trenches);
    recounts += moved >= 1e8;
    jumps += moved > 0.5 && moved < 1e8;
    before = document.outcome()->layout.trenches;
    if (argc > 3 && i % 10 == 0)
      canvas.grab().save(QString("%1/frame-%2.png").arg(argv[3]).arg(i, 4, 10, QChar('0')));
    if (i == std::min(moves, 300)) memory = resident_mb();
    if (i % 1000 == 0) std::fprintf(stderr, "after %d moves %.1f MB\n", i, resident_mb());
  }
  send(canvas, QEvent::MouseButtonRelease, canvas.view().to_device(path(corner, moves)), Qt::LeftButton);
  settle();
  report("whole frame, pointer to solved drawing", whole);
  report("window's thread held up", held);
  std::printf("%d moves of %.0f mm; trenches jumped over 0.5 m on %d, their number changed on %d\n", moves,
              1000 * distance(path(corner, 1), path(corner, 0)), jumps, recounts);
  std::printf("memory after 300 moves %.0f MB, after %d %.0f MB\n", memory, moves, resident_mb());
  document.start_new();  // nothing unsaved is left to be asked about
  return 0;
}
