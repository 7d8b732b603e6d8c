// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/canvas_card.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <utility>

#include "canvas/canvas.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr double kCatch = 12;  // px

}  // namespace

CanvasCard::CanvasCard(Canvas& canvas, int width) : QFrame(&canvas), canvas_(canvas) {
  setObjectName("card");
  setCursor(Qt::ArrowCursor);
  setFixedWidth(width);
  setFocusPolicy(Qt::TabFocus);
  canvas.installEventFilter(this);
  hide();
}

CanvasCard::~CanvasCard() = default;

void CanvasCard::close_card() {
  stop_asking();
  hide();
  canvas_.setFocus(Qt::OtherFocusReason);
  emit closed();
}

void CanvasCard::ask_points(int points, const QString& words, std::function<void(std::vector<Point>)> then) {
  wanted_ = points;
  asked_ = words;
  then_ = std::move(then);
  clicked_.clear();
  canvas_.setFocus(Qt::OtherFocusReason);
  emit asking_changed();
  canvas_.update();
}

void CanvasCard::stop_asking() {
  wanted_ = 0;
  asked_.clear();
  clicked_.clear();
  then_ = {};
  emit asking_changed();
  canvas_.update();
}

Point CanvasCard::caught(Point p, double) const {
  return p;
}

bool CanvasCard::take_press(QPointF at) {
  const Point raw = canvas_.view().to_lot(at);
  if (!asking()) return click(raw);
  clicked_.push_back(caught(raw, kCatch / canvas_.view().scale));
  canvas_.update();
  if (static_cast<int>(clicked_.size()) < wanted_) return true;
  const auto then = std::exchange(then_, {});
  const auto points = std::exchange(clicked_, {});
  stop_asking();
  then(points);
  return true;
}

bool CanvasCard::eventFilter(QObject* watched, QEvent* event) {
  if (watched != &canvas_ || !isVisible()) return QFrame::eventFilter(watched, event);
  if (event->type() == QEvent::Resize)
    QMetaObject::invokeMethod(this, &CanvasCard::place, Qt::QueuedConnection);
  if (event->type() == QEvent::MouseMove && asking()) {
    pointer_ = canvas_.view().to_lot(static_cast<QMouseEvent*>(event)->position());
    canvas_.update();
  }
  if (event->type() == QEvent::MouseButtonPress) {
    const auto* mouse = static_cast<QMouseEvent*>(event);
    if (mouse->button() == Qt::LeftButton && take_press(mouse->position())) return true;
  }
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    if (asking())
      stop_asking();
    else
      close_card();
    return true;
  }
  return QFrame::eventFilter(watched, event);
}

void CanvasCard::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QFrame::keyPressEvent(event);
  if (asking())
    stop_asking();
  else
    close_card();
}

void CanvasCard::showEvent(QShowEvent* event) {
  QFrame::showEvent(event);
  canvas_.set_guest([this](QPainter& painter, const View& view) {
    paint_guest(painter, view);
    paint_clicked(painter, view);
  });
  place();
}

void CanvasCard::hideEvent(QHideEvent* event) {
  QFrame::hideEvent(event);
  canvas_.set_guest({});
}

void CanvasCard::place() {
  constexpr int kMargin = 3 * kGap;
  setMaximumHeight(std::max(120, canvas_.height() - 2 * kMargin));
  adjustSize();
  move(canvas_.width() - width() - kMargin, kMargin);
  raise();
}

void CanvasCard::paint_clicked(QPainter& painter, const View& view) const {
  if (!asking()) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(canvas_.look().selection, 2));
  painter.setBrush(Qt::NoBrush);
  std::vector<Point> marks = clicked_;
  if (pointer_) marks.push_back(caught(*pointer_, kCatch / view.scale));
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const QPointF at = view.to_device(marks[i]);
    painter.drawEllipse(at, 5, 5);
    painter.drawLine(at - QPointF(10, 0), at + QPointF(10, 0));
    painter.drawLine(at - QPointF(0, 10), at + QPointF(0, 10));
    if (i > 0) painter.drawLine(view.to_device(marks[i - 1]), at);
  }
  painter.restore();
}

}  // namespace underlawn
