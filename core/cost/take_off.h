// SPDX-License-Identifier: GPL-3.0-or-later
// What the drawn loop takes, counted: before anything is rounded up to what is sold, and without a price.
#pragma once

#include <string>
#include <vector>

#include "cost/estimate.h"
#include "cost/pricing.h"
#include "flow/hydraulics.h"

namespace underlawn {

enum class BillGroup { pipe, fittings, goods, work, own };
inline constexpr int kBillGroups = 5;

struct Need {
  std::string key;  // of the price book
  BillGroup group = BillGroup::goods;
  double amount = 0;              // units of the book's row, > 0
  std::vector<double> pieces;     // where each has to come whole out of what is sold
  std::string how;                // "2 at each crossing of a loop, 61 loops"
  std::vector<std::string> from;  // keys of figures
  bool for_coils = false;         // pipe: cut for the coils
  bool operator==(const Need&) const = default;
};

struct JobDrawn {
  const Layout& layout;
  const DigPlan& dig;
  const Wishes& wishes;
  const FlowWishes& flow;
  const Flow* solved;        // null: pipe by the drawing's lengths, no fittings and no antifreeze
  const Estimate& estimate;  // of the same sides
  bool sloped = false;
};

// In the order of a bill: pipe, fittings, goods, work. Tails, tees and elbows as the network has them.
std::vector<Need> take_off(const JobDrawn& job, const Pricing& pricing);

// ---- its parts ----

// Fittings by key, with how many: tees where three pipes meet, reducers where sizes change, elbows at the
// corners of header and run (22.5 degrees and more, in both pipes) and at the last circuit, two unions.
std::vector<std::pair<std::string, int>> count_fittings(const LoopNetwork& loop, const Layout& layout,
                                                        HeaderArrangement arrangement);

}  // namespace underlawn
