// SPDX-License-Identifier: GPL-3.0-or-later
// What was really dug among the figures of the calculation report: volumes worked out here from the metres
// that were written down on the job.
#include "plan/record/built_figures.h"

#include <gtest/gtest.h>

#include "files/plan_file.h"
#include "plan/solve.h"

using namespace underlawn;

namespace {

Plan sample() {
  Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/alder-lane.underlawn")->value;
  plan.thermal.years = 1;
  return plan;
}

// The second trench met rock after 21 m, the third was dug to 1.7 m only.
Plan dug_otherwise() {
  Plan plan = sample();
  BuiltTrench stopped, shallow;
  stopped.number = 2;
  stopped.length = 21;
  stopped.stopped_by = StopCause::rock;
  shallow.number = 3;
  shallow.depth = 1.7;
  plan.as_built.trenches = {stopped, shallow};
  return plan;
}

}  // namespace

TEST(BuiltFigures, NothingIsAddedWhereAllWasDugAsPlanned) {
  const Plan plan = sample();
  const Outcome planned = solve(plan);
  EXPECT_EQ(with_built(planned.figures, solve_as_built(plan, planned)), planned.figures);
}

TEST(BuiltFigures, VolumesAreThoseOfWhatWasReallyDug) {
  const Plan plan = dug_otherwise();
  const Outcome planned = solve(plan);
  const Figures all = with_built(planned.figures, solve_as_built(plan, planned));
  const auto value = [&](const std::string& key) { return all.at(key).value; };
  const double width = plan.wishes.trench_width;
  EXPECT_DOUBLE_EQ(value("built.trench.2.length"), 21);
  EXPECT_DOUBLE_EQ(value("built.trench.3.depth"), 1.7);
  // Sides stand: length x width x depth, less what is counted with the header's cut.
  EXPECT_NEAR(value("built.dig.trench.2.bank_volume"),
              21 * width * plan.wishes.trench_depth - value("dig.trench.2.bank_met_volume"), 1e-6);
  EXPECT_NEAR(value("built.dig.trench.3.bank_volume"),
              value("trench.3.length") * width * 1.7 - value("dig.trench.3.bank_met_volume"), 1e-2);
  double sum = 0;
  for (const char* part : {"trench.1", "trench.2", "trench.3", "trench.4", "header", "run"}) {
    const std::string key = "dig." + std::string(part) + ".bank_volume";
    sum += all.find("built." + key) != nullptr ? value("built." + key) : value(key);
  }
  EXPECT_NEAR(value("built.dig.total.bank_volume"), sum, 1e-9);
  EXPECT_LT(value("built.dig.total.bank_volume"), value("dig.total.bank_volume") - 15);
  // What was dug as planned is not told twice.
  EXPECT_EQ(all.find("built.trench.1.length"), nullptr);
  EXPECT_EQ(all.find("built.dig.trench.4.bank_volume"), nullptr);
}

TEST(BuiltFigures, EachNamesInputsThatStandThere) {
  const Plan plan = dug_otherwise();
  const Outcome planned = solve(plan);
  const Figures all = with_built(planned.figures, solve_as_built(plan, planned));
  int built = 0;
  for (const Figure& f : all.all()) {
    if (!f.key.starts_with("built.")) continue;
    ++built;
    EXPECT_FALSE(f.method.empty()) << f.key;
    for (const std::string& from : f.from) EXPECT_NE(all.find(from), nullptr) << f.key << " from " << from;
  }
  EXPECT_GT(built, 15);
}
