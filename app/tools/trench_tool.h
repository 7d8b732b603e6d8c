// SPDX-License-Identifier: GPL-3.0-or-later
// Draws a trench that stays where it is: its head first, then its bends, last its end.
#pragma once

#include "tools/path_tool.h"

namespace underlawn {

class TrenchTool : public PathTool {
 public:
  using PathTool::PathTool;
  QString title() const override { return tr("Trench"); }
  void place(Point p) override;
  void paint(const ToolPaint& p) const override;

 protected:
  bool closes() const override { return false; }
  void keep(std::vector<Point> points) override;
  QString first_hint() const override;
};

}  // namespace underlawn
