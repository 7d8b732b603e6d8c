// SPDX-License-Identifier: GPL-3.0-or-later
// What the canvas does with what is selected.
#include "canvas/canvas.h"
#include "canvas/clipboard.h"
#include "canvas/hit.h"
#include "plan/cut_and_join.h"
#include "tools/grips.h"
#include "tools/things.h"
#include "tools/trench_drag.h"

namespace underlawn {

namespace {

constexpr double kUnderReach = 8;  // px
constexpr double kJoinReach = 14;  // px: gaps between ends that are bridged

}  // namespace

bool Canvas::copy_selected() {
  edit::Things things = things_of(plan(), picked());
  things.lot = false;
  if (empty(things)) {
    say(tr("Select something drawn on the lot first; there is one lot line only."));
    return false;
  }
  put_on_clipboard(edit::taken_out(plan(), things));
  say(tr("Copied. Ctrl+V pastes it here or in another window."));
  return true;
}

void Canvas::cut_selected() {
  std::vector<Selected> whole = picked();
  std::erase_if(whole, [](const Selected& s) {
    return s.kind == Selected::Kind::lot || s.kind == Selected::Kind::lot_edge;
  });
  for (Selected& s : whole) s.index = -1;
  if (!copy_selected()) return;
  pick(whole);
  remove_selected();
  say(tr("Cut. Ctrl+V pastes it here or in another window."));
}

void Canvas::join_selected() {
  drop_gesture();
  const edit::Things things = things_of(plan(), picked());
  const auto one = edit::joined(plan(), things.features, reach(kJoinReach));
  if (!one) return say(QString::fromStdString(one.error().message()));
  commit(*one, tr("Join"));
  pick({{Selected::Kind::feature, things.features.front()}});
}

void Canvas::pick_under() {
  if (!pointer_inside_ && !key_cursor_)
    return say(tr("Point at a place on the drawing; then this picks what lies there, one after the other."));
  auto all = hits(plan(), outcome(), pointer_.raw, reach(kUnderReach));
  std::erase_if(all, [this](const Selected& s) { return !is_shown(plan(), s, layers()); });
  if (all.empty()) return say(tr("Nothing lies here."));
  const auto now = std::find_if(all.begin(), all.end(), [this](const Selected& s) {
    return !picked().empty() && same_thing(s, picked().back());
  });
  const auto at = now == all.end() ? 0 : (static_cast<std::size_t>(now - all.begin()) + 1) % all.size();
  const Selected next = all[at];
  pick({next});
  say(tr("%1 of %2 that lie here.").arg(at + 1).arg(all.size()));
}

void Canvas::hide_kind_of_selected() {
  Layers layers = options_.layers;
  for (const Selected& s : picked()) {
    if (const Feature* f = s.kind == Selected::Kind::feature ? find_feature(plan().site, s.id) : nullptr)
      layers.show(f->kind, false);
    if (s.kind == Selected::Kind::dimension) layers.dimensions = false;
    if (s.kind == Selected::Kind::locked || s.kind == Selected::Kind::trench ||
        s.kind == Selected::Kind::header || s.kind == Selected::Kind::run)
      layers.loop = false;
  }
  if (layers == options_.layers) return say(tr("Select something of the kind that is to be hidden."));
  set_layers(layers);
  say(tr("Hidden. It is still in the plan and on every sheet; Ctrl+Shift+H shows everything."));
}

void Canvas::set_layers(const Layers& layers) {
  if (layers == options_.layers) return;
  options_.layers = layers;
  std::vector<Selected> left = picked();
  std::erase_if(left, [&](const Selected& s) { return !is_shown(plan(), s, layers); });
  if (left != picked()) pick(left);
  plan_redrawn();
  emit layers_changed();
}

void Canvas::zoom_to_selected() {
  std::vector<Point> points = points_of(plan(), things_of(plan(), picked()));
  if (outcome() != nullptr)
    for (const Selected& s : picked()) {
      if (const Trench* t =
              s.kind == Selected::Kind::trench ? trench_numbered(outcome()->layout, s.id) : nullptr)
        for (Point p : {t->head, t->end}) points.push_back(p);
      if (s.kind == Selected::Kind::run)
        points.insert(points.end(), outcome()->layout.run.line.begin(), outcome()->layout.run.line.end());
      if (s.kind == Selected::Kind::header)
        for (const Polyline& leg : outcome()->layout.header.legs)
          points.insert(points.end(), leg.begin(), leg.end());
    }
  auto box = box_of(points);
  if (!box) return say(tr("Nothing is selected. Z shows the whole lot."));
  const double least = 3;  // m: a tree is not blown up to fill the window
  const Point middle = middle_of(*box);
  box = Box{{std::min(box->low.x, middle.x - least), std::min(box->low.y, middle.y - least)},
            {std::max(box->high.x, middle.x + least), std::max(box->high.y, middle.y + least)}};
  fit_box(*box);
}

double Canvas::paper_scale() const {
  constexpr double kInch = 0.0254;
  return logicalDpiX() / kInch / view_.scale;
}

void Canvas::set_paper_scale(double scale) {
  zoom_by(paper_scale() / scale);
}

}  // namespace underlawn
