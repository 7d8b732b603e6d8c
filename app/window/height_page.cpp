// SPDX-License-Identifier: GPL-3.0-or-later
#include "site/terrain.h"
#include "window/form.h"
#include "window/heights_table.h"
#include "window/selected_panel.h"

namespace underlawn {

namespace {

Form::Bound<double> of_height(int index, const std::function<double&(SpotHeight&)>& part,
                              const QString& what) {
  const auto at = static_cast<std::size_t>(index);
  return {[at, part](const Plan& p) {
            SpotHeight h = at < p.site.heights.size() ? p.site.heights[at] : SpotHeight{};
            return part(h);
          },
          [at, part](Plan& p, double v) {
            if (at < p.site.heights.size()) part(p.site.heights[at]) = v;
          },
          what};
}

QString steepness(const Plan& p, int index) {
  const auto at = static_cast<std::size_t>(index);
  if (at >= p.site.heights.size()) return {};
  const Terrain terrain(p.site.heights);
  if (terrain.triangles().empty())
    return Form::tr("Three heights not in a line and more make a surface; contours follow.");
  const double range = terrain.highest() - terrain.lowest();
  return Form::tr(
             "%1 between the lowest and the highest of %2 heights. Beyond them the ground is taken to be "
             "as high as at the nearest place that is known.")
      .arg(QString::fromStdString(print_quantity(Quantity::length, range, p.units)))
      .arg(p.site.heights.size());
}

}  // namespace

Form* height_page(Document& document, int index) {
  auto* form = new Form(document);
  form->section(Form::tr("Spot height %1").arg(index + 1));
  form->number(Form::tr("Height"), Quantity::length,
               of_height(
                   index, [](SpotHeight& h) -> double& { return h.height; }, Form::tr("Spot height")));
  form->note([](const Plan&) { return Form::tr("Over one bench mark for the whole lot, any you like."); });
  form->note([index](const Plan& p) { return steepness(p, index); });
  form->section(Form::tr("All spot heights"));
  auto* table = new HeightsTable(document);
  form->wide(table);
  form->on_refresh([table] { table->refresh(); });
  form->end();
  form->refresh();
  return form;
}

}  // namespace underlawn
