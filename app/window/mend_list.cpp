// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/mend_list.h"

#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

#include "window/theme.h"

namespace underlawn {

MendList::MendList(const QString& name, QWidget* parent)
    : QWidget(parent), name_(name), column_(new QVBoxLayout(this)) {
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(kGap);
  hide();
}

void MendList::show_mends(const std::vector<RecordLine>& lines, const Mends* mends) {
  std::vector<bool> can_take;
  for (std::size_t i = 0; i < lines.size(); ++i)
    can_take.push_back(mends != nullptr && i < mends->all.size() && mends->all[i].take != nullptr);
  setVisible(!lines.empty());
  if (lines == shown_ && can_take == can_take_) return;
  shown_ = lines;
  can_take_ = std::move(can_take);
  while (QLayoutItem* item = column_->takeAt(0)) {
    item->widget()->hide();
    item->widget()->deleteLater();  // it may be the button that was pressed
    delete item;
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto* words = new RecordLines(name_, this);  // what is shown without a parent is a window of its own
    words->show_lines({lines[i]});
    column_->addWidget(words);
    if (!can_take_[i]) continue;
    auto* take = new QPushButton(tr("Take this mend"), this);
    take->setAccessibleName(tr("Take this mend: %1").arg(QString::fromStdString(lines[i].title)));
    column_->addWidget(take, 0, Qt::AlignLeft);
    connect(take, &QPushButton::clicked, this, [this, i] { emit taken(i); });
  }
}

}  // namespace underlawn
