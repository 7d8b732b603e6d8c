// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/canvas.h"

#include <QSignalSpy>
#include <QTemporaryDir>

#include "app/canvas/canvas_fixture.h"
#include "window/commands.h"

using namespace underlawn;

namespace {

void expect_near(Point a, Point b, double by = 1e-9) {
  EXPECT_NEAR(a.x, b.x, by);
  EXPECT_NEAR(a.y, b.y, by);
}

}  // namespace

TEST_F(CanvasTest, LotTypedWithLengthsAndBearingsIsExact) {
  canvas.set_tool(ToolId::lot);
  enter("0,0");
  enter("120<0");
  enter("80 N");
  enter("@-120,0");
  ASSERT_TRUE(lot().empty());
  key(Qt::Key_C);
  ASSERT_EQ(lot().size(), 4U);
  EXPECT_EQ(lot()[1], (Point{120 * kFt, 0}));
  expect_near(lot()[2], {120 * kFt, 80 * kFt}, 1e-12);
  expect_near(lot()[3], {0, 80 * kFt}, 1e-12);
  EXPECT_EQ(entries(), 1);
  EXPECT_EQ(canvas.tool(), ToolId::select);
}

TEST_F(CanvasTest, BareLengthGoesWhereThePointerPoints) {
  canvas.set_tool(ToolId::lot);
  click({10, 10});
  move_to({40, 10.2}, Qt::ShiftModifier);
  move_to({40, 10}, {});
  enter("31'-6\"");
  click({30, 40}, Qt::AltModifier);
  key(Qt::Key_Return);
  ASSERT_EQ(lot().size(), 3U);
  expect_near(lot()[1], {10 + 31.5 * kFt, 10});
}

TEST_F(CanvasTest, MovingThePointerLeavesTheTypedNumberAlone) {
  canvas.set_tool(ToolId::utility);
  click({10, 10});
  move_to({40, 10});
  type("20");
  move_to({10, 50});
  key(Qt::Key_Return);
  key(Qt::Key_Return);
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  expect_near(document.committed().site.features[0].points[1], {10, 10 + 20 * kFt});
}

TEST_F(CanvasTest, TypedMetresAreMetresInAMetricPlan) {
  Plan metric = document.committed();
  metric.units = UnitSystem::metric;
  document.commit(metric, "Units");
  canvas.set_tool(ToolId::utility);
  enter("5;5");
  enter("12,5<90");
  key(Qt::Key_Return);
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  EXPECT_EQ(document.committed().site.features[0].points[1], (Point{5, 17.5}));
}

TEST_F(CanvasTest, ShiftLocksTheAngleToFifteenDegrees) {
  canvas.set_tool(ToolId::utility);
  click({10, 10});
  click({40, 12}, Qt::ShiftModifier);
  click({60, 31}, Qt::ShiftModifier);
  key(Qt::Key_Return);
  const auto& line = document.committed().site.features.at(0).points;
  EXPECT_EQ(line[1].y, 10);
  EXPECT_NEAR(line[2].y - line[1].y, line[2].x - line[1].x, 1e-9);
}

TEST_F(CanvasTest, EscapeDropsTheTypedTextFirstAndThenTheGesture) {
  canvas.set_tool(ToolId::lot);
  click({10, 10});
  type("12");
  key(Qt::Key_Escape);
  click({30, 10});
  click({30, 30});
  key(Qt::Key_Escape);
  key(Qt::Key_Return);
  EXPECT_TRUE(lot().empty());
  EXPECT_FALSE(document.can_undo());
  EXPECT_EQ(canvas.tool(), ToolId::lot);
  key(Qt::Key_Escape);
  EXPECT_EQ(canvas.tool(), ToolId::select);
}

TEST_F(CanvasTest, BackspaceTakesBackTheLastPoint) {
  canvas.set_tool(ToolId::utility);
  click({10, 10});
  click({20, 10});
  click({20, 40});
  key(Qt::Key_Backspace);
  click({35, 10});
  key(Qt::Key_Return);
  EXPECT_EQ(document.committed().site.features.at(0).points,
            (std::vector<Point>{{10, 10}, {20, 10}, {35, 10}}));
}

TEST_F(CanvasTest, UndoKeyWhileDrawingTakesBackAPointAndNoEntry) {
  add_lot({{0, 0}, {50, 0}, {50, 50}});
  canvas.set_tool(ToolId::utility);
  click({10, 5});
  click({20, 5});
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(lot().size(), 3U);
  click({30, 5});
  key(Qt::Key_Return);
  EXPECT_EQ(document.committed().site.features.at(0).points, (std::vector<Point>{{10, 5}, {30, 5}}));
}

TEST_F(CanvasTest, SavingLeavesTheOutlineInHandAndUndoingDropsIt) {
  QTemporaryDir folder;
  add_lot({{0, 0}, {50, 0}, {50, 50}});
  canvas.set_tool(ToolId::drive);
  click({10, 10});
  click({30, 10});
  ASSERT_TRUE(document.save_as(folder.filePath("lot.underlawn")));
  click({30, 20});
  key(Qt::Key_Return);
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  EXPECT_EQ(document.committed().site.features[0].points.size(), 3U);
  click({60, 10});
  document.undo();
  key(Qt::Key_Return);
  EXPECT_TRUE(document.committed().site.features.empty());
}

TEST_F(CanvasTest, RChangesTheShapeBeforeTheFirstPointAndTheStatusSaysWhichItIs) {
  canvas.set_tool(ToolId::lot);
  EXPECT_TRUE(canvas.status().contains("a free outline"));
  key(Qt::Key_R);
  EXPECT_TRUE(canvas.status().contains("a rectangle. "));
  enter("0,0");
  enter("120 x 80");
  ASSERT_EQ(lot().size(), 4U);
  expect_near(lot()[2], {120 * kFt, 80 * kFt}, 1e-12);
  canvas.set_tool(ToolId::house);
  EXPECT_TRUE(canvas.status().contains("a rectangle. "));
  key(Qt::Key_R);
  for (Point p : {Point{10, 5}, Point{20, 5}, Point{20, 10}, Point{15, 15}}) click(p);
  key(Qt::Key_Return);
  EXPECT_EQ(document.committed().site.features.at(0).points.size(), 4U);
}

TEST_F(CanvasTest, RingClosesOnItsFirstPoint) {
  canvas.set_tool(ToolId::drive);
  click({10, 10});
  click({30, 10});
  click({30, 20});
  click({10.3, 10.2});
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  EXPECT_EQ(document.committed().site.features[0].points, (std::vector<Point>{{10, 10}, {30, 10}, {30, 20}}));
}

TEST_F(CanvasTest, ATrenchIsDrawnBendByBendWithTypedLengthsAndStays) {
  canvas.set_tool(ToolId::trench);
  click({10, 10});
  click({30, 10});
  canvas.set_tool(ToolId::trench);
  EXPECT_TRUE(document.committed().wishes.locked.empty()) << "another tool drops it";
  click({10, 10});
  click({30, 10});
  enter("10m<90");
  key(Qt::Key_Return);
  ASSERT_EQ(document.committed().wishes.locked.size(), 1U);
  const GivenTrench& t = document.committed().wishes.locked[0];
  EXPECT_EQ(t.head, (Point{10, 10}));
  EXPECT_EQ(t.bends, (std::vector<Point>{{30, 10}}));
  EXPECT_NEAR(distance(t.end, {30, 20}), 0, 1e-6);
  EXPECT_EQ(selection.now(), (Selected{Selected::Kind::locked, 0}));
}

TEST_F(CanvasTest, EscapeLeavesNoTraceOfATrench) {
  canvas.set_tool(ToolId::trench);
  click({10, 10});
  click({30, 10});
  key(Qt::Key_Escape);
  EXPECT_TRUE(document.committed().wishes.locked.empty());
  EXPECT_FALSE(document.can_undo());
}

TEST_F(CanvasTest, ATrenchThatTurnsBackOnItselfIsNotTaken) {
  canvas.set_tool(ToolId::trench);
  click({10, 10});
  click({30, 10});
  click({20, 10.1}, Qt::AltModifier);
  click({30, 25});
  key(Qt::Key_Return);
  ASSERT_EQ(document.committed().wishes.locked.size(), 1U);
  EXPECT_EQ(document.committed().wishes.locked[0].bends.size(), 1U);
}

TEST_F(CanvasTest, GripsOfADrawnTrenchMoveInsertAndRemoveItsPoints) {
  document.commit(edit::with_locked(document.committed(), {{10, 10}, {50, 10}}), "Draw");
  const auto trench = [&] { return document.committed().wishes.locked.at(0); };
  canvas.set_tool(ToolId::select);
  click({20, 10.2});
  EXPECT_EQ(selection.now().kind, Selected::Kind::locked);
  drag({30, 10}, {30, 16}, Qt::AltModifier);  // the circle in the middle
  ASSERT_EQ(trench().bends.size(), 1U);
  EXPECT_NEAR(distance(trench().bends[0], {30, 16}), 0, 0.06);
  drag({50, 10}, {52, 20}, Qt::AltModifier);
  EXPECT_NEAR(distance(trench().end, {52, 20}), 0, 0.06);
  EXPECT_EQ(trench().head, (Point{10, 10}));
  click({30, 16});
  canvas.remove_selected();
  EXPECT_TRUE(trench().bends.empty());
  click({30, 14.7});
  EXPECT_EQ(selection.now().kind, Selected::Kind::locked);
  canvas.select_none();
  click({24, 13});
  drag({24, 13}, {24, 23}, Qt::AltModifier);
  EXPECT_NEAR(distance(trench().head, {10, 20}), 0, 0.12) << "moved whole";
  canvas.remove_selected();
  EXPECT_TRUE(document.committed().wishes.locked.empty());
}

TEST_F(CanvasTest, UnreadableTextStaysAndSaysWhy) {
  canvas.set_tool(ToolId::lot);
  click({10, 10});
  enter("12 furlongs<<");
  click({30, 10});  // the text is still there, so this tries it again
  key(Qt::Key_Escape);
  click({30, 10});
  click({30, 30});
  key(Qt::Key_Return);
  EXPECT_EQ(lot(), (Ring{{10, 10}, {30, 10}, {30, 30}}));
}

TEST_F(CanvasTest, HouseIsASideAndADepth) {
  canvas.set_tool(ToolId::house);
  click({20, 20});
  enter("40<0");
  move_to({35, 40});
  enter("28");
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  const auto& house = document.committed().site.features[0];
  EXPECT_EQ(house.kind, FeatureKind::house);
  expect_near(house.points[2], {20 + 40 * kFt, 20 + 28 * kFt});
  expect_near(house.points[3], {20, 20 + 28 * kFt});
  EXPECT_EQ(selection.now(), (Selected{Selected::Kind::feature, house.id}));
}

TEST_F(CanvasTest, DraggingDrawsARectangleSquareToTheDrawing) {
  canvas.set_tool(ToolId::septic_tank);
  drag({20, 20}, {23, 22}, Qt::AltModifier);
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  EXPECT_EQ(document.committed().site.features[0].points,
            (std::vector<Point>{{20, 20}, {23, 20}, {23, 22}, {20, 22}}));
  EXPECT_EQ(entries(), 1);
}

TEST_F(CanvasTest, RChangesFromRectangleToFreeOutline) {
  canvas.set_tool(ToolId::house);
  click({20, 20});
  key(Qt::Key_R);
  click({40, 20});
  click({40, 30});
  click({30, 35}, Qt::AltModifier);
  key(Qt::Key_Return);
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  EXPECT_EQ(document.committed().site.features[0].points.size(), 4U);
}

TEST_F(CanvasTest, DragMovesAFeatureAsOneEntryAndIsSolvedOnTheWay) {
  const int tree = add(FeatureKind::tree, {{20, 20}});
  const int before = entries();
  hold({20, 20}, {33, 27}, Qt::AltModifier);
  expect_near(find_feature(document.plan().site, tree)->points[0], {33, 27});
  expect_near(points(tree)[0], {20, 20});
  let_go({33, 27}, Qt::AltModifier);
  expect_near(points(tree)[0], {33, 27});
  EXPECT_EQ(entries(), before + 1);
  EXPECT_EQ(document.undo_name(), "Move Tree 1");
  document.undo();
  expect_near(points(tree)[0], {20, 20});
}

TEST_F(CanvasTest, EscapeDuringADragRestoresEverything) {
  const int tree = add(FeatureKind::tree, {{20, 20}});
  const Plan before = document.committed();
  const int count = entries();
  hold({20, 20}, {33, 27});
  ASSERT_FALSE(document.plan() == before);
  key(Qt::Key_Escape);
  EXPECT_EQ(document.plan(), before);
  move_to({50, 50}, {}, Qt::LeftButton);
  let_go({50, 50});
  EXPECT_EQ(document.plan(), before);
  EXPECT_EQ(entries(), count);
  expect_near(points(tree)[0], {20, 20});
}

TEST_F(CanvasTest, TypingDuringADragPlacesExactly) {
  const int tree = add(FeatureKind::tree, {{20, 20}});
  hold({20, 20}, {33, 20});
  enter("10<90");
  let_go({33, 20});
  expect_near(points(tree)[0], {20, 20 + 10 * kFt});
  EXPECT_EQ(entries(), 2);
}

TEST_F(CanvasTest, TypedOffsetMovesWhatIsSelected) {
  const int tree = add(FeatureKind::tree, {{20, 20}});
  click({20, 20});
  enter("@10,-5");
  expect_near(points(tree)[0], {20 + 10 * kFt, 20 - 5 * kFt});
}

TEST_F(CanvasTest, CornerOfTheLotIsDraggedOntoAnEnd) {
  add_lot({{10, 10}, {50, 10}, {50, 50}, {10, 50}});
  add(FeatureKind::tree, {{60, 52}});
  click({30, 10});
  drag({50, 50}, {60.4, 52.5});
  EXPECT_EQ(lot()[2], (Point{60, 52}));
  EXPECT_EQ(document.undo_name(), "Move a lot corner");
}

TEST_F(CanvasTest, DraggingTheMiddleOfAnEdgeAddsACorner) {
  add_lot({{10, 10}, {50, 10}, {50, 50}, {10, 50}});
  click({20, 10});
  drag({30, 10}, {33, 5}, Qt::AltModifier);
  ASSERT_EQ(lot().size(), 5U);
  expect_near(lot()[1], {33, 5});
  key(Qt::Key_Delete);
  EXPECT_EQ(lot().size(), 4U);
  document.undo();
  document.undo();
  EXPECT_EQ(lot().size(), 4U);
}

TEST_F(CanvasTest, DeleteRemovesWhatIsSelectedAsOneEntry) {
  add(FeatureKind::tree, {{20, 20}});
  add(FeatureKind::tree, {{30, 20}});
  click({20, 20});
  click({30, 20}, Qt::ShiftModifier);
  ASSERT_EQ(canvas.picked().size(), 2U);
  key(Qt::Key_Delete);
  EXPECT_TRUE(document.committed().site.features.empty());
  EXPECT_EQ(entries(), 3);
}

TEST_F(CanvasTest, LastThreeCornersOfTheLotStay) {
  add_lot({{10, 10}, {50, 10}, {50, 50}});
  click({30, 10});
  click({50, 10});
  QSignalSpy said(&canvas, &Canvas::status_text);
  key(Qt::Key_Delete);
  EXPECT_EQ(lot().size(), 3U);
  EXPECT_TRUE(canvas.status().contains("least number"));
}

TEST_F(CanvasTest, BoxSelectsWhatLiesWhollyInside) {
  add(FeatureKind::tree, {{20, 20}});
  add(FeatureKind::tree, {{30, 20}});
  add(FeatureKind::utility, {{15, 15}, {60, 15}});
  drag({10, 10}, {40, 40});
  EXPECT_EQ(canvas.picked().size(), 2U);
}

TEST_F(CanvasTest, ClickingAgainSelectsWhatLiesUnder) {
  const int easement = add(FeatureKind::easement, {{10, 10}, {60, 10}, {60, 40}, {10, 40}});
  const int tank = add(FeatureKind::septic_tank, {{20, 20}, {24, 20}, {24, 23}, {20, 23}});
  click({22, 21});
  EXPECT_EQ(selection.now().id, tank);
  click({22, 21});
  EXPECT_EQ(selection.now().id, easement);
  click({22, 21});
  EXPECT_EQ(selection.now().id, tank);
}

TEST_F(CanvasTest, ArrowKeysMoveWhatIsSelectedByOneEntryAStroke) {
  const int tree = add(FeatureKind::tree, {{20, 20}});
  click({20, 20});
  key(Qt::Key_Right);
  key(Qt::Key_Up, Qt::ShiftModifier);
  expect_near(points(tree)[0], {20 + kFt, 20 + 10 * kFt});
  EXPECT_EQ(entries(), 3);
}

TEST_F(CanvasTest, TabWalksThroughEverythingAndThenLeaves) {
  add_lot({{10, 10}, {50, 10}, {50, 50}});
  const int tree = add(FeatureKind::tree, {{20, 20}});
  key(Qt::Key_Tab);
  EXPECT_EQ(selection.now().kind, Selected::Kind::lot);
  key(Qt::Key_Tab);
  EXPECT_EQ(selection.now().id, tree);
  EXPECT_FALSE(canvas.select_next(1));
  key(Qt::Key_Backtab);
  EXPECT_EQ(selection.now().kind, Selected::Kind::lot);
}

TEST_F(CanvasTest, KeyboardAloneDrawsALine) {
  canvas.set_tool(ToolId::utility);
  key(Qt::Key_Right);
  key(Qt::Key_Return);
  for (int i = 0; i < 5; ++i) key(Qt::Key_Up);
  key(Qt::Key_Return);
  key(Qt::Key_Return);
  ASSERT_EQ(document.committed().site.features.size(), 1U);
  const auto& line = document.committed().site.features[0].points;
  ASSERT_EQ(line.size(), 2U);
  EXPECT_EQ(line[0].x, line[1].x);
  const double moved = (line[1].y - line[0].y) / kFt;
  EXPECT_NEAR(moved, std::round(moved), 1e-9);
  EXPECT_GT(moved, 4);
}

TEST_F(CanvasTest, TypedPointsFarOffAreBroughtIntoView) {
  canvas.set_tool(ToolId::utility);
  enter("0,0");
  enter("2000<0");
  const QRectF seen(canvas.rect());
  EXPECT_TRUE(seen.contains(canvas.view().to_device(Point{0, 0})));
  EXPECT_TRUE(seen.contains(canvas.view().to_device(Point{2000 * kFt, 0})));
}

TEST_F(CanvasTest, ArrowKeysLeadUprightFromAPointOffTheGrid) {
  canvas.set_tool(ToolId::utility);
  enter("10'-3 1/8\",20");
  key(Qt::Key_Up);
  key(Qt::Key_Return);
  key(Qt::Key_Return);
  const auto& line = document.committed().site.features.at(0).points;
  EXPECT_EQ(line[0].x, line[1].x);
}

TEST_F(CanvasTest, EntryPointGoesOntoTheHouseWallAndSlidesAlongIt) {
  add(FeatureKind::house, {{20, 20}, {32, 20}, {32, 28}, {20, 28}});
  canvas.set_tool(ToolId::entry);
  click({24, 20.5});
  ASSERT_TRUE(document.committed().site.entry.has_value());
  expect_near(document.committed().site.entry->at, {24, 20});
  drag({24, 20}, {29, 17}, Qt::AltModifier);
  expect_near(document.committed().site.entry->at, {29, 20});
}

TEST_F(CanvasTest, WheelZoomsAboutThePointer) {
  const QPointF at(600, 150);
  const Point under = canvas.view().to_lot(at);
  const double scale = canvas.view().scale;
  QWheelEvent wheel(at, canvas.mapToGlobal(at), {}, {0, 120}, Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase,
                    false);
  QApplication::sendEvent(&canvas, &wheel);
  EXPECT_GT(canvas.view().scale, scale);
  expect_near(canvas.view().to_lot(at), under, 1e-9);
}

TEST_F(CanvasTest, MiddleButtonMovesTheView) {
  const Point under = canvas.view().to_lot({300, 300});
  QTest::mousePress(&canvas, Qt::MiddleButton, {}, {300, 300});
  QMouseEvent move(QEvent::MouseMove, QPointF(350, 280), QPointF(350, 280), Qt::NoButton, Qt::MiddleButton,
                   {});
  QApplication::sendEvent(&canvas, &move);
  QTest::mouseRelease(&canvas, Qt::MiddleButton, {}, {350, 280});
  expect_near(canvas.view().to_lot({350, 280}), under);
}

TEST_F(CanvasTest, UndoDuringADragDropsTheDrag) {
  const int tree = add(FeatureKind::tree, {{20, 20}});
  add(FeatureKind::well, {{50, 50}});
  hold({20, 20}, {33, 27});
  document.undo();
  let_go({33, 27});
  EXPECT_EQ(document.committed().site.features.size(), 1U);
  expect_near(points(tree)[0], {20, 20});
}

TEST_F(CanvasTest, SelectionIsSharedBothWays) {
  const int tree = add(FeatureKind::tree, {{20, 20}});
  selection.select({Selected::Kind::feature, tree});
  ASSERT_EQ(canvas.picked().size(), 1U);
  click({70, 55});
  EXPECT_EQ(selection.now(), Selected{});
  document.undo();
  EXPECT_TRUE(canvas.picked().empty());
}

TEST_F(CanvasTest, DigitsStayKeysOfTheWindowWhileNothingIsDrawn) {
  QKeyEvent digit(QEvent::ShortcutOverride, Qt::Key_1, {}, "1");
  digit.ignore();
  QApplication::sendEvent(&canvas, &digit);
  EXPECT_FALSE(digit.isAccepted());
  canvas.set_tool(ToolId::utility);
  click({10, 10});
  QKeyEvent letter(QEvent::ShortcutOverride, Qt::Key_N, {}, "n");
  letter.ignore();
  QApplication::sendEvent(&canvas, &letter);
  EXPECT_TRUE(letter.isAccepted());
}

TEST_F(CanvasTest, KeysWithAltStayCommandsWhileTextIsTyped) {
  canvas.set_tool(ToolId::lot);
  click({10, 10});
  type("12");
  QKeyEvent record(QEvent::ShortcutOverride, Qt::Key_R, Qt::AltModifier, "r");
  record.ignore();
  QApplication::sendEvent(&canvas, &record);
  EXPECT_FALSE(record.isAccepted());
}

TEST_F(CanvasTest, AllOfAKindAreSelectedAndSeveralStaySelected) {
  const int oak = add(FeatureKind::tree, {{10, 10}}), elm = add(FeatureKind::tree, {{20, 10}});
  const int well = add(FeatureKind::well, {{30, 10}});
  selection.select({Selected::Kind::feature, oak});
  canvas.select_kind();
  EXPECT_EQ(selection.all(),
            (std::vector<Selected>{{Selected::Kind::feature, oak}, {Selected::Kind::feature, elm}}));
  document.commit(edit::without_feature(document.committed(), elm), "Remove");
  EXPECT_EQ(selection.all(), (std::vector<Selected>{{Selected::Kind::feature, oak}}));
  click({30, 10}, Qt::ShiftModifier);
  EXPECT_EQ(selection.all(),
            (std::vector<Selected>{{Selected::Kind::feature, oak}, {Selected::Kind::feature, well}}));
}

TEST_F(CanvasTest, ShiftAndAClickTakeEdgesOfTheLotInAndOutOneByOne) {
  add_lot({{0, 0}, {60, 0}, {60, 50}, {0, 50}});
  const auto edge = [](int i) { return Selected{Selected::Kind::lot_edge, 0, i}; };
  click({30, 0});
  click({60, 25}, Qt::ShiftModifier);
  click({30, 50}, Qt::ShiftModifier);
  EXPECT_EQ(selection.all(), (std::vector<Selected>{edge(0), edge(1), edge(2)}));
  click({60, 25}, Qt::ShiftModifier);
  EXPECT_EQ(selection.all(), (std::vector<Selected>{edge(0), edge(2)}));
  canvas.select_kind();
  EXPECT_EQ(selection.all(), (std::vector<Selected>{edge(0), edge(1), edge(2), edge(3)}));
}

// Whichever tool is in hand, the letter of every other tool takes that one.
TEST_F(CanvasTest, NoToolThatIsAtRestKeepsTheLetterOfAnother) {
  for (ToolId id : all_tools())
    for (const Command& c : commands()) {
      if (!std::string_view(c.id).starts_with("tool.")) continue;
      const QKeySequence keys(QString::fromUtf8(c.shortcut));
      if (keys.isEmpty()) continue;
      canvas.set_tool(id);
      QKeyEvent asked(QEvent::ShortcutOverride, keys[0].key(), keys[0].keyboardModifiers(),
                      QString(QChar(static_cast<int>(keys[0].key()))));
      asked.ignore();
      QApplication::sendEvent(&canvas, &asked);
      EXPECT_FALSE(asked.isAccepted()) << tool_name(id) << " keeps " << c.shortcut << " of " << c.id;
    }
}

TEST_F(CanvasTest, EveryToolSaysWhatToDo) {
  for (ToolId id : all_tools()) {
    canvas.set_tool(id);
    EXPECT_FALSE(canvas.status().isEmpty()) << tool_name(id);
    EXPECT_EQ(tool_named(tool_name(id)), id);
  }
}
