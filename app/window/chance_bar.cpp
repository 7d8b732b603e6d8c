// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/chance_bar.h"

#include <QPainter>
#include <cmath>

#include "window/theme_now.h"

namespace underlawn {

ChanceBar::ChanceBar(const Chance& chance, QWidget* parent) : QWidget(parent), chance_(chance) {
  setFixedHeight(6 * kGap);
  setAccessibleName(tr("Chance that both limits hold: %1 %").arg(std::lround(100 * chance.share)));
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] { update(); });
}

void ChanceBar::paintEvent(QPaintEvent*) {
  const Theme& theme = theme_now();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF all = QRectF(rect()).adjusted(0.5, kGap + 0.5, -0.5, -kGap - 0.5);
  painter.setPen(theme.edge);
  painter.setBrush(theme.sunken);
  painter.drawRect(all);
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme.grass);
  painter.drawRect(QRectF(all.topLeft(), QSizeF(all.width() * chance_.share, all.height())));
  const double low = all.left() + chance_.low * all.width(), high = all.left() + chance_.high * all.width();
  painter.setPen(QPen(theme.text, 2));
  painter.drawLine(QPointF(low, all.center().y()), QPointF(high, all.center().y()));
  for (double x : {low, high})
    painter.drawLine(QPointF(x, all.top() - kGap), QPointF(x, all.bottom() + kGap));
}

}  // namespace underlawn
