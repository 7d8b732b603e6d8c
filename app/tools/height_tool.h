// SPDX-License-Identifier: GPL-3.0-or-later
// Spot heights: one click each, then the height is typed in the panel.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class HeightTool : public Tool {
 public:
  using Tool::Tool;
  QString title() const override { return tr("Spot height"); }
  QString status() const override;
  void press(const Pointer& pointer) override { place(pointer.at); }
  // As high as the ground is taken to be there now, until it is typed.
  void place(Point p) override;
  void paint(const ToolPaint& p) const override;
};

}  // namespace underlawn
