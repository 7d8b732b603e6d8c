// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/why_tool.h"

#include "base/quantity.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

constexpr qsizetype kMostInPassing = 4;  // reasons, until a click asks for all
constexpr double kNoDistance = 0.005;    // m: less is not worth a number

QString metres(const Plan& plan, double value) {
  return QString::fromStdString(print_quantity(Quantity::length, value, plan.units, Fineness::normal));
}

QString named(const Plan& plan, const Reason& reason) {
  return QString::fromStdString(name_with_width(plan.site, plan.wishes, reason, plan.units));
}

// A name as the first word of a sentence.
QString first(QString name) {
  return name.isEmpty() ? name : name.front().toUpper() + name.mid(1);
}

std::vector<Segment> outline_of(const Site& site, const Restriction& what) {
  std::vector<Segment> all;
  if (what.kind == Restriction::Kind::setback) {
    const auto i = static_cast<std::size_t>(what.edge);
    if (i < site.lot.size()) all.push_back({site.lot[i].at, site.lot[(i + 1) % site.lot.size()].at});
    return all;
  }
  const Feature* f = find_feature(site, what.feature_id);
  if (f == nullptr) return all;
  for (std::size_t i = 1; i < f->points.size(); ++i) all.push_back({f->points[i - 1], f->points[i]});
  if (shape_of(f->kind) == FeatureShape::area) all.push_back({f->points.back(), f->points.front()});
  if (f->points.size() == 1) all.push_back({f->points.front(), f->points.front()});
  return all;
}

bool gains(const RestrictionPrice& price) {
  return price.costs_circuits() > 0 || price.costs_digging() > kWorthDigging;
}

bool costs_more(const RestrictionPrice& l, const RestrictionPrice& r) {
  if (l.costs_circuits() != r.costs_circuits()) return l.costs_circuits() > r.costs_circuits();
  return l.costs_digging() > r.costs_digging();
}

bool has_restriction(const Reason& reason) {
  return reason.closed_side < 0 &&
         (reason.kind == Reason::Kind::covered || reason.kind == Reason::Kind::stops_trench);
}

}  // namespace

QString reason_in_words(const Plan& plan, const Reason& reason) {
  using Kind = Reason::Kind;
  const QString short_by = metres(plan, reason.short_by);
  switch (reason.kind) {
    case Kind::outside:
      return WhyTool::tr("Off the lot.");
    case Kind::covered:
      return (reason.on_it ? WhyTool::tr("Here is %1; clear of it %2 further off.")
                           : WhyTool::tr("In %1; clear of it %2 further off."))
          .arg(named(plan, reason), short_by);
    case Kind::stops_trench:
      if (reason.short_by < kNoDistance)
        return WhyTool::tr("A trench here would run into %1.").arg(named(plan, reason));
      return WhyTool::tr("A trench here is %2 too short: %1.").arg(named(plan, reason), short_by);
    case Kind::too_near:
      if (reason.on_it) return WhyTool::tr("Trench %1 lies here.").arg(reason.trench);
      if (reason.short_by < kNoDistance) return WhyTool::tr("Too near trench %1.").arg(reason.trench);
      return WhyTool::tr("Too near trench %1, by %2.").arg(reason.trench).arg(short_by);
    case Kind::header:
      return reason.on_it ? WhyTool::tr("The header lies here.")
                          : WhyTool::tr("A trench here would lie across the header.");
    case Kind::run:
      return reason.on_it ? WhyTool::tr("The supply run lies here.")
                          : WhyTool::tr("A trench here would lie across the supply run.");
    case Kind::no_header:
      return WhyTool::tr("A trench would fit, but no header reaches either of its ends.");
    case Kind::enough:
      return WhyTool::tr("A trench would fit; as many as you asked for are placed.");
    case Kind::not_used:
      return WhyTool::tr("A trench would fit here by itself; no whole arrangement with it was better.");
  }
  return {};
}

QString price_in_words(const Plan& plan, const Restriction& what, const RestrictionPrice& price) {
  const bool lot = what.kind == Restriction::Kind::setback;
  if (!price.lifted && lot) return WhyTool::tr("The lot line cannot be moved.");
  const QString name = first(QString::fromStdString(
      name_with_width(plan.site, what, price.lifted.value_or(Lifted::whole), plan.units)));
  if (!price.lifted) return WhyTool::tr("%1 cannot be moved.").arg(name);
  const int trenches = price.costs_circuits();
  if (trenches == 1) return WhyTool::tr("%1 costs one trench.").arg(name);
  if (trenches > 1) return WhyTool::tr("%1 costs %2 trenches.").arg(name).arg(trenches);
  if (gains(price))
    return WhyTool::tr("%1 costs %2 of digging.").arg(name, metres(plan, price.costs_digging()));
  return WhyTool::tr("%1 costs nothing.").arg(name);
}

QString WhyTool::status() const {
  if (!asked_)
    return tr("Point where you would like a trench; click to learn what keeps it out, and its cost.");
  return (said_ + prices_).join(QStringLiteral(" "));
}

WhyTool::~WhyTool() {
  stop_.request_stop();
}

void WhyTool::cancel() {
  stop_.request_stop();
  asked_.reset();
  said_.clear();
  prices_.clear();
  blame_.clear();
}

void WhyTool::move(const Pointer& pointer) {
  if (asked_ && !(context_.plan() == *asked_of_)) cancel();
  if (!asked_) look(pointer.at);
}

std::optional<WhyEmpty> WhyTool::look(Point at) {
  said_.clear();
  blame_.clear();
  const Outcome* outcome = context_.outcome();
  const Plan& plan = context_.plan();
  if (outcome == nullptr || plan.site.lot.empty()) {
    said_ << tr("There is no lot line yet.");
    return std::nullopt;
  }
  WhyEmpty why = what_keeps_out(plan.site, plan.wishes, outcome->coil, outcome->layout, at);
  said_ = words(why);
  if (said_.size() > kMostInPassing) {
    const auto more = said_.size() - kMostInPassing;
    said_.resize(kMostInPassing);
    said_ << tr("%1 more: click for all, with what each costs.").arg(more);
  }
  for (const Reason& r : why.reasons)
    if (has_restriction(r))
      for (const Segment& s : outline_of(plan.site, r.restriction)) blame_.push_back(s);
  return why;
}

QStringList WhyTool::words(const WhyEmpty& why) const {
  QStringList all;
  for (const Reason& r : why.reasons) all << reason_in_words(context_.plan(), r);
  all.removeDuplicates();
  return all;
}

void WhyTool::ask(Point at) {
  cancel();
  const auto why = look(at);
  asked_ = at;
  asked_of_ = std::make_shared<const Plan>(context_.plan());
  if (!why) return;
  said_ = words(*why);
  start_pricing(*why);
}

// Each price is a layout or two without the thing: on a thread of its own, newest question first.
void WhyTool::start_pricing(const WhyEmpty& why) {
  std::vector<Restriction> of;
  for (const Reason& r : why.reasons)
    if (has_restriction(r)) of.push_back(r.restriction);
  if (of.empty()) return;
  prices_ = {tr("Working out what each costs…")};
  stop_ = std::stop_source();
  const std::stop_token stop = stop_.get_token();
  pricing_.start([plan = asked_of_, coil = context_.outcome()->coil, of,
                  stop]() -> Result<Prices> { return priced(*plan, coil, of, stop); },
                 [this, plan = asked_of_, stop](const Result<Prices>& found) {
                   if (stop.stop_requested()) return;
                   prices_ = found ? in_words(*plan, *found)
                                   : QStringList{QString::fromStdString(found.error().message())};
                   context_.say({});
                 });
}

WhyTool::Prices WhyTool::priced(const Plan& plan, const Coil& coil, const std::vector<Restriction>& of,
                                const std::stop_token& stop) {
  Prices all;
  const Layout with = make_layout(plan.site, plan.wishes, coil, stop);
  for (const Restriction& r : of) {
    if (stop.stop_requested()) return {};
    if (const auto price = cost_of(plan.site, plan.wishes, coil, with, r, stop)) all.emplace_back(r, *price);
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& l, const auto& r) { return costs_more(l.second, r.second); });
  return all;
}

QStringList WhyTool::in_words(const Plan& plan, const Prices& prices) {
  const bool no_better = std::all_of(prices.begin(), prices.end(),
                                     [](const auto& p) { return p.second.lifted && !gains(p.second); });
  if (prices.size() > 1 && no_better) return {tr("Without any one of these the loop would be no better.")};
  QStringList all;
  bool others = false;
  for (const auto& [what, price] : prices) {
    const bool costs = !price.lifted || gains(price) || prices.size() == 1;
    if (costs) all << price_in_words(plan, what, price);
    others = others || !costs;
  }
  if (others) all << tr("The others cost nothing.");
  all.removeDuplicates();
  return all;
}

void WhyTool::paint(const ToolPaint& p) const {
  p.painter.save();
  p.painter.setPen(QPen(p.look.selection, 3, Qt::SolidLine, Qt::RoundCap));
  p.painter.setBrush(Qt::NoBrush);
  for (const Segment& s : blame_) {
    if (s.a == s.b)
      p.painter.drawEllipse(p.view.to_device(s.a), 12, 12);
    else
      p.painter.drawLine(p.view.to_device(s.a), p.view.to_device(s.b));
  }
  const QPointF at = p.view.to_device(asked_ ? *asked_ : p.pointer.at);
  if (asked_) p.painter.drawEllipse(at, 5, 5);
  const QStringList lines = said_ + prices_;
  if (!lines.isEmpty())
    paint_plate(p, at + QPointF(16, 24.0 + 18.0 * static_cast<double>(lines.size())), lines, p.look.text);
  p.painter.restore();
}

}  // namespace underlawn
