// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "window/gesture_rest.h"

class QLabel;

namespace underlawn {

// One number of the headline: large, with what it is under it; pressing it shows how it came about.
class BigNumber;

// What one wants to know at a glance, always in sight: circuits, trench, pipe, excavation, findings.
class Headline : public QWidget {
  Q_OBJECT

 public:
  explicit Headline(Document& document, QWidget* parent = nullptr);
  QString words() const;           // all of it as text
  void show_as_built(bool holds);  // what was dug and does not hold is said too

 signals:
  void trace_asked(const QString& key);
  void findings_asked();
  void as_built_asked();

 private:
  void refresh();
  void show_findings(const Outcome& outcome);

  Document& document_;
  GestureRest gesture_;
  std::vector<BigNumber*> numbers_;
  BigNumber *state_, *built_;
};

}  // namespace underlawn
