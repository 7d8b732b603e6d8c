// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/why_tool.h"

#include <QRegularExpression>

#include "app/canvas/canvas_fixture.h"
#include "app/support/wait.h"

namespace underlawn {

namespace {

class WhyToolTest : public CanvasTest {
 protected:
  WhyToolTest() {
    add_lot({{0, 0}, {80, 0}, {80, 60}, {0, 60}});
    add(FeatureKind::drain_field, {{50, 40}, {65, 40}, {65, 50}, {50, 50}});
    wait();
    canvas.set_tool(ToolId::why);
  }
  void wait() {
    ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  }
  // Until the prices are there, which are worked out beside the window.
  QString answer_at(Point p) {
    click(p);
    EXPECT_TRUE(wait_until([&] { return !canvas.status().contains("Working out"); }));
    return canvas.status();
  }
};

}  // namespace

TEST_F(WhyToolTest, SaysWhatKeepsATrenchOut) {
  move_to({57, 45});
  const QString said = answer_at({57, 45});
  EXPECT_TRUE(said.contains("clearance of Drain field")) << said.toStdString();
  EXPECT_TRUE(said.contains("costs")) << said.toStdString();
}

TEST_F(WhyToolTest, NamesTheSetbackAtTheLotLine) {
  const QString said = answer_at({40, 1});
  EXPECT_TRUE(said.contains("setback of lot edge 1")) << said.toStdString();
}

// Its usual clearance, and the 10 ft of the lot's edges, in the plan's own units.
TEST_F(WhyToolTest, NamesTheThingThatLiesThereAndPricesItsClearance) {
  const QString said = answer_at({57, 45});
  EXPECT_TRUE(said.contains("Here is Drain field")) << said.toStdString();
  EXPECT_TRUE(said.contains(QRegularExpression("The [0-9].* clearance of Drain field [0-9]+ costs")))
      << said.toStdString();
}

// (72, 2): on the area, and within 10 ft of the lower side.
TEST_F(WhyToolTest, PricesAllThatCoversThePlace) {
  add(FeatureKind::no_dig, {{60, 1}, {75, 1}, {75, 9}, {60, 9}});
  wait();
  const QString said = answer_at({72, 2});
  EXPECT_TRUE(said.contains("setback of lot edge 1") && said.contains("Here is No-dig area"))
      << said.toStdString();
  EXPECT_TRUE(said.contains("Without any one of these")) << said.toStdString();  // all are placed
}

// Five areas, each over the place: more than are named in passing.
TEST_F(WhyToolTest, NamesAllReasonsOnAClick) {
  for (double more : {0.0, 0.5, 1.0, 1.5, 2.0})
    add(FeatureKind::no_dig,
        {{20 - more, 20 - more}, {30 + more, 20 - more}, {30 + more, 30}, {20 - more, 30}});
  wait();
  EXPECT_EQ(answer_at({25, 25}).count("Here is No-dig area"), 5) << canvas.status().toStdString();
}

TEST_F(WhyToolTest, SaysOfAnEasementThatItCannotBeMoved) {
  add(FeatureKind::easement, {{10, 20}, {30, 20}, {30, 30}, {10, 30}});
  wait();
  const QString said = answer_at({20, 25});
  EXPECT_TRUE(said.contains("Here is Easement")) << said.toStdString();
  EXPECT_TRUE(said.contains("cannot be moved")) << said.toStdString();
}

// What was said of another plan is not left standing.
TEST_F(WhyToolTest, AnotherPlanIsAskedAnew) {
  add(FeatureKind::no_dig, {{20, 20}, {30, 20}, {30, 30}, {20, 30}});
  wait();
  EXPECT_TRUE(answer_at({25, 25}).contains("No-dig area"));
  document.undo();
  wait();
  move_to({25, 26});
  EXPECT_FALSE(canvas.status().contains("No-dig area")) << canvas.status().toStdString();
}

TEST_F(WhyToolTest, ChangesNothingAndEscapeClears) {
  const Plan before = document.committed();
  click({40, 1});
  EXPECT_EQ(document.committed(), before);
  key(Qt::Key_Escape);
  EXPECT_FALSE(canvas.status().contains("setback"));
}

}  // namespace underlawn
