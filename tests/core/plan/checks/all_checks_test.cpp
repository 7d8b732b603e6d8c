// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <set>

#include "plan/checks/check.h"
#include "support/crafted.h"

namespace underlawn {
namespace {

// Two trenches that break several rules at once.
Outcome bad_outcome(const Plan& plan) {
  return crafted::outcome(plan, {crafted::trench(1, {30, 1}, {101, 1}), crafted::trench(2, {30, 2}, {101, 2}),
                                 crafted::trench(3, {45, 5}, {45, 45})});
}

}  // namespace

TEST(AllChecks, ListEachRuleOnceWithASentence) {
  std::set<std::string> rules;
  for (const CheckEntry& check : all_checks()) {
    EXPECT_TRUE(rules.insert(check.rule).second) << check.rule;
    EXPECT_EQ(std::string(check.explains).back(), '.') << check.rule;
  }
  EXPECT_GE(rules.size(), 15u);
}

TEST(AllChecks, GiveKeysThatAreUniqueAndBeginWithTheirRule) {
  const Plan plan = crafted::plan();
  std::set<std::string> keys;
  for (const CheckEntry& check : all_checks())
    for (const Finding& f : check.run(plan, bad_outcome(plan))) {
      EXPECT_TRUE(keys.insert(f.key).second) << f.key;
      EXPECT_EQ(f.rule, check.rule);
      EXPECT_EQ(f.key.rfind(f.rule, 0), 0u);
      EXPECT_FALSE(f.title.empty());
      EXPECT_FALSE(f.advice.empty()) << f.key;
      EXPECT_FALSE(f.source.empty()) << f.key;
    }
  EXPECT_GE(keys.size(), 6u);
}

TEST(RunChecks, PutErrorsFirstThenByKey) {
  const Plan plan = crafted::plan();
  const auto findings = run_checks(plan, bad_outcome(plan));
  ASSERT_GE(findings.size(), 2u);
  for (std::size_t i = 1; i < findings.size(); ++i) {
    const Finding &a = findings[i - 1], &b = findings[i];
    EXPECT_TRUE(a.severity > b.severity || (a.severity == b.severity && a.key < b.key))
        << a.key << " " << b.key;
  }
}

TEST(RunChecks, MarkWhatThePlanAccepts) {
  Plan plan = crafted::plan();
  plan.accepted = {{"trench_outside_lot/trench-1", "The neighbour agreed in writing."},
                   {"trench_spacing/trench-1/trench-2", ""}};
  int accepted = 0;
  for (const Finding& f : run_checks(plan, bad_outcome(plan))) {
    if (!f.accepted) continue;
    ++accepted;
    EXPECT_EQ(f.key, "trench_outside_lot/trench-1");
    EXPECT_EQ(f.reason, "The neighbour agreed in writing.");
  }
  EXPECT_EQ(accepted, 1);
}

TEST(RunChecks, AreQuietOnAnEmptyPlanAndOnASoundOne) {
  EXPECT_TRUE(run_checks(Plan{}, Outcome{}).empty());
  const Plan plan = crafted::plan();
  for (const Finding& f : run_checks(plan, crafted::two_trenches(plan)))
    EXPECT_EQ(f.severity, Severity::hint) << f.key;
}

}  // namespace underlawn
