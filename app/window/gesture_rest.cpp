// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/gesture_rest.h"

namespace underlawn {

namespace {

constexpr int kMoment =
    200;  // ms: longer than a solve in a steady drag, shorter than a look at what came of it

}  // namespace

GestureRest::GestureRest(const Document& document, QObject* parent) : QObject(parent), document_(document) {
  moved_.setSingleShot(true);
  moved_.setInterval(kMoment);
  connect(&moved_, &QTimer::timeout, this, &GestureRest::rested);
  connect(&document, &Document::plan_changed, this, [this] {
    if (document_.previewing())
      moved_.start();
    else
      moved_.stop();
  });
}

}  // namespace underlawn
