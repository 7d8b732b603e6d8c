// SPDX-License-Identifier: GPL-3.0-or-later
// Asks for places on the drawing for somebody else, such as a card: clicked, led to by arrow keys, or typed.
#pragma once

#include <functional>

#include "tools/tool.h"

namespace underlawn {

struct AskedPlaces {
  int count = 0;
  QString words;                                            // what is to be clicked
  std::function<Point(Point, double reach)> caught;         // what a click there takes; `reach` in m
  std::function<void(const std::vector<Point>&)> progress;  // one more is there
  std::function<void(std::vector<Point>)> then;             // all are there
  std::function<void()> given_up;                           // Esc, another tool, another plan
};

class AskTool : public Tool {
 public:
  using Tool::Tool;

  void ask(AskedPlaces asked);  // gives up what was asked before
  const QString& words() const { return asked_.words; }

  QString title() const override { return tr("Show places"); }
  QString status() const override;
  void press(const Pointer& pointer) override { place(caught(pointer.raw)); }
  void place(Point p) override;
  bool busy() const override { return asked_.count > 0; }
  void cancel() override;
  void step_back() override;
  bool snaps() const override { return false; }
  std::optional<Point> from() const override;
  Point aimed(Point raw) const override { return caught(raw); }
  void paint(const ToolPaint& p) const override;

 private:
  Point caught(Point p) const;

  AskedPlaces asked_;
  std::vector<Point> places_;
};

}  // namespace underlawn
