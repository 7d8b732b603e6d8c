// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/crew_chart.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <numeric>

#include "window/theme_now.h"

namespace underlawn {

CrewChart::CrewChart(QWidget* parent) : QWidget(parent) {
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Crew calendar"));
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] { update(); });
}

void CrewChart::set_calendar(std::shared_ptr<const CrewCalendar> calendar,
                             std::shared_ptr<const DigOrder> order, HandWork hand) {
  if (calendar == calendar_ && order == order_) return;
  hand_ = std::move(hand);
  calendar_ = order == nullptr ? nullptr : std::move(calendar);
  order_ = std::move(order);
  chosen_ = -1;
  setFixedHeight(
      calendar_ == nullptr ? 0 : static_cast<int>(std::ceil(crew_bars_height(*calendar_, style()) + 12)));
  emit told({});
  update();
}

QRectF CrewChart::area() const {
  return QRectF(rect()).adjusted(6, 6, -6, -6);
}

CrewBarsStyle CrewChart::style() const {
  QFont f = font();
  f.setPixelSize(12);
  CrewBarsStyle s = CrewBarsStyle::on_paper(f, 1);
  const Theme& theme = theme_now();
  s.text = theme.text;
  s.faint = theme.faint;
  s.rule = theme.line;
  s.hand = hand_;
  return s;
}

QString CrewChart::said() const {
  if (calendar_ == nullptr || chosen_ < 0) return {};
  return task_said(calendar_->tasks[static_cast<std::size_t>(chosen_)], *calendar_, *order_);
}

void CrewChart::choose(int task) {
  if (task == chosen_) return;
  chosen_ = task;
  setAccessibleDescription(said());
  emit told(said());
  update();
}

void CrewChart::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const Theme& theme = theme_now();
  painter.fillRect(rect(), theme.paper);
  if (calendar_ != nullptr)
    paint_crew_bars(painter, *calendar_, *order_, area(), style(), chosen_, theme.focus);
  if (!hasFocus()) return;
  painter.setPen(QPen(theme.focus, 2));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
}

void CrewChart::mouseMoveEvent(QMouseEvent* event) {
  if (calendar_ != nullptr) choose(task_at(*calendar_, area(), style(), event->position()));
}

void CrewChart::leaveEvent(QEvent*) {
  if (!hasFocus()) choose(-1);
}

void CrewChart::focusOutEvent(QFocusEvent* event) {
  choose(-1);
  QWidget::focusOutEvent(event);
}

std::vector<int> CrewChart::in_time() const {
  std::vector<int> order(calendar_->tasks.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [this](int a, int b) {
    return calendar_->tasks[static_cast<std::size_t>(a)].begin <
           calendar_->tasks[static_cast<std::size_t>(b)].begin;
  });
  return order;
}

void CrewChart::keyPressEvent(QKeyEvent* event) {
  if (calendar_ == nullptr || calendar_->tasks.empty()) return QWidget::keyPressEvent(event);
  const std::vector<int> order = in_time();
  const int last = static_cast<int>(order.size()) - 1;
  const auto at = std::find(order.begin(), order.end(), chosen_);
  const int now = at == order.end() ? -1 : static_cast<int>(at - order.begin());
  const auto go = [&](int place) { choose(order[static_cast<std::size_t>(std::clamp(place, 0, last))]); };
  switch (event->key()) {
    case Qt::Key_Right:
      return go(now + 1);
    case Qt::Key_Left:
      return go(now < 0 ? last : now - 1);
    case Qt::Key_Home:
      return go(0);
    case Qt::Key_End:
      return go(last);
    case Qt::Key_Escape:
      if (chosen_ >= 0) return choose(-1);
      break;
    default:
      break;
  }
  QWidget::keyPressEvent(event);
}

}  // namespace underlawn
