// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tools/path_tool.h"

namespace underlawn {

class UtilityTool : public PathTool {
 public:
  using PathTool::PathTool;
  QString title() const override { return tr("Utility line"); }

 protected:
  bool closes() const override { return false; }
  void keep(std::vector<Point> points) override;
  QString first_hint() const override;

 private:
  // The kind, depth and leave to cross of the utility drawn last; they are changed in the panel.
  Feature model() const;
};

}  // namespace underlawn
