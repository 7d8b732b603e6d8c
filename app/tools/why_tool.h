// SPDX-License-Identifier: GPL-3.0-or-later
// Says of the place under the pointer why no trench lies there, and on a click what each thing that keeps it
// out costs. Changes nothing.
#pragma once

#include "layout/why.h"
#include "tools/tool.h"

namespace underlawn {

class WhyTool : public Tool {
 public:
  using Tool::Tool;
  QString title() const override { return tr("Why no trench"); }
  QString status() const override;
  void move(const Pointer& pointer) override;
  void press(const Pointer& pointer) override { ask(pointer.at); }
  void place(Point p) override { ask(p); }
  bool busy() const override { return asked_.has_value(); }
  bool half_drawn() const override { return false; }
  void cancel() override;
  bool snaps() const override { return false; }
  void paint(const ToolPaint& p) const override;

 private:
  std::optional<WhyEmpty> look(Point at);
  void ask(Point at);
  QStringList words(const WhyEmpty& why) const;
  QStringList prices(const WhyEmpty& why) const;

  std::optional<Point> asked_;  // the answer stays until the next click
  QStringList said_;
  QStringList prices_;
  std::vector<Segment> blame_;  // edges of the lot and sides of features that keep out
};

// One reason as a person would say it, in the plan's units.
QString reason_in_words(const Plan& plan, const Reason& reason);
// What a restriction costs, and what was taken away to learn it.
QString price_in_words(const Plan& plan, const Restriction& what, const RestrictionPrice& price);

}  // namespace underlawn
