// SPDX-License-Identifier: GPL-3.0-or-later
// How the first page is divided, and at which scale the plan fits it.
#pragma once

#include <QRectF>
#include <memory>

#include "canvas/view.h"
#include "sheets/block.h"
#include "sheets/sheet.h"

namespace underlawn::sheet {

struct PlanPage {
  bool landscape = false;
  int scale = 100;
  QSizeF size;   // of the paper
  QRectF map;    // frame of the plan
  QRectF strip;  // under it: scale bar and north
  QRectF legend;
  TablePtr table;  // the one beside the plan, in the type it has there
  QRectF beside;   // empty where the table beside the plan is on a later page
  QRectF title;    // on every page
  QRectF inner;    // what is left above the title, on every page
  View view;       // from map.topLeft()
  bool fits = true;
};

// Without a plan on it: size, title and inner only.
PlanPage blank_page(Paper paper, bool landscape);

// Lying or upright, `beside` beside the plan or on a later page: whichever shows the plan largest, where a
// table on the same page is worth one step of the scale. `beside` may be null.
PlanPage divide(const Plan& plan, const Outcome& outcome, const SheetSetup& setup, const TablePtr& beside);

inline constexpr double kTiePoints = 10.5;

}  // namespace underlawn::sheet
