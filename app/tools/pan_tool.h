// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tools/tool.h"

namespace underlawn {

class PanTool : public Tool {
 public:
  using Tool::Tool;
  QString title() const override { return tr("Move the view"); }
  QString status() const override {
    return tr("Drag to move the view; the wheel zooms; double click shows the whole lot.");
  }
  Qt::CursorShape cursor() const override { return held_ ? Qt::ClosedHandCursor : Qt::OpenHandCursor; }
  void press(const Pointer& pointer) override { held_ = pointer.device; }
  void move(const Pointer& pointer) override {
    if (held_) context_.pan_by(pointer.device - *std::exchange(held_, pointer.device));
  }
  void release(const Pointer&) override { held_.reset(); }
  void double_click(const Pointer&) override { context_.zoom_to_fit(); }
  bool snaps() const override { return false; }
  bool takes_typing() const override { return false; }

 private:
  std::optional<QPointF> held_;
};

}  // namespace underlawn
