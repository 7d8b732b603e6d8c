// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/overlay.h"

#include <QApplication>
#include <QKeyEvent>

namespace underlawn {

Overlay::Overlay(QWidget* window) : QFrame(window) {
  setObjectName("overlay");
  setFocusPolicy(Qt::StrongFocus);
  hide();
}

void Overlay::open() {
  if (isVisible()) return close_card();
  before_ = QApplication::focusWidget();
  place();
  prepare();
  raise();
  show();
  setFocus(Qt::PopupFocusReason);
  qApp->installEventFilter(this);
}

void Overlay::close_card() {
  qApp->removeEventFilter(this);
  const QWidget* keyboard = QApplication::focusWidget();
  const bool elsewhere = keyboard != nullptr && keyboard != this && !isAncestorOf(keyboard);
  hide();
  if (before_ && !elsewhere) before_->setFocus(Qt::PopupFocusReason);
}

void Overlay::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QFrame::keyPressEvent(event);
  close_card();
}

bool Overlay::eventFilter(QObject* watched, QEvent* event) {
  auto* widget = qobject_cast<QWidget*>(watched);
  if (isVisible() && widget != nullptr) {
    const bool leaves = event->type() == QEvent::MouseButtonPress || event->type() == QEvent::FocusIn;
    if (leaves && widget != this && !isAncestorOf(widget)) close_card();
    if (event->type() == QEvent::Resize && widget == parentWidget()) place();
  }
  return QFrame::eventFilter(watched, event);
}

}  // namespace underlawn
