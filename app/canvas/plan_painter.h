// SPDX-License-Identifier: GPL-3.0-or-later
// Draws a plan and what follows from it, on the window's canvas and on every sheet: one drawing, two devices.
#pragma once

#include <functional>

#include "canvas/layers.h"
#include "canvas/look.h"
#include "canvas/view.h"
#include "plan/outcome.h"
#include "plan/plan.h"

class QPainter;

namespace underlawn {

struct PaintContext;

struct PaintOptions {
  bool zones = true;         // setbacks, clearances, buildable ground
  bool coils = true;         // loops drawn in the trenches where the scale allows
  bool labels = true;        // names, trench numbers
  bool edge_lengths = true;  // lengths along the lot line
  bool bearings = false;     // and their bearings
  bool heights = true;       // spot heights, contours, steepness
  bool findings = true;      // places of findings
  bool corner_tags = false;  // house corner letters for tape ties (sheets)
  Layers layers;             // what is not hidden
  bool dig = false;          // spoil, order and way of digging, ways of the machine
  bool stale = false;        // the outcome is of an earlier plan, or may soon be: what is derived is pale
  bool pictures = false;     // pictures under the drawing
  bool sheet = false;        // on paper: only those pictures that are meant for it
  int of_trench = 0;         // the page is about the trench of this number: others are pale; 0: about all
  QString picture_folder;    // from where the paths of pictures beside the plan count
  std::function<void(PaintContext&)> over = {};  // what else is painted, its labels among the others
};

// Paints into the painter's device through `view`. `outcome` may be null while nothing is solved yet.
void paint_plan(QPainter& painter, const Plan& plan, const Outcome* outcome, const View& view,
                const Look& look, const PaintOptions& options);

}  // namespace underlawn
