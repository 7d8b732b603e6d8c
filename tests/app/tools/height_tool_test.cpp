// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/height_tool.h"

#include "app/canvas/canvas_fixture.h"

namespace underlawn {

class HeightToolTest : public CanvasTest {
 protected:
  HeightToolTest() {
    add_lot({{0, 0}, {80, 0}, {80, 60}, {0, 60}});
    canvas.set_tool(ToolId::height);
  }
  const std::vector<SpotHeight>& heights() const { return document.committed().site.heights; }
  void set(std::size_t i, double height) {
    Plan plan = document.committed();
    plan.site.heights[i].height = height;
    document.commit(std::move(plan), "Height");
  }
};

TEST_F(HeightToolTest, AClickMarksASpotAsHighAsTheGroundIsTakenToBe) {
  click({10, 10});
  ASSERT_EQ(heights().size(), 1u);
  set(0, 2);
  click({50, 10});
  ASSERT_EQ(heights().size(), 2u);
  EXPECT_NEAR(heights()[1].height, 2, 1e-9);
  set(1, 4);
  click({30, 10});
  ASSERT_EQ(heights().size(), 3u);
  EXPECT_NEAR(heights()[2].height, 3, 0.01);  // half-way
}

TEST_F(HeightToolTest, ASpotIsSelectedMovedRemovedAndBroughtBack) {
  click({10, 10});
  click({50, 10});
  canvas.set_tool(ToolId::select);
  drag({10, 10}, {14, 25});
  EXPECT_NEAR(heights()[0].at.x, 14, 0.2);
  EXPECT_NEAR(heights()[0].at.y, 25, 0.2);
  key(Qt::Key_Delete);
  ASSERT_EQ(heights().size(), 1u);
  EXPECT_NEAR(heights()[0].at.x, 50, 0.2);
  document.undo();
  EXPECT_EQ(heights().size(), 2u);
}

TEST_F(HeightToolTest, TypedCoordinatesPlaceOne) {
  enter("20,30");
  ASSERT_EQ(heights().size(), 1u);
  EXPECT_NEAR(distance(heights()[0].at, Point{20 * 0.3048, 30 * 0.3048}), 0, 1e-9);
}

}  // namespace underlawn
