// SPDX-License-Identifier: GPL-3.0-or-later
// What of the drawing is shown. Part of the window, not of the plan: sheets always show everything.
#pragma once

#include "plan/plan.h"

namespace underlawn {

struct Layers {
  unsigned hidden_kinds = 0;  // a bit for each FeatureKind
  bool loop = true;           // trenches, header, run
  bool dimensions = true;

  bool shows(FeatureKind kind) const { return (hidden_kinds >> static_cast<unsigned>(kind) & 1U) == 0; }
  void show(FeatureKind kind, bool on) {
    const unsigned bit = 1U << static_cast<unsigned>(kind);
    hidden_kinds = on ? hidden_kinds & ~bit : hidden_kinds | bit;
  }
  bool all() const { return *this == Layers{}; }
  bool operator==(const Layers&) const = default;
};

// The plan without what is hidden: what can be seen, picked and caught.
Plan shown_part(Plan plan, const Layers& layers);

}  // namespace underlawn
