// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <algorithm>
#include <utility>

#include "plan/plan_troubles.h"
#include "window/theme.h"

namespace underlawn {

QString new_trouble(const Plan& before, const Plan& after) {
  const auto old = plan_troubles(before);
  for (const Trouble& t : plan_troubles(after))
    if (std::find(old.begin(), old.end(), t) == old.end()) return QString::fromStdString(t.message());
  return {};
}

QString enter_change(Document& document, const QString& what, const std::function<void(Plan&)>& set) {
  Plan plan = document.committed();
  set(plan);
  const QString wrong = new_trouble(document.committed(), plan);
  if (wrong.isEmpty()) document.commit(std::move(plan), what);
  return wrong;
}

QString capital(const QString& words) {
  return words.left(1).toUpper() + words.mid(1);
}

QString printed(Quantity quantity, double value, const Plan& plan) {
  return QString::fromStdString(print_quantity(quantity, value, plan.units));
}

namespace {

// A wheel turned over a box and the keys that turn a page scroll the page and change nothing.
class ScrollPasser : public QObject {
 public:
  using QObject::QObject;
  bool eventFilter(QObject*, QEvent* event) override {
    if (event->type() != QEvent::Wheel && !turns_page(event)) return false;
    event->ignore();
    return true;
  }

 private:
  static bool turns_page(const QEvent* event) {
    if (event->type() != QEvent::KeyPress) return false;
    const int key = static_cast<const QKeyEvent*>(event)->key();
    return key == Qt::Key_PageUp || key == Qt::Key_PageDown;
  }
};

}  // namespace

QComboBox* choice_box(const QStringList& names) {
  auto* box = new QComboBox;
  box->addItems(names);
  box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  box->setMinimumContentsLength(6);
  box->setFocusPolicy(Qt::StrongFocus);
  box->installEventFilter(new ScrollPasser(box));
  return box;
}

Form::Form(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), grid_(new QGridLayout(this)) {
  setObjectName("page");
  grid_->setContentsMargins(4 * kGap, 3 * kGap, 4 * kGap, 4 * kGap);
  grid_->setHorizontalSpacing(3 * kGap);
  grid_->setVerticalSpacing(2 * kGap);
  grid_->setColumnStretch(0, 5);
  grid_->setColumnStretch(1, 6);
  connect(&document, &Document::plan_changed, this, &Form::refresh_when_seen);
}

void Form::section(const QString& title) {
  auto* label = new QLabel(title);
  label->setObjectName("section");
  wide(label);
}

void Form::add_row(const QString& label, QWidget* field) {
  auto* name = new QLabel(label);
  name->setWordWrap(true);
  name->setMinimumWidth(60);
  name->setBuddy(field);
  field->setAccessibleName(label);
  if (field->focusProxy() != nullptr) field->focusProxy()->setAccessibleName(label);
  grid_->addWidget(name, rows_, 0, Qt::AlignTop);
  name->setContentsMargins(0, 6, 0, 0);
  grid_->addWidget(field, rows_++, 1, 1, 2);
  if (first_ == nullptr) first_ = field;
}

void Form::row(const QString& label, QWidget* widget) {
  add_row(label, widget);
}

void Form::wide(QWidget* widget) {
  grid_->addWidget(widget, rows_++, 0, 1, 3);
}

void Form::beside(QWidget* button) {
  QWidget* field = grid_->itemAtPosition(rows_ - 1, 1)->widget();
  grid_->removeWidget(field);
  grid_->addWidget(field, rows_ - 1, 1);
  grid_->addWidget(button, rows_ - 1, 2, Qt::AlignTop);
}

void Form::only_when(std::function<bool(const Plan&)> applies) {
  on_refresh([this, row = rows_ - 1, applies = std::move(applies)] {
    const bool shown = applies(document_.plan());
    for (int column = 0; column < grid_->columnCount(); ++column)
      if (QLayoutItem* item = grid_->itemAtPosition(row, column);
          item != nullptr && item->widget() != nullptr)
        item->widget()->setVisible(shown);
  });
}

void Form::end() {
  grid_->setRowStretch(rows_, 1);
}

template <class T>
void Form::enter(const Bound<T>& bound, T value) {
  Plan plan = document_.committed();
  bound.set(plan, value);
  document_.commit(std::move(plan), bound.what);
}

template <class T>
QString Form::judge(const Bound<T>& bound, T value) const {
  Plan plan = document_.committed();
  bound.set(plan, value);
  return new_trouble(document_.committed(), plan);
}

QuantityField* Form::number(const QString& label, Quantity quantity, Bound<double> bound) {
  auto* field = new QuantityField(quantity);
  field->set_judge([this, bound](double v) { return judge(bound, v); });
  connect(field, &QuantityField::entered, this, [this, bound](double v) { enter(bound, v); });
  on_refresh(
      [this, field, bound] { field->show_value(bound.get(document_.plan()), document_.plan().units); });
  add_row(label, field);
  return field;
}

TypedField* Form::text(const QString& label, Bound<QString> bound) {
  auto* field = new TypedField;
  field->set_taker([this, bound](const QString& typed) {
    if (const QString wrong = judge(bound, typed); !wrong.isEmpty()) return wrong;
    enter(bound, typed);
    return QString();
  });
  on_refresh([this, field, bound] { field->show_text(bound.get(document_.plan())); });
  add_row(label, field);
  return field;
}

QComboBox* Form::choice(const QString& label, const QStringList& names, Bound<int> bound) {
  auto* box = choice_box(names);
  connect(box, &QComboBox::activated, this, [this, bound](int i) { enter(bound, i); });
  on_refresh([this, box, bound] { box->setCurrentIndex(bound.get(document_.plan())); });
  add_row(label, box);
  return box;
}

QCheckBox* Form::check(const QString& label, Bound<bool> bound) {
  auto* box = new QCheckBox(label);
  connect(box, &QCheckBox::clicked, this, [this, bound](bool on) { enter(bound, on); });
  on_refresh([this, box, bound] { box->setChecked(bound.get(document_.plan())); });
  wide(box);
  if (first_ == nullptr) first_ = box;
  return box;
}

QLabel* Form::note(std::function<QString(const Plan&)> words) {
  auto* label = new QLabel;
  label->setObjectName("source");
  label->setWordWrap(true);
  on_refresh([this, label, words = std::move(words)] {
    const QString said = words(document_.plan());
    label->setText(said);
    label->setVisible(!said.isEmpty());
  });
  wide(label);
  return label;
}

// The document tells of its outcome whenever it tells of its plan, so the plan is not listened to twice.
void Form::follow_outcome() {
  disconnect(&document_, &Document::plan_changed, this, &Form::refresh_when_seen);
  connect(&document_, &Document::outcome_changed, this, &Form::refresh_when_seen);
}

// A form whose window is not shown has nobody to wait for.
void Form::refresh_when_seen() {
  if (isVisible() || !window()->isVisible())
    refresh();
  else
    old_ = true;
}

void Form::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (std::exchange(old_, false)) refresh();
}

void Form::refresh() {
  for (const auto& refresher : refreshers_) refresher();
}

}  // namespace underlawn
