// SPDX-License-Identifier: GPL-3.0-or-later
// What a check has to say.
#pragma once

#include <string>
#include <vector>

#include "base/quantity.h"
#include "plane/point.h"

namespace underlawn {

enum class Severity { hint, warning, error };

struct Finding {
  std::string key;   // stable: rule and what it speaks of, "spacing/trench-2/trench-3"; the designer accepts
                     // it by this
  std::string rule;  // "spacing"
  Severity severity = Severity::warning;
  std::string title;    // "Trenches 2 and 3 are too close"
  double measured = 0;  // SI, of `quantity`
  double required = 0;
  Quantity quantity = Quantity::length;
  std::string advice;            // what to do
  std::string source;            // of the requirement
  std::vector<Polyline> places;  // on the lot; a single point is a polyline of one point
  bool accepted = false;
  std::string reason;  // why the designer accepted it
  bool operator==(const Finding&) const = default;
};

}  // namespace underlawn
