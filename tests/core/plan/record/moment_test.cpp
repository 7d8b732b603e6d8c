// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/moment.h"

#include <gtest/gtest.h>

namespace underlawn {
namespace {

TEST(Moment, IsKeptAsItIsTyped) {
  for (const char* text : {"2026-05-14", "2026-05-14 09:30", "2024-02-29", "1900-01-01", "2199-12-31 23:59"})
    EXPECT_EQ(print_moment(moment_from_text(text, "x").value()), text);
  EXPECT_EQ(print_moment(moment_from_text(" 2026-5-4T9:05 ", "x").value()), "2026-05-04 09:05");
}

TEST(Moment, IsRefusedWithWhatWasTypedAndHowToTypeIt) {
  for (const char* text :
       {"", "14.5.2026", "2026-13-01", "2026-02-29", "2026-00-10", "2026-05-14 24:00", "2026-05-14 9",
        "26-05-14", "2026-05-14 09:30:00", "2026-05-14 -1:30", "yesterday"}) {
    const auto m = moment_from_text(text, "Start of the test");
    ASSERT_FALSE(m) << text;
    EXPECT_EQ(m.error().thing, "Start of the test");
    EXPECT_NE(m.error().value.find(text), std::string::npos);
    EXPECT_NE(m.error().advice.find("2026-05-14 09:30"), std::string::npos);
  }
}

// Days between dates that everyone can count.
TEST(Moment, CountsMinutes) {
  const auto minutes = [](const char* text) { return moment_from_text(text, "x")->minutes; };
  EXPECT_EQ(minutes("2026-03-01") - minutes("2026-02-28"), 1440);
  EXPECT_EQ(minutes("2024-03-01") - minutes("2024-02-28"), 2 * 1440);
  EXPECT_EQ(minutes("2027-01-01") - minutes("2026-01-01"), 365 * 1440);
  EXPECT_EQ(minutes("2001-01-01") - minutes("1901-01-01"), (100 * 365 + 25) * 1440);
  EXPECT_EQ(minutes("2026-05-14 09:30") - minutes("2026-05-14"), 570);
}

TEST(Moment, ADayWithoutATimeIsOnlySurelyBeforeAnotherDay) {
  const auto at = [](const char* text) { return moment_from_text(text, "x").value(); };
  EXPECT_TRUE(surely_before(at("2026-05-14 09:30"), at("2026-05-14 09:31")));
  EXPECT_FALSE(surely_before(at("2026-05-14"), at("2026-05-14 09:31")));
  EXPECT_FALSE(surely_before(at("2026-05-14 09:31"), at("2026-05-14")));
  EXPECT_TRUE(surely_before(at("2026-05-13 23:00"), at("2026-05-14")));
  EXPECT_FALSE(surely_before(at("2026-05-14"), at("2026-05-14")));
}

}  // namespace
}  // namespace underlawn
