// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of the heat panel bound to numbers of the plan.
#pragma once

#include "base/say.h"
#include "window/form.h"

namespace underlawn {

inline Form::Bound<double> heat_number(double ThermalWishes::*field, const QString& what) {
  return bound_to(what, &Plan::thermal, field);
}

// A number of a part: of the load, the block, the climate.
template <class Part>
Form::Bound<double> heat_number(Part ThermalWishes::*part, double Part::*field, const QString& what) {
  return bound_to(what, &Plan::thermal, part, field);
}

template <class Choice>
Form::Bound<int> heat_choice(Choice ThermalWishes::*field, const QString& what) {
  return bound_to<int>(what, &Plan::thermal, field);
}

// A preset's name without what stands in brackets; the note under it says as much.
inline QString short_name(const std::string& name) {
  return QString::fromStdString(translated(name)).section(" (", 0, 0);
}

}  // namespace underlawn
