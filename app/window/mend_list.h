// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "plan/record/as_built_mends.h"
#include "window/record_lines.h"

class QVBoxLayout;

namespace underlawn {

// What would mend an as-built loop, one under the other, each with a button that takes it where it is an
// edit.
class MendList : public QWidget {
  Q_OBJECT

 public:
  explicit MendList(const QString& name, QWidget* parent = nullptr);

  // `lines` as of mend_rows(): first those of `mends`, then what does not help. Without mends: no buttons.
  void show_mends(const std::vector<RecordLine>& lines, const Mends* mends);

 signals:
  void taken(std::size_t mend);  // its place in Mends::all

 private:
  QString name_;
  QVBoxLayout* column_;
  std::vector<RecordLine> shown_;
  std::vector<bool> can_take_;
};

}  // namespace underlawn
