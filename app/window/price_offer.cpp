// SPDX-License-Identifier: GPL-3.0-or-later
// The terms of the offer on the Price page, and how much of the small things is taken.
#include <QComboBox>

#include "window/cells_table.h"
#include "window/price_panel.h"

namespace underlawn {

namespace {

constexpr double kMostMoney = 1e9, kMostAmount = 1e6;

Form::Bound<double> term(double OfferTerms::*field, const QString& what) {
  return bound_to(what, &Plan::pricing, &Pricing::terms, field);
}

Form::Bound<double> counted(double Counting::*field, const QString& what) {
  return bound_to(what, &Plan::pricing, &Pricing::counting, field);
}

ExtraLine& extra(Plan& p, std::size_t i) {
  return p.pricing.terms.extras[i];
}
const ExtraLine& extra(const Plan& p, std::size_t i) {
  return p.pricing.terms.extras[i];
}

CellsTable::Of extra_lines() {
  using Columns = std::vector<CellsTable::Column>;
  Columns columns = {
      {Form::tr("Item"),
       Quantity::count,
       {},
       {},
       0,
       0,
       false,
       false,
       [](const Plan& p, std::size_t i) { return extra(p, i).item; },
       [](Plan& p, std::size_t i, std::string t) { extra(p, i).item = std::move(t); }},
      {Form::tr("Amount"), Quantity::count, [](const Plan& p, std::size_t i) { return extra(p, i).amount; },
       [](Plan& p, std::size_t i, double v) { extra(p, i).amount = v; }, 0, kMostAmount},
      {Form::tr("Price"), Quantity::money, [](const Plan& p, std::size_t i) { return extra(p, i).price; },
       [](Plan& p, std::size_t i, double v) { extra(p, i).price = v; }, 0, kMostMoney}};
  return {Form::tr("Lines of your own"),
          std::move(columns),
          [](const Plan& p) { return p.pricing.terms.extras.size(); },
          {},
          [](Plan& p) {
            ExtraLine line;
            line.item = p.pricing.terms.extras.empty() ? Form::tr("Permit").toStdString()
                                                       : Form::tr("Another line").toStdString();
            p.pricing.terms.extras.push_back(line);
          },
          [](Plan& p, std::size_t i) {
            p.pricing.terms.extras.erase(p.pricing.terms.extras.begin() + static_cast<std::ptrdiff_t>(i));
          }};
}

std::vector<Incentive>& paid(Plan& p) {
  return p.pricing.terms.incentives;
}
const std::vector<Incentive>& paid(const Plan& p) {
  return p.pricing.terms.incentives;
}

// "30 %" is a share, "2000" a sum.
std::string amount_text_of(const Incentive& i) {
  return print_quantity(i.kind == IncentiveKind::percent ? Quantity::ratio : Quantity::money, i.amount,
                        UnitSystem::metric);
}

void set_amount(Incentive& i, const std::string& typed) {
  const bool percent = typed.find('%') != std::string::npos;
  const auto value = parse_quantity(percent ? Quantity::ratio : Quantity::money, typed, UnitSystem::metric);
  if (!value || *value < 0 || *value > (percent ? 1 : kMostMoney)) return;
  i.kind = percent ? IncentiveKind::percent : IncentiveKind::fixed;
  i.amount = *value;
}

void set_cap(Incentive& i, const std::string& typed) {
  if (typed.empty()) return i.cap.reset();
  const auto value = parse_quantity(Quantity::money, typed, UnitSystem::metric);
  if (value && *value >= 0 && *value <= kMostMoney) i.cap = *value;
}

CellsTable::Column words(const QString& head, std::function<std::string(const Incentive&)> get,
                         std::function<void(Incentive&, std::string)> set) {
  return {head,
          Quantity::count,
          {},
          {},
          0,
          0,
          false,
          false,
          [get](const Plan& p, std::size_t i) { return get(paid(p)[i]); },
          [set](Plan& p, std::size_t i, std::string t) { set(paid(p)[i], std::move(t)); }};
}

CellsTable::Of incentive_lines() {
  return {Form::tr("Incentives"),
          {words(
               Form::tr("Incentive"), [](const Incentive& i) { return i.name; },
               [](Incentive& i, std::string t) { i.name = std::move(t); }),
           words(Form::tr("Amount"), amount_text_of, [](Incentive& i, std::string t) { set_amount(i, t); }),
           words(
               Form::tr("At most"),
               [](const Incentive& i) {
                 return i.cap ? print_quantity(Quantity::money, *i.cap, UnitSystem::metric) : std::string();
               },
               [](Incentive& i, std::string t) { set_cap(i, t); })},
          [](const Plan& p) { return paid(p).size(); },
          {},
          [](Plan& p) {
            Incentive i;
            i.name = Form::tr("Incentive %1").arg(paid(p).size() + 1).toStdString();
            paid(p).push_back(i);
          },
          [](Plan& p, std::size_t i) { paid(p).erase(paid(p).begin() + static_cast<std::ptrdiff_t>(i)); }};
}

}  // namespace

void PricePanel::add_terms() {
  section(tr("Offer"));
  choice(tr("Work is charged by"), {tr("volume and days"), tr("hours")},
         bound_to<int>(tr("How work is charged"), &Plan::pricing, &Pricing::terms, &OfferTerms::labour));
  number(tr("Overhead"), Quantity::ratio, term(&OfferTerms::overhead, tr("Overhead")));
  number(tr("Markup"), Quantity::ratio, term(&OfferTerms::markup, tr("Markup")));
  number(tr("Tax"), Quantity::ratio, term(&OfferTerms::tax, tr("Tax")));
  choice(tr("Tax is on"), {tr("materials"), tr("everything")},
         bound_to<int>(tr("What is taxed"), &Plan::pricing, &Pricing::terms, &OfferTerms::tax_on));
}

void PricePanel::add_extras() {
  note([](const Plan&) {
    return tr(
        "Lines of your own: permits, hauling, a fence put back. The heat pump has a field of its own "
        "under Running cost.");
  });
  auto* table = new CellsTable(document_, extra_lines());
  wide(table);
  on_refresh([table] { table->refresh(); });
}

void PricePanel::add_incentives() {
  note([](const Plan&) {
    return tr(
        "Incentives: a sum, or a share of the price as 30 %; at most so much, where there is a cap. Whether "
        "and when one is paid is for its giver to say.");
  });
  auto* table = new CellsTable(document_, incentive_lines());
  wide(table);
  on_refresh([table] { table->refresh(); });
}

void PricePanel::add_counting() {
  section(tr("How much is taken"));
  number(tr("Ties for each loop"), Quantity::count,
         counted(&Counting::ties_per_loop, tr("Ties for each loop")));
  number(tr("Ties on straight pipe every"), Quantity::length,
         counted(&Counting::tie_distance, tr("Distance of ties")));
  number(tr("Lines of warning tape"), Quantity::count, counted(&Counting::tape_lines, tr("Warning tape")));
  check(tr("Tracer wire along every trench"),
        bound_to<bool>(tr("Tracer wire"), &Plan::pricing, &Pricing::counting, &Counting::tracer));
  const double hundred = 100;
  number(tr("Grass seed on 100 m² or 1000 ft²"), Quantity::mass,
         {[=](const Plan& p) {
            return p.pricing.counting.seed * (p.units == UnitSystem::us ? 92.90304 : hundred);
          },
          [=](Plan& p, double v) {
            p.pricing.counting.seed = v / (p.units == UnitSystem::us ? 92.90304 : hundred);
          },
          tr("Grass seed")});
  number(tr("A bale of straw covers"), Quantity::area, counted(&Counting::straw, tr("Straw")));
  number(tr("Insulation of each pipe at the house"), Quantity::length,
         counted(&Counting::insulated, tr("Insulation")));
  number(tr("Sleeve for each pipe"), Quantity::length, counted(&Counting::sleeve, tr("Sleeve")));
  number(tr("Bags of grout"), Quantity::count, counted(&Counting::grout, tr("Grout")));
  number(tr("Spare coil pipe"), Quantity::ratio, counted(&Counting::pipe_spare, tr("Spare coil pipe")));
  number(tr("Spare fittings"), Quantity::ratio, counted(&Counting::fitting_spare, tr("Spare fittings")));
  number(tr("Spare antifreeze"), Quantity::ratio,
         counted(&Counting::antifreeze_spare, tr("Spare antifreeze")));
  note([](const Plan&) { return tr("The usual values are common practice, no source."); });
}

}  // namespace underlawn
