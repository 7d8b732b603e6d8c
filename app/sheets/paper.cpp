// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/paper.h"

#include <cmath>

namespace underlawn::sheet {

QPageSize page_size(Paper paper) {
  switch (paper) {
    case Paper::letter:
      return QPageSize(QPageSize::Letter);
    case Paper::tabloid:
      return QPageSize(QPageSize::Tabloid);
    case Paper::a4:
      return QPageSize(QPageSize::A4);
    case Paper::a3:
      return QPageSize(QPageSize::A3);
  }
  return QPageSize(QPageSize::Letter);
}

QSizeF size_of(Paper paper, bool landscape) {
  // In millimetres or inches as the paper is defined: Qt's own points are rounded.
  const QPageSize page = page_size(paper);
  const bool metric = paper == Paper::a4 || paper == Paper::a3;
  const QSizeF own = page.size(metric ? QPageSize::Millimeter : QPageSize::Inch);
  const QSizeF size = own * (metric ? kSheetUnits / 25.4 : kSheetUnits);
  const bool lies = size.width() > size.height();
  return lies == landscape ? size : size.transposed();
}

const std::vector<int>& usual_scales(UnitSystem units) {
  static const std::vector<int> us = {120,  240,  360,  480,   600,   720,   960,    1200,
                                      2400, 3600, 6000, 12000, 24000, 60000, 120000, 240000};
  // 1:300, 1:400 and 1:750 stand on scale rulers too, and spare a lot a drawing half the size.
  static const std::vector<int> metric = {100,  200,  250,  300,   400,   500,   750,    1000,
                                          2000, 2500, 5000, 10000, 20000, 50000, 100000, 200000};
  return units == UnitSystem::us ? us : metric;
}

QString scale_text(int scale, UnitSystem units) {
  const QString ratio = "1:" + QString::number(scale);
  if (units == UnitSystem::metric || scale % 12 != 0) return ratio;
  return QString("1\" = %1' (%2)").arg(scale / 12).arg(ratio);
}

double scale_bar_length(int scale, UnitSystem units) {
  const double unit = units == UnitSystem::us ? 0.3048 : 1;
  const double about = 0.06 * scale / unit;  // 60 mm on paper
  const double decade = std::pow(10, std::floor(std::log10(about)));
  double best = decade;
  for (double step : {1.0, 2.0, 4.0, 5.0, 6.0, 8.0, 10.0})
    if (std::abs(step * decade - about) < std::abs(best - about)) best = step * decade;
  return best * unit;
}

}  // namespace underlawn::sheet
