// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/halo.h"

#include <QCache>
#include <QImage>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <cmath>

namespace underlawn {

namespace {

constexpr int kMostKept = 4 << 20;    // bytes
constexpr int kMostPixels = 1 << 18;  // of one image: larger ones are painted as they are

QPainterPath letters_of(const Halo& halo) {
  QPainterPath letters;
  letters.addText(halo.base, halo.font, halo.text);
  return letters;
}

QPen pen_of(const Halo& halo) {
  return {halo.colour, 2 * halo.width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

// All that the pixels follow from: where in a pixel it lies, not in which.
struct HaloLook {
  QString text, font;
  QRgb colour = 0;
  double width = 0, m11 = 1, m12 = 0, m21 = 0, m22 = 1, dx = 0, dy = 0;
  bool operator==(const HaloLook&) const = default;
};

size_t qHash(const HaloLook& l, size_t seed = 0) {
  return qHashMulti(seed, l.text, l.font, l.colour, l.width, l.m11, l.m12, l.m21, l.m22, l.dx, l.dy);
}

struct Kept {
  QImage image;
  QPoint at;  // of its corner, from the pixel that the text begins in
};

// What a text at the painter's origin looks like, and the pixel it begins in.
struct Placed {
  HaloLook look;
  QPoint pixel;
};

Placed placed(const QPainter& painter, const Halo& halo) {
  const QTransform t = painter.deviceTransform();
  const QPointF at = t.map(halo.base);
  const QPoint pixel(static_cast<int>(std::floor(at.x())), static_cast<int>(std::floor(at.y())));
  const QPointF in = at - pixel;
  return {{halo.text, halo.font.key(), halo.colour.rgba(), halo.width, t.m11(), t.m12(), t.m21(), t.m22(),
           in.x(), in.y()},
          pixel};
}

Kept* made(const Halo& halo, const HaloLook& look) {
  Halo alone = halo;
  alone.base = {};
  const QTransform turn(look.m11, look.m12, look.m21, look.m22, look.dx, look.dy);
  const QPainterPath letters = letters_of(alone);
  const double reach = halo.width + 1;
  const QRect box = turn.mapRect(letters.boundingRect().adjusted(-reach, -reach, reach, reach))
                        .toAlignedRect()
                        .adjusted(-1, -1, 1, 1);
  if (static_cast<qint64>(box.width()) * box.height() > kMostPixels) return nullptr;
  QImage image(box.size(), QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::transparent);
  {
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setTransform(turn * QTransform::fromTranslate(-box.x(), -box.y()));
    painter.strokePath(letters, pen_of(alone));
  }
  // An image that was painted on keeps its paint engine, which is many times its size; a copy has none.
  return new Kept{image.copy(), box.topLeft()};
}

bool on_screen(const QPainter& painter) {
  const QPaintEngine* engine = painter.paintEngine();
  return engine != nullptr && engine->type() == QPaintEngine::Raster &&
         painter.compositionMode() == QPainter::CompositionMode_SourceOver && painter.opacity() == 1 &&
         (painter.renderHints() & QPainter::Antialiasing) && painter.deviceTransform().isAffine();
}

}  // namespace

void stroke_halo(QPainter& painter, const Halo& halo) {
  painter.strokePath(letters_of(halo), pen_of(halo));
}

void paint_halo(QPainter& painter, const Halo& halo) {
  if (!on_screen(painter)) return stroke_halo(painter, halo);
  static thread_local QCache<HaloLook, Kept> all(kMostKept);
  const Placed p = placed(painter, halo);
  Kept* kept = all.object(p.look);
  if (kept == nullptr) {
    kept = made(halo, p.look);
    if (kept == nullptr) return stroke_halo(painter, halo);
    const auto bytes = static_cast<int>(kept->image.sizeInBytes()) + 256;
    if (!all.insert(p.look, kept, bytes)) return stroke_halo(painter, halo);
  }
  painter.save();
  painter.resetTransform();
  const QRectF on_device(QRect(p.pixel + kept->at, kept->image.size()));
  painter.drawImage(painter.deviceTransform().inverted().mapRect(on_device), kept->image);
  painter.restore();
}

}  // namespace underlawn
