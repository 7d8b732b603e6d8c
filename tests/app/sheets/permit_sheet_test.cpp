// SPDX-License-Identifier: GPL-3.0-or-later
// The permit plan as a reviewer reads it.
#include "sheets/permit_sheet.h"

#include <gtest/gtest.h>

#include <QRegularExpression>

#include "app/support/laid_out.h"
#include "app/support/pdf_tools.h"
#include "canvas/bearing.h"
#include "files/plan_file.h"
#include "plan/clearings.h"
#include "plan/solve.h"
#include "sheets/permit_tables.h"
#include "sheets/sheets_out.h"

using namespace underlawn;

namespace {

const QDate kDay(2026, 5, 4);

const laid_out::Sample& solved(const std::string& name) {
  static std::map<std::string, laid_out::Sample> all;
  laid_out::Sample& s = all[name];
  if (s.plan.site.lot.empty()) {
    s.plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/" + name + ".underlawn")->value;
    s.plan.thermal.years = 1;
    s.outcome = solve(s.plan);
  }
  return s;
}

QString page_of(const laid_out::Sample& s, Paper paper, int page) {
  return pdf::text(pdf_of(PermitSheet(s.plan, s.outcome, {paper, {}, kDay})), page);
}

}  // namespace

// Computed by hand; 272.35 degrees clockwise from north are 87 degrees 39 minutes short of it.
TEST(PermitPlan, BearingsAreQuartersOfTheCompass) {
  const double north = std::numbers::pi / 2;
  const auto at = [&](double degrees) {
    const double angle = north - degrees * std::numbers::pi / 180;
    return quarter_bearing({std::cos(angle), std::sin(angle)}, north);
  };
  EXPECT_EQ(at(0.001), "N 0°00' E");
  EXPECT_EQ(at(45), "N 45°00' E");
  EXPECT_EQ(at(90.5), "S 89°30' E");
  EXPECT_EQ(at(181.75), "S 1°45' W");
  EXPECT_EQ(at(272.35), "N 87°39' W");
}

// Tables call an edge by its number, and what is bold there is drawn.
TEST(PermitPlan, EveryEdgeAndEveryDimensionOfTheTablesIsOnTheDrawing) {
  for (const char* name : {"alder-lane", "kestrel-bend"})
    for (Paper paper : {Paper::letter, Paper::a4, Paper::tabloid, Paper::a3}) {
      const laid_out::Sample& s = solved(name);
      const QString first = page_of(s, paper, 1);
      for (std::size_t i = 0; i < s.plan.site.lot.size(); ++i)
        EXPECT_TRUE(first.contains(QString("Edge %1").arg(i + 1))) << name << " " << i + 1;
      const std::vector<Clearing> all = clearings(s.plan, s.outcome);
      int drawn = 0;
      for (std::size_t i = 0; i < all.size(); ++i) {
        const bool there = first.contains(QRegularExpression(QString("\\bD%1 ").arg(i + 1)));
        EXPECT_EQ(there, sheet::is_dimensioned(s.plan, all[i])) << name << " D" << i + 1;
        drawn += there;
      }
      EXPECT_GE(drawn, 5);
      EXPECT_LT(drawn, 15);
    }
}

// Septic, drain and reserve field and well always; house and lot line where they are near.
TEST(PermitPlan, WhatAHealthDepartmentLooksForIsDimensioned) {
  const laid_out::Sample& s = solved("alder-lane");
  for (const Clearing& c : clearings(s.plan, s.outcome)) {
    const Feature* f = find_feature(s.plan.site, c.feature_id);
    if (f == nullptr || !c.coil) continue;
    if (f->kind == FeatureKind::well || f->kind == FeatureKind::septic_tank ||
        f->kind == FeatureKind::drain_field || f->kind == FeatureKind::reserve_field) {
      EXPECT_TRUE(sheet::is_dimensioned(s.plan, c)) << c.thing;
    }
    if (f->kind == FeatureKind::tree || f->kind == FeatureKind::utility) {
      EXPECT_FALSE(sheet::is_dimensioned(s.plan, c)) << c.thing;
    }
  }
}

TEST(PermitPlan, LegendExplainsOnlyWhatIsDrawn) {
  const laid_out::Sample& s = solved("alder-lane");
  ASSERT_FALSE(s.outcome.stake_out.corners.empty());
  const QString first = page_of(s, Paper::letter, 1);
  EXPECT_TRUE(first.contains("LEGEND"));
  EXPECT_TRUE(first.contains("septic tank"));
  EXPECT_FALSE(first.contains("list of findings"));
  EXPECT_FALSE(first.contains("corner to tape from"));
}

// 122 ft by 201 ft on letter: 1 in = 30 ft takes 4.1 by 6.7 in, with the legend beside it and not below.
TEST(PermitPlan, LegendStandsWhereThePlanIsLargest) {
  const laid_out::Sample& s = solved("alder-lane");
  EXPECT_LE(PermitSheet(s.plan, s.outcome, {Paper::letter, {}, kDay}).scale(), 360);
}
