// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/text_out.h"

#include "files/atomic_file.h"

namespace underlawn::cli {

Exit put(const std::string& text, const Arguments& arguments, const Console& console) {
  const auto file = arguments.value("--out");
  if (!file) {
    console.out << text;
    return Exit::ok;
  }
  const auto written = write_file(*file, text);
  if (!written) console.complain(*file, written.error().message());
  if (written) console.out << *file << "\n";
  return written ? Exit::ok : Exit::not_written;
}

}  // namespace underlawn::cli
