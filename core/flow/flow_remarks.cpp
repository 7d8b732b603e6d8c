// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/flow_remarks.h"

#include <algorithm>
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

// Prints in the units of whoever reads.
struct Shown {
  UnitSystem units;
  std::string operator()(Quantity q, double value) const { return print_quantity(q, value, units); }
};

// The next nominal size of the same dimension ratio; the same where there is none.
PipeSize one_wider(const PipeSize& size) {
  for (const PipeSize& s : pipe_sizes())
    if (s.dr == size.dr && s.outside_diameter > size.outside_diameter) return s;
  return size;
}

Layout with_equal_coils(Layout layout) {
  double pipe = 0, loops = 0;
  for (const Trench& t : layout.trenches) pipe += t.coil.coil_length, loops += t.coil.loop_pipe;
  for (Trench& t : layout.trenches) {
    t.coil.coil_length = pipe / static_cast<double>(layout.trenches.size());
    t.coil.loop_pipe = loops / static_cast<double>(layout.trenches.size());
  }
  return layout;
}

void imbalance_remark(std::vector<Trouble>& out, const Flow& f, const FlowWishes& w, const Shown& shown) {
  if (f.design.imbalance <= w.most_imbalance) return;
  out.push_back({"flow_imbalance", say("difference between the circuits' flows"),
                 say("{} of their mean", shown(Quantity::ratio, f.design.imbalance)),
                 say("at most {}", shown(Quantity::ratio, w.most_imbalance)),
                 balance_advice(f.remedies, shown.units)});
}

void pump_remark(std::vector<Trouble>& out, const Flow& f, const FlowWishes& w, const Shown& shown) {
  if (!f.pump || f.pump->duty.flow >= w.design_flow) return;
  out.push_back({"flow_pump_weak", say("flow that {} gives", translated(w.circulator.name)),
                 shown(Quantity::flow, f.pump->duty.flow),
                 say("at least {}", shown(Quantity::flow, w.design_flow)),
                 say("Choose a stronger pump or wider pipes: the loop takes {} at the flow wanted.",
                     shown(Quantity::head, f.design.flow.head_loss))});
}

void antifreeze_remark(std::vector<Trouble>& out, const Antifreeze& a, const FlowWishes& w,
                       const Shown& shown) {
  if (a.enough) return;
  const std::string advice = a.recommended && w.fluid != Fluid::water
                                 ? say("Use at least {} by mass.", shown(Quantity::ratio, *a.recommended))
                                 : say("Choose another antifreeze, or keep the loop warmer.");
  out.push_back({"flow_freezes", say("freezing point of the {}", std::string(fluid_name(w.fluid))),
                 shown(Quantity::temperature, a.freezing_point),
                 say("at most {}", shown(Quantity::temperature, a.wanted_freezing)), advice});
}

// First of the pipes in this regime, and how many there are.
void regime_remarks(std::vector<Trouble>& out, const Flow& f, const Shown& shown) {
  int uncertain = 0, slow = 0;
  double least = 1e300;
  for (std::size_t i = 1; i < f.loop.pipes.size(); ++i) {
    uncertain += f.design.flow.pipes[i].regime == Regime::transition;
    const PipeFlow& cold = f.coldest.flow.pipes[i];
    if (f.loop.pipes[i].part != LoopPart::circuit || cold.regime != Regime::laminar) continue;
    ++slow;
    least = std::min(least, cold.reynolds);
  }
  if (uncertain > 0)
    out.push_back({"flow_uncertain", say("pipes between laminar and turbulent (Re 2000 to 4000)"),
                   say("{} of {}", std::to_string(uncertain), std::to_string(f.loop.pipes.size() - 1)), "",
                   say("Their friction is uncertain by a quarter.")});
  if (slow > 0)
    out.push_back(
        {"flow_laminar", say("least Reynolds number of a circuit at the coldest"),
         shown(Quantity::count, std::round(least)), "",
         say("Laminar flow takes up less heat; fewer circuits, more flow or a thinner fluid raise it.")});
}

void header_remarks(std::vector<Trouble>& out, const HeaderChoice& c, const FlowWishes& w,
                    const Shown& shown) {
  if (!c.head_holds)
    out.push_back(
        {"flow_head", say("head of the loop at the design flow"), shown(Quantity::head, c.head),
         say("at most {}", shown(Quantity::head, *c.most_head)),
         say("No size of header and run brings it there: choose a stronger pump, more circuits or a "
             "wider coil pipe.")});
  if (!c.purge_holds)
    out.push_back({"flow_purge", say("flow that flushes every pipe"), shown(Quantity::flow, c.purge().flow),
                   c.purge().cart ? say("at most what {} gives, {}", translated(w.flush_cart.name),
                                        shown(Quantity::flow, c.purge().cart->flow))
                                  : say("at most what {} gives", translated(w.flush_cart.name)),
                   say("Rent a stronger cart, or let valves shut off part of the circuits.")});
}

}  // namespace

std::vector<Remedy> balance_remedies(const Layout& layout, const Wishes& wishes, const FlowWishes& w,
                                     const HeaderSizes& sizes) {
  std::vector<Remedy> all;
  const auto add = [&](const std::string& what, const Layout& l, const FlowWishes& flow,
                       const HeaderSizes& s) {
    const auto loop = loop_network(l, wishes, flow, s);
    const auto state = loop ? flow_state(*loop, flow, flow.design_temperature) : refuse(loop.error());
    if (state) all.push_back({what, state->imbalance});
  };
  FlowWishes reverse = w;
  reverse.arrangement = HeaderArrangement::reverse_return;
  if (w.arrangement == HeaderArrangement::direct_return)
    add(say_as("with", "reverse return"), layout, reverse, sizes);
  HeaderSizes wider = sizes;
  for (PipeSize& s : wider.steps) s = one_wider(s);
  add(w.arrangement == HeaderArrangement::home_runs ? say_as("with", "leads one size wider")
                                                    : say_as("with", "a header one size wider"),
      layout, w, wider);
  add(say_as("with", "coils of one length"), with_equal_coils(layout), w, sizes);
  std::stable_sort(all.begin(), all.end(),
                   [](const Remedy& a, const Remedy& b) { return a.imbalance < b.imbalance; });
  return all;
}

std::string balance_advice(const std::vector<Remedy>& remedies, UnitSystem units) {
  std::string all;
  for (const Remedy& r : remedies) {
    const std::string value = print_quantity(Quantity::ratio, r.imbalance, units);
    all = all.empty() ? say("With {} it is {}", r.what, value)
                      : say("{}, with {} it is {}", all, r.what, value);
  }
  return all.empty() ? say("Make the ways of the circuits more alike.") : say("{}.", all);
}

std::vector<Trouble> flow_remarks(const Flow& f, const FlowWishes& w, UnitSystem units) {
  const Shown shown{units};
  std::vector<Trouble> out = f.pump_refusals;
  imbalance_remark(out, f, w, shown);
  pump_remark(out, f, w, shown);
  antifreeze_remark(out, f.antifreeze, w, shown);
  regime_remarks(out, f, shown);
  if (f.header) header_remarks(out, *f.header, w, shown);
  return out;
}

}  // namespace underlawn
