// SPDX-License-Identifier: GPL-3.0-or-later
// The document: one plain, copyable, comparable value. It holds no derived data.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "cost/pricing.h"
#include "dig/crew_wishes.h"
#include "dig/dig_wishes.h"
#include "flow/flow_wishes.h"
#include "flow/loop_test.h"
#include "ground/ground.h"
#include "layout/wishes.h"
#include "plan/picture.h"
#include "plan/proposal_words.h"
#include "plan/record/as_built.h"
#include "plan/record/job_record.h"
#include "plan/sheet_wishes.h"
#include "site/dimension.h"
#include "site/map_place.h"
#include "site/site.h"
#include "survey/survey.h"
#include "thermal/thermal_wishes.h"

namespace underlawn {

struct TitleBlock {
  std::string project;  // "Alder Lane 14"
  std::string address;
  std::string owner;
  std::string designer;
  std::string phone;
  std::string note;
  bool operator==(const TitleBlock&) const = default;
};

// A finding the designer knows of and takes, with the reason that is printed.
struct Acceptance {
  std::string finding;  // Finding::key
  std::string reason;
  bool operator==(const Acceptance&) const = default;
};

struct Plan {
  TitleBlock title;
  UnitSystem units = UnitSystem::us;  // shown and typed; the file is SI
  Site site;
  Survey survey;
  Ground ground;
  Wishes wishes;
  ThermalWishes thermal;
  FlowWishes flow;
  LoopTest test;
  JobRecord record;
  AsBuilt as_built;
  DigWishes dig;
  CrewWishes crew;
  ProposalWords proposal;
  Pricing pricing;
  SheetWishes sheets;
  std::vector<Acceptance> accepted;   // sorted by finding
  std::vector<Dimension> dimensions;  // shown and printed; nothing is worked out from them
  std::vector<Picture> pictures;      // the first lies lowest
  std::optional<MapPlace> map_place;
  bool operator==(const Plan&) const = default;
};

}  // namespace underlawn
