// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/crew_needs.h"

#include <gtest/gtest.h>

#include "app/support/written.h"
#include "cost/bill.h"
#include "files/plan_file.h"
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
    EXPECT_EQ(shifts, static_cast<int>(stations.size())) << day.day;
  }
  EXPECT_TRUE(cells.contains("7:00–15:00"));
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
