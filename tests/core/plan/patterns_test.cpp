// SPDX-License-Identifier: GPL-3.0-or-later
// Every pattern through the whole of solve.
#include <gtest/gtest.h>

#include "files/plan_file.h"
#include "plan/plan_troubles.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

Plan with(CoilPattern pattern) {
  Plan plan = sample::half_acre();
  plan.wishes.pattern = pattern;
  plan.wishes.trench_width = usual_trench_width(pattern);
  return plan;
}

std::vector<CoilPattern> all_patterns() {
  std::vector<CoilPattern> all;
  for (int i = 0; i < kCoilPatterns; ++i) all.push_back(static_cast<CoilPattern>(i));
  return all;
}

bool has(const Outcome& outcome, std::string_view rule) {
  return std::ranges::any_of(outcome.findings, [&](const Finding& f) { return f.rule == rule; });
}

}  // namespace

TEST(Patterns, AreAllPlacedDugAndCounted) {
  for (CoilPattern pattern : all_patterns()) {
    const Plan plan = with(pattern);
    const Outcome outcome = solve(plan);
    SCOPED_TRACE(pattern_name(pattern));
    EXPECT_TRUE(outcome.troubles.empty()) << outcome.troubles.front().message();
    ASSERT_EQ(outcome.layout.trenches.size(), 4U);
    for (const Trench& t : outcome.layout.trenches) {
      EXPECT_EQ(t.coil.pattern, pattern);
      EXPECT_NEAR(distance(t.head, t.end), t.coil.trench_length, 1e-6);
      EXPECT_EQ(t.width, plan.wishes.trench_width);
    }
    EXPECT_GT(outcome.dig.total.bank, 0);
    EXPECT_NEAR(outcome.figures.at("buy.coil_pipe").value, 4 * (outcome.coil.coil_length + 2 * 0.6), 1e-9);
    EXPECT_NE(outcome.flow, nullptr);
    ASSERT_NE(outcome.temperatures, nullptr);
    EXPECT_GT(outcome.temperatures->pipe, 0.99 * 4 * outcome.coil.coil_length);
    EXPECT_GT(outcome.temperatures->response_ten_years, outcome.temperatures->response_hour);
    EXPECT_LT(outcome.temperatures->fit_error, 0.002);
  }
}

TEST(Patterns, ChecksOfLoopsAreSilentWhereThereAreNone) {
  for (CoilPattern pattern : all_patterns()) {
    if (!is_straight(pattern)) continue;
    Plan plan = with(pattern);
    plan.wishes.loop_diameter = 0.01;  // no pipe bends so tight, and none has to
    plan.wishes.pipe = "2 in DR 11";
    const Outcome outcome = solve(plan);
    EXPECT_TRUE(outcome.troubles.empty()) << outcome.troubles.front().message();
    for (const char* rule : {"bend_too_tight", "coil_pitch_range", "coil_wider_than_trench"})
      EXPECT_FALSE(has(outcome, rule)) << rule << ", " << pattern_name(pattern);
  }
}

TEST(Patterns, WidthIsAskedOfTheTrenchByWhatLiesInIt) {
  Plan plan = with(CoilPattern::upright_coil);
  EXPECT_FALSE(has(solve(plan), "coil_wider_than_trench"));
  plan.wishes.pattern = CoilPattern::flat_coil;  // in a 6 in trench
  EXPECT_TRUE(has(solve(plan), "coil_wider_than_trench"));
  plan = with(CoilPattern::four_pipes);
  plan.wishes.trench_width = plan.wishes.side_distance - 0.05;
  EXPECT_TRUE(has(solve(plan), "coil_wider_than_trench"));
}

TEST(Patterns, WhatStandsOutOfTheGroundIsRefused) {
  Plan plan = with(CoilPattern::upright_coil);
  plan.wishes.trench_depth = plan.wishes.loop_diameter;
  auto troubles = wishes_troubles(plan);
  ASSERT_EQ(troubles.size(), 1U);
  EXPECT_EQ(troubles[0].thing, "Trench depth");
  plan = with(CoilPattern::six_pipes);
  plan.wishes.level_distance = plan.wishes.trench_depth / 2;
  troubles = wishes_troubles(plan);
  ASSERT_EQ(troubles.size(), 1U);
  EXPECT_EQ(troubles[0].thing, "Trench depth");
  plan.wishes.pattern = CoilPattern::two_pipes;
  EXPECT_TRUE(wishes_troubles(plan).empty());
}

TEST(Patterns, WishesOfOnePatternDoNotTouchAFlatCoil) {
  const Plan plan = with(CoilPattern::flat_coil);
  Plan other = plan;
  other.wishes.level_distance = 0.7;
  other.wishes.side_distance = 0.7;
  other.wishes.return_on_top = false;
  const Outcome a = solve(plan), b = solve(other);
  EXPECT_EQ(a.fingerprint, b.fingerprint);
  EXPECT_EQ(a.figures, b.figures);
  EXPECT_EQ(plan_to_text(plan).find("level_distance"), std::string::npos);
  EXPECT_NE(plan_to_text(other).find("level_distance_m"), std::string::npos);
}

}  // namespace underlawn
