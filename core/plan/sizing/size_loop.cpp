// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/sizing/size_loop.h"

#include "base/say.h"
#include "plan/fingerprint.h"
#include "plan/plan_troubles.h"
#include "plan/sizing/alternatives.h"
#include "plan/sizing/limits.h"
#include "plan/sizing/smallest_field.h"

namespace underlawn {

namespace {

Trouble stopped() {
  return {"sizing_stopped", say("The sizing"), say_as("of work", "stopped"), say("run to its end"),
          say("Start it again.")};
}

Trouble nothing_holds(const Plan& plan) {
  const auto shown = [&](double t) { return print_quantity(Quantity::temperature, t, plan.units); };
  return {"no_size_holds", say("The field"), say("up to {} such coils", std::to_string(kMostCircuitsTried)),
          say("large enough to keep the water within {} and {}", shown(plan.thermal.coldest_allowed),
              shown(plan.thermal.warmest_allowed)),
          say("Put more pipe in a coil, dig deeper, or widen the limits.")};
}

std::optional<Trouble> what_stops(const Plan& plan) {
  for (auto part : {site_troubles(plan), wishes_troubles(plan), heat_troubles(plan), fluid_troubles(plan)})
    if (!part.empty()) return part.front();
  return std::nullopt;
}

class Sizing {
 public:
  Sizing(const Plan& plan, const SizingProgress& progress, std::stop_token stop)
      : plan_(plan),
        progress_(progress),
        stop_(std::move(stop)),
        surroundings_(*make_surroundings(plan.thermal)) {}

  Result<LoopSizing> run() {
    const auto coil = coil_of(plan_.wishes, plan_.units);
    if (!coil) return refuse(coil.error());
    if (const auto beyond = beyond_the_ground(plan_, surroundings_)) return refuse(*beyond);
    out_.fingerprint = fingerprint(plan_);
    tell(0, say("the loop as drawn"));
    FieldTrials trials(plan_, *coil, surroundings_, shelf_, stop_);
    out_.drawn = trials.placed(plan_.wishes.circuits);
    tell(0.05, say("one number of circuits after another"));
    find_needed(trials);
    set_classic(trials);
    tell(0.25, say("the least pipe in the drawn trenches"));
    find_least_coil(trials, *coil);
    find_alternatives(*coil);
    if (stop_.stop_requested()) return refuse(stopped());
    return std::move(out_);
  }

 private:
  void tell(double share, const std::string& what) const {
    if (progress_) progress_(share, what);
  }
  void find_needed(FieldTrials& trials) {
    const SmallestField found = smallest_field(trials, plan_.thermal, stop_);
    out_.needed = found.size;
    out_.given = found.given;
    if (!found.size) out_.refusal = nothing_holds(plan_);
  }

  void find_least_coil(FieldTrials& trials, const Coil& coil) {
    if (out_.drawn.circuits == 0) return;
    const auto least = least_coil_length(trials, plan_, coil, stop_);
    if (least)
      out_.least_coil = *least;
    else
      out_.least_coil_refusal = least.error();
  }

  void set_classic(FieldTrials& trials) {
    const Temperatures laid = trials.temperatures(plan_.wishes.circuits);
    out_.classic = classic_lengths(laid, surroundings_, plan_.thermal);
    out_.classic_pipe = laid.pipe;
  }

  void size(Alternative& a) {
    Plan plan = with_wishes(plan_, a.wishes);
    if (const auto trouble = what_stops(plan)) return void(a.refusal = trouble);
    const auto coil = coil_of(a.wishes, plan.units);
    if (!coil) return void(a.refusal = coil.error());
    if (const auto beyond = beyond_the_ground(plan, surroundings_)) return void(a.refusal = beyond);
    FieldTrials trials(plan, *coil, surroundings_, shelf_, stop_);
    a.size = smallest_field(trials, plan.thermal, stop_).size;
    if (a.size)
      a.wishes.circuits = a.size->circuits;
    else
      a.refusal = nothing_holds(plan);
  }

  void find_alternatives(const Coil& coil) {
    out_.alternatives = alternatives_to(plan_, coil);
    const auto n = static_cast<double>(out_.alternatives.size());
    for (std::size_t i = 0; i < out_.alternatives.size() && !stop_.stop_requested(); ++i) {
      tell(0.4 + 0.6 * static_cast<double>(i) / n, say("other ways to the same end"));
      size(out_.alternatives[i]);
    }
  }

  const Plan& plan_;
  const SizingProgress& progress_;
  std::stop_token stop_;
  Surroundings surroundings_;
  KernelShelf shelf_;
  LoopSizing out_;
};

}  // namespace

Plan with_wishes(Plan plan, const Wishes& wishes) {
  plan.wishes = wishes;
  return plan;
}

Result<LoopSizing> size_loop(const Plan& plan, const SizingProgress& progress, std::stop_token stop) {
  if (const auto trouble = what_stops(plan)) return refuse(*trouble);
  return Sizing(plan, progress, std::move(stop)).run();
}

}  // namespace underlawn
