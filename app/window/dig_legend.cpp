// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/dig_legend.h"

#include <QAction>
#include <QEvent>
#include <QPainter>
#include <algorithm>

#include "canvas/canvas.h"
#include "sheets/dig_key.h"

namespace underlawn {

namespace {

constexpr double kPoint = 1.3;                       // px of a point of the sheet
constexpr int kWidth = 330, kEdge = 8, kAbove = 46;  // px; above the bar of the scale
const double kScale = kPoint / sheet::pt(1);

}  // namespace

DigLegend::DigLegend(Document& document, Canvas& canvas, QAction& shown)
    : QWidget(&canvas), document_(document), canvas_(canvas), shown_(shown) {
  setObjectName("dig_legend");
  setAttribute(Qt::WA_TransparentForMouseEvents);
  canvas.installEventFilter(this);
  connect(&shown, &QAction::toggled, this, &DigLegend::follow);
  connect(&canvas, &Canvas::view_changed, this, &DigLegend::place);
  connect(&document, &Document::outcome_changed, this, &DigLegend::follow);
  follow();
}

void DigLegend::follow() {
  const Outcome* outcome = document_.outcome();
  signs_.clear();
  const Plan& plan = document_.plan();
  if (shown_.isChecked() && outcome != nullptr && outcome->order != nullptr && !outcome->order->steps.empty())
    signs_ = sheet::dig_signs(*outcome->order, plan.dig.excavator.width, plan.units);
  QStringList words;
  for (const sheet::Sign& sign : signs_) words << sign.text;
  setAccessibleName(words.join("; "));
  setVisible(!signs_.empty());
  place();
  update();
}

void DigLegend::place() {
  if (signs_.empty()) return;
  const double high = kScale * sheet::signs_height(signs_, (kWidth - 2 * kEdge) / kScale);
  resize(kWidth, static_cast<int>(high) + 2 * kEdge);
  // On that side of the lot which has more room.
  double low = canvas_.width(), high_x = 0;
  for (const LotCorner& corner : document_.plan().site.lot) {
    const double x = canvas_.view().to_device(corner.at).x();
    low = std::min(low, x);
    high_x = std::max(high_x, x);
  }
  const bool right = canvas_.width() - high_x > low;
  move(right ? canvas_.width() - width() - kEdge : kEdge,
       canvas_.height() - height() - (right ? kEdge : kAbove));
}

void DigLegend::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter.setPen(QPen(sheet::kRule, 1));
  painter.setBrush(QColor(255, 255, 255, 235));  // paper in either theme, as the sheet
  painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
  painter.translate(kEdge, kEdge);
  painter.scale(kScale, kScale);
  PaintOptions options;
  options.dig = true;
  options.sheet = true;
  sheet::paint_signs(painter, QRectF(0, 0, (width() - 2 * kEdge) / kScale, height() / kScale), signs_,
                     options);
}

bool DigLegend::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Resize) place();
  return QWidget::eventFilter(watched, event);
}

}  // namespace underlawn
