// SPDX-License-Identifier: GPL-3.0-or-later
// The crew's calendar on paper: a block for every day, hours across, black-and-white legible by its words.
#include <algorithm>

#include "dig/dig_words.h"
#include "plots/crew_bars.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

class CalendarBlock : public Block {
 public:
  // Days from `from` on, before `to`.
  CalendarBlock(std::shared_ptr<const CrewCalendar> calendar, std::shared_ptr<const DigOrder> order, int from,
                int to, HandWork hand, double a_line, QString watch)
      : calendar_(std::move(calendar)),
        order_(std::move(order)),
        from_(from),
        to_(to),
        hand_(std::move(hand)),
        a_line_(a_line),
        watch_(std::move(watch)) {}

  double height(double width) const override {
    return heading_height() + crew_bars_height(*calendar_, style()) +
           (ends() ? lines_for(width) * line_height(words()) : 0) + pt(4);
  }

  std::optional<std::pair<BlockPtr, BlockPtr>> split(double width, double room) const override {
    for (int day = std::min(to_, calendar_->days_worked) - 1; day > from_; --day) {
      auto first = std::make_shared<CalendarBlock>(calendar_, order_, from_, day, hand_, a_line_, watch_);
      if (first->height(width) <= room)
        return std::pair<BlockPtr, BlockPtr>(
            std::move(first),
            std::make_shared<CalendarBlock>(calendar_, order_, day, to_, hand_, a_line_, watch_));
    }
    return std::nullopt;
  }

  void paint(QPainter& painter, const QRectF& room) const override {
    paint_heading(painter, room,
                  from_ == 0 ? QObject::tr("CREW CALENDAR") : QObject::tr("CREW CALENDAR (continued)"));
    const double bars = crew_bars_height(*calendar_, style());
    const QRectF area(room.left(), room.top() + heading_height(), room.width(), bars);
    painter.save();
    paint_crew_bars(painter, *calendar_, *order_, area, style());
    painter.restore();
    if (!ends()) return;
    double y = area.bottom() + line_height(words());
    for (const QString& line : wrapped(note(), words(), room.width())) {
      write(painter, {room.left(), y}, line, words());
      y += line_height(words());
    }
  }

 private:
  static QFont words() { return type(9.5); }
  bool ends() const { return to_ >= calendar_->days_worked; }
  CrewBarsStyle style() const {
    CrewBarsStyle style = CrewBarsStyle::on_paper(type(9), pt(0.8));
    style.from_day = from_;
    style.to_day = to_;
    style.hand = hand_;
    return style;
  }

  // Four at least; the note is longer in some languages.
  double lines_for(double width) const {
    return std::max(4.0, static_cast<double>(wrapped(note(), words(), width).size()));
  }

  QString note() const {
    const std::size_t reserve = calendar_->days.size() - static_cast<std::size_t>(calendar_->days_worked);
    const QString words =
        QObject::tr(
            "%1 days on the lot; %2 more in reserve for rain. Nothing with a joint in it is covered "
            "before the test. Numbers in the bars are trenches, in Roman figures steps of the order of "
            "digging. Hatched at a bar's beginning: lines laid bare by hand, %3 each.")
            .arg(calendar_->days_worked)
            .arg(reserve)
            .arg(text_of(print_quantity(Quantity::duration, a_line_, UnitSystem::metric)));
    if (watch_.isEmpty()) return words;
    return words + heads_words() + " " +
           QObject::tr("Tester, coil 1, 2, …: that coil alone, before it is covered, %1 until it is.")
               .arg(watch_);
  }

  // What is filled after the test of trenches that are filled but for their heads: bars too short for a word.
  QString heads_words() const {
    std::vector<int> heads;
    for (const CrewTask& t : calendar_->tasks) {
      if (t.station != CrewStation::filling || t.step < 0 || t.begin < calendar_->tested - 1) continue;
      const int trench = order_->steps[static_cast<std::size_t>(t.step)].trench;
      for (const DigStep& s : order_->steps)
        if (std::ranges::find(s.into, trench) != s.into.end()) heads.push_back(trench);
    }
    std::ranges::sort(heads);
    heads.erase(std::unique(heads.begin(), heads.end()), heads.end());
    if (heads.empty()) return {};
    return " " + QObject::tr("Loader, short bars after the test: the heads of %1, left open until then.")
                     .arg(text_of(trenches_named(heads)));
  }

  std::shared_ptr<const CrewCalendar> calendar_;
  std::shared_ptr<const DigOrder> order_;
  int from_, to_;
  HandWork hand_;
  double a_line_;  // s, a line met by hand
  QString watch_;  // of coils covered before the test
};

}  // namespace

BlockPtr calendar_block(const Plan& plan, const Outcome& outcome) {
  if (outcome.calendar == nullptr || outcome.order == nullptr || outcome.calendar->tasks.empty())
    return nullptr;
  return std::make_shared<CalendarBlock>(outcome.calendar, outcome.order, 0, outcome.calendar->days_worked,
                                         hand_work(plan, outcome), plan.crew.hand_crossing,
                                         coil_watch_words(plan, outcome));
}

}  // namespace underlawn::sheet
