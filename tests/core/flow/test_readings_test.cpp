// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/test_readings.h"

#include "support/mutated_text.h"

namespace underlawn {
namespace {

std::string refusal(const std::string& text) {
  const auto readings = readings_from_text(text);
  return readings ? "read" : readings.error().message();
}

}  // namespace

TEST(TestReadings, ReadsThePressureInAnyOfItsUnits) {
  const auto psi = readings_from_text("time_min,pressure_psi,temperature_f\n0,90,59\n5,88.5,\n").value();
  ASSERT_EQ(psi.size(), 2u);
  EXPECT_NEAR(psi[0].pressure, 620528, 1);
  EXPECT_NEAR(*psi[0].temperature, 15, 1e-9);
  EXPECT_EQ(psi[1].time, 300);
  EXPECT_FALSE(psi[1].temperature);
  const auto bar = readings_from_text("Time_s;Pressure_bar\n0;6,2\n60;6,1\n").value();
  EXPECT_NEAR(bar[1].pressure, 610e3, 1e-6);
  EXPECT_NEAR(readings_from_text("pressure_kpa\ttime_h\n600\t0.5\n")->front().time, 1800, 1e-9);
}

TEST(TestReadings, RefusesByRow) {
  EXPECT_THAT(refusal("time_min,pressure_psi\n0,90\n5,x\n"), testing::HasSubstr("line 3"));
  EXPECT_THAT(refusal("time_min,pressure_psi\n0,90\n5,\n"), testing::HasSubstr("missing"));
  EXPECT_THAT(refusal("time_min,pressure_psi\n0,90\n0,89\n"), testing::HasSubstr("reading 2"));
  EXPECT_THAT(refusal("time_min,pressure_psi\n0,90000\n"), testing::HasSubstr("reading 1"));
  EXPECT_THAT(refusal("time_min,pressure_psi,temperature_c\n0,90,300\n"),
              testing::HasSubstr("Temperature of reading 1"));
  EXPECT_THAT(refusal("time_min,pressure\n0,90\n"), testing::HasSubstr("pressure_psi"));
  EXPECT_THAT(refusal("time_min,time_s,pressure_psi\n0,0,90\n"), testing::HasSubstr("time_s"));
  EXPECT_NE(refusal(""), "read");
  // One refusal names all that is missing.
  const std::string all = refusal("minutes,gauge\n0,90\n");
  for (const char* name : {"time_min", "pressure_psi", "pressure_bar", "temperature_f"})
    EXPECT_THAT(all, testing::HasSubstr(name));
}

// Seed 11.
TEST(TestReadings, SpoiledLogsAreReadOrRefusedNeverMore) {
  std::mt19937 random(11);
  std::string text = "time_min,pressure_psi,temperature_c\n";
  for (int i = 0; i < 12; ++i) text += std::to_string(5 * i) + "," + std::to_string(90 - i) + ",15\n";
  int refused = 0;
  for (int i = 0; i < 2000; ++i) {
    const auto readings = readings_from_text(mutated(text, random));
    refused += !readings;
    EXPECT_TRUE(readings ? check_readings(*readings).has_value() : !readings.error().advice.empty());
  }
  EXPECT_GT(refused, 200);
}

}  // namespace underlawn
