// SPDX-License-Identifier: GPL-3.0-or-later
// What the designer says about money: the price book, how much of the small things is taken, the terms of the
// offer, and what other ways to heat and cool cost. Only what differs from the usual is kept in a plan.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace underlawn {

// What one price is for.
enum class PriceUnit { each, metre, square_metre, cubic_metre, litre, kilogram, hour, day };

// A row of the book. Rows of the usual book that nobody changed are not kept (price_book.h has them).
struct PriceRow {
  std::string key;  // "warning_tape", "pipe 2 in DR 11"; unique; a key of the designer's own is an extra item
  std::string item;  // what it is called
  PriceUnit unit = PriceUnit::each;
  std::vector<double> packs;    // units sold together, rising, each > 0; none: any amount
  std::optional<double> price;  // of one unit, >= 0; none: not known yet
  std::string date;             // of the price, "2026-03-01"; "" where not known
  std::string note;
  std::vector<double> pack_prices = {};  // of one unit in each of `packs`, >= 0; none: `price` in all
  bool operator==(const PriceRow&) const = default;
};

struct PriceBook {
  std::string name;            // "" for the usual book
  std::string date;            // of the offer, "2026-03-01"; prices are old or not by this; "" where not set
  double oldest = 365;         // days before that from which a price is old, > 0
  std::vector<PriceRow> rows;  // what differs from the usual book, by key
  bool operator==(const PriceBook&) const = default;
};

// How much of the small things is taken. Usual values: common practice, no source, where none is named.
struct Counting {
  double ties_per_loop = 2;     // where a loop of a coil crosses its neighbours
  double tie_distance = 3;      // m between ties of pipe without loops
  double tape_lines = 1;        // of warning tape over every trench
  bool tracer = true;           // wire along header, run and every trench
  double seed = 0.02;           // kg a m2 of lawn torn up
  double straw = 45;            // m2 that a bale covers
  double insulated = 1.524;     // m of each pipe at the house: 60 in, UFGS 15741N 3.3.2
  double sleeve = 0.6;          // m of sleeve for each pipe through the wall
  double grout = 1;             // bags at the entry
  double pipe_spare = 0;        // share of coil pipe bought beyond what is laid
  double fitting_spare = 0;     // share of fittings bought beyond what is built in
  double antifreeze_spare = 0;  // share of antifreeze beyond the fill
  bool operator==(const Counting&) const = default;
};

// What is charged for digging and for the people.
enum class LabourBy {
  days,  // the ground by volume, the crew by days: the prices that the layout weighs
  hours  // machines and people by their hours on the job
};

// A line of the designer's own: a permit, the heat pump, hauling.
struct ExtraLine {
  std::string item;
  double amount = 1;      // of units, >= 0
  std::string unit;       // as printed: "each", "trip"
  double price = 0;       // a unit
  bool material = false;  // taxed as such
  bool operator==(const ExtraLine&) const = default;
};

enum class IncentiveKind { fixed, percent };
struct Incentive {
  std::string name;
  IncentiveKind kind = IncentiveKind::fixed;
  double amount = 0;          // currency, or a share 0..1 of the price with tax
  std::optional<double> cap;  // currency, at most this much
  bool operator==(const Incentive&) const = default;
};

enum class TaxOn { materials, everything };

struct OfferTerms {
  LabourBy labour = LabourBy::days;
  double overhead = 0;  // share of the cost
  double markup = 0;    // share of cost and overhead
  double tax = 0;       // share of what is taxed
  TaxOn tax_on = TaxOn::materials;
  std::vector<ExtraLine> extras;
  std::vector<Incentive> incentives;
  bool operator==(const OfferTerms&) const = default;
};

// Another way to heat and cool the same house.
struct OtherSystem {
  std::string name;         // "Propane furnace, central air"
  std::string fuel;         // "propane"
  std::string unit;         // as it is sold: "gal"
  double heat_content = 0;  // J a unit, > 0
  double price = 0;         // a unit
  double escalation = 0;    // of the fuel's price, share a year
  double efficiency = 1;    // heat given over heat content; more than 1 for a heat pump. > 0
  double emission = 0;      // kg CO2 equivalent a unit
  double cooling = 0;       // heat taken from the house over electricity; 0: it does not cool
  double auxiliary = 0;     // electricity for fans and pumps over the heat given
  double first_cost = 0;    // currency
  double maintenance = 0;   // currency a year
  int life = 15;            // years until it is bought again
  bool operator==(const OtherSystem&) const = default;
};

// What the running costs are reckoned with.
struct Running {
  double electricity = 0.16;            // currency a kWh; a round figure of our own
  double electricity_escalation = 0;    // share a year
  double electricity_emission = 0.373;  // kg CO2 equivalent a kWh (running_sources.h)
  double discount = 0.03;    // share a year, of the same kind as the escalations: with or without inflation
  double inflation = 0;      // of maintenance and of what is bought again, share a year
  std::optional<int> years;  // looked at; none: the loop's design life
  double unit_cost = 0;      // currency: heat pump and what belongs to it indoors, with its fitting
  double maintenance = 0;    // currency a year, of the ground loop system
  int unit_life = 20;        // years until the heat pump is bought again; the loop is not
  std::vector<OtherSystem> others;
  bool operator==(const Running&) const = default;
};

struct Pricing {
  PriceBook book;
  Counting counting;
  OfferTerms terms;
  Running running;
  bool operator==(const Pricing&) const = default;
};

}  // namespace underlawn
