// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/as_built_sheet.h"

#include <algorithm>

#include "canvas/paint_context.h"
#include "sheets/as_built_blocks.h"
#include "sheets/contents.h"

namespace underlawn {

using namespace sheet;

namespace {

// What the dashes are, where a trench was left out or ends elsewhere.
void name_planned(PaintContext& on, const Trench& planned, const Layout& built) {
  const auto at = std::ranges::find(built.trenches, planned.number, &Trench::number);
  const bool dug = at != built.trenches.end();
  if (dug && distance(at->end, planned.end) < 0.3) return;
  Label label;
  label.text = QObject::tr("planned", "a trench");
  label.font = type(8);
  label.colour = kFaint;
  label.must = true;
  const QPointF middle = on.at(0.5 * ((dug ? at->end : planned.head) + planned.end));
  label.places = places_around(middle, QSizeF(pt(5), pt(5)), label.text, label.font, 4);
  on.labels.add(std::move(label));
}

// The planned trenches, header and run in dashes, where they differ.
void paint_planned(PaintContext& on, const Layout& planned, const Layout& built) {
  QPen pen(kFaint, pt(0.8));
  pen.setDashPattern({5, 3});
  on.painter.setPen(pen);
  on.painter.setBrush(Qt::NoBrush);
  for (const Trench& t : planned.trenches) {
    on.painter.drawPolygon(on.line(floor_of(t)));
    name_planned(on, t, built);
  }
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
    c.options.over = [planned = outcome.layout, dug = built.loop.layout](PaintContext& on) {
      paint_planned(on, planned, dug);
    };
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
