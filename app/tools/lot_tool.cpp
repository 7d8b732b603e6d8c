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
  const QString how = OutlineTool::first_hint();
  return context_.plan().site.lot.empty() ? how
                                          : tr("%1 The lot line there is now will be replaced.").arg(how);
}

}  // namespace underlawn
