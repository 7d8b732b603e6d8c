// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/lot_tool.h"

#include "plan/edits.h"
#include "site/clearances.h"

namespace underlawn {

void LotTool::keep(std::vector<Point> points) {
  const bool again = !context_.plan().site.lot.empty();
  context_.commit(edit::with_lot(context_.plan(), points, kDefaultSetback),
                  again ? tr("Draw the lot line anew") : tr("Draw the lot line"));
  context_.pick({{Selected::Kind::lot}});
  context_.back_to_select();
}

QString LotTool::first_hint() const {
  if (!context_.plan().site.lot.empty())
    return tr("Lot line: click its first corner. The lot line there is now will be replaced.");
  return tr("Lot line: click its first corner, or type it as 0,0 and Enter.");
}

}  // namespace underlawn
