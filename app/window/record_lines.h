// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <vector>

#include "plan/record/record_line.h"

namespace underlawn {

// What a record tells, a line each: a mark and a word for good, doubtful, wrong or open, then the reason.
// Hidden while there is nothing to say.
class RecordLines : public QLabel {
  Q_OBJECT

 public:
  explicit RecordLines(const QString& name, QWidget* parent = nullptr);
  void show_lines(const std::vector<RecordLine>& lines);
};

QString tone_mark(Tone tone);

}  // namespace underlawn
