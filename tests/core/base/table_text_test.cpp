// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/table_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using namespace underlawn;
using testing::ElementsAre;

TEST(TableText, LinesEndInEveryWayAndKeepTheirNumbers) {
  const auto lines = text_lines("\xEF\xBB\xBFone\r\ntwo\r\rfour\n \nsix");
  ASSERT_EQ(lines.size(), 4u);
  EXPECT_EQ(lines[0].text, "one");
  EXPECT_EQ(lines[1].number, 2);
  EXPECT_EQ(lines[2].number, 4);
  EXPECT_EQ(lines[3].text, "six");
  EXPECT_EQ(lines[3].number, 6);
}

TEST(TableText, FieldsAreTrimmedAndQuotesHoldSeparators) {
  EXPECT_THAT(fields_of(" a ,\"b, c\",,\" d \" ", ','), ElementsAre("a", "b, c", "", "d"));
  EXPECT_THAT(fields_of("", ','), ElementsAre(""));
  EXPECT_THAT(fields_of("a\tb", '\t'), ElementsAre("a", "b"));
}

TEST(TableText, NumbersAreReadWholeOrNotAtAll) {
  EXPECT_EQ(plain_number("-1.5e2"), -150);
  EXPECT_EQ(plain_number("+7"), 7);
  EXPECT_EQ(plain_number("1,5", ','), 1.5);
  for (const char* text : {"", "+", "-", "1.5x", "1 5", "nan", "inf", "1e999", "0x10", "1,500", "+-1", "--1"})
    EXPECT_FALSE(plain_number(text)) << text;
  EXPECT_FALSE(plain_number("1.5", ','));
  EXPECT_FALSE(plain_number("1,500,000", ','));
  EXPECT_FALSE(plain_number(std::string(1000, '1')));
}

TEST(TableText, SettingsColumnsAndRows) {
  const auto table =
      table_from_text("# a remark\n# Power W m = 5.2\nplace=yard\nTime S;T_c\n1;2,5\n", "c", "log");
  ASSERT_TRUE(table) << table.error().message();
  ASSERT_EQ(table->settings.size(), 2u);
  EXPECT_EQ(table->settings[0].name, "power_w_m");
  EXPECT_EQ(table->settings[0].value, "5.2");
  EXPECT_THAT(table->columns, ElementsAre("time_s", "t_c"));
  EXPECT_EQ(table->separator, ';');
  EXPECT_EQ(table->mark, ',');
  EXPECT_EQ(table->rows.at(0).number, 5);
  EXPECT_EQ(column_of(*table, "t_c"), 1u);
  EXPECT_FALSE(column_of(*table, "t_f"));
}

TEST(TableText, SemicolonsMayGoWithPoints) {
  EXPECT_EQ(table_from_text("a;b\n1;2.5\n", "c", "log")->mark, '.');
}

TEST(TableText, RefusesWhatIsNoTable) {
  EXPECT_EQ(table_from_text("", "c", "log").error().value, "empty");
  EXPECT_EQ(table_from_text("a,b\n", "c", "log").error().value, "without rows");
  EXPECT_EQ(table_from_text(std::string("a\0b\n1\n", 6), "c", "log").error().code, "c");
}
