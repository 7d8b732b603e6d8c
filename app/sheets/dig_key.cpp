// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/dig_key.h"

#include <algorithm>

#include "dig/machine_ways.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

using Paint = void (*)(PaintContext&);

Sign sign(const QString& text, const std::function<void(DigOrder&)>& fill, Paint paint) {
  return sign_of(
      text,
      [fill](Miniature& m) {
        auto order = std::make_shared<DigOrder>();
        fill(*order);
        m.outcome.order = order;
      },
      paint);
}

// A step that is drawn by nothing but what `fill` gives it.
Sign sign_of_step(const QString& text, const std::function<void(DigStep&)>& fill, Paint paint) {
  return sign(
      text,
      [fill](DigOrder& order) {
        DigStep step;
        step.trench = 1;
        step.line = {{16, 5}, {18, 5}};
        fill(step);
        order.steps = {step};
      },
      paint);
}

void paint_unnamed(PaintContext& c) {
  PaintOptions options = c.options;
  options.labels = false;
  PaintContext unnamed{c.painter, c.plan, c.outcome, c.view, c.look, options, c.labels};
  paint_dig(unnamed);
}

void paint_laydown_unnamed(PaintContext& c) {
  PaintOptions options = c.options;
  options.labels = false;
  PaintContext unnamed{c.painter, c.plan, c.outcome, c.view, c.look, options, c.labels};
  paint_spoil(unnamed);
}

}  // namespace

std::vector<Sign> dig_signs(const DigOrder& order, double excavator_width, UnitSystem units) {
  const auto wide = [&](double m) { return text_of(print_quantity(Quantity::length, m, units)); };
  const auto any = [&](bool (*has)(const DigStep&)) { return std::ranges::any_of(order.steps, has); };
  std::vector<Sign> all;
  all.push_back(sign_of_step(
      QObject::tr("step in the order of digging; circles: trenches"), [](DigStep&) {}, paint_dig));
  if (any([](const DigStep& s) { return s.hauled; }))
    all.push_back(sign_of_step(
        QObject::tr("hollow: no heap, trucked off"), [](DigStep& s) { s.hauled = true; }, paint_dig));
  all.push_back(sign_of_step(
      QObject::tr("the way it is dug"),
      [](DigStep& s) {
        s.line = {{3, 5}, {33, 5}};
      },
      paint_unnamed));
  if (any([](const DigStep& s) { return !s.spoil.empty(); }))
    all.push_back(sign_of_step(
        QObject::tr("heap, at its real width"),
        [](DigStep& s) {
          s.spoil = {{{2, 1}, {32, 1}, {32, 9}, {2, 9}}};
        },
        paint_spoil));
  if (any([](const DigStep& s) { return s.way.size() > 1; }))
    all.push_back(sign(
        QObject::tr("way of the machine, %1 wide; dot: from where it stands").arg(wide(excavator_width)),
        [](DigOrder& o) {
          o.way_out = {{3, 5}, {33, 5}};
        },
        paint_unnamed));
  if (any([](const DigStep& s) { return s.fill_way.size() > 1 && s.fill_way != s.truck_way; }))
    all.push_back(sign_of_step(
        QObject::tr("trucks bring back: last, over what is filled by then"),
        [](DigStep& s) {
          s.fill_way = {{1, 5}, {33, 5}};
        },
        paint_unnamed));
  if (any([](const DigStep& s) { return s.truck_way.size() > 1; }))
    all.push_back(sign_of_step(
        QObject::tr("trucks take off, to where the last bucket is loaded; %1 wide").arg(wide(kTruckWidth)),
        [](DigStep& s) {
          s.truck_way = {{1, 5}, {33, 5}};
        },
        paint_unnamed));
  if (any([](const DigStep& s) { return !s.ladders.empty(); }))
    all.push_back(sign_of_step(
        QObject::tr("ladder"),
        [](DigStep& s) {
          s.ladders = {{17, 5}};
        },
        paint_unnamed));
  if (order.laydown)
    all.push_back(sign(
        QObject::tr("room for pipe and racks"),
        [](DigOrder& o) {
          o.laydown = Point{17, 5};
          o.laydown_radius = 4.5;
        },
        paint_laydown_unnamed));
  return all;
}

}  // namespace underlawn::sheet
