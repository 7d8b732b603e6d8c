// SPDX-License-Identifier: GPL-3.0-or-later
// The text typed while drawing, shown in a small box at the pointer. Once it is begun, moving the pointer
// changes only the direction it is taken in.
#pragma once

#include <QKeyEvent>
#include <QPainter>
#include <QString>

#include "canvas/look.h"
#include "tools/course.h"

namespace underlawn {

class TypedEntry {
 public:
  bool begun() const { return !text_.isEmpty(); }
  const QString& text() const { return text_; }
  const QString& trouble() const { return trouble_; }

  static bool is_text(const QKeyEvent& key);
  // Whether a text may begin with this key. Letters of a bearing only behind a last point, for they are keys
  // of tools too.
  static bool may_begin(const QKeyEvent& key, bool has_last_point);
  bool key_press(const QKeyEvent& key);  // true: it was taken
  void clear();
  void set_trouble(QString what) { trouble_ = std::move(what); }

  Result<Point> place(const CourseFrame& frame) const;

 private:
  QString text_;
  QString trouble_;  // why Enter did not take it
};

}  // namespace underlawn
