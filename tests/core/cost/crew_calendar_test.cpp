// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/crew_calendar.h"

#include <gtest/gtest.h>

#include <set>

#include "dig/dates.h"
#include "layout/amounts.h"
#include "support/comb_field.h"

namespace underlawn {
namespace {

constexpr double kHour = 3600;

// Coil trenches side by side, `spacing` apart, heads on a header, run to the west, on a lot with room.
struct Field {
  Site site;
  Layout layout;
  Wishes wishes;
  Ground ground;
  DigWishes how;
  CrewWishes crew;
  double test = 5 * kHour;

  Field(int trenches, double spacing) {
    for (Point p : {Point{-40, -40}, Point{90, -40}, Point{90, 90}, Point{-40, 90}})
      site.lot.push_back({p, 0});
    layout = comb_field(trenches, spacing, 1, 2);
  }
  DigOrder order() const {
    return make_dig_order(site, layout, make_dig(layout, wishes, ground, {}, how), wishes, ground, how);
  }
  CrewCalendar calendar() const {
    return make_calendar({site, layout, order(), ground, how, crew, joints_of(layout), test});
  }
};

std::vector<CrewTask> at(const CrewCalendar& c, CrewStation s) {
  std::vector<CrewTask> tasks;
  for (const CrewTask& t : c.tasks)
    if (t.station == s) tasks.push_back(t);
  return tasks;
}

const CrewTask* task_of(const CrewCalendar& c, CrewStation s, int step) {
  for (const CrewTask& t : c.tasks)
    if (t.station == s && t.step == step && !t.bedding) return &t;
  return nullptr;
}

// Of the whole loop, not of coils alone.
std::vector<CrewTask> whole_tests(const CrewCalendar& c) {
  std::vector<CrewTask> tasks = at(c, CrewStation::testing);
  std::erase_if(tasks, [](const CrewTask& t) { return t.step >= 0; });
  return tasks;
}

double saved(const CrewCalendar& c, const std::string& what) {
  for (const CrewSaving& s : c.savings)
    if (s.what == what) return s.working;
  ADD_FAILURE() << "no saving named " << what;
  return -1;
}

}  // namespace

TEST(CrewCalendar, NoHandDoesTwoThingsAtOnce) {
  Field f(6, 8);
  f.crew.racks = 2;
  f.crew.excavators = 2;
  f.crew.laying_crews = 2;
  const CrewCalendar c = f.calendar();
  ASSERT_FALSE(c.tasks.empty());
  std::set<std::pair<CrewStation, int>> hands;
  for (std::size_t i = 0; i < c.tasks.size(); ++i) {
    const CrewTask& t = c.tasks[i];
    EXPECT_LE(t.begin, t.end);
    hands.insert({t.station, t.who});
    if (i == 0) continue;
    const CrewTask& before = c.tasks[i - 1];
    if (before.station == t.station && before.who == t.who) {
      EXPECT_GE(t.begin, before.end - 1e-9);
    }
  }
  EXPECT_EQ(hands.count({CrewStation::digging, 2}), 1u);
  EXPECT_EQ(hands.count({CrewStation::making, 2}), 1u);
}

// Checked against the tasks themselves, by the rules of the work and not by the shop.
TEST(CrewCalendar, NothingIsDoneBeforeWhatItNeeds) {
  for (double spacing : {3.66, 8.0}) {
    const Field f(5, spacing);
    const DigOrder order = f.order();
    const CrewCalendar c = f.calendar();
    double last_laid = 0, last_dug = 0;
    for (int i = 0; i < static_cast<int>(order.steps.size()); ++i) {
      const DigStep& step = order.steps[static_cast<std::size_t>(i)];
      const CrewTask* dug = task_of(c, CrewStation::digging, i);
      ASSERT_NE(dug, nullptr);
      last_dug = std::max(last_dug, dug->end);
      if (step.kind != DigKind::trench) continue;
      const CrewTask *made = task_of(c, CrewStation::making, i), *laid = task_of(c, CrewStation::laying, i);
      ASSERT_NE(made, nullptr);
      ASSERT_NE(laid, nullptr);
      EXPECT_GE(laid->begin, made->end - 1e-9);
      EXPECT_GE(laid->begin, dug->end - 1e-9);
      last_laid = std::max(last_laid, laid->end);
      for (int j = 0; j < static_cast<int>(order.steps.size()); ++j) {
        const auto& into = order.steps[static_cast<std::size_t>(j)].into;
        if (std::find(into.begin(), into.end(), step.trench) == into.end()) continue;
        EXPECT_GE(task_of(c, CrewStation::digging, j)->begin, laid->end - 1e-9);
      }
    }
    ASSERT_EQ(at(c, CrewStation::joining).size(), 1u);
    ASSERT_EQ(whole_tests(c).size(), 1u);
    EXPECT_GE(at(c, CrewStation::joining)[0].begin, std::max(last_laid, last_dug) - 1e-9);
    EXPECT_GE(whole_tests(c)[0].begin, at(c, CrewStation::joining)[0].end - 1e-9);
    // Header and run, where the joints are, are covered after the test only.
    for (const CrewTask& t : at(c, CrewStation::filling))
      if (order.steps[static_cast<std::size_t>(t.step)].kind != DigKind::trench) {
        EXPECT_GE(t.begin, whole_tests(c)[0].end - 1e-9);
      }
  }
}

// A coil that is covered before the loop is tested is held under pressure first: half an hour is the
// pre-cover look for leaks of the ENERGY STAR Homes Northwest geothermal standard. Nothing falls on it
// before.
TEST(CrewCalendar, ACoilCoveredEarlyIsHeldUnderPressureBeforeAnythingFallsOnIt) {
  const Field f(5, 3.66);
  const DigOrder order = f.order();
  const CrewCalendar c = f.calendar();
  std::set<int> early;
  for (const DigStep& s : order.steps) {
    early.insert(s.into.begin(), s.into.end());
    early.insert(s.filled_first.begin(), s.filled_first.end());
  }
  ASSERT_FALSE(early.empty());
  const std::vector<CrewTask> held = at(c, CrewStation::testing);
  EXPECT_EQ(held.size(), early.size() + 1);
  for (const CrewTask& t : held) {
    if (t.step < 0) continue;
    EXPECT_TRUE(early.contains(order.steps[static_cast<std::size_t>(t.step)].trench));
    EXPECT_GE(t.end - t.begin, 1800);
    EXPECT_GE(t.begin, task_of(c, CrewStation::laying, t.step)->end - 1e-9);
    for (const CrewTask& fill : at(c, CrewStation::filling))
      if (fill.step == t.step) {
        EXPECT_GE(fill.begin, t.end - 1e-9);
      }
  }
}

TEST(CrewCalendar, WhereHeapsHaveRoomNothingIsCoveredBeforeTheTest) {
  const Field f(4, 8);
  EXPECT_EQ(f.order().filled_early, 0);
  EXPECT_EQ(at(f.calendar(), CrewStation::testing).size(), 1u);
  for (const OpenTrench& o : f.calendar().open) {
    EXPECT_FALSE(o.filled_early);
    EXPECT_GE(o.to, f.calendar().tested);
  }
}

TEST(CrewCalendar, ThePressureTestIsNotLeftOvernight) {
  for (int trenches = 1; trenches < 8; ++trenches) {
    const CrewCalendar c = Field(trenches, 8).calendar();
    const CrewTask test = whole_tests(c)[0];
    EXPECT_EQ(std::floor(test.begin / c.day_length + 1e-9), std::floor((test.end - 1) / c.day_length))
        << trenches;
  }
}

TEST(CrewCalendar, ARackMoreSavesWhereCoilsAreSlow) {
  Field f(6, 8);
  f.crew.coil_making = 300;
  EXPECT_GT(saved(f.calendar(), "One more rack"), kHour);
  f.crew.coil_making = 1;
  EXPECT_NEAR(saved(f.calendar(), "One more rack"), 0, 1);
  EXPECT_GT(saved(f.calendar(), "A second excavator"), kHour);
}

TEST(CrewCalendar, CoilsMadeBeforehandNeedNoRack) {
  Field f(4, 8);
  f.crew.coils_ready = 4;
  EXPECT_TRUE(at(f.calendar(), CrewStation::making).empty());
  f.crew.coils_ready = 3;
  EXPECT_EQ(at(f.calendar(), CrewStation::making).size(), 1u);
}

TEST(CrewCalendar, DaysSkipTheWeekendAndKeepAReserve) {
  Field f(6, 8);
  f.crew.start = "2026-05-15";  // a Friday
  f.crew.rain_slack = 0.5;
  const CrewCalendar c = f.calendar();
  ASSERT_GE(c.days.size(), 3u);
  EXPECT_EQ(c.days[0].date, "2026-05-15");
  EXPECT_EQ(c.days[0].weekday, 5);
  EXPECT_EQ(c.days[1].date, "2026-05-18");
  EXPECT_EQ(c.days_worked, static_cast<int>(std::ceil(c.filled / c.day_length)));
  EXPECT_EQ(static_cast<int>(c.days.size()), c.days_worked + (c.days_worked + 1) / 2);
  EXPECT_TRUE(c.days.back().reserve);
}

// A trench open over a weekend is open by the clock for much longer than it is worked at.
TEST(CrewCalendar, OpenTimeCountsNightsAndDaysOff) {
  Field f(1, 8);
  f.crew.weekdays = "5";
  const CrewCalendar c = f.calendar();
  for (const OpenTrench& o : c.open) {
    const double days = std::floor((o.to - 1) / c.day_length) - std::floor(o.from / c.day_length);
    EXPECT_NEAR(o.clock, o.to - o.from + days * (7 * 86400 - c.day_length), 1);
  }
}

TEST(CrewCalendar, TimesOfTheBillAreItsSums) {
  const Field f(4, 8);
  const CrewCalendar c = f.calendar();
  const CrewTime t = times_of(c);
  double digging = 0;
  for (const CrewTask& task : at(c, CrewStation::digging)) digging += task.end - task.begin;
  EXPECT_NEAR(t.digging, digging, 1e-6);
  EXPECT_NEAR(t.making, 4 * 240 * 50, 1e-6);
  EXPECT_NEAR(t.joining, (24 + 20) * 30 + joints_of(f.layout) * 480, 1e-6);
  EXPECT_EQ(t.open, c.filled);
}

TEST(Dates, AreReadAndWrittenBack) {
  for (const char* date : {"1970-01-01", "2000-02-29", "2026-05-18", "9999-12-31", "1900-03-01"})
    EXPECT_EQ(date_text(day_number(date).value_or(-1)), date);
  EXPECT_EQ(day_number("1970-01-02"), 1);
  EXPECT_EQ(weekday_of(*day_number("1970-01-01")), 4);  // a Thursday
  for (const char* none : {"", "2026-5-18", "2026-02-29", "2026-13-01", "18.05.2026", "2026-05-1x",
                           "1899-12-31", "2026-05-18 ", "10000-01-01"})
    EXPECT_FALSE(day_number(none)) << none;
  EXPECT_FALSE(is_weekdays(""));
  EXPECT_FALSE(is_weekdays("21"));
  EXPECT_FALSE(is_weekdays("128"));
  EXPECT_TRUE(is_weekdays("16"));
}

// One truck of 6 m3, 40 minutes there and back: 9 m3 of loose earth an hour, less than the machine digs
// (0.1911 x 0.90 x 0.60 x 3600/20 = 18.6 m3), so it sets the pace; three trucks do not.
TEST(CrewCalendar, SpoilTruckedOffTakesTheTimeOfTheTrucks) {
  Field f(4, 8);
  const CrewTime beside = times_of(f.calendar());
  EXPECT_EQ(beside.hauling, 0);
  f.how.haul = Haul::all;
  const DigOrder order = f.order();
  ASSERT_EQ(order.hauled, static_cast<int>(order.steps.size()));
  const CrewCalendar c = f.calendar();
  const CrewTime t = times_of(c);
  double loose = 0, back = 0;
  for (const DigStep& s : order.steps) {
    loose += s.work.loose;
    back += s.work.backfill / 0.9 * 1.25;
  }
  EXPECT_NEAR(t.digging, loose / 9 * kHour, 1e-6);
  EXPECT_NEAR(t.filling, back / 9 * kHour, 1e-6);
  EXPECT_NEAR(t.hauling, t.digging + t.filling, 1e-6);
  EXPECT_GT(saved(c, "One more truck"), 0);
  f.crew.trucks = 3;
  const CrewTime three = times_of(f.calendar());
  EXPECT_NEAR(three.digging, beside.digging, 1e-6);
  EXPECT_NEAR(three.hauling, 3 * (three.digging + three.filling), 1e-6);
}

// Two machines dig at once, but the trucks serve one of them at a time.
TEST(CrewCalendar, TrucksServeOneStepAtATime) {
  Field f(4, 8);
  f.how.haul = Haul::all;
  f.crew.excavators = 2;
  f.crew.trucks = 2;
  const std::vector<CrewTask> trips = at(f.calendar(), CrewStation::hauling);
  ASSERT_FALSE(trips.empty());
  for (const CrewTask& a : trips)
    for (const CrewTask& b : trips)
      EXPECT_TRUE(a.step == b.step || a.end <= b.begin + 1e-6 || b.end <= a.begin + 1e-6);
}

// The run's pipes lie over the coil: sand, and earth up to their floor, before they are joined; the rest
// after the test.
TEST(CrewCalendar, ATrenchIsFilledToTheRunsFloorBeforeTheRunIsLaid) {
  Field f(3, 8);
  f.layout.trenches[0].role = TrenchRole::supply;
  f.layout.run.line = {{60, 0}, {0, 0}};  // 30 m of its own and 30 m over the first coil, 1 m wide, 2 m deep
  f.layout.run.length = 60;
  const CrewCalendar c = f.calendar();
  const DigOrder order = f.order();
  const CrewTask* sand = nullptr;
  const std::vector<CrewTask> filled = at(c, CrewStation::filling);
  ASSERT_EQ(std::count_if(filled.begin(), filled.end(), [](const CrewTask& t) { return t.bedding; }), 1);
  for (const CrewTask& t : filled)
    if (t.bedding) sand = &t;
  const DigStep& step = order.steps[static_cast<std::size_t>(sand->step)];
  ASSERT_EQ(step.trench, 1);
  EXPECT_GE(sand->begin, task_of(c, CrewStation::laying, sand->step)->end - 1e-9);
  EXPECT_LE(sand->end, at(c, CrewStation::joining)[0].begin + 1e-9);
  const double filled_per_hour = 0.3823 * 0.60 * 3600 / 25;
  const double depth = f.wishes.run_depth, bed = f.wishes.bedding;
  EXPECT_NEAR(sand->end - sand->begin,
              (30 * bed + 30 * (2 - bed - depth) / 0.9 * 1.25) / filled_per_hour * kHour, 5);
  const CrewTask* rest = task_of(c, CrewStation::filling, sand->step);
  ASSERT_NE(rest, nullptr);
  EXPECT_GE(rest->begin, c.tested - 1e-9);
  EXPECT_NEAR(rest->end - rest->begin, (30 * bed + 30 * (depth - bed) / 0.9 * 1.25) / filled_per_hour * kHour,
              0.01 * (rest->end - rest->begin));
  EXPECT_NE(task_words(*sand, order).find("run's floor"), std::string::npos);
}

// What is filled before its neighbour is dug is not filled a second time after the test.
TEST(CrewCalendar, EveryTrenchIsFilledOnce) {
  for (double spacing : {3.0, 4.0, 5.0, 8.0}) {
    const Field f(5, spacing);
    double loaded = 0, cast = 0;
    const DigOrder order = f.order();
    for (const DigStep& s : order.steps) {
      loaded += s.work.backfill / 0.9 * 1.25 + s.work.bedding;
      if (!s.into.empty()) cast += s.work.loose;
    }
    const double moved = times_of(f.calendar()).filling / kHour * 0.3823 * 0.60 * 3600 / 25;
    EXPECT_LE(moved, loaded + 1e-6) << spacing;
    EXPECT_GE(moved, loaded - cast - 1e-6) << spacing;
  }
}

}  // namespace underlawn
