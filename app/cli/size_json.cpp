// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/size_json.h"

namespace underlawn::cli {

namespace {

Json field(const FieldSize& f) {
  Json j{{"circuits", f.circuits}, {"coil_pipe_m", f.coil_pipe}, {"trench_m", f.trench}};
  if (f.coldest < 1e8) {
    j["coldest_c"] = f.coldest;
    j["warmest_c"] = f.warmest;
  }
  j["seasonal_ratio"] = f.seasonal;
  j["bank_m3"] = f.bank;
  j["on_lot"] = f.placed;
  return j;
}

const char* kind_name(Alternative::Kind kind) {
  if (kind == Alternative::Kind::coil_length) return "coil_length";
  return kind == Alternative::Kind::deeper ? "deeper" : "wider";
}

Json alternative(const Alternative& a) {
  Json j{{"kind", kind_name(a.kind)}, {"amount_m", a.amount}};
  if (a.size) j["needed"] = field(*a.size);
  if (a.refusal) j["refusal"] = a.refusal->message();
  return j;
}

Json season(const ClassicCase& c, double length) {
  return {{"length_m", length},
          {"capacity_w", c.capacity},
          {"cop_ratio", c.cop},
          {"pipe_resistance_mk_w", c.pipe_resistance},
          {"soil_resistance_mk_w", c.soil_resistance},
          {"run_fraction_ratio", c.run_fraction},
          {"month", c.month + 1},
          {"ground_c", c.ground},
          {"limit_c", c.limit}};
}

Json quantiles(const Quantiles& q) {
  return {{"p05_c", q.low}, {"p50_c", q.middle}, {"p95_c", q.high}};
}

Json chance_json(const Chance& c) {
  Json j{{"draws", c.draws},       {"holding", c.holding}, {"too_cold", c.too_cold}, {"too_warm", c.too_warm},
         {"share_ratio", c.share}, {"low_ratio", c.low},   {"high_ratio", c.high}};
  if (c.coldest.middle < 1e8) {
    j["coldest"] = quantiles(c.coldest);
    j["warmest"] = quantiles(c.warmest);
  }
  return j;
}

}  // namespace

Json size_json(const LoopSizing& s, const std::optional<Chance>& chance) {
  Json j{{"plan", s.fingerprint}};
  if (s.drawn.circuits > 0) j["drawn"] = field(s.drawn);
  if (s.needed) j["needed"] = field(*s.needed);
  if (s.refusal) j["needed_refusal"] = s.refusal->message();
  if (s.given) j["lot_gives"] = field(*s.given);
  if (s.least_coil) j["least_coil_m"] = *s.least_coil;
  if (s.least_coil_refusal) j["least_coil_refusal"] = s.least_coil_refusal->message();
  j["alternatives"] = Json::array();
  for (const Alternative& a : s.alternatives) j["alternatives"].push_back(alternative(a));
  j["classic"] = {{"pipe_in_ground_m", s.classic_pipe}};
  if (s.classic.heating) j["classic"]["heating"] = season(*s.classic.heating, s.classic.heating_length);
  if (s.classic.cooling) j["classic"]["cooling"] = season(*s.classic.cooling, s.classic.cooling_length);
  if (chance) j["chance"] = chance_json(*chance);
  return j;
}

}  // namespace underlawn::cli
