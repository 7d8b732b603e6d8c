// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/dig_sheet.h"

#include <QLocale>
#include <QPainter>

#include "canvas/plan_painter.h"
#include "sheets/contents.h"
#include "sheets/flow.h"
#include "sheets/map_parts.h"
#include "sheets/off_page.h"
#include "sheets/paper.h"
#include "sheets/plan_page.h"

namespace underlawn {

using namespace sheet;

struct DigSheet::Parts {
  Plan plan;
  Outcome outcome;
  SheetSetup setup;
  QDate date;
  PlanPage first;
  std::vector<FlowPage> rest;
  std::vector<Trouble> remarks;
};

namespace {

std::vector<Piece> pieces(const Plan& plan, const Outcome& outcome, bool ties_too) {
  std::vector<Piece> all;
  const auto add = [&](BlockPtr block, bool wide) {
    if (block) all.push_back({std::move(block), wide});
  };
  if (ties_too) {
    // Beside the ties there is room for what else is narrow.
    add(tie_table(plan, outcome, kTiePoints), false);
    add(order_of_digging(plan, outcome), false);
    add(volume_table(plan, outcome), false);
  }
  add(trench_table(plan, outcome), true);
  add(section_block(plan, outcome), true);
  add(digging_sections(plan, outcome), false);
  add(crossing_table(plan, outcome), true);
  add(cautions(plan, outcome), true);
  if (!ties_too) {
    add(order_of_digging(plan, outcome), false);
    add(volume_table(plan, outcome), false);
  }
  add(calendar_block(plan, outcome), false);
  add(locate_ticket(plan, outcome), false);
  add(pipe_table(plan, outcome), false);
  add(open_findings(plan, outcome), false);
  add(accepted_findings(plan, outcome), false);
  return all;
}

std::string joined(const std::vector<std::string>& names, std::size_t most) {
  std::string text;
  for (std::size_t i = 0; i < names.size() && i < most; ++i) text += (i > 0 ? ", " : "") + names[i];
  if (names.size() > most) text += " and " + std::to_string(names.size() - most) + " more";
  return text;
}

std::vector<Trouble> remarks_on(const Plan& plan, const Outcome& outcome, const SheetSetup& setup,
                                const PlanPage& page) {
  if (page.fits) return {};
  const auto names = off_page(plan, outcome, page.view);
  if (names.empty()) return {};
  const int fitting = divide(plan, outcome, {setup.paper, std::nullopt, setup.date}).scale;
  return {{"off_page", "the plan at " + scale_text(page.scale, plan.units).toStdString(),
           "partly off the page (" + joined(names, 12) + ")", "wholly on the page",
           "The whole plan fits at " + scale_text(fitting, plan.units).toStdString() +
               ", or take larger paper."}};
}

void paint_remark(QPainter& painter, const QRectF& map, const Trouble& remark) {
  const QFont font = type(9.5, QFont::DemiBold);
  const QString text =
      "NOT ALL OF THE PLAN IS ON THIS PAGE. It is " + text_of(remark.value) + ". " + text_of(remark.advice);
  const QStringList lines = wrapped(text, font, map.width() - pt(20), 6);
  const double height = static_cast<double>(lines.size()) * line_height(font) + pt(8);
  const QRectF box(map.left() + pt(4), map.bottom() - height - pt(4), map.width() - pt(8), height);
  painter.setPen(rule(1.6));
  painter.setBrush(Qt::white);
  painter.drawRect(box);
  double y = box.top() + pt(13);
  for (const QString& line : lines) {
    write(painter, {box.left() + pt(6), y}, line, font);
    y += line_height(font);
  }
}

}  // namespace

DigSheet::DigSheet(Plan plan, Outcome outcome, const SheetSetup& setup) : parts_(std::make_unique<Parts>()) {
  Parts& p = *parts_;
  p.plan = std::move(plan);
  p.outcome = std::move(outcome);
  p.setup = setup;
  p.date = setup.date.value_or(QDate::currentDate());
  p.first = divide(p.plan, p.outcome, setup);
  p.remarks = remarks_on(p.plan, p.outcome, setup, p.first);
  const int columns = p.first.inner.width() > pt(900) ? 3 : 2;
  p.rest = flow(pieces(p.plan, p.outcome, p.first.ties.isEmpty()), p.first.inner, columns);
}

DigSheet::~DigSheet() = default;
DigSheet::DigSheet(DigSheet&&) noexcept = default;
DigSheet& DigSheet::operator=(DigSheet&&) noexcept = default;

int DigSheet::pages() const {
  return 1 + static_cast<int>(parts_->rest.size());
}
int DigSheet::scale() const {
  return parts_->first.scale;
}
QSizeF DigSheet::page_size() const {
  return parts_->first.size;
}
const View& DigSheet::view() const {
  return parts_->first.view;
}
QRectF DigSheet::map() const {
  return parts_->first.map;
}
const std::vector<Trouble>& DigSheet::remarks() const {
  return parts_->remarks;
}

QPageLayout DigSheet::page_layout() const {
  return QPageLayout(sheet::page_size(parts_->setup.paper),
                     parts_->first.landscape ? QPageLayout::Landscape : QPageLayout::Portrait,
                     QMarginsF(0, 0, 0, 0));
}

namespace {

void paint_map(QPainter& painter, const Plan& plan, const Outcome& outcome, const PlanPage& page) {
  PaintOptions options;
  options.corner_tags = true;
  options.pictures = options.sheet = true;
  painter.save();
  painter.setClipRect(page.map);
  painter.translate(page.map.topLeft());
  paint_plan(painter, plan, &outcome, page.view, sheet_look(), options);
  painter.restore();
  painter.setBrush(Qt::NoBrush);
  painter.setPen(rule(0.8));
  painter.drawRect(page.map);
}

void paint_strip(QPainter& painter, const Plan& plan, const PlanPage& page) {
  const double y = page.strip.top() + pt(17), bar = scale_bar_width(page.scale, plan.units);
  const double left = page.strip.left() + pt(8);
  paint_scale_bar(painter, {left, y}, page.scale, plan.units);
  write(painter, {left - pt(4), y + pt(19)}, "Scale " + scale_text(page.scale, plan.units),
        type(10, QFont::Bold));
  paint_north(painter, {left + bar + pt(64), page.strip.top() + pt(20)}, pt(19), plan.site.north);
}

void paint_first(QPainter& painter, const Plan& plan, const Outcome& outcome, const PlanPage& page,
                 const std::vector<Trouble>& remarks) {
  paint_map(painter, plan, outcome, page);
  for (const Trouble& remark : remarks) paint_remark(painter, page.map, remark);
  paint_strip(painter, plan, page);
  paint_legend(painter, page.legend, plan, outcome);
  if (const auto ties = tie_table(plan, outcome, kTiePoints); ties && !page.ties.isEmpty())
    ties->paint(painter, page.ties);
}

}  // namespace

void DigSheet::paint(QPainter& painter, int page) const {
  const Parts& p = *parts_;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  if (page == 0)
    paint_first(painter, p.plan, p.outcome, p.first, p.remarks);
  else if (page < pages())
    for (const sheet::Placed& placed : p.rest[static_cast<std::size_t>(page - 1)])
      placed.block->paint(painter, placed.room);
  paint_title(painter, p.first.title, p.plan, p.outcome,
              {QString("%1 of %2").arg(page + 1).arg(pages()), scale_text(p.first.scale, p.plan.units),
               p.date.toString(Qt::ISODate)});
  painter.restore();
}

}  // namespace underlawn
