// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"

#include <thread>

#include "support/catalogues.h"

namespace underlawn {
namespace {

using test::mo_file;

Catalogue spanish() {
  return *Catalogue::read(mo_file({{"", "Language: es\n"},
                                   {"trench", "zanja"},
                                   {"Trench {} is {} deep", "{2} tiene la zanja {1}"},
                                   {"of a day\4open", "abierta"},
                                   {"open", "abrir"}}));
}

TEST(Say, IsEnglishWithoutACatalogue) {
  EXPECT_EQ(say("trench"), "trench");
  EXPECT_EQ(say("Trench {} is {} deep", 3, std::string("6 ft")), "Trench 3 is 6 ft deep");
}

TEST(Say, PutsPartsWhereTheTranslationWantsThem) {
  const Catalogue es = spanish();
  const SpeakHere here(&es);
  EXPECT_EQ(say("trench"), "zanja");
  EXPECT_EQ(say("Trench {} is {} deep", 3, "6 ft"), "6 ft tiene la zanja 3");
  EXPECT_EQ(say("nobody translated {}", "this"), "nobody translated this");
}

TEST(Say, TellsApartByContext) {
  const Catalogue es = spanish();
  const SpeakHere here(&es);
  EXPECT_EQ(say_as("of a day", "open"), "abierta");
  EXPECT_EQ(say("open"), "abrir");
  EXPECT_EQ(say_as("of a mouth", "open"), "open");
}

TEST(Say, PartsAreNotReadForHoles) {
  EXPECT_EQ(say("{} and {}", "{}", "{2}"), "{} and {2}");
}

TEST(Say, EachThreadHasItsOwnLanguage) {
  const Catalogue es = spanish();
  const SpeakHere here(&es);
  std::string there;
  std::thread([&] { there = say("trench"); }).join();
  EXPECT_EQ(there, "trench");
  {
    const SpeakHere english(nullptr);
    EXPECT_EQ(say("trench"), "trench");
  }
  EXPECT_EQ(say("trench"), "zanja");
}

TEST(Say, OneLanguageForEveryThread) {
  const Catalogue es = spanish();
  speak_everywhere(&es);
  std::string there;
  std::thread([&] { there = say("trench"); }).join();
  speak_everywhere(nullptr);
  EXPECT_EQ(there, "zanja");
  EXPECT_EQ(say("trench"), "trench");
}

TEST(Catalogue, ReadsBothByteOrders) {
  for (bool turned : {false, true}) {
    const auto read = Catalogue::read(mo_file({{"", "head"}, {"b", "B"}, {"a", "A"}}, turned));
    ASSERT_TRUE(read);
    EXPECT_EQ(read->size(), 2u);
    EXPECT_EQ(read->find("a"), "A");
    EXPECT_EQ(read->find("c"), std::nullopt);
  }
}

TEST(Catalogue, EveryFileCutShortIsRefusedOrReadWhole) {
  const std::string whole = mo_file({{"trench", "zanja"}, {"coil", "serpentín"}});
  for (std::size_t n = 0; n + 1 < whole.size(); ++n) EXPECT_FALSE(Catalogue::read(whole.substr(0, n))) << n;
  EXPECT_FALSE(Catalogue::read("this is no catalogue, but long enough"));
}

TEST(Catalogue, SpoiledOffsetsDoNoHarm) {
  const std::string whole = mo_file({{"trench", "zanja"}, {"coil", "serpentín"}});
  for (std::size_t at = 4; at < 60; ++at)
    for (char c : {'\xff', '\x7f', '\x01'}) {
      std::string spoiled = whole;
      spoiled[at] = c;
      if (const auto read = Catalogue::read(spoiled)) read->find("trench");
    }
}

TEST(UnsaidWords, AreThoseOutsideTheBrackets) {
  test::Unsaid unsaid;
  unsaid.read("⟦Trench⟧ 3 deep ⟦is ⟦sand⟧ and");
  unsaid.read("more⟧ 6 ft");
  EXPECT_EQ(unsaid.words(), (std::vector<std::string>{"deep", "ft"}));
}

}  // namespace
}  // namespace underlawn
