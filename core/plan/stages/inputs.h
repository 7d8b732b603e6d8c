// SPDX-License-Identifier: GPL-3.0-or-later
// What each stage of solve() reads and nothing else: the serials of earlier stages' outputs, and of the plan
// the part that it names.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

struct Troubles {
  std::vector<Trouble> all;
  bool site = false, wishes = false, ground = false, flow = false, pricing = false;  // whether any
  bool operator==(const Troubles&) const = default;
};

struct CoilMade {
  Coil coil;
  bool refused = false;  // why is asked again in the units of the plan, when it is to be said
  bool operator==(const CoilMade&) const = default;
};

struct CoilIn {
  CoilUnknown unknown;
  double loop_diameter, pitch, coil_length, trench_length, pipe_diameter;
  CoilPattern pattern;
  double level_distance, side_distance;
  bool return_on_top;
  bool operator==(const CoilIn&) const = default;
};

struct LayoutIn {
  Site site;
  Wishes wishes;
  Coil coil;
  bool site_sound = false;
  bool can_place = false;  // wishes and coil are sound
  bool operator==(const LayoutIn&) const = default;
};

struct DigIn {
  int layout = 0;
  Wishes wishes;
  Ground ground;
  int terrain = 0;
  DigWishes how;
  bool can_dig = false;
  bool operator==(const DigIn&) const = default;
};

struct OrderIn {
  Site site;
  int layout = 0, dig = 0;
  Wishes wishes;
  Ground ground;
  DigWishes how;
  bool sound = false;
  bool operator==(const OrderIn&) const = default;
};

struct CalendarIn {
  Site site;
  int layout = 0, order = 0;
  Ground ground;
  DigWishes how;
  CrewWishes crew;
  int joints = 0;
  double test = 0;
  bool operator==(const CalendarIn&) const = default;
};

struct WorkIn {
  Site site;
  int layout = 0, dig = 0, calendar = 0;
  Wishes wishes;
  int joints = 0;
  bool operator==(const WorkIn&) const = default;
};

struct StakeOutIn {
  Site site;
  int layout = 0;
  bool site_sound = false;
  bool operator==(const StakeOutIn&) const = default;
};

struct FlowIn {
  int layout = 0;
  Wishes wishes;
  FlowWishes flow;
  bool sound = false;
  bool operator==(const FlowIn&) const = default;
};

struct FlowMade {
  std::shared_ptr<const Flow> flow;
  std::shared_ptr<const Purge> purge;
  std::optional<Trouble> refusal;
  bool operator==(const FlowMade&) const = default;
};

struct TemperaturesIn {
  int layout = 0, surroundings = 0;
  Wishes wishes;
  ThermalWishes thermal;
  Circulation circulation;
  bool operator==(const TemperaturesIn&) const = default;
};

// The last two read nearly everything.
struct LastIn {
  Plan plan;
  int coil = 0, layout = 0, dig = 0, order = 0, calendar = 0, work = 0, stake_out = 0, flow = 0,
      temperatures = 0;
  bool operator==(const LastIn&) const = default;
};

// The parts of the plan that stages are handed; what they leave out is as in a new plan.
Site without_notes(Site site);
Site for_taping(Site site);
Site for_layout(Site site, bool level_floor);
Wishes for_layout(const Wishes& wishes, const Coil& coil);
Wishes for_dig(const Wishes& wishes);
DigWishes for_dig(const DigWishes& how);
Wishes for_work(const Wishes& wishes);
Wishes for_temperatures(const Wishes& wishes);
Plan for_checks(Plan plan);
Plan for_figures(Plan plan);

}  // namespace underlawn
