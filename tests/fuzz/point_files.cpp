// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of points and GPX: what is read can be placed, on the plan or with a reason.
#include <cmath>
#include <cstdint>
#include <cstdlib>

#include "plan/surveyed.h"
#include "survey/field_points.h"

using namespace underlawn;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  auto points = data[0] % 2 == 0 ? points_from_csv(text, UnitSystem::us) : points_from_gpx(text);
  if (!points) return 0;
  if (size % 16 != 0) return 0;  // making a projection takes longer than all the reading
  const Plan plan = edit::with_field_points(Plan{}, std::move(points->value));
  for (const PlacedSighting& p : placed_notebook(plan))
    if (p.at && !(std::isfinite(p.at->x) && std::isfinite(p.at->y))) std::abort();
  return 0;
}
