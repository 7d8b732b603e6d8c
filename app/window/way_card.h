// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

#include "plan/ways.h"

class QPushButton;

namespace underlawn {

// One way to lay the loop: its sentence, what it comes to, and a button that takes it. Looked at with the
// pointer or the keyboard it says so.
class WayCard : public QFrame {
  Q_OBJECT

 public:
  // `own`: the plan's, that it is compared with; the same way for the plan's own card.
  WayCard(const Way& way, const Way& own, const Plan& plan, QWidget* parent = nullptr);

  enum class State { open, drawn, old };  // can be taken; is the plan's now; was found for another plan
  void set_state(State state);
  void set_chosen(bool chosen);
  void set_letter(const QString& letter);  // "A" or "B" while it is compared, else empty

 signals:
  void looked_at(bool now);  // the pointer came or went
  void chosen();             // by click, key or focus
  void taken();
  void compared(bool on);

 protected:
  void enterEvent(QEnterEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;

 private:
  QPushButton *take_, *compare_;
};

}  // namespace underlawn
