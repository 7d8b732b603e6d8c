// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

#include "plots/crew_bars.h"

namespace underlawn {

// The crew's calendar in a panel. The pointer tells of a bar; with the keyboard on it Left and Right walk
// through the tasks in time, Home and End go to the first and last, Esc lets go.
class CrewChart : public QWidget {
  Q_OBJECT

 public:
  explicit CrewChart(QWidget* parent = nullptr);
  void set_calendar(std::shared_ptr<const CrewCalendar> calendar, std::shared_ptr<const DigOrder> order,
                    HandWork hand = {});
  int chosen() const { return chosen_; }  // in CrewCalendar::tasks, -1 none
  QString said() const;                   // of the chosen task; empty for none

 signals:
  void told(const QString& words);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QRectF area() const;
  CrewBarsStyle style() const;
  void choose(int task);
  std::vector<int> in_time() const;  // tasks by their beginning

  std::shared_ptr<const CrewCalendar> calendar_;
  std::shared_ptr<const DigOrder> order_;
  HandWork hand_;
  int chosen_ = -1;
};

}  // namespace underlawn
