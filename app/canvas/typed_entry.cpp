// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/typed_entry.h"

namespace underlawn {

namespace {

constexpr int kLongest = 60;

}  // namespace

bool TypedEntry::is_text(const QKeyEvent& key) {
  constexpr Qt::KeyboardModifiers kCommand = Qt::ControlModifier | Qt::MetaModifier | Qt::AltModifier;
  return !(key.modifiers() & kCommand) && !key.text().isEmpty() && key.text().front().isPrint();
}

bool TypedEntry::may_begin(const QKeyEvent& key, bool has_last_point) {
  if (!is_text(key)) return false;
  const QChar c = key.text().front();
  if (c.isDigit() || QStringLiteral("@#.,-+(").contains(c)) return true;
  return has_last_point && QStringLiteral("<nsNS").contains(c);
}

bool TypedEntry::key_press(const QKeyEvent& key) {
  if (key.key() == Qt::Key_Backspace) {
    text_.chop(1);
  } else if (is_text(key) && text_.size() < kLongest) {
    text_ += key.text();
  } else {
    return false;
  }
  trouble_.clear();
  return true;
}

void TypedEntry::clear() {
  text_.clear();
  trouble_.clear();
}

Result<Point> TypedEntry::place(const CourseFrame& frame) const {
  return typed_place(text_.toStdString(), frame);
}

}  // namespace underlawn
