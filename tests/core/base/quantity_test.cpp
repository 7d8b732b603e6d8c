// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/quantity.h"

#include <gtest/gtest.h>

#include "base/units.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;
constexpr double kInch = 0.0254;
constexpr UnitSystem kUs = UnitSystem::us;
constexpr UnitSystem kMetric = UnitSystem::metric;

double read(Quantity q, std::string_view text, UnitSystem system = kUs) {
  const auto value = parse_quantity(q, text, system);
  EXPECT_TRUE(value.has_value()) << text << ": " << (value ? "" : value.error().message());
  return value.value_or(-12345);
}

double read_length(std::string_view text, UnitSystem system = kUs) {
  return read(Quantity::length, text, system);
}

std::string refusal(Quantity q, std::string_view text, UnitSystem system = kUs) {
  const auto value = parse_quantity(q, text, system);
  return value ? "read as " + std::to_string(*value) : value.error().message();
}

}  // namespace

TEST(ParseLength, TakesFeetAndInchesInEveryFormPeopleType) {
  const double expected = 75.5 * kInch;
  for (const char* text : {"6'-3 1/2\"",
                           "6' 3.5\"",
                           "6'3.5\"",
                           "6'3-1/2\"",
                           "6'-3-1/2\"",
                           "6' 3-1/2",
                           "6' 3 1/2",
                           "6ft 3.5in",
                           "6 ft 3 1/2 in",
                           "6ft3.5in",
                           "6 feet 3½ inches",
                           "75.5\"",
                           "75,5 in",
                           "75 1/2\"",
                           "75½\"",
                           "6′ 3½″",
                           "6′-3 ½″",
                           "6’ 3½”",
                           "6'-3.5''",
                           " 6' - 0\" + 3.5\" ",
                           "6.29166666666666666 ft",
                           "6 FT 3.5 IN",
                           "6ft-3.5in",
                           "6'- 3.5\""})
    EXPECT_NEAR(read_length(text), expected, 1e-12) << text;
}

TEST(ParseLength, TakesInchesAlone) {
  EXPECT_NEAR(read_length("3 1/2 in"), 3.5 * kInch, 1e-15);
  EXPECT_NEAR(read_length("1-1/4 in"), 1.25 * kInch, 1e-15);
  EXPECT_NEAR(read_length("3/4\""), 0.75 * kInch, 1e-15);
  EXPECT_NEAR(read_length("¾\""), 0.75 * kInch, 1e-15);
  EXPECT_NEAR(read_length("⅜ in"), 0.375 * kInch, 1e-15);
  EXPECT_NEAR(read_length("6'-1/2\""), 72.5 * kInch, 1e-12);
}

TEST(ParseLength, TakesMetresWithPointOrComma) {
  for (const char* text :
       {"1.9 m", "1,9 m", "190 cm", "1900 mm", "1.9m", "1.9", "1,9", "1 m 90 cm", "0.0019 km"})
    EXPECT_NEAR(read_length(text, kMetric), 1.9, 1e-12) << text;
  EXPECT_NEAR(read_length("12,5 m"), 12.5, 1e-12);
}

TEST(ParseLength, GivesABareNumberTheUnitOfTheSystem) {
  EXPECT_DOUBLE_EQ(read_length("10"), 10 * kFoot);
  EXPECT_DOUBLE_EQ(read_length("10", kMetric), 10);
  EXPECT_DOUBLE_EQ(read(Quantity::diameter, "1.25"), 1.25 * kInch);
  EXPECT_DOUBLE_EQ(read(Quantity::diameter, "32", kMetric), 0.032);
}

TEST(ParseLength, TellsAJoiningHyphenFromAMinus) {
  EXPECT_NEAR(read_length("12'-6\""), 12.5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("12' -6\""), 12.5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("12' - 6\""), 11.5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("12'-6'"), 6 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("12'-18\""), 10.5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("12'-1 m"), 12 * kFoot - 1, 1e-12);
  EXPECT_NEAR(read_length("12'-6\"-6\""), 12 * kFoot, 1e-12);
}

TEST(ParseLength, Calculates) {
  EXPECT_NEAR(read_length("12' + 3 in"), 12.25 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("12' - 3 in"), 11.75 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("2*1.5 m"), 3, 1e-12);
  EXPECT_NEAR(read_length("1.5 m * 2"), 3, 1e-12);
  EXPECT_NEAR(read_length("100/4"), 25 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("100 ft/4"), 25 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("(100 - 4) / 3"), 32 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("2 * (3' + 6\") + 1 m"), 7 * kFoot + 1, 1e-12);
  EXPECT_NEAR(read_length("(2 + 3) ft"), 5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("-(2 + 3)"), -5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("-6'-3 1/2\""), -75.5 * kInch, 1e-12);
  EXPECT_NEAR(read_length("12/4/2"), 1.5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("100 ft / 4/2"), 12.5 * kFoot, 1e-12);
  EXPECT_NEAR(read_length("2 × 3'"), 6 * kFoot, 1e-12);
}

TEST(ParseQuantity, TakesTheUnitsOfEachQuantity) {
  struct Row {
    Quantity q;
    const char* text;
    double si;
  };
  // Factors to seven digits: NIST SP 811 (2008), Appendix B.8.
  for (const Row& row : {
           Row{Quantity::flow, "1 gpm", 6.309020e-5},
           {Quantity::flow, "2 L/s", 2e-3},
           {Quantity::flow, "60 L/min", 1e-3},
           {Quantity::flow, "3.6 m3/h", 1e-3},
           {Quantity::flow, "3.6 m³/h", 1e-3},
           {Quantity::pressure, "1 psi", 6.894757e3},
           {Quantity::pressure, "1 kPa", 1e3},
           {Quantity::pressure, "2 bar", 2e5},
           {Quantity::temperature, "50 °F", 10},
           {Quantity::temperature, "-40 F", -40},
           {Quantity::temperature, "-5 °C", -5},
           {Quantity::temperature, "32", 0.0},
           {Quantity::temperature_difference, "9 °F", 5},
           {Quantity::temperature_difference, "5 K", 5},
           {Quantity::power, "1 Btu/h", 2.930711e-1},
           {Quantity::power, "1 ton", 3.516853e3},
           {Quantity::power, "2.5 kW", 2500},
           {Quantity::power, "1 hp", 7.456999e2},
           {Quantity::volume, "1 yd3", 7.645549e-1},
           {Quantity::volume, "1 cu yd", 7.645549e-1},
           {Quantity::volume, "1 yd³", 7.645549e-1},
           {Quantity::volume, "2 m3", 2},
           {Quantity::fluid_volume, "1 gal", 3.785412e-3},
           {Quantity::area, "1 ft2", 9.290304e-2},
           {Quantity::area, "1 sq ft", 9.290304e-2},
           {Quantity::area, "1 acre", 4.046856e3},
           {Quantity::angle, "1 deg", 1.745329e-2},
           {Quantity::angle, "1°", 1.745329e-2},
           {Quantity::length, "1 yd", 0.9144},
           {Quantity::energy, "1 kWh", 3.6e6},
           {Quantity::energy, "1 therm", 1.055056e8},
           {Quantity::mass, "1 lb", 4.535924e-1},
           {Quantity::density, "1 lb/ft3", 1.601846e1},
           {Quantity::conductivity, "1 Btu/(h ft F)", 1.730735},
           {Quantity::conductivity, "1.7 W/(m·K)", 1.7},
           {Quantity::slope, "1.5:1", 1.5},
           {Quantity::slope, "3/4:1", 0.75},
           {Quantity::ratio, "25 %", 0.25},
           {Quantity::ratio, "25", 0.25},
           {Quantity::duration, "1 h 30 min", 5400},
           {Quantity::head, "10 ft", 3.048},
           {Quantity::velocity, "2 ft/s", 0.6096},
           {Quantity::count, "4", 4},
           {Quantity::money, "12,50", 12.5},
       })
    EXPECT_NEAR(read(row.q, row.text), row.si, std::abs(row.si) * 5e-7 + 1e-13) << row.text;
}

TEST(PrintQuantity, ATimeIsInTheUnitThatItCanBeReadIn) {
  EXPECT_EQ(print_quantity(Quantity::duration, 0, kUs), "0.0 h");
  EXPECT_EQ(print_quantity(Quantity::duration, 6.5, kUs), "6.5 s");
  EXPECT_EQ(print_quantity(Quantity::duration, 18, kMetric), "18 s");
  EXPECT_EQ(print_quantity(Quantity::duration, 600, kUs), "10 min");
  EXPECT_EQ(print_quantity(Quantity::duration, 5400, kUs), "1.5 h");
  EXPECT_NEAR(read(Quantity::duration, "2"), 7200, 1e-9);  // alone it is hours
}

TEST(ParseQuantity, MakesAreasAndVolumesOfLengths) {
  EXPECT_NEAR(read(Quantity::area, "30 ft * 15 ft"), 450 * kFoot * kFoot, 1e-9);
  EXPECT_NEAR(read(Quantity::volume, "100' * 3' * 6'"), 1800 * kFoot * kFoot * kFoot, 1e-9);
  EXPECT_NEAR(read(Quantity::volume, "450 sq ft * 4 ft", kMetric), 1800 * kFoot * kFoot * kFoot, 1e-9);
}

TEST(ParseQuantity, NamesTheTextThePlaceAndAnExample) {
  EXPECT_EQ(refusal(Quantity::length, "5 gpm"),
            "Length as typed is “5 gpm”; it must be readable as length throughout, and character 3 “gpm” is "
            "not a unit "
            "of this. Write it like 6'-3 1/2\", 1.9 m or 12 ft + 3 in.");
  EXPECT_EQ(
      refusal(Quantity::length, "6′ + ″"),
      "Length as typed is “6′ + ″”; it must be readable as length throughout, and character 6 “\"” is not a "
      "number. Write it like 6'-3 1/2\", 1.9 m or 12 ft + 3 in.");
}

TEST(ParseQuantity, RefusesWhatIsNoNumber) {
  for (const char* text :
       {"",         " ",           "abc",   "ft",       "-",     "+",           "1..2",
        "1 2",      "NaN",         "inf",   "infinity", "1e999", "-1e999",      "1/0",
        "5 ft / 0", "1e308*1e308", "(1",    "1)",       "()",    "2 ft * 3 ft", "10 ft / 2 ft",
        "6'7'",     "6 in 3 ft",   "1,234", "1,234.5",  "12 m2", "1 + ",        "* 2",
        "0x10",     "5 ft 3 gpm",  "1e",    "\xff",     "1\xff", "½½"})
    EXPECT_THAT(refusal(Quantity::length, text), testing::HasSubstr("Write it like")) << text;
  EXPECT_THAT(refusal(Quantity::temperature, "50 F + 5 F"), testing::HasSubstr("cannot be added"));
}

TEST(ParseQuantity, BoundsWhatItReads) {
  EXPECT_THAT(refusal(Quantity::length, std::string(1'000'000, '(')),
              testing::HasSubstr("at most 200 characters"));
  EXPECT_THAT(refusal(Quantity::length, std::string(100, '(') + "1"), testing::HasSubstr("nested too deep"));
  EXPECT_NEAR(read_length(std::string(100, '-') + "1"), kFoot, 1e-12);
  EXPECT_NEAR(read_length(std::string(20, '(') + "1" + std::string(20, ')')), kFoot, 1e-12);
}

TEST(PrintLength, CarriesIntoFeet) {
  EXPECT_EQ(print_quantity(Quantity::length, 75.5 * kInch, kUs, Fineness::fine), "6'-3 1/2\"");
  EXPECT_EQ(print_quantity(Quantity::length, 71.99 * kInch, kUs, Fineness::fine), "6'-0\"");
  EXPECT_EQ(print_quantity(Quantity::length, 71.6 * kInch, kUs, Fineness::coarse), "6'-0\"");
  EXPECT_EQ(print_quantity(Quantity::length, 11.99 * kInch, kUs), "1'-0\"");
  EXPECT_EQ(print_quantity(Quantity::length, 11.5 * kInch, kUs), "11 1/2\"");
  EXPECT_EQ(print_quantity(Quantity::length, -75.5 * kInch, kUs), "-6'-3 1/2\"");
  EXPECT_EQ(print_quantity(Quantity::length, 72.0625 * kInch, kUs, Fineness::fine), "6'-0 1/16\"");
  EXPECT_EQ(print_quantity(Quantity::length, 0, kUs), "0\"");
  EXPECT_EQ(print_quantity(Quantity::length, -0.001 * kInch, kUs), "0\"");
}

TEST(PrintQuantity, ShowsTheUnit) {
  EXPECT_EQ(print_quantity(Quantity::length, 1.9, kMetric), "1.90 m");
  EXPECT_EQ(print_quantity(Quantity::length, 1.9, kMetric, Fineness::fine), "1.900 m");
  EXPECT_EQ(print_quantity(Quantity::length, -0.001, kMetric), "0.00 m");
  EXPECT_EQ(print_quantity(Quantity::volume, 50.97, kUs), "66.7 cu yd");
  EXPECT_EQ(print_quantity(Quantity::area, 2023.4282112, kUs), "21780 sq ft");
  EXPECT_EQ(print_quantity(Quantity::area, 2 * 4046.8564224, kUs), "2.000 acres");
  EXPECT_EQ(print_quantity(Quantity::slope, 1.5, kUs), "1.5:1");
  EXPECT_EQ(print_quantity(Quantity::temperature, 10, kUs), "50.0 °F");
  EXPECT_EQ(print_quantity(Quantity::count, 4, kUs), "4");
  EXPECT_EQ(print_quantity(Quantity::diameter, 0.0254 * 12, kUs), "12 in");
}

TEST(PrintQuantity, ShowsADashForWhatIsNoNumber) {
  EXPECT_EQ(print_quantity(Quantity::length, std::nan(""), kUs), "–");
  EXPECT_EQ(print_quantity(Quantity::flow, INFINITY, kMetric), "–");
}

}  // namespace underlawn
