// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/turn_tool.h"

#include <cmath>

#include "base/quantity.h"
#include "tools/course.h"
#include "tools/gesture_paint.h"
#include "tools/grips.h"
#include "tools/things.h"

namespace underlawn {

namespace {

constexpr double kHitReach = 7;  // px

// Rotations by quarters stay exact.
double tidy(double radians) {
  const double quarters = radians / (M_PI / 2);
  return std::abs(quarters - std::round(quarters)) < 1e-12 ? std::round(quarters) * (M_PI / 2) : radians;
}

}  // namespace

QString TurnTool::status() const {
  if (empty(things_of(context_.plan(), context_.picked())))
    return tr("Turn: click what is to be turned, or select several before.");
  if (!about_) return tr("Click the point it is turned about; Enter takes its middle.");
  if (!first_)
    return tr(
        "Type the angle, 30 or -12.5 (clockwise), Enter; or click a direction that is to be laid elsewhere.");
  return tr("Click where that direction is to point, or type the angle. Shift locks it to steps of 15°.");
}

void TurnTool::press(const Pointer& pointer) {
  if (!empty(things_of(context_.plan(), context_.picked()))) return place(pointer.at);
  const auto there = under(pointer.raw, kHitReach, false);
  if (there.empty()) return context_.say(tr("There is nothing here. Click a thing on the lot."));
  context_.pick({there.front()});
}

void TurnTool::place(Point p) {
  if (!about_) {
    about_ = p;
  } else if (distance(p, *about_) < kSamePlace) {
    context_.say(tr("Point farther from the middle of the turn."));
  } else if (!first_) {
    first_ = p;
  } else {
    keep(angle_to(p));
  }
}

double TurnTool::angle_to(Point p) const {
  const Point a = *first_ - *about_, b = p - *about_;
  return std::atan2(cross(a, b), dot(a, b));
}

Plan TurnTool::turned_by(double radians) const {
  return edit::turned(context_.plan(), things_of(context_.plan(), context_.picked()), tidy(radians), *about_);
}

void TurnTool::move(const Pointer& pointer) {
  if (about_ && first_ && !typed_ && distance(pointer.at, *about_) > kSamePlace)
    context_.preview(turned_by(angle_to(pointer.at)));
}

void TurnTool::keep(double radians) {
  const Plan after = turned_by(radians);
  if (after == context_.plan() && std::abs(std::sin(radians / 2)) > 1e-12)
    return context_.say(tr("Turned so it would lie too far from the drawing's origin."));
  about_.reset();
  first_.reset();
  typed_.reset();
  context_.commit(after, things_action(context_.plan(), tr("Turn"), context_.picked()));
  context_.back_to_select();
}

QString TurnTool::take_text(const QString& typed, bool keep_it) {
  typed_.reset();
  if (typed.isEmpty()) {
    context_.preview(std::nullopt);
    return {};
  }
  const auto angle = parse_quantity(Quantity::angle, typed.toStdString(), context_.plan().units);
  if (!angle) return QString::fromStdString(angle.error().message());
  if (keep_it) {
    keep(*angle);
    return {};
  }
  typed_ = *angle;
  context_.preview(turned_by(*angle));
  return {};
}

void TurnTool::finish() {
  if (about_) return;
  const auto points = points_of(context_.plan(), things_of(context_.plan(), context_.picked()));
  if (const auto box = box_of(points)) about_ = middle_of(*box);
}

void TurnTool::cancel() {
  context_.preview(std::nullopt);
  about_.reset();
  first_.reset();
  typed_.reset();
}

void TurnTool::step_back() {
  context_.preview(std::nullopt);
  if (first_)
    first_.reset();
  else
    about_.reset();
}

void TurnTool::paint(const ToolPaint& p) const {
  if (!about_) return;
  if (first_) {
    paint_drawn(p, {*first_, *about_}, p.pointer.at, false);
    const double degrees = angle_to(p.pointer.at) * 180 / M_PI;
    paint_plate(p, p.view.to_device(p.pointer.at) + QPointF(16, -12),
                {tr("Turn %1°").arg(degrees, 0, 'f', 2)}, p.look.text);
  } else {
    paint_drawn(p, {*about_}, p.pointer.at, false);
  }
}

}  // namespace underlawn
