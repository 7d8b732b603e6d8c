// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/header_design.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "base/quantity.h"
#include "flow/even_flow.h"

namespace underlawn {
namespace {

constexpr double kPolyethyleneDensity = 955;  // kg/m3, of makers' weights of pipe
constexpr std::size_t kMostGroups = 12;       // steps sized on their own
constexpr std::size_t kMostSolved = 200;      // likely sizes solved in full
// How far even flows may miss the full solution: they tell the imbalance too large, refined within some
// percent, the head to a thousandth while circuits are near balance, the purge's head to some percent.
constexpr double kLeastHead = 0.01;  // m: a pump asked for more than it can move gives none
constexpr double kBalanceSlack = 3, kRefinedSlack = 1.15, kHeadSlack = 1.002, kPurgeSlack = 1.15;

// Where nothing holds, this much of a limit more to miss is no reason for wider pipe.
constexpr double kNearly = 0.05;

// The share of its limit that something is over it.
double over(double ratio) {
  return std::max(0.0, ratio - 1);
}
// Twice what a cart gives cannot be had by sizes: no matter then how far it is.
double sum_of_misses(double uneven, double heads, double purge) {
  return over(uneven) + over(heads) + std::min(1.0, over(purge));
}

struct Likely {
  double mass = 0, uneven = 0, misses = 0;
  int run = 0;
  std::size_t header = 0;  // in the list of headers looked at
};

double bore_area(double bore) {
  return std::numbers::pi / 4 * bore * bore;
}

// What each circuit's way takes at the design flow after 0, 1, ... groups of the header; then the means of
// that and of the ways when flushed.
struct Ways {
  std::vector<std::vector<double>> design;
  std::vector<double> design_mean, flush_mean;
};

bool lighter(const Likely& a, const Likely& b) {
  if (a.mass != b.mass) return a.mass < b.mass;
  return a.run != b.run ? a.run < b.run : a.header < b.header;
}

class Designer {
 public:
  Designer(const HeaderTree& tree, const Layout& layout, const Wishes& wishes, const FlowWishes& flow)
      : tree_(tree), layout_(layout), wishes_(wishes), flow_(flow) {}

  Result<HeaderChoice> design() {
    if (auto ok = prepare(); !ok) return refuse(ok.error());
    look_at_all();
    std::sort(likely_.begin(), likely_.end(), lighter);
    std::size_t tried = 0;
    for (const Likely& l : likely_) {
      if (!still_likely(l)) continue;
      if (++tried > kMostSolved) break;
      auto choice = solved(l);
      if (!choice || choice->holds()) return choice;
    }
    return nearest_of_all();
  }

 private:
  // ---- what may be chosen ----

  Result<void> prepare() {
    const auto coil = find_pipe(wishes_.pipe), header = find_pipe(wishes_.header_pipe);
    if (!coil) return refuse(coil.error());
    if (!header) return refuse(header.error());
    for (const PipeSize& s : pipe_sizes())
      if (s.dr == header->dr && s.outside_diameter >= coil->outside_diameter - 1e-9) add_size(s);
    if (flow_.arrangement == HeaderArrangement::home_runs) add_size(*coil);
    if (auto ok = add_typed(); !ok) return ok;
    std::stable_sort(all_.sizes.begin(), all_.sizes.end(), [](const PipeSize& a, const PipeSize& b) {
      return a.average_bore() < b.average_bore();
    });
    for (const PipeSize& s : all_.sizes) {
      auto loop = loop_network(tree_, layout_, wishes_, flow_, {s, {s}});
      if (!loop) return refuse(loop.error());
      all_.loops.push_back(std::move(*loop));
    }
    group_pipes();
    const auto fluid = fluid_properties(flow_.fluid, flow_.mass_fraction, flow_.design_temperature);
    if (!fluid) return refuse(fluid.error());
    fluid_ = *fluid;
    const double spread = std::clamp(flow_.most_imbalance, 0.01, 0.5);
    even_.emplace(all_, fluid_, flow_.design_flow, spread);
    flush_flow_ = flow_.purge_velocity *
                  bore_area(all_.loops[0].network.pipes[all_.loops[0].circuits[0]].bore) *
                  static_cast<double>(all_.loops[0].circuits.size());
    flush_.emplace(all_, fluid_properties(Fluid::water, 0, kPurgeTemperature).value(), flush_flow_, spread);
    if (flow_.most_head > 0)
      most_head_ = flow_.most_head;
    else if (!flow_.circulator.curve.empty())
      most_head_ = pump_head(flow_.circulator, flow_.design_flow);
    for (const PipeSize& s : all_.sizes) mass_.push_back(pipe_mass(s));
    for (std::size_t i = 0; i < all_.group.size(); ++i) {
      const double length = all_.loops[0].network.pipes[i].length;
      if (all_.group[i] == -2) run_length_ += length;
      if (all_.group[i] >= 0) lengths_[all_.group[i]] += length;
    }
    return {};
  }

  void add_size(const PipeSize& size) {
    for (const PipeSize& s : all_.sizes)
      if (s.name == size.name) return;
    all_.sizes.push_back(size);
  }

  Result<void> add_typed() {
    std::vector<std::string> names = flow_.header_sizes;
    if (!flow_.run_size.empty()) names.push_back(flow_.run_size);
    for (const std::string& name : names) {
      const auto size = find_pipe(name);
      if (!size) return refuse(size.error());
      add_size(*size);
    }
    return {};
  }

  int index_of(const std::string& name) const {
    for (std::size_t s = 0; s < all_.sizes.size(); ++s)
      if (all_.sizes[s].name == name) return static_cast<int>(s);
    return 0;
  }

  void group_pipes() {
    const LoopNetwork& loop = all_.loops[0];
    const std::size_t steps = std::max<std::size_t>(1, loop.steps.size());
    groups_of_steps_ = flow_.step_down ? std::min(steps, kMostGroups) : 1;
    if (!flow_.header_sizes.empty()) groups_of_steps_ = steps;
    for (const LoopPipe& p : loop.pipes) {
      int group = -1;
      if (p.part == LoopPart::run_supply || p.part == LoopPart::run_return) group = -2;
      if (p.part == LoopPart::lead) group = 0;
      if (p.step >= 0) group = group_of(p.step, steps);
      all_.group.push_back(group);
    }
    all_.groups = static_cast<int>(groups_of_steps_);
    lengths_.assign(groups_of_steps_, 0.0);
    carried_.assign(groups_of_steps_, 0);
    for (std::size_t i = 0; i < loop.pipes.size(); ++i)
      if (const int g = all_.group[i]; g >= 0)
        carried_[g] = carried_[g] == 0 ? loop.pipes[i].carries : std::min(carried_[g], loop.pipes[i].carries);
  }
  int group_of(int step, std::size_t steps) const {
    return static_cast<int>(static_cast<std::size_t>(step) * groups_of_steps_ / steps);
  }

  // ---- all of them, by even flows ----

  void look_at_all() {
    std::vector<int> header;
    const std::size_t levels = all_.groups + 1;
    Ways ways{std::vector<std::vector<double>>(levels, even_->coils()),
              std::vector<double>(levels, even_->mean_coil()),
              std::vector<double>(levels, flush_->mean_coil())};
    if (flow_.header_sizes.empty()) {
      narrow(header, static_cast<int>(all_.sizes.size()) - 1, 0, ways);
      return;
    }
    double mass = 0;
    for (int g = 0; g < all_.groups; ++g) {
      const bool one = !flow_.step_down;
      const std::size_t name = one ? 0 : std::min<std::size_t>(g, flow_.header_sizes.size() - 1);
      header.push_back(index_of(flow_.header_sizes[name]));
      extend(ways, g, header.back());
      mass += lengths_[g] * mass_[header.back()];
    }
    with_runs(header, mass, ways);
  }

  void extend(Ways& ways, int group, int size) const {
    const std::vector<double>&more = even_->way(group, size), &before = ways.design[group];
    std::vector<double>& after = ways.design[group + 1];
    for (std::size_t c = 0; c < more.size(); ++c) after[c] = before[c] + more[c];
    ways.design_mean[group + 1] = ways.design_mean[group] + even_->mean_way(group, size);
    ways.flush_mean[group + 1] = ways.flush_mean[group] + flush_->mean_way(group, size);
  }

  void narrow(std::vector<int>& header, int widest, double mass, Ways& ways) {
    const int group = static_cast<int>(header.size());
    if (group == all_.groups) {
      with_runs(header, mass, ways);
      return;
    }
    for (int size = 0; size <= widest; ++size) {
      header.push_back(size);
      extend(ways, group, size);
      narrow(header, size, mass + lengths_[group] * mass_[size], ways);
      header.pop_back();
    }
  }

  void with_runs(const std::vector<int>& header, double mass, const Ways& ways) {
    const double uneven = even_->imbalance(ways.design.back()) / flow_.most_imbalance;
    if (uneven > kBalanceSlack && over(uneven) > least_miss_ + kNearly) return;
    int low = header[0], high = static_cast<int>(all_.sizes.size()) - 1;
    if (!flow_.run_size.empty()) low = high = index_of(flow_.run_size);
    if (flow_.arrangement == HeaderArrangement::home_runs) high = low;
    headers_.push_back(header);
    for (int run = low; run <= high; ++run) {
      const double head = even_->head(run, ways.design_mean.back());
      const double heads = most_head_ ? head / std::max(*most_head_, kLeastHead) : 0;
      if (heads > kHeadSlack && over(heads) > least_miss_ + kNearly) continue;
      const double purge =
          purge_ratio(run, header, flush_->head(run, ways.flush_mean.back()) - flush_->heat_pump());
      const double misses = sum_of_misses(uneven, heads, purge);
      const Likely likely{mass + run_length_ * mass_[run], uneven, misses, run, headers_.size() - 1};
      least_miss_ = std::min(least_miss_, misses);
      if (misses <= least_miss_ + kNearly) near_.push_back(likely);
      if (uneven <= kBalanceSlack && heads <= kHeadSlack && purge <= kPurgeSlack) likely_.push_back(likely);
    }
  }

  // Head that the purge asks for over what the cart gives, both guessed: flows even, and from `head` at
  // flush_flow_ on as flow^1.8. Home runs can be flushed one by one.
  double purge_ratio(int run, const std::vector<int>& header, double head) const {
    if (flow_.flush_cart.curve.empty()) return 0;
    const bool single = flow_.arrangement == HeaderArrangement::home_runs;
    const auto all = static_cast<double>(all_.loops[0].circuits.size());
    const auto flow_for = [&](int size, double share) {
      return flow_.purge_velocity * bore_area(all_.sizes[size].average_bore()) * share;
    };
    double flow = std::max(flush_flow_, run_length_ > 0 ? flow_for(run, 1) : 0);
    for (std::size_t g = 0; g < header.size(); ++g)
      if (carried_[g] > 0) flow = std::max(flow, flow_for(header[g], all / carried_[g]));
    const double given = pump_head(flow_.flush_cart, single ? flow / all : flow);
    return head * std::pow(flow / flush_flow_, 1.8) / std::max(given, 0.1);
  }

  // ---- the likely ones in full ----

  // The lightest of those that nearly miss least, by full solutions of what even flows tell.
  Result<HeaderChoice> nearest_of_all() {
    std::erase_if(near_, [this](const Likely& l) { return l.misses > least_miss_ + kNearly; });
    std::sort(near_.begin(), near_.end(), lighter);
    if (near_.size() > kMostSolved) near_.resize(kMostSolved);
    std::vector<HeaderChoice> all;
    for (const Likely& l : near_) {
      auto choice = solved(l, true);
      if (!choice) return choice;
      all.push_back(std::move(*choice));
    }
    const auto least = std::min_element(
        all.begin(), all.end(),
        [this](const HeaderChoice& a, const HeaderChoice& b) { return missed_by(a) < missed_by(b); });
    const double enough = missed_by(*least) + kNearly;
    return *std::find_if(all.begin(), all.end(), [&](const HeaderChoice& c) {
      return missed_by(c) <= enough && c.balanced >= least->balanced && c.head_holds >= least->head_holds &&
             c.purge_holds >= least->purge_holds;
    });
  }
  double missed_by(const HeaderChoice& c) const {
    const PurgeRun& p = c.purge();
    const double given = flow_.flush_cart.curve.empty() ? p.head : pump_head(flow_.flush_cart, p.flow);
    return sum_of_misses(c.imbalance / flow_.most_imbalance,
                         c.most_head ? c.head / std::max(*c.most_head, kLeastHead) : 0,
                         c.purge_holds ? 0 : p.head / std::max(given, kLeastHead));
  }

  // Flushed in any case where it is `asked_all`, else only where it holds the rest.
  Result<HeaderChoice> solved(const Likely& l, bool asked_all = false) const {
    const LoopNetwork loop = all_.with(l.run, headers_[l.header]);
    const auto flow = solve_network(loop.network, fluid_, flow_.design_flow);
    if (!flow) return refuse(flow.error());
    HeaderChoice c;
    c.arrangement = flow_.arrangement;
    c.mass = l.mass;
    c.imbalance = imbalance(*flow, loop.circuits);
    c.head = flow->head_loss;
    c.most_head = most_head_;
    c.balanced = c.imbalance <= flow_.most_imbalance;
    c.head_holds = !most_head_ || c.head <= *most_head_;
    c.sizes.run = all_.sizes[l.run];
    const std::size_t steps = std::max<std::size_t>(1, loop.steps.size());
    for (std::size_t step = 0; step < steps; ++step)
      c.sizes.steps.push_back(all_.sizes[headers_[l.header][group_of(static_cast<int>(step), steps)]]);
    if (!asked_all && (!c.balanced || !c.head_holds || !can_flush(loop))) return c;
    const auto purge = purge_loop(loop, flow_);
    if (!purge) return refuse(purge.error());
    c.flushing = *purge;
    c.purge_holds = c.purge().cart_can || flow_.flush_cart.curve.empty();
    return c;
  }

  bool still_likely(const Likely& l) {
    if (l.uneven <= 1 || !even_->has_refined()) return true;
    refined_.resize(headers_.size(), -1);
    if (refined_[l.header] < 0) refined_[l.header] = refined(headers_[l.header]);
    return refined_[l.header] <= kRefinedSlack * flow_.most_imbalance;
  }
  double refined(const std::vector<int>& header) const {
    std::vector<double> ways = even_->coils();
    for (int g = 0; g < all_.groups; ++g)
      for (std::size_t c = 0; c < ways.size(); ++c) ways[c] += even_->way(g, header[g])[c];
    return even_->refined_imbalance(ways, header);
  }

  bool can_flush(const LoopNetwork& loop) const {
    return flow_.arrangement == HeaderArrangement::home_runs || cart_flushes(loop, flow_);
  }

  const HeaderTree& tree_;
  const Layout& layout_;
  const Wishes& wishes_;
  const FlowWishes& flow_;
  SizedLoops all_;
  FluidProperties fluid_;
  std::optional<EvenFlow> even_, flush_;
  std::optional<double> most_head_;
  double run_length_ = 0, flush_flow_ = 0;
  std::size_t groups_of_steps_ = 1;
  std::vector<double> mass_;     // kg/m by size
  std::vector<double> lengths_;  // m by group
  std::vector<int> carried_;     // fewest circuits a pipe of the group carries
  std::vector<std::vector<int>> headers_;
  std::vector<double> refined_;  // imbalance of each header, once it is asked for; -1 before
  std::vector<Likely> likely_, near_;
  double least_miss_ = 1e300;  // guessed, of all
};

}  // namespace

double pipe_mass(const PipeSize& size) {
  const double outside = size.outside_diameter, bore = size.average_bore();
  return kPolyethyleneDensity * (bore_area(outside) - bore_area(bore));
}

Result<HeaderChoice> design_header(const Layout& layout, const Wishes& wishes, const FlowWishes& flow) {
  const auto troubles = flow_troubles(flow);
  if (!troubles.empty()) return refuse(troubles.front());
  const auto tree = header_tree(layout);
  if (!tree) return refuse(tree.error());
  return Designer(*tree, layout, wishes, flow).design();
}

Result<std::vector<HeaderChoice>> header_alternatives(const Layout& layout, const Wishes& wishes,
                                                      const FlowWishes& flow) {
  std::vector<HeaderChoice> all;
  for (auto arrangement :
       {HeaderArrangement::direct_return, HeaderArrangement::reverse_return, HeaderArrangement::home_runs}) {
    FlowWishes w = flow;
    w.arrangement = arrangement;
    // Sizes typed for one arrangement's steps mean nothing to another's.
    if (arrangement != flow.arrangement) w.header_sizes.clear();
    auto choice = design_header(layout, wishes, w);
    if (!choice) return refuse(choice.error());
    all.push_back(std::move(*choice));
  }
  return all;
}

}  // namespace underlawn
