// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/heat_colours.h"

#include <QColor>
#include <algorithm>
#include <cmath>

namespace underlawn {

QRgb heat_colour(double share, bool dark) {
  static constexpr int kStops = 5;
  static const QColor light[kStops] = {"#3a6fb0", "#9cc3e0", "#f6f0d8", "#efb765", "#c4622d"};
  static const QColor night[kStops] = {"#123f80", "#1d4a66", "#2e2b22", "#6b4a12", "#8a3208"};
  const double place = std::clamp(std::isfinite(share) ? share : 0.0, 0.0, 1.0) * (kStops - 1);
  const int at = std::min(static_cast<int>(place), kStops - 2);
  const QColor &a = (dark ? night : light)[at], &b = (dark ? night : light)[at + 1];
  const double s = place - at;
  const auto mix = [s](int from, int to) { return static_cast<int>(std::lround(from + s * (to - from))); };
  return qRgb(mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue()));
}

QImage heat_image(const GroundGrid& grid, const KernelTable& heat, double undisturbed, const HeatScale& scale,
                  bool dark) {
  QImage image(grid.columns, grid.rows, QImage::Format_RGB32);
  for (int r = 0; r < grid.rows; ++r)
    for (int c = 0; c < grid.columns; ++c) {
      const KernelTable& reach = grid.reach[static_cast<std::size_t>(r * grid.columns + c)];
      const double t = undisturbed - ground_fall(reach, heat);
      image.setPixel(c, r, heat_colour((t - scale.low) / (scale.high - scale.low), dark));
    }
  return image;
}

}  // namespace underlawn
