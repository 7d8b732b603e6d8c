// SPDX-License-Identifier: GPL-3.0-or-later
// Another layout over the one that is drawn, as dashed outlines in a colour of its own, with a legend.
#pragma once

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

void paint_ghost(QPainter& painter, const Ghost& ghost, const View& view, const Look& look);

}  // namespace underlawn
