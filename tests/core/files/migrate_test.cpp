// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/migrate.h"

#include <gtest/gtest.h>

#include "files/plan_file.h"

namespace underlawn {
namespace {

void rename_depth(Json& tree, std::vector<Trouble>& remarks) {
  tree["depth_m"] = tree["depth"];
  tree.erase("depth");
  remarks.push_back({"migrated", "depth", "", "", ""});
}

void double_depth(Json& tree, std::vector<Trouble>&) {
  tree["depth_m"] = 2 * tree["depth_m"].get<double>();
}

const MigrationStep kSteps[] = {rename_depth, double_depth};

}  // namespace

TEST(Migrate, RunsEveryStepFromTheVersionOn) {
  std::vector<Trouble> remarks;
  Json tree = Json::parse(R"({"format_version": 1, "depth": 3})");
  migrate(tree, 1, kSteps, remarks);
  EXPECT_EQ(tree.dump(), R"({"format_version":3,"depth_m":6.0})");
  EXPECT_EQ(remarks.size(), 1u);
}

TEST(Migrate, SkipsTheStepsBehindIt) {
  std::vector<Trouble> remarks;
  Json tree = Json::parse(R"({"format_version": 2, "depth_m": 3})");
  migrate(tree, 2, kSteps, remarks);
  EXPECT_EQ(tree.dump(), R"({"format_version":3,"depth_m":6.0})");
  migrate(tree, 3, kSteps, remarks);
  EXPECT_EQ(tree.dump(), R"({"format_version":3,"depth_m":6.0})");
  EXPECT_TRUE(remarks.empty());
}

TEST(Migrate, HasAStepForEveryOlderFormat) {
  EXPECT_EQ(migration_steps().size(), static_cast<std::size_t>(kPlanFormat - 1));
}

}  // namespace underlawn
