// SPDX-License-Identifier: GPL-3.0-or-later
// The bill, line by line: what is counted, what is bought, at what price. Prices are for SI units here;
// print_price writes them for the reader's.
#include "cost/bill.h"

#include <cmath>

#include "base/say.h"
#include "base/table_text.h"
#include "plan/figures/price_groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

std::vector<std::string> those_there(const Figures& all, const std::vector<std::string>& keys) {
  std::vector<std::string> there;
  for (const std::string& key : keys)
    if (all.find(key) != nullptr) there.push_back(key);
  return there;
}

// Whose price it is: entered, of our own, or the mean of several that rolls and cut pieces have.
void add_price(Figures& all, const Plan& plan, const BillLine& line) {
  const std::string key = "price." + line.key, label = say("Price of {}", line.item);
  const double value = *line.price / si_of(line.unit);
  const PriceBook& book = plan.pricing.book;
  const bool own = line.row.empty() || !is_usual(book, plan.wishes, line.row);
  const auto entered = line.row.empty() ? line.price : row_of(book, plan.wishes, line.row).price;
  const std::string source = own ? say("the plan's price book") : translated(kOwnFigure);
  if (!entered || std::abs(*entered - *line.price) > 1e-9 * *line.price)
    derived(all, key, label, value, Q::money,
            {say("mean of what is bought: rolls at their prices; what is cut to length, where it has no "
                 "price of its "
                 "own, {} times that of a roll ({})",
                 shortest(kCutDearer), translated(kOwnFigure)),
             {"amount." + line.key},
             source});
  else if (own)
    typed(all, key, label, value, Q::money);
  else
    derived(all, key, label, value, Q::money, {say("table: the price book as it comes"), {}, source});
}

void add_line(Figures& all, const Plan& plan, const BillLine& line, const std::string& currency) {
  const Q quantity = quantity_of(line.unit);
  const double si = si_of(line.unit);
  derived(all, "need." + line.key, say("{}, counted", line.item), line.needed * si, quantity,
          {line.how, those_there(all, line.from), ""});
  std::string how = say("as counted");
  if (!line.bought.packs.empty())
    how = say("rounded up to what is sold: {}", packs_text(line, UnitSystem::metric));
  // Work is not bought in packs.
  const bool goods = line.group != BillGroup::work && line.group != BillGroup::own;
  derived(all, "amount." + line.key, goods ? say("{}, bought", line.item) : say("{}, paid for", line.item),
          line.bought.amount * si, quantity, {how, {"need." + line.key}, ""});
  std::vector<std::string> from = {"amount." + line.key};
  if (line.price) {
    add_price(all, plan, line);
    from.push_back("price." + line.key);
  }
  derived(all, "cost." + line.key, line.item + ", " + currency, line.sum, Q::money,
          {line.price ? say("amount x price") : say("price not known: nothing"), std::move(from), ""});
}

void add_pipe_bought(Figures& all, const Bill& bill) {
  double bought = 0;
  std::vector<std::string> from;
  for (const BillLine& line : bill.lines) {
    if (line.group != BillGroup::pipe) continue;
    bought += line.bought.amount * si_of(line.unit);
    from.push_back("amount." + line.key);
  }
  derived(all, "buy.pipe", say("Pipe to buy in all"), bought, Q::length,
          {say("sum of the bill's pipe, rounded up to what is sold"), std::move(from), ""});
}

void add_counting(Figures& all, const Counting& c) {
  typed(all, "counting.ties_per_loop", say("Ties for each loop"), c.ties_per_loop, Q::count);
  typed(all, "counting.tie_distance", say("Distance of ties on straight pipe"), c.tie_distance, Q::length);
  typed(all, "counting.tape_lines", say("Lines of warning tape"), c.tape_lines, Q::count);
  typed(all, "counting.seed", say("Seed on a square metre"), c.seed, Q::mass);
  typed(all, "counting.straw", say("Lawn that a bale of straw covers"), c.straw, Q::area);
  typed(all, "counting.insulated", say("Insulation of each pipe at the house"), c.insulated, Q::length);
  typed(all, "counting.sleeve", say("Sleeve for each pipe"), c.sleeve, Q::length);
  typed(all, "counting.grout", say("Bags of grout"), c.grout, Q::count);
  typed(all, "counting.fitting_spare", say("Spare fittings"), c.fitting_spare, Q::ratio);
  typed(all, "counting.antifreeze_spare", say("Spare antifreeze"), c.antifreeze_spare, Q::ratio);
}

struct Share {
  std::string key, label, method;
  double share, sum;
  std::vector<std::string> from;
};

void add_terms(Figures& all, const OfferTerms& terms, const Bill& bill, const std::string& currency) {
  std::string taxed = say("tax x (cost + overhead + markup)");
  std::vector<std::string> of = {"bill.cost", "bill.overhead", "bill.markup"};
  if (terms.tax_on == TaxOn::materials) {
    taxed = say("tax x material lines");
    of.clear();
    for (const BillLine& line : bill.lines)
      if (line.material) of.push_back("cost." + line.key);
  }
  const Share shares[] = {
      {"overhead", say("Overhead"), say("overhead x cost"), terms.overhead, bill.overhead, {"bill.cost"}},
      {"markup",
       say("Markup"),
       say("markup x (cost + overhead)"),
       terms.markup,
       bill.markup,
       {"bill.cost", "bill.overhead"}},
      {"tax", say("Tax"), taxed, terms.tax, bill.tax, of}};
  for (const Share& s : shares) {
    const std::string key = s.key;
    typed(all, "terms." + key, s.label, s.share, Q::ratio);
    std::vector<std::string> from = {"terms." + key};
    from.insert(from.end(), s.from.begin(), s.from.end());
    derived(all, "bill." + key, std::string(s.label) + ", " + currency, s.sum, Q::money,
            {s.method, std::move(from), ""});
  }
}

void add_incentives(Figures& all, const OfferTerms& terms, const Bill& bill, const std::string& currency) {
  std::vector<std::string> from = {"cost.total"};
  for (std::size_t i = 0; i < bill.incentives.size(); ++i) {
    const std::string number = std::to_string(i + 1), key = "bill.incentive_" + number;
    const Incentive& asked = terms.incentives[i];
    std::vector<std::string> of = {"terms.incentive_" + number, "cost.total"};
    typed(all, of[0], say("{}, as entered", asked.name), asked.amount,
          asked.kind == IncentiveKind::fixed ? Q::money : Q::ratio);
    if (asked.cap) {
      of.push_back("terms.incentive_" + number + "_cap");
      typed(all, of.back(), say("{}, at most", asked.name), *asked.cap, Q::money);
    }
    derived(
        all, key, bill.incentives[i].name + ", " + currency, bill.incentives[i].amount, Q::money,
        {say("as entered, or its share of the price; no more than its cap, and than is left of the price"),
         std::move(of), ""});
    from.push_back(key);
  }
  derived(all, "cost.net", say("Price less incentives, {}", currency), bill.net, Q::money,
          {say("price - incentives"), std::move(from), ""});
}

}  // namespace

void add_bill(Figures& all, const Plan& plan, const Outcome& outcome) {
  const Bill& bill = *outcome.bill;
  const std::string& currency = plan.wishes.prices.currency;
  std::vector<std::string> sums;
  add_counting(all, plan.pricing.counting);
  for (const BillLine& line : bill.lines) {
    add_line(all, plan, line, currency);
    sums.push_back("cost." + line.key);
  }
  derived(all, "bill.cost", say("Cost before overhead, markup and tax, {}", currency), bill.cost, Q::money,
          {say("sum of the lines"), std::move(sums), ""});
  add_terms(all, plan.pricing.terms, bill, currency);
  const bool pump_apart = plan.pricing.running.unit_cost > 0;
  derived(
      all, "cost.total",
      pump_apart ? say("Price of the loop alone, {}", currency) : say("Price in all, {}", currency),
      bill.price, Q::money,
      {say("cost + overhead + markup + tax"), {"bill.cost", "bill.overhead", "bill.markup", "bill.tax"}, ""});
  add_incentives(all, plan.pricing.terms, bill, currency);
  if (all.find("flow.capacity") != nullptr && plan.flow.capacity > 0)
    derived(all, "cost.by_capacity", say("Price by kilowatt of the heat pump, {}", currency),
            bill.price / (plan.flow.capacity / 1000), Q::money,
            {say("price/capacity"), {"cost.total", "flow.capacity"}, ""});
  add_pipe_bought(all, bill);
}

}  // namespace underlawn::figures
