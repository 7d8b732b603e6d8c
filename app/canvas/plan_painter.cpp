// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/plan_painter.h"

#include "canvas/paint_context.h"
#include "canvas/pictures.h"

namespace underlawn {

void paint_plan(QPainter& painter, const Plan& whole, const Outcome* outcome, const View& view,
                const Look& look, const PaintOptions& options) {
  Labels labels;
  std::optional<Plan> part;
  if (!options.layers.all()) part = shown_part(whole, options.layers);
  const Plan& plan = part ? *part : whole;
  PaintContext c{painter, plan, outcome, view, look, options, labels};
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  paint_ground(c);
  paint_pictures(c);
  paint_terrain(c);
  paint_setbacks(c);
  paint_areas(c);
  paint_clearances(c);
  paint_trees(c);
  paint_finding_glow(c);
  if (options.dig) paint_spoil(c);
  if (options.layers.loop) paint_field(c);
  paint_utilities(c);
  paint_houses(c);
  paint_wells(c);
  paint_spot_heights(c);
  paint_lot_line(c);
  paint_dimensions(c);
  if (options.dig) paint_dig(c);
  if (options.sheet && options.corner_tags && !options.dig && options.of_trench == 0) paint_piece_names(c);
  if (options.layers.loop) paint_crossings(c);
  paint_findings(c);
  if (options.over) options.over(c);
  labels.paint(painter, c.device(), look.ground, look.line);
  painter.restore();
}

}  // namespace underlawn
