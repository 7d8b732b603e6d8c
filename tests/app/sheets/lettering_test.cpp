// SPDX-License-Identifier: GPL-3.0-or-later
// Lettering as it lies on the page: no text on another, none off the page, cut by its frame or painted over.
#include <gtest/gtest.h>

#include "app/support/painted_texts.h"
#include "files/plan_file.h"
#include "language/language.h"
#include "plan/solve.h"
#include "sheets/said_sheet.h"

using namespace underlawn;

namespace {

constexpr double kHair = 0.5 * kSheetUnits / 72;  // half a point

Plan sample_file(const std::string& name) {
  Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/" + name + ".underlawn")->value;
  plan.thermal.years = 1;
  return plan;
}

Plan with_circuits(Plan plan, int circuits) {
  plan.wishes.circuits = circuits;
  return plan;
}

// Kestrel's lot made a field of it.
Plan fourteen() {
  Plan plan = with_circuits(sample_file("kestrel-bend"), 14);
  plan.site.lot = {{{0, 0}, 3}, {{110, 0}, 3}, {{110, 90}, 3}, {{0, 90}, 3}};
  return plan;
}

// The second trench stopped at rock, the third dug to other tapes; names as long as people have them.
Plan built_with_long_names() {
  Plan plan = sample_file("alder-lane");
  plan.title.project =
      "Ground loop for the farmhouse and the converted hay barn at the old Willowbrook orchard";
  plan.title.address = "1421 North Old Willowbrook Orchard Road, Upper Fernhollow Township, Somerset County";
  plan.title.owner = "Maximiliana Featherstonehaugh-Wetherby and Bartholomew Featherstonehaugh the younger";
  plan.title.designer = "Cholmondeley, Featherstonehaugh and Daughters Ground Works and Well Drilling";
  plan.title.phone = "+1 (555) 014-2555 ext. 1042";
  for (Feature& f : plan.site.features)
    if (f.kind == FeatureKind::tree) f.name = "The " + f.name + " that grandmother planted";
  BuiltTrench stopped;
  stopped.number = 2;
  stopped.length = 21;
  stopped.stopped_by = StopCause::rock;
  stopped.note = "ledge, flat top, could not be ripped";
  BuiltTrench moved;
  moved.number = 3;
  moved.head = BuiltPoint{{{"B", 12.5}, {"E", 10.2}}, false, {}};
  moved.depth = 1.7;
  plan.as_built.trenches = {stopped, moved};
  return plan;
}

std::string page_name(const Sheet& sheet, int page) {
  return sheet.title().toStdString() + ", page " + std::to_string(page + 1);
}

void expect_clear(const QVector<painted::Text>& texts, const std::string& where) {
  EXPECT_GT(texts.size(), 12) << where;
  for (int i = 0; i < texts.size(); ++i) {
    const painted::Text& a = texts[i];
    const QRectF room = a.room.adjusted(-kHair, -kHair, kHair, kHair);
    EXPECT_TRUE(room.contains(a.ink.boundingRect())) << where << ": " << a.text.toStdString() << " is cut";
    EXPECT_FALSE(a.covered) << where << ": " << a.text.toStdString() << " is painted over";
    for (int j = i + 1; j < texts.size(); ++j)
      EXPECT_LE(painted::overlap(a.ink, texts[j].ink), kHair)
          << where << ": " << a.text.toStdString() << " on " << texts[j].text.toStdString();
  }
}

void expect_all_clear(const Plan& plan, Paper paper, SheetUnits units, const std::string& language,
                      std::size_t trenches) {
  let_qt_speak();
  const Outcome outcome = solve(plan);
  ASSERT_EQ(outcome.layout.trenches.size(), trenches);
  std::vector<const SheetKind*> kinds;
  for (const SheetKind& kind : sheet_kinds()) kinds.push_back(&kind);
  SheetSetup setup{paper, {}, QDate(2026, 5, 4)};
  setup.page_a_trench = true;
  setup.units = units;
  setup.language = language;
  for (const SheetPtr& sheet : make_sheets(kinds, plan, outcome, setup))
    for (int page = 0; page < sheet->pages(); ++page)
      expect_clear(painted::texts(*sheet, page),
                   plan.title.project + ", " + language + ", " + page_name(*sheet, page));
}

void expect_all_clear(const Plan& plan, std::size_t trenches) {
  for (const char* language : {"en", "es"}) {
    expect_all_clear(plan, Paper::letter, SheetUnits::us, language, trenches);
    expect_all_clear(plan, Paper::a4, SheetUnits::metric, language, trenches);
  }
}

}  // namespace

TEST(Lettering, LiesClearOnEveryPageOfTheSamples) {
  expect_all_clear(sample_file("alder-lane"), 4);
  expect_all_clear(sample_file("kestrel-bend"), 5);
}

TEST(Lettering, LiesClearWithThreeTrenches) {
  expect_all_clear(with_circuits(sample_file("alder-lane"), 3), 3);
}

TEST(Lettering, LiesClearWithFourteenTrenches) {
  expect_all_clear(fourteen(), 14);
}

TEST(Lettering, LiesClearWithLongNamesAndOverWhatWasReallyDug) {
  expect_all_clear(built_with_long_names(), 4);
}
