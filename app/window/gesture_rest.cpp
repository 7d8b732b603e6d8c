// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/gesture_rest.h"

#include <algorithm>

namespace underlawn {

namespace {

// ms: longer than a solve in a steady drag, shorter than a look at what came of it.
constexpr int kMoment = 200;
// A slow drag moves seldom: it rests once it has been still for half as long again as between its last moves.
constexpr double kSlower = 1.5;
constexpr int kLongest = 900;  // ms; slower still are single moves, each looked at

int rest_after(qint64 between) {
  return static_cast<int>(std::clamp(kSlower * static_cast<double>(between), 1.0 * kMoment, 1.0 * kLongest));
}

}  // namespace

GestureRest::GestureRest(const Document& document, QObject* parent) : QObject(parent), document_(document) {
  moved_.setSingleShot(true);
  connect(&moved_, &QTimer::timeout, this, &GestureRest::rested);
  connect(&document, &Document::plan_changed, this, [this] {
    if (document_.previewing()) {
      moved_.start(rest_after(since_.isValid() ? since_.elapsed() : 0));
      since_.start();
    } else {
      moved_.stop();
      since_.invalidate();
    }
  });
}

}  // namespace underlawn
