// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/pricing_troubles.h"

#include <cmath>
#include <set>

#include "base/say.h"
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

  void number(const std::string& code, const std::string& thing, double value, double low, double high,
              bool above_low, const std::string& advice) {
    if (std::isfinite(value) && value <= high && (above_low ? value > low : value >= low)) return;
    const std::string bound = above_low ? say("more than {} and at most {}", shortest(low), shortest(high))
                                        : say("from {} to {}", shortest(low), shortest(high));
    troubles_.push_back({std::string(code) + "_out_of_bounds", thing,
                         std::isfinite(value) ? shortest(value) : say("not a finite number"), bound, advice});
  }
  void money(const std::string& thing, double value) {
    number("price", thing, value, 0, kMuch, false, say("Enter what it costs; 0 where it does not count."));
  }
  void share(const std::string& code, const std::string& thing, double value, double high) {
    number(code, thing, value, 0, high, false, say("Enter a share, as 8 %."));
  }
  // May fall as well as rise.
  void rate(const std::string& thing, double value) {
    number("rate", thing, value, -0.5, 0.5, false, say("Enter the change a year, as 2 %."));
  }
  void date(const std::string& thing, const std::string& value) {
    if (value.empty() || day_number(value)) return;
    troubles_.push_back({"price_date_unknown", thing, in_quotes(value), say("a day as 2026-03-01"),
                         say("Enter the day, or nothing.")});
  }
  void most(const std::string& thing, std::size_t count, std::size_t most) {
    if (count <= most) return;
    troubles_.push_back({"price_rows_too_many", thing, std::to_string(count),
                         say("at most {}", std::to_string(most)), say("Take out what is not used.")});
  }
  void add(Trouble t) { troubles_.push_back(std::move(t)); }

 private:
  std::vector<Trouble>& troubles_;
};

void check_row(Checker& c, const PriceRow& row) {
  const std::string name = row.item.empty() ? row.key : row.item;
  if (row.price) c.money(say("Price of {}", name), *row.price);
  c.date(say("Date of the price of {}", name), row.date);
  c.most(say("Packs of {}", name), row.packs.size(), 12);
  for (double pack : row.packs)
    c.number("pack", say("Pack of {}", name), pack, 0, 1e6, false,
             say("Enter how much is sold together, 0 for what is cut to length."));
  if (!row.pack_prices.empty() && row.pack_prices.size() != row.packs.size())
    c.add({"pack_prices", say("Prices by the pack of {}", name), std::to_string(row.pack_prices.size()),
           say("one for each pack, or none"), say("Enter a price for each pack.")});
  for (double price : row.pack_prices) c.money(say("Price of {}", name), price);
  const auto usual = usual_row(row.key);
  if (usual && usual->unit != row.unit)
    c.add({"price_unit_other", say("Price of {}", usual->item), say("for another unit than the book's"),
           say("for the unit that is counted"),
           say("Take the row out of the plan's book and enter the price again.")});
}

void check_book(Checker& c, const PriceBook& book) {
  c.date(say("Date of the offer"), book.date);
  c.number("price_age", say("Age from which a price is old"), book.oldest, 0, 36'500, true,
           say("Enter days; 365 is usual."));
  c.most(say("Prices of the plan"), book.rows.size(), kMostPriceRows);
  std::set<std::string> seen;
  for (const PriceRow& row : book.rows) {
    check_row(c, row);
    if (!seen.insert(row.key).second)
      c.add({"price_twice", say("Price of {}", row.key), say("there twice"), say("there once"),
             say("Take one of them out.")});
  }
}

void check_counting(Checker& c, const Counting& n) {
  const std::string advice = say("Enter how much is taken.");
  c.number("counting", say("Ties for each loop"), n.ties_per_loop, 0, 100, false, advice);
  c.number("counting", say("Distance of ties, m"), n.tie_distance, 0, 1000, true, advice);
  c.number("counting", say("Lines of warning tape"), n.tape_lines, 0, 10, false, advice);
  c.number("counting", say("Seed, kg a m2"), n.seed, 0, 1, false, advice);
  c.number("counting", say("Lawn for a bale of straw, m2"), n.straw, 0, 10'000, false, advice);
  c.number("counting", say("Insulation at the house, m"), n.insulated, 0, 1000, false, advice);
  c.number("counting", say("Sleeve, m"), n.sleeve, 0, 10, false, advice);
  c.number("counting", say("Bags of grout"), n.grout, 0, 1000, false, advice);
  c.share("spare", say("Spare of coil pipe"), n.pipe_spare, 1);
  c.share("spare", say("Spare of fittings"), n.fitting_spare, 1);
  c.share("spare", say("Spare of antifreeze"), n.antifreeze_spare, 1);
}

void check_terms(Checker& c, const OfferTerms& t) {
  c.share("overhead", say("Overhead"), t.overhead, 5);
  c.share("markup", say("Markup"), t.markup, 5);
  c.share("tax", say("Tax"), t.tax, 1);
  c.most(say("Lines of your own"), t.extras.size(), kMostOwnLines);
  for (const ExtraLine& e : t.extras) {
    c.money(say("Price of {}", e.item), e.price);
    c.number("amount", say("Amount of {}", e.item), e.amount, 0, 1e6, false, say("Enter how many."));
  }
  c.most(say("Incentives"), t.incentives.size(), kMostOwnLines);
  for (const Incentive& i : t.incentives) {
    if (i.kind == IncentiveKind::percent)
      c.share("incentive", say("Share of incentive {}", i.name), i.amount, 1);
    else
      c.money(say("Incentive {}", i.name), i.amount);
    if (i.cap) c.money(say("Cap of incentive {}", i.name), *i.cap);
  }
}

void check_other(Checker& c, const OtherSystem& o) {
  const std::string of = o.name.empty() ? say("another system") : translated(o.name);
  c.number("heat_content", say("Heat content of {}, J a unit", of), o.heat_content, 0, 1e15, true,
           say("Enter it from the table of fuels."));
  c.number("efficiency", say("Efficiency of {}", of), o.efficiency, 0.1, 10, false,
           say("Enter heat given over heat content; above 1 for a heat pump."));
  c.number("efficiency", say("Cooling efficiency of {}", of), o.cooling, 0, 30, false,
           say("Enter cooling over electricity; 0 where it does not cool."));
  c.share("auxiliary", say("Electricity for fans of {}", of), o.auxiliary, 1);
  c.money(say("Fuel price of {}", of), o.price);
  c.rate(say("Yearly rise of the fuel price of {}", of), o.escalation);
  c.number("emission", say("Emission of {}, kg a unit", of), o.emission, 0, 1e6, false,
           say("Enter kg of CO2 a unit of fuel."));
  c.money(say("First cost of {}", of), o.first_cost);
  c.money(say("Maintenance of {}", of), o.maintenance);
  c.number("life", say("Life of {}, years", of), o.life, 1, kMostYears, false, say("Enter whole years."));
}

void check_running(Checker& c, const Running& r) {
  c.money(say("Price of electricity"), r.electricity);
  c.rate(say("Yearly rise of the electricity price"), r.electricity_escalation);
  c.number("emission", say("Emission of electricity, kg a kWh"), r.electricity_emission, 0, 10, false,
           say("Enter kg of CO2 a kWh."));
  c.rate(say("Discount rate"), r.discount);
  c.rate(say("Inflation"), r.inflation);
  if (r.years)
    c.number("years", say("Years looked at"), *r.years, 1, kMostYears, false, say("Enter whole years."));
  c.money(say("Price of the heat pump"), r.unit_cost);
  c.money(say("Maintenance of the ground loop system"), r.maintenance);
  c.number("life", say("Life of the heat pump, years"), r.unit_life, 1, kMostYears, false,
           say("Enter whole years."));
  c.most(say("Other ways to heat and cool"), r.others.size(), kMostSystems);
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
