// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tools/outline_tool.h"

namespace underlawn {

class LotTool : public OutlineTool {
 public:
  explicit LotTool(ToolContext& context) : OutlineTool(context, false) {}
  QString title() const override { return tr("Lot line"); }

 protected:
  void keep(std::vector<Point> points) override;
  QString first_hint() const override;
};

}  // namespace underlawn
