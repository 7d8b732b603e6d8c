// SPDX-License-Identifier: GPL-3.0-or-later
// Cuts a utility or a drawn trench at a point, an area along a line through two points.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class SplitTool : public Tool {
 public:
  using Tool::Tool;

  QString title() const override { return tr("Split"); }
  QString status() const override;
  void begin() override { cancel(); }
  void press(const Pointer& pointer) override { place(pointer.at); }
  void move(const Pointer& pointer) override;
  void place(Point p) override;
  bool busy() const override { return first_.has_value(); }
  void cancel() override { first_.reset(); }
  std::optional<Point> from() const override { return first_; }
  void paint(const ToolPaint& p) const override;

 private:
  Selected line_at(Point p) const;  // a utility or drawn trench, else nothing
  int area_at(Point p) const;       // id, 0: none
  void keep(const Result<Plan>& cut, const Selected& what);

  std::optional<Point> first_;
  Selected hovered_;
};

}  // namespace underlawn
