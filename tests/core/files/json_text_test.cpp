// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/json_text.h"

#include <gtest/gtest.h>

namespace underlawn {
namespace {

std::string laid_out(const char* json) {
  return json_to_text(Json::parse(json));
}

}  // namespace

TEST(JsonText, PutsKeysOnLinesAndRecordsOnOneLine) {
  EXPECT_EQ(laid_out(R"({"b":1,"a":{"x":[1,2],"y":[]},"list":[{"p":[[1,2],[3,4]],"q":{}},{"p":null}]})"),
            "{\n"
            "  \"b\": 1,\n"
            "  \"a\": {\n"
            "    \"x\": [1, 2],\n"
            "    \"y\": []\n"
            "  },\n"
            "  \"list\": [\n"
            "    {\"p\": [[1, 2], [3, 4]], \"q\": {}},\n"
            "    {\"p\": null}\n"
            "  ]\n"
            "}\n");
}

TEST(JsonText, WritesNumbersThatReadBackTheSame) {
  for (double value : {0.1, 1.0 / 3, 5e-324, -1.7976931348623157e308, 3.048, 1e22, -0.0}) {
    const Json back = json_from_text(json_to_text(Json{{"v", value}}), "it")->value;
    EXPECT_EQ(back["v"].get<double>(), value);
    EXPECT_EQ(std::signbit(back["v"].get<double>()), std::signbit(value));
  }
}

TEST(JsonText, EscapesWhatMustBe) {
  EXPECT_EQ(laid_out(R"(["\n\"\u0001ä"])"), "[\"\\n\\\"\\u0001ä\"]\n");
  EXPECT_EQ(json_to_text(Json{{"k\xff", "v\xff"}}), "{\n  \"k\uFFFD\": \"v\uFFFD\"\n}\n");
}

TEST(JsonText, CountsColumnsInCharacters) {
  const auto read = json_from_text("[1,\n \"äöü\" x]", "it");
  ASSERT_FALSE(read.has_value());
  EXPECT_THAT(read.error().message(), testing::StartsWith("It is not JSON from line 2, column 8 on"));
}

TEST(JsonText, SkipsAByteOrderMark) {
  EXPECT_TRUE(json_from_text("\xef\xbb\xbf[1]", "it").has_value());
}

}  // namespace underlawn
