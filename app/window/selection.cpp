// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/selection.h"

#include <algorithm>

namespace underlawn {

bool is_there(const Plan& plan, const Selected& what) {
  using Kind = Selected::Kind;
  switch (what.kind) {
    case Kind::nothing:
      return false;
    case Kind::lot:
      return !plan.site.lot.empty();
    case Kind::lot_edge:
      return what.index >= 0 && static_cast<std::size_t>(what.index) < plan.site.lot.size();
    case Kind::feature:
      return find_feature(plan.site, what.id) != nullptr;
    case Kind::entry:
      return plan.site.entry.has_value();
    case Kind::locked:
      return what.id >= 0 && static_cast<std::size_t>(what.id) < plan.wishes.locked.size();
    case Kind::height:
      return what.id >= 0 && static_cast<std::size_t>(what.id) < plan.site.heights.size();
    case Kind::dimension:
      return what.id >= 0 && static_cast<std::size_t>(what.id) < plan.dimensions.size();
    case Kind::trench:
    case Kind::header:
    case Kind::run:
      return true;
  }
  return false;
}

const Selected& Selection::now() const {
  static const Selected kNothing;
  return all_.empty() ? kNothing : all_.back();
}

void Selection::select(Selected what) {
  if (what.kind == Selected::Kind::nothing) return select_several({});
  select_several({what});
}

void Selection::select_several(std::vector<Selected> what) {
  if (what == all_) return;
  all_ = std::move(what);
  emit changed();
}

bool same_thing(const Selected& a, const Selected& b) {
  const auto lot = [](const Selected& s) {
    return s.kind == Selected::Kind::lot || s.kind == Selected::Kind::lot_edge;
  };
  if (a.kind == Selected::Kind::lot_edge && b.kind == a.kind) return a.index == b.index;
  return (lot(a) && lot(b)) || (a.kind == b.kind && a.id == b.id);
}

bool holds_thing(const std::vector<Selected>& all, const Selected& what) {
  return std::any_of(all.begin(), all.end(), [&](const Selected& s) { return same_thing(s, what); });
}

}  // namespace underlawn
