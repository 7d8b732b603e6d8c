// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/support/written.h"

#include <QPaintDevice>
#include <QPaintEngine>

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
  void drawTextItem(const QPointF&, const QTextItem& item) override { heard << item.text(); }
  Type type() const override { return User; }

  QStringList heard;
};

class Page : public QPaintDevice {
 public:
  explicit Page(QSize size) : size_(size) {}
  QPaintEngine* paintEngine() const override { return &engine_; }
  QStringList heard() const { return engine_.heard; }

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

QStringList written_by(const std::function<void(QPainter&)>& paint, QSize size) {
  Page page(size);
  {
    QPainter painter(&page);
    paint(painter);
  }
  return page.heard();
}

}  // namespace underlawn::test
