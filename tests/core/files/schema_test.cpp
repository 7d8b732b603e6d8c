// SPDX-License-Identifier: GPL-3.0-or-later
// What is written is what the schemas in resources/ describe. tests/files/validate_schema.py validates whole
// files; this one finds a key that nobody described.
#include <gtest/gtest.h>

#include <set>

#include "files/atomic_file.h"
#include "files/json_text.h"
#include "files/plan_file.h"
#include "files/results_file.h"
#include "support/random_plans.h"
#include "support/sample_outcome.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

using Keys = std::set<std::string>;

Json schema(const std::string& name) {
  const auto text = read_file(std::string(UNDERLAWN_SOURCE_DIR) + "/resources/" + name, 1 << 20);
  return Json::parse(text.value_or("{}"));
}

void collect_described(const Json& schema, Keys& keys) {
  for (const auto& [name, value] : schema.items()) {
    if (name == "properties")
      for (const auto& [key, described] : value.items()) {
        keys.insert(key);
        EXPECT_TRUE(described.contains("description") || described.contains("$ref"))
            << key << " is not explained";
      }
    if (value.is_structured()) collect_described(value, keys);
  }
}

void collect_written(const Json& json, Keys& keys) {
  for (const auto& [name, value] : json.items()) {
    if (json.is_object()) keys.insert(name);
    if (value.is_structured() && name != "values") collect_written(value, keys);
  }
}

Keys described_in(const std::string& name) {
  Keys keys;
  collect_described(schema(name), keys);
  return keys;
}

Keys only_in_first(const Keys& a, const Keys& b) {
  Keys only;
  std::ranges::set_difference(a, b, std::inserter(only, only.end()));
  return only;
}

}  // namespace

TEST(PlanSchema, DescribesEveryKeyWrittenAndNoOther) {
  std::mt19937_64 random(5);
  Keys written;
  for (int i = 0; i < 200; ++i)
    collect_written(Json::parse(plan_to_text(sample::random_plan(random))), written);
  const Keys described = described_in("plan.schema.json");
  EXPECT_EQ(only_in_first(written, described), Keys{});
  EXPECT_EQ(only_in_first(described, written), Keys{});
}

TEST(ResultsSchema, DescribesEveryKeyWrittenAndNoOther) {
  Keys written;
  collect_written(Json::parse(results_to_text(sample::half_acre(), sample::outcome())), written);
  Outcome other = sample::outcome();
  other.coil.pattern = CoilPattern::upright_coil;
  other.layout.trenches[0].bends = {{7, 8}};
  collect_written(Json::parse(results_to_text(sample::half_acre(), other)), written);
  other.coil.pattern = CoilPattern::four_pipes;
  other.coil.level_distance = other.coil.side_distance = 0.3;
  collect_written(Json::parse(results_to_text(sample::half_acre(), other)), written);
  const Keys described = described_in("results.schema.json");
  EXPECT_EQ(only_in_first(written, described), Keys{});
  EXPECT_EQ(only_in_first(described, written), Keys{});
}

TEST(PlanSchema, NamesTheChoicesThatTheProgramKnows) {
  const Json plan = schema("plan.schema.json");
  std::mt19937_64 random(6);
  std::set<std::string> kinds, soils, patterns;
  for (int i = 0; i < 200; ++i) {
    const Json tree = Json::parse(plan_to_text(sample::random_plan(random)));
    for (const Json& f : tree["site"]["features"]) kinds.insert(f["kind"].get<std::string>());
    patterns.insert(tree["wishes"]["pattern"].get<std::string>());
    soils.insert(tree["ground"]["soil"].get<std::string>());
  }
  EXPECT_EQ(plan["$defs"]["kind"]["enum"].get<std::set<std::string>>(), kinds);
  EXPECT_EQ(plan["properties"]["ground"]["properties"]["soil"]["enum"].get<std::set<std::string>>(), soils);
  EXPECT_EQ(plan["properties"]["wishes"]["properties"]["pattern"]["enum"].get<std::set<std::string>>(),
            patterns);
}

}  // namespace underlawn
