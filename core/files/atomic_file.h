// SPDX-License-Identifier: GPL-3.0-or-later
// Whole files, in and out. The only place of core/ that touches the disk.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace underlawn {

// Refuses: cannot be opened or read, a folder, more than `most` bytes.
Result<std::string> read_file(const std::filesystem::path& path, std::size_t most);

// Written beside `path`, flushed to the disk and renamed over it, so that at any moment the file is the old
// one or the new one, whole. A link is followed; permissions of the old file are kept. On error the old file
// is as it was.
Result<void> write_file(const std::filesystem::path& path, std::string_view bytes);

}  // namespace underlawn
