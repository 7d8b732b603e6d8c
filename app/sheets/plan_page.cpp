// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/plan_page.h"

#include <algorithm>
#include <optional>

#include "sheets/contents.h"
#include "sheets/map_parts.h"
#include "sheets/off_page.h"
#include "sheets/paper.h"

namespace underlawn::sheet {

namespace {

const double kMargin = mm(10);
const double kGap = pt(9);
const double kStrip = pt(42);
const double kRoundPlan = pt(14.5);  // inside the frame, for the lengths along the lot line

// Legend beside scale bar and north where there is room, else in a band of its own under them.
void lay_strip(PlanPage& page, const QRectF& room, double bar, const Plan& plan, const Outcome& outcome,
               bool with_legend) {
  const double own = std::max(bar + pt(120), pt(230));
  double strip = kStrip, band = 0;
  double width = room.width() - own;
  if (with_legend) {
    const bool beside = width > pt(250) && legend_height(plan, outcome, width) < pt(96);
    if (!beside) width = room.width();
    const double height = legend_height(plan, outcome, width);
    if (beside)
      strip = std::max(strip, height);
    else
      band = height + pt(4);
  }
  page.map = room.adjusted(0, 0, 0, -(strip + band + kGap));
  page.strip = QRectF(room.left(), page.map.bottom() + kGap, own, strip);
  if (!with_legend) return;
  page.legend = band > 0 ? QRectF(room.left(), room.bottom() - band + pt(4), width, band)
                         : QRectF(room.right() - width, page.strip.top(), width, strip);
}

// The table in a column at the right, the legend under it where it fits; nothing where the table is too high.
std::optional<PlanPage> with_table(PlanPage page, double bar, const Plan& plan, const Outcome& outcome,
                                   const TablePtr& ties) {
  if (!ties) return std::nullopt;
  const double width = std::max(pt(196), ties->natural_width());
  const double high = ties->height(width);
  QRectF room = page.inner;
  if (high > room.height() || width > 0.55 * room.width()) return std::nullopt;
  page.table = ties;
  page.beside = QRectF(room.right() - width, room.top(), width, high);
  room.setRight(page.beside.left() - pt(13));
  const double legend = legend_height(plan, outcome, width);
  const bool under = high + legend + pt(14) <= room.height();
  lay_strip(page, room, bar, plan, outcome, !under);
  if (under) page.legend = QRectF(page.beside.left(), page.inner.bottom() - legend, width, legend);
  return page;
}

// The same over a legend as wide as the page.
std::optional<PlanPage> with_table_over_legend(PlanPage page, double bar, const Plan& plan,
                                               const Outcome& outcome, const TablePtr& ties) {
  if (!ties) return std::nullopt;
  const double width = std::max(pt(196), ties->natural_width());
  const double high = ties->height(width), legend = legend_height(plan, outcome, page.inner.width());
  QRectF room = page.inner.adjusted(0, 0, 0, -(legend + kGap));
  if (high > room.height() || width > 0.55 * room.width()) return std::nullopt;
  page.table = ties;
  page.beside = QRectF(room.right() - width, room.top(), width, high);
  room.setRight(page.beside.left() - pt(13));
  lay_strip(page, room, bar, plan, outcome, false);
  page.legend = QRectF(page.inner.left(), page.inner.bottom() - legend, page.inner.width(), legend);
  return page;
}

// No table, the legend in a column of its own at the right.
std::optional<PlanPage> with_legend_beside(PlanPage page, double bar, const Plan& plan,
                                           const Outcome& outcome) {
  const double width = pt(196), high = legend_height(plan, outcome, width);
  QRectF room = page.inner;
  room.setRight(room.right() - width - pt(13));
  if (high > room.height() || room.width() < bar + pt(120)) return std::nullopt;
  lay_strip(page, room, bar, plan, outcome, false);
  page.legend = QRectF(page.inner.right() - width, page.inner.top(), width, high);
  return page;
}

PlanPage without_table(PlanPage page, double bar, const Plan& plan, const Outcome& outcome) {
  lay_strip(page, page.inner, bar, plan, outcome, true);
  return page;
}

bool holds(const PlanPage& page, const Box& box, int scale) {
  const double k = per_metre(scale);
  return (box.high.x - box.low.x) * k + 2 * kRoundPlan <= page.map.width() &&
         (box.high.y - box.low.y) * k + 2 * kRoundPlan <= page.map.height();
}

void look_at(PlanPage& page, const Box& box, int scale) {
  page.scale = scale;
  page.view = View{0.5 * (box.low + box.high), per_metre(scale), page.map.size(), 0};
}

// The table in its own type, and in less where that shows the plan larger.
std::vector<TablePtr> in_types(const TablePtr& table) {
  if (table == nullptr) return {};
  return {table, table->in_type(kTiePoints - 0.75), table->in_type(kTiePoints - 1.5)};
}

std::vector<PlanPage> ways(const Plan& plan, const Outcome& outcome, const SheetSetup& setup,
                           const TablePtr& beside, int scale) {
  const double bar = scale_bar_width(scale, plan.units);
  std::vector<PlanPage> all;
  for (bool landscape : {false, true}) {
    const PlanPage page = blank_page(setup.paper, landscape);
    for (const TablePtr& table : in_types(beside)) {
      if (auto both = with_table(page, bar, plan, outcome, table)) all.push_back(*both);
      if (auto both = with_table_over_legend(page, bar, plan, outcome, table)) all.push_back(*both);
    }
    all.push_back(without_table(page, bar, plan, outcome));
    if (beside != nullptr) continue;  // a column is then the table's
    if (auto aside = with_legend_beside(page, bar, plan, outcome)) all.push_back(*aside);
  }
  return all;
}

// A table beside the plan is worth a plan drawn this much smaller, whatever steps the usual scales take.
constexpr double kTiesBeside = 1.3;

double roominess(const PlanPage& page, const Box& box) {
  const double w = std::max(box.high.x - box.low.x, 1.0), h = std::max(box.high.y - box.low.y, 1.0);
  return std::min(page.map.width() / w, page.map.height() / h);
}

// Nothing fits: the roomiest way, the middle on what is dug where that helps.
PlanPage too_large(const Plan& plan, const Outcome& outcome, const SheetSetup& setup, const TablePtr& beside,
                   const Box& whole, int scale) {
  const Box box = dig_box(plan, outcome).value_or(whole);
  const std::vector<PlanPage> all = ways(plan, outcome, setup, beside, scale);
  PlanPage page = *std::max_element(all.begin(), all.end(), [&](const PlanPage& a, const PlanPage& b) {
    return roominess(a, box) < roominess(b, box);
  });
  look_at(page, box, scale);
  page.fits = false;
  return page;
}

}  // namespace

PlanPage blank_page(Paper paper, bool landscape) {
  PlanPage page;
  page.landscape = landscape;
  page.size = size_of(paper, landscape);
  const QRectF sheet = QRectF(QPointF(0, 0), page.size).adjusted(kMargin, kMargin, -kMargin, -kMargin);
  page.title = QRectF(sheet.left(), sheet.bottom() - title_height(), sheet.width(), title_height());
  page.inner = QRectF(sheet.topLeft(), QPointF(sheet.right(), page.title.top() - kGap));
  return page;
}

PlanPage divide(const Plan& plan, const Outcome& outcome, const SheetSetup& setup, const TablePtr& beside) {
  const Box box = drawn_box(plan, outcome);
  const std::vector<int> scales = setup.scale ? std::vector<int>{*setup.scale} : usual_scales(plan.units);
  std::optional<PlanPage> best;
  double least = 1e9;
  for (int scale : scales)
    for (PlanPage& page : ways(plan, outcome, setup, beside, scale)) {
      const bool apart = page.beside.isEmpty() && beside != nullptr;
      const double cost = scale * (apart ? kTiesBeside : 1);
      if (cost >= least || !holds(page, box, scale)) continue;
      least = cost;
      look_at(page, box, scale);
      best = page;
    }
  return best ? *best : too_large(plan, outcome, setup, beside, box, scales.back());
}

}  // namespace underlawn::sheet
