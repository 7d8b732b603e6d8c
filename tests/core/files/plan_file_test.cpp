// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/plan_file.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "files/atomic_file.h"
#include "files/json_text.h"
#include "support/random_plans.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

WithRemarks<Plan> loaded(std::string_view text) {
  auto plan = plan_from_text(text);
  EXPECT_TRUE(plan.has_value()) << (plan ? "" : plan.error().message());
  return plan ? *plan : WithRemarks<Plan>{};
}

std::vector<std::string> remarks_on(std::string_view text) {
  std::vector<std::string> all;
  for (const Trouble& t : loaded(text).remarks) all.push_back(t.message());
  return all;
}

std::string refusal(std::string_view text) {
  const auto plan = plan_from_text(text);
  return plan ? "loaded" : plan.error().message();
}

// The half acre's text with the first `from` in it turned into `to`.
std::string damaged(std::string_view from, std::string_view to) {
  std::string text = plan_to_text(sample::half_acre());
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

}  // namespace

TEST(PlanFile, LoadingGivesThePlanThatWasSaved) {
  for (const Plan& plan : {sample::half_acre(), sample::tiny_lot(), sample::empty(), Plan{}}) {
    const auto back = loaded(plan_to_text(plan));
    EXPECT_EQ(back.value, plan);
    EXPECT_THAT(back.remarks, IsEmpty());
  }
}

TEST(PlanFile, LoadingAndSavingGivesTheSameBytesOnRandomPlans) {
  std::mt19937_64 random(20);
  for (int i = 0; i < 2000; ++i) {
    const Plan plan = sample::random_plan(random);
    const std::string text = plan_to_text(plan);
    const auto back = loaded(text);
    ASSERT_EQ(back.value, plan) << "seed 20, plan " << i;
    ASSERT_EQ(plan_to_text(back.value), text) << "seed 20, plan " << i;
    ASSERT_THAT(back.remarks, IsEmpty()) << back.remarks.front().message();
  }
}

TEST(PlanFile, LoadingAndSavingTheSamplesGivesTheSameBytes) {
  int samples = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(UNDERLAWN_SOURCE_DIR) + "/samples")) {
    if (entry.path().extension() != kPlanSuffix) continue;
    ++samples;
    const std::string text = *read_file(entry.path(), kLargestFile);
    const auto back = loaded(text);
    EXPECT_EQ(plan_to_text(back.value), text) << entry.path();
    EXPECT_THAT(back.remarks, IsEmpty());
  }
  EXPECT_GE(samples, 2);
}

TEST(PlanFile, AFormatThatKnewOneAimLoadsWithoutARemark) {
  const auto text =
      read_file(std::string(UNDERLAWN_SOURCE_DIR) + "/tests/files/old/format-2.underlawn", kLargestFile);
  const auto back = loaded(*text);
  EXPECT_THAT(back.remarks, IsEmpty());
  EXPECT_EQ(back.value.site.features.size(), 18u);
  EXPECT_EQ(back.value.wishes.aim, Aim::digging);
  EXPECT_EQ(back.value.wishes.prices, Prices{});
  EXPECT_EQ(back.value.wishes.circuits, 4);
}

TEST(PlanFile, AnOlderFormatLoadsWithoutARemark) {
  const auto text =
      read_file(std::string(UNDERLAWN_SOURCE_DIR) + "/tests/files/old/format-1.underlawn", kLargestFile);
  const auto back = loaded(*text);
  EXPECT_THAT(back.remarks, IsEmpty());
  EXPECT_EQ(back.value.site.features.size(), 18u);
  EXPECT_EQ(back.value.thermal, ThermalWishes{});
  EXPECT_EQ(back.value.flow, FlowWishes{});
}

TEST(PlanFile, BeginsWithTheFormatVersionAndHasOneRecordALine) {
  const std::string text = plan_to_text(sample::half_acre());
  EXPECT_THAT(text, StartsWith("{\n  \"format_version\": 3,\n  \"units\": \"us\",\n"));
  EXPECT_THAT(text, HasSubstr("\n      {\"at_m\": [0.0, 0.0], \"setback_m\": 3.048},\n"));
  EXPECT_THAT(
      text,
      HasSubstr("\n      {\"id\": 5, \"kind\": \"well\", \"name\": \"Well\", \"points_m\": [[6.096, 15.24]], "
                "\"trench_clearance_m\": 7.62, \"run_clearance_m\": 7.62},\n"));
  EXPECT_THAT(text, HasSubstr("\n    \"trench_depth_m\": 1.8288,\n"));
  EXPECT_EQ(text.back(), '\n');
}

TEST(PlanFile, SortsFeaturesAndAcceptancesOnSaving) {
  Plan plan = sample::half_acre();
  plan.accepted = {{"a", "one"}, {"b", "two"}};
  const std::string text = plan_to_text(plan);
  std::ranges::reverse(plan.site.features);
  std::ranges::reverse(plan.accepted);
  EXPECT_EQ(plan_to_text(plan), text);
}

TEST(PlanFile, RefusesANewerVersionNamingBoth) {
  EXPECT_EQ(
      refusal(R"({"format_version": 7})"),
      "The plan is of format_version 7; it must be at most of format_version 3, the newest that this program "
      "knows. It was written by a newer Underlawn: install that, or save the plan there for this one.");
}

TEST(PlanFile, RefusesWhatIsNoPlan) {
  for (const char* text : {"[]", "3", "null", "{}", R"({"format_version": "1"})", R"({"format_version": 0})",
                           R"({"format_version": 1.5})", R"({"format_version": null})"})
    EXPECT_THAT(refusal(text), StartsWith("The file is JSON but no plan")) << text;
}

TEST(PlanFile, RefusesWhatIsNotJsonWithLineAndColumn) {
  EXPECT_THAT(refusal(""), StartsWith("The plan ends too early, in line 1, column 1."));
  EXPECT_THAT(refusal("hello"), StartsWith("The plan is not JSON from line 1, column 1 on, at “h”."));
  EXPECT_THAT(refusal("{\n  \"ä\": NaN}"), StartsWith("The plan is not JSON from line 2, column 8 on"));
  EXPECT_THAT(refusal("{\"format_version\": 1,\n \"x\": 1e999}"),
              StartsWith("The plan has a number too large to hold in line 2, column 1"));
}

TEST(PlanFile, RefusesEveryTruncation) {
  const std::string text = plan_to_text(sample::half_acre());
  for (std::size_t size = 0; size + 2 < text.size(); size += 7)
    ASSERT_NE(refusal(text.substr(0, size)), "loaded") << size;
}

TEST(PlanFile, RefusesDeepNestingAndTooMuch) {
  EXPECT_THAT(refusal(std::string(1'000'000, '[')), HasSubstr("nested deeper than 32 levels"));
  std::string objects;
  for (int i = 0; i < 100'000; ++i) objects += "{\"a\":";
  EXPECT_THAT(refusal(objects), HasSubstr("nested deeper than 32 levels"));
  EXPECT_THAT(refusal(std::string((64u << 20) + 1, ' ')), HasSubstr("67108865 bytes long"));
  std::string values = "[0";
  for (int i = 0; i < 6'100'000; ++i) values += ",0";
  EXPECT_THAT(refusal(values + "]"), HasSubstr("more than 6000000 values"));
  std::string keys = "{\"k\": 0";
  for (int i = 0; i < 500'000; ++i) keys += ",\"" + std::to_string(i) + "\": 0";
  EXPECT_THAT(refusal(keys + "}"), HasSubstr("an object with more than 1000 keys"));
}

TEST(PlanFile, LeavesOutABadFeatureAndKeepsTheRest) {
  const Plan whole = sample::half_acre();
  const std::pair<const char*, const char*> damages[] = {
      {"\"kind\": \"tree\"", "\"kind\": \"shrub\""},
      {"\"kind\": \"tree\", ", ""},
      {"\"kind\": \"tree\", \"name\": \"Oak\", \"points_m\": [[",
       "\"kind\": \"tree\", \"name\": \"Oak\", \"points_m\": [[null, "},
      {"\"kind\": \"tree\", \"name\": \"Oak\", \"points_m\"",
       "\"kind\": \"tree\", \"name\": \"Oak\", \"points\""},
  };
  for (const auto& [from, to] : damages) {
    const auto back = loaded(damaged(from, to));
    EXPECT_EQ(back.value.site.features.size(), whole.site.features.size() - 1) << to;
    EXPECT_EQ(find_feature(back.value.site, sample::oak), nullptr);
    ASSERT_EQ(back.remarks.size(), 1u) << to;
    EXPECT_THAT(back.remarks[0].message(), HasSubstr("feature 6 in the file, id 6, “Oak”")) << to;
  }
}

TEST(PlanFile, TakesTheUsualValueForOneItCannotUse) {
  EXPECT_THAT(
      remarks_on(damaged("\"trench_depth_m\": 1.8288", "\"trench_depth_m\": \"deep\"")),
      ElementsAre(
          "The value trench_depth_m of part wishes is “deep”; it must be a number. The usual value was "
          "taken."));
  EXPECT_THAT(remarks_on(damaged("\"circuits\": 4", "\"circuits\": 1e300")),
              ElementsAre(HasSubstr("must be a whole number")));
  EXPECT_THAT(remarks_on(damaged("\"soil\": \"type_c\"", "\"soil\": \"mud\"")),
              ElementsAre(HasSubstr("must be stable_rock, type_a, type_b or type_c")));
  EXPECT_THAT(remarks_on(damaged("\"coil_in_run\": true", "\"coil_in_run\": 1")),
              ElementsAre(HasSubstr("must be true or false")));
}

TEST(PlanFile, SaysWhatIsMissing) {
  EXPECT_THAT(remarks_on(R"({"format_version": 3})"),
              ElementsAre("The plan has no “accepted”, “flow”, “ground”, “site”, “test”, “thermal”, “title”, "
                          "“units”, “wishes”. "
                          "The usual values were taken."));
  EXPECT_EQ(loaded(R"({"format_version": 3})").value, Plan{});
}

TEST(PlanFile, SaysWhatItDoesNotUnderstand) {
  EXPECT_THAT(remarks_on(damaged("\"units\"", "\"colour\": 3, \"units\"")),
              ElementsAre(StartsWith("The plan has “colour”, which is not understood. It was left out")));
  EXPECT_THAT(
      remarks_on(damaged("\"id\": 6", "\"id\": 6, \"leaves\": []")),
      ElementsAre(StartsWith("Feature 6 in the file, id 6, “Oak” has “leaves”, which is not understood.")));
  EXPECT_THAT(remarks_on(damaged("\"units\"", "\"units\": \"metric\", \"units\"")),
              ElementsAre("The key “units” is there twice; it must be there once. The last one was taken."));
}

TEST(PlanFile, GivesAFeatureWhoseIdIsTakenItsOwn) {
  const auto back = loaded(damaged("\"id\": 6", "\"id\": 5"));
  EXPECT_EQ(back.value.site.features.size(), sample::half_acre().site.features.size());
  EXPECT_EQ(back.value.site.features.back().name, "Oak");
  EXPECT_EQ(back.value.site.features.back().id, 11);
  ASSERT_EQ(back.remarks.size(), 1u);
  EXPECT_EQ(back.remarks[0].message(),
            "The id of feature “Oak” is 5, as that of another one; it must be from 1 to 1000000000 and its "
            "own. It got "
            "the id 11.");
}

TEST(PlanFile, FindsAnIdEvenBelowTheLargest) {
  std::string text = damaged("\"id\": 10,", "\"id\": 1000000000,");
  text.replace(text.find("\"id\": 5,"), 8, "\"id\": 6,");
  const auto back = loaded(text);
  EXPECT_EQ(back.value.site.features[4].id, 5);
  EXPECT_EQ(back.value.site.features[4].name, "Oak");
  EXPECT_EQ(plan_to_text(loaded(plan_to_text(back.value)).value), plan_to_text(back.value));
}

TEST(PlanFile, KeepsARingOfTwoPointsForTheChecksToName) {
  Plan plan = sample::half_acre();
  plan.site.features[0].points.resize(2);
  EXPECT_EQ(loaded(plan_to_text(plan)).value, plan);
}

TEST(PlanFile, LeavesOutAFeatureOfAMillionPoints) {
  Plan plan = sample::half_acre();
  plan.site.features[1].points.assign(1'000'000, Point{1, 2});
  const auto back = loaded(plan_to_text(plan));
  EXPECT_EQ(back.value.site.features.size(), plan.site.features.size() - 1);
  ASSERT_EQ(back.remarks.size(), 1u);
  EXPECT_THAT(back.remarks[0].message(),
              HasSubstr("a list of 1000000; it must be a list of 1 to 20000 points"));
}

TEST(PlanFile, ShowsBytesThatAreNotUtf8AsReplacements) {
  const auto back = loaded(damaged("\"Oak\"", "\"O\xff\xc3k\""));
  EXPECT_EQ(find_feature(back.value.site, sample::oak)->name, "O\uFFFD\uFFFDk");
  ASSERT_EQ(back.remarks.size(), 1u);
  EXPECT_EQ(back.remarks[0].message(), "The plan has 2 bytes that are not UTF-8. Each is shown as \uFFFD.");
  Plan plan;
  plan.title.owner = "O\xffk";
  EXPECT_EQ(loaded(plan_to_text(plan)).value.title.owner, "O\uFFFDk");
}

TEST(PlanFile, BoundsItsRemarks) {
  std::string corners = "{\"format_version\": 1, \"site\": {\"lot\": [0";
  for (int i = 0; i < 100'000; ++i) corners += ",0";
  const auto back = loaded(corners + "]}}");
  EXPECT_EQ(back.remarks.size(), 201u);
  EXPECT_THAT(back.remarks.back().message(), StartsWith("There are "));
}

TEST(PlanFile, SurvivesTwentyThousandMutations) {
  std::mt19937_64 random(7);
  const std::string whole = plan_to_text(sample::half_acre());
  int read = 0;
  for (int i = 0; i < 20'000; ++i) {
    const std::string text = sample::mutated(whole, random);
    const auto plan = plan_from_text(text);
    if (!plan) {
      ASSERT_FALSE(plan.error().message().empty());
      continue;
    }
    ++read;
    const std::string again = plan_to_text(plan->value);
    const auto back = plan_from_text(again);
    ASSERT_TRUE(back.has_value()) << "seed 7, mutation " << i;
    ASSERT_EQ(plan_to_text(back->value), again) << "seed 7, mutation " << i;
  }
  EXPECT_GT(read, 1000);
}

}  // namespace underlawn
