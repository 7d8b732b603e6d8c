// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/block_sheet.h"

#include "sheets/map_parts.h"
#include "sheets/paper.h"
#include "sheets/plan_page.h"

namespace underlawn::sheet {

BlockSheet::BlockSheet(Plan plan, Outcome outcome, const SheetSetup& setup, Name name, int columns)
    : plan_(std::move(plan)),
      outcome_(std::move(outcome)),
      setup_(setup),
      name_(std::move(name)),
      columns_(columns) {
  if (!setup_.date) setup_.date = QDate::currentDate();
}

QSizeF BlockSheet::page_size() const {
  return size_of(setup_.paper, false);
}

QPageLayout BlockSheet::page_layout() const {
  return QPageLayout(sheet::page_size(setup_.paper), QPageLayout::Portrait, QMarginsF(0, 0, 0, 0));
}

QRectF BlockSheet::inner() const {
  return blank_page(setup_.paper, false).inner;
}

void BlockSheet::set(const std::vector<Piece>& pieces) {
  pages_ = flow(pieces, inner(), columns());
}

int BlockSheet::columns() const {
  return columns_ + (inner().width() > pt(700) ? 1 : 0);
}

void BlockSheet::paint(QPainter& painter, int page) const {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  for (const Placed& placed : pages_[static_cast<std::size_t>(page)])
    placed.block->paint(painter, placed.room);
  TitleFacts facts;
  facts.subtitle = name_.subtitle;
  facts.sheet = QObject::tr("%1 of %2").arg(page + 1).arg(pages());
  facts.date = setup_.date->toString(Qt::ISODate);
  paint_title(painter, blank_page(setup_.paper, false).title, plan_, outcome_, facts);
  painter.restore();
}

}  // namespace underlawn::sheet
