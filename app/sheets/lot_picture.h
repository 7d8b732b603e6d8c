// SPDX-License-Identifier: GPL-3.0-or-later
// The lot as a family knows it: lawn, house, trees; before, while it is dug, and after. On paper and in the
// window.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "canvas/view.h"
#include "plan/outcome.h"
#include "plan/plan.h"

namespace underlawn {

enum class LotMoment {
  before,
  digging,  // trenches open as far as they are dug, earth beside them
  closed,   // filled in, bare and sown
  after,    // grass again
};

struct LotPicture {
  LotMoment moment = LotMoment::before;
  double dug = 1;            // share of the digging done, trenches first, then header and run; digging only
  std::optional<double> at;  // s of working time: what is open then by the calendar, instead of `dug`
  double text = 14;          // device units
  bool loop_below = false;   // shows where the loop lies under the grass, faintly
  // Only by paint_named_lot (lot_names.h):
  bool distances = false;  // from what people love to the nearest digging
  bool names = true;
  bool numbers = true;  // of the trenches, where the picture shows them
  bool frame = false;   // a scale bar and north under the picture
};

// Paints into `area`. Needs a lot or a house; else leaves the area empty.
void paint_lot_picture(QPainter& painter, const Plan& plan, const Outcome* outcome, const QRectF& area,
                       const LotPicture& how);

// What the colours of a picture of the work are: "open trench". Only what is on this lot.
struct PictureColour {
  QColor colour;
  QString words;
  std::optional<double> hatch = std::nullopt;  // degrees, where it is hatched
};
std::vector<PictureColour> picture_colours(const Plan& plan, const Outcome& outcome);
// Set in lines under one another, as letters `text` high; returns the height. Paints where there is a
// painter.
double set_picture_key(QPainter* painter, const QRectF& room, const std::vector<PictureColour>& key,
                       double text);

// The view that it uses, for what is laid over it; device units from area.topLeft().
View lot_picture_view(const Plan& plan, QSizeF size, double text);

// How near the digging comes to what people love or ask for: trees, gardens, house, well, septic parts, the
// lot line. To the house it is the nearest coil trench: the run leads to it. Nearest first.
struct Loved {
  std::string name;
  int feature_id = 0;   // 0: the lot line
  Segment line;         // from the digging to it
  double distance = 0;  // m, from the edge of the nearest floor; of a tree to its trunk's middle
  double kept = 0;      // m that were asked for
  double roots = 0;     // m, radius of a tree's root zone; 0 else
};
std::vector<Loved> loved(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
