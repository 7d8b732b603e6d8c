// SPDX-License-Identifier: GPL-3.0-or-later
// Draws a dimension that stays on the plan: from where, to where, and where its line lies.
#pragma once

#include "site/dimension.h"
#include "tools/tool.h"

namespace underlawn {

class DimensionTool : public Tool {
 public:
  using Tool::Tool;

  QString title() const override { return tr("Dimension"); }
  QString status() const override;
  void begin() override { cancel(); }
  void press(const Pointer& pointer) override { place(pointer.at); }
  void move(const Pointer& pointer) override { pointer_ = pointer.at; }
  bool key_press(QKeyEvent& key) override;  // R: straight, level, upright
  void place(Point p) override;
  bool busy() const override { return from_.has_value(); }
  bool owns_key(int key) const override { return key == Qt::Key_R; }
  void cancel() override;
  void step_back() override;
  std::optional<Point> from() const override;
  bool snaps() const override { return !to_.has_value(); }
  bool reads_text() const override { return to_.has_value(); }
  QString take_text(const QString& typed, bool keep) override;
  SnapTargets targets() const override;
  void paint(const ToolPaint& p) const override;

 private:
  Dimension through(Point p) const;  // with its line through p
  void keep(Dimension d);

  std::optional<Point> from_, to_;
  DimensionWay way_ = DimensionWay::straight;
  Point pointer_;
  std::optional<double> typed_;
};

}  // namespace underlawn
