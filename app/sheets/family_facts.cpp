// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/family_facts.h"

#include <QDate>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "cost/bill.h"
#include "cost/comparison.h"
#include "cost/crew_calendar.h"
#include "language/language.h"
#include "plan/sizing/chance.h"
#include "sheets/contents.h"

namespace underlawn {

using sheet::shown;
using sheet::shown_length;
using sheet::text_of;

namespace {

// Two figures that matter: 20 708 becomes 20 700.
double rounded(double amount, int direction = 0) {
  if (amount == 0 || !std::isfinite(amount)) return 0;
  const double step = std::max(1.0, std::pow(10.0, std::floor(std::log10(std::abs(amount))) - 2));
  const double steps = amount / step;
  return step * (direction < 0 ? std::floor(steps) : direction > 0 ? std::ceil(steps) : std::round(steps));
}

QString grouped(double amount) {
  return QLocale(QLocale::English, QLocale::UnitedStates).toString(amount, 'f', 0);
}

QString with_currency(const Plan& plan, const QString& number) {
  const QString currency = text_of(plan.wishes.prices.currency);
  return currency == "USD" ? "$" + number : number + " " + currency;
}

double value(const Outcome& outcome, const char* key) {
  const Figure* f = outcome.figures.find(key);
  return f != nullptr && std::isfinite(f->value) ? f->value : 0;
}

bool sloped(const Plan& plan) {
  return plan.dig.coil_sides == Sides::slope;
}

const Estimate& estimate_of(const Plan& plan, const Outcome& outcome) {
  return sloped(plan) ? outcome.cost.sloped : outcome.cost.vertical;
}

// The crew's calendar where there is one, as the dig sheet has it; else the estimate's sums.
CrewTime time_of(const Plan& plan, const Outcome& outcome) {
  return outcome.calendar ? times_of(*outcome.calendar) : estimate_of(plan, outcome).time;
}

double day_of(const Plan& plan) {
  return plan.crew.day_length > 0 ? plan.crew.day_length : kWorkingDay;
}

int days_worked(const Plan& plan, const Outcome& outcome) {
  return outcome.calendar ? outcome.calendar->days_worked : days_paid(time_of(plan, outcome), day_of(plan));
}

int days_for_rain(const Plan& plan, const Outcome& outcome) {
  if (outcome.calendar)
    return static_cast<int>(std::ranges::count(outcome.calendar->days, true, &CrewDay::reserve));
  return static_cast<int>(std::ceil(days_worked(plan, outcome) * std::max(0.0, plan.crew.rain_slack) - 1e-9));
}

// "19 May"; "" where no first day is given.
QString date_of(const Outcome& outcome, int day) {
  if (!outcome.calendar || day >= static_cast<int>(outcome.calendar->days.size())) return "";
  const QDate date =
      QDate::fromString(text_of(outcome.calendar->days[static_cast<std::size_t>(day)].date), Qt::ISODate);
  return date.isValid() ? locale_spoken().toString(date, QObject::tr("d MMMM", "a date")) : QString();
}

}  // namespace

QString money(const Plan& plan, double amount) {
  return with_currency(plan, grouped(rounded(amount)));
}

QString money_range(const Plan& plan, double low, double high) {
  const double from = rounded(low, -1), to = rounded(high, 1);
  if (from == to) return money(plan, low);
  return QObject::tr("%1 to %2").arg(with_currency(plan, grouped(from)), with_currency(plan, grouped(to)));
}

QString family_length(const Plan& plan, double metres) {
  // A millimetre short of a whole number is that number.
  if (plan.units == UnitSystem::metric)
    return QString("%1 m").arg(std::floor(metres * 10 + 0.01) / 10, 0, 'f', 1);
  const double feet = metres / 0.3048;
  if (feet < 3) return QString("%1 in").arg(std::floor(feet * 12 + 0.05));
  return QString("%1 ft").arg(std::floor(feet + 0.005));
}

QString family_energy(double joules) {
  return QString("%1 kWh").arg(grouped(rounded(joules / 3.6e6)));
}

std::vector<WorkDay> work_days(const Plan& plan, const Outcome& outcome) {
  std::vector<WorkDay> days;
  const CrewTime time = time_of(plan, outcome);
  const double day = day_of(plan);
  const int count = days_worked(plan, outcome);
  const double tested = outcome.calendar ? outcome.calendar->tested : time.open - time.filling;
  const double joined = outcome.calendar ? outcome.calendar->joined : tested - time.testing;
  for (int d = 1; d <= count && d <= 60; ++d) {
    const double from = (d - 1) * day, to = d * day;
    WorkDay now;
    const QString date = date_of(outcome, d - 1);
    now.title = date.isEmpty() ? QObject::tr("Day %1 of %2").arg(d).arg(count)
                               : QObject::tr("Day %1 of %2, %3").arg(d).arg(count).arg(date);
    now.dug = time.dug > 0 ? std::clamp(to / time.dug, 0.0, 1.0) : 1;
    QStringList parts;
    if (from < time.dug) parts << QObject::tr("the trenches are dug, the earth laid beside them");
    if (from < time.laid && to > time.laid / 3) parts << QObject::tr("coils of pipe are laid on the floor");
    if (to > std::max(time.dug, time.laid) && from < joined) parts << QObject::tr("pipes are joined");
    if (to > joined && from < tested)
      parts << QObject::tr("the loop is filled with water and tested under pressure");
    if (to > tested) parts << QObject::tr("sand and earth go back in, layer by layer, and the lawn is sown");
    if (parts.isEmpty()) parts << QObject::tr("the work goes on");
    QString words = parts.join(", ");
    words[0] = words[0].toUpper();
    now.sentence = words + ".";
    now.moment = to >= time.open - 1 ? LotMoment::closed : LotMoment::digging;
    days.push_back(now);
  }
  return days;
}

namespace {

void add_price(FamilyFacts& facts, const Plan& plan, const Outcome& outcome) {
  const Estimate& estimate = estimate_of(plan, outcome);
  facts.days = days_worked(plan, outcome);
  facts.rain_days = days_for_rain(plan, outcome);
  facts.price = estimate.total;
  if (!sloped(plan)) facts.price_sloped = outcome.cost.sloped.total;
  if (outcome.bills) {
    const Bill& bill = sloped(plan) ? outcome.bills->sloped : outcome.bills->vertical;
    facts.price = bill.net;
    facts.incentives = bill.price - bill.net;
    facts.whole_price = true;
    if (!sloped(plan)) facts.price_sloped = outcome.bills->sloped.net;
  }
  facts.price_high = facts.price + facts.rain_days * plan.wishes.prices.crew_day;
}

void add_energy(FamilyFacts& facts, const Plan& plan, const Outcome& outcome) {
  facts.electricity = value(outcome, "heat.electricity");
  facts.backup = value(outcome, "heat.backup");
  const double spread = std::exp(1.645 * Spreads{}.load);
  facts.electricity_low = facts.electricity / spread;
  facts.electricity_high = facts.electricity * spread;
  const double price = plan.pricing.running.electricity / 3.6e6;
  facts.bill = facts.electricity * price;
  facts.bill_low = facts.electricity_low * price;
  facts.bill_high = facts.electricity_high * price;
  if (!outcome.comparison) return;
  for (std::size_t i = 0; i < outcome.comparison->others.size(); ++i)
    facts.others.push_back({text_of(outcome.comparison->others[i].name),
                            outcome.comparison->against[i].saved_first,
                            outcome.comparison->against[i].simple});
}

}  // namespace

FamilyFacts family_facts(const Plan& plan, const Outcome& outcome) {
  FamilyFacts facts;
  facts.laid = !outcome.layout.trenches.empty();
  if (!facts.laid) return facts;
  add_price(facts, plan, outcome);
  add_energy(facts, plan, outcome);
  return facts;
}

QString warmth_words(const Plan& plan, const Outcome& outcome) {
  if (outcome.figures.find("heat.electricity") == nullptr)
    return QObject::tr("How warm the house will be is not worked out yet.");
  const double backup = value(outcome, "heat.backup"), needed = value(outcome, "house.heating");
  QStringList words{
      QObject::tr("Your house needs %1 of heat in a year. The ground gives %2 of it; electricity "
                  "for the heat pump gives the rest.")
          .arg(family_energy(needed), family_energy(value(outcome, "heat.from_ground")))};
  if (backup <= 0.001 * needed)
    words << QObject::tr(
                 "It keeps the house warm through the coldest hours of the year that we reckoned with "
                 "(%1 outside) without any other heater.")
                 .arg(shown(plan, outcome, "weather.coldest"));
  else
    words << QObject::tr("In the coldest hours a back-up heater helps with %1 in a year.")
                 .arg(family_energy(backup));
  if (value(outcome, "heat.to_ground") > 0)
    words << QObject::tr("In summer it cools the house and gives %1 back to the ground.")
                 .arg(family_energy(value(outcome, "heat.to_ground")));
  return words.join(" ");
}

QString dug_words(const Plan& plan, const Outcome& outcome) {
  const auto& trenches = outcome.layout.trenches;
  if (trenches.empty()) return QObject::tr("Nothing is laid out on the lot yet.");
  double longest = 0;
  for (const Trench& t : trenches) longest = std::max(longest, length_of(t));
  const QString length = family_length(plan, longest), width = family_length(plan, trenches.front().width),
                depth = family_length(plan, trenches.front().depth);
  QStringList words;
  words
      << (trenches.size() == 1
              ? QObject::tr("One trench in the lawn, up to %1 long, %2 wide at the floor and %3 deep, with a "
                            "coil of plastic pipe on the floor.")
                    .arg(length, width, depth)
              : QObject::tr("%1 trenches in the lawn, each up to %2 long, %3 wide at the floor and %4 deep, "
                            "with a coil of plastic pipe on the floor.")
                    .arg(trenches.size())
                    .arg(length, width, depth));
  words << (plan.wishes.run_depth > plan.ground.frost_depth
                ? QObject::tr("A smaller trench, deeper than the frost, brings two pipes to the house and "
                              "through its wall.")
                : QObject::tr("A smaller trench brings two pipes to the house and through its wall."));
  if (sloped(plan))
    words << QObject::tr(
                 "The sides are laid back for safety, so each trench is %1 wide at the grass while it is "
                 "open.")
                 .arg(shown(plan, outcome, "dig.top_width"));
  words << QObject::tr("In all about %1 of lawn are used while we work.")
               .arg(shown(plan, outcome, "layout.lawn"));
  return words.join(" ");
}

std::vector<QString> put_back_words(const Plan& plan, const Outcome& outcome) {
  std::vector<QString> words;
  words.push_back(
      QObject::tr("All the earth goes back into the trenches, in layers, pressed down; what is left over is "
                  "spread or taken away as we agree."));
  words.push_back(
      QObject::tr("Topsoil on top, raked, sown with grass and covered with straw. Expect green in some weeks "
                  "and a full lawn after a season."));
  if (value(outcome, "cost.pavement_area") > 0)
    words.push_back(QObject::tr("%1 of paving that we cut is made good.")
                        .arg(shown(plan, outcome, "cost.pavement_area")));
  words.push_back(
      QObject::tr("The ground over a trench may settle by an inch or two in the first year; we come back "
                  "once and fill it."));
  words.push_back(
      QObject::tr("Nothing stays to be seen: no machine outside, no lid, only a warning tape in the ground "
                  "over the pipe and a drawing that tells where it lies."));
  return words;
}

std::vector<Risk> risks(const Plan& plan, const Outcome& outcome) {
  std::vector<Risk> all;
  const FamilyFacts facts = family_facts(plan, outcome);
  all.push_back(
      {QObject::tr("A gas or power line is hit."),
       QObject::tr("We call the locating service before we dig and dig by hand near every mark. You show us "
                   "what only you know: sprinklers, lights, a propane line, an old well.")});
  all.push_back(
      {QObject::tr("Rock, water or old rubble in the ground."),
       QObject::tr("Nobody sees it beforehand. We stop, show you, and agree on the way round it and its "
                   "price before we go on.")});
  if (facts.price_sloped > 0)
    all.push_back(
        {QObject::tr("The trench sides have to be laid back."),
         QObject::tr("We mean to keep them upright, with nobody in an unprotected trench. If the ground or "
                     "the inspector asks for sloped sides everywhere, more lawn is opened and the price is "
                     "nearer %1.")
             .arg(money(plan, facts.price_sloped))});
  all.push_back(
      {QObject::tr("Rain."),
       QObject::tr("It may cost a day or more. The trenches stay fenced, and nobody goes in until they have "
                   "been looked at again.")});
  all.push_back(
      {QObject::tr("The pipe leaks."),
       QObject::tr("It is filled with water and kept under pressure before anything is covered, and you are "
                   "welcome to look at the gauge. The record is yours.")});
  all.push_back(
      {QObject::tr("Children and pets."),
       QObject::tr("Open trenches are deadly to fall into. The work is fenced day and night; please keep "
                   "everyone behind the fence.")});
  all.push_back(
      {QObject::tr("The house needs more than we were told."),
       QObject::tr("The numbers here rest on the heat loss given to us. If it is a tenth higher, so is about "
                   "the electricity; in the coldest days a back-up heater would help.")});
  return all;
}

}  // namespace underlawn
