// SPDX-License-Identifier: GPL-3.0-or-later
// How large the field has to be, found by solving it at one size after another, hour by hour for the design
// life; with other ways to the same end and the classic equations beside it.
#pragma once

#include <functional>
#include <optional>
#include <stop_token>
#include <vector>

#include "plan/sizing/field_size.h"
#include "thermal/classic_lengths.h"

namespace underlawn {

struct Alternative {
  enum class Kind { coil_length, deeper, wider } kind = Kind::coil_length;
  double amount = 0;               // m: coil length a trench, or what is added to depth or spacing
  Wishes wishes;                   // of the plan that has it, circuits set to what is needed
  std::optional<FieldSize> size;   // the smallest that holds both limits
  std::optional<Trouble> refusal;  // why there is none
};

struct LoopSizing {
  std::string fingerprint;          // of the plan it is for
  FieldSize drawn;                  // as the plan stands; no circuits where nothing is laid
  std::optional<FieldSize> needed;  // smallest number of the plan's own coils that holds both limits
  std::optional<Trouble> refusal;   // why there is none
  std::optional<FieldSize> given;   // where the lot does not take `needed`: as many as it takes
  // Of the drawn number: the least pipe a coil, in the same trenches, that holds both limits; to 0.5 m.
  std::optional<double> least_coil;
  std::optional<Trouble> least_coil_refusal;
  std::vector<Alternative> alternatives;
  ClassicLengths classic;   // of the drawn loop; where nothing is laid, of as many on open ground
  double classic_pipe = 0;  // m of pipe in the ground that the classic lengths stand beside
};

// 0..1 and what is being tried; called on the thread of size_loop.
using SizingProgress = std::function<void(double, const std::string&)>;

// Refuses plans with troubles that stop the temperatures, and a limit that the untouched ground at the pipe
// is itself beyond in an hour that asks for the unit: no size can hold that. Asked to stop, refuses with the
// code "sizing_stopped". The design flow stays the plan's at every size. Deterministic.
Result<LoopSizing> size_loop(const Plan& plan, const SizingProgress& progress = {},
                             std::stop_token stop = {});

// The plan with an alternative's wishes, or with the number needed.
Plan with_wishes(Plan plan, const Wishes& wishes);

}  // namespace underlawn
