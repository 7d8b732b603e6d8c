// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/crew_time.h"

#include "cost/flow_shop.h"

namespace underlawn {

namespace {

double dig_time(const EarthWork& work, double width, const Ground& ground) {
  return width < kNarrowestBucket ? work.length * kTrencher : work.bank / bank_rate(kExcavator, ground.swell);
}

// Loose earth from the heap, and sand, by the loader.
double fill_time(const EarthWork& total, const Ground& ground) {
  const double loose = total.backfill / (1 - ground.shrinkage) * (1 + ground.swell);
  return (loose + total.bedding) / loose_rate(kLoader);
}

double making_of(const Coil& coil) {
  return coil.coil_length * (is_straight(coil.pattern) ? kStraightLaying : kCoilMaking);
}

}  // namespace

double days_of(double working_time) {
  return working_time / kWorkingDay;
}

int days_paid(const CrewTime& time) {
  return static_cast<int>(std::ceil(days_of(time.open) - 1e-9));
}

CrewTime crew_time(const Layout& layout, const DigPlan& dig, const Ground& ground, const CrewWork& work) {
  CrewTime t;
  std::vector<ShopJob> jobs;
  const auto& works = work.sloped ? dig.trenches_sloped : dig.trenches_vertical;
  for (std::size_t i = 0; i < layout.trenches.size(); ++i) {
    const Trench& trench = layout.trenches[i];
    const ShopJob job{dig_time(works[i], trench.width, ground), making_of(trench.coil),
                      works[i].length * kCoilLaying};
    t.digging += job.first;
    t.trench = std::max(t.trench, job.first);
    t.making += job.set_up;
    t.coil = std::max(t.coil, job.set_up);
    t.laying += job.second;
    jobs.push_back(job);
  }
  for (const ShopStay& stay : pass_shop(jobs)) {
    t.waiting += stay.second_waited;
    t.laid = stay.left_second;
  }
  const EarthWork& header = work.sloped ? dig.header_sloped : dig.header_vertical;
  const EarthWork& run = work.sloped ? dig.run_sloped : dig.run_vertical;
  t.digging +=
      (header.bank + run.bank) / bank_rate(kExcavator, ground.swell) + work.met_by_hand * kHandCrossing;
  t.dug = t.digging;
  t.joining = (layout.header.length + layout.run.length) * kHeaderLaying + work.joints * kJointMaking;
  t.testing = kTestFilling + work.test;
  t.filling = fill_time(work.sloped ? dig.total_sloped : dig.total_vertical, ground);
  t.open = std::max(t.dug, t.laid) + t.joining + t.testing + t.filling;
  return t;
}

}  // namespace underlawn
