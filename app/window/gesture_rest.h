// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing that turns pale and strong again with every step of a drag flickers. While a gesture goes on,
// what follows from the plan stays pale, answered or not, until the pointer has rested for a moment.
#pragma once

#include <QElapsedTimer>
#include <QTimer>

#include "window/document.h"

namespace underlawn {

class GestureRest : public QObject {
  Q_OBJECT

 public:
  explicit GestureRest(const Document& document, QObject* parent = nullptr);

  // What follows from the plan is not, or not yet, to be shown as settled.
  bool unsettled() const { return document_.stale() || (document_.previewing() && moved_.isActive()); }

 signals:
  void rested();  // nothing moved for a moment of a gesture that goes on

 private:
  const Document& document_;
  QTimer moved_;
  QElapsedTimer since_;  // the last move of this gesture
};

}  // namespace underlawn
