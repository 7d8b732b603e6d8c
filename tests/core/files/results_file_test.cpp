// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/results_file.h"

#include <gtest/gtest.h>

#include "files/json_text.h"
#include "support/sample_outcome.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

Json results() {
  return Json::parse(results_to_text(sample::half_acre(), sample::outcome()));
}

}  // namespace

TEST(ResultsFile, SaysWhichPlanItIsOf) {
  const Json json = results();
  EXPECT_EQ(json["format_version"], 2);
  EXPECT_EQ(json["project"], "Half acre");
  EXPECT_EQ(json["fingerprint"], "0123456789ab");
}

TEST(ResultsFile, HasEveryFigureTwiceTheSame) {
  const Json json = results();
  EXPECT_EQ(json["values"].dump(), R"({"dig.bank_volume_m3":50.97,"typed.width_m":0.9144})");
  EXPECT_EQ(
      json["figures"][0].dump(),
      R"({"key":"dig.bank_volume","label":"Excavated volume","value":50.97,"unit":"m3","method":"w d l",)"
      R"("source":"","from":["typed.width"]})");
}

TEST(ResultsFile, GivesTrenchesWithTheirCoilAndEarth) {
  const Json json = results();
  const Json& trench = json["layout"]["trenches"][1];
  EXPECT_EQ(trench["role"], "supply");
  EXPECT_EQ(trench["head_m"].dump(), "[1.0,6.0]");
  EXPECT_EQ(trench["coil"]["coil_length_m"], 243.84);
  EXPECT_EQ(json["dig"]["trenches"].size(), 2u);
  EXPECT_EQ(json["layout"]["buildable_area_m2"], 1550.0);
}

TEST(ResultsFile, GivesFindingsWithPlaceAndUnit) {
  const Json finding = results()["findings"][0];
  EXPECT_EQ(finding["measured"], 3);
  EXPECT_EQ(finding["unit"], "m");
  EXPECT_EQ(finding["places_m"].dump(), "[[[1.0,2.0],[3.0,4.0]],[[5.0,6.0]]]");
  EXPECT_EQ(finding["accepted"], true);
}

TEST(ResultsFile, TellsASetbackFromAFeature) {
  const Json costs = results()["layout"]["restriction_costs"];
  EXPECT_EQ(costs.dump(), R"([{"edge":2,"trenches":1},{"feature_id":5,"trenches":1}])");
}

TEST(ResultsFile, WritesNullForWhatIsNoNumber) {
  Outcome outcome = sample::outcome();
  outcome.dig.slope = std::nan("");
  EXPECT_TRUE(Json::parse(results_to_text(Plan{}, outcome))["dig"]["slope_h_per_v"].is_null());
}

TEST(ResultsFile, IsTheSameEveryTime) {
  EXPECT_EQ(results_to_text(sample::half_acre(), sample::outcome()),
            results_to_text(sample::half_acre(), sample::outcome()));
}

TEST(ResultsFile, GivesTheBendsOfATrenchThatHasAny) {
  Outcome outcome = sample::outcome();
  outcome.layout.trenches[0].bends = {{7, 8}, {9, 10}};
  const Json trenches = Json::parse(results_to_text(sample::half_acre(), outcome))["layout"]["trenches"];
  EXPECT_EQ(trenches[0]["bends_m"].dump(), "[[7.0,8.0],[9.0,10.0]]");
  EXPECT_FALSE(trenches[1].contains("bends_m"));
}

}  // namespace underlawn
