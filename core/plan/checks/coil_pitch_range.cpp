// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "pipe/pipe_size.h"
#include "plan/checks/measure.h"
#include "plan/checks/rules.h"

namespace underlawn::checks {

namespace {

// Loops closer than this lie on one another at their sides, and the sand no longer gets between them.
constexpr double kLeastPitchInDiameters = 4;

Finding found(const std::string& part, std::string title, double measured, double required,
              std::string advice) {
  Finding f = make_finding("coil_pitch_range", part, Severity::warning, std::move(title));
  set_measure(f, measured, required);
  f.advice = std::move(advice);
  f.source = say("common practice, no source");
  return f;
}

}  // namespace

std::vector<Finding> coil_pitch_range(const Plan& plan, const Outcome& outcome) {
  const Coil& coil = outcome.coil;
  if (coil.loops <= 0) return {};
  if (falls_short(coil.loop_diameter, coil.pitch))
    return {found("wide", say("The loops do not overlap"), coil.pitch, coil.loop_diameter,
                  say("A longer coil or a shorter trench closes the pitch; loops usually overlap."))};
  const auto pipe = find_pipe(plan.wishes.pipe);
  if (!pipe) return {};
  const double least = kLeastPitchInDiameters * pipe->outside_diameter;
  if (!falls_short(coil.pitch, least)) return {};
  return {found(
      "tight", say("The loops lie too tight"), coil.pitch, least,
      say("A shorter coil or a longer trench opens the pitch, so that bedding gets between the loops."))};
}

}  // namespace underlawn::checks
