// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/proposal_parts.h"

#include <algorithm>

#include "base/say.h"
#include "language/language.h"
#include "sheets/contents.h"
#include "sheets/lot_names.h"

namespace underlawn::sheet {

QString date_words(const QDate& day) {
  return locale_spoken().toString(day, QObject::tr("dddd, MMMM d, yyyy", "a date"));
}

QString plain_date(const QDate& day) {
  return locale_spoken().toString(day, QObject::tr("MMMM d, yyyy", "a date"));
}

QString term(const std::string& kept) {
  const QString text = text_of(kept).trimmed();
  if (const QDate day = QDate::fromString(text, Qt::ISODate); day.isValid()) return date_words(day);
  return text_of(translated(text.toStdString()));
}

QString or_else(const std::string& text, const QString& usual) {
  const QString own = term(text);
  return own.isEmpty() ? usual : own;
}

double height_of(const Blocks& blocks, double width) {
  double sum = 0;
  for (const BlockPtr& block : blocks) sum += block->height(width);
  return sum;
}

BlockPtr prose(const QString& heading, const QString& text, double points) {
  return std::make_shared<Prose>(heading, std::vector<Prose::Line>{{"", "", text}}, points);
}

double picture_height(const ProposalPage& page, const LotPicture& how, double width, double most) {
  return std::min(named_lot_height(page.plan, &page.outcome, width, how), most);
}

Pictures::Picture lot_picture(const ProposalPage& page, const QString& title, const QString& caption,
                              const LotPicture& how) {
  return {title, caption,
          [plan = page.plan, outcome = page.outcome, how](QPainter& painter, const QRectF& area) {
            paint_named_lot(painter, plan, &outcome, area, how);
          }};
}

void add_pictures(Blocks& blocks, std::size_t place, std::vector<Pictures::Picture> pictures,
                  const ProposalPage& page, double least, double most) {
  const double words = Pictures(pictures, 0).height(page.width);
  const double left = page.height - height_of(blocks, page.width) - words - pt(2);
  blocks.insert(
      blocks.begin() + static_cast<std::ptrdiff_t>(place),
      std::make_shared<Pictures>(std::move(pictures), std::clamp(left, least, std::max(least, most))));
}

bool compared(const FamilyFacts& facts) {
  return !facts.others.empty();
}

}  // namespace underlawn::sheet
