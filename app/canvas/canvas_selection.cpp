// SPDX-License-Identifier: GPL-3.0-or-later
// What is selected on the canvas, and how it stays selected while the plan changes.
#include <algorithm>

#include "canvas/canvas.h"
#include "canvas/hit.h"
#include "tools/grips.h"
#include "tools/trench_drag.h"

namespace underlawn {

namespace {

// The one that lies nearest to where another lay; null where there are none.
const Trench* nearest_trench(const Layout& layout, const Segment& lay) {
  const auto apart = [&](const Trench& t) { return distance(t.head, lay.a) + distance(t.end, lay.b); };
  const auto best = std::min_element(layout.trenches.begin(), layout.trenches.end(),
                                     [&](const Trench& l, const Trench& r) { return apart(l) < apart(r); });
  return best == layout.trenches.end() ? nullptr : &*best;
}

}  // namespace

void Canvas::selection_changed() {
  trenches_lay_.clear();
  follow_trenches();
  tell_status();
}

// Undo may take away what is selected, or one of its corners.
void Canvas::forget_missing() {
  const Plan& shown = document_.plan();
  std::vector<Selected> left = picked();
  std::erase_if(left, [&](const Selected& s) { return !is_there(shown, s); });
  for (Selected& s : left)
    if (const auto corner = handle_of(s); corner && !edit::handle_position(shown, *corner)) s.index = -1;
  selection_.select_several(std::move(left));
}

// A new outcome may number the trenches anew: each one selected is the one nearest to where it lay.
void Canvas::follow_trenches() {
  if (outcome() == nullptr) return trenches_lay_.clear();
  const Layout& layout = outcome()->layout;
  std::vector<Selected> now;
  std::vector<Segment> lay;
  std::size_t seen = 0;
  for (Selected s : picked()) {
    if (s.kind == Selected::Kind::trench) {
      const Trench* t = seen < trenches_lay_.size() ? nearest_trench(layout, trenches_lay_[seen])
                                                    : trench_numbered(layout, s.id);
      ++seen;
      if (t == nullptr) return;  // there are none just now
      s.id = t->number;
      if (holds_thing(now, s)) continue;
      lay.push_back({t->head, t->end});
    }
    now.push_back(s);
  }
  selection_.select_several(std::move(now));
  trenches_lay_ = std::move(lay);
}

// What was drawn, in the order the keyboard walks through it.
std::vector<Selected> Canvas::drawn_things() const {
  const auto add = [](std::vector<Selected>& all, Selected::Kind kind, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) all.push_back({kind, static_cast<int>(i)});
  };
  std::vector<Selected> all;
  if (!plan().site.lot.empty()) all.push_back({Selected::Kind::lot});
  for (const Feature& f : plan().site.features) all.push_back({Selected::Kind::feature, f.id});
  if (plan().site.entry) all.push_back({Selected::Kind::entry});
  add(all, Selected::Kind::locked, plan().wishes.locked.size());
  add(all, Selected::Kind::height, plan().site.heights.size());
  add(all, Selected::Kind::dimension, plan().dimensions.size());
  std::erase_if(all, [this](const Selected& s) { return !is_shown(plan(), s, layers()); });
  return all;
}

// The lot line and the entry point are left where they are by what is done to all.
void Canvas::select_all() {
  std::vector<Selected> all = drawn_things();
  std::erase_if(all, [](const Selected& s) {
    return s.kind == Selected::Kind::lot || s.kind == Selected::Kind::entry;
  });
  pick(std::move(all));
}

void Canvas::select_kind() {
  std::vector<Selected> all = drawn_things();
  if (outcome() != nullptr)
    for (const Trench& t : outcome()->layout.trenches) all.push_back({Selected::Kind::trench, t.number});
  for (std::size_t i = 0; i < plan().site.lot.size(); ++i)
    all.push_back({Selected::Kind::lot_edge, 0, static_cast<int>(i)});
  const auto kind_of = [this](const Selected& s) {
    const Feature* f = s.kind == Selected::Kind::feature ? find_feature(plan().site, s.id) : nullptr;
    return std::pair(s.kind, f != nullptr ? static_cast<int>(f->kind) : -1);
  };
  std::erase_if(all, [&](const Selected& s) {
    return std::none_of(picked().begin(), picked().end(),
                        [&](const Selected& p) { return kind_of(p) == kind_of(s); });
  });
  if (all.empty()) return say(tr("Select one thing of the kind first."));
  pick(std::move(all));
}

void Canvas::select_none() {
  pick({});
}

bool Canvas::select_next(int step) {
  const std::vector<Selected> all = drawn_things();
  const int count = static_cast<int>(all.size());
  int at = step > 0 ? -1 : count;
  if (!picked().empty())
    for (int i = 0; i < count; ++i)
      if (all[static_cast<std::size_t>(i)].kind == picked().back().kind &&
          all[static_cast<std::size_t>(i)].id == picked().back().id)
        at = i;
  at += step;
  if (at < 0 || at >= count) return false;
  pick({all[static_cast<std::size_t>(at)]});
  return true;
}

}  // namespace underlawn
