// SPDX-License-Identifier: GPL-3.0-or-later
// Fields of a panel as somebody at the keyboard finds and fills them.
#pragma once

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QTest>

namespace underlawn {

// The field that a reader of screens would call so.
template <class T>
T* called(QWidget& panel, const QString& name) {
  for (T* widget : panel.findChildren<T*>())
    if (widget->accessibleName() == name) return widget;
  return nullptr;
}

inline void type(QLineEdit* edit, const QString& text) {
  ASSERT_NE(edit, nullptr);
  edit->selectAll();
  QTest::keyClick(edit, Qt::Key_Delete);
  QTest::keyClicks(edit, text);
  QTest::keyClick(edit, Qt::Key_Return);
}

}  // namespace underlawn
