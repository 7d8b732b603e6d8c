// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/crew_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QLayout>
#include <QSignalBlocker>
#include <cmath>

#include "cost/crew_calendar.h"
#include "dig/dates.h"
#include "dig/dig_words.h"
#include "dig/protection.h"
#include "plan/edits.h"
#include "plots/crew_chart.h"

namespace underlawn {

namespace {

QString text_of(const std::string& text) {
  return QString::fromStdString(text);
}

QString list_of(const QStringList& lines) {
  return lines.isEmpty() ? QString()
                         : QString("<p style='margin:0 0 3px 0'>%1</p>")
                               .arg(lines.join(QString("</p><p style='margin:0 0 3px 0'>")));
}

constexpr const char* kWeeks[] = {"1234", "12345", "123456", "1234567"};

int week_of(const Plan& plan) {
  for (int i = 0; i < 4; ++i)
    if (plan.crew.weekdays == kWeeks[i]) return i;
  return -1;
}

QString clock(double seconds) {
  const int minutes = static_cast<int>(std::lround(seconds / 60));
  return QString("%1:%2").arg(minutes / 60).arg(minutes % 60, 2, 10, QChar('0'));
}

// "7:00", "7", "07:30"; what cannot be read becomes no time at all, which the plan then refuses.
double seconds_of(const QString& typed) {
  const QStringList parts = typed.trimmed().split(':');
  bool hours_ok = false, minutes_ok = parts.size() < 2;
  const int hours = parts[0].toInt(&hours_ok);
  const int minutes = parts.size() > 1 ? parts[1].toInt(&minutes_ok) : 0;
  if (!hours_ok || !minutes_ok || parts.size() > 2 || minutes < 0 || minutes > 59) return std::nan("");
  return 3600.0 * hours + 60.0 * minutes;
}

template <class T = double>
Form::Bound<T> crew(auto CrewWishes::*field, const QString& what) {
  return bound_to<T>(what, &Plan::crew, field);
}

// A time by metre, shown by the foot where the plan is in feet.
Form::Bound<double> by_length(double CrewWishes::*field, const QString& what) {
  const auto unit = [](const Plan& p) { return p.units == UnitSystem::us ? 0.3048 : 1.0; };
  return {[=](const Plan& p) { return p.crew.*field * unit(p); },
          [=](Plan& p, double v) { p.crew.*field = v / unit(p); }, what};
}

Machine& excavator_of(Plan& plan) {
  return plan.dig.excavator;
}
Machine& loader_of(Plan& plan) {
  return plan.crew.loader;
}

QStringList sides_names() {
  return {CrewPanel::tr("Nobody goes in"), CrewPanel::tr("Laid back (slope)"), CrewPanel::tr("Trench shield"),
          CrewPanel::tr("Shored")};
}

// s by the clock; 0 where no calendar tells.
double open_time(const Outcome& outcome, int step) {
  if (outcome.calendar == nullptr) return 0;
  for (const OpenTrench& o : outcome.calendar->open)
    if (o.step == step) return o.clock;
  return 0;
}

// Where one more of something pays: crew and machine are paid by whole days.
QString paid_words(const Plan& plan, const CrewCalendar& c, const CrewSaving& s) {
  const int then = static_cast<int>(std::ceil(c.filled / c.day_length - s.days - 1e-6));
  if (then >= c.days_worked) return {};
  const QString days = CrewPanel::tr("%1 days on the lot instead of %2").arg(then).arg(c.days_worked);
  if (plan.pricing.terms.labour != LabourBy::days) return days + ".";
  return CrewPanel::tr("%1: %2 %3 less for crew and machine, before what it costs.")
      .arg(days, printed(Quantity::money, (c.days_worked - then) * plan.wishes.prices.crew_day, plan),
           text_of(plan.wishes.prices.currency));
}

QString saving_words(const Plan& plan, const CrewCalendar& c, const CrewSaving& s) {
  if (std::abs(s.days) < 0.005) return CrewPanel::tr("%1: saves nothing.").arg(text_of(s.what));
  const QString days = printed(Quantity::count, std::abs(s.days), plan);
  const bool one = days == printed(Quantity::count, 1, plan);
  const QString sooner = (s.days > 0 ? one ? CrewPanel::tr("%1: <b>%2 day</b> sooner.")
                                           : CrewPanel::tr("%1: <b>%2 days</b> sooner.")
                          : one ? CrewPanel::tr("%1: <b>%2 day</b> later.")
                                     : CrewPanel::tr("%1: <b>%2 days</b> later."))
                             .arg(text_of(s.what), days);
  const QString paid = paid_words(plan, c, s);
  return paid.isEmpty() ? sooner : sooner + " " + paid;
}

// What the choice means at this soil and depth.
QString sides_note(const Plan& plan, Sides sides, double depth) {
  const auto choices = sides_choices(plan.ground.soil, depth);
  const SidesChoice& c = choices[static_cast<std::size_t>(sides)];
  QStringList sentences{text_of(c.words)};
  if (sides == Sides::slope) sentences << CrewPanel::tr("Here %1 : 1.").arg(plan.dig.slope.value_or(c.slope));
  sentences << CrewPanel::tr("%1.").arg(text_of(c.source));
  return sentences.join(' ');
}

}  // namespace

CrewPanel::CrewPanel(Document& document, QWidget* parent)
    : Form(document, parent), document_(document), chart_(new CrewChart), told_(new QLabel) {
  add_calendar();
  add_order();
  add_sides();
  add_spoil();
  add_machine(tr("Machine that digs"), excavator_of, true);
  add_hours();
  add_crew();
  add_rates();
  add_machine(tr("Machine that fills in"), loader_of, false);
  end();
  follow_outcome();
  refresh();
}

QString CrewPanel::shown(Quantity quantity, double value) const {
  return printed(quantity, value, document_.plan());
}

void CrewPanel::add_calendar() {
  section(tr("Calendar"));
  note([this](const Plan&) {
    const auto* outcome = document_.outcome();
    if (outcome == nullptr || outcome->calendar == nullptr) return tr("Nothing is laid yet.");
    const CrewCalendar& c = *outcome->calendar;
    const auto days = [&](double t) { return shown(Quantity::count, t / c.day_length); };
    return tr("Dug after %1 working days, laid after %2, tested after %3, filled in after %4: %5 days on the "
              "lot, and %6 in reserve for rain.")
        .arg(days(c.dug), days(c.laid), days(c.tested), days(c.filled))
        .arg(c.days_worked)
        .arg(c.days.size() - static_cast<std::size_t>(c.days_worked));
  });
  wide(chart_);
  told_->setWordWrap(true);
  told_->setMinimumHeight(3 * told_->fontMetrics().height());
  told_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  told_->setObjectName("note");
  wide(told_);
  connect(chart_, &CrewChart::told, this, [this](const QString& words) {
    told_->setText(words.isEmpty() ? tr("Point at a bar, or walk through them with the arrow keys.") : words);
  });
  told_->setText(tr("Point at a bar, or walk through them with the arrow keys."));
  on_refresh([this] {
    const auto* outcome = document_.outcome();
    chart_->set_calendar(outcome ? outcome->calendar : nullptr, outcome ? outcome->order : nullptr,
                         outcome ? hand_work(document_.plan(), *outcome) : HandWork{});
  });
  section(tr("Who waits, and what would save time"));
  note([this](const Plan& plan) {
    const auto* outcome = document_.outcome();
    if (outcome == nullptr || outcome->calendar == nullptr) return QString();
    QStringList lines;
    for (const StationLoad& s : outcome->calendar->stations)
      if (s.waited > 300)
        lines << tr("%1: %2 h of waiting, mostly %3.")
                     .arg(station_words(s.station), shown(Quantity::count, s.waited / 3600),
                          text_of(wait_words(s.mostly)));
    for (const CrewSaving& s : outcome->calendar->savings) lines << saving_words(plan, *outcome->calendar, s);
    return list_of(lines);
  });
}

void CrewPanel::add_order() {
  section(tr("Order of digging"));
  note([this](const Plan& plan) {
    const auto* outcome = document_.outcome();
    if (outcome == nullptr || outcome->order == nullptr) return tr("Nothing is laid yet.");
    QStringList lines;
    int n = 0;
    for (const DigStep& s : outcome->order->steps) {
      QString line = QString("<b>%1</b> %2, %3; %4.")
                         .arg(++n)
                         .arg(text_of(step_name(s)), text_of(way_of_digging(s)),
                              text_of(spoil_words(s, plan.site, plan.units)));
      if (const double open = open_time(*outcome, n - 1); open > 0)
        line += " " + tr("Lies open %1 h.").arg(std::lround(open / 3600));
      if (!s.no_room.empty()) line += " " + tr("In the way: %1.").arg(text_of(s.no_room));
      if (!s.reached) line += " " + tr("The machine has no way to it.");
      if (!s.room_to_end) line += " " + tr("The machine has nowhere to stand.");
      lines << line;
    }
    return list_of(lines);
  });
  note([](const Plan&) {
    return tr(
        "Ctrl+9 shows order, spoil and the machine's ways on the drawing. Depths and soil decide who may "
        "go in: a competent person looks daily, local codes govern.");
  });
}

void CrewPanel::add_sides() {
  section(tr("Sides of the trenches"));
  choice(tr("Coil trenches"), sides_names(),
         bound_to<int>(tr("Sides of coil trenches"), &Plan::dig, &DigWishes::coil_sides));
  note([](const Plan& p) { return sides_note(p, p.dig.coil_sides, p.wishes.trench_depth); });
  choice(tr("Header and run"), sides_names(),
         bound_to<int>(tr("Sides of header and run"), &Plan::dig, &DigWishes::run_sides));
  note([](const Plan& p) { return sides_note(p, p.dig.run_sides, p.wishes.run_depth); });
  check(tr("Slope by the table"), {[](const Plan& p) { return !p.dig.slope.has_value(); },
                                   [](Plan& p, bool table) {
                                     p.dig.slope = table ? std::nullopt
                                                         : std::optional<double>(slope_for(p.ground.soil));
                                   },
                                   tr("Slope by the table")});
  number(tr("Own slope"), Quantity::slope,
         {[](const Plan& p) { return p.dig.slope.value_or(slope_for(p.ground.soil)); },
          [](Plan& p, double v) { p.dig.slope = v; }, tr("Own slope")});
  only_when([](const Plan& p) { return p.dig.slope.has_value(); });
}

void CrewPanel::fill_access() {
  const Plan& plan = document_.plan();
  const QSignalBlocker quiet(access_);
  access_->clear();
  access_->addItem(tr("Over the drive"));
  int chosen = 0;
  double least = 1e300;
  const auto& lot = plan.site.lot;
  for (std::size_t i = 0; i < lot.size(); ++i) {
    const Point a = lot[i].at, b = lot[(i + 1) % lot.size()].at;
    const Point out = left_normal(b - a);
    const bool left_is_out = !contains(lot_ring(plan.site), 0.5 * (a + b) + 1e-3 * unit(out));
    access_->addItem(tr("Lot edge %1, %2")
                         .arg(i + 1)
                         .arg(text_of(std::string(compass_word(plan.site, left_is_out ? out : -1.0 * out)))));
    if (!plan.dig.access) continue;
    const double away = distance(Segment{a, b}, *plan.dig.access);
    if (away >= least) continue;
    least = away;
    chosen = static_cast<int>(i) + 1;
  }
  access_->setCurrentIndex(chosen);
}

void CrewPanel::add_spoil() {
  section(tr("Spoil and machine's way"));
  number(tr("Spoil off the edge"), Quantity::length,
         bound_to(tr("Spoil off the edge"), &Plan::dig, &DigWishes::spoil_off));
  choice(tr("Trucked off"), {tr("Nothing"), tr("What finds no room"), tr("All of it")},
         bound_to<int>(tr("Spoil trucked off"), &Plan::dig, &DigWishes::haul));
  note([this](const Plan& p) {
    const Outcome* outcome = document_.outcome();
    const bool trucked = outcome != nullptr && outcome->order != nullptr && outcome->order->hauled > 0;
    return trucked && p.dig.haul == Haul::none
               ? tr("No order of digging leaves room for %1 of loose earth: "
                    "the calendar and the price truck it off "
                    "and back all the same.")
                     .arg(shown(Quantity::volume, hauled_loose(*outcome->order)))
               : QString();
  });
  number(tr("Trucks"), Quantity::count, crew(&CrewWishes::trucks, tr("Trucks")));
  number(tr("Loose earth on one"), Quantity::volume, crew(&CrewWishes::truck_load, tr("Load of a truck")));
  number(tr("There and back"), Quantity::duration, crew(&CrewWishes::truck_trip, tr("Trip of a truck")));
  access_ = choice_box({});
  access_->setAccessibleName(tr("Machines come in"));
  row(tr("Machines come in"), access_);
  connect(access_, &QComboBox::activated, this, [this](int i) {
    Plan plan = document_.committed();
    const auto& lot = plan.site.lot;
    const auto edge = static_cast<std::size_t>(i) - 1;
    if (i <= 0 || edge >= lot.size())
      plan.dig.access.reset();
    else
      plan.dig.access = 0.5 * (lot[edge].at + lot[(edge + 1) % lot.size()].at);
    document_.commit(std::move(plan), tr("Where machines come in"));
  });
  on_refresh([this] { fill_access(); });
  check(tr("Find the place for pipe"), {[](const Plan& p) { return !p.dig.laydown.has_value(); },
                                        [](Plan& p, bool find) {
                                          if (find) p.dig.laydown.reset();
                                        },
                                        tr("Place for pipe")});
  only_when([](const Plan& p) { return p.dig.laydown.has_value(); });
  note([](const Plan&) {
    return tr("Draw menu, Pipe laydown and Machine access: to place them on the drawing.");
  });
}

void CrewPanel::add_machine(const QString& title, Machine& (*of)(Plan&), bool digs) {
  section(title);
  const auto bound = [&](const QString& what, double Machine::*field) {
    return Bound<double>{[=](const Plan& p) { return of(const_cast<Plan&>(p)).*field; },
                         [=](Plan& p, double v) { of(p).*field = v; }, what};
  };
  text(tr("Name"), {[of](const Plan& p) { return text_of(of(const_cast<Plan&>(p)).name); },
                    [of](Plan& p, const QString& v) { of(p).name = v.simplified().toStdString(); },
                    tr("Name of the machine")});
  number(tr("Bucket, heaped"), Quantity::volume, bound(tr("Bucket"), &Machine::bucket));
  number(tr("Bucket fill"), Quantity::ratio, bound(tr("Bucket fill"), &Machine::fill));
  number(tr("Cycle"), Quantity::duration, bound(tr("Cycle"), &Machine::cycle));
  number(tr("Works of the hour"), Quantity::ratio, bound(tr("Efficiency"), &Machine::efficiency));
  number(tr("Width"), Quantity::length, bound(tr("Width of the machine"), &Machine::width));
  if (digs) {
    number(tr("Reach at the ground"), Quantity::length, bound(tr("Reach of the machine"), &Machine::reach));
    number(tr("Digging depth"), Quantity::length, bound(tr("Depth of the machine"), &Machine::depth));
  }
  note([of](const Plan& p) {
    return tr("Moves %1 of loose earth an hour: bucket x fill x efficiency/cycle. Usual sizes: common "
              "practice, "
              "no source.")
        .arg(printed(Quantity::volume, 3600 * loose_rate(of(const_cast<Plan&>(p))), p));
  });
}

void CrewPanel::add_hours() {
  section(tr("When the crew works"));
  text(tr("First day"), {[](const Plan& p) { return text_of(p.crew.start); },
                         [](Plan& p, const QString& v) { p.crew.start = v.trimmed().toStdString(); },
                         tr("First day of digging")})
      ->setToolTip(tr("As 2026-05-18; empty: the day that the proposal names, or days are only counted"));
  text(tr("Work begins"),
       {[](const Plan& p) { return clock(p.crew.begins); },
        [](Plan& p, const QString& v) { p.crew.begins = seconds_of(v); }, tr("When work begins")});
  number(tr("Hours a day"), Quantity::duration, crew(&CrewWishes::day_length, tr("Hours a day")));
  auto* box =
      choice(tr("Days worked"),
             {tr("Monday to Thursday"), tr("Monday to Friday"), tr("Monday to Saturday"), tr("Every day")},
             {week_of, [](Plan& p, int i) { p.crew.weekdays = kWeeks[i]; }, tr("Days worked")});
  box->setPlaceholderText(tr("days of your own"));
  number(tr("Reserve for rain"), Quantity::ratio, crew(&CrewWishes::rain_slack, tr("Reserve for rain")));
}

void CrewPanel::add_crew() {
  section(tr("Crew"));
  const Quantity n = Quantity::count;
  number(tr("Excavators"), n, crew(&CrewWishes::excavators, tr("Excavators")));
  number(tr("Coil racks"), n, crew(&CrewWishes::racks, tr("Coil racks")));
  number(tr("Coils made before"), n, crew(&CrewWishes::coils_ready, tr("Coils made before")));
  number(tr("Laying crews"), n, crew(&CrewWishes::laying_crews, tr("Laying crews")));
  number(tr("Joiners"), n, crew(&CrewWishes::joiners, tr("Joiners")));
}

void CrewPanel::add_rates() {
  section(tr("What takes how long"));
  const Quantity t = Quantity::duration;
  number(tr("Coil, by ft or m of pipe"), t, by_length(&CrewWishes::coil_making, tr("Coil making")));
  number(tr("Straight pipe, by ft or m"), t, by_length(&CrewWishes::straight_making, tr("Straight pipe")));
  number(tr("Laying, by ft or m"), t, by_length(&CrewWishes::coil_laying, tr("Coil laying")));
  number(tr("Header, by ft or m"), t, by_length(&CrewWishes::header_laying, tr("Header laying")));
  number(tr("A fused joint"), t, crew(&CrewWishes::joint_making, tr("Joint making")));
  number(tr("Fill and flush"), t, crew(&CrewWishes::test_filling, tr("Fill and flush")));
  number(tr("A line met by hand"), t, crew(&CrewWishes::hand_crossing, tr("Line met by hand")));
  number(tr("Trencher, by ft or m"), t, by_length(&CrewWishes::trencher, tr("Trencher")));
  note([](const Plan&) {
    return tr("Usual rates: common practice, no source. A crew that knows its own is right.");
  });
}

}  // namespace underlawn
