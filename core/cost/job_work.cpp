// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/job_work.h"

#include "dig/ground_used.h"

namespace underlawn {

JobWork job_work(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes, int joints,
                 const CrewCalendar& calendar, const DigOrder& order, const Machine& excavator) {
  JobWork work;
  for (const Crossing& c : layout.crossings) {
    const Feature* f = find_feature(site, c.feature_id);
    work.met_by_hand += f != nullptr && f->kind == FeatureKind::utility;
  }
  work.joints = joints;
  work.torn.pavement = pavement_cut(site, layout, dig, wishes);
  work.torn.lawn = order.steps.empty() ? lawn_in_strips(site, layout, dig, wishes)
                                       : area(ground_used(site, order, excavator));
  work.time = times_of(calendar);
  return work;
}

}  // namespace underlawn
