// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/figures/figures.h"

#include <gtest/gtest.h>

#include <set>

#include "cost/price_book.h"
#include "plan/solve.h"
#include "support/crafted.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

std::vector<Plan> plans() {
  std::vector<Plan> all = {sample::half_acre(), sample::tiny_lot(), sample::empty()};
  const auto changed = [&all](auto change) {
    all.push_back(crafted::plan());
    change(all.back());
  };
  changed([](Plan& p) { p.wishes.unknown = CoilUnknown::coil_length; });
  changed([](Plan& p) { p.wishes.unknown = CoilUnknown::trench_length; });
  changed([](Plan& p) { p.ground.repose = -1; });
  changed([](Plan& p) { p.wishes.circuits = 40; });
  changed([](Plan& p) { p.site.entry.reset(); });
  changed([](Plan& p) {
    p.site.features.push_back(
        crafted::feature(2, FeatureKind::drive, {{0, 22}, {100, 22}, {100, 24}, {0, 24}}));
  });
  return all;
}

const std::vector<Figures>& solved() {
  static const std::vector<Figures> figures = [] {
    std::vector<Figures> all;
    for (const Plan& plan : plans()) all.push_back(solve(plan).figures);
    return all;
  }();
  return figures;
}

bool is_leaf(const Figure& f) {
  return f.method == "typed" || f.method.rfind("table", 0) == 0 || f.method.rfind("fixed", 0) == 0;
}

void expect_sound(const Figures& figures) {
  std::set<std::string> before;
  for (const Figure& f : figures.all()) {
    EXPECT_FALSE(f.label.empty()) << f.key;
    EXPECT_FALSE(f.method.empty()) << f.key;
    EXPECT_TRUE(std::isfinite(f.value)) << f.key;
    // Only earlier figures are named, so there is no circle.
    for (const std::string& from : f.from) EXPECT_TRUE(before.count(from)) << f.key << " from " << from;
    EXPECT_TRUE(before.insert(f.key).second) << f.key;
    EXPECT_EQ(f.method == "typed" && !f.from.empty(), false) << f.key;
    // What is neither typed nor worked out from other figures says where it is from.
    EXPECT_TRUE(f.method == "typed" || !f.from.empty() || !f.source.empty()) << f.key;
  }
}

}  // namespace

TEST(MakeFigures, GiveEachKeyOnceWithAMethodAndNameOnlyEarlierFigures) {
  for (const Figures& figures : solved()) expect_sound(figures);
}

TEST(MakeFigures, TraceLeadsDownToWhatWasTypedOrToATable) {
  for (const Figures& figures : solved()) {
    for (const Figure& f : figures.all()) {
      for (const Figure* source : figures.trace(f.key))
        EXPECT_TRUE(!source->from.empty() || is_leaf(*source)) << source->key;
    }
  }
}

TEST(MakeFigures, TheVolumeOfATrenchTracesToWidthDepthAndCoil) {
  const Figures& figures = solved()[0];
  std::set<std::string> found;
  for (const Figure* f : figures.trace("dig.total.loose_volume")) found.insert(f->key);
  for (const char* key : {"dig.trench_width", "dig.trench_depth", "coil.trench_length", "ground.swell",
                          "dig.slope", "site.corner.1.x"})
    EXPECT_TRUE(found.count(key)) << key;
}

TEST(MakeFigures, APriceSaysWhoseItIs) {
  Plan plan = sample::half_acre();
  PriceRow tie = row_of(plan.pricing.book, plan.wishes, "tie");
  tie.price = 0.37;
  set_row(plan.pricing.book, plan.wishes, tie);
  PriceRow pipe = row_of(plan.pricing.book, plan.wishes, pipe_key(plan.wishes.pipe));
  pipe.pack_prices.assign(pipe.packs.size(), 1.5);
  pipe.pack_prices.back() = 1.25;
  set_row(plan.pricing.book, plan.wishes, pipe);
  const Figures figures = solve(plan).figures;
  EXPECT_EQ(figures.at("price.tie").method, "typed");
  EXPECT_EQ(figures.at("price.grout").source, kOwnFigure);
  const Figure& coils = figures.at("price.pipe_3_4_in_dr_11_coils");
  EXPECT_EQ(coils.from, std::vector<std::string>{"amount.pipe_3_4_in_dr_11_coils"});
  EXPECT_FALSE(coils.source.empty());
}

TEST(MakeFigures, AnEmptyPlanShowsWhatIsAsked) {
  const Figures& figures = solved()[2];
  EXPECT_NE(figures.find("coil.pitch"), nullptr);
  EXPECT_EQ(figures.find("site.lot_area"), nullptr);
}

}  // namespace underlawn
