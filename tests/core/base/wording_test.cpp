// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/wording.h"

#include <gtest/gtest.h>

#include "base/catalogue.h"
#include "base/say.h"
#include "support/catalogues.h"

namespace underlawn {
namespace {

using Names = std::vector<std::string>;

TEST(Wording, ListsAreJoinedByCommasAndAnAnd) {
  EXPECT_EQ(joined(Names{}), "");
  EXPECT_EQ(joined(Names{"1", "2", "3"}), "1, 2, 3");
  EXPECT_EQ(joined_and(Names{}), "");
  EXPECT_EQ(joined_and(Names{"1"}), "1");
  EXPECT_EQ(joined_and(Names{"1", "2"}), "1 and 2");
  EXPECT_EQ(joined_and(std::vector<int>{1, 2, 3}), "1, 2 and 3");
}

TEST(Wording, TheAndIsThatOfTheLanguage) {
  const auto spanish = Catalogue::read(test::mo_file({{"{} and {}", "{} y {}"}}));
  ASSERT_TRUE(spanish);
  const SpeakHere here(&*spanish);
  EXPECT_EQ(joined_and(Names{"1", "2", "3"}), "1, 2 y 3");
}

// Unicode, Latin-1 Supplement: U+00C1 Á and U+00E1 á, U+00D1 Ñ and U+00F1 ñ; U+00F7 is the sign of division,
// which Spanish begins no word with.
TEST(Wording, FirstLettersGrowAndShrinkWithTheirMarks) {
  EXPECT_EQ(capitalised("tree"), "Tree");
  EXPECT_EQ(capitalised("árbol"), "Árbol");
  EXPECT_EQ(capitalised("ñame"), "Ñame");
  EXPECT_EQ(capitalised("Tree"), "Tree");
  EXPECT_EQ(capitalised("⟦tree⟧"), "⟦tree⟧");
  EXPECT_EQ(capitalised("3 in"), "3 in");
  EXPECT_EQ(capitalised(""), "");
  EXPECT_EQ(uncapitalised("Trench 3"), "trench 3");
  EXPECT_EQ(uncapitalised("Árbol"), "árbol");
  EXPECT_EQ(uncapitalised("trench"), "trench");
}

}  // namespace
}  // namespace underlawn
