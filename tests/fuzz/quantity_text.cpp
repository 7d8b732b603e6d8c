// SPDX-License-Identifier: GPL-3.0-or-later
// Typed quantities: a number that is read is finite, and prints to what reads again.
#include <cmath>
#include <cstdint>
#include <cstdlib>

#include "base/quantity.h"

using namespace underlawn;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size < 1) return 0;
  const auto quantity = static_cast<Quantity>(data[0] % (static_cast<int>(Quantity::money) + 1));
  const UnitSystem units = data[0] >= 128 ? UnitSystem::us : UnitSystem::metric;
  const auto value = parse_quantity(quantity, {reinterpret_cast<const char*>(data) + 1, size - 1}, units);
  if (!value) return value.error().message().empty() ? std::abort(), 0 : 0;
  if (!std::isfinite(*value)) std::abort();
  if (std::abs(*value) > 1e9) return 0;  // shown as a power of ten or not at all
  if (!parse_quantity(quantity, print_quantity(quantity, *value, units, Fineness::fine), units)) std::abort();
  return 0;
}
