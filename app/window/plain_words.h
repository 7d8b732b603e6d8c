// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>

namespace underlawn {

// Words that wrap and are shown as they are, whatever signs of mark-up a name in them has; `style` names one
// of the theme's styles of text.
inline QLabel* plain_words(const QString& text, const char* style) {
  auto* label = new QLabel(text);
  label->setObjectName(style);
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

}  // namespace underlawn
