// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/canvas_card.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include "canvas/canvas.h"
#include "window/theme.h"

namespace underlawn {

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
  const auto stopped = [this] {
    asking_ = false;
    asked_.clear();
    clicked_.clear();
    emit asking_changed();
  };
  canvas_.ask_places({points, words, [this](Point p, double reach) { return caught(p, reach); },
                      [this](const std::vector<Point>& places) {
                        clicked_ = places;
                        emit asking_changed();
                      },
                      [stopped, then](std::vector<Point> places) {
                        stopped();
                        then(std::move(places));
                      },
                      stopped});
  asking_ = true;
  asked_ = words;
  clicked_.clear();
  canvas_.setFocus(Qt::OtherFocusReason);
  emit asking_changed();
}

void CanvasCard::stop_asking() {
  if (asking_) canvas_.set_tool(ToolId::select);
}

Point CanvasCard::caught(Point p, double) const {
  return p;
}

bool CanvasCard::eventFilter(QObject* watched, QEvent* event) {
  if (watched != &canvas_ || !isVisible()) return QFrame::eventFilter(watched, event);
  if (event->type() == QEvent::Resize)
    QMetaObject::invokeMethod(this, &CanvasCard::place, Qt::QueuedConnection);
  if (asking()) return QFrame::eventFilter(watched, event);
  if (event->type() == QEvent::MouseButtonPress) {
    const auto* mouse = static_cast<QMouseEvent*>(event);
    if (mouse->button() == Qt::LeftButton && click(canvas_.view().to_lot(mouse->position()))) return true;
  }
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
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
  canvas_.set_guest([this](QPainter& painter, const View& view) { paint_guest(painter, view); });
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

}  // namespace underlawn
