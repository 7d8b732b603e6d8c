// SPDX-License-Identifier: GPL-3.0-or-later
// The texts of one language, as GNU gettext's msgfmt writes them (.mo; the format is in the gettext manual,
// "The Format of GNU MO Files").
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

class Catalogue {
 public:
  // `bytes` is a whole .mo file of either byte order. Refuses what is not one, with the place.
  static Result<Catalogue> read(std::string bytes);

  // The translation of a text, alone or in a context; nothing where there is none. Valid while the catalogue
  // is.
  std::optional<std::string_view> find(std::string_view english) const;
  std::optional<std::string_view> find(std::string_view context, std::string_view english) const;

  std::size_t size() const { return entries_.size(); }

 private:
  // Offsets, so that a catalogue may be moved.
  struct Entry {
    std::size_t key, key_length, text, text_length;
  };
  std::string_view key(const Entry& e) const { return std::string_view(bytes_).substr(e.key, e.key_length); }

  std::string bytes_;
  std::vector<Entry> entries_;  // by key
};

}  // namespace underlawn
