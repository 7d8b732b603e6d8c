// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/trench_ticks.h"

#include <gtest/gtest.h>

#include "app/support/written.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "files/plan_file.h"
#include "plan/solve.h"
#include "sheets/contents.h"

using namespace underlawn;

namespace {

struct Job {
  Plan plan;
  Outcome outcome;
};

Job job(const char* name, Sides sides = Sides::stay_out) {
  Job j;
  j.plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR "/samples/") + name + ".underlawn")->value;
  j.plan.thermal.years = 1;
  j.plan.dig.coil_sides = sides;
  j.outcome = solve(j.plan);
  return j;
}

qsizetype place(const QStringList& ticks, const QString& words) {
  for (qsizetype i = 0; i < ticks.size(); ++i)
    if (ticks[i].contains(words)) return i;
  return -1;
}

QString page(const Job& j, std::size_t trench) {
  const auto pages = sheet::trench_pages(j.plan, j.outcome);
  return test::written_by([&](QPainter& p) {
           pages[trench]->paint(p, {0, 0, sheet::pt(540), sheet::pt(640)});
         })
      .join(" ");
}

}  // namespace

// Sand goes over a coil before or after the test of the whole loop: the boxes stand as the calendar has it,
// and as-built tapes before any sand.
TEST(TrenchTicks, StandInTheOrderOfTheCalendar) {
  int before = 0, after = 0;
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const Job j = job(name);
    const CrewCalendar& c = *j.outcome.calendar;
    for (const Trench& t : j.outcome.layout.trenches) {
      double sand = -1, tested = -1;
      for (const CrewTask& task : c.tasks) {
        const bool own =
            task.step >= 0 && j.outcome.order->steps[static_cast<std::size_t>(task.step)].trench == t.number;
        if (own && task.station == CrewStation::filling && (sand < 0 || task.begin < sand)) sand = task.begin;
        if (task.step < 0 && task.station == CrewStation::testing) tested = task.end;
      }
      ASSERT_GE(sand, 0);
      ASSERT_GE(tested, 0);
      const QStringList ticks = sheet::trench_ticks(j.plan, j.outcome, t.number);
      const auto over = place(ticks, "sand over the coil"), whole = place(ticks, "whole loop tested"),
                 ties = place(ticks, "as-built tapes");
      ASSERT_TRUE(over >= 0 && whole >= 0 && ties >= 0) << ticks.join("; ").toStdString();
      EXPECT_EQ(over < whole, sand < tested) << name << " " << t.number;
      EXPECT_LT(ties, over) << name << " " << t.number;
      (sand < tested ? before : after) += 1;
    }
  }
  EXPECT_GT(before, 0);
  EXPECT_GT(after, 0);
}

// One story: by the sides as planned, and no measure of a slope that nobody digs.
TEST(TrenchTicks, ThePageSaysWhoGoesInByItsSides) {
  const QString out = page(job("alder-lane"), 0);
  EXPECT_TRUE(out.contains("Nobody goes in, at any time.")) << out.toStdString();
  EXPECT_FALSE(out.contains("1.5:1"));
  EXPECT_FALSE(out.contains("ladder"));
  const QString shield = page(job("alder-lane", Sides::shield), 0);
  EXPECT_FALSE(shield.contains("Nobody goes in"));
  EXPECT_TRUE(shield.contains("In only inside the shield"));
  EXPECT_TRUE(shield.contains("ladder"));
  const QString slope = page(job("alder-lane", Sides::slope), 0);
  EXPECT_TRUE(slope.contains("1.5:1")) << slope.toStdString();
}
