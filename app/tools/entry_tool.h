// SPDX-License-Identifier: GPL-3.0-or-later
// Where the supply run enters the house: always on a house wall.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class EntryTool : public Tool {
 public:
  using Tool::Tool;
  QString title() const override { return tr("Entry point"); }
  QString status() const override;
  void press(const Pointer& pointer) override { place(pointer.at); }
  void place(Point p) override;
  Point steered(Point p) const override;
  SnapTargets targets() const override;
  void paint(const ToolPaint& p) const override;
};

}  // namespace underlawn
