// SPDX-License-Identifier: GPL-3.0-or-later
// Moving, copying, turning, parallels, cutting, dimensions and what is held or hidden, by mouse and keys.
#include <gtest/gtest.h>

#include <QClipboard>
#include <QGuiApplication>

#include "app/canvas/canvas_fixture.h"
#include "canvas/clipboard.h"
#include "plan/dimensions.h"
#include "plane/region.h"
#include "tools/clearance_tool.h"

using namespace underlawn;

namespace {

using Kind = Selected::Kind;

constexpr double kFtHere = 0.3048;
const Ring kShed = {{20, 20}, {30, 20}, {30, 26}, {20, 26}};

class EditTools : public CanvasTest {
 protected:
  int shed = 0;
  void add_shed() {
    shed = add(FeatureKind::no_dig, kShed);
    before = entries();  // goes back through them all, which drops what is selected
    select(shed);
  }
  void select(int id) { selection.select({Kind::feature, id}); }
  std::size_t features() const { return document.committed().site.features.size(); }
  int before = 0;
};

void expect_at(Point a, Point b, double by = 1e-9) {
  EXPECT_NEAR(a.x, b.x, by);
  EXPECT_NEAR(a.y, b.y, by);
}

}  // namespace

TEST_F(EditTools, MoveFromPointToTypedPointIsExactAndOneEntry) {
  add_shed();
  canvas.set_tool(ToolId::move);
  click({20, 20});
  move_to({40, 20});
  enter("12'-6\" + 1 m");
  expect_at(points(shed)[0], {20 + 12.5 * kFtHere + 1, 20});
  EXPECT_EQ(entries(), before + 1);
  EXPECT_EQ(canvas.tool(), ToolId::select);
}

TEST_F(EditTools, EscWhileMovingLeavesNoTrace) {
  add_shed();
  canvas.set_tool(ToolId::move);
  click({20, 20});
  move_to({50, 50});
  EXPECT_TRUE(document.previewing());
  key(Qt::Key_Escape);
  EXPECT_FALSE(document.previewing());
  EXPECT_EQ(points(shed), kShed);
  EXPECT_EQ(entries(), before);
}

TEST_F(EditTools, CopyGoesOnAndEachIsOneEntry) {
  add_shed();
  canvas.set_tool(ToolId::copy);
  key(Qt::Key_Return);  // its lower left corner
  enter("@10,0");
  enter("@20,0");
  key(Qt::Key_Escape);
  key(Qt::Key_Escape);
  ASSERT_EQ(features(), 3U);
  EXPECT_EQ(entries(), before + 2);
  expect_at(document.committed().site.features[1].points[0], {20 + 10 * kFtHere, 20});
  expect_at(document.committed().site.features[2].points[0], {20 + 20 * kFtHere, 20});
}

TEST_F(EditTools, SeveralAreCopiedAndPastedAtAPlace) {
  add_shed();
  add(FeatureKind::tree, {{40, 40}});
  canvas.select_all();
  ASSERT_TRUE(canvas.copy_selected());
  canvas.set_tool(ToolId::paste);
  enter("#100,0");
  ASSERT_EQ(features(), 4U);
  EXPECT_EQ(canvas.picked().size(), 2U);
  expect_at(document.committed().site.features[2].points[0], {100 * kFtHere, 0});
}

TEST_F(EditTools, ClipboardHoldsOnlyWhatIsOurs) {
  QGuiApplication::clipboard()->setText("{\"format_version\": 3}");
  EXPECT_FALSE(things_on_clipboard().has_value());
  canvas.set_tool(ToolId::paste);
  click({10, 10});
  EXPECT_EQ(features(), 0U);
}

TEST_F(EditTools, TurnByATypedAngleIsExact) {
  add_shed();
  canvas.set_tool(ToolId::turn);
  click({20, 20});
  enter("90");
  expect_at(points(shed)[1], {20, 30});
  expect_at(points(shed)[2], {14, 30});
  EXPECT_EQ(entries(), before + 1);
  document.undo();
  EXPECT_EQ(points(shed), kShed);
}

TEST_F(EditTools, TurnFromOneDirectionToAnother) {
  add_shed();
  canvas.set_tool(ToolId::turn);
  click({20, 20});
  click({30, 20});
  click({20, 50}, Qt::AltModifier);
  expect_at(points(shed)[1], {20, 30});
}

TEST_F(EditTools, AWrongAngleIsSaidAndNothingLost) {
  add_shed();
  canvas.set_tool(ToolId::turn);
  click({20, 20});
  enter("3x");
  EXPECT_EQ(points(shed), kShed);
  key(Qt::Key_Escape);
  EXPECT_FALSE(document.previewing());
  enter("180");
  expect_at(points(shed)[1], {10, 20});
}

TEST_F(EditTools, ParallelOfALotEdgeIsAnEasementOfTheTypedWidth) {
  add_lot({{5, 5}, {75, 5}, {75, 55}, {5, 55}});
  canvas.set_tool(ToolId::parallel);
  click({40, 5});
  move_to({40, 12});
  enter("10'");
  ASSERT_EQ(features(), 1U);
  const Feature& f = document.committed().site.features[0];
  EXPECT_EQ(f.kind, FeatureKind::easement);
  EXPECT_NEAR(area(f.points), 70 * 10 * kFtHere, 1e-9);
}

TEST_F(EditTools, ParallelOfALineTakesThePointersSide) {
  const int gas = add(FeatureKind::utility, {{10, 10}, {60, 10}});
  canvas.set_tool(ToolId::parallel);
  click({30, 10});
  move_to({30, 5});
  enter("2 m");
  ASSERT_EQ(features(), 2U);
  expect_at(points(gas + 1)[0], {10, 8});
}

TEST_F(EditTools, OutlineInsideAnArea) {
  add_shed();
  canvas.set_tool(ToolId::parallel);
  click({25, 20}, Qt::AltModifier);
  move_to({25, 22}, Qt::AltModifier);
  enter("1 m");
  ASSERT_EQ(features(), 2U);
  EXPECT_NEAR(area(document.committed().site.features[1].points), 8 * 4, 1e-6);
}

TEST_F(EditTools, SplitAndJoinALine) {
  const int gas = add(FeatureKind::utility, {{10, 10}, {60, 10}});
  canvas.set_tool(ToolId::split);
  click({40, 10}, Qt::AltModifier);
  ASSERT_EQ(features(), 2U);
  expect_at(points(gas).back(), {40, 10}, 0.06);
  canvas.set_tool(ToolId::select);
  canvas.select_all();
  canvas.join_selected();
  ASSERT_EQ(features(), 1U);
  EXPECT_NEAR(length(points(gas)), 50, 1e-9);
}

TEST_F(EditTools, SplitAnArea) {
  add_shed();
  canvas.set_tool(ToolId::split);
  click({25, 15}, Qt::AltModifier);
  click({25, 40}, Qt::AltModifier);
  ASSERT_EQ(features(), 2U);
  EXPECT_NEAR(area(points(shed)), 30, 0.5);
}

TEST_F(EditTools, DimensionStaysAndFollows) {
  add_shed();
  canvas.set_tool(ToolId::dimension);
  click({20, 20});
  click({30, 20});
  move_to({25, 15});
  enter("2 m");
  ASSERT_EQ(document.committed().dimensions.size(), 1U);
  const Dimension d = document.committed().dimensions[0];
  EXPECT_NEAR(measured(d), 10, 1e-9);
  EXPECT_NEAR(line_of(d)->a.y, 18, 1e-9);
  EXPECT_EQ(selection.now().kind, Kind::dimension);
  document.commit(edit::moved_feature(document.committed(), shed, {5, 5}), "Move");
  expect_at(document.committed().dimensions[0].from, {25, 25});
  document.undo();
  selection.select({Kind::dimension, 0});
  canvas.set_tool(ToolId::select);
  key(Qt::Key_Delete);
  EXPECT_TRUE(document.committed().dimensions.empty());
}

TEST_F(EditTools, ATypedDirectionIsHeldUntilThePointIsPlaced) {
  canvas.set_tool(ToolId::utility);
  click({10, 10}, Qt::AltModifier);
  move_to({40, 12}, Qt::AltModifier);
  enter("<30");
  move_to({50, 20}, Qt::AltModifier);
  enter("20 m");
  key(Qt::Key_Return);
  ASSERT_EQ(features(), 1U);
  expect_at(document.committed().site.features[0].points[1],
            {10 + 20 * std::cos(M_PI / 6), 10 + 20 * std::sin(M_PI / 6)});
}

TEST_F(EditTools, EscLetsAHeldDirectionGoBeforeTheLine) {
  canvas.set_tool(ToolId::utility);
  click({10, 10}, Qt::AltModifier);
  enter("N45E");
  key(Qt::Key_Escape);
  click({40, 10}, Qt::AltModifier);
  key(Qt::Key_Return);
  ASSERT_EQ(features(), 1U);
  expect_at(document.committed().site.features[0].points[1], {40, 10}, 0.06);
}

TEST_F(EditTools, WhatLiesUnderIsPickedOneAfterTheOther) {
  add_shed();
  const int tree = add(FeatureKind::tree, {{25, 23}});
  canvas.select_none();
  move_to({25, 23});
  canvas.pick_under();
  EXPECT_EQ(selection.now(), (Selected{Kind::feature, tree}));
  canvas.pick_under();
  EXPECT_EQ(selection.now(), (Selected{Kind::feature, shed}));
  canvas.pick_under();
  EXPECT_EQ(selection.now(), (Selected{Kind::feature, tree}));
}

TEST_F(EditTools, WhatIsHiddenIsNeitherPickedNorCaughtAndStaysInThePlan) {
  add_shed();
  canvas.hide_kind_of_selected();
  EXPECT_EQ(selection.now(), Selected{});
  click({25, 23});
  EXPECT_EQ(selection.now(), Selected{});
  canvas.select_all();
  EXPECT_TRUE(canvas.picked().empty());
  EXPECT_EQ(features(), 1U);
  canvas.set_layers({});
  click({25, 23});
  EXPECT_EQ(selection.now(), (Selected{Kind::feature, shed}));
}

TEST_F(EditTools, ZoomToATypedScaleAndToWhatIsSelected) {
  add_shed();
  canvas.set_paper_scale(240);
  EXPECT_NEAR(canvas.paper_scale(), 240, 1e-9);
  EXPECT_NEAR(canvas.view().scale * 240, canvas.logicalDpiX() / 0.0254, 1e-9);
  canvas.zoom_to_selected();
  const QPointF middle = canvas.view().to_device({25, 23});
  EXPECT_NEAR(middle.x(), 400, 1);
  EXPECT_NEAR(middle.y(), 300, 1);
}

TEST_F(EditTools, EscDropsWhatIsPastedAndSelectsAgain) {
  add_shed();
  ASSERT_TRUE(canvas.copy_selected());
  canvas.set_tool(ToolId::paste);
  move_to({50, 50});
  EXPECT_TRUE(document.previewing());
  key(Qt::Key_Escape);
  EXPECT_FALSE(document.previewing());
  EXPECT_EQ(canvas.tool(), ToolId::select);
  EXPECT_EQ(features(), 1u);
}

// The shed's right wall is at x = 30, the tree 12 m from it.
TEST_F(EditTools, ClearanceIsMeasuredBetweenTypedPlacesAndPlacesLedTo) {
  Plan plan = document.committed();
  plan.units = UnitSystem::metric;
  document.commit(plan, "Units");
  add_shed();
  add(FeatureKind::tree, {{42, 23}});
  canvas.set_tool(ToolId::clearance);
  enter("30,23");
  enter("42,23");
  EXPECT_TRUE(canvas.status().contains("12.000 m")) << canvas.status().toStdString();
  key(Qt::Key_Escape);
  enter("25,23");  // inside the shed: nothing is caught but the shed
  for (int i = 0; i < 30 && !canvas.status().contains("12.000 m"); ++i) key(Qt::Key_Right);
  key(Qt::Key_Return);
  EXPECT_TRUE(canvas.status().contains("12.000 m")) << canvas.status().toStdString();
}

TEST_F(EditTools, DistanceIsMeasuredBetweenPlacesLedToByArrowKeys) {
  Plan plan = document.committed();
  plan.units = UnitSystem::metric;
  document.commit(plan, "Units");
  canvas.set_tool(ToolId::measure);
  enter("10,10");
  key(Qt::Key_Right, Qt::ShiftModifier);  // at 10 pixels a metre an arrow is a metre, with Shift ten
  key(Qt::Key_Return);
  key(Qt::Key_Up, Qt::ShiftModifier);
  key(Qt::Key_Return);
  EXPECT_TRUE(canvas.status().contains("Distance 20.000 m")) << canvas.status().toStdString();
}

TEST(Clearance, IsTheShortestDistanceWhereverItLies) {
  const Nearest n = nearest_places(kShed, true, {{40, 0}, {40, 60}}, false);
  EXPECT_NEAR(n.apart, 10, 1e-12);
  EXPECT_EQ(nearest_places(kShed, true, {{0, 23}, {60, 23}}, false).apart, 0);
  EXPECT_EQ(nearest_places(kShed, true, {{25, 23}}, false).apart, 0);
  EXPECT_NEAR(nearest_places({{0, 0}}, false, {{3, 4}}, false).apart, 5, 1e-12);
}

TEST_F(EditTools, ARectangleByACornerAndItsSize) {
  canvas.set_tool(ToolId::septic_tank);
  enter("10,10");
  enter("9' x 5'-6\"");
  enter("30,10");
  enter("-4 m x 2 m");
  ASSERT_EQ(features(), 2U);
  EXPECT_NEAR(area(document.committed().site.features[0].points), 9 * 5.5 * kFtHere * kFtHere, 1e-9);
  expect_at(document.committed().site.features[1].points[2], {30 * kFtHere - 4, 10 * kFtHere + 2});
  enter("0,0");
  enter("0 x 5");
  EXPECT_EQ(features(), 2U) << "no area, said";
}

TEST_F(EditTools, CtrlEnterPlacesTheLastPointAndKChoosesWhatItCarries) {
  canvas.set_tool(ToolId::utility);
  key(Qt::Key_K);
  enter("10,10");
  key(Qt::Key_K);
  type("#10,40");
  key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(features(), 1U);
  EXPECT_EQ(document.committed().site.features[0].utility, UtilityKind::communication);
  EXPECT_EQ(points(1).size(), 2U);
}
