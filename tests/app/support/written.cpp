// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/support/written.h"

#include <QFontMetricsF>
#include <QPaintDevice>
#include <QPaintEngine>
#include <algorithm>
#include <cmath>

namespace underlawn::test {

namespace {

class Listener : public QPaintEngine {
 public:
  Listener() : QPaintEngine(AllFeatures) {}
  bool begin(QPaintDevice*) override { return true; }
  bool end() override { return true; }
  void updateState(const QPaintEngineState&) override {}
  void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
  void drawImage(const QRectF&, const QImage&, const QRectF&, Qt::ImageConversionFlags) override {}
  void drawPath(const QPainterPath&) override {}
  void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
  void drawTextItem(const QPointF& at, const QTextItem& item) override {
    const QTransform to_page = painter()->combinedTransform();
    const QRectF ink = QFontMetricsF(item.font()).tightBoundingRect(item.text()).translated(at);
    const QRectF seen = painter()->hasClipping() ? to_page.mapRect(painter()->clipBoundingRect()) : QRectF();
    heard.push_back({item.text(), to_page.map(QPolygonF(ink)), seen});
  }
  Type type() const override { return User; }

  std::vector<Written> heard;
};

class Page : public QPaintDevice {
 public:
  explicit Page(QSize size) : size_(size) {}
  QPaintEngine* paintEngine() const override { return &engine_; }
  std::vector<Written> heard() const { return engine_.heard; }

 protected:
  int metric(PaintDeviceMetric what) const override {
    switch (what) {
      case PdmWidth:
        return size_.width();
      case PdmHeight:
        return size_.height();
      case PdmDepth:
        return 32;
      case PdmDevicePixelRatio:
        return 1;
      case PdmDevicePixelRatioScaled:
        return static_cast<int>(devicePixelRatioFScale());
      case PdmNumColors:
        return 1 << 24;
      default:
        return 96;
    }
  }

 private:
  QSize size_;
  mutable Listener engine_;
};

}  // namespace

std::vector<Written> all_written_by(const std::function<void(QPainter&)>& paint, QSize size) {
  Page page(size);
  {
    QPainter painter(&page);
    paint(painter);
  }
  return page.heard();
}

QStringList written_by(const std::function<void(QPainter&)>& paint, QSize size) {
  QStringList texts;
  for (const Written& written : all_written_by(paint, size)) texts << written.text;
  return texts;
}

namespace {

// Of the gap between the two along an axis; what lies in each other is less than 0.
double gap_along(const QPolygonF& a, const QPolygonF& b, QPointF axis) {
  const auto span = [&](const QPolygonF& shape) {
    double low = INFINITY, high = -INFINITY;
    for (const QPointF& p : shape) {
      low = std::min(low, QPointF::dotProduct(p, axis));
      high = std::max(high, QPointF::dotProduct(p, axis));
    }
    return std::pair(low, high);
  };
  const auto [a_low, a_high] = span(a);
  const auto [b_low, b_high] = span(b);
  return std::max(a_low, b_low) - std::min(a_high, b_high);
}

}  // namespace

double overlap(const Written& a, const Written& b) {
  double gap = -INFINITY;
  for (const QPolygonF* shape : {&a.ink, &b.ink})
    for (int i = 0; i + 1 < shape->size(); ++i) {
      const QPointF side = shape->at(i + 1) - shape->at(i);
      const double length = std::hypot(side.x(), side.y());
      if (length > 0) gap = std::max(gap, gap_along(a.ink, b.ink, {-side.y() / length, side.x() / length}));
    }
  return std::isfinite(gap) ? std::max(0.0, -gap) : 0;
}

}  // namespace underlawn::test
