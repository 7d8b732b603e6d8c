// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/bill_file.h"

#include <cstdio>

#include "base/csv.h"
#include "cost/bill.h"
#include "cost/comparison.h"
#include "files/json_text.h"
#include "files/names.h"

namespace underlawn {

namespace {

std::string number(double value, const char* format = "%.6g") {
  char text[40];
  std::snprintf(text, sizeof text, format, value);
  return text;
}

std::string cents(double value) {
  return number(value, "%.2f");
}

std::vector<std::string> row_of(const BillLine& line, UnitSystem units) {
  const bool own = line.group == BillGroup::own;
  const double shown = own ? 1 : shown_unit_of(line.unit, units);
  return {bill_group_name(line.group),
          line.item,
          number(line.needed / shown),
          own ? line.unit_text : unit_text(line.unit, units),
          number(line.bought.amount / shown),
          packs_text(line, units),
          line.price ? number(*line.price * shown, "%.10g") : "",
          line.price ? cents(line.sum) : "",
          line.how,
          line.note};
}

std::vector<std::pair<std::string, double>> sums_of(const Bill& bill) {
  std::vector<std::pair<std::string, double>> sums = {{"Cost", bill.cost},
                                                      {"Overhead", bill.overhead},
                                                      {"Markup", bill.markup},
                                                      {"Tax", bill.tax},
                                                      {"Price", bill.price}};
  for (const IncentivePaid& i : bill.incentives) sums.emplace_back("Incentive: " + i.name, -i.amount);
  sums.emplace_back("Price less incentives", bill.net);
  return sums;
}

Json roll_json(const BillLine& line, const Roll& roll) {
  Json pieces = Json::array();
  for (int piece : roll.pieces) pieces.push_back(line.pieces[static_cast<std::size_t>(piece)]);
  return {
      {"length", roll.length}, {"cut_to_length", roll.to_length}, {"pieces", pieces}, {"left", roll.left}};
}

Json line_json(const BillLine& line) {
  Json packs = Json::array();
  for (const PackCount& p : line.bought.packs) packs.push_back({{"pack", p.pack}, {"count", p.count}});
  Json rolls = Json::array();
  for (const Roll& r : line.bought.rolls) rolls.push_back(roll_json(line, r));
  Json j{{"key", line.key},
         {"row", line.row},
         {"group", bill_group_name(line.group)},
         {"item", line.item},
         {"unit",
          line.group == BillGroup::own ? line.unit_text : std::string(name_of(kPriceUnitNames, line.unit))},
         {"needed", line.needed},
         {"bought", line.bought.amount},
         {"packs", packs},
         {"rolls", rolls}};
  j["price"] = line.price ? Json(*line.price) : Json(nullptr);
  j["sum_money"] = line.sum;
  j["old"] = line.old;
  j["how"] = line.how;
  j["from"] = line.from;
  return j;
}

Json bill_part(const Bill& bill) {
  Json j;
  j["lines"] = Json::array();
  for (const BillLine& line : bill.lines) j["lines"].push_back(line_json(line));
  j["materials_money"] = bill.materials;
  j["work_money"] = bill.work;
  j["own_money"] = bill.own;
  j["cost_money"] = bill.cost;
  j["overhead_money"] = bill.overhead;
  j["markup_money"] = bill.markup;
  j["tax_money"] = bill.tax;
  j["price_money"] = bill.price;
  j["incentives"] = Json::array();
  for (const IncentivePaid& i : bill.incentives)
    j["incentives"].push_back({{"name", i.name}, {"amount_money", i.amount}});
  j["net_money"] = bill.net;
  return j;
}

Json system_json(const SystemCost& s) {
  Json j{{"name", s.name},
         {"first_cost_money", s.first},
         {"fuel_units", s.fuel},
         {"electricity_j", s.electricity * kKilowattHour},
         {"energy_today_money", s.energy_today},
         {"running_today_money", s.running_today},
         {"life_cycle_money", s.life_cycle},
         {"emission_kg", s.emission}};
  j["paid_by_year_money"] = s.paid;
  return j;
}

Json comparison_json(const Comparison& c) {
  const auto maybe = [](const std::optional<double>& v) { return v ? Json(*v) : Json(nullptr); };
  Json j{{"years", c.years}, {"heating_j", c.heating}, {"cooling_j", c.cooling}};
  j["loop"] = system_json(c.loop);
  j["others"] = Json::array();
  for (std::size_t i = 0; i < c.others.size(); ++i) {
    const Against& a = c.against[i];
    Json other = system_json(c.others[i]);
    other["extra_first_cost_money"] = a.extra;
    other["saved_first_year_money"] = a.saved_first;
    other["simple_payback_years"] = maybe(a.simple);
    other["discounted_payback_years"] = maybe(a.discounted);
    other["net_savings_money"] = maybe(a.net_savings);
    other["emission_saved_kg"] = a.emission_saved;
    j["others"].push_back(std::move(other));
  }
  return j;
}

}  // namespace

std::string bill_group_name(BillGroup group) {
  switch (group) {
    case BillGroup::pipe:
      return "pipe";
    case BillGroup::fittings:
      return "fittings";
    case BillGroup::goods:
      return "goods";
    case BillGroup::work:
      return "work";
    case BillGroup::own:
      return "own";
  }
  return "";
}

std::string bill_csv(const Plan& plan, const Outcome& outcome) {
  const Bill& bill = *outcome.bill;
  std::string text =
      csv_line({"group", "item", "needed", "unit", "bought", "packs", "price " + plan.wishes.prices.currency,
                "sum " + plan.wishes.prices.currency, "counted from", "note"});
  for (const BillLine& line : bill.lines) text += csv_line(row_of(line, plan.units));
  for (const auto& [name, sum] : sums_of(bill))
    text += csv_line({"sum", name, "", "", "", "", "", cents(sum), "", ""});
  return text;
}

std::string bill_json(const Plan& plan, const Outcome& outcome) {
  Json j{{"plan", outcome.fingerprint},
         {"currency", plan.wishes.prices.currency},
         {"book", plan.pricing.book.name},
         {"date", plan.pricing.book.date},
         {"coil_sides", name_of(kSidesNames, plan.dig.coil_sides)},
         {"run_sides", name_of(kSidesNames, plan.dig.run_sides)},
         {"bill", bill_part(*outcome.bill)}};
  if (plan.flow.capacity > 0) j["price_per_w_money"] = outcome.bill->price / plan.flow.capacity;
  if (outcome.comparison != nullptr) j["running"] = comparison_json(*outcome.comparison);
  return json_to_text(j);
}

}  // namespace underlawn
