// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/csv.h"

#include <gtest/gtest.h>

#include "support/mutated_text.h"

namespace underlawn {
namespace {

std::vector<std::vector<std::string>> rows(std::string_view text) {
  const auto table = csv_from_text(text, "bad", "the table");
  EXPECT_TRUE(table) << (table ? "" : table.error().message());
  std::vector<std::vector<std::string>> all;
  if (table)
    for (const CsvRow& r : table->rows) all.push_back(r.fields);
  return all;
}

using Rows = std::vector<std::vector<std::string>>;

// RFC 4180, section 2, rules 1, 2, 5, 6 and 7 with its own examples.
TEST(Csv, ReadsTheExamplesOfRfc4180) {
  EXPECT_EQ(rows("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows("aaa,bbb,ccc\r\nzzz,yyy,xxx"), (Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
  EXPECT_EQ(rows("\"aaa\",\"b\"\"bb\",\"ccc\""), (Rows{{"aaa", "b\"bb", "ccc"}}));
}

TEST(Csv, TakesOtherEndsOfLinesSeparatorsAndAByteOrderMark) {
  EXPECT_EQ(rows("\xEF\xBB\xBFkey;price\nx;1,5\n\n;\ny;2"),
            (Rows{{"key", "price"}, {"x", "1,5"}, {"y", "2"}}));
  EXPECT_EQ(rows("a\tb\r1\t2\r"), (Rows{{"a", "b"}, {"1", "2"}}));
  EXPECT_EQ(csv_from_text("a\nb\n\"c\nd\"\ne", "bad", "t")->rows.back().line, 5);
}

TEST(Csv, RefusesWhatItCannotBe) {
  const auto why = [](std::string_view text, std::size_t most = 100) {
    const auto table = csv_from_text(text, "bad", "the table", most);
    return table ? std::string("taken") : table.error().message();
  };
  EXPECT_NE(why("a,\"b").find("never closed"), std::string::npos);
  EXPECT_NE(why("a,\"b\"c").find("behind a closing quote"), std::string::npos);
  EXPECT_NE(why(std::string_view("a\0b", 3)).find("NUL"), std::string::npos);
  EXPECT_NE(why("pr\xE9"
                "ce,1")
                .find("UTF-8"),
            std::string::npos);
  EXPECT_NE(why("\xC3").find("UTF-8"), std::string::npos);
  EXPECT_NE(why("a\nb\nc", 2).find("more than 2 rows"), std::string::npos);
}

TEST(Csv, WhatIsWrittenIsReadBack) {
  const std::vector<std::string> fields = {"plain", "with, comma", "a \"quote\"", "two\r\nlines",
                                           "",      " blank ",     "é;\t"};
  EXPECT_EQ(rows(csv_line(fields)), Rows{fields});
}

TEST(Csv, NoSpoiledTextBreaksIt) {
  std::mt19937 random(4180);
  const std::string whole = csv_line({"key", "a \"b\"", "c\nd"}) + csv_line({"x", "1.5", ""});
  for (int i = 0; i < 5000; ++i) {
    const auto table = csv_from_text(mutated(whole, random), "bad", "the table");
    if (!table) {
      EXPECT_FALSE(table.error().message().empty());
    }
  }
}

}  // namespace
}  // namespace underlawn
