// SPDX-License-Identifier: GPL-3.0-or-later
// Valves that bring the circuits' flows nearer to one another.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "flow/network_solver.h"
#include "plan/record/as_built_mends.h"

namespace underlawn {

namespace {

double area(const NetPipe& p) {
  return std::numbers::pi / 4 * p.bore * p.bore;
}

// Moves K step by step: what a circuit takes too much is taken by its valve, at the head it has too much.
// Converges for the losses of valves rise with the square of the flow, those of coils less steeply.
class Valves {
 public:
  Valves(const Flow& flow, const FlowWishes& wishes, double most)
      : wishes_(wishes), most_(most), loop_(flow.loop), k_(loop_.circuits.size(), 0) {}

  Result<FlowState> balance() {
    auto state = flow_state(loop_, wishes_, wishes_.design_temperature);
    // A little inside, so that rounding does not undo it.
    for (int i = 0; i < 200 && state && state->imbalance > 0.98 * most_; ++i) {
      close_most(*state);
      state = flow_state(loop_, wishes_, wishes_.design_temperature);
    }
    return state;
  }

  const std::vector<double>& k() const { return k_; }
  const LoopNetwork& loop() const { return loop_; }
  std::vector<double> heads(const FlowState& s) const {
    std::vector<double> all;
    for (std::size_t c = 0; c < k_.size(); ++c) {
      const PipeFlow& p = s.flow.pipes[pipe(c)];
      all.push_back(k_[c] * p.velocity * p.velocity / (2 * kGravity));
    }
    return all;
  }

 private:
  std::size_t pipe(std::size_t circuit) const { return static_cast<std::size_t>(loop_.circuits[circuit]); }

  // The circuit that takes most gets the valve that would bring it half-way to the one that takes least.
  void close_most(const FlowState& s) {
    std::size_t most = 0, least = 0;
    const auto flow = [&](std::size_t c) { return std::abs(s.flow.pipes[pipe(c)].flow); };
    for (std::size_t c = 1; c < k_.size(); ++c) {
      if (flow(c) > flow(most)) most = c;
      if (flow(c) < flow(least)) least = c;
    }
    NetPipe& p = loop_.network.pipes[pipe(most)];
    const double wanted = (flow(most) + flow(least)) / 2, velocity = wanted / area(p);
    const double loss = std::abs(s.flow.pipes[pipe(most)].head_loss);
    const double spare = loss * (1 - wanted / flow(most));
    const double more = spare * 2 * kGravity / (velocity * velocity);
    k_[most] += more;
    p.fittings += more;
  }

  const FlowWishes& wishes_;
  double most_;
  LoopNetwork loop_;
  std::vector<double> k_;
};

// Where the circulator meets the loop; nothing without one, or where they do not meet.
std::optional<PumpState> pump_of(const LoopNetwork& loop, const FlowState& s, const FlowWishes& w) {
  if (w.circulator.curve.empty()) return std::nullopt;
  auto solver = NetworkSolver::of(loop.network, s.fluid);
  if (!solver) return std::nullopt;
  const auto duty =
      duty_point(w.circulator, [&](double q) { return solver->solve(q) ? solver->head_loss() : 1e9; });
  if (!duty) return std::nullopt;
  PumpState p;
  p.duty = *duty;
  p.w_per_kw = 1000 * duty->power / w.capacity;
  p.grade = pump_grade(duty->power, w.capacity);
  return p;
}

}  // namespace

Result<Throttled> throttled(const Flow& flow, const FlowWishes& wishes, double most) {
  Valves valves(flow, wishes, most);
  auto design = valves.balance();
  if (!design) return refuse(design.error());
  auto coldest = flow_state(valves.loop(), wishes, wishes.coldest_temperature);
  if (!coldest) return refuse(coldest.error());
  Throttled made{valves.k(), valves.heads(*design), flow};
  made.flow.loop = valves.loop();
  made.flow.pump = pump_of(valves.loop(), *design, wishes);
  made.flow.coldest_pump = pump_of(valves.loop(), *coldest, wishes);
  made.flow.design = std::move(*design);
  made.flow.coldest = std::move(*coldest);
  made.flow.remedies.clear();
  return made;
}

}  // namespace underlawn
