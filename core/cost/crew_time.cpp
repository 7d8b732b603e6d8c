// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/crew_time.h"

#include "cost/flow_shop.h"

namespace underlawn {

namespace {

double dig_time(const EarthWork& work, double width, double rate, const CrewWishes& crew) {
  return width < kNarrowestBucket ? work.length * crew.trencher : work.bank / rate;
}

// Loose earth from the heap, and sand, by the loader.
double fill_time(const EarthWork& total, const Ground& ground, const Machine& loader) {
  const double loose = total.backfill / (1 - ground.shrinkage) * (1 + ground.swell);
  return (loose + total.bedding) / loose_rate(loader);
}

double making_of(const Coil& coil, const CrewWishes& crew) {
  return coil.coil_length * (is_straight(coil.pattern) ? crew.straight_making : crew.coil_making);
}

}  // namespace

double days_of(double working_time, double day_length) {
  return working_time / day_length;
}

int days_paid(const CrewTime& time, double day_length) {
  return static_cast<int>(std::ceil(days_of(time.open, day_length) - 1e-9));
}

CrewTime crew_time(const Layout& layout, const DigPlan& dig, const Ground& ground, const CrewWork& work,
                   const CrewWishes& crew, const Machine& excavator) {
  CrewTime t;
  std::vector<ShopJob> jobs;
  const double rate = bank_rate(excavator, ground.swell);
  const auto& works = work.sloped ? dig.trenches_sloped : dig.trenches_vertical;
  for (std::size_t i = 0; i < layout.trenches.size(); ++i) {
    const Trench& trench = layout.trenches[i];
    const ShopJob job{dig_time(works[i], trench.width, rate, crew), making_of(trench.coil, crew),
                      works[i].length * crew.coil_laying};
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
  t.digging += (header.bank + run.bank) / rate + work.met_by_hand * crew.hand_crossing;
  t.dug = t.digging;
  t.joining =
      (layout.header.length + layout.run.length) * crew.header_laying + work.joints * crew.joint_making;
  t.testing = crew.test_filling + work.test;
  t.filling = fill_time(work.sloped ? dig.total_sloped : dig.total_vertical, ground, crew.loader);
  t.open = std::max(t.dug, t.laid) + t.joining + t.testing + t.filling;
  return t;
}

}  // namespace underlawn
