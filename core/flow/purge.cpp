// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/purge.h"

#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "base/say.h"
#include "flow/network_solver.h"

namespace underlawn {
namespace {

FluidProperties flushing_water() {
  return fluid_properties(Fluid::water, 0, kPurgeTemperature).value();
}

class Flusher {
 public:
  Flusher(const LoopNetwork& loop, const FlowWishes& wishes)
      : loop_(loop),
        wishes_(wishes),
        net_(loop.network),
        solver_(NetworkSolver::of(net_, flushing_water())) {}

  Result<PurgeRun> run() {
    const double start = guess();
    if (auto ok = at(start); !ok) return refuse(ok.error());
    const double flow = least_flow(start);
    if (auto ok = at(flow); !ok) return refuse(ok.error());
    PurgeRun r;
    r.flow = flow;
    r.head = head();
    r.slowest = slowest();
    r.circuits_time = wishes_.purge_volumes * longest_passage();
    r.time = std::max(r.circuits_time, kPurgeHold);
    if (wishes_.flush_cart.curve.empty()) return r;
    const auto duty = duty_point(wishes_.flush_cart, [this](double q) { return at(q) ? head() : 1e9; });
    if (duty) r.cart = *duty;
    r.cart_can = duty && duty->flow >= flow;
    return r;
  }

  // There is a flow at which no pipe is too slow and the cart still gives the head: looked for from the
  // guess, towards the side that is short, for velocities go nearly as the flow.
  bool cart_can() {
    double flow = guess();
    for (int i = 0; i < 20; ++i) {
      if (!at(flow)) return false;
      const double slow = solver_->velocity(slowest()) / wishes_.purge_velocity - 1;
      const bool fast = slow >= 0, strong = pump_head(wishes_.flush_cart, flow) >= head();
      if (fast == strong) return fast;
      const double next = flow / (1 + slow);
      if (fast && slow < 1e-9) return false;
      flow = fast ? next : next * (1 + 1e-6);
    }
    const auto ran = run();
    return ran && ran->cart_can;
  }

 private:
  Result<void> at(double flow) {
    return solver_ ? solver_->solve(flow) : Result<void>(refuse(solver_.error()));
  }

  // The heat pump is flushed on its own.
  double head() const { return solver_->head_loss() - solver_->head_loss(0); }

  // The pipe that flows slowest; the heat pump is none.
  int slowest() const {
    std::size_t least = 1;
    for (std::size_t i = 2; i < net_.pipes.size(); ++i)
      if (solver_->velocity(i) < solver_->velocity(least)) least = i;
    return static_cast<int>(least);
  }

  // What every pipe would ask for if circuits shared evenly.
  double guess() const {
    double most = 0;
    const int all = static_cast<int>(loop_.circuits.size());
    for (std::size_t i = 1; i < net_.pipes.size(); ++i) {
      const double area = std::numbers::pi / 4 * net_.pipes[i].bore * net_.pipes[i].bore;
      most = std::max(most, wishes_.purge_velocity * area * all / loop_.pipes[i].carries);
    }
    return most;
  }

  double slowness(double flow) {
    if (!at(flow)) return -1;
    return solver_->velocity(slowest()) / wishes_.purge_velocity - 1;
  }

  double least_flow(double start) {
    double low = start, high = start, at_low = slowness(start), at_high = at_low;
    for (int i = 0; i < 40 && at_low > 0; ++i) at_low = slowness(low /= 1.3);
    for (int i = 0; i < 40 && at_high < 0; ++i) at_high = slowness(high *= 1.3);
    if (low == high || at_low > 0 || at_high < 0) return high;
    std::uintmax_t steps = 60;
    const auto bracket =
        boost::math::tools::toms748_solve([this](double q) { return slowness(q); }, low, high, at_low,
                                          at_high, boost::math::tools::eps_tolerance<double>(30), steps);
    return bracket.second;
  }

  // s that the liquid takes through the slowest circuit, leads included.
  double longest_passage() const {
    std::vector<std::pair<int, double>> times;  // by trench
    for (std::size_t i = 1; i < net_.pipes.size(); ++i) {
      const int trench = loop_.pipes[i].trench;
      if (trench == 0) continue;
      auto it = std::find_if(times.begin(), times.end(), [&](const auto& t) { return t.first == trench; });
      if (it == times.end()) it = times.insert(times.end(), {trench, 0.0});
      it->second += net_.pipes[i].length / solver_->velocity(i);
    }
    double most = 0;
    for (const auto& t : times) most = std::max(most, t.second);
    return most;
  }

  const LoopNetwork& loop_;
  const FlowWishes& wishes_;
  const Network& net_;
  Result<NetworkSolver> solver_;
};

// Heat pump, then the pipes of one trench alone, on nodes of its own.
LoopNetwork only(const LoopNetwork& loop, int trench) {
  LoopNetwork one;
  one.network.inlet = 0;
  one.network.outlet = 1;
  std::vector<int> node(loop.network.nodes, -1);
  node[loop.network.inlet] = 0;
  node[loop.network.outlet] = 1;
  one.network.nodes = 2;
  const auto renumbered = [&](int n) { return node[n] < 0 ? node[n] = one.network.nodes++ : node[n]; };
  for (std::size_t i = 0; i < loop.pipes.size(); ++i) {
    if (i > 0 && loop.pipes[i].trench != trench) continue;
    NetPipe p = loop.network.pipes[i];
    p.from = renumbered(p.from);
    p.to = renumbered(p.to);
    one.network.pipes.push_back(std::move(p));
    one.pipes.push_back(loop.pipes[i]);
  }
  one.circuits = {1};
  return one;
}

// Of all circuits the flow and head that serve each in turn.
Result<PurgeRun> one_by_one(const LoopNetwork& loop, const FlowWishes& wishes) {
  PurgeRun worst;
  worst.cart_can = !wishes.flush_cart.curve.empty();
  for (int circuit : loop.circuits) {
    const LoopNetwork one = only(loop, loop.pipes[circuit].trench);
    auto run = Flusher(one, wishes).run();
    if (!run) return run;
    worst.time += run->time;
    worst.cart_can = worst.cart_can && run->cart_can;
    worst.circuits_time = std::max(worst.circuits_time, run->circuits_time);
    if (run->head <= worst.head) continue;
    worst.flow = run->flow;
    worst.head = run->head;
    worst.cart = run->cart;
    worst.slowest = circuit;
  }
  return worst;
}

}  // namespace

Result<Purge> purge_loop(const LoopNetwork& loop, const FlowWishes& w) {
  if (!(w.purge_velocity > 0 && w.purge_velocity <= 5))
    return refuse({"purge_velocity_out_of_bounds", say("Purge velocity"),
                   print_quantity(Quantity::velocity, w.purge_velocity, UnitSystem::metric),
                   say("more than 0 m/s and at most 5 m/s"),
                   say("2 ft/s (0.61 m/s) carries air down and out.")});
  const auto together = Flusher(loop, w).run();
  if (!together) return refuse(together.error());
  Purge purge{*together, {}};
  if (w.arrangement != HeaderArrangement::home_runs || loop.circuits.size() < 2) return purge;
  const auto single = one_by_one(loop, w);
  if (!single) return refuse(single.error());
  purge.one_by_one = *single;
  return purge;
}

bool cart_flushes(const LoopNetwork& loop, const FlowWishes& w) {
  return w.flush_cart.curve.empty() || Flusher(loop, w).cart_can();
}

}  // namespace underlawn
