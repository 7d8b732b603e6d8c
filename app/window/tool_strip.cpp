// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/tool_strip.h"

#include <QFrame>
#include <QResizeEvent>
#include <algorithm>

#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kSide = 6, kEnd = 8, kGapBetween = 2;
constexpr int kLineRoom = 5;  // px that a line between two parts takes
constexpr int kFewest = 2, kMost = 5;

QFrame* dividing_line(QWidget* parent) {
  auto* line = new QFrame(parent);
  line->setFixedHeight(1);
  const auto tint = [line] { line->setStyleSheet(QString("background: %1").arg(theme_now().line.name())); };
  QObject::connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, line, tint);
  tint();
  return line;
}

int rows(std::size_t buttons, int columns) {
  return (static_cast<int>(buttons) + columns - 1) / columns;
}

}  // namespace

ToolStrip::ToolStrip(QWidget* parent) : QWidget(parent) {
  setObjectName("strip");
  setAttribute(Qt::WA_StyledBackground);
}

void ToolStrip::begin_part() {
  if (!parts_.empty()) lines_.push_back(dividing_line(this));
  parts_.emplace_back();
}

void ToolStrip::add(QWidget* button) {
  if (parts_.empty()) begin_part();
  button->setParent(this);
  parts_.back().push_back(button);
}

void ToolStrip::add_below(QWidget* button) {
  button->setParent(this);
  below_.push_back(button);
}

// All buttons are as large as the first one.
QSize ToolStrip::cell() const {
  const QWidget* first = parts_.empty() || parts_.front().empty() ? nullptr : parts_.front().front();
  return first == nullptr ? QSize(1, 1) : first->sizeHint() + QSize(kGapBetween, kGapBetween);
}

int ToolStrip::height_in(int columns) const {
  int all = rows(below_.size(), columns);
  for (const Part& part : parts_) all += rows(part.size(), columns);
  return 2 * kEnd + all * cell().height() + kLineRoom * static_cast<int>(lines_.size());
}

int ToolStrip::place(const Part& part, int top) const {
  const QSize size = cell();
  for (std::size_t i = 0; i < part.size(); ++i) {
    const int row = static_cast<int>(i) / columns_, column = static_cast<int>(i) % columns_;
    part[i]->setGeometry(kSide + column * size.width(), top + row * size.height(), size.width() - kGapBetween,
                         size.height() - kGapBetween);
  }
  return top + rows(part.size(), columns_) * size.height();
}

void ToolStrip::arrange() {
  columns_ = kFewest;
  while (columns_ < kMost && height_in(columns_) > height()) ++columns_;
  setFixedWidth(2 * kSide + columns_ * cell().width() - kGapBetween);
  setMinimumHeight(height_in(kMost));
  int top = kEnd;
  for (std::size_t i = 0; i < parts_.size(); ++i) {
    if (i > 0) {
      lines_[i - 1]->setGeometry(kSide, top + 1, width() - 2 * kSide, 1);
      top += kLineRoom;
    }
    top = place(parts_[i], top);
  }
  place(below_, std::max(top, height() - kEnd - rows(below_.size(), columns_) * cell().height()));
}

void ToolStrip::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  arrange();
}

void ToolStrip::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  arrange();
}

}  // namespace underlawn
