// SPDX-License-Identifier: GPL-3.0-or-later
// How near the work comes to what people love while it lasts: heaps of earth, machine, the pipe laid ready.
#pragma once

#include <QStringList>
#include <optional>
#include <vector>

#include "sheets/lot_picture.h"

namespace underlawn {

struct WhileDug {
  std::optional<double> earth;    // m to the foot of the nearest heap; none where nothing lies on the lot
  std::optional<double> machine;  // m to its tracks and to the place where pipe lies ready; none: not known
  bool earth_on_roots = false, machine_on_roots = false;  // of this tree
  int first_day = 0, last_day = 0;  // that earth lies on its roots, from 1; 0 without a calendar
};

// Of a tree to the middle of its trunk. To the lot line the machine has no distance: it comes in over it.
WhileDug while_dug(const Plan& plan, const Outcome& outcome, const Loved& thing);

// Whether tracks and wheels go over the lot line nowhere but where machines come in.
bool crosses_line_only_at_entry(const Plan& plan, const Outcome& outcome);

// What earth or machine comes nearer to than 3 ft (0.9 m), as the table has it; the lot line by earth alone.
struct Near {
  Loved thing;
  WhileDug then;
};
std::vector<Near> near_things(const Plan& plan, const Outcome& outcome);
bool comes_near(const Plan& plan, const Near& near);

// A sentence for each tree that bears something meanwhile and for beds that the work comes up to, then what
// harm to expect and who answers.
QStringList root_words(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
