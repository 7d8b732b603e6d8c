// SPDX-License-Identifier: GPL-3.0-or-later
// What a person reads is written in English where it is meant and said in the language of whoever reads.
//
//   say("Trench {} is {} deep", number, depth)   a sentence with its parts; English {} in order, a
//   translation may
//                                                number them: "La zanja {1} tiene {2} de profundidad"
//   mark("Sand")  …  translated(kNames[i])       a table made before the language is known, said when it is
//   read
//
// Whole sentences only: pieces put together with + cannot be said in another language. Texts that machines
// read (keys, codes, file formats) are never said.
#pragma once

#include <concepts>
#include <string>
#include <string_view>
#include <type_traits>

#include "base/catalogue.h"

namespace underlawn {

// The language of this thread: English without a catalogue. A catalogue has to outlive its use.
const Catalogue* spoken_here();

// The language of every thread that has none of its own. Set once, before work begins.
void speak_everywhere(const Catalogue* catalogue);

// A language of its own for this thread while it lives: a sheet in the crew's language from a window in the
// office's.
class SpeakHere {
 public:
  explicit SpeakHere(const Catalogue* catalogue);
  ~SpeakHere();
  SpeakHere(const SpeakHere&) = delete;
  SpeakHere& operator=(const SpeakHere&) = delete;

 private:
  bool had_;
  const Catalogue* before_;
};

namespace words {

consteval std::size_t holes(const char* text) {
  std::size_t n = 0;
  for (; *text != 0; ++text)
    if (text[0] == '{' && text[1] == '}') ++n;
  return n;
}

// A literal with as many holes as there are parts, counted when it is compiled.
template <class... Parts>
struct Wording {
  consteval Wording(const char* literal) : text(literal) {  // NOLINT(google-explicit-constructor)
    if (holes(literal) != sizeof...(Parts)) throw "as many {} as parts";
  }
  std::string_view text;
};

inline std::string part(std::string_view text) {
  return std::string(text);
}
template <std::integral Number>
std::string part(Number number) {
  return std::to_string(number);
}

std::string filled(std::string_view wording, const std::string* parts, std::size_t count);

}  // namespace words

// The text in the language of this thread, or as it is where there is no translation.
std::string translated(std::string_view english);

// The same for one that means different things in different places; `where` is for the translator.
std::string translated(std::string_view where, std::string_view english);

template <class... Parts>
std::string say(words::Wording<std::type_identity_t<Parts>...> english, const Parts&... parts) {
  if constexpr (sizeof...(Parts) == 0) {
    return translated(english.text);
  } else {
    const std::string said[] = {words::part(parts)...};
    return words::filled(translated(english.text), said, sizeof...(Parts));
  }
}

// say() of a text that English has one word for and others more: say_as("of a trench", "open").
template <class... Parts>
std::string say_as(const char* where, words::Wording<std::type_identity_t<Parts>...> english,
                   const Parts&... parts) {
  if constexpr (sizeof...(Parts) == 0) {
    return translated(where, english.text);
  } else {
    const std::string said[] = {words::part(parts)...};
    return words::filled(translated(where, english.text), said, sizeof...(Parts));
  }
}

// Marks a literal for the translator where it cannot be said yet; translated() says it.
consteval const char* mark(const char* english) {
  return english;
}

}  // namespace underlawn
