// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tools/path_tool.h"

namespace underlawn {

class LotTool : public PathTool {
 public:
  using PathTool::PathTool;
  QString title() const override { return tr("Lot line"); }

 protected:
  bool closes() const override { return true; }
  void keep(std::vector<Point> points) override;
  QString first_hint() const override;
};

}  // namespace underlawn
