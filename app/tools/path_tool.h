// SPDX-License-Identifier: GPL-3.0-or-later
// Draws point by point: lot line, areas, utilities. Click or type each point; back to the first, Enter, C or
// a double click ends it; Backspace takes the last point back.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class PathTool : public Tool {
 public:
  using Tool::Tool;

  QString status() const override;
  void press(const Pointer& pointer) override { place(pointer.at); }
  void double_click(const Pointer&) override { finish(); }
  bool key_press(QKeyEvent& key) override;  // C
  void place(Point p) override;
  bool busy() const override { return !points_.empty(); }
  void cancel() override { points_.clear(); }
  void step_back() override;
  void finish() override;
  std::optional<Point> from() const override;
  SnapTargets targets() const override;
  void paint(const ToolPaint& p) const override;

 protected:
  virtual bool closes() const = 0;                   // a ring, not a line
  virtual void keep(std::vector<Point> points) = 0;  // commits what was drawn
  virtual QString first_hint() const = 0;            // status before the first point

  const Polyline& points() const { return points_; }

 private:
  std::size_t least() const { return closes() ? 3 : 2; }

  Polyline points_;
};

}  // namespace underlawn
