// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/catalogue.h"

#include <algorithm>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr std::uint32_t kMagic = 0x950412de, kMagicTurned = 0xde120495;
constexpr std::size_t kHeader = 20;

Trouble broken(const std::string& what) {
  return {"catalogue_broken", say("the language file"), what, "", say("Install the program again.")};
}

// Four bytes at `at`, in the file's order.
std::uint32_t word(const std::string& bytes, std::size_t at, bool turned) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i)
    value |= static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[at + i]))
             << (8 * (turned ? 3 - i : i));
  return value;
}

}  // namespace

Result<Catalogue> Catalogue::read(std::string bytes) {
  if (bytes.size() < kHeader) return refuse(broken(say("too short")));
  const std::uint32_t magic = word(bytes, 0, false);
  if (magic != kMagic && magic != kMagicTurned) return refuse(broken(say("not of msgfmt's form")));
  const bool turned = magic == kMagicTurned;
  const std::size_t count = word(bytes, 8, turned), keys = word(bytes, 12, turned),
                    texts = word(bytes, 16, turned), size = bytes.size();
  if (count > size / 16 || keys > size - 8 * count || texts > size - 8 * count)
    return refuse(broken(say("cut short in its tables")));
  Catalogue made;
  made.entries_.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t key_length = word(bytes, keys + 8 * i, turned),
                      key = word(bytes, keys + 8 * i + 4, turned),
                      text_length = word(bytes, texts + 8 * i, turned),
                      text = word(bytes, texts + 8 * i + 4, turned);
    if (key > size || key_length > size - key || text > size || text_length > size - text)
      return refuse(broken(say("cut short in text {}", std::to_string(i + 1))));
    if (key_length == 0) continue;  // who made it and when
    made.entries_.push_back({key, key_length, text, text_length});
  }
  made.bytes_ = std::move(bytes);
  std::ranges::sort(made.entries_, {}, [&](const Entry& e) { return made.key(e); });
  return made;
}

std::optional<std::string_view> Catalogue::find(std::string_view english) const {
  const auto at = std::ranges::lower_bound(entries_, english, {}, [&](const Entry& e) { return key(e); });
  if (at == entries_.end() || key(*at) != english || at->text_length == 0) return std::nullopt;
  return std::string_view(bytes_).substr(at->text, at->text_length);
}

std::optional<std::string_view> Catalogue::find(std::string_view context, std::string_view english) const {
  return find(std::string(context) + '\4' + std::string(english));
}

}  // namespace underlawn
