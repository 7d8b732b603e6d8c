// SPDX-License-Identifier: GPL-3.0-or-later
// The crew's calendar on paper: a block for every day, hours across, black-and-white legible by its words.
#include "plots/crew_bars.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

class CalendarBlock : public Block {
 public:
  CalendarBlock(std::shared_ptr<const CrewCalendar> calendar, std::shared_ptr<const DigOrder> order)
      : calendar_(std::move(calendar)), order_(std::move(order)) {}

  double height(double) const override {
    return heading_height() + crew_bars_height(*calendar_, style()) + 3 * line_height(words()) + pt(4);
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    paint_heading(painter, room, "CREW CALENDAR");
    const double bars = crew_bars_height(*calendar_, style());
    const QRectF area(room.left(), room.top() + heading_height(), room.width(), bars);
    painter.save();
    paint_crew_bars(painter, *calendar_, *order_, area, style());
    painter.restore();
    double y = area.bottom() + line_height(words());
    for (const QString& line : wrapped(note(), words(), room.width(), 3)) {
      write(painter, {room.left(), y}, line, words());
      y += line_height(words());
    }
  }

 private:
  static QFont words() { return type(9.5); }
  static CrewBarsStyle style() { return CrewBarsStyle::on_paper(type(9), pt(0.8)); }

  QString note() const {
    const std::size_t reserve = calendar_->days.size() - static_cast<std::size_t>(calendar_->days_worked);
    return QString(
               "%1 days on the lot; %2 more in reserve for rain. Nothing with a joint in it is covered "
               "before "
               "the test. Numbers in the bars are trenches.")
        .arg(calendar_->days_worked)
        .arg(reserve);
  }

  std::shared_ptr<const CrewCalendar> calendar_;
  std::shared_ptr<const DigOrder> order_;
};

}  // namespace

BlockPtr calendar_block(const Plan&, const Outcome& outcome) {
  if (outcome.calendar == nullptr || outcome.order == nullptr || outcome.calendar->tasks.empty())
    return nullptr;
  return std::make_shared<CalendarBlock>(outcome.calendar, outcome.order);
}

}  // namespace underlawn::sheet
