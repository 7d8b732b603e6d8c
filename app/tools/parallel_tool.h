// SPDX-License-Identifier: GPL-3.0-or-later
// Draws beside what is there, at a typed or shown distance: an easement along a lot edge, a line beside a
// line, an outline round or inside an outline.
#pragma once

#include "tools/tool.h"

namespace underlawn {

class ParallelTool : public Tool {
 public:
  using Tool::Tool;

  QString title() const override { return tr("Parallel"); }
  QString status() const override;
  void begin() override { cancel(); }
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void place(Point p) override;
  bool busy() const override { return source_.has_value(); }
  void cancel() override;
  bool reads_text() const override { return source_.has_value(); }
  QString take_text(const QString& typed, bool keep) override;
  bool snaps() const override { return source_.has_value(); }
  void paint(const ToolPaint& p) const override;

 private:
  struct Source {
    Selected what;
    Polyline line;
    bool closed = false;
  };
  std::optional<Source> source_at(Point p) const;
  double signed_distance(Point p) const;  // left of a line, outside an outline, inside the lot: positive
  std::optional<Feature> drawn(double by) const;
  std::optional<Polyline> shape(double by) const;
  void keep(double by);

  std::optional<Source> source_, hovered_;
  Point pointer_;
  std::optional<double> typed_;  // with the sign of the pointer's side
};

}  // namespace underlawn
