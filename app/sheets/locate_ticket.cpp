// SPDX-License-Identifier: GPL-3.0-or-later
// A form for the locate ticket, filled in by hand on the lot.
#include <algorithm>

#include "canvas/look.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

constexpr const char* kLines[] = {QT_TR_NOOP("Ticket number"), QT_TR_NOOP("Called on"),
                                  QT_TR_NOOP("May dig from"), QT_TR_NOOP("Valid until"),
                                  QT_TR_NOOP("Marks seen by")};
constexpr UtilityKind kKinds[] = {UtilityKind::electric, UtilityKind::gas,   UtilityKind::communication,
                                  UtilityKind::water,    UtilityKind::sewer, UtilityKind::reclaimed};
const double kRow = pt(20);
const double kTick = pt(15);

class LocateTicket : public Block {
 public:
  double height(double) const override { return heading_height() + 5 * kRow + pt(6) + 4 * kTick; }

  void paint(QPainter& painter, const QRectF& room) const override {
    paint_heading(painter, room, QObject::tr("LOCATE TICKET"));
    double y = room.top() + heading_height(), left = pt(84);
    for (const char* line : kLines) left = std::max(left, width_of(QObject::tr(line), type(10)) + pt(8));
    for (const char* line : kLines) {
      write(painter, {room.left(), y + pt(14)}, QObject::tr(line), type(10));
      painter.setPen(rule(0.6));
      painter.drawLine(QPointF(room.left() + left, y + pt(16)), QPointF(room.right(), y + pt(16)));
      y += kRow;
    }
    paint_ticks(painter, room, y + pt(6));
  }

 private:
  // One box to tick for each class of line, in its colour of the APWA code.
  static void paint_ticks(QPainter& painter, const QRectF& room, double y) {
    const Look look = Look::paper();
    for (int i = 0; i < 7; ++i) {
      const double x = room.left() + (i % 2) * room.width() / 2, top = y + (i / 2) * kTick;
      const QRectF box(x, top + pt(2), pt(9), pt(9));
      painter.setBrush(Qt::NoBrush);
      painter.setPen(rule(1.8, i < 6 ? apwa_colour(kKinds[i], look) : kInk));
      painter.drawRect(box);
      const QString name = i < 6 ? QString("%1 %2")
                                       .arg(utility_letter(kKinds[i]))
                                       .arg(text_of(std::string(utility_name(kKinds[i]))))
                                 : QObject::tr("private lines found");
      write(painter, {x + pt(14), top + pt(10)}, name, type(9.5));
    }
  }
};

}  // namespace

BlockPtr locate_ticket(const Plan&, const Outcome&) {
  return std::make_shared<LocateTicket>();
}

}  // namespace underlawn::sheet
