// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever numbers a plan holds, solving it ends in an outcome: troubles, findings and figures, never a
// crash.
#include <gtest/gtest.h>

#include <limits>
#include <random>

#include "plan/plan_troubles.h"
#include "plan/solve.h"
#include "support/crafted.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

constexpr unsigned kSeed = 20240611;

class Spoiler {
 public:
  explicit Spoiler(unsigned seed) : random_(seed) {}

  // A plan with up to three things about it made odd.
  Plan next() {
    Plan plan = below(4) == 0 ? sample::tiny_lot() : small();
    for (int n = 1 + below(3); n > 0; --n) spoil(plan);
    return plan;
  }

  static Plan small() {
    Plan plan = crafted::plan();
    plan.site.features.push_back(crafted::feature(2, FeatureKind::tree, {{20, 60}}));
    plan.site.features.push_back(crafted::feature(3, FeatureKind::utility, {{0, 30}, {100, 30}}));
    return plan;
  }

 private:
  int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(random_); }

  double odd() {
    constexpr double inf = std::numeric_limits<double>::infinity();
    const double values[] = {0,   -0.0, -1,           1e-300, 1e-9, 1e9, 1e308,
                             inf, -inf, std::nan(""), 0.5,    3,    50,  1000};
    return values[below(std::size(values))];
  }

  void spoil(Plan& plan) {
    switch (below(5)) {
      case 0:
        return spoil_wishes(plan.wishes);
      case 1:
        return spoil_ground(plan.ground);
      case 2:
        return spoil_lot(plan.site);
      case 3:
        return spoil_feature(
            plan.site.features[static_cast<std::size_t>(below(static_cast<int>(plan.site.features.size())))]);
      default:
        return spoil_entry(plan.site);
    }
  }

  void spoil_wishes(Wishes& w) {
    double* fields[] = {&w.pitch,        &w.coil_length,  &w.trench_length, &w.loop_diameter,
                        &w.trench_width, &w.trench_depth, &w.spacing,       &w.end_gap,
                        &w.run_width,    &w.run_depth,    &w.bedding};
    *fields[below(std::size(fields))] = odd();
    w.unknown = static_cast<CoilUnknown>(below(3));
    w.circuits = below(4) - 1;
    if (below(10) == 0) w.pipe = "no such pipe";
  }

  void spoil_ground(Ground& g) {
    double* fields[] = {&g.swell, &g.shrinkage, &g.repose, &g.frost_depth};
    *fields[below(std::size(fields))] = odd();
  }

  void spoil_lot(Site& site) {
    if (site.lot.empty()) return;
    const auto i = static_cast<std::size_t>(below(static_cast<int>(site.lot.size())));
    switch (below(5)) {
      case 0:
        site.lot[i].at.x = odd();
        break;
      case 1:
        site.lot[i].setback = odd();
        break;
      case 2:
        site.lot.resize(i);
        break;
      case 3:
        std::swap(site.lot[i], site.lot[0]);
        break;
      default:
        site.lot.insert(site.lot.begin(), site.lot[i]);
    }
  }

  void spoil_feature(Feature& f) {
    switch (below(7)) {
      case 0:
        f.kind = static_cast<FeatureKind>(below(kFeatureKinds));
        break;
      case 1:
        if (!f.points.empty()) f.points[0].y = odd();
        break;
      case 2:
        f.points.resize(static_cast<std::size_t>(below(4)));
        break;
      case 3:
        f.trench_clearance = odd();
        break;
      case 4:
        f.run_clearance = odd();
        break;
      case 5:
        f.trunk_diameter = odd();
        f.depth = odd();
        break;
      default:
        f.id = below(4);
        f.may_cross = false;
    }
  }

  void spoil_entry(Site& site) {
    switch (below(3)) {
      case 0:
        site.entry.reset();
        break;
      case 1:
        if (site.entry) site.entry->at.x = odd();
        break;
      default:
        if (site.entry) site.entry->house_id = below(12);
    }
  }

  std::mt19937 random_;
};

}  // namespace

TEST(SolveAnyPlan, EndsInAnOutcomeWhoseFiguresAreNumbersUnlessTyped) {
  Spoiler spoiler(kSeed);
  int sound = 0, placed = 0;
  Solver solver;
  for (int i = 0; i < 150; ++i) {
    const Plan plan = spoiler.next();
    const Outcome outcome = solver.solve(plan);
    sound += plan_troubles(plan).empty() ? 1 : 0;
    placed += outcome.layout.trenches.empty() ? 0 : 1;
    for (const Figure& f : outcome.figures.all())
      EXPECT_TRUE(f.method == "typed" || std::isfinite(f.value))
          << "seed " << kSeed << " plan " << i << " " << f.key;
    for (const Trouble& t : outcome.troubles) EXPECT_FALSE(t.message().empty());
    for (const Finding& f : outcome.findings)
      EXPECT_TRUE(std::isfinite(f.measured) && std::isfinite(f.required)) << f.key;
  }
  // Both kinds of plan have been met.
  EXPECT_GT(sound, 10);
  EXPECT_LT(sound, 140);
  EXPECT_GT(placed, 10);
}

}  // namespace underlawn
