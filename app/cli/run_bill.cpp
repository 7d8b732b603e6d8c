// SPDX-License-Identifier: GPL-3.0-or-later
// The bill and what running costs, as a table, CSV or JSON; and the price book.
#include <cmath>
#include <sstream>

#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/table.h"
#include "cli/text_out.h"
#include "cli/verbs.h"
#include "cost/bill_in_cents.h"
#include "cost/comparison.h"
#include "files/atomic_file.h"
#include "files/bill_file.h"
#include "files/price_csv.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

using Rows = std::vector<std::vector<std::string>>;

std::string money(double sum) {
  return print_quantity(Quantity::money, sum, UnitSystem::metric);
}

std::string price_text(const BillLine& line, UnitSystem units) {
  if (!line.price) return say("no price");
  if (line.group == BillGroup::own) return money(*line.price);
  return print_quantity(Quantity::money, *line.price * shown_unit_of(line.unit, units), units,
                        Fineness::fine) +
         "/" + unit_text(line.unit, units);
}

std::string amount_of(const BillLine& line, double amount, UnitSystem units) {
  if (line.group != BillGroup::own) return amount_text(line.unit, amount, units);
  return print_quantity(Quantity::count, amount, units) +
         (line.unit_text.empty() ? "" : " " + line.unit_text);
}

void tell_bill(const Plan& plan, const Outcome& outcome, std::ostream& out) {
  const Bill bill = in_cents(*outcome.bill);
  Rows rows = {{"", say("counted"), say("bought"), "", say("price"), plan.wishes.prices.currency}};
  for (const BillLine& line : bill.lines)
    rows.push_back({line.item, amount_of(line, line.needed, plan.units),
                    amount_of(line, line.bought.amount, plan.units), packs_text(line, plan.units),
                    price_text(line, plan.units), line.price ? money(line.sum) : "-"});
  const auto sum = [&](const std::string& words, double amount) {
    rows.push_back({words, "", "", "", "", money(amount)});
  };
  sum(say("Cost"), bill.cost);
  if (bill.overhead > 0) sum(say("Overhead"), bill.overhead);
  if (bill.markup > 0) sum(say("Markup"), bill.markup);
  if (bill.tax > 0) sum(say("Tax"), bill.tax);
  const double unit = plan.pricing.running.unit_cost;  // counted with the running cost, on no line
  sum(unit > 0 ? say("Loop alone") : say("Price in all"), bill.price);
  for (const IncentivePaid& i : bill.incentives) sum(say("Incentive: {}", i.name), -i.amount);
  if (!bill.incentives.empty()) sum(say("Price less incentives"), bill.net);
  if (unit > 0) {
    sum(say("Heat pump indoors"), unit);
    sum(say("In all, heat pump in"), bill.net + unit);
  }
  tell_table(rows, out);
  out << "\n" << say("For the trench sides chosen. Prices are the plan's own book, not an offer.") << "\n";
}

std::string years_text(const std::optional<double>& years, bool priced) {
  if (!priced) return "–";
  return years ? print_quantity(Quantity::count, std::round(10 * *years) / 10, UnitSystem::metric)
               : say("never");
}

void tell_running(const Plan& plan, const Comparison& c, std::ostream& out) {
  const std::string& currency = plan.wishes.prices.currency;
  Rows rows = {{say("Over {} years", std::to_string(c.years)), say("first cost"), say("{} a year", currency),
                say("life cycle"), "CO2, t", say("simple payback"), say("discounted")}};
  const auto add = [&](const SystemCost& s, const std::string& simple, const std::string& discounted) {
    rows.push_back({s.name, money(s.first), money(s.running_today), money(s.life_cycle),
                    print_quantity(Quantity::count, std::round(s.emission / 100) / 10, plan.units), simple,
                    discounted});
  };
  add(c.loop, "", "");
  for (std::size_t i = 0; i < c.others.size(); ++i)
    add(c.others[i], years_text(c.against[i].simple, c.priced),
        years_text(c.against[i].discounted, c.priced));
  out << "\n";
  tell_table(rows, out);
  out << "\n"
      << say("Payback, in years, is that of the ground loop against each. “A year” is energy and maintenance "
             "at "
             "today's prices; discounted payback and life cycle take in rising prices and what is bought "
             "again.")
      << "\n";
  if (!c.priced)
    out << say("No payback is told: the price of the heat pump indoors was not entered.") << "\n";
}

bool take_book(Plan& plan, const std::string& file, const Console& console) {
  const auto text = read_file(file, kMostPriceText);
  if (!text) {
    console.complain(file, text.error().message());
    return false;
  }
  const auto csv = prices_from_csv(*text, plan.units);
  if (!csv) {
    console.complain(file, csv.error().message());
    return false;
  }
  console.complain(file, csv->remarks);
  take_prices(plan.pricing.book, plan.wishes, csv->value);
  return true;
}

}  // namespace

Exit run_bill(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  if (const auto book = arguments.value("--prices"); book && !take_book(*plan, *book, console))
    return Exit::not_read;
  const Outcome outcome = solve(*plan);
  console.complain(path, outcome.troubles);
  if (outcome.bill == nullptr) {
    if (outcome.troubles.empty())
      console.complain(path, say("Nothing is laid, so there is nothing to price."));
    return Exit::errors_remain;
  }
  if (arguments.has("--csv")) return put(for_programs(*plan, outcome, bill_csv), arguments, console);
  if (arguments.has("--json")) return put(for_programs(*plan, outcome, bill_json), arguments, console);
  std::ostringstream text;
  tell_bill(*plan, outcome, text);
  if (outcome.comparison != nullptr) tell_running(*plan, *outcome.comparison, text);
  return put(text.str(), arguments, console);
}

Exit run_prices(const Arguments& arguments, const Console& console) {
  auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  return put(price_csv(plan->pricing.book, plan->wishes, plan->units), arguments, console);
}

}  // namespace underlawn::cli
