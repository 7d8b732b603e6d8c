// SPDX-License-Identifier: GPL-3.0-or-later
// One-line fields that keep to the same manners: Enter or leaving commits, Esc takes back, what cannot be is
// said under the field and nothing typed is lost.
#pragma once

#include <QLineEdit>
#include <functional>

#include "base/quantity.h"

class QLabel;

namespace underlawn {

class TypedField : public QWidget {
  Q_OBJECT

 public:
  explicit TypedField(QWidget* parent = nullptr);
  ~TypedField() override;
  // What the field shows when nobody is typing in it.
  void show_text(const QString& text);
  // Takes what was typed; gives what is wrong with it, empty when it was taken.
  void set_taker(std::function<QString(const QString&)> taker) { taker_ = std::move(taker); }
  void set_read_only(bool read_only);
  QLineEdit* edit() const { return edit_; }
  QString wrong() const;  // what is wrong at present

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void finish();
  void say(const QString& wrong);

  QLineEdit* edit_;
  QLabel* wrong_;
  QString shown_;
  std::function<QString(const QString&)> taker_;
};

// A field for a number with its unit: arithmetic, and any unit of the quantity.
class QuantityField : public TypedField {
  Q_OBJECT

 public:
  explicit QuantityField(Quantity quantity, QWidget* parent = nullptr);
  void show_value(double si, UnitSystem units);
  // Judges a number that could be read; gives what is wrong with it, empty when it may be.
  void set_judge(std::function<QString(double)> judge) { judge_ = std::move(judge); }

 signals:
  void entered(double si);

 private:
  QString take(const QString& typed);

  Quantity quantity_;
  UnitSystem units_ = UnitSystem::us;
  double value_ = 0;
  std::function<QString(double)> judge_;
};

}  // namespace underlawn
