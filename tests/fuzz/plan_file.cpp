// SPDX-License-Identifier: GPL-3.0-or-later
// Plan files: what is read is written so that it reads the same again, without remarks of its own.
#include "files/plan_file.h"

#include <cstdint>
#include <cstdlib>

using namespace underlawn;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto read = plan_from_text({reinterpret_cast<const char*>(data), size});
  if (!read) return 0;
  const std::string written = plan_to_text(read->value);
  const auto again = plan_from_text(written);
  if (!again || plan_to_text(again->value) != written) std::abort();
  return 0;
}
