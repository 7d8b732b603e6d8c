// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "cli/verb.h"

namespace underlawn::cli {
namespace {

const Verb& sheet() {
  return *find_verb("sheet");
}

std::string refusal(const std::vector<std::string>& words) {
  const auto arguments = parse_arguments(sheet(), words);
  return arguments ? "understood" : arguments.error().thing;
}

}  // namespace

TEST(Arguments, TakeOptionsBeforeAndBehindPlaces) {
  for (const std::vector<std::string>& words : {std::vector<std::string>{"p", "--scale", "240", "--paper=a3"},
                                                {"--paper", "a3", "--scale=240", "p"},
                                                {"--scale", "240", "p", "--paper", "a3"}}) {
    const auto arguments = parse_arguments(sheet(), words);
    ASSERT_TRUE(arguments.has_value());
    EXPECT_EQ(arguments->places, std::vector<std::string>{"p"});
    EXPECT_EQ(arguments->value("--scale"), "240");
    EXPECT_EQ(arguments->value("--paper"), "a3");
    EXPECT_EQ(arguments->value("--out"), std::nullopt);
  }
}

TEST(Arguments, TakeEverythingBehindTwoDashesAsAPlace) {
  const auto arguments = parse_arguments(sheet(), {"--", "--scale"});
  ASSERT_TRUE(arguments.has_value());
  EXPECT_EQ(arguments->places, std::vector<std::string>{"--scale"});
}

TEST(Arguments, SayWhatIsWrong) {
  EXPECT_EQ(refusal({}), "sheet needs PLAN");
  EXPECT_EQ(refusal({"p", "q"}), "sheet does not know what to do with “q”");
  EXPECT_EQ(refusal({"p", "--colour"}), "sheet has no option --colour");
  EXPECT_EQ(refusal({"p", "--scale"}), "--scale needs N");
  EXPECT_EQ(refusal({"p", "--scale", "1", "--scale", "2"}), "--scale is given twice");
  EXPECT_EQ(parse_arguments(*find_verb("resave"), {"p", "--strict=yes"}).error().thing,
            "--strict takes no value");
}

TEST(Verbs, HaveNamesOfTheirOwnAndAreExplained) {
  std::set<std::string> names;
  for (const Verb& verb : verbs()) {
    EXPECT_TRUE(names.insert(verb.name).second) << verb.name;
    EXPECT_FALSE(verb.summary.empty()) << verb.name;
    EXPECT_FALSE(verb.details.empty()) << verb.name;
    for (const Option& option : verb.options) EXPECT_FALSE(option.help.empty()) << option.name;
  }
}

}  // namespace underlawn::cli
