// SPDX-License-Identifier: GPL-3.0-or-later
// The library of map and drawing formats (GDAL), kept on a short lead: formats of drawings and of rasters of
// heights, no others, no network, no files but those handed over in memory.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace underlawn {

// One use of the library on this thread. Settings and the messages it collects end with it.
class LibrarySession {
 public:
  LibrarySession();
  ~LibrarySession();
  LibrarySession(const LibrarySession&) = delete;
  LibrarySession& operator=(const LibrarySession&) = delete;

  // Hands `bytes` over under a name that only the library knows; gives its path. They must outlive the
  // session.
  std::string lend(const std::string& name, std::string_view bytes);
  std::string path_of(const std::string& name) const;  // of a file the library writes
  std::string take(const std::string& name);           // what it wrote
  void set(const char* key, const std::string& value);
  // What the library complained of, each message once, at most five.
  const std::vector<std::string>& messages() const { return messages_; }
  void note(const char* message);

 private:
  std::string folder_;
  std::vector<std::string> lent_, keys_, messages_;
};

std::string library_version();  // "GDAL 3.6.2"

// UTF-8 of a text in a DXF code page ("ANSI_1252", "dos850"); what cannot be read becomes U+FFFD.
std::string recoded(std::string_view text, const std::string& code_page);

}  // namespace underlawn
