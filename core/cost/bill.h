// SPDX-License-Identifier: GPL-3.0-or-later
// The bill: what is counted, rounded up to what is sold, at the book's prices, with what the designer adds.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cost/packs.h"
#include "cost/price_book.h"
#include "cost/take_off.h"

namespace underlawn {

struct BillLine {
  std::string key;  // of this bill: "pipe_coils", "tee_3_4_in", "lawn"; letters, digits and _
  std::string row;  // key in the price book; "" for a line of the designer's own
  std::string item;
  BillGroup group = BillGroup::goods;
  PriceUnit unit = PriceUnit::each;
  std::string unit_text;  // of a line of the designer's own
  double needed = 0;      // units, as counted
  Bought bought;
  std::vector<std::string> pieces;  // names of those that Bought::rolls are cut into
  std::optional<double> price;      // of a unit, mean of what is bought; none: not known
  double sum = 0;                   // currency; 0 where the price is not known
  std::string how;                  // where the count comes from
  std::vector<std::string> from;
  std::string note;
  bool material = false;  // taxed as such
  bool old = false;       // the price, against the day of the offer
  bool operator==(const BillLine&) const = default;
};

struct IncentivePaid {
  std::string name;
  double amount = 0;  // currency, >= 0
  bool operator==(const IncentivePaid&) const = default;
};

// price = cost + overhead + markup + tax; net = price - incentives, at least 0.
struct Bill {
  std::vector<BillLine> lines;              // by group
  double materials = 0, work = 0, own = 0;  // sums of the lines
  double cost = 0;
  double overhead = 0, markup = 0, tax = 0;
  double price = 0;
  std::vector<IncentivePaid> incentives;  // in the order typed; what is left of the price bounds each
  double net = 0;
  double sum_of(BillGroup group) const;
  int without_price() const;
  bool operator==(const Bill&) const = default;
};

// Overhead on the cost, markup on both; tax on the material lines or on everything before it. An incentive in
// percent is a share of the price, up to its cap.
Bill make_bill(const std::vector<Need>& needs, const Pricing& pricing, const Wishes& wishes);

// m, m2, m3, m3 of liquid, kg, s, or a count; what a unit is in SI, and the quantity it is shown as.
Quantity quantity_of(PriceUnit unit);
double si_of(PriceUnit unit);  // SI value of one
// Shown in the user's units: "ft", "yd³", "gal"; and how many price units one of them is.
std::string unit_text(PriceUnit unit, UnitSystem system);
double shown_unit_of(PriceUnit unit, UnitSystem system);
// "2 x 500 ft + 3 cut to length", "" where any amount is sold.
std::string packs_text(const BillLine& line, UnitSystem system);
// "1,312 ft", "4", "12.5 h".
std::string amount_text(PriceUnit unit, double amount, UnitSystem system);

}  // namespace underlawn
