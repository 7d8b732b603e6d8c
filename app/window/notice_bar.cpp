// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/notice_bar.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "window/theme.h"

namespace underlawn {

NoticeBar::NoticeBar(QWidget* parent) : QFrame(parent), label_(new QLabel), buttons_(new QHBoxLayout) {
  setObjectName("bar");
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(4 * kGap, 2 * kGap, 3 * kGap, 2 * kGap);
  row->setSpacing(3 * kGap);
  label_->setWordWrap(true);
  label_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  row->addWidget(label_, 1);
  buttons_->setSpacing(2 * kGap);
  row->addLayout(buttons_);
  hide();
}

void NoticeBar::tell(const QString& subject, const QString& words, std::vector<Way> ways) {
  std::erase_if(notices_, [&](const Notice& n) { return n.subject == subject; });
  if (ways.empty()) ways.push_back({tr("Close"), {}});
  notices_.push_back({subject, words, std::move(ways)});
  show_last();
}

void NoticeBar::ask(const QString& subject, const QString& words, std::vector<Way> ways) {
  tell(subject, words, std::move(ways));
  take_keyboard();
}

bool NoticeBar::take_keyboard() {
  if (notices_.empty()) return false;
  QWidget* first = buttons_->itemAt(0)->widget();
  first->show();  // one that is not yet to be seen takes no keyboard
  first->setFocus(Qt::OtherFocusReason);
  return true;
}

void NoticeBar::withdraw(const QString& subject) {
  if (std::erase_if(notices_, [&](const Notice& n) { return n.subject == subject; }) > 0) show_last();
}

bool NoticeBar::telling(const QString& subject) const {
  return std::any_of(notices_.begin(), notices_.end(), [&](const Notice& n) { return n.subject == subject; });
}

QString NoticeBar::words() const {
  return notices_.empty() ? QString() : notices_.back().words;
}

void NoticeBar::take(int way) {
  if (notices_.empty()) return;
  const Notice notice = notices_.back();
  const bool by_keyboard = isAncestorOf(QApplication::focusWidget());
  notices_.pop_back();
  show_last();
  if (by_keyboard) emit answered();
  if (const auto& run = notice.ways.at(static_cast<std::size_t>(way)).take) run();
}

void NoticeBar::show_last() {
  while (QLayoutItem* item = buttons_->takeAt(0)) {
    item->widget()->hide();
    item->widget()->deleteLater();
    delete item;
  }
  setVisible(!notices_.empty());
  if (notices_.empty()) return;
  const Notice& notice = notices_.back();
  label_->setText(notice.words);
  for (std::size_t i = 0; i < notice.ways.size(); ++i) {
    auto* button = new QPushButton(notice.ways[i].words);
    if (i == 0 && notice.ways.size() > 1) button->setObjectName("main");
    connect(button, &QPushButton::clicked, this, [this, i] { take(static_cast<int>(i)); });
    buttons_->addWidget(button);
  }
}

void NoticeBar::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape || notices_.empty()) return QFrame::keyPressEvent(event);
  take(static_cast<int>(notices_.back().ways.size()) - 1);
}

}  // namespace underlawn
