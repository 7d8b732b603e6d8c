// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "window/actions.h"
#include "window/gesture_keys.h"
#include "window/overlay.h"
#include "window/theme.h"

namespace underlawn {

namespace {

QLabel* words(const QString& text, const char* look) {
  auto* label = new QLabel(text);
  label->setObjectName(look);
  return label;
}

QGridLayout* block_grid(QWidget* block, const QString& title) {
  block->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
  auto* grid = new QGridLayout(block);
  grid->setContentsMargins(0, 0, 0, 3 * kGap);
  grid->setVerticalSpacing(3);
  grid->setHorizontalSpacing(4 * kGap);
  grid->addWidget(words(title, "section"), 0, 0, 1, 2);
  grid->setColumnStretch(0, 1);
  return grid;
}

QWidget* gesture_block() {
  auto* block = new QWidget;
  auto* grid = block_grid(block, KeySheet::tr("While drawing"));
  int row = 1;
  for (const GestureKey& key : gesture_keys()) {
    QLabel* what = words(QObject::tr(key.what), "");
    what->setWordWrap(true);
    grid->addWidget(what, row, 0);
    grid->addWidget(words(QObject::tr(key.keys), "faint"), row++, 1, Qt::AlignRight | Qt::AlignTop);
  }
  return block;
}

QWidget* group_block(CommandGroup group) {
  auto* block = new QWidget;
  auto* grid = block_grid(block, group_title(group));
  int row = 1;
  for (const Command& c : commands()) {
    if (c.group != group) continue;
    QLabel* title = words(title_of(c), "");
    title->setToolTip(help_of(c));
    grid->addWidget(title, row, 0);
    grid->addWidget(words(key_words(c), "faint"), row++, 1, Qt::AlignRight);
  }
  return block;
}

void add_columns(QHBoxLayout* row) {
  using enum CommandGroup;
  for (const auto& groups : {std::vector{file, edit}, std::vector{draw, help}, std::vector{view, panel}}) {
    auto* column = new QVBoxLayout;
    for (const CommandGroup group : groups) column->addWidget(group_block(group));
    column->addStretch();
    row->addLayout(column, 3);
  }
  auto* gestures = new QVBoxLayout;
  gestures->addWidget(gesture_block());
  gestures->addStretch();
  row->addLayout(gestures, 4);
}

}  // namespace

KeySheet::KeySheet(QWidget* window) : Overlay(window) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6 * kGap, 5 * kGap, 6 * kGap, 4 * kGap);
  column->addWidget(words(tr("Keys"), "big"));
  auto* inside = new QWidget;
  auto* row = new QHBoxLayout(inside);
  row->setContentsMargins(0, 0, 3 * kGap, 0);
  row->setSpacing(8 * kGap);
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
  const QSize size(std::min(1420, room.width()), std::min(860, room.height()));
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
