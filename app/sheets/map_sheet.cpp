// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/map_sheet.h"

#include "base/say.h"
#include "sheets/map_parts.h"
#include "sheets/off_page.h"
#include "sheets/paper.h"

namespace underlawn::sheet {

namespace {

std::string joined(const std::vector<std::string>& names, std::size_t most) {
  std::string text;
  for (std::size_t i = 0; i < names.size() && i < most; ++i) text += (i > 0 ? ", " : "") + names[i];
  if (names.size() > most) return say("{} and {} more", text, names.size() - most);
  return text;
}

std::vector<Trouble> remarks_on(const Plan& plan, const Outcome& outcome, const SheetSetup& setup,
                                const TablePtr& beside, const PlanPage& page) {
  if (page.fits) return {};
  const auto names = off_page(plan, outcome, page.view);
  if (names.empty()) return {};
  const int fitting = divide(plan, outcome, {setup.paper, std::nullopt}, beside).scale;
  return {{"off_page", say("the plan at {}", scale_text(page.scale, plan.units).toStdString()),
           say("partly off the page ({})", joined(names, 12)), say("wholly on the page"),
           say("The whole plan fits at {}, or take larger paper.",
               scale_text(fitting, plan.units).toStdString())}};
}

void paint_remark(QPainter& painter, const QRectF& map, const Trouble& remark) {
  const QFont font = type(9.5, QFont::DemiBold);
  const QString text = QObject::tr("NOT ALL OF THE PLAN IS ON THIS PAGE. It is %1. %2")
                           .arg(text_of(remark.value), text_of(remark.advice));
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

void paint_strip(QPainter& painter, const Plan& plan, const PlanPage& page) {
  const double y = page.strip.top() + pt(17), bar = scale_bar_width(page.scale, plan.units);
  const double left = page.strip.left() + pt(8);
  paint_scale_bar(painter, {left, y}, page.scale, plan.units);
  write(painter, {left - pt(4), y + pt(19)}, QObject::tr("Scale %1").arg(scale_text(page.scale, plan.units)),
        type(10, QFont::Bold));
  paint_north(painter, {left + bar + pt(64), page.strip.top() + pt(20)}, pt(19), plan.site.north);
}

}  // namespace

MapSheet::MapSheet(Plan plan, Outcome outcome, const SheetSetup& setup, MapContent content)
    : plan_(std::move(plan)), outcome_(std::move(outcome)), setup_(setup), content_(std::move(content)) {
  if (!setup_.date) setup_.date = QDate::currentDate();
  first_ = divide(plan_, outcome_, setup_, content_.beside);
  remarks_ = remarks_on(plan_, outcome_, setup_, content_.beside, first_);
  const int columns = first_.inner.width() > pt(900) ? 3 : 2;
  const std::vector<Piece>& after = first_.beside.isEmpty() ? content_.after_without : content_.after;
  if (!after.empty()) rest_ = flow(after, first_.inner, columns);
  for (const BlockPtr& block : content_.whole_pages) rest_.push_back({{block, first_.inner}});
}

QPageLayout MapSheet::page_layout() const {
  return QPageLayout(sheet::page_size(setup_.paper),
                     first_.landscape ? QPageLayout::Landscape : QPageLayout::Portrait,
                     QMarginsF(0, 0, 0, 0));
}

void MapSheet::paint_first(QPainter& painter) const {
  paint_framed(painter, first_.map, plan_, outcome_, first_.view, content_.options);
  for (const Trouble& remark : remarks_) paint_remark(painter, first_.map, remark);
  paint_strip(painter, plan_, first_);
  paint_legend(painter, first_.legend, plan_, outcome_);
  if (first_.table) first_.table->paint(painter, first_.beside);
}

void MapSheet::paint(QPainter& painter, int page) const {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  if (page == 0)
    paint_first(painter);
  else if (page < pages())
    for (const Placed& placed : rest_[static_cast<std::size_t>(page - 1)])
      placed.block->paint(painter, placed.room);
  paint_title(painter, first_.title, plan_, outcome_,
              {content_.subtitle, QObject::tr("%1 of %2").arg(page + 1).arg(pages()),
               scale_text(first_.scale, plan_.units), setup_.date->toString(Qt::ISODate)});
  painter.restore();
}

}  // namespace underlawn::sheet
