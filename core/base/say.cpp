// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"

#include <atomic>

namespace underlawn {

namespace {

std::atomic<const Catalogue*> everywhere{nullptr};
thread_local bool own_language = false;
thread_local const Catalogue* own_catalogue = nullptr;

// Which part stands at wording[at], counted from 0, and how long its mark is; length 0 where none stands
// there.
struct Hole {
  std::size_t part = 0, length = 0;
};

Hole hole_at(std::string_view wording, std::size_t at, std::size_t next) {
  if (wording.compare(at, 2, "{}") == 0) return {next, 2};
  const bool numbered = at + 2 < wording.size() && wording[at] == '{' && wording[at + 1] >= '1' &&
                        wording[at + 1] <= '9' && wording[at + 2] == '}';
  return numbered ? Hole{static_cast<std::size_t>(wording[at + 1] - '1'), 3} : Hole{};
}

}  // namespace

const Catalogue* spoken_here() {
  return own_language ? own_catalogue : everywhere.load();
}

void speak_everywhere(const Catalogue* catalogue) {
  everywhere = catalogue;
}

SpeakHere::SpeakHere(const Catalogue* catalogue) : had_(own_language), before_(own_catalogue) {
  own_language = true;
  own_catalogue = catalogue;
}

SpeakHere::~SpeakHere() {
  own_language = had_;
  own_catalogue = before_;
}

std::string translated(std::string_view english) {
  const Catalogue* catalogue = spoken_here();
  const auto found = catalogue != nullptr ? catalogue->find(english) : std::nullopt;
  return std::string(found.value_or(english));
}

std::string translated(std::string_view where, std::string_view english) {
  const Catalogue* catalogue = spoken_here();
  const auto found = catalogue != nullptr ? catalogue->find(where, english) : std::nullopt;
  return std::string(found.value_or(english));
}

std::string words::filled(std::string_view wording, const std::string* parts, std::size_t count) {
  std::string text;
  std::size_t next = 0;
  for (std::size_t i = 0; i < wording.size();) {
    const Hole hole = hole_at(wording, i, next);
    if (hole.length == 0 || hole.part >= count) {
      text += wording[i++];
      continue;
    }
    text += parts[hole.part];
    if (hole.length == 2) ++next;
    i += hole.length;
  }
  return text;
}

}  // namespace underlawn
