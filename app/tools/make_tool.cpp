// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/make_tool.h"

#include "tools/area_tool.h"
#include "tools/ask_tool.h"
#include "tools/clearance_tool.h"
#include "tools/dig_place_tool.h"
#include "tools/dimension_tool.h"
#include "tools/entry_tool.h"
#include "tools/height_tool.h"
#include "tools/lot_tool.h"
#include "tools/measure_tool.h"
#include "tools/pan_tool.h"
#include "tools/parallel_tool.h"
#include "tools/place_tool.h"
#include "tools/point_tool.h"
#include "tools/select_tool.h"
#include "tools/split_tool.h"
#include "tools/trench_tool.h"
#include "tools/turn_tool.h"
#include "tools/utility_tool.h"
#include "tools/why_tool.h"

namespace underlawn {

std::unique_ptr<Tool> make_tool(ToolId id, ToolContext& context) {
  const auto area = [&](FeatureKind kind) { return std::make_unique<AreaTool>(context, kind); };
  switch (id) {
    case ToolId::select:
      return std::make_unique<SelectTool>(context);
    case ToolId::pan:
      return std::make_unique<PanTool>(context);
    case ToolId::lot:
      return std::make_unique<LotTool>(context);
    case ToolId::house:
      return area(FeatureKind::house);
    case ToolId::entry:
      return std::make_unique<EntryTool>(context);
    case ToolId::drive:
      return area(FeatureKind::drive);
    case ToolId::septic_tank:
      return area(FeatureKind::septic_tank);
    case ToolId::drain_field:
      return area(FeatureKind::drain_field);
    case ToolId::reserve_field:
      return area(FeatureKind::reserve_field);
    case ToolId::well:
      return std::make_unique<PointTool>(context, FeatureKind::well);
    case ToolId::tree:
      return std::make_unique<PointTool>(context, FeatureKind::tree);
    case ToolId::utility:
      return std::make_unique<UtilityTool>(context);
    case ToolId::easement:
      return area(FeatureKind::easement);
    case ToolId::no_dig:
      return area(FeatureKind::no_dig);
    case ToolId::trench:
      return std::make_unique<TrenchTool>(context);
    case ToolId::height:
      return std::make_unique<HeightTool>(context);
    case ToolId::measure:
      return std::make_unique<MeasureTool>(context);
    case ToolId::why:
      return std::make_unique<WhyTool>(context);
    case ToolId::move:
      return std::make_unique<PlaceTool>(context, PlaceTool::Way::move);
    case ToolId::copy:
      return std::make_unique<PlaceTool>(context, PlaceTool::Way::copy);
    case ToolId::paste:
      return std::make_unique<PlaceTool>(context, PlaceTool::Way::paste);
    case ToolId::turn:
      return std::make_unique<TurnTool>(context);
    case ToolId::parallel:
      return std::make_unique<ParallelTool>(context);
    case ToolId::split:
      return std::make_unique<SplitTool>(context);
    case ToolId::dimension:
      return std::make_unique<DimensionTool>(context);
    case ToolId::clearance:
      return std::make_unique<ClearanceTool>(context);
    case ToolId::access:
      return std::make_unique<DigPlaceTool>(context, DigPlaceTool::Place::access);
    case ToolId::laydown:
      return std::make_unique<DigPlaceTool>(context, DigPlaceTool::Place::laydown);
    case ToolId::ask:
      return std::make_unique<AskTool>(context);
  }
  return std::make_unique<SelectTool>(context);
}

}  // namespace underlawn
