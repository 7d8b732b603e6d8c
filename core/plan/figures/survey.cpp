// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/figures/groups.h"
#include "plan/surveyed.h"

namespace underlawn::figures {

void add_survey(Figures& all, const Plan& plan) {
  if (plan.survey.deed.text.empty()) return;
  const SurveyedDeed deed = surveyed_deed(plan.survey.deed, plan);
  add_traverse_figures(all, deed.traverse, deed.reading);
}

}  // namespace underlawn::figures
