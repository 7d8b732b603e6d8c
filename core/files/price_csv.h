// SPDX-License-Identifier: GPL-3.0-or-later
// The price book as CSV, to be kept, handed on and edited in a spreadsheet.
//
//   key,item,unit,pack,price,date,note,pack_price
//   "pipe 3/4 in DR 11","Pipe, 3/4 in DR 11",ft,cut/300/500/1000,0.67,2026-03-01,,0.85/0.70/0.67/0.64
//
// `price` is for one `unit`; empty: not known. `pack`: how many units are sold together, several with / or |
// between; "cut": any length, cut off for the buyer; empty: any amount. `pack_price`: of one unit in each of
// them, in the same order; empty: `price` for all, and what is cut costs kCutDearer as much. Columns may
// stand in any order; only key and price have to be there.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "cost/price_book.h"

namespace underlawn {

inline constexpr std::size_t kMostPriceText = 4'000'000;  // bytes

// Every row of the book as it counts for the plan, in the units of `system`.
std::string price_csv(const PriceBook& book, const Wishes& wishes, UnitSystem system);

struct PriceCsv {
  std::vector<PriceRow> rows;  // in units of the book, each key once: of two the later one
};
// Units: each, ft, m, ft2, m2, yd3, m3, gal, l, lb, kg, h, day, however the unit is spelled there. Without a
// unit column, or where a unit is empty, `system`'s own. Rows that cannot be read are left out and remarked
// on with their line, and so are keys that nothing is counted under and keys that come twice; refused are
// text that is no CSV and a file without key and price columns or rows.
Result<WithRemarks<PriceCsv>> prices_from_csv(std::string_view text, UnitSystem system);

// Puts the rows into the book.
void take_prices(PriceBook& book, Wishes& wishes, const PriceCsv& csv);

}  // namespace underlawn
