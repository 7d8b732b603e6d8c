// SPDX-License-Identifier: GPL-3.0-or-later
// Picks, moves and reshapes what is on the lot.
#pragma once

#include "tools/conduit_drag.h"
#include "tools/grips.h"
#include "tools/tool.h"
#include "tools/trench_drag.h"

namespace underlawn {

class SelectTool : public Tool {
 public:
  using Tool::Tool;

  QString title() const override { return tr("Select and move"); }
  QString status() const override;
  Qt::CursorShape cursor() const override;

  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override;
  void release(const Pointer& pointer) override;
  void double_click(const Pointer& pointer) override;
  bool key_press(QKeyEvent& key) override;
  bool key_release(QKeyEvent& key) override;
  void place(Point p) override;  // typed while dragging, or @10,5 with something selected: moves it there
  bool busy() const override { return dragging() || nudged_.has_value(); }
  bool held() const override { return dragging(); }
  void cancel() override;

  bool snaps() const override { return state_ == State::grip || state_ == State::body; }
  bool takes_typing() const override;
  std::optional<Point> from() const override;
  Point aimed(Point raw) const override;
  Point steered(Point p) const override;
  SnapTargets targets() const override;
  void paint(const ToolPaint& p) const override;

 private:
  // pressed_*: the button is down, the pointer has not left the spot yet
  enum class State { idle, pressed_grip, pressed_thing, pressed_blank, grip, body, rubber, ended };

  bool dragging() const { return state_ == State::grip || state_ == State::body || state_ == State::rubber; }
  std::optional<Grip> grip_under(const Pointer& pointer) const;
  void pick_at(const Pointer& pointer, const std::vector<Selected>& under);
  void begin_drag(const Pointer& pointer);
  Plan dragged(Point to) const;
  Plan wished(Point to) const;
  void lead(Point to);
  QString drag_name() const;
  void click(const Pointer& pointer);
  bool nudge(QKeyEvent& key);
  bool movable() const;
  std::optional<TrenchHold> trench_at(Point p) const;
  std::optional<ConduitHold> conduit_at(Point p) const;
  bool take_derived();
  void let_go();
  Point hold_of(Point p) const;

  State state_ = State::idle;
  Pointer pressed_;
  Point hold_;  // the point of what is dragged that follows the pointer
  std::optional<Grip> grip_;
  std::optional<Grip> hovered_;
  std::optional<TrenchHold> trench_;    // what is dragged, where that is a trench
  std::optional<ConduitHold> conduit_;  // or header or run
  bool picked_by_press_ = false;
  QString stopped_by_;  // of the trench in hand, in words
  QPointF last_click_{-1e9, -1e9};
  std::optional<Point> nudged_;
};

}  // namespace underlawn
