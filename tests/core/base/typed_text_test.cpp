// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/typed_text.h"

#include <gtest/gtest.h>

namespace underlawn {

TEST(TypedText, MakesPlainWhatKeyboardsAndProgramsMakePretty) {
  EXPECT_EQ(typed_text("6′ 3½″").plain, "6' 3 1/2\"");
  EXPECT_EQ(typed_text("6’3”").plain, "6'3\"");
  EXPECT_EQ(typed_text("6''").plain, "6\"");
  EXPECT_EQ(typed_text("½ in").plain, "1/2 in");
  EXPECT_EQ(typed_text("3⁄4").plain, "3/4");
  EXPECT_EQ(typed_text("−5 °F").plain, "-5 degF");
  EXPECT_EQ(typed_text("2\u00a0×\u00a03\u202fm²").plain, "2 * 3 m2");
}

TEST(TypedText, KnowsWhereEachByteStood) {
  const TypedText typed = typed_text("6′½x");
  EXPECT_EQ(typed.plain, "6'1/2x");
  EXPECT_EQ(typed.place, (std::vector<int>{1, 2, 3, 3, 3, 4, 5}));
}

TEST(InQuotes, IsShortAndAlwaysUtf8) {
  EXPECT_EQ(in_quotes("5 gpm"), "“5 gpm”");
  EXPECT_EQ(in_quotes("a\nb\x7f"), "“ab”");
  EXPECT_EQ(in_quotes("\xff"), "“\uFFFD”");
  EXPECT_EQ(in_quotes(std::string(1000, 'x')), "“" + std::string(40, 'x') + "…”");
  EXPECT_EQ(in_quotes("abcdef", 3), "“abc…”");
}

}  // namespace underlawn
