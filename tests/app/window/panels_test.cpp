// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of the panels: what is typed is one entry of the history, what cannot be is said beside the field.
#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QTableWidget>
#include <QToolButton>

#include "app/support/fields.h"
#include "app/support/wait.h"
#include "plan/usual_terms.h"
#include "site/clearances.h"
#include "support/sample_plans.h"
#include "window/ground_panel.h"
#include "window/loop_panel.h"
#include "window/lot_list.h"
#include "window/points_table.h"
#include "window/selected_panel.h"

using namespace underlawn;

namespace {

struct PanelsTest : testing::Test {
  Document document;
  Selection selection;

  void SetUp() override { document.commit(sample::half_acre(), "Drawn"); }
  int entries() {
    int n = 0;
    while (document.can_undo()) document.undo(), ++n;
    for (int i = 0; i < n; ++i) document.redo();
    return n;
  }
};

}  // namespace

TEST_F(PanelsTest, TypedDepthIsOneEntryAndUndoShowsTheOldOneAgain) {
  LoopPanel panel(document);
  const QString before = called<QLineEdit>(panel, "Depth")->text();
  const int entries_before = entries();
  type(called<QLineEdit>(panel, "Depth"), "5'-6\"");
  EXPECT_NEAR(document.plan().wishes.trench_depth, 5.5 * 0.3048, 1e-12);
  EXPECT_EQ(entries(), entries_before + 1);
  EXPECT_EQ(document.undo_name(), "Trench depth");
  document.undo();
  EXPECT_EQ(called<QLineEdit>(panel, "Depth")->text(), before);
}

TEST_F(PanelsTest, DepthThatCannotBeIsSaidAndNotCommitted) {
  LoopPanel panel(document);
  const Plan before = document.plan();
  QLineEdit* depth = called<QLineEdit>(panel, "Depth");
  type(depth, "-3");
  EXPECT_EQ(document.plan(), before);
  EXPECT_EQ(depth->text(), "-3");
  EXPECT_FALSE(depth->accessibleDescription().isEmpty());
}

TEST_F(PanelsTest, LettingAnotherFollowKeepsTheLoopAsItIs) {
  LoopPanel panel(document);
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  const Coil before = document.outcome()->coil;
  called<QToolButton>(panel, "Coil length follows from the other two")->click();
  EXPECT_EQ(document.plan().wishes.unknown, CoilUnknown::coil_length);
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  EXPECT_NEAR(document.outcome()->coil.coil_length, before.coil_length, 1e-6);
  EXPECT_NEAR(document.outcome()->coil.pitch, before.pitch, 1e-9);
}

TEST_F(PanelsTest, FollowingNumberIsShownAndCannotBeTyped) {
  LoopPanel panel(document);
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  QLineEdit* pitch = called<QLineEdit>(panel, "Pitch");
  EXPECT_TRUE(pitch->isReadOnly());
  EXPECT_EQ(pitch->text().toStdString(),
            print_quantity(Quantity::length, document.outcome()->coil.pitch, document.plan().units));
}

TEST_F(PanelsTest, KindOfEarthSetsItsThreeNumbers) {
  GroundPanel panel(document);
  QComboBox* box = called<QComboBox>(panel, "Kind of earth");
  ASSERT_NE(box, nullptr);
  emit box->activated(5);
  const EarthPreset& clay = earth_presets()[5];
  EXPECT_EQ(document.plan().ground.swell, clay.swell);
  EXPECT_EQ(document.plan().ground.shrinkage, clay.shrinkage);
  EXPECT_EQ(document.plan().ground.repose, clay.repose);
  type(called<QLineEdit>(panel, "Swell"), "33 %");
  EXPECT_NEAR(document.plan().ground.swell, 0.33, 1e-12);
  EXPECT_EQ(box->currentIndex(), -1) << "numbers of one's own are no preset";
}

TEST_F(PanelsTest, TitleIsTypedInPlace) {
  TitlePanel panel(document);
  type(called<QLineEdit>(panel, "Project"), "Lot 7");
  EXPECT_EQ(document.plan().title.project, "Lot 7");
  EXPECT_EQ(document.display_name(), "Lot 7");
}

TEST_F(PanelsTest, UsualTermsFillWhatIsEmptyAndTypedOnesAreToldToStayAsTyped) {
  TitlePanel panel(document);
  type(called<QLineEdit>(panel, "Payment"), "By the week");
  QPushButton* usual = nullptr;
  for (QPushButton* button : panel.findChildren<QPushButton*>())
    if (button->text() == "Usual words") usual = button;
  ASSERT_NE(usual, nullptr);
  usual->click();
  EXPECT_EQ(document.plan().proposal.guarantee, kUsualGuarantee);
  EXPECT_EQ(document.plan().proposal.validity, kUsualValidity);
  EXPECT_EQ(document.plan().proposal.payment, "By the week");
  EXPECT_EQ(document.undo_name(), "Usual words of the proposal");
  panel.refresh();
  bool told = false;
  for (const QLabel* label : panel.findChildren<QLabel*>())
    told |= label->text().contains("Printed as typed: Payment.");
  EXPECT_TRUE(told);
}

TEST_F(PanelsTest, SelectedTreeShowsItsTrunkAndTakesAnother) {
  SelectedPanel panel(document, selection);
  selection.select({Selected::Kind::feature, sample::oak, -1});
  type(called<QLineEdit>(panel, "Trunk diameter"), "20 in");
  EXPECT_NEAR(find_feature(document.plan().site, sample::oak)->trunk_diameter, 20 * 0.0254, 1e-12);
}

TEST_F(PanelsTest, TypedClearanceIsItsOwnAndThePublishedOnesAreChoices) {
  SelectedPanel panel(document, selection);
  selection.select({Selected::Kind::feature, sample::drain_field, -1});
  type(called<QLineEdit>(panel, "Coil trench"), "31 ft");
  const Feature* field = find_feature(document.plan().site, sample::drain_field);
  ASSERT_TRUE(field->trench_clearance.has_value());
  EXPECT_NEAR(*field->trench_clearance, 31 * 0.3048, 1e-12);

  auto* choose = called<QToolButton>(panel, "Published values for: Coil trench");
  ASSERT_NE(choose, nullptr);
  emit choose->menu()->aboutToShow();
  const auto choices = choose->menu()->actions();
  ASSERT_GE(choices.size(), 1 + static_cast<int>(clearance_default(FeatureKind::drain_field).others.size()));
  choices[0]->trigger();
  EXPECT_FALSE(find_feature(document.plan().site, sample::drain_field)->trench_clearance.has_value());
}

TEST_F(PanelsTest, PanelOfADeletedThingShowsNothingOfIt) {
  SelectedPanel panel(document, selection);
  selection.select({Selected::Kind::feature, sample::oak, -1});
  ASSERT_NE(called<QLineEdit>(panel, "Trunk diameter"), nullptr);
  Plan plan = document.plan();
  std::erase_if(plan.site.features, [](const Feature& f) { return f.id == sample::oak; });
  document.commit(plan, "Delete");
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_EQ(called<QLineEdit>(panel, "Trunk diameter"), nullptr);
}

TEST_F(PanelsTest, CornerTypedInTheTableMovesTheLotLine) {
  PointsTable points(document, {true, 0});
  points.refresh();
  points.table()->item(1, 0)->setText("151 ft");
  EXPECT_NEAR(document.plan().site.lot[1].at.x, 151 * 0.3048, 1e-9);
  const Plan before = document.plan();
  points.table()->item(1, 0)->setText("far");
  EXPECT_EQ(document.plan(), before);
}

TEST_F(PanelsTest, LotListHoldsEverythingAndFindsByName) {
  const auto entries_now = lot_entries(document.plan(), nullptr);
  EXPECT_EQ(entries_now.size(),
            document.plan().site.features.size() + 2);  // and the lot line and the entry point
  LotList list(document, selection);
  list.step(1);
  EXPECT_EQ(selection.now(), entries_now.front().what);
  list.step(-1);
  EXPECT_NE(selection.now(), entries_now.front().what);
}
