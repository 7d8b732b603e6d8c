// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/pricing_troubles.h"

#include <cmath>
#include <set>

#include "base/table_text.h"
#include "base/typed_text.h"
#include "cost/price_book.h"
#include "dig/dates.h"

namespace underlawn {

namespace {

constexpr double kMuch = 1e9;

class Checker {
 public:
  explicit Checker(std::vector<Trouble>& troubles) : troubles_(troubles) {}

  void number(const char* code, const std::string& thing, double value, double low, double high,
              bool above_low, const char* advice) {
    if (std::isfinite(value) && value <= high && (above_low ? value > low : value >= low)) return;
    const std::string bound = above_low ? "more than " + shortest(low) + " and at most " + shortest(high)
                                        : "from " + shortest(low) + " to " + shortest(high);
    troubles_.push_back({std::string(code) + "_out_of_bounds", thing,
                         std::isfinite(value) ? shortest(value) : "not a finite number", bound, advice});
  }
  void money(const std::string& thing, double value) {
    number("price", thing, value, 0, kMuch, false, "Enter what it costs; 0 where it does not count.");
  }
  void share(const char* code, const std::string& thing, double value, double high) {
    number(code, thing, value, 0, high, false, "Enter a share, as 8 %.");
  }
  // May fall as well as rise.
  void rate(const std::string& thing, double value) {
    number("rate", thing, value, -0.5, 0.5, false, "Enter the change a year, as 2 %.");
  }
  void date(const std::string& thing, const std::string& value) {
    if (value.empty() || day_number(value)) return;
    troubles_.push_back(
        {"price_date_unknown", thing, in_quotes(value), "a day as 2026-03-01", "Enter the day, or nothing."});
  }
  void most(const std::string& thing, std::size_t count, std::size_t most) {
    if (count <= most) return;
    troubles_.push_back({"price_rows_too_many", thing, std::to_string(count),
                         "at most " + std::to_string(most), "Take out what is not used."});
  }
  void add(Trouble t) { troubles_.push_back(std::move(t)); }

 private:
  std::vector<Trouble>& troubles_;
};

void check_row(Checker& c, const PriceRow& row) {
  const std::string name = row.item.empty() ? row.key : row.item;
  if (row.price) c.money("Price of " + name, *row.price);
  c.date("Date of the price of " + name, row.date);
  c.most("Packs of " + name, row.packs.size(), 12);
  for (double pack : row.packs)
    c.number("pack", "Pack of " + name, pack, 0, 1e6, true, "Enter how much is sold together.");
  const auto usual = usual_row(row.key);
  if (usual && usual->unit != row.unit)
    c.add({"price_unit_other", "Price of " + usual->item, "for another unit than the book's",
           "for the unit that is counted", "Take the row out of the plan's book and enter the price again."});
}

void check_book(Checker& c, const PriceBook& book) {
  c.date("Date of the offer", book.date);
  c.number("price_age", "Age from which a price is old", book.oldest, 0, 36'500, true,
           "Enter days; 365 is usual.");
  c.most("Prices of the plan", book.rows.size(), kMostPriceRows);
  std::set<std::string> seen;
  for (const PriceRow& row : book.rows) {
    check_row(c, row);
    if (!seen.insert(row.key).second)
      c.add({"price_twice", "Price of " + row.key, "there twice", "there once", "Take one of them out."});
  }
}

void check_counting(Checker& c, const Counting& n) {
  const char* advice = "Enter how much is taken.";
  c.number("counting", "Ties for each loop", n.ties_per_loop, 0, 100, false, advice);
  c.number("counting", "Distance of ties, m", n.tie_distance, 0, 1000, true, advice);
  c.number("counting", "Lines of warning tape", n.tape_lines, 0, 10, false, advice);
  c.number("counting", "Seed, kg a m2", n.seed, 0, 1, false, advice);
  c.number("counting", "Lawn for a bale of straw, m2", n.straw, 0, 10'000, false, advice);
  c.number("counting", "Insulation at the house, m", n.insulated, 0, 1000, false, advice);
  c.number("counting", "Sleeve, m", n.sleeve, 0, 10, false, advice);
  c.number("counting", "Bags of grout", n.grout, 0, 1000, false, advice);
  c.share("spare", "Spare of coil pipe", n.pipe_spare, 1);
  c.share("spare", "Spare of fittings", n.fitting_spare, 1);
  c.share("spare", "Spare of antifreeze", n.antifreeze_spare, 1);
}

void check_terms(Checker& c, const OfferTerms& t) {
  c.share("overhead", "Overhead", t.overhead, 5);
  c.share("markup", "Markup", t.markup, 5);
  c.share("tax", "Tax", t.tax, 1);
  c.most("Lines of your own", t.extras.size(), kMostOwnLines);
  for (const ExtraLine& e : t.extras) {
    c.money("Price of " + e.item, e.price);
    c.number("amount", "Amount of " + e.item, e.amount, 0, 1e6, false, "Enter how many.");
  }
  c.most("Incentives", t.incentives.size(), kMostOwnLines);
  for (const Incentive& i : t.incentives) {
    if (i.kind == IncentiveKind::percent)
      c.share("incentive", "Share of incentive " + i.name, i.amount, 1);
    else
      c.money("Incentive " + i.name, i.amount);
    if (i.cap) c.money("Cap of incentive " + i.name, *i.cap);
  }
}

void check_other(Checker& c, const OtherSystem& o) {
  const std::string of = " of " + (o.name.empty() ? std::string("another system") : o.name);
  c.number("heat_content", "Heat content" + of + ", J a unit", o.heat_content, 0, 1e15, true,
           "Enter it from the table of fuels.");
  c.number("efficiency", "Efficiency" + of, o.efficiency, 0.1, 10, false,
           "Enter heat given over heat content; above 1 for a heat pump.");
  c.number("efficiency", "Cooling efficiency" + of, o.cooling, 0, 30, false,
           "Enter cooling over electricity; 0 where it does not cool.");
  c.share("auxiliary", "Electricity for fans" + of, o.auxiliary, 1);
  c.money("Fuel price" + of, o.price);
  c.rate("Yearly rise of the fuel price" + of, o.escalation);
  c.number("emission", "Emission" + of + ", kg a unit", o.emission, 0, 1e6, false,
           "Enter kg of CO2 a unit of fuel.");
  c.money("First cost" + of, o.first_cost);
  c.money("Maintenance" + of, o.maintenance);
  c.number("life", "Life" + of + ", years", o.life, 1, kMostYears, false, "Enter whole years.");
}

void check_running(Checker& c, const Running& r) {
  c.money("Price of electricity", r.electricity);
  c.rate("Yearly rise of the electricity price", r.electricity_escalation);
  c.number("emission", "Emission of electricity, kg a kWh", r.electricity_emission, 0, 10, false,
           "Enter kg of CO2 a kWh.");
  c.rate("Discount rate", r.discount);
  c.rate("Inflation", r.inflation);
  if (r.years) c.number("years", "Years looked at", *r.years, 1, kMostYears, false, "Enter whole years.");
  c.money("Price of the heat pump", r.unit_cost);
  c.money("Maintenance of the ground loop system", r.maintenance);
  c.number("life", "Life of the heat pump, years", r.unit_life, 1, kMostYears, false, "Enter whole years.");
  c.most("Other ways to heat and cool", r.others.size(), kMostSystems);
  for (const OtherSystem& o : r.others) check_other(c, o);
}

}  // namespace

std::vector<Trouble> pricing_troubles(const Pricing& pricing, UnitSystem) {
  std::vector<Trouble> troubles;
  if (pricing == Pricing{}) return troubles;
  Checker c(troubles);
  check_book(c, pricing.book);
  check_counting(c, pricing.counting);
  check_terms(c, pricing.terms);
  check_running(c, pricing.running);
  return troubles;
}

}  // namespace underlawn
