// SPDX-License-Identifier: GPL-3.0-or-later
// What the drawn loop takes, counted: before anything is rounded up to what is sold, and without a price.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "cost/job_work.h"
#include "cost/packs.h"
#include "cost/price_book.h"
#include "flow/hydraulics.h"

namespace underlawn {

inline constexpr double kPipeAllowance = 0.05;  // of header and run pipe: cuts, joints, snaking

enum class BillGroup { pipe, fittings, goods, work, own };
inline constexpr int kBillGroups = 5;

struct Need {
  std::string key;  // of the price book
  BillGroup group = BillGroup::goods;
  double amount = 0;               // units of the book's row, > 0
  std::vector<double> pieces;      // where each has to come whole out of what is sold
  std::vector<std::string> names;  // of the pieces: "coil of trench 3"
  std::string how;                 // "2 at each crossing of a loop, 61 loops"
  std::vector<std::string> from;   // keys of figures
  bool for_coils = false;          // pipe: cut for the coils
  bool operator==(const Need&) const = default;
};

struct JobDrawn {
  const Layout& layout;
  const DigPlan& dig;
  const Wishes& wishes;
  const FlowWishes& flow;  // with the ends of the coils, as they are cut, for tails (plan/coil_ends.h)
  const Flow* solved;      // null: pipe by the drawing's lengths, no fittings and no antifreeze
};

// In the order of a bill: pipe, fittings, goods, work. Tails, tees and elbows as the network has them.
std::vector<Need> take_off(const JobDrawn& job, const JobWork& work, const Pricing& pricing);

// ---- its parts ----

// m of pipe, piece by piece, with what is added for spare and cuts.
struct PipePieces {
  std::vector<double> coils;                            // by number of the trench; both ends included
  std::map<std::string, std::vector<double>> conduits;  // of header and run, supply and return, by size
};
PipePieces pipe_pieces(const JobDrawn& job, const Counting& counting);

// Of coils, header and run.
std::vector<Need> take_off_pipe(const JobDrawn& job, const Pricing& pricing);
// What is bought of the row to cover it. Header and run are joined where no roll is as long as a piece.
Bought bought_of(const Need& need, const PriceRow& row);

// Where a fitting comes: at the heat pump, at heads of coil trenches, where nothing but header pipes meet, at
// the corners of the run and of the header.
enum class FittingPlace { house, heads, junction, run_bends, header_bends };
struct FittingAt {
  std::string key;
  FittingPlace place = FittingPlace::house;
  std::vector<int> trenches;  // numbers, rising; of heads only
  int count = 0;
  bool operator==(const FittingAt&) const = default;
};
struct FittingCount {
  std::vector<std::pair<std::string, int>> fittings;  // by key
  int joints = 0;                                     // fused: joints.h
  std::vector<FittingAt> placed;                      // the same place by place; by key, then by place
};
// Tees where three pipes meet, reducers where sizes change, elbows at the corners of header and run (22.5
// degrees and more, in both pipes) and at the last circuit, two unions.
FittingCount count_fittings(const LoopNetwork& loop, const Layout& layout, HeaderArrangement arrangement);

}  // namespace underlawn
