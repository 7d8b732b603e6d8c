// SPDX-License-Identifier: GPL-3.0-or-later
// What the designer asks of the fluid and the pipes that carry it, besides the loop itself.
#pragma once

#include <string>
#include <vector>

#include "base/quantity.h"
#include "base/result.h"
#include "pipe/fluid.h"

namespace underlawn {

// direct_return: the circuit fed first also returns first. reverse_return: it returns last, so that all ways
// are equally long; the return comes back beside the header. home_runs: each circuit has its own pair of
// pipes to a manifold in the house.
enum class HeaderArrangement { direct_return, reverse_return, home_runs };
std::string header_arrangement_name(HeaderArrangement arrangement);

// A loss measured at one flow; at others it goes with the flow squared.
struct FittedLoss {
  double head = 0;  // m, 0..100
  double flow = 0;  // m3/s, > 0 where head is
  bool operator==(const FittedLoss&) const = default;
};

struct CurvePoint {
  double flow = 0;   // m3/s, rising from point to point
  double head = 0;   // m, falling from point to point
  double power = 0;  // W, electric
  bool operator==(const CurvePoint&) const = default;
};

// A pump as its table, at full speed; none where the table is empty.
struct Circulator {
  std::string name;
  std::vector<CurvePoint> curve;  // none, or 3 to 50 points, straight between them
  bool operator==(const Circulator&) const = default;
};
// Pumps of no maker, for a start. Numbers of our own, typical; say so where shown.
const Circulator& generic_circulator();
const Circulator& generic_flush_cart();

struct FlowWishes {
  Fluid fluid = Fluid::propylene_glycol;
  double mass_fraction = 0.20;
  double freeze_margin = 3;       // K between the coldest fluid and its freezing; common practice, no source
  double design_flow = 5.7e-4;    // m3/s: 9 gpm, 3 gpm a ton (common practice, no source)
  double capacity = 10'551;       // W of the heat pump, heating, that the pump's power is graded by: 3 tons
  double design_temperature = 5;  // deg C, of the fluid over the heating season
  double coldest_temperature = -3.9;  // deg C, of the fluid as it leaves the heat pump at its coldest: 25 F
  HeaderArrangement arrangement = HeaderArrangement::direct_return;
  bool step_down = true;                  // the header may narrow as it feeds fewer circuits
  std::vector<std::string> header_sizes;  // names in pipe_sizes(), the step next to the run first and the
                                          // last name for all that follow; empty: designed
  std::string run_size;                   // name in pipe_sizes(); empty: designed
  double tail = 0.6;                  // m of pipe between trench head and header, each way; common practice,
                                      // no source
  FittedLoss heat_pump{3.2, 5.7e-4};  // typical of 3 tons, no source
  FittedLoss hose_kit{0.6, 5.7e-4};   // hoses, valves and strainer; typical, no source
  double valves_k = 0;                // further valves, sum of K in the bore of the run
  Circulator circulator = generic_circulator();
  Circulator flush_cart = generic_flush_cart();
  double purge_velocity = 0.6096;  // m/s in every pipe: 2 ft/s, UFGS 15741N and ENERGY STAR Homes Northwest
  double purge_volumes = 3;        // times a circuit's liquid is changed; common practice, no source
  double most_imbalance = 0.10;    // (most - least)/mean flow of circuits; common practice, no source
  double most_head = 0;            // m, of the whole loop; 0: what the circulator gives at the design flow
  bool operator==(const FlowWishes&) const = default;
};

// Everything that is out of bounds, a pump curve that rises, a concentration beyond the correlation, a fluid
// below its freezing point, pipes that are not in pipe_sizes(). Empty when all is well.
std::vector<Trouble> flow_troubles(const FlowWishes& wishes, UnitSystem units = UnitSystem::metric);

// Head (m) and power (W) of a pump at a flow: straight between its points; beyond the last point the last
// slope goes on for the head, to 0, and the last power holds. The curve has points.
double pump_head(const Circulator& pump, double flow);
double pump_power(const Circulator& pump, double flow);

}  // namespace underlawn
