// SPDX-License-Identifier: GPL-3.0-or-later
// House, drive, septic tank, drain field, reserve, easement, no-dig.
#pragma once

#include "tools/outline_tool.h"

namespace underlawn {

class AreaTool : public OutlineTool {
 public:
  AreaTool(ToolContext& context, FeatureKind kind);

  QString title() const override;

 protected:
  void keep(std::vector<Point> points) override;

 private:
  FeatureKind kind_;
};

}  // namespace underlawn
