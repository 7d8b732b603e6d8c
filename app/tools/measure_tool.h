// SPDX-License-Identifier: GPL-3.0-or-later
// Distance along a line of clicks; from the third point on also the area inside. Changes nothing.
#pragma once

#include "tools/path_tool.h"

namespace underlawn {

class MeasureTool : public PathTool {
 public:
  using PathTool::PathTool;
  QString title() const override { return tr("Measure"); }
  QString status() const override;
  void press(const Pointer& pointer) override;
  bool half_drawn() const override { return busy() && !done_; }
  void finish() override { done_ = busy(); }
  void cancel() override;
  void step_back() override;
  void place(Point p) override;
  std::optional<Point> from() const override;
  SnapTargets targets() const override;
  void paint(const ToolPaint& p) const override;

 protected:
  bool closes() const override { return false; }
  void keep(std::vector<Point>) override {}
  QString first_hint() const override;

 private:
  QStringList result(const Polyline& line) const;

  bool done_ = false;  // the line stays to be read until the next click
};

}  // namespace underlawn
