// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/cost_chart.h"

#include <QObject>
#include <algorithm>
#include <cmath>
#include <optional>

#include "cost/comparison.h"

namespace underlawn {

namespace {

QString tr(const char* text) {
  return QObject::tr(text);
}

ChartLine line_of(const QString& name, const SystemCost& cost, int style) {
  ChartLine line{name, {}, style};
  for (std::size_t year = 0; year < cost.paid.size(); ++year)
    line.points.push_back({static_cast<double>(year), cost.paid[year]});
  return line;
}

ChartAxis years_axis(int years) {
  ChartAxis axis;
  axis.title = tr("Years");
  axis.high = years;
  const int step = years <= 10 ? 1 : years <= 30 ? 5 : 10;
  for (int year = 0; year <= years; year += step)
    axis.ticks.push_back({static_cast<double>(year), QString::number(year)});
  axis.words = [](double year) { return tr("year %1").arg(std::lround(year)); };
  return axis;
}

// The first place where the loop's line goes under the other's for good.
std::optional<QPointF> crossing(const SystemCost& loop, const SystemCost& other) {
  if (loop.paid.front() <= other.paid.front() || loop.paid.back() > other.paid.back()) return std::nullopt;
  std::size_t year = loop.paid.size() - 1;
  while (year > 0 && loop.paid[year - 1] <= other.paid[year - 1]) --year;
  if (year == 0) return std::nullopt;
  const double before = loop.paid[year - 1] - other.paid[year - 1],
               after = other.paid[year] - loop.paid[year];
  const double part = before / (before + after);
  return QPointF(static_cast<double>(year) - 1 + part,
                 loop.paid[year - 1] + part * (loop.paid[year] - loop.paid[year - 1]));
}

QString years_of(double years) {
  return tr("%1 years").arg(std::round(10 * years) / 10);
}

constexpr qsizetype kName = 16;  // letters that have room at a dot

QString short_name(const SystemCost& other) {
  const QString name = QString::fromStdString(other.name);
  return name.size() <= kName ? name : name.left(kName - 1).trimmed() + "…";
}

void mark_crossing(const SystemCost& loop, const SystemCost& other, Chart& chart) {
  const auto at = crossing(loop, other);
  if (!at) return;
  chart.marks.push_back({*at, short_name(other) + ": " + years_of(at->x()), chart.marks.size() % 2 == 1});
}

}  // namespace

Chart paid_chart(const Plan& plan, const Outcome& outcome) {
  Chart chart;
  chart.title = tr("Paid by the end of each year");
  if (outcome.comparison == nullptr || outcome.comparison->years < 1) {
    chart.empty = tr(
        "Nothing to show yet: running costs follow once a loop is laid and its temperatures are known. The "
        "report says what is missing.");
    return chart;
  }
  const Comparison& c = *outcome.comparison;
  if (!c.priced && c.others.empty()) {
    chart.empty = tr("Nothing to show yet: the heat pump has no price, and no other way is described.");
    return chart;
  }
  double most = 0;
  // Without its heat pump the loop would look cheap beside ways that are priced whole.
  if (c.priced) {
    chart.lines.push_back(line_of(tr("Ground loop"), c.loop, 0));
    most = c.loop.paid.back();
  } else {
    chart.title = tr("Paid by the end of each year; no loop: its heat pump has no price");
  }
  for (std::size_t i = 0; i < c.others.size(); ++i) {
    const int style = static_cast<int>((i + 1) % kChartStyles);
    chart.lines.push_back(line_of(QString::fromStdString(c.others[i].name), c.others[i], style));
    most = std::max(most, c.others[i].paid.back());
    if (c.priced) mark_crossing(c.loop, c.others[i], chart);
  }
  chart.x = years_axis(c.years);
  chart.y = quantity_axis(QString::fromStdString(plan.wishes.prices.currency), Quantity::money, plan.units, 0,
                          most);
  return chart;
}

QString crossing_words(const Outcome& outcome) {
  if (outcome.comparison == nullptr || !outcome.comparison->priced) return {};
  const Comparison& c = *outcome.comparison;
  QStringList all;
  for (const SystemCost& other : c.others)
    if (!c.loop.paid.empty() && !other.paid.empty())
      if (const auto at = crossing(c.loop, other))
        all << tr("against %1 after %2").arg(QString::fromStdString(other.name), years_of(at->x()));
  if (all.isEmpty()) return {};
  return tr("Dots, the loop is the cheaper one from there on: %1. Rising prices and what is bought again are "
            "in it, interest is not; “Pays back” below has neither of them, “discounted” has all three.")
      .arg(all.join("; "));
}

}  // namespace underlawn
