// SPDX-License-Identifier: GPL-3.0-or-later
// An area: a rectangle by one side and its depth, a rectangle square to the drawing by dragging or by its
// typed size ("18 x 40"), or a free ring. R changes between rectangle and ring.
#pragma once

#include "tools/path_tool.h"

namespace underlawn {

class OutlineTool : public PathTool {
 public:
  OutlineTool(ToolContext& context, bool rectangle) : PathTool(context), rectangle_(rectangle) {}

  QString status() const override;
  void press(const Pointer& pointer) override;
  void move(const Pointer& pointer) override { toward_ = pointer.at; }
  void release(const Pointer& pointer) override;
  void double_click(const Pointer& pointer) override;
  bool key_press(QKeyEvent& key) override;  // R
  bool owns_key(int key) const override { return key == Qt::Key_R; }
  void place(Point p) override;
  void cancel() override;
  void finish() override;
  bool reads_text() const override { return rectangle_ && points().size() == 1; }
  QString take_text(const QString& typed, bool keep) override;
  Point steered(Point p) const override;
  void paint(const ToolPaint& p) const override;

 protected:
  bool closes() const override { return true; }
  QString take_size(const QString& wide, const QString& deep, bool keep);
  QString first_hint() const override;

 private:
  bool wants_depth() const { return rectangle_ && points().size() == 2; }
  Ring by_depth(Point p) const;
  Ring by_corners(Point p) const;

  bool rectangle_;
  Point toward_;                    // where the pointer was last
  std::optional<Point> typed_;      // where the typed text leads: to the other corner, or the end of the side
  bool typed_size_ = false;         // it is the other corner
  std::optional<Pointer> pressed_;  // the press that set the first point, while the button is down
};

}  // namespace underlawn
