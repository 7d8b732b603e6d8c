// SPDX-License-Identifier: GPL-3.0-or-later
// Languages for tests: files as msgfmt writes them, and one that puts every translated text into brackets, so
// that what was never handed to a translator can be seen.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/catalogue.h"

namespace underlawn::test {

// A .mo file of these texts, in the byte order of most machines or the other.
std::string mo_file(const std::map<std::string, std::string>& texts, bool turned = false);

// The texts of a .mo file, by key (context and \4 before the English where there is one).
std::map<std::string, std::string> mo_texts(const std::string& bytes);

// Every text that the Spanish catalogue at `path` knows, as ⟦its English⟧.
const Catalogue& marking_language(const std::string& path);

// The same with what fills a text left outside its brackets: ⟦⟧name⟦ has no option ⟧option⟦⟧.
const Catalogue& marking_around_holes(const std::string& path);

// Collects words of two letters and more that stand outside all brackets, over any number of texts in the
// order in which they are said: a text that is wrapped opens its bracket in one line and closes it in
// another.
class Unsaid {
 public:
  void read(std::string_view text);
  const std::vector<std::string>& words() const { return words_; }  // each once, as first met
  void close() { depth_ = 0; }                                      // what follows begins anew

 private:
  void add(std::string_view word);
  int depth_ = 0;
  std::vector<std::string> words_;
};

}  // namespace underlawn::test
