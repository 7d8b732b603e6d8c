// SPDX-License-Identifier: GPL-3.0-or-later
// Turns what is selected about a point: by a typed angle, or from one direction to another, both caught.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class TurnTool : public Tool {
 public:
  using Tool::Tool;

  QString title() const override { return tr("Turn"); }
  QString status() const override;
  void begin() override { cancel(); }
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void place(Point p) override;
  bool busy() const override { return about_.has_value(); }
  void cancel() override;
  void step_back() override;
  void finish() override;
  std::optional<Point> from() const override { return about_; }
  bool reads_text() const override { return about_.has_value(); }
  QString take_text(const QString& typed, bool keep) override;
  void paint(const ToolPaint& p) const override;

 private:
  Plan turned_by(double radians) const;
  void keep(double radians);
  double angle_to(Point p) const;  // from the first direction

  std::optional<Point> about_, first_;
  std::optional<double> typed_;
};

}  // namespace underlawn
