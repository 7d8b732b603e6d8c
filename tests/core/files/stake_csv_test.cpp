// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/stake_csv.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "base/csv.h"
#include "plan/solve.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;

struct Row {
  Point at, base;
  std::vector<std::string> fields;
};

// Where two circles meet, on the side asked for: written anew, none of the program's own.
Point crossing(Point a, double r, Point b, double s, bool left) {
  const double d = std::hypot(b.x - a.x, b.y - a.y);
  const double along = (r * r - s * s + d * d) / (2 * d);
  const double off = std::sqrt(std::max(0.0, r * r - along * along)) * (left ? 1 : -1);
  const Point u{(b.x - a.x) / d, (b.y - a.y) / d};
  return {a.x + along * u.x - off * u.y, a.y + along * u.y + off * u.x};
}

// A reader given only the list finds every stake again, three ways.
void find_all_again(const Plan& plan, double unit) {
  const Outcome outcome = solve(plan);
  const auto table = csv_from_text(stake_csv(plan, outcome), "bad", "the list");
  ASSERT_TRUE(table);
  std::map<std::string, Point> corners;
  int stakes = 0, checked = 0;
  for (const CsvRow& row : table->rows) {
    ASSERT_EQ(row.fields.size(), 17u);
    if (row.fields[0] == "kind") continue;
    const auto value = [&](std::size_t i) { return unit * std::stod(row.fields[i]); };
    const Point at{value(2), value(3)};
    if (row.fields[0] == "corner") {
      corners[row.fields[1]] = at;
      continue;
    }
    ++stakes;
    const Point a = corners.at(row.fields[5]), b = corners.at(row.fields[7]);
    const Point taped = crossing(a, value(6), b, value(8), row.fields[9] == "left");
    EXPECT_LT(std::hypot(taped.x - at.x, taped.y - at.y), 0.01) << row.fields[1];
    if (!row.fields[11].empty()) {
      const Point c = corners.at(row.fields[11]);
      EXPECT_NEAR(std::hypot(c.x - at.x, c.y - at.y), value(12), 0.002) << row.fields[1];
      EXPECT_NE(row.fields[11], row.fields[5]);
      EXPECT_NE(row.fields[11], row.fields[7]);
      ++checked;
    }
    const Point from = corners.at(row.fields[13]), to = corners.at(row.fields[14]);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const Point u{(to.x - from.x) / length, (to.y - from.y) / length};
    const Point offset{from.x + value(15) * u.x - value(16) * u.y,
                       from.y + value(15) * u.y + value(16) * u.x};
    EXPECT_LT(std::hypot(offset.x - at.x, offset.y - at.y), 0.01) << row.fields[1];
  }
  EXPECT_EQ(stakes, static_cast<int>(outcome.stake_out.ties.size()));
  EXPECT_GT(stakes, 8);
  EXPECT_GT(checked, 0);
}

}  // namespace

TEST(StakeCsv, TheListAloneGivesEveryStakeBackInFeetAndMetres) {
  Plan plan = sample::half_acre();
  find_all_again(plan, kFoot);
  plan.units = UnitSystem::metric;
  find_all_again(plan, 1);
}

// A slope of 1 in 20 to the east, from three spot heights.
TEST(StakeCsv, ElevationIsThatOfTheGround) {
  Plan plan = sample::half_acre();
  plan.units = UnitSystem::metric;
  plan.site.heights = {{{0, -100}, 10}, {{0, 200}, 10}, {{100, 50}, 15}};
  const auto table = csv_from_text(stake_csv(plan, solve(plan)), "bad", "the list");
  ASSERT_TRUE(table);
  ASSERT_GT(table->rows.size(), 8u);
  for (std::size_t i = 1; i < table->rows.size(); ++i)
    EXPECT_NEAR(std::stod(table->rows[i].fields[4]), 10 + std::stod(table->rows[i].fields[2]) / 20, 0.002);
}

}  // namespace underlawn
