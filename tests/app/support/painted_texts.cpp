// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/support/painted_texts.h"

#include <QFontMetricsF>
#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "sheets/sheet.h"

namespace underlawn::painted {

namespace {

constexpr double kHair = kSheetUnits / 72 * 0.5;

class Catcher : public QPaintEngine {
 public:
  Catcher() : QPaintEngine(AllFeatures) {}
  bool begin(QPaintDevice*) override { return true; }
  bool end() override { return true; }
  void updateState(const QPaintEngineState&) override {}
  Type type() const override { return User; }
  void drawPixmap(const QRectF& to, const QPixmap&, const QRectF&) override { cover(to); }
  void drawImage(const QRectF& to, const QImage&, const QRectF&, Qt::ImageConversionFlags) override {
    cover(to);
  }
  void drawTextItem(const QPointF& at, const QTextItem& item) override;
  void drawRects(const QRectF* rects, int count) override {
    for (int i = 0; i < count; ++i) fill(path_of(rects[i]));
  }
  void drawPath(const QPainterPath& path) override { fill(path); }
  void drawEllipse(const QRectF& box) override {
    QPainterPath path;
    path.addEllipse(box);
    fill(path);
  }
  void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) override {
    if (mode == PolylineMode) return;
    QPainterPath path;
    path.addPolygon(QPolygonF(QVector<QPointF>(points, points + count)));
    fill(path);
  }
  void drawLines(const QLineF*, int) override {}
  void drawPoints(const QPointF*, int) override {}

  QSizeF page;
  QVector<Text> texts;

 private:
  static QPainterPath path_of(const QRectF& box) {
    QPainterPath path;
    path.addRect(box);
    return path;
  }
  void fill(const QPainterPath& path) {
    const QBrush brush = painter()->brush();
    if (brush.style() == Qt::SolidPattern && brush.isOpaque()) cover(path);
  }
  void cover(const QRectF& box) { cover(path_of(box)); }
  void cover(const QPainterPath& path);
  QRectF room() const;
};

QRectF Catcher::room() const {
  const QRectF whole(QPointF(0, 0), page);
  if (!painter()->hasClipping()) return whole;
  return whole & painter()->combinedTransform().mapRect(painter()->clipBoundingRect());
}

void Catcher::drawTextItem(const QPointF& at, const QTextItem& item) {
  const QString text = item.text();
  if (text.trimmed().isEmpty()) return;
  const QRectF ink = QFontMetricsF(item.font()).tightBoundingRect(text).translated(at);
  // QPolygonF(QRectF) would close it.
  const QPolygonF corners(
      QVector<QPointF>{ink.topLeft(), ink.topRight(), ink.bottomRight(), ink.bottomLeft()});
  const QTransform on_page = painter()->combinedTransform();
  const double points =
      std::sqrt(std::abs(on_page.determinant())) * item.font().pixelSize() * 72 / kSheetUnits;
  texts.push_back({text, on_page.map(corners), points, room()});
}

void Catcher::cover(const QPainterPath& path) {
  const QPainterPath on_page = painter()->combinedTransform().map(path);
  const QRectF box = on_page.boundingRect() & room();
  for (Text& text : texts) {
    const QRectF ink = text.ink.boundingRect();
    if (text.covered || !ink.adjusted(kHair, kHair, -kHair, -kHair).intersects(box)) continue;
    QPainterPath letters;
    letters.addPolygon(text.ink);
    letters.closeSubpath();
    const QRectF common = letters.intersected(on_page).boundingRect() & room();
    text.covered = common.width() > kHair && common.height() > kHair;
  }
}

class Paper : public QPaintDevice {
 public:
  explicit Paper(QSizeF page) { catcher_.page = page; }
  QPaintEngine* paintEngine() const override { return &catcher_; }
  const QVector<Text>& texts() const { return catcher_.texts; }

 protected:
  int metric(PaintDeviceMetric what) const override {
    switch (what) {
      case PdmWidth:
        return static_cast<int>(catcher_.page.width());
      case PdmHeight:
        return static_cast<int>(catcher_.page.height());
      case PdmDpiX:
      case PdmDpiY:
      case PdmPhysicalDpiX:
      case PdmPhysicalDpiY:
        return static_cast<int>(kSheetUnits);
      case PdmDevicePixelRatio:
        return 1;
      case PdmDevicePixelRatioScaled:
        return static_cast<int>(devicePixelRatioFScale());
      default:
        return QPaintDevice::metric(what);
    }
  }

 private:
  mutable Catcher catcher_;
};

struct Span {
  double low, high;
};

Span along(const QPolygonF& shape, QPointF axis) {
  Span span{INFINITY, -INFINITY};
  for (const QPointF& p : shape) {
    const double d = QPointF::dotProduct(p, axis);
    span = {std::min(span.low, d), std::max(span.high, d)};
  }
  return span;
}

}  // namespace

QVector<Text> texts(const Sheet& sheet, int page) {
  Paper paper(sheet.page_size());
  QPainter painter(&paper);
  sheet.paint(painter, page);
  painter.end();
  return paper.texts();
}

double overlap(const QPolygonF& a, const QPolygonF& b) {
  double least = INFINITY;
  for (const QPolygonF* shape : {&a, &b})
    for (int i = 0; i < shape->size(); ++i) {
      const QPointF side = shape->at((i + 1) % shape->size()) - shape->at(i);
      const double length = std::hypot(side.x(), side.y());
      if (length == 0) continue;
      const QPointF axis(-side.y() / length, side.x() / length);
      const Span of_a = along(a, axis), of_b = along(b, axis);
      least = std::min(least, std::min(of_a.high - of_b.low, of_b.high - of_a.low));
    }
  return std::max(0.0, least);
}

}  // namespace underlawn::painted
