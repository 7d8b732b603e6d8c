// SPDX-License-Identifier: GPL-3.0-or-later
// Where machines come onto the lot, and where pipe is laid down.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class DigPlaceTool : public Tool {
 public:
  enum class Place { access, laydown };
  DigPlaceTool(ToolContext& context, Place place) : Tool(context), place_(place) {}
  QString title() const override;
  QString status() const override;
  void press(const Pointer& pointer) override { place(pointer.at); }
  void place(Point p) override;
  Point steered(Point p) const override;
  void paint(const ToolPaint& p) const override;

 private:
  Place place_;
};

}  // namespace underlawn
