// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/canvas/canvas_fixture.h"
#include "app/support/wait.h"

namespace underlawn {

// 80 m by 60 m, setback 3 m, a house in a corner, so many trenches: what follows from the plan is dragged.
class DragTest : public CanvasTest {
 protected:
  explicit DragTest(int circuits) {
    add_lot({{0, 0}, {80, 0}, {80, 60}, {0, 60}});
    const int house = add(FeatureKind::house, {{6, 45}, {18, 45}, {18, 55}, {6, 55}});
    Plan plan = edit::with_entry(document.committed(), {12, 45});
    plan.site.entry->house_id = house;
    plan.wishes.circuits = circuits;
    plan.wishes.coil_in_run = false;
    document.commit(std::move(plan), "Set up");
    wait();
  }
  void wait() {
    ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  }
};

}  // namespace underlawn
