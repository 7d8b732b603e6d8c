// SPDX-License-Identifier: GPL-3.0-or-later
// The pumps of the flow panel: the circulator with what it has to push through, and the flush cart.
#include <cmath>

#include "flow/purge.h"
#include "window/curve_table.h"
#include "window/flow_bounds.h"
#include "window/flow_panel.h"
#include "window/maybe_field.h"

namespace underlawn {

namespace {

double loss_of(const Flow& f, std::initializer_list<LoopPart> parts) {
  double head = 0;
  for (std::size_t i = 0; i < f.loop.pipes.size(); ++i)
    if (std::find(parts.begin(), parts.end(), f.loop.pipes[i].part) != parts.end())
      head += std::abs(f.design.flow.pipes[i].head_loss);
  return head;
}

// Electric power is watts on both sides of the ocean.
QString watts(double power) {
  return FlowPanel::tr("%1 W").arg(std::lround(power));
}

QString minutes(double seconds) {
  return FlowPanel::tr("%1 min").arg(std::ceil(seconds / 60));
}

std::vector<Fact> why_no_purge(const LoopNetwork& loop, const FlowWishes& wishes) {
  const auto purge = purge_loop(loop, wishes);
  return {{purge ? QString() : QString::fromStdString(purge.error().message()), {}}};
}

}  // namespace

void FlowPanel::add_circulator() {
  section(tr("Circulator"));
  number(tr("Design flow"), Quantity::flow, flow_wish(&FlowWishes::design_flow, tr("Design flow")));
  number(tr("Heating capacity"), Quantity::power, flow_wish(&FlowWishes::capacity, tr("Heating capacity")))
      ->edit()
      ->setToolTip(tr("Of the heat pump; the circulator's power is graded by it"));
  text(tr("Circulator"), pump_name(&FlowWishes::circulator, tr("Name of the circulator")));
  auto* curve = new CurveTable(document_, &FlowWishes::circulator, tr("Circulator curve"));
  wide(curve);
  on_refresh([curve] { curve->refresh(); });
  auto* head = maybe_number(
      *this, document_, tr("Head allowed"), Quantity::head,
      {[](const Plan& p) { return p.flow.most_head > 0 ? std::optional(p.flow.most_head) : std::nullopt; },
       [](Plan& p, std::optional<double> v) { p.flow.most_head = v.value_or(0); }, tr("Head allowed")});
  head->edit()->setPlaceholderText(tr("what it gives"));
  head->edit()->setToolTip(
      tr("Of the whole loop, for the header's sizes; left empty: what the circulator gives"));
  facts(tr("What the circulator does"), [this](const Flow& f) {
    std::vector<Fact> all;
    const auto tell = [&](const std::optional<PumpState>& pump, const QString& when) {
      if (!pump) return;
      all.push_back(
          {when,
           tr("%1 at %2").arg(say(Quantity::flow, pump->duty.flow), say(Quantity::head, pump->duty.head))});
      all.push_back({tr("Electric power"), watts(pump->duty.power)});
    };
    tell(f.pump, tr("Meets the loop at"));
    if (f.pump) {
      all.push_back(
          {tr("By capacity"),
           tr("%1 W/kW, %2").arg(f.pump->w_per_kw, 0, 'f', 1).arg(QString::fromStdString(f.pump->grade))});
      for (const SpeedPoint& s : f.pump->slower)
        all.push_back({tr("%1 at %2 speed").arg(say(Quantity::flow, s.flow), say(Quantity::ratio, s.speed)),
                       tr("%1, %2").arg(say(Quantity::head, s.head), watts(s.power))});
    }
    tell(f.coldest_pump, tr("At its coldest"));
    return all;
  });
  note([](const Plan&) {
    return tr(
        "Grades after Kavanaugh and Rafferty 2014, ASHRAE: up to 10.6 W of pump per kW of heat pump "
        "excellent, 15.9 good; from memory 21.2 mediocre, 31.8 poor. Slower speeds by the affinity laws.");
  });
  add_losses();
}

void FlowPanel::add_losses() {
  section(tr("Heat pump and hose kit"));
  const QString head = tr("%1, loss"), at = tr("%1, at a flow of");
  for (const auto& [loss, name] : {std::pair{&FlowWishes::heat_pump, tr("Heat pump")},
                                   std::pair{&FlowWishes::hose_kit, tr("Hose kit")}}) {
    number(head.arg(name), Quantity::head, loss_wish(loss, &FittedLoss::head, head.arg(name)));
    number(at.arg(name), Quantity::flow, loss_wish(loss, &FittedLoss::flow, at.arg(name)));
  }
  number(tr("Valves, sum of K"), Quantity::count, flow_wish(&FlowWishes::valves_k, tr("Valves")));
  facts(tr("Where the head goes"), [this](const Flow& f) {
    const double unit = loss_of(f, {LoopPart::heat_pump});
    const double run = loss_of(f, {LoopPart::run_supply, LoopPart::run_return});
    const double all = f.design.flow.head_loss;
    return std::vector<Fact>{{tr("Heat pump, hoses, valves"), say(Quantity::head, unit)},
                             {tr("Supply run, both ways"), say(Quantity::head, run)},
                             {tr("Header and circuits"), say(Quantity::head, all - unit - run)},
                             {tr("Whole loop"), say(Quantity::head, all)}};
  });
}

void FlowPanel::add_purge() {
  section(tr("Purge"));
  number(tr("Velocity in every pipe"), Quantity::velocity,
         flow_wish(&FlowWishes::purge_velocity, tr("Purge velocity")));
  number(tr("Times the liquid is changed"), Quantity::count,
         flow_wish(&FlowWishes::purge_volumes, tr("Purge volumes")));
  text(tr("Flush cart"), pump_name(&FlowWishes::flush_cart, tr("Name of the flush cart")));
  auto* curve = new CurveTable(document_, &FlowWishes::flush_cart, tr("Flush cart curve"));
  wide(curve);
  on_refresh([curve] { curve->refresh(); });
  facts(tr("What flushing takes"), [this](const Flow& f) {
    const auto purge = document_.outcome()->purge;
    if (purge == nullptr) return why_no_purge(f.loop, document_.outcome_plan()->flow);
    std::vector<Fact> all;
    const auto tell = [&](const PurgeRun& run, const QString& how) {
      all.push_back({how, tr("%1 at %2").arg(say(Quantity::flow, run.flow), say(Quantity::head, run.head))});
      const auto& slowest = f.loop.network.pipes[static_cast<std::size_t>(run.slowest)];
      all.push_back({tr("Slowest pipe"), QString::fromStdString(slowest.name)});
      if (run.cart)
        all.push_back(
            {run.cart_can ? tr("The cart can: it moves") : tr("The cart cannot: it moves"),
             tr("%1 at %2").arg(say(Quantity::flow, run.cart->flow), say(Quantity::head, run.cart->head))});
      all.push_back({tr("Slowest circuit changed in"), minutes(run.circuits_time)});
      all.push_back({tr("Time in all"), minutes(run.time)});
    };
    tell(purge->together, tr("All circuits together"));
    if (purge->one_by_one) tell(*purge->one_by_one, tr("One circuit at a time"));
    return all;
  });
  note([this](const Plan&) {
    return tr("2 ft/s (0.61 m/s) in every pipe for 15 minutes: UFGS 15741N, ENERGY STAR Homes Northwest. "
              "With "
              "water at %1; the heat pump is flushed on its own.")
        .arg(say(Quantity::temperature, kPurgeTemperature));
  });
}

}  // namespace underlawn
