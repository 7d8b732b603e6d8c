// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/stays_put.h"

#include <QApplication>
#include <QEvent>
#include <QScrollBar>
#include <QTimer>

namespace underlawn {

StaysPut::StaysPut(QScrollArea* area) : QObject(area), area_(area) {
  area->widget()->installEventFilter(this);
  area->viewport()->installEventFilter(this);
  connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) { look_at(now); });
  connect(area->verticalScrollBar(), &QScrollBar::rangeChanged, this, &StaysPut::pay);
}

void StaysPut::look_at(QWidget* focused) {
  QWidget* page = area_->widget();
  const bool ours = focused != nullptr && page != nullptr && page->isAncestorOf(focused);
  if (focused_) focused_->removeEventFilter(this);
  focused_ = ours ? focused : nullptr;
  if (focused_) focused_->installEventFilter(this);
  owed_ = 0;
  if (ours) y_ = place();
}

int StaysPut::place() const {
  return focused_->mapTo(area_->widget(), QPoint()).y() + area_->mapTo(area_->window(), QPoint()).y();
}

bool StaysPut::eventFilter(QObject* watched, QEvent* event) {
  const auto type = event->type();
  if (watched == focused_) touched_ |= type == QEvent::KeyPress || type == QEvent::MouseButtonPress;
  if (watched == area_->widget() && type == QEvent::Show) touched_ = false;
  if (watched != focused_ && (type == QEvent::LayoutRequest || type == QEvent::Resize)) settle();
  return QObject::eventFilter(watched, event);
}

// The page's layout is done before its events come here, its scroll bar after them.
void StaysPut::settle() {
  if (!focused_ || !area_->widget()->isAncestorOf(focused_)) return;
  const int y = place();
  if (!touched_ && area_->verticalScrollBar()->value() == 0) y_ = y;
  if (y == y_) return;
  owed_ += y - y_;
  y_ = y;
  pay();
  QTimer::singleShot(0, this, [this] {
    settle();
    pay();
    owed_ = 0;
  });
}

void StaysPut::pay() {
  if (owed_ == 0) return;
  QScrollBar* bar = area_->verticalScrollBar();
  const int before = bar->value();
  bar->setValue(before + owed_);
  owed_ -= bar->value() - before;
}

}  // namespace underlawn
