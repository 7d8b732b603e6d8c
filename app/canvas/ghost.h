// SPDX-License-Identifier: GPL-3.0-or-later
// One or two other layouts over the one that is drawn, as outlines with dashes and a colour of their own,
// with a legend.
#pragma once

#include <vector>

#include "canvas/look.h"
#include "canvas/view.h"
#include "layout/layout.h"

class QPainter;

namespace underlawn {

struct Ghost {
  Layout layout;
  double run_width = 0;  // m
  QString name;
  QString now = {};  // of what is drawn, in the legend; else "As it stands"
};

void paint_ghosts(QPainter& painter, const std::vector<Ghost>& ghosts, const View& view, const Look& look);
// Which is which, in the drawing's corner; over everything else.
void paint_ghost_legend(QPainter& painter, const std::vector<Ghost>& ghosts, const View& view,
                        const Look& look);

// Of two that are compared, what is drawn beneath is the third: it steps back.
inline bool dim_what_is_drawn(const std::vector<Ghost>& ghosts) {
  return ghosts.size() > 1;
}

}  // namespace underlawn
