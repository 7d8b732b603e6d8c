// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "tools/tool.h"
#include "tools/tool_id.h"

namespace underlawn {

std::unique_ptr<Tool> make_tool(ToolId id, ToolContext& context);

}  // namespace underlawn
