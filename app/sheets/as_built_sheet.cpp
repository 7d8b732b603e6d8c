// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/as_built_sheet.h"

#include "canvas/paint_context.h"
#include "sheets/as_built_blocks.h"
#include "sheets/contents.h"

namespace underlawn {

using namespace sheet;

namespace {

// The planned trenches, header and run in dashes, where they differ.
void paint_planned(PaintContext& on, const Layout& planned) {
  QPen pen(kFaint, pt(0.8));
  pen.setDashPattern({5, 3});
  on.painter.setPen(pen);
  on.painter.setBrush(Qt::NoBrush);
  for (const Trench& t : planned.trenches) on.painter.drawPolygon(on.line(floor_of(t)));
  for (const Polyline& leg : planned.header.legs) on.painter.drawPolyline(on.line(leg));
  on.painter.drawPolyline(on.line(planned.run.line));
}

MapContent content(const Plan& plan, const Outcome& outcome, const AsBuiltAnswer& built,
                   const QString& folder) {
  MapContent c;
  const bool recorded = plan.as_built != AsBuilt{};
  c.title = QObject::tr("As-built");
  c.subtitle = recorded ? QObject::tr("AS BUILT, buried coil loop")
                        : QObject::tr("AS BUILT FORM, nothing recorded yet");
  c.beside = tie_table(built.plan, *built.outcome, kTiePoints);
  for (const BlockPtr& block : as_built_blocks({plan, outcome, built, folder})) add(c.after, block, true);
  add(c.after_without, tie_table(built.plan, *built.outcome, kTiePoints));
  c.after_without.insert(c.after_without.end(), c.after.begin(), c.after.end());
  c.options.corner_tags = true;
  c.options.findings = false;
  if (built.loop.changed)
    c.options.over = [planned = outcome.layout](PaintContext& on) { paint_planned(on, planned); };
  return c;
}

// What was found wrong with the plan is not drawn here, and has no line in the legend.
Outcome without_findings(Outcome outcome) {
  outcome.findings.clear();
  return outcome;
}

}  // namespace

AsBuiltSheet::AsBuiltSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : AsBuiltSheet(plan, outcome, solve_as_built(plan, outcome), setup) {}

AsBuiltSheet::AsBuiltSheet(const Plan& plan, const Outcome& outcome, const AsBuiltAnswer& built,
                           const SheetSetup& setup)
    : MapSheet(built.plan, without_findings(*built.outcome), setup,
               content(plan, outcome, built, setup.folder)) {}

}  // namespace underlawn
