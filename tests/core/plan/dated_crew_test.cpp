// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/dated_crew.h"

#include <gtest/gtest.h>

#include "cost/crew_calendar.h"
#include "files/plan_file.h"
#include "plan/checks/rules.h"
#include "plan/solve.h"

namespace underlawn {

TEST(DatedCrew, BeginsOnTheDayOfTheProposalWhereItsOwnIsEmpty) {
  Plan plan;
  plan.proposal.start = " 2027-05-17 ";
  EXPECT_EQ(dated_crew(plan).start, "2027-05-17");
  plan.crew.start = "2027-05-20";
  EXPECT_EQ(dated_crew(plan).start, "2027-05-20");
  plan.crew.start.clear();
  plan.proposal.start = "in the second half of May";
  EXPECT_EQ(dated_crew(plan).start, "");
}

// 17 May 2027 is a Monday (any almanac); the samples are worked Monday to Friday.
TEST(DatedCrew, CalendarOfASampleHasThoseDates) {
  const Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/alder-lane.underlawn")->value;
  const Outcome outcome = solve(plan);
  ASSERT_NE(outcome.calendar, nullptr);
  ASSERT_GT(outcome.calendar->days.size(), 5u);
  EXPECT_EQ(outcome.calendar->days[0].date, "2027-05-17");
  EXPECT_EQ(outcome.calendar->days[4].date, "2027-05-21");
  EXPECT_EQ(outcome.calendar->days[5].date, "2027-05-24");
}

TEST(DatedCrew, TwoFirstDaysAreAFinding) {
  Plan plan;
  plan.proposal.start = "2027-05-17";
  EXPECT_TRUE(checks::first_days_differ(plan, {}).empty());
  plan.crew.start = "2027-05-17";
  EXPECT_TRUE(checks::first_days_differ(plan, {}).empty());
  plan.crew.start = "2027-05-20";
  const auto found = checks::first_days_differ(plan, {});
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].title, "The crew begins on 2027-05-20, the proposal says 2027-05-17");
}

}  // namespace underlawn
