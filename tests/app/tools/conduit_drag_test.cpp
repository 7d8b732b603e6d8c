// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/conduit_drag.h"

#include "app/canvas/drag_fixture.h"

namespace underlawn {

namespace {

class ConduitDrag : public DragTest {
 protected:
  ConduitDrag() : DragTest(3) {}
  const Layout& layout() const { return document.outcome()->layout; }
  Point on_header() const {
    const Polyline& leg = layout().header.legs.at(0);
    return 0.5 * (leg[0] + leg[1]);
  }
  Point on_run() const {
    const Polyline& line = layout().run.line;
    return 0.5 * (line[line.size() - 2] + line.back());
  }
};

}  // namespace

TEST_F(ConduitDrag, ADraggedHeaderIsHeldWhereItIsPut) {
  const Point at = on_header();
  const Point inward = 2.0 * unit(layout().trenches[0].end - layout().trenches[0].head);
  click(at);
  ASSERT_EQ(selection.now().kind, Selected::Kind::header);
  drag(at, at + inward, Qt::AltModifier);
  ASSERT_TRUE(document.committed().wishes.header_on.has_value());
  EXPECT_EQ(document.undo_name(), "Move the header");
  wait();
  const Segment line = *document.committed().wishes.header_on;
  for (const Trench& t : layout().trenches) EXPECT_LT(distance(line, t.head), 2.0);
  document.undo();
  EXPECT_FALSE(document.committed().wishes.header_on.has_value());
}

TEST_F(ConduitDrag, TheHeaderStopsAtTheSetbackAndSaysSo) {
  const Point at = on_header();
  click(at);
  hold(at, {at.x, -30}, Qt::AltModifier);
  EXPECT_TRUE(canvas.status().contains("setback of lot edge 1")) << canvas.status().toStdString();
  let_go({at.x, -30}, Qt::AltModifier);
  const Segment line = document.committed().wishes.header_on.value();
  EXPECT_GE(std::min(line.a.y, line.b.y), 3 + document.committed().wishes.run_width / 2 - 2e-3);
}

TEST_F(ConduitDrag, ADraggedStretchOfTheRunIsPassedFromThenOn) {
  const Point at = on_run();
  click(at);
  ASSERT_EQ(selection.now().kind, Selected::Kind::run);
  const Polyline& line = layout().run.line;
  const Point aside = 1.5 * left_normal(unit(line.back() - line[line.size() - 2]));
  drag(at, at + aside, Qt::AltModifier);
  ASSERT_EQ(document.committed().wishes.run_by.size(), 1u);
  const Point place = document.committed().wishes.run_by[0];
  EXPECT_LT(distance(place, at + aside), 0.3);
  wait();
  double off = 1e9;
  const Polyline& now = layout().run.line;
  for (std::size_t i = 1; i < now.size(); ++i)
    off = std::min(off, distance(Segment{now[i - 1], now[i]}, place));
  EXPECT_LT(off, 0.01);
  EXPECT_EQ(document.undo_name(), "Move the run");
}

TEST_F(ConduitDrag, EscapeLeavesNoTrace) {
  const Plan before = document.committed();
  const Point at = on_run();
  click(at);
  hold(at, at + Point{3, 3}, Qt::AltModifier);
  EXPECT_TRUE(document.previewing());
  key(Qt::Key_Escape);
  let_go(at);
  EXPECT_EQ(document.committed(), before);
}

}  // namespace underlawn
