// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/loop_network.h"

#include <algorithm>
#include <map>
#include <numbers>

#include "base/quantity.h"
#include "base/say.h"
#include "flow/fittings.h"

namespace underlawn {
namespace {

constexpr double kRoughness = 1.5e-6;  // m, the least of 1.5e-6 to 7e-6 in tables for PVC and PE
constexpr double kStub = 0.1;          // m: the least length of a pipe, so that heads tell its flow

// Where liquid comes from and goes back to.
struct Pair {
  int supply, back;
};

// K that makes `loss` out of a pipe of this bore.
double k_of(const FittedLoss& loss, double bore) {
  if (loss.head <= 0) return 0;
  const double v = loss.flow / (std::numbers::pi / 4 * bore * bore);
  return loss.head * 2 * kGravity / (v * v);
}

class Builder {
 public:
  Builder(const HeaderTree& tree, const Layout& layout, const FlowWishes& flow, const HeaderSizes& sizes,
          const PipeSize& coil)
      : tree_(tree), layout_(layout), flow_(flow), sizes_(sizes), coil_(coil) {
    made_.circuits.assign(layout.trenches.size(), -1);
  }

  LoopNetwork build() {
    const int inlet = node(), outlet = node(), out = node();
    made_.network.inlet = inlet;
    made_.network.outlet = outlet;
    add_heat_pump(inlet, out);
    if (flow_.arrangement == HeaderArrangement::home_runs)
      home_runs({out, outlet});
    else
      run_and_header({out, outlet});
    made_.network.nodes = nodes_;
    number_steps();
    size_header();
    return std::move(made_);
  }

 private:
  int node() { return nodes_++; }

  int add(LoopPart part, int carries, const PipeSize& size, int from, int to, double length,
          double fittings) {
    NetPipe p;
    p.from = from;
    p.to = to;
    p.length = std::max(length, kStub);
    p.bore = size.average_bore();
    p.roughness = kRoughness;
    p.fittings = fittings;
    p.name = loop_part_name(part);
    made_.network.pipes.push_back(std::move(p));
    made_.pipes.push_back({part, 0, carries, -1, size});
    return static_cast<int>(made_.pipes.size()) - 1;
  }

  void name_for(int pipe, const Trench& t, const std::string& name) {
    made_.pipes[pipe].trench = t.number;
    made_.network.pipes[pipe].name = name;
  }

  void add_heat_pump(int inlet, int out) {
    const double bore = sizes_.run.average_bore();
    const double k = k_of(flow_.heat_pump, bore) + k_of(flow_.hose_kit, bore) + flow_.valves_k;
    add(LoopPart::heat_pump, tree_[0].feeds, sizes_.run, inlet, out, kStub, k);
  }

  // Tee or elbow at each end of the tails.
  void circuit(int trench, Pair at, TwoK joint, double extra_tail = 0) {
    const Trench& t = layout_.trenches[trench];
    const double loops = t.coil.loop_pipe,
                 straight = t.coil.coil_length - loops + 2 * flow_.tail + extra_tail;
    int middle = at.back;
    if (loops > 0) {
      if (straight > 0) middle = node();
      const int pipe = add(LoopPart::circuit, 1, coil_, at.supply, middle, loops, 0);
      made_.network.pipes[pipe].coil_diameter = t.coil.loop_diameter;
      name_for(pipe, t, say("circuit {} loops", t.number));
      made_.circuits[trench] = pipe;
    }
    const double k = 2 * fitting_k(joint, coil_.average_bore());
    if (straight > 0 || loops <= 0) {
      const int pipe = add(LoopPart::circuit, 1, coil_, loops > 0 ? middle : at.supply, at.back, straight, k);
      name_for(pipe, t,
               loops > 0 ? say("circuit {} return and tails", t.number) : say("circuit {}", t.number));
      if (loops <= 0) made_.circuits[trench] = pipe;
    } else {
      made_.network.pipes.back().fittings = k;
    }
  }

  // ---- each circuit on its own ----

  void home_runs(Pair manifold) {
    for (std::size_t tee = 0; tee < tree_.size(); ++tee) {
      double length = 0;
      int bends_45 = 0, bends_90 = 0;
      for (int at = static_cast<int>(tee); at >= 0; at = tree_[at].parent) {
        length += tree_[at].length;
        bends_45 += tree_[at].bends_45;
        bends_90 += tree_[at].bends_90;
      }
      for (int trench : tree_[tee].trenches) lead_and_circuit(trench, manifold, length, bends_45, bends_90);
    }
  }

  void lead_and_circuit(int trench, Pair manifold, double length, int bends_45, int bends_90) {
    const PipeSize& size = sizes_.steps[0];
    const double bore = size.average_bore();
    const double bends = bends_45 * fitting_k(kElbow45, bore) + bends_90 * fitting_k(kElbow90, bore);
    const double k = bends + fitting_k(kTeeAsElbow, bore);
    const Pair far{node(), node()};
    const Trench& t = layout_.trenches[trench];
    name_for(add(LoopPart::lead, 1, size, manifold.supply, far.supply, length, k), t,
             say("circuit {} lead out", t.number));
    circuit(trench, far, kElbow90);
    name_for(add(LoopPart::lead, 1, size, far.back, manifold.back, length, k), t,
             say("circuit {} lead back", t.number));
  }

  // ---- one run, one header ----

  void run_and_header(Pair house) {
    const double bore = sizes_.run.average_bore();
    const double k = bends_of(tree_[0], bore);
    const Pair first{node(), node()};
    add(LoopPart::run_supply, tree_[0].feeds, sizes_.run, house.supply, first.supply, tree_[0].length, k);
    if (flow_.arrangement == HeaderArrangement::reverse_return)
      reverse_from_run(first);
    else
      direct(0, first);
    add(LoopPart::run_return, tree_[0].feeds, sizes_.run, first.back, house.back, tree_[0].length, k);
  }

  static double bends_of(const Tee& tee, double bore) {
    return tee.bends_45 * fitting_k(kElbow45, bore) + tee.bends_90 * fitting_k(kElbow90, bore);
  }

  // Bore comes with the step, so fittings of header pieces are counted first and become K in size_header.
  struct Joints {
    int pipe, bends_45, bends_90;
    TwoK tee;
  };

  void header_piece(LoopPart part, int carries, int from, int to, const Tee& way, TwoK tee) {
    const int pipe = add(part, carries, sizes_.run, from, to, way.length, 0);
    joints_.push_back({pipe, way.bends_45, way.bends_90, tee});
  }

  // Straight on through the tee, or out of its branch where it feeds more than one leg.
  TwoK joint_of(int from, std::size_t onward) const {
    return onward == 0 && !(from == 0 && tree_[0].onward.size() > 1) ? kTeeRun : kTeeAsElbow;
  }
  TwoK circuit_joint(const Tee& tee) const {
    return tee.onward.empty() && tee.trenches.size() == 1 ? kElbow90 : kTeeAsElbow;
  }

  void direct(int at, Pair here) {
    const Tee& tee = tree_[at];
    for (int trench : tee.trenches) circuit(trench, here, circuit_joint(tee));
    for (std::size_t i = 0; i < tee.onward.size(); ++i) {
      const Tee& next = tree_[tee.onward[i]];
      const Pair there{node(), node()};
      const TwoK joint = joint_of(at, i);
      header_piece(LoopPart::header_supply, next.feeds, here.supply, there.supply, next, joint);
      direct(tee.onward[i], there);
      header_piece(LoopPart::header_return, next.feeds, there.back, here.back, next, joint);
    }
  }

  // Each leg from the run's end has its own return, so that it comes back where it began. A circuit right at
  // the run's end goes with the leg that feeds fewest.
  void reverse_from_run(Pair here) {
    const Tee& tee = tree_[0];
    if (tee.onward.empty()) {
      for (int trench : tee.trenches) circuit(trench, here, circuit_joint(tee));
      return;
    }
    for (std::size_t i = 0; i < tee.onward.size(); ++i) {
      const bool last = i + 1 == tee.onward.size();
      reverse_leg(tee.onward[i], here, last ? tee.trenches : std::vector<int>{}, joint_of(0, i));
    }
  }

  // One way from `here` along the tees that feed most; the return gathers in the same order and comes back
  // from the far end. What leaves the way is a leg of its own kind, fed and returned at its tee.
  void reverse_leg(int first, Pair here, const std::vector<int>& at_start, TwoK joint) {
    Pair at = here;
    Tee whole;
    int gathered = static_cast<int>(at_start.size());
    bool open = !at_start.empty();  // whether the return header has begun
    if (open) at.back = node();
    for (int trench : at_start) circuit(trench, at, kTeeAsElbow);
    for (int tee = first; tee >= 0;) {
      const Tee& t = tree_[tee];
      const Pair there{node(), node()};
      header_piece(LoopPart::header_supply, t.feeds, at.supply, there.supply, t,
                   tee == first ? joint : kTeeRun);
      if (open) header_piece(LoopPart::header_return, gathered, at.back, there.back, t, kTeeRun);
      whole.length += t.length;
      whole.bends_45 += t.bends_45;
      whole.bends_90 += t.bends_90;
      for (int trench : t.trenches) circuit(trench, there, circuit_joint(t));
      for (std::size_t i = 1; i < t.onward.size(); ++i) side_leg(t.onward[i], there);
      gathered += t.feeds - (t.onward.empty() ? 0 : tree_[t.onward[0]].feeds);
      open = true;
      at = there;
      tee = t.onward.empty() ? -1 : t.onward[0];
    }
    whole.bends_90 += 1;  // the turn at the far end, an elbow more
    header_piece(LoopPart::header_back, gathered, at.back, here.back, whole, joint);
  }

  void side_leg(int first, Pair here) {
    const Tee& t = tree_[first];
    if (t.feeds > 1) {
      reverse_leg(first, here, {}, kTeeAsElbow);
      return;
    }
    // A single circuit a little aside: its tails are longer by the way there and back.
    circuit(t.trenches[0], here, kTeeAsElbow, 2 * t.length);
  }

  // ---- steps ----

  void number_steps() {
    std::vector<int>& steps = made_.steps;
    for (const Joints& j : joints_) steps.push_back(made_.pipes[j.pipe].carries);
    std::sort(steps.rbegin(), steps.rend());
    steps.erase(std::unique(steps.begin(), steps.end()), steps.end());
    std::map<LoopPart, int> made;
    for (const Joints& j : joints_) {
      LoopPipe& pipe = made_.pipes[j.pipe];
      pipe.step = static_cast<int>(std::find(steps.begin(), steps.end(), pipe.carries) - steps.begin());
      made_.network.pipes[j.pipe].name += " " + std::to_string(++made[pipe.part]);
    }
  }

  void size_header() {
    for (const Joints& j : joints_) {
      LoopPipe& pipe = made_.pipes[j.pipe];
      pipe.size = sizes_.steps[std::min<std::size_t>(pipe.step, sizes_.steps.size() - 1)];
      NetPipe& p = made_.network.pipes[j.pipe];
      p.bore = pipe.size.average_bore();
      p.fittings = j.bends_45 * fitting_k(kElbow45, p.bore) + j.bends_90 * fitting_k(kElbow90, p.bore) +
                   fitting_k(j.tee, p.bore);
    }
  }

  const HeaderTree& tree_;
  const Layout& layout_;
  const FlowWishes& flow_;
  const HeaderSizes& sizes_;
  const PipeSize& coil_;
  int nodes_ = 0;
  std::vector<Joints> joints_;
  LoopNetwork made_;
};

Result<PipeSize> size_or(const std::string& typed, const std::string& otherwise) {
  return find_pipe(typed.empty() ? otherwise : typed);
}

}  // namespace

std::string loop_part_name(LoopPart part) {
  switch (part) {
    case LoopPart::heat_pump:
      return say("heat pump");
    case LoopPart::run_supply:
      return say("supply run");
    case LoopPart::run_return:
      return say("return run");
    case LoopPart::header_supply:
      return say("supply header");
    case LoopPart::header_return:
      return say("return header");
    case LoopPart::header_back:
      return say("reverse return");
    case LoopPart::lead:
      return say("lead");
    case LoopPart::circuit:
      return say("circuit");
  }
  return say("unknown");
}

Result<HeaderSizes> typed_sizes(const Wishes& wishes, const FlowWishes& flow) {
  const auto run = size_or(flow.run_size, wishes.header_pipe);
  if (!run) return refuse(run.error());
  HeaderSizes sizes{*run, {}};
  std::vector<std::string> names = flow.header_sizes;
  const bool leads = flow.arrangement == HeaderArrangement::home_runs;
  if (names.empty()) names = {leads ? wishes.pipe : wishes.header_pipe};
  if (!flow.step_down) names.resize(1);
  for (const std::string& name : names) {
    const auto size = find_pipe(name);
    if (!size) return refuse(size.error());
    sizes.steps.push_back(*size);
  }
  return sizes;
}

Result<LoopNetwork> loop_network(const HeaderTree& tree, const Layout& layout, const Wishes& wishes,
                                 const FlowWishes& flow, const HeaderSizes& sizes) {
  const auto coil = find_pipe(wishes.pipe);
  if (!coil) return refuse(coil.error());
  for (const Trench& t : layout.trenches)
    if (!(t.coil.coil_length > 0))
      return refuse({"flow_no_coil", say("coil length in trench {}", std::to_string(t.number)),
                     print_quantity(Quantity::length, t.coil.coil_length, UnitSystem::metric),
                     say("more than 0 m"), say("Give the coil a length or take the trench out.")});
  return Builder(tree, layout, flow, sizes, *coil).build();
}

Result<LoopNetwork> loop_network(const Layout& layout, const Wishes& wishes, const FlowWishes& flow,
                                 const HeaderSizes& sizes) {
  const auto tree = header_tree(layout);
  if (!tree) return refuse(tree.error());
  return loop_network(*tree, layout, wishes, flow, sizes);
}

LoopVolume volume_of(const LoopNetwork& loop) {
  LoopVolume volume;
  for (std::size_t i = 1; i < loop.pipes.size(); ++i) {
    const PipeSize& size = loop.pipes[i].size;
    const NetPipe& p = loop.network.pipes[i];
    volume.pipes.push_back({p.name, p.bore, size.outside_diameter, size.dr, p.length});
  }
  return volume;
}

}  // namespace underlawn
