// SPDX-License-Identifier: GPL-3.0-or-later
// Deed calls of any kind: read twice the same, run to finite numbers.
#include <cmath>
#include <cstdint>
#include <cstdlib>

#include "survey/traverse.h"

using namespace underlawn;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const UnitSystem units = size % 2 == 0 ? UnitSystem::us : UnitSystem::metric;
  const DeedReading read = read_deed(text, units);
  if (!(read == read_deed(text, units))) std::abort();
  Deed deed;
  deed.closure = size % 3 == 0 ? ClosureChoice::compass_rule : ClosureChoice::as_written;
  const Traverse t = run_traverse(read.courses, deed, 1);
  if (!std::isfinite(t.area) || !std::isfinite(t.misclosure) || !(t.area >= 0)) std::abort();
  for (const Leg& leg : t.legs)
    for (Point p : leg.line)
      if (!std::isfinite(p.x) || !std::isfinite(p.y)) std::abort();
  return 0;
}
