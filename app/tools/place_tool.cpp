// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/place_tool.h"

#include <algorithm>

#include "canvas/clipboard.h"
#include "tools/gesture_paint.h"
#include "tools/grips.h"
#include "tools/things.h"

namespace underlawn {

namespace {

constexpr double kHitReach = 7;  // px

edit::Things everything(const Plan& plan) {
  return edit::added(Plan{}, plan);
}

}  // namespace

QString PlaceTool::title() const {
  switch (way_) {
    case Way::move:
      return tr("Move");
    case Way::copy:
      return tr("Copy");
    case Way::paste:
      return tr("Paste");
  }
  return {};
}

QString PlaceTool::status() const {
  if (way_ == Way::paste && !from_) return tr("There is nothing to paste. Copy something on a lot first.");
  if (!has_things())
    return way_ == Way::move ? tr("Move: click what is to be moved, or select several before.")
                             : tr("Copy: click what is to be copied, or select several before.");
  if (!from_)
    return tr("Click the point that is taken hold of, or type x,y; Enter takes the lower left one.");
  return way_ == Way::move ? tr("Click where it goes, or type: 12, 12<90, 12 N45E, @10,5. Esc puts it back.")
                           : tr("Click where it goes, or type: 12, 12<90, 12 N45E, @10,5. Esc ends.");
}

void PlaceTool::begin() {
  from_.reset();
  if (way_ != Way::paste) return;
  const auto held = things_on_clipboard();
  if (!held) return;
  clip_ = *held;
  from_ = corner_of(clip_);
}

bool PlaceTool::has_things() const {
  return way_ == Way::paste ? from_.has_value() : !empty(things_of(context_.plan(), context_.picked()));
}

Point PlaceTool::corner_of(const Plan& plan) const {
  const auto things = way_ == Way::paste ? everything(plan) : things_of(plan, context_.picked());
  const auto points = points_of(plan, things);
  return points.empty() ? Point{} : *std::min_element(points.begin(), points.end(), [](Point a, Point b) {
    return a.x + a.y < b.x + b.y;
  });
}

void PlaceTool::press(const Pointer& pointer) {
  if (has_things()) return place(pointer.at);
  const auto there = under(pointer.raw, kHitReach, false);
  if (there.empty()) return context_.say(tr("There is nothing here. Click a thing on the lot."));
  context_.pick({there.front()});
}

void PlaceTool::take_from(Point p) {
  from_ = p;
  if (way_ == Way::copy)
    clip_ = edit::taken_out(context_.plan(), things_of(context_.plan(), context_.picked()));
}

void PlaceTool::place(Point p) {
  if (!has_things()) return;
  if (!from_) return take_from(p);
  const Plan before = context_.plan();
  const Plan after = placed(p);
  const QString name = way_ == Way::move   ? things_action(before, tr("Move"), context_.picked())
                       : way_ == Way::copy ? tr("Copy")
                                           : tr("Paste");
  const bool ends = way_ != Way::copy;
  if (ends) from_.reset();
  context_.commit(after, name);
  if (way_ == Way::paste) context_.pick(selected_of(edit::added(before, after)));
  if (way_ == Way::copy) context_.say(tr("Copied. Click the next place, or Esc."));
  if (ends) context_.back_to_select();
}

Plan PlaceTool::placed(Point to) const {
  if (way_ == Way::move) {
    std::vector<Selected> whole = context_.picked();
    for (Selected& s : whole)
      if (s.kind != Selected::Kind::lot_edge) s.index = -1;
    return moved_things(context_.plan(), whole, to - *from_);
  }
  return edit::with_added(context_.plan(), clip_, to - *from_);
}

void PlaceTool::move(const Pointer& pointer) {
  if (from_) context_.preview(placed(pointer.at));
}

void PlaceTool::finish() {
  if (!from_ && has_things()) take_from(corner_of(context_.plan()));
}

void PlaceTool::cancel() {
  context_.preview(std::nullopt);
  const bool hung = from_.has_value();
  from_.reset();
  if (hung && way_ == Way::paste) context_.back_to_select();  // what was copied is off the pointer
}

// What is moved does not catch itself.
SnapTargets PlaceTool::targets() const {
  SnapTargets t = Tool::targets();
  if (way_ != Way::move || !from_) return t;
  const edit::Things things = things_of(context_.plan(), context_.picked());
  const auto moving = [&](const SnapOwner& o) {
    const auto has = [&o](const std::vector<int>& all) {
      return std::find(all.begin(), all.end(), o.feature_id) != all.end();
    };
    if (o.kind == SnapOwner::Kind::lot) return things.lot;
    return o.kind == SnapOwner::Kind::feature  ? has(things.features)
           : o.kind == SnapOwner::Kind::locked ? has(things.locked)
                                               : false;
  };
  std::erase_if(t.places, [&](const auto& p) { return moving(p.owner); });
  std::erase_if(t.edges, [&](const auto& e) { return moving(e.owner); });
  return t;
}

void PlaceTool::paint(const ToolPaint& p) const {
  if (from_) paint_drawn(p, {*from_}, p.pointer.at, false);
}

}  // namespace underlawn
