// SPDX-License-Identifier: GPL-3.0-or-later
// Who does what when: digging and coil making race each other, a coil is laid when it is made and its trench
// dug, joints wait for the last trench, nothing that has a joint is covered before the test.
//
//   excavator  [--1--][--2--]..[--3--][header, run]          a trench whose spoil falls into the one before
//   racks      [-coil 1-][-coil 2-][-coil 3-]                waits until that one's coil is laid and bedded
//   layers            [1]    [2]        [3]
//   joiner                                        [joints]
//   tester              [coil 1]  [coil 2]                [fill, flush, test]    a coil alone where it is
//                                                         covered before
//   loader              [bed 1]  [bed 2]                                     [fill in]
//   trucks     [--1--]                                                       [--1--]      where spoil is
//   hauled
//
// A flow shop (Johnson 1954) with several hands at a station, in the found order of digging. Times are
// working time from the first bucket on; nights, Sundays and rain are not in it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cost/crew_time.h"
#include "dig/crew_wishes.h"
#include "dig/dig_order.h"

namespace underlawn {

enum class CrewStation { digging, making, laying, joining, testing, filling, hauling };
inline constexpr int kCrewStations = 7;
std::string station_name(CrewStation s);      // "Excavator"
std::string_view station_key(CrewStation s);  // "excavator", whatever is spoken

enum class WaitFor {
  nothing,
  trench,
  coil,
  laying,
  filling,
  last_trench,
  joints,
  test,
  morning,
  trucks,
  proving
};
std::string wait_words(WaitFor w);  // "for the trench to be dug"

struct CrewTask {
  CrewStation station = CrewStation::digging;
  int who = 1;           // of several at the station, from 1
  int step = -1;         // in DigOrder::steps; -1: the loop as a whole. Testing: the coil of that step alone
  bool bedding = false;  // filling: only the sand over a coil, so that spoil can fall on it
  double begin = 0;      // s
  double end = 0;        // s
  double waited = 0;     // s that this hand stood idle before it
  WaitFor waited_for = WaitFor::nothing;
  bool operator==(const CrewTask&) const = default;
};
std::string task_words(const CrewTask& task, const DigOrder& order);  // "Coil of trench 3"

struct StationLoad {
  CrewStation station = CrewStation::digging;
  int hands = 1;
  double busy = 0;                    // s, of all hands
  double waited = 0;                  // s, between a hand's first task and its last
  WaitFor mostly = WaitFor::nothing;  // what most of it was waited for
  bool operator==(const StationLoad&) const = default;
};

// How long a trench lies open.
struct OpenTrench {
  int step = 0;
  double from = 0, to = 0;  // s
  double clock = 0;         // s by the clock, nights and days off included
  bool filled_early = false;
  bool operator==(const OpenTrench&) const = default;
};

// What one more of something would save.
struct CrewSaving {
  std::string what;    // "One more rack"
  double days = 0;     // working days until everything is filled in, fewer than now
  double working = 0;  // s of working time fewer
  bool operator==(const CrewSaving&) const = default;
};

struct CrewDay {
  std::string date;      // "2026-05-18"; empty where no first day is given
  int weekday = 0;       // 1 Monday .. 7; 0 likewise
  bool reserve = false;  // for rain
  bool operator==(const CrewDay&) const = default;
};

struct CrewCalendar {
  std::vector<CrewTask> tasks;  // by station, hand, time
  std::vector<StationLoad> stations;
  std::vector<OpenTrench> open;
  std::vector<CrewSaving> savings;
  std::vector<CrewDay> days;                                     // worked, then in reserve
  double day_length = kWorkingDay;                               // s
  double begins = 0;                                             // s after midnight
  double dug = 0, laid = 0, joined = 0, tested = 0, filled = 0;  // s, when the last of it is done
  int days_worked = 0;
  bool operator==(const CrewCalendar&) const = default;
};

struct CalendarAsk {
  const Site& site;
  const Layout& layout;
  const DigOrder& order;
  const Ground& ground;
  const DigWishes& how;
  const CrewWishes& crew;
  int joints = 0;   // fused: joints.h
  double test = 0;  // s that the pressure test holds the loop
};

// Empty where the order is.
CrewCalendar make_calendar(const CalendarAsk& ask);

// Calendar days from the first working day to working day `which` (0 the first): 3 for the fourth of a week
// of five begun on a Monday. Without a first day the week begins with its first day worked.
int calendar_day(const CrewWishes& crew, int which);

}  // namespace underlawn
