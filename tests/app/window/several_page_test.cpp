// SPDX-License-Identifier: GPL-3.0-or-later
// Several things selected: how many of what, and what they share, edited for all of them at once.
#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>

#include "app/support/fields.h"
#include "app/support/wait.h"
#include "plan/edits.h"
#include "support/sample_plans.h"
#include "window/lot_list.h"
#include "window/selected_panel.h"

using namespace underlawn;
using sample::feet;

namespace {

using Kind = Selected::Kind;

struct SeveralTest : testing::Test {
  Document document;
  Selection selection;
  SelectedPanel panel{document, selection};

  void SetUp() override { document.commit(sample::half_acre(), "Drawn"); }
  void pick(std::vector<int> ids, Kind kind = Kind::feature) {
    std::vector<Selected> all;
    for (int id : ids) all.push_back({kind, id});
    selection.select_several(all);
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  }
  const Feature& feature(int id) { return *find_feature(document.plan().site, id); }
  QLineEdit* field(const QString& name) { return called<QLineEdit>(panel, name); }
  bool says(const QString& words) {
    const auto all = panel.findChildren<QLabel*>();
    return std::any_of(all.begin(), all.end(), [&](const QLabel* l) { return l->text().contains(words); });
  }
  QPushButton* button(const QString& words) {
    for (auto* b : panel.findChildren<QPushButton*>())
      if (b->accessibleName() == words || b->text() == words) return b;
    return nullptr;
  }
  int add(FeatureKind kind, std::vector<Point> points) {
    Feature f;
    f.id = edit::next_feature_id(document.committed());
    f.kind = kind;
    f.points = std::move(points);
    document.commit(edit::with_feature(document.committed(), f), "Add");
    return f.id;
  }
};

}  // namespace

TEST_F(SeveralTest, TreesThatDifferSaySoAndTakeOneTrunkInOneEntry) {
  Plan plan = document.plan();
  for (Feature& f : plan.site.features) {
    if (f.id == sample::oak) f.trunk_diameter = 12 * 0.0254;
    if (f.id == sample::maple) f.trunk_diameter = 30 * 0.0254;
  }
  document.commit(plan, "Trunks");
  pick({sample::oak, sample::maple});
  EXPECT_TRUE(says("2 things selected"));
  EXPECT_TRUE(says("Tree: 2"));
  ASSERT_NE(field("Trunk diameter"), nullptr);
  EXPECT_EQ(field("Trunk diameter")->text(), "");
  EXPECT_TRUE(field("Trunk diameter")->placeholderText().contains("12") &&
              field("Trunk diameter")->placeholderText().contains("30"))
      << field("Trunk diameter")->placeholderText().toStdString();
  type(field("Trunk diameter"), "1.5 ft");
  EXPECT_DOUBLE_EQ(feature(sample::oak).trunk_diameter, 18 * 0.0254);
  EXPECT_DOUBLE_EQ(feature(sample::maple).trunk_diameter, 18 * 0.0254);
  EXPECT_EQ(field("Trunk diameter")->placeholderText(), "");
  document.undo();
  EXPECT_EQ(document.plan(), plan);
}

TEST_F(SeveralTest, UtilitiesTakeDepthAndWhatTheyCarryTogether) {
  pick({sample::power, sample::water});
  auto* carries = called<QComboBox>(panel, "Carries");
  ASSERT_NE(carries, nullptr);
  EXPECT_EQ(carries->currentIndex(), -1);
  emit carries->activated(static_cast<int>(UtilityKind::gas));
  EXPECT_EQ(carries->currentIndex(), static_cast<int>(UtilityKind::gas));
  type(field("Depth to its top"), "42 in");
  for (int id : {sample::power, sample::water}) {
    EXPECT_EQ(feature(id).utility, UtilityKind::gas);
    EXPECT_DOUBLE_EQ(feature(id).depth, 42 * 0.0254);
  }
}

TEST_F(SeveralTest, WhatCannotBeIsSaidAndNothingIsChanged) {
  pick({sample::oak, sample::maple, sample::birch});
  const Plan before = document.plan();
  type(field("Trunk diameter"), "-2 in");
  EXPECT_EQ(document.plan(), before);
  EXPECT_EQ(field("Trunk diameter")->text(), "-2 in");
  EXPECT_FALSE(field("Trunk diameter")->accessibleDescription().isEmpty());
  type(field("Trunk diameter"), "wide");
  EXPECT_EQ(document.plan(), before);
}

TEST_F(SeveralTest, CrossingIsHalfTickedWhileTheyDiffer) {
  Plan plan = document.plan();
  for (Feature& f : plan.site.features)
    if (f.id == sample::power) f.may_cross = false;
  document.commit(plan, "Power");
  pick({sample::power, sample::water});
  QCheckBox* cross = nullptr;
  for (auto* box : panel.findChildren<QCheckBox*>())
    if (box->text() == "Header and run may cross them") cross = box;
  ASSERT_NE(cross, nullptr);
  EXPECT_EQ(cross->checkState(), Qt::PartiallyChecked);
  cross->click();
  EXPECT_TRUE(feature(sample::power).may_cross && feature(sample::water).may_cross);
  EXPECT_EQ(cross->checkState(), Qt::Checked);
  cross->click();
  EXPECT_FALSE(feature(sample::power).may_cross || feature(sample::water).may_cross);
  EXPECT_EQ(cross->checkState(), Qt::Unchecked);
}

// 10 ft x 20 ft and 5 ft x 10 ft are 250 square feet; 30 ft and 12 ft of line are 42 ft.
TEST_F(SeveralTest, AreasAndLengthsAreAddedUp) {
  pick({add(FeatureKind::no_dig, sample::box_feet(0, 0, 10, 20)),
        add(FeatureKind::no_dig, sample::box_feet(50, 0, 55, 10))});
  EXPECT_TRUE(says("No-dig area: 2, 250 sq ft"));
  pick({add(FeatureKind::utility, {feet(0, 0), feet(30, 0)}),
        add(FeatureKind::utility, {feet(0, 0), feet(0, 12)})});
  EXPECT_TRUE(says("Utility: 2, 42'")) << panel.findChildren<QLabel*>().at(1)->text().toStdString();
}

TEST_F(SeveralTest, DifferentKindsShareClearancesAndOneKindIsOneKeyAway) {
  pick({sample::oak, sample::power, sample::maple});
  EXPECT_EQ(field("Trunk diameter"), nullptr);
  EXPECT_EQ(field("Depth to its top"), nullptr);
  type(field("Coil trench"), "12 ft");
  for (int id : {sample::oak, sample::power, sample::maple})
    EXPECT_EQ(feature(id).trench_clearance, 12 * 0.3048);
  auto* usual = button("As usual for each kind");
  ASSERT_NE(usual, nullptr);
  usual->click();
  for (int id : {sample::oak, sample::power, sample::maple}) EXPECT_FALSE(feature(id).trench_clearance);
  auto* only = button("Only these: tree");
  ASSERT_NE(only, nullptr);
  only->setFocus();
  QTest::keyClick(only, Qt::Key_Space);
  EXPECT_EQ(selection.all(),
            (std::vector<Selected>{{Kind::feature, sample::oak}, {Kind::feature, sample::maple}}));
  EXPECT_NE(field("Trunk diameter"), nullptr);
}

TEST_F(SeveralTest, NotesAreSharedAndKeptWhereNothingIsTyped) {
  pick({sample::oak, sample::maple});
  type(field("Note"), "to be felled");
  EXPECT_EQ(feature(sample::oak).note, "to be felled");
  EXPECT_EQ(feature(sample::maple).note, "to be felled");
  pick({sample::oak, sample::birch});
  EXPECT_EQ(field("Note")->text(), "");
  EXPECT_EQ(field("Note")->placeholderText(), "they differ");
  const Plan before = document.plan();
  field("Note")->setFocus();
  QTest::keyClick(field("Note"), Qt::Key_Return);
  EXPECT_EQ(document.plan(), before);
}

TEST_F(SeveralTest, AnotherKindTakesShapeNameAndNoteAlongAndNothingElse) {
  Plan plan = document.plan();
  for (Feature& f : plan.site.features)
    if (f.id == sample::drain_field) f.trench_clearance = 9;
  document.commit(plan, "Own clearance");
  pick({sample::drain_field, sample::reserve});
  auto* kind = called<QComboBox>(panel, "Kind");
  ASSERT_NE(kind, nullptr);
  EXPECT_EQ(kind->currentIndex(), -1);
  emit kind->activated(kind->findText("no-dig area"));
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  for (int id : {sample::drain_field, sample::reserve}) {
    EXPECT_EQ(feature(id).kind, FeatureKind::no_dig);
    EXPECT_EQ(feature(id).points, find_feature(plan.site, id)->points);
    EXPECT_FALSE(feature(id).trench_clearance);
  }
  EXPECT_TRUE(says("No-dig area: 2"));
  document.undo();
  EXPECT_EQ(document.plan(), plan);
}

TEST_F(SeveralTest, AHouseThatIsNoHouseLosesItsEntryPoint) {
  pick({sample::house});
  auto* kind = called<QComboBox>(panel, "Kind");
  ASSERT_NE(kind, nullptr);
  ASSERT_TRUE(document.plan().site.entry);
  emit kind->activated(kind->findText("drive"));
  EXPECT_EQ(feature(sample::house).kind, FeatureKind::drive);
  EXPECT_FALSE(document.plan().site.entry);
}

TEST_F(SeveralTest, DrawnTrenchesHeightsAndDimensionsTakeTheirNumbersTogether) {
  Plan plan = document.plan();
  plan.wishes.locked = {{feet(10, 100), feet(60, 100)}, {feet(10, 110), feet(60, 110)}};
  plan.site.heights = {{feet(0, 0), 1}, {feet(50, 0), 2}, {feet(0, 50), 3}};
  plan.dimensions.resize(2);
  plan.dimensions[0].to = feet(10, 0);
  plan.dimensions[1].to = feet(0, 10);
  document.commit(plan, "Drawn");
  pick({0, 1}, Kind::locked);
  EXPECT_TRUE(says("Drawn trench: 2, 100'"));
  type(field("Depth"), "6 ft");
  for (const GivenTrench& t : document.plan().wishes.locked) EXPECT_DOUBLE_EQ(t.depth, 6 * 0.3048);
  pick({0, 2}, Kind::height);
  type(field("Height"), "101 ft");
  EXPECT_DOUBLE_EQ(document.plan().site.heights[0].height, 101 * 0.3048);
  EXPECT_DOUBLE_EQ(document.plan().site.heights[1].height, 2);
  EXPECT_DOUBLE_EQ(document.plan().site.heights[2].height, 101 * 0.3048);
  pick({0, 1}, Kind::dimension);
  type(field("Words behind it"), "by tape");
  for (const Dimension& d : document.plan().dimensions) EXPECT_EQ(d.text, "by tape");
}

TEST_F(SeveralTest, TrenchesOfTheLoopAreHeldTogetherAndLetGoTogether) {
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  ASSERT_GE(document.outcome()->layout.trenches.size(), 2u);
  pick({1, 2}, Kind::trench);
  EXPECT_TRUE(says("of pipe"));
  QCheckBox* held = nullptr;
  for (auto* box : panel.findChildren<QCheckBox*>())
    if (box->text() == "Held where they lie") held = box;
  ASSERT_NE(held, nullptr);
  held->click();
  EXPECT_EQ(document.plan().wishes.locked.size(), 2u);
  EXPECT_EQ(document.undo_name(), "Lock trenches");
  document.undo();
  EXPECT_TRUE(document.plan().wishes.locked.empty());
}

TEST_F(SeveralTest, TheLotListPicksSeveralByKeys) {
  LotList list(document, selection);
  list.show();
  auto* find = list.findChild<QLineEdit*>();
  auto* rows = list.findChild<QListWidget*>();
  find->setText("tree");
  ASSERT_EQ(rows->count(), 3);
  rows->setFocus();
  rows->setCurrentRow(0);
  QTest::keyClick(rows, Qt::Key_Down, Qt::ShiftModifier);
  EXPECT_EQ(selection.all().size(), 2u);
  EXPECT_TRUE(says("Tree: 2"));
  QTest::keyClick(rows, Qt::Key_A, Qt::ControlModifier);
  EXPECT_EQ(selection.all().size(), 3u);
  find->setText("");
  EXPECT_EQ(selection.all().size(), 3u) << "another search leaves what is selected";
  EXPECT_EQ(rows->selectedItems().size(), 3);
}

TEST_F(SeveralTest, TheNextThingIsTakenInBesideWhatIsSelected) {
  LotList list(document, selection);
  list.step(1);
  list.step(1, true);
  list.step(1, true);
  EXPECT_EQ(selection.all().size(), 3u);
  list.step(1);
  EXPECT_EQ(selection.all().size(), 1u);
}

// Nothing is left of a thing that went while it was selected with others.
TEST_F(SeveralTest, WhatIsRemovedLeavesThePage) {
  pick({sample::oak, sample::maple, sample::birch});
  document.commit(edit::without_feature(document.committed(), sample::maple), "Remove");
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_TRUE(says("Tree: 2"));
}

TEST_F(SeveralTest, EdgesOfTheLotTakeOneSetbackInOneEntry) {
  const Plan before = document.plan();
  selection.select_several({{Kind::lot_edge, 0, 0}, {Kind::lot_edge, 0, 2}});
  EXPECT_TRUE(says("Lot edge: 2"));
  ASSERT_NE(field("Setback"), nullptr);
  type(field("Setback"), "25 ft");
  for (std::size_t i = 0; i < before.site.lot.size(); ++i)
    EXPECT_DOUBLE_EQ(document.plan().site.lot[i].setback,
                     i == 0 || i == 2 ? 25 * 0.3048 : before.site.lot[i].setback);
  document.undo();
  EXPECT_EQ(document.plan(), before);
}

TEST_F(SeveralTest, SetbacksSelectedInTheTableTakeWhatIsTypedInOneOfThem) {
  const Plan before = document.plan();
  selection.select({Kind::lot});
  auto* table = panel.findChild<QTableWidget*>();
  ASSERT_NE(table, nullptr);
  for (int row : {1, 2}) table->item(row, 3)->setSelected(true);
  table->item(2, 3)->setText("30 ft");
  for (std::size_t i = 0; i < before.site.lot.size(); ++i)
    EXPECT_DOUBLE_EQ(document.plan().site.lot[i].setback,
                     i == 1 || i == 2 ? 30 * 0.3048 : before.site.lot[i].setback);
  document.undo();
  EXPECT_EQ(document.plan(), before);
}
