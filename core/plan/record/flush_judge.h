// SPDX-License-Identifier: GPL-3.0-or-later
// What a flushing's flow and pressure drop tell: how many circuits flow, and whether it is enough.
#pragma once

#include <string>
#include <vector>

#include "flow/loop_network.h"
#include "plan/record/job_record.h"
#include "plan/record/record_line.h"

namespace underlawn {

// Flow meter, gauges and the friction of coils together, relative to the drop; our own choice.
inline constexpr double kDropError = 0.15;

// Pressure drops of the loop, Pa, at one flow of water, without the heat pump, with so many circuits flowing.
struct DropWith {
  int flowing = 0;
  double least = 0, most = 0;     // Pa, over the circuits that may be the closed ones
  std::vector<int> least_closed;  // trench numbers whose closing gives `least`; empty with all flowing
};

struct FlushJudgement {
  double asked = 0;              // m3/s: purge velocity in every open pipe
  double expected_at_asked = 0;  // Pa at that flow
  double time_asked = 0;         // s: three changes of the slowest circuit, at least 15 min, at `asked`
  std::vector<DropWith> drops;   // at the flow read; all that are open first; empty where no flow was read
  int flowing = 0;               // that the reading fits; 0: none, or not read
  std::vector<RecordLine> lines;
};

// Water at the temperature read, else kPurgeTemperature. With one circuit closed each is tried; with more
// closed those nearest and those farthest along the header. Lines' keys begin with "flush.". Refuses what
// solve_network refuses and an open circuit that is not there.
Result<FlushJudgement> judge_flush(const LoopNetwork& loop, const FlowWishes& wishes,
                                   const FlushReading& reading, const std::string& name,
                                   UnitSystem units = UnitSystem::metric);

}  // namespace underlawn
