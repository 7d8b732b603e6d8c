// SPDX-License-Identifier: GPL-3.0-or-later
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "window/actions.h"
#include "window/overlay.h"
#include "window/theme.h"

namespace underlawn {

namespace {

QLabel* words(const QString& text, const char* look) {
  auto* label = new QLabel(text);
  label->setObjectName(look);
  return label;
}

QWidget* group_block(CommandGroup group) {
  auto* block = new QWidget;
  auto* grid = new QGridLayout(block);
  grid->setContentsMargins(0, 0, 0, 3 * kGap);
  grid->setVerticalSpacing(3);
  grid->setHorizontalSpacing(4 * kGap);
  grid->addWidget(words(group_title(group), "section"), 0, 0, 1, 2);
  int row = 1;
  for (const Command& c : commands()) {
    if (c.group != group) continue;
    QLabel* title = words(QString::fromUtf8(c.title), "");
    title->setToolTip(QString::fromUtf8(c.help));
    grid->addWidget(title, row, 0);
    grid->addWidget(words(key_words(c), "faint"), row++, 1, Qt::AlignRight);
  }
  grid->setColumnStretch(0, 1);
  return block;
}

void add_columns(QHBoxLayout* row) {
  using enum CommandGroup;
  for (const auto& groups : {std::vector{file, edit, help}, std::vector{draw}, std::vector{view, panel}}) {
    auto* column = new QVBoxLayout;
    for (const CommandGroup group : groups) column->addWidget(group_block(group));
    column->addStretch();
    row->addLayout(column, 1);
  }
}

}  // namespace

KeySheet::KeySheet(QWidget* window) : Overlay(window) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6 * kGap, 5 * kGap, 6 * kGap, 4 * kGap);
  column->addWidget(words(tr("Keys"), "big"));
  auto* inside = new QWidget;
  auto* row = new QHBoxLayout(inside);
  row->setContentsMargins(0, 0, 3 * kGap, 0);
  row->setSpacing(10 * kGap);
  add_columns(row);
  auto* scroll = new QScrollArea;
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setWidget(inside);
  scroll->setStyleSheet("QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; }");
  column->addWidget(scroll, 1);
  column->addWidget(words(tr("In a field: Enter keeps, Esc takes back. Numbers take arithmetic and any unit: "
                             "6' + 3 in, 2 * 1.9 m."),
                          "faint"));
  auto* close = new QPushButton(tr("Close"));
  column->addWidget(close, 0, Qt::AlignRight);
  setFocusProxy(close);
  connect(close, &QPushButton::clicked, this, &Overlay::close_card);
}

void KeySheet::place() {
  const QSize room = parentWidget()->size() - QSize(80, 80);
  const QSize size(std::min(1000, room.width()), std::min(700, room.height()));
  setGeometry(QRect(
      QPoint((parentWidget()->width() - size.width()) / 2, (parentWidget()->height() - size.height()) / 2),
      size));
}

About::About(QWidget* window) : Overlay(window) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(7 * kGap, 6 * kGap, 7 * kGap, 5 * kGap);
  column->setSpacing(3 * kGap);
  column->addWidget(words(tr("Underlawn %1").arg(UNDERLAWN_VERSION), "big"));
  auto* text = words(tr("Plans horizontal ground loops: coils of pipe in trenches across a house lot.\n\n"
                        "It helps a trained designer and does not replace one. Local codes govern. Have "
                        "utilities located before any digging, "
                        "private lines too. Trenches kill: protective systems and a competent person are the "
                        "law (in the United States "
                        "29 CFR 1926 Subpart P). Pressure work, antifreeze and electrical work belong to "
                        "licensed people.\n\n"
                        "Free software under the GNU General Public License, version 3 or later."),
                     "");
  text->setWordWrap(true);
  column->addWidget(text, 1);
  auto* close = new QPushButton(tr("Close"));
  column->addWidget(close, 0, Qt::AlignRight);
  setFocusProxy(close);
  connect(close, &QPushButton::clicked, this, &Overlay::close_card);
}

void About::place() {
  const int width = std::min(520, parentWidget()->width() - 80),
            height = std::min(360, parentWidget()->height() - 80);
  setGeometry((parentWidget()->width() - width) / 2, (parentWidget()->height() - height) / 2, width, height);
}

}  // namespace underlawn
