// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "layout/header_groups.h"
#include "layout/layout.h"

namespace underlawn {
namespace {

Site lot(double right, double top) {
  Site s;
  for (Point p : {Point{0, 0}, Point{right, 0}, Point{right, top}, Point{0, top}}) s.lot.push_back({p, 3});
  Feature house;
  house.id = 1;
  house.kind = FeatureKind::house;
  house.points = {{20, 4}, {40, 4}, {40, 12}, {20, 12}};
  s.features.push_back(house);
  s.entry = EntryPoint{1, {30, 12}};
  return s;
}

Coil coil() {
  Coil c;
  c.trench_length = 25;
  return c;
}

std::vector<Segment> shown(const Layout& l) {
  std::vector<Segment> all;
  for (const Trench& t : l.trenches) all.push_back({t.head, t.end});
  return all;
}

double digging(const Layout& l) {
  return l.header.length + l.run.length;
}

// Mean way of the ends from one layout to the next, each trench to the nearest.
double moved(const Layout& from, const Layout& to) {
  double sum = 0;
  for (const Trench& t : to.trenches) {
    double least = 1e9;
    for (const Trench& f : from.trenches)
      least = std::min(least, std::hypot(t.head.x - f.head.x, t.head.y - f.head.y) +
                                  std::hypot(t.end.x - f.end.x, t.end.y - f.end.y));
    sum += least / 2;
  }
  return sum / static_cast<double>(std::max<std::size_t>(1, to.trenches.size()));
}

Wishes two_groups() {
  Wishes w;
  w.circuits = 6;
  w.groups = 2;
  w.coil_in_run = false;
  return w;
}

// A hand's breadth at a time.
void corner_outward(Site& s, const Site& drawn, int step) {
  s.lot[2].at = drawn.lot[2].at + Point{0.1 * step, 0.07 * step};
}
void side_inward(Site& s, const Site& drawn, int step) {
  for (std::size_t corner : {1u, 2u}) s.lot[corner].at.x = drawn.lot[corner].at.x - 0.06 * step;
}

// Step by step, each layout knowing the one before: none loses a trench, and one whose trenches move by more
// than `still` m has to gain by it. `also` is asked of each two that follow.
template <class Change, class Also>
void drag(const Site& drawn, Wishes w, int steps, double still, Change change, Also also) {
  Site s = drawn;
  Layout before = make_layout(s, w, coil());
  for (int step = 1; step <= steps; ++step) {
    change(s, drawn, step);
    w.kept = shown(before);
    const Layout after = make_layout(s, w, coil());
    ASSERT_EQ(after.trenches.size(), before.trenches.size());
    also(before, after, step);
    if (moved(before, after) > still) {
      EXPECT_LT(digging(after), digging(before) - 0.5) << "step " << step;
    }
    before = after;
  }
}
template <class Change>
void drag(const Site& drawn, const Wishes& w, int steps, double still, Change change) {
  drag(drawn, w, steps, still, change, [](const Layout&, const Layout&, int) {});
}

// A corner dragged outward, a hand's breadth at a time: what was shown stays legal, so that trenches move for
// a real gain only.
TEST(Calm, TrenchesStayWhileACornerIsDraggedOutward) {
  Wishes w;
  w.circuits = 5;
  drag(lot(60, 50), w, 30, 0.01, corner_outward, [](const Layout& before, const Layout& after, int step) {
    EXPECT_LT(std::abs(after.direction - before.direction), 0.1) << "step " << step;
  });
}

// Pushed inward, they give way a little, or for a gain. As far as two trenches with their heads to each other
// still fit: 2 x 25 m, the end gap and two setbacks are 57.83 m.
TEST(Calm, TrenchesGiveWayALittleWhileASideIsPushedInward) {
  Wishes w;
  w.circuits = 4;
  drag(lot(60, 50), w, 30, 0.5, side_inward);
}

// What was shown on quite another lot is only a hint: the count is the one found without it.
TEST(Calm, AHintTakesNoTrenchAway) {
  for (double right : {40.0, 50.0, 70.0}) {
    Wishes w;
    w.circuits = 6;
    const Layout plain = make_layout(lot(right, 45), w, coil());
    w.kept = shown(make_layout(lot(60, 50), w, coil()));
    EXPECT_EQ(make_layout(lot(right, 45), w, coil()).trenches.size(), plain.trenches.size()) << right;
  }
}

// Two fields with headers of their own, a corner dragged outward a hand's breadth at a time: nothing moves
// but for a real gain.
TEST(Calm, GroupsStayWhileACornerIsDraggedOutward) {
  ASSERT_EQ(make_layout(lot(75, 55), two_groups(), coil()).groups, (std::vector{3, 3}));
  drag(lot(75, 55), two_groups(), 20, 0.01, corner_outward,
       [](const Layout& before, const Layout& after, int step) {
         EXPECT_EQ(after.groups, before.groups) << "step " << step;
       });
}

// Pushed inward, they move by as little as the side does, or for a gain.
TEST(Calm, GroupsGiveWayALittleWhileASideIsPushedInward) {
  drag(lot(75, 55), two_groups(), 20, 0.5, side_inward);
}

// What is held where it lies anyway leaves everything where it lies: trenches, header and the run.
TEST(Calm, AHeaderHeldWhereItLiesChangesNothing) {
  for (double right : {55.0, 60.0, 66.0, 75.0})
    for (double slant : {-2.0, 0.0, 3.0}) {
      Wishes w;
      w.circuits = 4;
      w.coil_in_run = false;
      Site s = lot(right, 50);
      s.lot[2].at.x += slant;
      const Layout before = make_layout(s, w, coil());
      SCOPED_TRACE(testing::Message() << right << ' ' << slant);
      ASSERT_EQ(before.trenches.size(), 4u);
      w.header_on = line_of_header(before, 1);
      if (!w.header_on) continue;
      w.kept = shown(before);
      const Layout after = make_layout(s, w, coil());
      ASSERT_EQ(after.trenches.size(), before.trenches.size());
      EXPECT_LT(moved(before, after), 0.01);
      // Another run only where it gains.
      if (std::abs(after.run.length - before.run.length) > 0.01) {
        EXPECT_LT(digging(after), digging(before) - 0.5);
      }
    }
}

}  // namespace
}  // namespace underlawn
