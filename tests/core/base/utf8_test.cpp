// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/utf8.h"

#include <gtest/gtest.h>

namespace underlawn {

// Boundaries of the Unicode Standard 15, table 3-7 (well-formed UTF-8 byte sequences).
TEST(Utf8, KnowsWellFormedCharacters) {
  EXPECT_EQ(utf8_size("a"), 1u);
  EXPECT_EQ(utf8_size("\xc2\x80"), 2u);
  EXPECT_EQ(utf8_size("\xdf\xbf!"), 2u);
  EXPECT_EQ(utf8_size("\xe0\xa0\x80"), 3u);
  EXPECT_EQ(utf8_size("\xed\x9f\xbf"), 3u);
  EXPECT_EQ(utf8_size("\xef\xbf\xbf"), 3u);
  EXPECT_EQ(utf8_size("\xf0\x90\x80\x80"), 4u);
  EXPECT_EQ(utf8_size("\xf4\x8f\xbf\xbf"), 4u);
}

TEST(Utf8, KnowsIllFormedOnes) {
  for (const char* bad :
       {"", "\x80", "\xbf", "\xc0\x80", "\xc1\xbf", "\xc2", "\xc2\x41", "\xe0\x9f\xbf", "\xed\xa0\x80",
        "\xe1\x80", "\xf0\x8f\xbf\xbf", "\xf4\x90\x80\x80", "\xf5\x80\x80\x80", "\xff"})
    EXPECT_EQ(utf8_size(bad), 0u);
}

TEST(Utf8, ReplacesAndCountsBadBytes) {
  std::size_t bad = 0;
  EXPECT_EQ(valid_utf8("ä\xff\xe2\x82z", &bad), "ä\uFFFD\uFFFD\uFFFDz");
  EXPECT_EQ(bad, 3u);
  EXPECT_EQ(valid_utf8("Straße 井戸 🌳", &bad), "Straße 井戸 🌳");
  EXPECT_EQ(bad, 0u);
}

}  // namespace underlawn
