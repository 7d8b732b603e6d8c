// SPDX-License-Identifier: GPL-3.0-or-later
// The shortest distance between two things of the lot. Changes nothing.
#pragma once

#include "tools/tool.h"

namespace underlawn {

// Where two lines or outlines come nearest to each other; areas that meet have no clearance.
struct Nearest {
  Point a, b;
  double apart = 0;
};
Nearest nearest_places(const Polyline& a, bool closed_a, const Polyline& b, bool closed_b);

class ClearanceTool : public Tool {
 public:
  using Tool::Tool;

  QString title() const override { return tr("Clearance"); }
  QString status() const override;
  void begin() override { cancel(); }
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  bool busy() const override { return first_.has_value(); }
  void cancel() override;
  bool snaps() const override { return false; }
  void place(Point p) override;
  void paint(const ToolPaint& p) const override;

 private:
  struct Shape {
    QString name;
    Polyline line;
    bool closed = false;
    bool operator==(const Shape&) const = default;
  };
  std::optional<Shape> shape_at(Point p) const;
  std::optional<Shape> shape_of_thing(const Selected& what) const;
  QString words() const;

  std::optional<Shape> first_, second_, hovered_;
  bool done_ = false;
};

}  // namespace underlawn
