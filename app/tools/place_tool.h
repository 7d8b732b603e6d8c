// SPDX-License-Identifier: GPL-3.0-or-later
// Moves, copies or pastes things from one place to another, both caught or typed: the first is a point of
// them, the second is where it is to lie. Copies go on until Esc; each is one entry.
#pragma once

#include "plan/copies.h"
#include "tools/tool.h"

namespace underlawn {

class PlaceTool : public Tool {
 public:
  enum class Way { move, copy, paste };
  PlaceTool(ToolContext& context, Way way) : Tool(context), way_(way) {}

  QString title() const override;
  QString status() const override;
  void begin() override;
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void place(Point p) override;
  bool busy() const override { return from_.has_value(); }
  void cancel() override;
  void finish() override;
  std::optional<Point> from() const override { return from_; }
  SnapTargets targets() const override;
  void paint(const ToolPaint& p) const override;

 private:
  Plan placed(Point to) const;
  bool has_things() const;
  Point corner_of(const Plan& plan) const;  // the lower left point: what is held where none was shown
  void take_from(Point p);

  Way way_;
  Plan clip_;  // what is copied or pasted
  std::optional<Point> from_;
};

}  // namespace underlawn
