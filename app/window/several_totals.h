// SPDX-License-Identifier: GPL-3.0-or-later
// How many of what are selected, and how long or large they are together.
#pragma once

#include <QString>
#include <vector>

#include "plan/outcome.h"
#include "window/selection.h"

namespace underlawn {

struct KindTotal {
  QString name;                // "tree", "drawn trench"
  std::vector<Selected> what;  // of that kind, in the order they were picked
  double length = 0;           // m, of lines, trenches and what dimensions measure
  double area = 0;             // m2, of areas; what two of them share counts twice
  double pipe = 0;             // m, in trenches of the loop
};

// One a kind, in the order the kinds were first picked. What is only in the outcome counts nothing without
// it.
std::vector<KindTotal> totals_of(const Plan& plan, const Outcome* outcome,
                                 const std::vector<Selected>& picked);

// "3", "2, 85' in all", "2, 1,200 ft2 in all".
QString total_words(const KindTotal& total, UnitSystem units);

}  // namespace underlawn
