// SPDX-License-Identifier: GPL-3.0-or-later
// A column of labelled fields, each bound to one thing of the plan. What a field enters is one entry of the
// history.
#pragma once

#include <QWidget>
#include <functional>
#include <type_traits>
#include <vector>

#include "window/document.h"
#include "window/typed_field.h"

class QGridLayout;
class QLabel;
class QComboBox;
class QCheckBox;

namespace underlawn {

// What is wrong with `after` that was not wrong with `before`; empty when nothing.
QString new_trouble(const Plan& before, const Plan& after);

// One entry of the history, unless that would make something wrong: then what is wrong, and nothing is done.
QString enter_change(Document& document, const QString& what, const std::function<void(Plan&)>& set);

// "Two pipes" of "two pipes".
QString capital(const QString& words);
QString printed(Quantity quantity, double value, const Plan& plan);  // in the plan's units

// A box to choose from; turning the wheel over it scrolls what it is in, instead of choosing.
QComboBox* choice_box(const QStringList& names);

class Form : public QWidget {
  Q_OBJECT

 public:
  template <class T>
  struct Bound {
    std::function<T(const Plan&)> get;
    std::function<void(Plan&, T)> set;
    QString what;  // the entry in the history: "Trench depth"
  };

  explicit Form(Document& document, QWidget* parent = nullptr);

  void section(const QString& title);
  QuantityField* number(const QString& label, Quantity quantity, Bound<double> bound);
  TypedField* text(const QString& label, Bound<QString> bound);
  QComboBox* choice(const QString& label, const QStringList& names, Bound<int> bound);
  QCheckBox* check(const QString& label, Bound<bool> bound);
  // Small text under the row above; made anew with every change of the plan.
  QLabel* note(std::function<QString(const Plan&)> words);
  // Any widget, across both columns or right of a label.
  void wide(QWidget* widget);
  void row(const QString& label, QWidget* widget);
  // The last row is there only for plans that it applies to.
  void only_when(std::function<bool(const Plan&)> applies);
  // A small button at the end of the last row.
  void beside(QWidget* button);
  // Called with every change of the plan.
  void on_refresh(std::function<void()> then) { refreshers_.push_back(std::move(then)); }
  void end();  // takes up the room that is left

  // Called with every new outcome too, for rows that show what was solved.
  void follow_outcome();
  // Refreshes now, or when it is next looked at: a form behind another tab costs a drag nothing.
  void refresh_when_seen();
  void refresh();
  QWidget* first_field() const { return first_; }

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  template <class T>
  void enter(const Bound<T>& bound, T value);
  template <class T>
  QString judge(const Bound<T>& bound, T value) const;
  void add_row(const QString& label, QWidget* field);

  Document& document_;
  QGridLayout* grid_;
  QWidget* first_ = nullptr;
  int rows_ = 0;
  bool old_ = false;  // what it shows, since it was last seen
  std::vector<std::function<void()>> refreshers_;
};

// What a chain of members leads to, as a number or, with T = int, a choice:
// bound_to(tr("Tail"), &Plan::flow, &FlowWishes::tail).
template <class T = double, class... Members>
Form::Bound<T> bound_to(const QString& what, Members... members) {
  return {[=](const Plan& p) { return static_cast<T>((p.*....*members)); },
          [=](Plan& p, T value) {
            auto& there = (p.*....*members);
            there = static_cast<std::remove_reference_t<decltype(there)>>(value);
          },
          what};
}

}  // namespace underlawn
