// SPDX-License-Identifier: GPL-3.0-or-later
// Says of the place under the pointer why no trench lies there, and on a click what each thing that keeps it
// out costs. Changes nothing.
#pragma once

#include <memory>
#include <stop_token>

#include "layout/why.h"
#include "tools/tool.h"
#include "window/background.h"

namespace underlawn {

class WhyTool : public Tool {
 public:
  using Tool::Tool;
  ~WhyTool() override;
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
  using Prices = std::vector<std::pair<Restriction, RestrictionPrice>>;
  void start_pricing(const WhyEmpty& why);
  static Prices priced(const Plan& plan, const Coil& coil, const std::vector<Restriction>& of,
                       const std::stop_token& stop);
  static QStringList in_words(const Plan& plan, const Prices& prices);

  std::optional<Point> asked_;  // the answer stays until the next click
  std::shared_ptr<const Plan> asked_of_;
  QStringList said_;
  QStringList prices_;
  std::vector<Segment> blame_;  // edges of the lot and sides of features that keep out
  std::stop_source stop_;       // of what is being priced
  Background<Result<Prices>> pricing_;
};

// One reason as a person would say it, in the plan's units.
QString reason_in_words(const Plan& plan, const Reason& reason);
// What a restriction costs, and what was taken away to learn it.
QString price_in_words(const Plan& plan, const Restriction& what, const RestrictionPrice& price);

}  // namespace underlawn
