// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/trench_drag.h"

#include "app/canvas/drag_fixture.h"

namespace underlawn {

namespace {

class TrenchDrag : public DragTest {
 protected:
  TrenchDrag() : DragTest(2) {}
  const Trench& trench(std::size_t i) const { return document.outcome()->layout.trenches.at(i); }
  Point middle(const Trench& t) const { return 0.5 * (t.head + t.end); }
  const std::vector<GivenTrench>& locked() const { return document.committed().wishes.locked; }
  void pick(const Trench& t) {
    click(middle(t));
    ASSERT_EQ(selection.now(), (Selected{Selected::Kind::trench, t.number}));
  }
};

}  // namespace

TEST_F(TrenchDrag, ADraggedTrenchIsLockedWhereItIsPut) {
  const Trench t = trench(0);
  pick(t);
  const Point by{2, -1};
  drag(middle(t), middle(t) + by, Qt::AltModifier);
  ASSERT_EQ(locked().size(), 1u);
  EXPECT_NEAR(distance(locked()[0].head, t.head + by), 0, 0.06);  // half a pixel each way
  EXPECT_NEAR(distance(locked()[0].head, locked()[0].end), distance(t.head, t.end), 1e-9);
  wait();
  const auto& all = document.outcome()->layout.trenches;
  ASSERT_EQ(all.size(), 2u);
  const auto held = std::count_if(all.begin(), all.end(), [](const Trench& x) { return x.locked; });
  EXPECT_EQ(held, 1);
  const Trench* selected = trench_numbered(document.outcome()->layout, selection.now().id);
  ASSERT_NE(selected, nullptr);
  EXPECT_TRUE(selected->locked);
  EXPECT_EQ(document.undo_name(), "Move a trench");
}

TEST_F(TrenchDrag, ItStopsAtTheSetback) {
  const Trench t = trench(0);
  pick(t);
  drag(middle(t), {middle(t).x, -40}, Qt::AltModifier);
  ASSERT_EQ(locked().size(), 1u);
  const double half = document.committed().wishes.trench_width / 2;
  const double low = std::min(locked()[0].head.y, locked()[0].end.y);
  EXPECT_GE(low, 3 - 1e-3);
  const bool level = std::abs(locked()[0].head.y - locked()[0].end.y) < 1e-6;
  EXPECT_NEAR(low, level ? 3 + half : 3, 0.01);
}

TEST_F(TrenchDrag, WhatStopsItIsSaidWhileItIsHeld) {
  const Trench t = trench(0);
  pick(t);
  const Point beyond{middle(t).x, -40};
  hold(middle(t), beyond, Qt::AltModifier);
  EXPECT_TRUE(canvas.status().contains("setback of lot edge 1")) << canvas.status().toStdString();
  move_to(middle(t) + Point{2, -1}, Qt::AltModifier, Qt::LeftButton);
  EXPECT_FALSE(canvas.status().contains("Stopped")) << canvas.status().toStdString();
  key(Qt::Key_Escape);
  let_go(beyond);
}

TEST_F(TrenchDrag, AnEndIsDraggedAloneAndTheOtherStays) {
  const Trench t = trench(0);
  pick(t);
  const Point inward = 5.0 * unit(t.head - t.end);
  drag(t.end, t.end + inward, Qt::AltModifier);
  ASSERT_EQ(locked().size(), 1u);
  EXPECT_EQ(locked()[0].head, t.head);
  EXPECT_NEAR(distance(locked()[0].end, t.end + inward), 0, 0.06);
}

TEST_F(TrenchDrag, EscapeLeavesNoTrace) {
  const Plan before = document.committed();
  const Trench t = trench(0);
  pick(t);
  hold(middle(t), middle(t) + Point{2, -1});
  key(Qt::Key_Escape);
  let_go(middle(t) + Point{2, -1});
  EXPECT_EQ(document.committed(), before);
  EXPECT_EQ(document.plan(), before);
}

TEST_F(TrenchDrag, HoldingLocksWhereItLiesAndLetsGoAgain) {
  const Trench t = trench(1);
  pick(t);
  canvas.turn_hold();
  ASSERT_EQ(locked().size(), 1u);
  EXPECT_EQ(locked()[0].head, t.head);
  wait();
  canvas.turn_hold();
  EXPECT_TRUE(locked().empty());
}

TEST_F(TrenchDrag, DeletingALockedTrenchLetsItGo) {
  pick(trench(0));
  canvas.turn_hold();
  wait();
  canvas.remove_selected();
  EXPECT_TRUE(locked().empty());
}

TEST_F(TrenchDrag, TheHeaderIsHeldOnItsLine) {
  selection.select({Selected::Kind::header});
  canvas.turn_hold();
  ASSERT_TRUE(document.committed().wishes.header_on);
  const Segment held = *document.committed().wishes.header_on;
  for (const Trench& t : document.outcome()->layout.trenches) EXPECT_LT(distance(held, t.head), 0.01);
}

TEST_F(TrenchDrag, TheHeaderOfOneGroupIsHeldAlone) {
  Plan plan = document.committed();
  plan.wishes.circuits = 4;
  plan.wishes.groups = 2;
  document.commit(std::move(plan), "Two groups");
  wait();
  ASSERT_EQ(document.outcome()->layout.groups.size(), 2u);
  selection.select({Selected::Kind::header, 2});
  canvas.turn_hold();
  EXPECT_FALSE(document.committed().wishes.header_on);
  ASSERT_EQ(document.committed().wishes.group_headers.size(), 1u);
  EXPECT_EQ(document.committed().wishes.group_headers[0].group, 2);
  wait();
  canvas.turn_hold();
  EXPECT_TRUE(document.committed().wishes.group_headers.empty());
}

}  // namespace underlawn
