// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/family_facts.h"

#include <QLocale>
#include <algorithm>
#include <cmath>

#include "cost/bill.h"
#include "cost/comparison.h"
#include "cost/crew_calendar.h"
#include "plan/laid_back.h"
#include "plan/sizing/chance.h"
#include "sheets/contents.h"

namespace underlawn {

using sheet::shown;
using sheet::shown_length;
using sheet::text_of;

namespace {

// Three figures that matter: 20 708 becomes 20 700.
double step_of(double amount) {
  return std::max(1.0, std::pow(10.0, std::floor(std::log10(std::abs(amount))) - 2));
}

double rounded(double amount) {
  if (amount == 0 || !std::isfinite(amount)) return 0;
  const double step = step_of(amount);
  return step * std::round(amount / step);
}

// Up to whole currency; a trace above is none.
double whole_up(double amount) {
  return std::ceil(amount - 1e-6);
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

int days_worked(const Outcome& outcome) {
  return outcome.work ? outcome.work->time.days : 0;
}

int days_for_rain(const Plan& plan, const Outcome& outcome) {
  if (outcome.calendar)
    return static_cast<int>(std::ranges::count(outcome.calendar->days, true, &CrewDay::reserve));
  return static_cast<int>(std::ceil(days_worked(outcome) * std::max(0.0, plan.crew.rain_slack) - 1e-9));
}

}  // namespace

QString money(const Plan& plan, double amount) {
  return with_currency(plan, grouped(std::round(amount) + 0.0));
}

QString price_of_unit(const Plan& plan, double price) {
  return with_currency(plan, QString::number(price, 'f', 2));
}

QString money_range(const Plan& plan, double low, double high) {
  const QString from = money(plan, low), to = money(plan, high);
  return from == to ? from : QObject::tr("%1 to %2").arg(from, to);
}

QString family_length(const Plan& plan, double metres) {
  // A millimetre short of a whole number is that number.
  if (plan.units == UnitSystem::metric)
    return QString("%1 m").arg(std::floor(metres * 10 + 0.01) / 10, 0, 'f', 1);
  const double feet = metres / 0.3048;
  // Tenths where it is near: no inches among feet.
  if (feet < 2.995) return QString("%1 ft").arg(std::floor(feet * 10 + 0.05) / 10);
  return QString("%1 ft").arg(std::floor(feet + 0.005));
}

QString family_energy(double joules) {
  return QString("%1 kWh").arg(grouped(rounded(joules / 3.6e6)));
}

QString family_area(const Plan& plan, double area) {
  return plan.units == UnitSystem::metric ? QString("%1 m²").arg(family_number(area))
                                          : QString("%1 sq ft").arg(family_number(area / (0.3048 * 0.3048)));
}

QString family_volume(const Plan& plan, double volume) {
  return plan.units == UnitSystem::metric ? QString("%1 L").arg(family_number(volume * 1000))
                                          : QString("%1 gal").arg(family_number(volume / 0.003785411784));
}

QString family_number(double number) {
  return grouped(rounded(number));
}

Spread spread_of_need() {
  const double spread = std::exp(1.645 * Spreads{}.load);
  return {1 - 1 / spread, spread - 1};
}

namespace {

// A day of the crew more, as the bill would have it.
double rain_day(const Plan& plan) {
  const OfferTerms& terms = plan.pricing.terms;
  const double tax = terms.tax_on == TaxOn::everything ? 1 + terms.tax : 1;
  return plan.wishes.prices.crew_day * (1 + terms.overhead) * (1 + terms.markup) * tax;
}

const BillLine* line_of(const Bill& bill, const char* row) {
  const auto found = std::ranges::find(bill.lines, row, &BillLine::row);
  return found == bill.lines.end() ? nullptr : &*found;
}

// Of the same line in both bills, in SI; 0 where one has none.
double more_of(const Bill& now, const Bill& then, const char* row) {
  const BillLine *a = line_of(now, row), *b = line_of(then, row);
  return a != nullptr && b != nullptr ? (b->needed - a->needed) * si_of(a->unit) : 0;
}

void add_laid_back(FamilyFacts& facts, const Bill& now, const LaidBack& then, double rain) {
  const double more_rain = (then.rain_days - facts.rain_days) * rain;
  facts.sloped_more = std::max(0.0, whole_up(then.bill.net - now.net + std::max(0.0, more_rain)));
  const BillLine *days = line_of(now, "crew_day"), *more = line_of(then.bill, "crew_day");
  if (days != nullptr && more != nullptr)
    facts.laid_back_days = static_cast<int>(std::lround(more->needed - days->needed));
  facts.laid_back_lawn = more_of(now, then.bill, "lawn");
}

void add_price(FamilyFacts& facts, const Plan& plan, const Outcome& outcome) {
  facts.days = days_worked(outcome);
  facts.rain_days = days_for_rain(plan, outcome);
  facts.rain_day = whole_up(rain_day(plan));
  facts.rain = facts.rain_days * facts.rain_day;
  facts.unit = std::round(plan.pricing.running.unit_cost);
  if (outcome.bill != nullptr) {
    const double net = outcome.bill->net;
    facts.price = std::round(net) + facts.unit;
    facts.incentives = std::round(outcome.bill->price - net);
    if (const auto laid_back = bill_if_laid_back(plan, outcome))
      add_laid_back(facts, *outcome.bill, *laid_back, rain_day(plan));
  }
  facts.whole_price = facts.unit > 0 || !plan.pricing.terms.extras.empty();
  facts.price_high = facts.price + facts.rain;
  facts.at_most = facts.price_high + facts.incentives;
  facts.laid_back_in_all = facts.sloped_more > 0 ? facts.at_most + facts.sloped_more : 0;
}

Range over_spread(double middle) {
  const Spread s = spread_of_need();
  const double a = middle * (1 - s.less), b = middle * (1 + s.more);
  return {std::min(a, b), std::max(a, b)};
}

double in_steps(const FamilyFacts& facts, double amount) {
  return facts.step * std::round(amount / facts.step);
}

// Energy goes with the need, upkeep does not. What is saved is what the printed figures leave.
OtherWay other_way(const Plan& plan, const Outcome& outcome, const FamilyFacts& facts, std::size_t i) {
  const Comparison& c = *outcome.comparison;
  const SystemCost& other = c.others[i];
  OtherWay way;
  way.name = text_of(other.name);
  way.fuel = text_of(plan.pricing.running.others[i].fuel);
  way.first = std::round(other.first);
  way.bill = other.running_today;
  const double upkeep = way.upkeep = in_steps(facts, other.running_today - other.energy_today);
  const Range energy = over_spread(other.energy_today);
  way.bills = {in_steps(facts, energy.low) + upkeep, in_steps(facts, energy.high) + upkeep};
  way.saved = c.against[i].saved_first;
  const double less = way.bills.low - facts.bill_low - facts.upkeep,
               more = way.bills.high - facts.bill_high - facts.upkeep;
  way.saves = {std::min(less, more), std::max(less, more)};
  way.years = c.against[i].simple;
  // As a reader divides the printed figures.
  const double extra = std::max(0.0, facts.price - way.first);
  if (way.saves.low > 0 && c.priced) way.payback = Range{extra / way.saves.high, extra / way.saves.low};
  return way;
}

// Ten where amounts have four figures.
double yearly_step(const FamilyFacts& facts, const Outcome& outcome) {
  double most = facts.bill;
  if (outcome.comparison)
    for (const SystemCost& other : outcome.comparison->others) most = std::max(most, other.running_today);
  return most > 0 && std::isfinite(most) ? step_of(most) : 1;
}

void add_bill(FamilyFacts& facts) {
  const Range use = over_spread(facts.electricity);
  const double price = facts.electricity > 0 ? facts.bill / facts.electricity : 0;  // a J
  facts.electricity_low = kKilowattHour * rounded(use.low / kKilowattHour);
  facts.electricity_high = kKilowattHour * rounded(use.high / kKilowattHour);
  facts.bill_low = in_steps(facts, price * facts.electricity_low);
  facts.bill_high = in_steps(facts, price * facts.electricity_high);
}

void add_energy(FamilyFacts& facts, const Plan& plan, const Outcome& outcome) {
  facts.electricity = value(outcome, "heat.electricity");
  facts.backup = value(outcome, "heat.backup");
  facts.bill = facts.electricity * plan.pricing.running.electricity / kKilowattHour;
  double upkeep = 0;
  if (outcome.comparison) {
    const SystemCost& loop = outcome.comparison->loop;
    facts.electricity = loop.electricity * kKilowattHour;
    facts.bill = loop.energy_today;
    upkeep = loop.running_today - loop.energy_today;
    facts.payback_known = outcome.comparison->priced;
  }
  facts.step = yearly_step(facts, outcome);
  facts.upkeep = in_steps(facts, upkeep);
  add_bill(facts);
  if (!outcome.comparison) return;
  for (std::size_t i = 0; i < outcome.comparison->others.size(); ++i)
    facts.others.push_back(other_way(plan, outcome, facts, i));
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

}  // namespace underlawn
