// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/heat_legend.h"

#include <QPainter>

#include "plots/chart.h"
#include "window/theme_now.h"

namespace underlawn {

HeatLegend::HeatLegend(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void HeatLegend::set_scale(const HeatScale& scale, UnitSystem units) {
  scale_ = scale;
  units_ = units;
  setAccessibleName(
      tr("Colours from %1 to %2")
          .arg(QString::fromStdString(print_quantity(Quantity::temperature, scale.low, units)),
               QString::fromStdString(print_quantity(Quantity::temperature, scale.high, units))));
  update();
}

void HeatLegend::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const Theme& theme = theme_now();
  QFont small = font();
  small.setPixelSize(11);
  painter.setFont(small);
  const QRect bar(16, 2, width() - 32, 12);
  for (int x = 0; x < bar.width(); ++x)
    painter.fillRect(bar.left() + x, bar.top(), 1, bar.height(),
                     QColor(heat_colour((x + 0.5) / bar.width(), theme.dark)));
  painter.setPen(theme.edge);
  painter.drawRect(bar.adjusted(0, 0, -1, 0));
  painter.setPen(theme.text);
  const ChartAxis axis = quantity_axis({}, Quantity::temperature, units_, scale_.low, scale_.high, 4);
  for (std::size_t i = 0; i < axis.ticks.size(); ++i) {
    const double share = (axis.ticks[i].at - scale_.low) / (scale_.high - scale_.low);
    if (share < -0.01 || share > 1.01) continue;
    const int x = bar.left() + qRound(share * bar.width());
    painter.drawLine(x, bar.bottom(), x, bar.bottom() + 3);
    const QString text = axis.ticks[i].text + (units_ == UnitSystem::us ? "°F" : "°C");
    painter.drawText(QRect(x - 30, bar.bottom() + 3, 60, 15), Qt::AlignHCenter | Qt::AlignTop, text);
  }
}

}  // namespace underlawn
