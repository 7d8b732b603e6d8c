// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/figure.h"

#include <gtest/gtest.h>

namespace underlawn {
namespace {

Figure figure(std::string key, std::vector<std::string> from = {}) {
  Figure f;
  f.key = std::move(key);
  f.from = std::move(from);
  return f;
}

std::vector<std::string> keys(const std::vector<const Figure*>& figures) {
  std::vector<std::string> found;
  for (const Figure* f : figures) found.push_back(f->key);
  return found;
}

using Keys = std::vector<std::string>;

}  // namespace

TEST(Figures, KeepTheOrderInWhichTheyWereAdded) {
  Figures all;
  all.add(figure("b"));
  all.add(figure("a"));
  ASSERT_EQ(all.all().size(), 2u);
  EXPECT_EQ(all.all()[0].key, "b");
  EXPECT_EQ(all.at("a").key, "a");
  EXPECT_EQ(all.find("c"), nullptr);
}

TEST(Figures, TraceGoesDepthFirstInTheOrderTheFormulaNames) {
  Figures all;
  all.add(figure("length"));
  all.add(figure("width"));
  all.add(figure("area", {"length", "width"}));
  all.add(figure("depth"));
  all.add(figure("volume", {"area", "depth"}));
  EXPECT_EQ(keys(all.trace("volume")), (Keys{"volume", "area", "length", "width", "depth"}));
  EXPECT_EQ(keys(all.trace("depth")), Keys{"depth"});
}

TEST(Figures, TraceNamesEachFigureOnce) {
  Figures all;
  all.add(figure("side"));
  all.add(figure("square", {"side", "side"}));
  all.add(figure("cube", {"square", "side"}));
  EXPECT_EQ(keys(all.trace("cube")), (Keys{"cube", "square", "side"}));
}

TEST(Figures, TraceOfWhatIsNotThereIsEmptyAndACircleEnds) {
  Figures all;
  all.add(figure("egg", {"hen", "missing"}));
  all.add(figure("hen", {"egg"}));
  EXPECT_TRUE(all.trace("missing").empty());
  EXPECT_EQ(keys(all.trace("egg")), (Keys{"egg", "hen"}));
}

TEST(FiguresDeathTest, RefuseAKeyThatIsThereAlready) {
  Figures all;
  all.add(figure("a"));
  EXPECT_DEATH(all.add(figure("a")), "");
}

TEST(Figures, KeyCarriesTheUnitOfItsQuantity) {
  Figure f = figure("dig.bank_volume");
  f.quantity = Quantity::volume;
  EXPECT_EQ(key_with_unit(f), "dig.bank_volume_m3");
  f.quantity = Quantity::count;
  EXPECT_EQ(key_with_unit(f), "dig.bank_volume");
}

}  // namespace underlawn
