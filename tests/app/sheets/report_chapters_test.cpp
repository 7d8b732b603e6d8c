// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/report_chapters.h"

#include <gtest/gtest.h>

#include "files/plan_file.h"
#include "plan/solve.h"
#include "sheets/contents.h"

using namespace underlawn;

namespace {

struct Solved {
  Plan plan;
  Outcome outcome;
};

const std::vector<Solved>& samples() {
  static const std::vector<Solved> all = [] {
    std::vector<Solved> made;
    for (const char* name : {"alder-lane", "kestrel-bend"}) {
      Plan plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn")->value;
      Outcome outcome = solve(plan);
      made.push_back({std::move(plan), std::move(outcome)});
    }
    return made;
  }();
  return all;
}

std::string chapter_of(const Figures& figures, const std::string& key) {
  for (const auto& chapter : sheet::report_chapters(figures))
    for (const auto& entry : chapter.entries)
      if (entry.figure->key == key) return chapter.title;
  return "";
}

}  // namespace

TEST(ReportChapters, EveryFigureOfASampleStandsWhereItBelongs) {
  for (const Solved& s : samples()) {
    std::size_t count = 0;
    for (const auto& chapter : sheet::report_chapters(s.outcome.figures)) {
      EXPECT_NE(chapter.title, "Other figures") << chapter.entries.front().figure->key;
      count += chapter.entries.size();
    }
    EXPECT_EQ(count, s.outcome.figures.all().size());
    EXPECT_EQ(chapter_of(s.outcome.figures, "run.length"), "Header and supply run");
    EXPECT_EQ(chapter_of(s.outcome.figures, "run.other_1.fuel"), "Running cost");
    EXPECT_EQ(chapter_of(s.outcome.figures, "run.electricity_price"), "Running cost");
    EXPECT_EQ(chapter_of(s.outcome.figures, "bill.cost"), "Cost");
  }
}

// 5 a litre: 18.93 a gallon of 3.785 l.
TEST(ReportChapters, APriceIsShownForTheUnitThatItsAmountIsShownIn) {
  Solved s = samples()[0];
  EXPECT_EQ(sheet::shown(s.plan, s.outcome, "price.propylene_glycol"), "18.93 per gal");
  s.plan.units = UnitSystem::metric;
  EXPECT_EQ(sheet::shown(s.plan, s.outcome, "price.propylene_glycol"), "5.00 per L");
  EXPECT_EQ(sheet::shown(s.plan, s.outcome, "price.grout"), "15.00");
  EXPECT_EQ(sheet::shown(s.plan, s.outcome, "counting.seed"), "0.02 kg");  // not 0.0
}

// A pump's plate says watts in either system; three figures of a pipe's wall are read off its table.
TEST(ReportChapters, ElectricPowerIsInKilowattsAndSmallFiguresKeepTheirDigits) {
  Solved s = samples()[0];
  s.plan.units = UnitSystem::us;
  EXPECT_EQ(sheet::shown(s.plan, s.outcome, "unit.heating_power"), "3.28 kW");
  EXPECT_EQ(sheet::shown(s.plan, s.outcome, "pipe.coil.minimum_wall"), "0.095 in");
  EXPECT_EQ(sheet::shown(s.plan, s.outcome, "run.electricity_emission"), "0.82 lb");  // 0.373 kg
}
