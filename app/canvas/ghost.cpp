// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/ghost.h"

#include <QPainter>
#include <QStringList>

namespace underlawn {

namespace {

constexpr double kMargin = 12, kSwatch = 26, kPad = 9;

QPolygonF on_device(const std::vector<Point>& points, const View& view) {
  QPolygonF line;
  for (Point p : points) line << view.to_device(p);
  return line;
}

// The first in long dashes, the second in dashes and dots: told apart without their colours.
QPen dashed(const Look& look, std::size_t which) {
  QPen pen(which == 0 ? look.ghost : look.other_ghost, 2, Qt::CustomDashLine, Qt::FlatCap, Qt::MiterJoin);
  pen.setDashPattern(which == 0 ? QList<qreal>{4, 2} : QList<qreal>{5, 1.5, 1, 1.5});
  return pen;
}

// Light beneath, so that it shows on soil and lawn alike.
template <class Draw>
void twice(QPainter& painter, const Look& look, std::size_t which, const Draw& draw) {
  QColor halo = look.ground;
  halo.setAlpha(200);
  painter.setPen(QPen(halo, 4));
  draw();
  painter.setPen(dashed(look, which));
  draw();
}

QStringList names_of(const std::vector<Ghost>& ghosts) {
  QStringList names = {ghosts.front().now.isEmpty() ? QObject::tr("As it stands") : ghosts.front().now};
  for (const Ghost& g : ghosts) names << g.name;
  if (ghosts.size() > 1)
    for (int i = 1; i < names.size(); ++i) names[i] = QString(QChar('A' + i - 1)) + ": " + names[i];
  return names;
}

void paint_legend(QPainter& painter, const std::vector<Ghost>& ghosts, const View& view, const Look& look) {
  const QFont font = plan_font(look.text_size);
  const QFontMetricsF metrics(font);
  const double most = std::max(80.0, view.size.width() - 2 * kMargin - 3 * kPad - kSwatch - 60);
  QStringList names = names_of(ghosts);
  const double row = metrics.height() + 4;
  double wide = 0;
  for (QString& name : names) {
    name = metrics.elidedText(name, Qt::ElideRight, most);
    wide = std::max(wide, metrics.horizontalAdvance(name));
  }
  const auto rows = static_cast<double>(names.size());
  const QRectF box(kMargin, kMargin, wide + kSwatch + 3 * kPad, rows * row + 2 * kPad);
  painter.setPen(QPen(look.setback, 1));
  painter.setBrush(look.ground);
  painter.drawRoundedRect(box, 6, 6);
  painter.setFont(font);
  for (int i = 0; i < names.size(); ++i) {
    const double y = box.top() + kPad + (i + 0.5) * row;
    const QRectF swatch(box.left() + kPad, y - 4, kSwatch, 8);
    const QColor standing = dim_what_is_drawn(ghosts) ? look.stale : look.trench;
    painter.setPen(i == 0 ? QPen(standing, 1.4) : dashed(look, static_cast<std::size_t>(i - 1)));
    painter.setBrush(i == 0 ? QBrush(look.trench_fill) : QBrush(Qt::NoBrush));
    painter.drawRect(swatch);
    painter.setPen(look.text);
    painter.drawText(QRectF(swatch.right() + kPad, y - row / 2, wide + 2, row),
                     Qt::AlignVCenter | Qt::AlignLeft, names[i]);
  }
}

void paint_one(QPainter& painter, const Ghost& ghost, std::size_t which, const View& view, const Look& look) {
  painter.setBrush(Qt::NoBrush);
  std::vector<Polyline> lines = ghost.layout.header.legs;
  lines.push_back(ghost.layout.run.line);
  for (const Polyline& line : lines)
    twice(painter, look, which, [&] { painter.drawPolyline(on_device(line, view)); });
  QColor tint = which == 0 ? look.ghost : look.other_ghost;
  tint.setAlpha(36);
  painter.setBrush(tint);
  for (const Trench& t : ghost.layout.trenches) {
    const QPolygonF outline = on_device(floor_of(t), view);
    twice(painter, look, which, [&] { painter.drawPolygon(outline); });
  }
}

}  // namespace

void paint_ghosts(QPainter& painter, const std::vector<Ghost>& ghosts, const View& view, const Look& look) {
  if (ghosts.empty()) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  for (std::size_t i = 0; i < ghosts.size(); ++i) paint_one(painter, ghosts[i], i, view, look);
  painter.restore();
}

void paint_ghost_legend(QPainter& painter, const std::vector<Ghost>& ghosts, const View& view,
                        const Look& look) {
  if (ghosts.empty()) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  paint_legend(painter, ghosts, view, look);
  painter.restore();
}

}  // namespace underlawn
