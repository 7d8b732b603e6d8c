// SPDX-License-Identifier: GPL-3.0-or-later
// Record and as-built in the plan file.
#include <gtest/gtest.h>

#include "files/plan_file.h"
#include "support/mutated_text.h"

namespace underlawn {
namespace {

Plan recorded() {
  Plan p;
  TestRecord& t = p.record.test;
  t = {"2026-05-14 09:30",
       "2026-05-14 14:30",
       "trenches 1 to 3",
       TestMedium::air,
       TestResult::passed,
       "J. Doe",
       "R. Roe",
       "G-17",
       "2026-01-02",
       1.1e6,
       "dry",
       12.5,
       "2026-05-15",
       4e5,
       "first try"};
  FlushReading f;
  f.open = {1, 3};
  f.direction = FlushDirection::reverse;
  f.when = "2026-05-15";
  f.duration = 1800;
  f.flow = 1.5e-3;
  f.pressure_drop = 9e4;
  f.temperature = 11;
  f.water = WaterSeen::cloudy;
  f.turbidity = 14;
  f.air = AirSeen::slugs;
  f.note = "strainer cleaned twice";
  p.record.flush = {f};
  p.record.fill = {"2026-05-16", "J. Doe",   "PG",   "B9", 0.96,  0.07, -11.2, "R1",
                   8.8,          "strip 12", "town", 10,   2.1e5, true, "cold"};
  p.record.signatures = {{"inspector", "A. Alder", "L-5", "2026-05-17"}};
  p.record.permit = "P-1";
  p.record.locate_ticket = "T-2";
  p.record.note = "n";
  const BuiltPoint point{{{"A", 3.5}, {"B", 6.25}, {"C", 9}}, false, Point{1, 2}};
  BuiltTrench b;
  b.number = 2;
  b.fate = TrenchFate::added;
  b.head = b.end = point;
  b.bends = {point};
  b.length = 21.3;
  b.stopped_by = StopCause::rock;
  b.depth = 1.7;
  b.end_depth = 1.6;
  b.pipe = 180;
  b.pitch = 0.45;
  b.dug_on = "2026-05-12";
  b.filled_on = "2026-05-15 16:00";
  b.note = "boulder";
  AsBuilt& a = p.as_built;
  a.measured_by = "J. Doe";
  a.measured_on = "2026-05-13";
  a.trenches = {b};
  a.run = {point};
  a.header = {{{point, point}, 1.7}, {{}, 1.3}};
  a.run_depth = 1.4;
  a.header_depth = 1.5;
  a.run_pipe = "2 in DR 11";
  a.header_pipe = "1-1/4 in DR 11";
  a.crossings = {{0, "old drain", UtilityKind::sewer, point, 0.6, 1.2, "clay"}};
  a.photos = {{"photos/1.jpg", "rock in 2", 2, "2026-05-12", Point{4, 5}}};
  a.note = "n";
  return p;
}

TEST(RecordFile, EverythingComesBackAndNothingIsRemarkedOn) {
  const Plan plan = recorded();
  const std::string text = plan_to_text(plan);
  const auto again = plan_from_text(text);
  ASSERT_TRUE(again);
  EXPECT_TRUE(again->remarks.empty()) << again->remarks.front().message();
  EXPECT_EQ(again->value.record, plan.record);
  EXPECT_EQ(again->value.as_built, plan.as_built);
  EXPECT_EQ(plan_to_text(again->value), text);
}

TEST(RecordFile, APlanWithoutARecordHasNoKeyOfOne) {
  const std::string text = plan_to_text(Plan{});
  EXPECT_EQ(text.find("record"), std::string::npos);
  EXPECT_EQ(text.find("as_built"), std::string::npos);
}

TEST(RecordFile, SpoiltTextsDoNoHarm) {
  const std::string text = plan_to_text(recorded());
  const std::size_t from = text.find("\"record\"");
  std::mt19937 random(615);
  for (int i = 0; i < 500; ++i) {
    const std::string spoilt = text.substr(0, from) + mutated(text.substr(from), random);
    if (const auto plan = plan_from_text(spoilt)) plan_to_text(plan->value);
  }
}

}  // namespace
}  // namespace underlawn
