// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/cost_chart.h"

#include <QObject>
#include <algorithm>
#include <cmath>

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
void mark_crossing(const SystemCost& loop, const SystemCost& other, Chart& chart) {
  if (loop.paid.front() <= other.paid.front() || loop.paid.back() > other.paid.back()) return;
  std::size_t year = loop.paid.size() - 1;
  while (year > 0 && loop.paid[year - 1] <= other.paid[year - 1]) --year;
  if (year == 0) return;
  const double before = loop.paid[year - 1] - other.paid[year - 1],
               after = other.paid[year] - loop.paid[year];
  const double part = before / (before + after);
  const double at = static_cast<double>(year) - 1 + part;
  chart.marks.push_back({{at, loop.paid[year - 1] + part * (loop.paid[year] - loop.paid[year - 1])},
                         tr("%1 years").arg(std::round(10 * at) / 10),
                         chart.marks.size() % 2 == 1});
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

}  // namespace underlawn
