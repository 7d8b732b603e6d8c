// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of the heat panel bound to numbers of the plan.
#pragma once

#include "window/form.h"

namespace underlawn {

inline Form::Bound<double> heat_number(double ThermalWishes::*field, const QString& what) {
  return {[field](const Plan& p) { return p.thermal.*field; },
          [field](Plan& p, double v) { p.thermal.*field = v; }, what};
}

// A number of a part: of the load, the block, the climate.
template <class Part>
Form::Bound<double> heat_number(Part ThermalWishes::*part, double Part::*field, const QString& what) {
  return {[part, field](const Plan& p) { return p.thermal.*part.*field; },
          [part, field](Plan& p, double v) { p.thermal.*part.*field = v; }, what};
}

template <class Choice>
Form::Bound<int> heat_choice(Choice ThermalWishes::*field, const QString& what) {
  return {[field](const Plan& p) { return static_cast<int>(p.thermal.*field); },
          [field](Plan& p, int i) { p.thermal.*field = static_cast<Choice>(i); }, what};
}

inline QString printed(Quantity q, double value, const Plan& plan) {
  return QString::fromStdString(print_quantity(q, value, plan.units));
}

// A preset's name without what stands in brackets; the note under it says as much.
inline QString short_name(const std::string& name) {
  return QString::fromStdString(name).section(" (", 0, 0);
}

}  // namespace underlawn
