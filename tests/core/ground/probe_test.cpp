// SPDX-License-Identifier: GPL-3.0-or-later
#include "ground/probe.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <limits>

#include "support/mutated_text.h"

using namespace underlawn;

namespace {

ProbeLog good_log() {
  ProbeLog log{5, {}};
  for (int t = 10; t <= 600; t += 10) log.readings.push_back({double(t), 15 + 0.3 * std::log(t)});
  return log;
}

std::string good_text() {
  std::string text = "# garden, north\n# power_w_m = 5\ntime_s,temperature_c,note\n";
  for (const ProbeReading& r : good_log().readings) {
    char line[60];
    std::snprintf(line, sizeof line, "%g,%.17g,\n", r.time, r.temperature);
    text += line;
  }
  return text;
}

std::string swapped(std::string text, const std::string& from, const std::string& to) {
  return text.replace(text.find(from), from.size(), to);
}

}  // namespace

TEST(ProbeLog, ReadsTimesTemperaturesAndPower) {
  const auto log = probe_log_from_csv(good_text());
  ASSERT_TRUE(log) << log.error().message();
  EXPECT_EQ(*log, good_log());
}

TEST(ProbeLog, MinutesAndFahrenheitAndCommas) {
  const auto log = probe_log_from_csv("Power W m = 4,5\nTime min;Temperature F\n0,5;59\n1;68\n");
  ASSERT_TRUE(log) << log.error().message();
  EXPECT_EQ(log->power, 4.5);
  EXPECT_EQ(log->readings[0].time, 30);
  EXPECT_NEAR(log->readings[0].temperature, 15, 1e-9);
  EXPECT_NEAR(log->readings[1].temperature, 20, 1e-9);
}

TEST(ProbeLog, WithoutAPowerItIsNoughtToBeTyped) {
  const auto log = probe_log_from_csv("time_s,temperature_c\n1,15\n");
  ASSERT_TRUE(log) << log.error().message();
  EXPECT_EQ(log->power, 0);
}

TEST(ProbeLog, RefusalsNameTheLine) {
  const std::string good = good_text();
  const auto thing = [](const std::string& text) {
    const auto log = probe_log_from_csv(text);
    return log ? std::string("read") : log.error().thing;
  };
  EXPECT_EQ(thing(""), "probe log");
  EXPECT_EQ(thing(swapped(good, "time_s", "t")), "line of column names in line 3 of the probe log");
  EXPECT_EQ(thing(swapped(good, "temperature_c", "temp")), "line of column names in line 3 of the probe log");
  EXPECT_EQ(thing(swapped(good, "power_w_m = 5", "power_w_m = five")),
            "power_w_m in line 2 of the probe log");
  EXPECT_EQ(thing(swapped(good, "\n30,", "\nthirty,")), "time_s in line 6 of the probe log");
  EXPECT_EQ(thing(swapped(good, "\n30,", "\n20,")), "time in line 6 of the probe log");
  EXPECT_EQ(thing(swapped(good, "\n30,", "\n30,nan,")), "temperature_c in line 6 of the probe log");
  EXPECT_EQ(thing(swapped(good, "\n30,", "\n30,999,")), "temperature in line 6 of the probe log");
}

TEST(ProbeFit, AStraightLogIsSteadyFromItsFirstReading) {
  const auto fit = fit_probe(good_log());
  ASSERT_TRUE(fit) << fit.error().message();
  EXPECT_TRUE(fit->window_found);
  EXPECT_EQ(fit->window, (ProbeWindow{10, 600}));
  EXPECT_EQ(fit->readings, 60);
  EXPECT_NEAR(fit->conductivity, 5 / (4 * M_PI * 0.3), 1e-9);
  EXPECT_NEAR(fit->spread, 0, 1e-9);
  EXPECT_NEAR(fit->r2, 1, 1e-12);
}

TEST(ProbeFit, AnEarlyBendIsLeftOut) {
  ProbeLog log = good_log();
  for (ProbeReading& r : log.readings)
    if (r.time < 100) r.temperature -= 0.2 * std::log(100 / r.time);  // steeper at first
  const auto fit = fit_probe(log);
  ASSERT_TRUE(fit) << fit.error().message();
  EXPECT_GT(fit->window.from, 60);
  EXPECT_LT(fit->window.from, 110);
  EXPECT_NEAR(fit->conductivity, 5 / (4 * M_PI * 0.3), 0.02 * 5 / (4 * M_PI * 0.3));
  EXPECT_LE(fit->spread, kSteadySpread);
  // With the bend in a window of one's own the halves disagree, and that is shown.
  const auto all = fit_probe(log, ProbeWindow{10, 600});
  ASSERT_TRUE(all) << all.error().message();
  EXPECT_GT(all->spread, 0.3);
  EXPECT_LT(all->part_low, all->conductivity);
  EXPECT_GT(all->part_high, all->conductivity);
}

TEST(ProbeFit, ReadingsBeforeTheHeaterAreNotUsed) {
  ProbeLog log = good_log();
  log.readings.insert(log.readings.begin(), {{-60, 15}, {-30, 15}, {0, 15}});
  const auto fit = fit_probe(log);
  ASSERT_TRUE(fit) << fit.error().message();
  EXPECT_EQ(fit->readings, 60);
}

TEST(ProbeFit, RefusalsNameTheThing) {
  const auto thing = [](const ProbeLog& log, std::optional<ProbeWindow> window = {}) {
    const auto fit = fit_probe(log, window);
    return fit ? std::string("fitted") : fit.error().thing;
  };
  const ProbeLog good = good_log();
  ProbeLog log = good;
  log.power = 0;
  EXPECT_EQ(thing(log), "heater power");
  log = good;
  log.readings[4].time = log.readings[3].time;
  EXPECT_EQ(thing(log), "time of reading 5");
  log = good;
  log.readings[4].temperature = std::numeric_limits<double>::infinity();
  EXPECT_EQ(thing(log), "temperature of reading 5");
  log = good;
  log.readings.resize(9);
  EXPECT_EQ(thing(log), "number of readings after 0 s");
  EXPECT_EQ(thing(ProbeLog{5, {}}), "number of readings after 0 s");
  log = good;
  log.readings.erase(log.readings.begin(), log.readings.begin() + 30);
  EXPECT_EQ(thing(log), "heated time of the log");
  EXPECT_EQ(thing(good, ProbeWindow{0, 600}), "window");
  EXPECT_EQ(thing(good, ProbeWindow{600, 60}), "window");
  EXPECT_EQ(thing(good, ProbeWindow{10, std::nan("")}), "window");
  EXPECT_EQ(thing(good, ProbeWindow{100, 180}), "number of readings from 100 s to 180 s");
  log = good;
  for (ProbeReading& r : log.readings) r.temperature = 30 - r.temperature;
  EXPECT_EQ(thing(log), "temperature at the end of the log");
  EXPECT_EQ(thing(log, ProbeWindow{10, 600}), "slope of the temperature from 10 s to 600 s");
  log = good;
  for (std::size_t i = 0; i < log.readings.size(); ++i)
    log.readings[i].temperature = 15 + 0.3 * std::pow(std::log(log.readings[i].time), 4);
  EXPECT_EQ(thing(log), "spread of the slope");
}

// Level but for a zigzag of a few kelvin: rises a little in each half, by chance and not by heat.
TEST(ProbeFit, ScatterIsNoConductivity) {
  ProbeLog log = good_log();
  for (std::size_t i = 0; i < log.readings.size(); ++i)
    log.readings[i].temperature = 15 + 0.1 * std::log(log.readings[i].time) + (i % 2 == 0 ? 3 : -3);
  const auto fit = fit_probe(log, ProbeWindow{10, 600});
  ASSERT_FALSE(fit);
  EXPECT_EQ(fit.error().code, "probe_fit");
}

// Seed 13.
TEST(ProbeLog, TenThousandSpoiledTextsAreReadOrRefused) {
  std::mt19937 random(13);
  const std::string good = good_text();
  int refused = 0, fitted = 0;
  for (int i = 0; i < 10000; ++i) {
    const auto log = probe_log_from_csv(mutated(good, random));
    if (!log) {
      ++refused;
      EXPECT_FALSE(log.error().message().empty());
      continue;
    }
    const auto fit = fit_probe(*log);
    if (!fit) continue;
    ++fitted;
    EXPECT_TRUE(std::isfinite(fit->low) && std::isfinite(fit->high) && fit->conductivity > 0);
  }
  EXPECT_GT(refused, 1000);
  EXPECT_GT(fitted, 1000);
}
