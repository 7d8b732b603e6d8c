// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "window/actions.h"
#include "window/overlay.h"
#include "window/theme.h"

namespace underlawn {

Finder::Finder(QWidget* window, Actions& actions)
    : Overlay(window), actions_(actions), field_(new QLineEdit), list_(new QListWidget) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3 * kGap, 3 * kGap, 3 * kGap, 3 * kGap);
  column->setSpacing(2 * kGap);
  field_->setPlaceholderText(tr("What do you want to do?"));
  field_->setAccessibleName(tr("Find a command"));
  list_->setFocusPolicy(Qt::NoFocus);
  list_->setWordWrap(true);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setResizeMode(QListView::Adjust);
  column->addWidget(field_);
  column->addWidget(list_);
  setFocusProxy(field_);
  field_->installEventFilter(this);
  connect(field_, &QLineEdit::textChanged, this, &Finder::refresh);
  connect(list_, &QListWidget::itemClicked, this, &Finder::run);
}

void Finder::place() {
  const int width = std::min(560, parentWidget()->width() - 80);
  setGeometry((parentWidget()->width() - width) / 2, 70, width,
              std::min(440, parentWidget()->height() - 140));
}

void Finder::prepare() {
  field_->clear();
  refresh();
}

void Finder::refresh() {
  list_->clear();
  for (const Command* c : find_commands(field_->text())) {
    const QString key = key_words(*c);
    auto* item =
        new QListWidgetItem(title_of(*c) + (key.isEmpty() ? QString() : "   " + key) + "\n" + help_of(*c));
    item->setData(Qt::UserRole, QString::fromUtf8(c->id));
    if (!actions_.action(c->id)->isEnabled()) item->setFlags(Qt::NoItemFlags);
    list_->addItem(item);
  }
  if (list_->count() == 0) {
    auto* none = new QListWidgetItem(tr("No command is found. Try another word, or fewer letters of it."));
    none->setFlags(Qt::NoItemFlags);
    list_->addItem(none);
  }
  list_->setCurrentRow(0);
  place();
}

void Finder::run() {
  const QListWidgetItem* item = list_->currentItem();
  if (item == nullptr || !(item->flags() & Qt::ItemIsEnabled)) return;
  const std::string id = item->data(Qt::UserRole).toString().toStdString();
  close_card();
  actions_.action(id)->trigger();
}

bool Finder::eventFilter(QObject* watched, QEvent* event) {
  if (watched == field_ && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter) return run(), true;
    if (key == Qt::Key_Down || key == Qt::Key_Up || key == Qt::Key_PageDown || key == Qt::Key_PageUp) {
      QApplication::sendEvent(list_, event);
      return true;
    }
    if (key == Qt::Key_Escape) return close_card(), true;
  }
  return Overlay::eventFilter(watched, event);
}

}  // namespace underlawn
