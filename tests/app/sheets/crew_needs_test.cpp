// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/crew_needs.h"

#include <gtest/gtest.h>

#include <QRegularExpression>
#include <cmath>

#include "app/support/written.h"
#include "cost/bill.h"
#include "dig/dig_order.h"
#include "files/plan_file.h"
#include "plan/coil_watch.h"
#include "plan/solve.h"
#include "plan/tie_check.h"
#include "plane/thin_cut.h"
#include "plots/crew_bars.h"
#include "sheets/block.h"
#include "sheets/contents.h"

using namespace underlawn;

namespace {

struct Job {
  Plan plan;
  Outcome outcome;
};

Job job(const char* name, UnitSystem units = UnitSystem::us) {
  Job j;
  j.plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR "/samples/") + name + ".underlawn")->value;
  j.plan.thermal.years = 1;
  j.plan.units = units;
  j.outcome = solve(j.plan);
  return j;
}

QString said(const sheet::BlockPtr& block) {
  if (!block) return {};
  return test::written_by([&](QPainter& p) {
           block->paint(p, {0, 0, sheet::pt(900), sheet::pt(900)});
         })
      .join(" | ");
}

}  // namespace

// By all pairs that are printed, worked out here: no tape of the sheet is longer than what is to be brought.
TEST(CrewNeeds, TheTapeReachesTheLongestPull) {
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const Job j = job(name);
    double longest = 0;
    for (const auto& ties : {j.outcome.stake_out.ties, building_ties(j.plan.site, j.outcome.stake_out)})
      for (const Tie& tie : ties) longest = std::max({longest, tie.first_distance, tie.second_distance});
    const double found = sheet::longest_tape(j.plan, j.outcome).metres;
    EXPECT_GE(found, longest) << name;
    const bool long_one = found > 200 * 0.3048;
    const QString text = said(sheet::bring_and_fill(j.plan, j.outcome));
    EXPECT_TRUE(text.contains(long_one ? "Two tapes of 300 ft." : "Two tapes of 200 ft."))
        << text.toStdString();
    EXPECT_TRUE(text.contains(QString("%1 stakes").arg(j.outcome.stake_out.ties.size())));
    for (const char* form : {"LOCATE TICKET", "TEST, FLUSH AND FILL RECORD", "AS BUILT FORM"})
      EXPECT_TRUE(text.contains(form)) << form;
  }
  EXPECT_TRUE(said(sheet::bring_and_fill(job("kestrel-bend", UnitSystem::metric).plan,
                                         job("kestrel-bend", UnitSystem::metric).outcome))
                  .contains("Two tapes of 100 m."));
}

// A row a day; who has no task on a day has no hours there.
TEST(CrewNeeds, TellsWhoIsNeededOnWhichDay) {
  const Job j = job("kestrel-bend");
  const QStringList cells = said(sheet::who_when(j.plan, j.outcome)).split(" | ");
  const auto days = bars_by_day(*j.outcome.calendar);
  for (const CrewDayBars& day : days) {
    const auto at = cells.indexOf(day_words(*j.outcome.calendar, day.day));
    ASSERT_GE(at, 0) << day.day;
    int shifts = 0;
    for (auto i = at + 1; i < cells.size() && !cells[i].startsWith("Day") && !cells[i].startsWith("From");
         ++i)
      shifts += cells[i].contains("–") && cells[i].contains(":");
    std::vector<CrewStation> stations;
    for (const CrewRow& row : day.rows)
      if (std::find(stations.begin(), stations.end(), row.station) == stations.end())
        stations.push_back(row.station);
    // One column more where somebody is below, or digs by hand.
    const HandWork hand = hand_work(j.plan, j.outcome);
    bool above = false;
    for (const CrewRow& row : day.rows)
      for (const CrewBar& bar : row.bars) {
        const CrewTask& task = j.outcome.calendar->tasks[bar.task];
        above = above || row.station == CrewStation::joining ||
                (row.station == CrewStation::digging && task.step >= 0 &&
                 hand.exposing[static_cast<std::size_t>(task.step)] > 0 &&
                 bar.from + day.day * j.outcome.calendar->day_length < task.begin + 1);
      }
    EXPECT_EQ(shifts, static_cast<int>(stations.size()) + above) << day.day;
  }
  EXPECT_TRUE(cells.contains("7:00–15:00"));
}

// Nobody is below alone: with the joiner in the shield are one above and the driver who moves it.
TEST(CrewNeeds, TheJoinerIsNeverAlone) {
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    Job j = job(name);
    ASSERT_EQ(j.plan.dig.run_sides, Sides::shield);
    const auto people_on_joiners_days = [&] {
      const QStringList cells = said(sheet::who_when(j.plan, j.outcome)).split(" | ");
      std::vector<int> people;
      for (const CrewDayBars& day : bars_by_day(*j.outcome.calendar)) {
        // Days on which nobody but the joiner works.
        if (day.rows.size() != 1 || day.rows[0].station != CrewStation::joining) continue;
        auto i = cells.indexOf(day_words(*j.outcome.calendar, day.day)) + 1;
        while (i < cells.size() && !cells[i].contains(QRegularExpression("^[0-9]+$"))) ++i;
        people.push_back(cells[i].toInt());
      }
      return people;
    };
    EXPECT_EQ(people_on_joiners_days(), std::vector<int>{3}) << name;
    j.plan.dig.run_sides = Sides::slope;  // no shield to move
    EXPECT_EQ(people_on_joiners_days(), std::vector<int>{2}) << name;
    j.plan.dig.run_sides = Sides::stay_out;  // joined above the ground
    EXPECT_EQ(people_on_joiners_days(), std::vector<int>{1}) << name;
  }
}

// Turns measured here by the bearings of the legs; an elbow of 45 and what is left for the pipe make the
// turn.
TEST(CrewNeeds, CornersAreMadeByTheirElbowAndThePipe) {
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const Job j = job(name);
    const QString text = sheet::bend_words(j.plan, j.outcome);
    const Polyline& line = j.outcome.layout.run.line;
    int corners = 0;
    for (std::size_t i = 1; i + 1 < line.size(); ++i) {
      const auto bearing = [&](std::size_t a) {
        return std::atan2(line[a + 1].y - line[a].y, line[a + 1].x - line[a].x) * 180 / M_PI;
      };
      const double turn = std::abs(std::remainder(bearing(i) - bearing(i - 1), 360));
      if (turn < 1) continue;
      ++corners;
      const auto said_here =
          QRegularExpression(QString(", %1°: ([^;.]*)").arg(std::lround(turn))).match(text);
      ASSERT_TRUE(said_here.hasMatch()) << name << " " << turn << " " << text.toStdString();
      const QString made = said_here.captured(1);
      EXPECT_EQ(made.contains("elbow"), turn > 22.5) << made.toStdString();
      const auto rest = QRegularExpression("elbow (\\d+)°, the pipe bends (\\d+)° (more|back)").match(made);
      if (rest.hasMatch()) {
        const int more = rest.captured(2).toInt() * (rest.captured(3) == "more" ? 1 : -1);
        EXPECT_EQ(rest.captured(1).toInt() + more, std::lround(turn));
      }
    }
    EXPECT_GT(corners, 0) << name;
  }
}

// What the calendar has from a coil's proof to the end of what covers it, however short.
TEST(CrewNeeds, ACoilIsWatchedAsLongAsTheCalendarHasIt) {
  const Job j = job("kestrel-bend");
  const CrewCalendar& c = *j.outcome.calendar;
  int short_ones = 0;
  for (const CoilWatch& watch : coil_watches(j.plan, j.outcome)) {
    double proved = -1, sand = -1;
    for (const CrewTask& t : c.tasks) {
      if (t.step < 0 || j.outcome.order->steps[static_cast<std::size_t>(t.step)].trench != watch.trench)
        continue;
      if (t.station == CrewStation::testing) proved = t.end;
      if (t.station == CrewStation::filling && t.bedding) sand = t.end;
    }
    ASSERT_GE(proved, 0) << watch.trench;
    EXPECT_GE(watch.hold.covered, sand - proved - 1) << watch.trench;
    if (sand - proved < 3600 && watch.hold.covered < 3600) ++short_ones;
  }
  EXPECT_GT(short_ones, 0);  // coil 5: 39 min
}

// Who is to be called, and a box for every day.
TEST(CrewNeeds, NamesAreAskedForAndADayIsTicked) {
  const Job j = job("alder-lane");
  const QString text = said(sheet::safety_form(j.plan, j.outcome));
  EXPECT_TRUE(text.contains("911"));
  EXPECT_TRUE(text.contains("Water line from well"));
  EXPECT_EQ(text.count("☐"), static_cast<int>(j.outcome.calendar->days.size())) << text.toStdString();
}

// Every fitting of the bill has a row with its number and a place.
TEST(CrewNeeds, FittingsAreThoseOfTheBillEachWithItsPlace) {
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const Job j = job(name);
    const QStringList cells = said(sheet::fittings_table(j.plan, j.outcome)).split(" | ");
    int rows = 0;
    for (const BillLine& line : j.outcome.bill->lines) {
      if (line.group != BillGroup::fittings) continue;
      const auto at = cells.indexOf(QString::fromStdString(line.item));
      ASSERT_GE(at, 0) << line.item;
      ASSERT_LT(at + 2, cells.size());
      EXPECT_EQ(cells[at + 1], QString::number(line.needed)) << line.item;
      EXPECT_FALSE(cells[at + 2].isEmpty()) << line.item;
      EXPECT_NE(cells[at + 2], "–") << line.item;
      ++rows;
    }
    EXPECT_GT(rows, 5);
  }
}

// What is marked § or has a dash is sent to BETWEEN STAKES: there it has two tapes, and a thin corner of a
// barn one.
TEST(CrewNeeds, WhatIsCheckedFromNeighboursIsTapedFromThem) {
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const Job j = job(name);
    const QStringList cells = said(sheet::between_table(j.plan, j.outcome)).split(" | ");
    const auto tapes_of = [&](const std::string& point) {
      int n = 0;
      for (const QString& cell : cells) n += cell.split(" – ").contains(QString::fromStdString(point));
      return n;
    };
    int sent = 0;
    for (const Tie& tie : j.outcome.stake_out.ties) {
      const auto second = second_tie(j.plan.site, j.outcome.stake_out, tie);
      if (second && tie.cut >= kThinCut) continue;
      ++sent;
      EXPECT_GE(tapes_of(tie.point), 2) << name << " " << tie.point;
    }
    EXPECT_GT(sent, 0) << name;
    for (const Tie& corner : building_ties(j.plan.site, j.outcome.stake_out))
      if (corner.cut < kThinCut) {
        EXPECT_GE(tapes_of(corner.point), 1) << name << " " << corner.point;
      }
  }
}

TEST(CrewNeeds, SayNothingWhereNothingIsLaid) {
  const Plan plan;
  const Outcome outcome;
  EXPECT_EQ(sheet::who_when(plan, outcome), nullptr);
  EXPECT_EQ(sheet::bring_and_fill(plan, outcome), nullptr);
  EXPECT_EQ(sheet::fittings_table(plan, outcome), nullptr);
}
