// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_pressure.h"

#include "flow/test_safety.h"

namespace underlawn {
namespace {

const LoopVolume kLoop = {{{"coil", 0.0215, 0.0267, 11, 900}, {"header", 0.04, 0.0483, 15.5, 60}}};

RatedPart weakest(double temperature, const std::vector<RatedPart>& typed = {}) {
  return weakest_part(rated_parts(kLoop, PeMaterial::pe3408, temperature, typed).value()).value();
}

}  // namespace

TEST(TestPressure, IsTakenFromTheWeakestPartAtItsTemperature) {
  EXPECT_EQ(weakest(20).name, "header");
  EXPECT_LT(weakest(38).rating, 0.8 * weakest(20).rating);
  EXPECT_EQ(weakest(20, {{"valve", 500e3}}).name, "valve");
}

TEST(TestPressure, IsHalfAsMuchAgainAsTheWorkingPressure) {
  const TestPressure test = test_pressure(400e3, {"pipe", 1100e3}, 2).value();
  EXPECT_NEAR(test.at_lowest, 600e3, 1e-6);
  EXPECT_NEAR(test.at_gauge, 600e3 - 1000 * 9.80665 * 2, 1e-6);
  EXPECT_FALSE(test.capped);
  const TestPressure capped = test_pressure(400e3, {"valve", 500e3}, 0).value();
  EXPECT_EQ(capped.at_gauge, 500e3);
  EXPECT_TRUE(capped.capped);
  EXPECT_THAT(capped.why, testing::HasSubstr("valve"));
}

TEST(TestPressure, IsRefusedAboveWhatThePipeBears) {
  const RatedPart pipe = {"coil", 1000e3};
  EXPECT_TRUE(check_test_pressure(1000e3, pipe, 0));
  EXPECT_FALSE(check_test_pressure(990e3, pipe, 2));  // 20 kPa more stand at the bottom
  EXPECT_EQ(check_test_pressure(1001e3, pipe, 0).error().code, "test_pressure_above_rating");
  EXPECT_THAT(check_test_pressure(1001e3, pipe, 0).error().message(), testing::HasSubstr("cooler"));
  EXPECT_FALSE(check_test_pressure(NAN, pipe, 0));
  EXPECT_EQ(test_pressure(1100e3, pipe, 0).error().code, "test_working_pressure");
  EXPECT_EQ(test_pressure(100e3, pipe, 40).error().code, "test_gauge_height");
  EXPECT_EQ(test_pressure(100e3, pipe, NAN).error().code, "test_gauge_height");
  EXPECT_EQ(rated_parts(kLoop, PeMaterial::pe4710, 70, {}).error().code, "rating_temperature");
  EXPECT_EQ(weakest_part({}).error().code, "rating_no_parts");
  EXPECT_EQ(weakest_part({{"valve", -1}}).error().code, "rating_of_part");
}

TEST(TestPressure, CautionsSayWaterOnlyAndHowMuchWorseAirIs) {
  const auto words = test_cautions(kLoop, 600e3);
  EXPECT_THAT(words.front(), testing::HasSubstr("water only"));
  EXPECT_THAT(words.front(), testing::ContainsRegex("about [1-9][0-9]0 times"));
  EXPECT_THAT(words, testing::Contains(testing::HasSubstr("slowly")));
  EXPECT_THAT(words, testing::Contains(testing::HasSubstr("Stand clear")));
  EXPECT_FALSE(test_cautions({}, 600e3).empty());
}

}  // namespace underlawn
