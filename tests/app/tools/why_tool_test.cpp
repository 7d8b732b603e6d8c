// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/why_tool.h"

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
};

}  // namespace

TEST_F(WhyToolTest, SaysWhatKeepsATrenchOut) {
  move_to({57, 45});
  click({57, 45});
  EXPECT_TRUE(canvas.status().contains("rain field")) << canvas.status().toStdString();
  EXPECT_TRUE(canvas.status().contains("Without")) << canvas.status().toStdString();
}

TEST_F(WhyToolTest, NamesTheSetbackAtTheLotLine) {
  click({40, 1});
  EXPECT_TRUE(canvas.status().contains("setback of lot edge 1")) << canvas.status().toStdString();
}

TEST_F(WhyToolTest, NamesTheThingThatLiesThereAndPricesItsClearance) {
  click({57, 45});
  EXPECT_TRUE(canvas.status().contains("Here is Drain field")) << canvas.status().toStdString();
  EXPECT_TRUE(canvas.status().contains("Without the clearance of Drain field"))
      << canvas.status().toStdString();
}

// (72, 2): on the area, and within 10 ft of the lower side.
TEST_F(WhyToolTest, PricesAllThatCoversThePlace) {
  add(FeatureKind::no_dig, {{60, 1}, {75, 1}, {75, 9}, {60, 9}});
  wait();
  click({72, 2});
  const QString said = canvas.status();
  EXPECT_TRUE(said.contains("setback of lot edge 1") && said.contains("Here is No-dig area"))
      << said.toStdString();
  EXPECT_TRUE(said.contains("Without any one of these")) << said.toStdString();  // all are placed
}

TEST_F(WhyToolTest, SaysOfAnEasementThatItCannotBeMoved) {
  add(FeatureKind::easement, {{10, 20}, {30, 20}, {30, 30}, {10, 30}});
  wait();
  click({20, 25});
  EXPECT_TRUE(canvas.status().contains("Here is Easement")) << canvas.status().toStdString();
  EXPECT_TRUE(canvas.status().contains("cannot be moved")) << canvas.status().toStdString();
}

TEST_F(WhyToolTest, ChangesNothingAndEscapeClears) {
  const Plan before = document.committed();
  click({40, 1});
  EXPECT_EQ(document.committed(), before);
  key(Qt::Key_Escape);
  EXPECT_FALSE(canvas.status().contains("setback"));
}

}  // namespace underlawn
