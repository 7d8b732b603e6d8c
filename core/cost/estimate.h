// SPDX-License-Identifier: GPL-3.0-or-later
// What a loop costs to buy and to dig, and how long it lies open: an estimate from the drawing. Prices are
// the designer's; amounts follow from layout and dig.
#pragma once

#include <string>
#include <vector>

#include "base/quantity.h"
#include "cost/crew.h"
#include "cost/lot_torn.h"

namespace underlawn {

// One line of the bill. sum = amount x price.
struct CostLine {
  std::string key;    // "digging", "coil_pipe", ...
  std::string thing;  // "Ground dug and filled in again"
  double amount = 0;  // SI
  Quantity quantity = Quantity::count;
  double price = 0;  // currency a unit of the amount, SI
  double sum = 0;    // currency
  bool operator==(const CostLine&) const = default;
};

// Working time in s, from the first bucket on. Digging (coil trenches, then header and run) and coils race
// each other as in flow_shop.h; joints follow both; then the test; filling in is last.
struct CrewTime {
  double digging = 0;  // machine time for everything, lines met by hand included
  double trench = 0;   // of it the longest coil trench
  double making = 0;   // of all coils
  double coil = 0;     // of it the longest coil
  double laying = 0;   // of all coils
  double joining = 0;  // header and run laid, joints fused
  double testing = 0;
  double filling = 0;  // bedding and backfill
  double dug = 0;      // when everything is dug
  double laid = 0;     // when the last coil lies in its trench
  double waiting = 0;  // of the coil crew for trenches
  double open = 0;     // when everything is filled in
  bool operator==(const CrewTime&) const = default;
};
double days_of(double working_time, double day_length = kWorkingDay);  // working days
int days_paid(const CrewTime& time, double day_length = kWorkingDay);  // open, in whole days begun

struct Estimate {
  std::vector<CostLine> lines;  // none where nothing is laid
  double total = 0;             // currency
  int joints = 0;
  LotTorn torn;
  CrewTime time;
  bool operator==(const Estimate&) const = default;
  double sum_of(std::string_view key) const;  // of a line, 0 where there is none
};

// "15.29 per cu yd": a price (currency a SI unit of the amount) for the unit in which one unit of the amount
// is shown; the bare number for what is counted.
std::string print_price(double price, Quantity amount, UnitSystem units);

// With vertical sides (as where a shield or shoring is used, or nobody enters) and with the protective slope.
struct Cost {
  Estimate vertical, sloped;
  bool operator==(const Cost&) const = default;
};

// `test`: s that the pressure test holds the loop, filling not counted. Of wishes only prices and the section
// of the run are read. Empty estimates where nothing is laid or dug.
Cost make_cost(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes,
               const Ground& ground, double test, const DigWishes& how = {}, const CrewWishes& crew = {});

}  // namespace underlawn
