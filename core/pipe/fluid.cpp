// SPDX-License-Identifier: GPL-3.0-or-later
#include "pipe/fluid.h"

#include <array>
#include <boost/math/tools/roots.hpp>
#include <cmath>

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

constexpr double kZeroCelsius = 273.15;  // K

using Row = std::array<double, 6>;   // powers of the concentration
using Surface = std::array<Row, 4>;  // powers of the temperature

struct Melinder {
  Fluid fluid;
  double x_base, t_base, t_most;  // kg/kg, K, K
  Surface density, specific_heat, conductivity, log_viscosity;
  Row freezing;  // K
};

const std::array<Melinder, 4> kTables = {{
    {Fluid::propylene_glycol,
     0.307031,
     305.8583,
     373.15,
     {{{{1018, 76.04, -24.98, -155, -113.1, 234.2}},
       {{-0.5406, -0.945, 0.27, 2.829, -2.221, 0}},
       {{-0.002666, 0.005541, -0.004018, -0.007175, 0, 0}},
       {{1.347e-05, -1.343e-05, 3.376e-05, 0, 0, 0}}}},
     {{{{3882, -1304, -1598, 353.9, 5000, -4959}},
       {{2.699, 5.07, 0.9534, 31.02, -71.35, 0}},
       {{-0.001659, -0.004752, 0.1167, -0.295, 0, 0}},
       {{-1.032e-05, 0.0001522, -0.000487, 0, 0, 0}}}},
     {{{{0.4513, -0.4795, 0.2076, -0.09083, -0.05952, 0.2104}},
       {{0.0007955, -0.001678, 0.001563, -0.002518, -0.003605, 0}},
       {{3.482e-08, 8.941e-06, -4.615e-05, 6.543e-05, 0, 0}},
       {{-5.966e-09, 1.493e-08, 9.897e-08, 0, 0, 0}}}},
     {{{{-6.224055, 3.328, 0.5453, -3.9, -1.587, 35.64}},
       {{-0.03045, -0.03984, -0.00086, 0.1054, 0.04475, 0}},
       {{0.0002525, 0.0004332, -0.0001593, -0.001589, 0, 0}},
       {{-1.399e-06, -1.86e-06, -4.465e-07, 0, 0, 0}}}},
     {{259.9, -66.31, -109.4, -228.3, -340.9, 146.5}}},
    {Fluid::ethanol,
     0.292361,
     281.3078,
     313.15,
     {{{{961.9, -143.3, -226, -169, 1291, -831.8}},
       {{-0.5222, -1.989, 2.281, 8.594, -15.9, 0}},
       {{-0.003281, 0.0187, -0.0008581, -0.09607, 0, 0}},
       {{1.569e-05, -9.154e-05, 4.056e-05, 0, 0, 0}}}},
     {{{{4204, -2102, -3714, 17430, -6292, -82900}},
       {{2.319, 49.27, -23.35, -296.9, 535.3, 0}},
       {{-0.03042, -0.3072, -0.196, 1.901, 0, 0}},
       {{0.000686, -0.00569, 0.007461, 0, 0, 0}}}},
     {{{{0.4067, -0.5008, 0.2801, -0.02009, -0.1506, -0.1653}},
       {{0.0006775, -0.002377, 0.002669, -0.006813, 0.01167, 0}},
       {{3.105e-07, -3.216e-06, -3.606e-05, 0.0001429, 0, 0}},
       {{-2e-08, 8.362e-09, 1.552e-07, 0, 0, 0}}}},
     {{{{-5.433755, 1.565, -8.435, 7.552, 15.29, -41.3}},
       {{-0.04745, -0.004106, 0.164, -0.1118, -0.09481, 0}},
       {{0.0004314, -0.0005135, -0.001091, 0.001899, 0, 0}},
       {{-3.023e-06, 7.004e-06, -1.967e-05, 0, 0, 0}}}},
     {{253.74, -95.4, -26.48, 385.1, -28.58, -1670}}},
    {Fluid::methanol,
     0.305128,
     276.6859,
     313.15,
     {{{{958.1, -139.1, -110.5, -120.8, 492.7, -772.7}},
       {{-0.4151, -1.51, 1.828, 2.992, -13.25, 0}},
       {{-0.002261, 0.01113, -0.01641, 0.001455, 0, 0}},
       {{2.998e-07, -3.264e-05, 0.000151, 0, 0, 0}}}},
     {{{{3887, -1850, -376.9, -3776, -15040, 64330}},
       {{7.201, 29.84, -119.6, -56.11, 737.3, 0}},
       {{-0.08979, -0.1865, 0.9801, -0.7811, 0, 0}},
       {{-0.000439, -0.001718, 0.00666, 0, 0, 0}}}},
     {{{{0.4175, -0.4421, 0.2044, 0.2943, -0.08666, -2.033}},
       {{0.0007271, -0.002952, 0.003413, -0.0009646, -4.573e-05, 0}},
       {{2.823e-07, 7.336e-06, -3.665e-05, 3.174e-05, 0, 0}},
       {{9.718e-09, 4.328e-08, -2.791e-07, 0, 0, 0}}}},
     {{{{-5.754755, 0.5448, -5.552, 3.038, 6.669, -8.472}},
       {{-0.03866, 0.01008, 0.08384, -0.07435, -0.09105, 0}},
       {{0.0002779, -0.0002809, -0.0003997, 0.0007442, 0, 0}},
       {{-1.543e-06, 9.811e-07, -3.466e-06, 0, 0, 0}}}},
     {{246.86, -118.7, -121.8, -68.23, 12.97, 236.3}}},
    {Fluid::ethylene_glycol,
     0.308462,
     304.8780,
     373.15,
     {{{{1034, 131.1, 0.749, -106.2, -96.23, 489.1}},
       {{-0.4781, -0.6876, 0.7855, 1.229, -7.211, 0}},
       {{-0.002692, 0.004805, -0.003995, -0.01153, 0, 0}},
       {{4.725e-06, 1.69e-06, 4.982e-05, 0, 0, 0}}}},
     {{{{3737, -1799, -993.3, 2610, 1537, -16180}},
       {{2.93, 10.46, 3.516, -1.189, -42.72, 0}},
       {{-0.004675, -0.04147, 0.05109, -0.1643, 0, 0}},
       {{-1.389e-05, 1.847e-05, -0.0007138, 0, 0, 0}}}},
     {{{{0.472, -0.4286, 0.1747, 0.03017, -0.1322, 0.2678}},
       {{0.0008903, -0.001473, 0.0006814, -0.002412, 0.002555, 0}},
       {{-1.058e-06, 1.059e-05, -3.612e-05, 4.004e-05, 0, 0}},
       {{-2.789e-09, -1.142e-08, 2.365e-08, 0, 0, 0}}}},
     {{{{-6.437255, 2.471, 0.03328, 1.659, 3.089, -18.65}},
       {{-0.0255, -0.01171, 0.01086, 0.003157, 0.01831, 0}},
       {{0.0001782, 0.0001052, 0.0001051, 0.0004063, 0, 0}},
       {{-7.669e-07, -1.634e-06, -6.475e-06, 0, 0, 0}}}},
     {{257.9, -80.8, -133.4, -72.93, 100.6, 11.4}}},
}};

// Water is any of them without antifreeze; propylene glycol's set is the nearest to water's tables.
const Melinder& table_of(Fluid fluid) {
  for (const Melinder& m : kTables)
    if (m.fluid == fluid) return m;
  return kTables[0];
}

double along(const Row& row, double dx) {
  double sum = 0;
  for (int j = 5; j >= 0; --j) sum = sum * dx + row[j];
  return sum;
}

double over(const Surface& s, double dt, double dx) {
  double sum = 0;
  for (int i = 3; i >= 0; --i) sum = sum * dt + along(s[i], dx);
  return sum;
}

std::string percent(double fraction) {
  return print_quantity(Quantity::ratio, fraction, UnitSystem::metric);
}
std::string degrees(double t) {
  return print_quantity(Quantity::temperature, t, UnitSystem::metric);
}

Trouble concentration_trouble(Fluid fluid, double x) {
  return {"fluid_concentration", say("mass fraction of {}", std::string(fluid_name(fluid))), percent(x),
          say("0 to {}", percent(kMostConcentration)),
          say("Choose a concentration the fluid's tables cover.")};
}

bool covered(double x) {
  return x >= 0 && x <= kMostConcentration;
}

}  // namespace

std::string fluid_name(Fluid fluid) {
  switch (fluid) {
    case Fluid::water:
      return say("water");
    case Fluid::propylene_glycol:
      return say("propylene glycol");
    case Fluid::ethanol:
      return say("ethanol");
    case Fluid::methanol:
      return say("methanol");
    case Fluid::ethylene_glycol:
      return say("ethylene glycol");
  }
  return "";
}

std::string fluid_caution(Fluid fluid) {
  switch (fluid) {
    case Fluid::water:
      return say("Freezes: only where the loop never nears 0 C (32 F).");
    case Fluid::propylene_glycol:
      return say("Low toxicity; use inhibited, food-grade fluid. Thick when cold. Local rules govern.");
    case Fluid::ethanol:
      return say(
          "Flammable, also its vapour over the undiluted liquid; denatured. Keep sparks away; local rules "
          "govern.");
    case Fluid::methanol:
      return say(
          "Poisonous by mouth, skin and breath, and flammable. Not allowed in many places; local rules "
          "govern.");
    case Fluid::ethylene_glycol:
      return say(
          "Poisonous to people and animals, sweet to taste. Not allowed in the ground in many places; "
          "local rules govern.");
  }
  return "";
}

Result<double> freezing_point(Fluid fluid, double x) {
  if (!covered(x)) return refuse(concentration_trouble(fluid, x));
  if (fluid == Fluid::water || x == 0) return 0.0;
  const Melinder& m = table_of(fluid);
  return along(m.freezing, x - m.x_base) - kZeroCelsius;
}

Result<double> concentration_for(Fluid fluid, double temperature) {
  if (temperature >= 0) return 0.0;
  const double coldest = fluid == Fluid::water ? 0.0 : freezing_point(fluid, kMostConcentration).value();
  if (!(temperature >= coldest))
    return refuse({"fluid_freezes", say("freezing point wanted of {}", std::string(fluid_name(fluid))),
                   degrees(temperature), say("not below {}", degrees(coldest)),
                   say("Choose another antifreeze, or a loop that runs warmer.")});
  std::uintmax_t steps = 100;
  const auto bracket = boost::math::tools::toms748_solve(
      [&](double x) { return freezing_point(fluid, x).value() - temperature; }, 0.001, kMostConcentration,
      boost::math::tools::eps_tolerance<double>(40), steps);
  return bracket.second;
}

Result<FluidProperties> fluid_properties(Fluid fluid, double x, double temperature) {
  if (!covered(x)) return refuse(concentration_trouble(fluid, x));
  const Melinder& m = table_of(fluid);
  const double freezes = freezing_point(fluid, x).value(), most = m.t_most - kZeroCelsius;
  if (!(temperature >= freezes && temperature <= most))
    return refuse({"fluid_temperature", say("temperature of {}", std::string(fluid_name(fluid))),
                   degrees(temperature), say("{} (it freezes) to {}", degrees(freezes), degrees(most)),
                   say("Raise the concentration, or keep the loop warmer.")});
  const double dx = (fluid == Fluid::water ? 0 : x) - m.x_base, dt = temperature + kZeroCelsius - m.t_base;
  return FluidProperties{over(m.density, dt, dx), over(m.specific_heat, dt, dx), over(m.conductivity, dt, dx),
                         std::exp(over(m.log_viscosity, dt, dx))};
}

}  // namespace underlawn
