// SPDX-License-Identifier: GPL-3.0-or-later
// What would bring the circuits that found no room, each worked out in full.
#pragma once

#include "plan/ways.h"

namespace underlawn {

struct MoreRoom {
  enum class Kind {
    way,        // laid another way
    let_go,     // something that the designer holds
    give_up,    // a no-dig area
    setback,    // lessened no more than it must be
    clearance,  // the same
    pair,       // two of the last four at once, where no one of them brings all
  } kind = Kind::way;
  bool lessens_rule = false;  // a setback or clearance
  std::string sentence;       // in the plan's units: "10'-0" instead of 25'-0" kept free about Septic tank"
  Plan plan;                  // with it
  int circuits = 0;
  double cost = 0;     // currency, sides vertical
  double dearer = 0;   // than the plan as it stands
  bool holds = false;  // the temperatures, as Way has it
};

// A rule is lessened, and those who made it are to be asked first.
constexpr bool asks_leave(const MoreRoom& r) {
  return r.lessens_rule;
}

inline constexpr std::size_t kMostRemedies = 5;
inline constexpr int kMostPairsTried = 60;  // layouts, and so the time it takes
inline constexpr std::size_t kMostPairs = 2;

// The cheapest of those that bring most of the missing circuits, at most kMostRemedies: other ways to lay the
// loop, each thing that is held let go, each no-dig area given up, and each setback and clearance that alone
// costs a trench, lessened as little as will do (within 5 cm). Where none of these but another way brings all
// that are missing, two of them at once that bring more than either: of kMostPairsTried pairs, dearest first,
// the best kMostPairs. The root zone of a tree is left as it is. Empty where none is missing, none was found,
// or the plan's troubles stop the layout. Takes some seconds; asked to stop, what it gives is to be thrown
// away.
std::vector<MoreRoom> remedies_of(const Plan& plan, const WaysProgress& progress = {},
                                  std::stop_token stop = {});

}  // namespace underlawn
