// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/base_line_mark.h"

#include <QObject>
#include <algorithm>

#include "plan/tie_check.h"
#include "sheets/sheet_type.h"

namespace underlawn::sheet {

namespace {

// m along it: its two corners and every stake that is squared off from it.
std::vector<double> stations(const Site& site, const StakeOut& stakes, const BaseLine& base) {
  std::vector<double> all{0, distance(base.from.at, base.to.at)};
  for (const Tie& tie : stakes.ties)
    if (offset_is_free(site, base, tie.at)) all.push_back(offset_from(base, tie.at).along);
  std::sort(all.begin(), all.end());
  return all;
}

void name_line(PaintContext& on, const BaseLine& base, const QLineF& line) {
  if (!on.options.labels || line.length() < 1) return;
  Label label;
  label.text = QObject::tr("base line %1–%2").arg(text_of(base.from.tag), text_of(base.to.tag));
  label.font = on.font(0.85);
  label.colour = on.look.dimension;
  label.angle = -line.angle();
  while (label.angle <= -90) label.angle += 180;
  while (label.angle > 90) label.angle -= 180;
  label.rank = 6;
  const QPointF out = QPointF(line.dy(), -line.dx()) / line.length() * 0.75 * label.font.pixelSize();
  for (double along : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9})
    for (double side : {1.0, -1.0}) label.places.push_back(line.pointAt(along) + side * out);
  on.labels.add(std::move(label));
}

}  // namespace

void paint_base_line(PaintContext& on) {
  if (on.outcome == nullptr) return;
  const StakeOut& stakes = on.outcome->stake_out;
  const auto base = base_line(on.plan.site, stakes);
  if (!base) return;
  const std::vector<double> along = stations(on.plan.site, stakes, *base);
  const auto at = [&](double metres, double off) { return on.at(point_from_offset(*base, {metres, off})); };
  on.painter.setPen(on.pen(on.look.dimension, 0.6));
  on.painter.drawLine(at(along.front(), 0), at(along.back(), 0));
  const double half = 3 * on.look.line / on.view.scale;
  for (double station : along) on.painter.drawLine(at(station, -half), at(station, half));
  name_line(on, *base, {at(along.front(), 0), at(along.back(), 0)});
}

}  // namespace underlawn::sheet
