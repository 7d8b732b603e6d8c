// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/work_box.h"

#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include "window/long_work.h"
#include "window/plain_words.h"
#include "window/theme.h"

namespace underlawn {

WorkBox::WorkBox(LongWork& work, const QString& begin, QWidget* parent)
    : QWidget(parent),
      work_(work),
      begin_(new QPushButton(begin)),
      stop_(new QPushButton(tr("Stop"))),
      bar_(new QProgressBar),
      doing_(plain_words(QString(), "faint")),
      earlier_(plain_words(tr("Of an earlier plan."), "section")) {
  begin_->setObjectName("main");
  bar_->setRange(0, 1000);
  bar_->setTextVisible(false);
  bar_->setFixedHeight(2 * kGap);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2 * kGap);
  for (QWidget* w :
       {static_cast<QWidget*>(begin_), static_cast<QWidget*>(bar_), static_cast<QWidget*>(doing_),
        static_cast<QWidget*>(stop_), static_cast<QWidget*>(earlier_)})
    column->addWidget(w);
  connect(stop_, &QPushButton::clicked, &work_, &LongWork::stop);
  connect(&work_, &LongWork::busy_changed, this, &WorkBox::show_busy);
  connect(&work_, &LongWork::progressed, this, [this](double share, const QString& what) {
    bar_->setValue(static_cast<int>(1000 * share));
    doing_->setText(what);
  });
  set_earlier(false);
  show_busy();
}

void WorkBox::empty() {
  bar_->setValue(0);
  doing_->clear();
}

void WorkBox::set_earlier(bool earlier) {
  earlier_->setVisible(earlier);
}

// The keyboard stays here when what has it goes.
void WorkBox::show_busy() {
  const bool busy = work_.busy();
  QPushButton* next = busy && begin_->hasFocus() ? stop_ : !busy && stop_->hasFocus() ? begin_ : nullptr;
  begin_->setEnabled(true);
  stop_->setVisible(true);
  if (next != nullptr) next->setFocus(Qt::OtherFocusReason);
  begin_->setEnabled(!busy);
  bar_->setVisible(busy);
  doing_->setVisible(busy);
  stop_->setVisible(busy);
}

}  // namespace underlawn
