// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/as_built_sheet.h"

#include "sheets/as_built_blocks.h"
#include "sheets/contents.h"

namespace underlawn {

using namespace sheet;

namespace {

// The planned trenches, header and run in dashes, where they differ.
void paint_planned(QPainter& painter, const View& view, const Layout& planned) {
  QPen pen(kFaint, pt(0.8));
  pen.setDashPattern({5, 3});
  painter.setPen(pen);
  painter.setBrush(Qt::NoBrush);
  const auto line = [&](const std::vector<Point>& points) {
    QPolygonF p;
    for (Point at : points) p << view.to_device(at);
    return p;
  };
  for (const Trench& t : planned.trenches) painter.drawPolygon(line(floor_of(t)));
  for (const Polyline& leg : planned.header.legs) painter.drawPolyline(line(leg));
  painter.drawPolyline(line(planned.run.line));
}

MapContent content(const Plan& plan, const Outcome& outcome, const AsBuiltAnswer& built) {
  MapContent c;
  const bool recorded = plan.as_built != AsBuilt{};
  c.title = QObject::tr("As-built");
  c.subtitle = recorded ? QObject::tr("AS BUILT, buried coil loop")
                        : QObject::tr("AS BUILT FORM, nothing recorded yet");
  c.beside = tie_table(built.plan, *built.outcome, kTiePoints);
  for (const BlockPtr& block : as_built_blocks({plan, outcome, built})) add(c.after, block, true);
  add(c.after_without, tie_table(built.plan, *built.outcome, kTiePoints));
  c.after_without.insert(c.after_without.end(), c.after.begin(), c.after.end());
  c.options.corner_tags = true;
  c.options.findings = false;
  if (built.loop.changed)
    c.over = [planned = outcome.layout](QPainter& painter, const View& view) {
      paint_planned(painter, view, planned);
    };
  return c;
}

}  // namespace

AsBuiltSheet::AsBuiltSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : AsBuiltSheet(plan, outcome, solve_as_built(plan, outcome), setup) {}

AsBuiltSheet::AsBuiltSheet(const Plan& plan, const Outcome& outcome, const AsBuiltAnswer& built,
                           const SheetSetup& setup)
    : MapSheet(built.plan, *built.outcome, setup, content(plan, outcome, built)) {}

}  // namespace underlawn
