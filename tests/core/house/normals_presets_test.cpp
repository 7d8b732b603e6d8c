// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "house/weather.h"

using namespace underlawn;

namespace {
const MonthlyNormals& preset(const std::string& start) {
  const auto& all = normals_presets();
  return *std::find_if(all.begin(), all.end(), [&](const auto& n) { return n.name.rfind(start, 0) == 0; });
}
}  // namespace

TEST(NormalsPresets, SayThatTheyAreNoStation) {
  std::set<std::string> names;
  double before = -100;
  for (const MonthlyNormals& n : normals_presets()) {
    EXPECT_NE(n.name.find("(typical numbers of our own, not a station)"), std::string::npos) << n.name;
    EXPECT_TRUE(names.insert(n.name).second);
    const auto year = year_from_normals(n);
    ASSERT_TRUE(year) << year.error().message();
    const double mean = yearly_wave(*year).mean;
    EXPECT_GT(mean, before) << n.name;
    before = mean;
  }
  EXPECT_EQ(names.size(), 8u);
}

// Design days of a station of each kind: 99.6 % heating and 0.4 % cooling dry bulb, ASHRAE Fundamentals 2009;
// Amsterdam and Denver as in the headers of their EnergyPlus weather files, the others from memory. A kind of
// climate is not a station: 6 K either way, and 11 K where cold air pools in a valley, as it does at
// Fairbanks.
TEST(NormalsPresets, DesignDaysAreThoseOfTheirKind) {
  struct Station {
    const char *kind, *name;
    double cold, warm, margin;
  };
  for (const Station& s : {Station{"Subarctic", "Fairbanks", -42, 27, 11},
                           {"Cold continental", "Minneapolis", -24, 33, 6},
                           {"Cool continental", "Chicago", -19, 33, 6},
                           {"High and dry", "Denver", -18.8, 33.0, 6},
                           {"Cool maritime", "Amsterdam", -7.3, 27.8, 6},
                           {"Mixed humid", "Baltimore", -11, 34, 6},
                           {"Hot humid", "Houston", -2, 36, 6},
                           {"Hot dry", "Phoenix", 4, 43, 6}}) {
    const DesignDays days = design_days(year_from_normals(preset(s.kind)).value());
    EXPECT_NEAR(days.cold, s.cold, s.margin) << s.name;
    EXPECT_NEAR(days.warm, s.warm, 6) << s.name;
  }
}

// The same for years made from a place's own normals (Amsterdam 1981-2010 and Minneapolis 1991-2020, from
// memory). Cold snaps and heat waves of real years go farther than the made ones, by up to 4 K here.
TEST(Weather, MadeYearsComeNearPublishedDesignDays) {
  const MonthlyNormals amsterdam{"Amsterdam",
                                 {3.4, 3.5, 6.1, 9.1, 12.9, 15.4, 17.9, 17.5, 14.7, 11.0, 7.1, 4.0},
                                 {5, 6, 7, 9, 9, 9, 9, 9, 8, 7, 5, 5}};
  const DesignDays maritime = design_days(year_from_normals(amsterdam).value());
  EXPECT_NEAR(maritime.cold, -7.3, 1);
  EXPECT_NEAR(maritime.warm, 27.8, 4);
  const MonthlyNormals minneapolis{"Minneapolis",
                                   {-8.8, -6.6, 0.7, 8.3, 15.3, 20.8, 23.2, 21.9, 17.3, 9.6, 1.3, -5.9},
                                   {9, 9, 9, 11, 11, 11, 11, 10, 11, 10, 8, 8}};
  const DesignDays continental = design_days(year_from_normals(minneapolis).value());
  EXPECT_NEAR(continental.cold, -24, 5);
  EXPECT_NEAR(continental.warm, 33, 4);
}

// By hand: of 1000 hours 4 are colder and 4 warmer.
TEST(Weather, DesignDaysLeaveFourHoursInAThousand) {
  WeatherYear year{"a ramp, shuffled", {}};
  for (int i = 0; i < 1000; ++i) year.outdoor.push_back((i * 7) % 1000);
  EXPECT_EQ(design_days(year).cold, 4);
  EXPECT_EQ(design_days(year).warm, 995);
}
