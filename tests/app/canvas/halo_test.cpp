// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/halo.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <cstdlib>

#include "canvas/look.h"

using namespace underlawn;

namespace {

using Paint = void (*)(QPainter&, const Halo&);

QImage painted(Paint paint, double ratio, const QTransform& at) {
  QImage image(QSize(200, 120) * ratio, QImage::Format_RGB32);
  image.setDevicePixelRatio(ratio);
  image.fill(Qt::darkGreen);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setTransform(at);
  paint(painter, {"Oak 12'-6\"", plan_font(15, QFont::Bold), {0.37, 4.2}, Qt::white, 2.4});
  return image;
}

// The rasterizer works in 64ths of a pixel, so that edges may differ by a shade.
constexpr int kShade = 24;

double mean_apart(const QImage& a, const QImage& b) {
  double sum = 0;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x) sum += std::abs(qGreen(a.pixel(x, y)) - qGreen(b.pixel(x, y)));
  return sum / a.width() / a.height();
}

int furthest_apart(const QImage& a, const QImage& b) {
  int most = 0;
  for (int y = 0; y < a.height(); ++y)
    for (int x = 0; x < a.width(); ++x) {
      const QColor p = a.pixelColor(x, y), q = b.pixelColor(x, y);
      most = std::max({most, std::abs(p.red() - q.red()), std::abs(p.green() - q.green()),
                       std::abs(p.blue() - q.blue())});
    }
  return most;
}

}  // namespace

TEST(Halo, AsItIsKeptLooksAsItWasPainted) {
  for (double ratio : {1.0, 2.0})
    for (double angle : {0.0, -90.0, 31.0})
      for (int time = 0; time < 2; ++time) {
        QTransform at;
        at.translate(60.3, 80.71);
        at.rotate(angle);
        const QImage line = painted(stroke_halo, ratio, at);
        ASSERT_GT(furthest_apart(line, painted([](QPainter&, const Halo&) {}, ratio, at)), 100);
        const QImage kept = painted(paint_halo, ratio, at);
        EXPECT_LE(furthest_apart(line, kept), kShade) << ratio << ' ' << angle;
        EXPECT_LE(mean_apart(line, kept), 0.2) << ratio << ' ' << angle;
      }
}

TEST(Halo, AtAnotherPlaceItIsTheSameToThePixel) {
  const QImage first = painted(paint_halo, 1, QTransform::fromTranslate(20, 60));
  const QImage second = painted(paint_halo, 1, QTransform::fromTranslate(43, 60));
  EXPECT_EQ(first.copy(0, 20, 150, 90), second.copy(23, 20, 150, 90));
}
