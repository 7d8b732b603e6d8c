// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tools/path_tool.h"

namespace underlawn {

class UtilityTool : public PathTool {
 public:
  using PathTool::PathTool;
  QString title() const override { return tr("Utility line"); }
  QString status() const override;
  bool key_press(QKeyEvent& key) override;  // K: what it carries
  bool owns_key(int key) const override { return key == Qt::Key_K; }

 protected:
  bool closes() const override { return false; }
  void keep(std::vector<Point> points) override;
  QString first_hint() const override;

 private:
  // The kind, depth and leave to cross of the utility drawn last; they are changed in the panel, the kind
  // with K too while it is drawn.
  Feature model() const;

  std::optional<UtilityKind> kind_;  // chosen with K
};

}  // namespace underlawn
