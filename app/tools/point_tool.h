// SPDX-License-Identifier: GPL-3.0-or-later
// Wells and trees: one click each.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class PointTool : public Tool {
 public:
  PointTool(ToolContext& context, FeatureKind kind) : Tool(context), kind_(kind) {}
  QString title() const override;
  QString status() const override;
  void press(const Pointer& pointer) override { place(pointer.at); }
  void place(Point p) override;
  void paint(const ToolPaint& p) const override;

 private:
  Feature model() const;  // a tree has the trunk of the last one drawn

  FeatureKind kind_;
};

}  // namespace underlawn
