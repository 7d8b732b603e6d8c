// SPDX-License-Identifier: GPL-3.0-or-later
// What test, flushing and fill are asked for, and what the record's readings mean.
#include "base/say.h"
#include "plan/figures/groups.h"
#include "plan/record/record_judge.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;
const char* kNetwork =
    mark("Darcy-Weisbach with Churchill 1977; global gradient method, Todini & Pilati 1988");
const char* kMelinder = mark("Melinder 2010, IIR");

void add_flushes(Figures& all, const JobRecord& record, const RecordJudgement& judged) {
  for (std::size_t i = 0; i < record.flush.size(); ++i) {
    const FlushReading& r = record.flush[i];
    if (!r.flow || !judged.flush[i] || judged.flush[i]->drops.empty()) continue;
    const std::string number = std::to_string(i + 1), key = "record.flush." + number;
    typed(all, key + ".flow", say("Flushing {}, flow read", number), *r.flow, Q::flow);
    derived(all, key + ".expected_drop",
            say("Flushing {}, pressure drop with all open circuits flowing", number),
            judged.flush[i]->drops.front().least, Q::pressure,
            {say("head of the loop at that flow of water, without the heat pump, x density x g"),
             {key + ".flow"},
             translated(kNetwork)});
    if (r.pressure_drop)
      typed(all, key + ".drop", say("Flushing {}, pressure drop read", number), *r.pressure_drop,
            Q::pressure);
  }
}

void add_fill(Figures& all, const FillRecord& fill, const FillJudgement& judged) {
  if (fill.freezing_point)
    typed(all, "record.fill.freezing_point", say("Freezing point read"), *fill.freezing_point,
          Q::temperature);
  if (fill.put_in) typed(all, "record.fill.put_in", say("Product put in"), *fill.put_in, Q::fluid_volume);
  if (judged.mass_fraction)
    derived(all, "record.fill.mass_fraction", say("Antifreeze by mass, by the freezing point read"),
            *judged.mass_fraction, Q::ratio,
            {say("least share that freezes there"), {"record.fill.freezing_point"}, translated(kMelinder)});
  if (judged.volume)
    derived(all, "record.fill.loop_volume", say("Liquid in the loop, by product and reading"), *judged.volume,
            Q::fluid_volume,
            {say("product put in x its antifreeze / share by volume"),
             {"record.fill.put_in", "record.fill.mass_fraction"},
             say("volumes before mixing at 20 deg C: CRC Handbook (from memory)")});
  if (judged.exchange)
    derived(all, "record.fill.exchange", say("Fluid to replace by product"), *judged.exchange,
            Q::fluid_volume,
            {say("V (needed - there) / (product's - there), shares by volume"),
             {"flow.volume", "record.fill.mass_fraction"},
             ""});
}

}  // namespace

void add_record(Figures& all, const Plan& plan, const Outcome& outcome) {
  if (all.find("flow.volume") == nullptr || all.find("flow.purge.flow") == nullptr) return;
  const RecordJudgement judged = judge_record(plan, outcome.flow.get(), outcome.temperatures.get());
  derived(all, "record.flush.drop", say("Pressure drop at the flow for flushing"),
          judged.flush_asked.expected_at_asked, Q::pressure,
          {say("head for flushing x density of water x g"),
           {"flow.purge.flow", "flow.purge.head"},
           translated(kNetwork)});
  if (judged.fill.asked_charge && all.find("heat.warmest_allowed") != nullptr)
    derived(all, "record.fill.pressure", say("Pressure to leave on the loop"),
            judged.fill.asked_charge->at_fill, Q::pressure,
            {say("least charge that keeps 70 kPa (10 psi) at the top in every season"),
             {"flow.volume", "flow.coldest_temperature", "heat.warmest_allowed"},
             say("common practice, no source")});
  add_flushes(all, plan.record, judged);
  add_fill(all, plan.record.fill, judged.fill);
}

}  // namespace underlawn::figures
