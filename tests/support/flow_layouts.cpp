// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/flow_layouts.h"

namespace underlawn {

Trench hand_trench(int number, Point head, double pipe) {
  Trench t;
  t.number = number;
  t.head = head;
  t.end = {head.x + 30, head.y};
  t.width = 0.9;
  t.depth = 1.8;
  t.coil.loop_diameter = 0.9144;
  t.coil.coil_length = pipe;
  t.coil.return_pipe = pipe > 60 ? pipe - 60 : 0;
  t.coil.loop_pipe = pipe - t.coil.return_pipe;
  return t;
}

Layout hand_layout(int left, int right, bool at_joint, double spacing, double run, double pipe) {
  Layout l;
  l.run.line = {{-run, 0}, {0, 0}};
  l.run.length = run;
  int number = 1;
  if (at_joint) l.trenches.push_back(hand_trench(number++, {0, 0}, pipe));
  for (const auto& [count, sign] : {std::pair{left, -1.0}, std::pair{right, 1.0}}) {
    for (int i = 1; i <= count; ++i)
      l.trenches.push_back(hand_trench(number++, {0, sign * spacing * i}, pipe));
    if (count > 0) l.header.legs.push_back({{0, 0}, {0, sign * spacing * count}});
    l.header.length += spacing * count;
  }
  return l;
}

void straighten(Layout& layout) {
  for (Trench& t : layout.trenches) {
    t.coil.return_pipe += t.coil.loop_pipe;
    t.coil.loop_pipe = 0;
  }
}

}  // namespace underlawn
