// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/typed_field.h"

#include <QKeyEvent>
#include <QLabel>
#include <QStyle>
#include <QVBoxLayout>

#include "window/shown_unit.h"

namespace underlawn {

TypedField::TypedField(QWidget* parent) : QWidget(parent), edit_(new QLineEdit), wrong_(new QLabel) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  column->addWidget(edit_);
  column->addWidget(wrong_);
  wrong_->setObjectName("wrong");
  wrong_->setWordWrap(true);
  wrong_->hide();
  setFocusProxy(edit_);
  edit_->installEventFilter(this);
  connect(edit_, &QLineEdit::editingFinished, this, &TypedField::finish);
}

// A line that loses the keyboard because it is being destroyed finishes once more, when the taker is gone
// already.
TypedField::~TypedField() {
  edit_->disconnect(this);
  edit_->removeEventFilter(this);
}

void TypedField::show_text(const QString& text) {
  shown_ = text;
  if (edit_->isModified() && (edit_->hasFocus() || !wrong_->isHidden())) return;  // somebody is typing
  if (edit_->text() == text) return;  // what is marked in it stays marked
  edit_->setText(text);
  edit_->setCursorPosition(0);
}

void TypedField::set_read_only(bool read_only) {
  if (edit_->isReadOnly() == read_only) return;
  edit_->setReadOnly(read_only);
  edit_->style()->unpolish(edit_);
  edit_->style()->polish(edit_);
}

QString TypedField::wrong() const {
  return wrong_->isHidden() ? QString() : wrong_->text();
}

void TypedField::say(const QString& wrong) {
  wrong_->setText(wrong);
  wrong_->setVisible(!wrong.isEmpty());
  edit_->setProperty("wrong", !wrong.isEmpty());
  edit_->setAccessibleDescription(wrong);
  edit_->style()->unpolish(edit_);
  edit_->style()->polish(edit_);
}

void TypedField::finish() {
  if (!edit_->isModified()) return;
  if (edit_->text() == shown_) {
    edit_->setModified(false);
    return say({});
  }
  edit_->setModified(false);  // so that what is taken can be shown again in its own words
  const QString before = edit_->text();
  const QString wrong = taker_ ? taker_(before) : QString();
  if (!wrong.isEmpty()) {
    edit_->setText(before);
    edit_->setModified(true);
  }
  say(wrong);
}

bool TypedField::eventFilter(QObject* watched, QEvent* event) {
  // With nothing typed that is not entered, undo and redo are those of the plan.
  if (event->type() == QEvent::ShortcutOverride && !edit_->isModified()) {
    const auto* pressed = static_cast<QKeyEvent*>(event);
    if (pressed->matches(QKeySequence::Undo) || pressed->matches(QKeySequence::Redo)) {
      event->ignore();
      return true;
    }
  }
  const bool key = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
  if (!key || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Escape || !edit_->isModified())
    return QWidget::eventFilter(watched, event);
  event->accept();
  if (event->type() == QEvent::ShortcutOverride) return true;
  edit_->setText(shown_);
  edit_->selectAll();
  say({});
  return true;
}

QuantityField::QuantityField(Quantity quantity, QWidget* parent) : TypedField(parent), quantity_(quantity) {
  set_taker([this](const QString& typed) { return take(typed); });
}

void QuantityField::show_value(double si, UnitSystem units) {
  units_ = units;
  value_ = si;
  show_text(QString::fromStdString(print_quantity(quantity_, si, units)));
}

QString QuantityField::take(const QString& typed) {
  const auto value = parse_quantity(quantity_, with_shown_unit(quantity_, typed, value_, units_), units_);
  if (!value) return QString::fromStdString(value.error().message());
  if (const QString wrong = judge_ ? judge_(*value) : QString(); !wrong.isEmpty()) return wrong;
  show_value(*value, units_);
  emit entered(*value);
  return {};
}

}  // namespace underlawn
