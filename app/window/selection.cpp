// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/selection.h"

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

void Selection::select(Selected what) {
  if (what == now_) return;
  now_ = what;
  emit changed();
}

}  // namespace underlawn
