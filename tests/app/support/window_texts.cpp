// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/support/window_texts.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QPlainTextEdit>
#include <QSpinBox>
#include <QTabWidget>
#include <QTableWidget>
#include <QTextDocument>
#include <QTextEdit>

namespace underlawn {

namespace {

QString without_markup(const QString& text) {
  if (!Qt::mightBeRichText(text)) return text;
  QTextDocument document;
  document.setHtml(text);
  return document.toPlainText();
}

// Arrows of tab bars and the like, which speak by Qt's own catalogue.
bool is_of_qt(const QWidget* widget) {
  const QString name = widget->objectName();
  return name.startsWith("qt_") || name == "ScrollLeftButton" || name == "ScrollRightButton";
}

}  // namespace

void WindowTexts::read(const QString& text, const QString& where) {
  if (text.isEmpty() || seen_.contains(text)) return;
  seen_.insert(text);
  take_(without_markup(text), where);
}

void WindowTexts::read(QWidget* widget, const std::function<bool(const QWidget*)>& leave_out) {
  if (leave_out(widget) || is_of_qt(widget)) return;
  read_one(widget);
  for (QObject* child : widget->children())
    if (auto* inner = qobject_cast<QWidget*>(child)) read(inner, leave_out);
}

void WindowTexts::read_one(QWidget* widget) {
  const QString where = widget->metaObject()->className();
  if (widget->isWindow()) read(widget->windowTitle(), where);
  for (const QString& text : {widget->toolTip(), widget->statusTip(), widget->whatsThis(),
                              widget->accessibleName(), widget->accessibleDescription()})
    read(text, where + " tip or name");
  read_field(widget, where);
  read_list(widget, where);
  read_table(widget, where);
  read_menu(widget, where);
}

void WindowTexts::read_field(QWidget* widget, const QString& where) {
  if (auto* label = qobject_cast<QLabel*>(widget)) read(label->text(), where);
  if (auto* button = qobject_cast<QAbstractButton*>(widget)) read(button->text(), where);
  if (auto* spin = qobject_cast<QSpinBox*>(widget)) read(spin->text(), where);
  if (auto* text = qobject_cast<QTextEdit*>(widget)) read(text->toPlainText(), where);
  if (auto* line = qobject_cast<QLineEdit*>(widget))
    for (const QString& text : {line->text(), line->placeholderText()}) read(text, where);
  if (auto* text = qobject_cast<QPlainTextEdit*>(widget))
    for (const QString& said : {text->toPlainText(), text->placeholderText()}) read(said, where);
}

void WindowTexts::read_list(QWidget* widget, const QString& where) {
  if (auto* box = qobject_cast<QComboBox*>(widget)) {
    read(box->placeholderText(), where);
    for (int i = 0; i < box->count(); ++i) read(box->itemText(i), where);
  }
  if (auto* tabs = qobject_cast<QTabWidget*>(widget))
    for (int i = 0; i < tabs->count(); ++i)
      for (const QString& text : {tabs->tabText(i), tabs->tabToolTip(i)}) read(text, where);
  if (auto* list = qobject_cast<QListWidget*>(widget))
    for (int i = 0; i < list->count(); ++i)
      for (const QString& text : {list->item(i)->text(), list->item(i)->toolTip()}) read(text, where);
}

void WindowTexts::read_table(QWidget* widget, const QString& where) {
  auto* table = qobject_cast<QTableWidget*>(widget);
  if (table == nullptr) return;
  const auto cell = [&](const QTableWidgetItem* item) {
    if (item == nullptr) return;
    read(item->text(), where);
    read(item->toolTip(), where);
  };
  for (int c = 0; c < table->columnCount(); ++c) cell(table->horizontalHeaderItem(c));
  for (int r = 0; r < table->rowCount(); ++r) {
    cell(table->verticalHeaderItem(r));
    for (int c = 0; c < table->columnCount(); ++c) cell(table->item(r, c));
  }
}

void WindowTexts::read_menu(QWidget* widget, const QString& where) {
  if (auto* menu = qobject_cast<QMenu*>(widget)) {
    emit menu->aboutToShow();
    read(menu->title(), where);
  }
  for (const QAction* action : widget->actions())
    for (const QString& text : {action->text(), action->toolTip(), action->statusTip()}) read(text, where);
}

}  // namespace underlawn
