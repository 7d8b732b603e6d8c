// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/price_csv.h"

#include <gtest/gtest.h>

#include <cmath>

#include "cost/bill.h"
#include "cost/pricing_troubles.h"
#include "plan/solve.h"
#include "support/mutated_text.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

constexpr double kFoot = 0.3048;

struct Read {
  PriceBook book;
  Wishes wishes;
  std::vector<Trouble> remarks;
};

Read read(const std::string& text, UnitSystem units = UnitSystem::us) {
  Read r;
  auto csv = prices_from_csv(text, units);
  EXPECT_TRUE(csv) << (csv ? "" : csv.error().message());
  if (!csv) return r;
  take_prices(r.book, r.wishes, csv->value);
  r.remarks = csv->remarks;
  return r;
}

TEST(PriceCsv, TheUsualBookComesBackWithoutATrace) {
  for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    const Read r = read(price_csv({}, {}, units), units);
    EXPECT_TRUE(r.remarks.empty());
    EXPECT_EQ(r.book, PriceBook{});
    EXPECT_EQ(r.wishes, Wishes{});
  }
}

TEST(PriceCsv, AChangedBookComesBackTheSameInEitherUnits) {
  PriceBook book;
  Wishes wishes;
  PriceRow tape = row_of(book, wishes, "warning_tape");
  tape.price = 0.05 / kFoot;
  tape.date = "2026-03-01";
  tape.note = "\"blue\", 6 in; two\nlines";
  set_row(book, wishes, tape);
  PriceRow own{"own 1", "Trench plate", PriceUnit::day, {}, 85, "", ""};
  set_row(book, wishes, own);
  wishes.prices.lawn = 0.9 / (kFoot * kFoot);
  for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    const Read r = read(price_csv(book, wishes, units), units);
    ASSERT_EQ(r.book.rows.size(), 2u);
    EXPECT_EQ(r.book.rows[0], own);
    EXPECT_NEAR(*r.book.rows[1].price, *tape.price, 1e-9);
    EXPECT_EQ(r.book.rows[1].note, "\"blue\", 6 in; two\nlines");
    EXPECT_NEAR(r.wishes.prices.lawn, wishes.prices.lawn, 1e-8);
  }
}

TEST(PriceCsv, RollsMayHavePricesOfTheirOwnAndAnyLengthBeCut) {
  const std::string key = "pipe 3/4 in DR 11";
  const Read r = read("key,unit,pack,price,pack_price\n" + key + ",ft,1000/Cut/500,0.7,0.6/0.9/0.65\n");
  EXPECT_TRUE(r.remarks.empty());
  const PriceRow pipe = row_of(r.book, r.wishes, key);
  ASSERT_EQ(pipe.packs.size(), 3u);
  EXPECT_EQ(pipe.packs[0], 0);
  EXPECT_NEAR(pipe.packs[2], 304.8, 1e-9);
  ASSERT_EQ(pipe.pack_prices.size(), 3u);
  EXPECT_NEAR(pipe.pack_prices[0], 0.9 / kFoot, 1e-9);
  EXPECT_NEAR(pipe.pack_prices[1], 0.65 / kFoot, 1e-9);
  EXPECT_NEAR(pipe.pack_prices[2], 0.6 / kFoot, 1e-9);
  const Read again = read(price_csv(r.book, r.wishes, UnitSystem::us));
  ASSERT_EQ(again.book.rows.size(), r.book.rows.size());
  for (std::size_t i = 0; i < 3; ++i)
    EXPECT_NEAR(again.book.rows[0].pack_prices[i], pipe.pack_prices[i], 1e-8);
  EXPECT_EQ(read("key,unit,pack,price,pack_price\n" + key + ",ft,500/1000,0.7,0.6\n").remarks.size(), 1u);
}

TEST(PriceCsv, ReadsWhatASpreadsheetMakesOfIt) {
  const Read r =
      read("\xEF\xBB\xBFPrice;Key;Unit;Pack\r\n0,67;pipe 3/4 in DR 11;ft;500 | 1000\r\n;tie;each;\r\n");
  ASSERT_EQ(r.remarks.size(), 1u);  // the tie has no price, which is told
  EXPECT_EQ(r.remarks[0].code, "price_row_without_price");
  EXPECT_NE(r.remarks[0].thing.find("tie"), std::string::npos);
  EXPECT_NEAR(r.wishes.prices.coil_pipe, 0.67 / kFoot, 1e-12);
  const PriceRow pipe = row_of(r.book, r.wishes, "pipe 3/4 in DR 11");
  EXPECT_EQ(pipe.packs.size(), 2u);
  EXPECT_NEAR(pipe.packs[1], 304.8, 1e-9);
  EXPECT_FALSE(row_of(r.book, r.wishes, "tie").price);
}

TEST(PriceCsv, ALineThatCannotBeReadIsNamedAndTheRestIsTaken) {
  const Read r = read(
      "key,item,unit,pack,price,date,note\n"
      "tie,,each,,0.2,,\n"
      "warning_tape,,gal,,1,,\n"
      "grout,,each,,cheap,,\n"
      "seed,,lb,-5,1,,\n"
      "straw,,each,,8,March,\n"
      "sleeve,,cubit,,1,,\n"
      "lawn,,ft2,,-1,,\n"
      "joint,,each,,1e300,,\n");
  EXPECT_EQ(r.book.rows.size(), 1u);
  ASSERT_EQ(r.remarks.size(), 7u);
  for (std::size_t i = 0; i < r.remarks.size(); ++i)
    EXPECT_NE(r.remarks[i].thing.find("line " + std::to_string(i + 3)), std::string::npos)
        << r.remarks[i].thing;
  EXPECT_EQ(r.wishes, Wishes{});
}

// A key misspelt would price nothing and nobody would know; of two rows only one counts.
TEST(PriceCsv, KeysThatNothingHasAndKeysThatComeTwiceAreTold) {
  const Read r = read(
      "key,unit,price\n"
      "warningtape,ft,0.1\n"
      "tie,each,0.2\n"
      "own 7,day,85\n"
      "tie,each,0.3\n");
  ASSERT_EQ(r.remarks.size(), 2u);
  EXPECT_EQ(r.remarks[0].code, "price_key_unknown");
  EXPECT_NE(r.remarks[0].message().find("line 2"), std::string::npos) << r.remarks[0].message();
  EXPECT_NE(r.remarks[0].message().find("warningtape"), std::string::npos);
  EXPECT_EQ(r.remarks[1].code, "price_key_twice");
  EXPECT_NE(r.remarks[1].message().find("line 5"), std::string::npos) << r.remarks[1].message();
  EXPECT_NE(r.remarks[1].message().find("line 3"), std::string::npos);
  EXPECT_NEAR(*row_of(r.book, r.wishes, "tie").price, 0.3, 1e-12);
}

// What a remark points to as "the exported book" has every key that a bill may have.
TEST(PriceCsv, HasEveryRowOfTheBillFittingsToo) {
  Plan plan = sample::half_acre();
  plan.thermal.years = 1;
  const Outcome outcome = solve(plan);
  ASSERT_NE(outcome.bill, nullptr);
  const std::string text = price_csv(plan.pricing.book, plan.wishes, plan.units);
  int fittings = 0;
  for (const BillLine& line : outcome.bill->lines) {
    if (line.row.empty()) continue;
    EXPECT_NE(text.find("\n" + line.row + ","), std::string::npos) << line.row;
    for (const char* word : {"tee ", "elbow ", "reducer ", "union ", "cap "})
      fittings += line.row.starts_with(word);
  }
  EXPECT_GT(fittings, 2);
}

TEST(PriceCsv, RefusesWhatIsNoPriceBook) {
  for (const std::string& text : {std::string(), std::string("name,cost\na,1\n"), std::string("key,price\n"),
                                  std::string("key,price\n\"tie,1\n"),
                                  std::string("key,price\nti\xFF"
                                              ",1\n"),
                                  std::string(5'000'000, 'x')}) {
    const auto csv = prices_from_csv(text, UnitSystem::us);
    ASSERT_FALSE(csv) << text.substr(0, 40);
    EXPECT_FALSE(csv.error().advice.empty());
  }
  std::string many = "key,price\n";
  for (int i = 0; i < 2000; ++i) many += "own " + std::to_string(i) + ",1\n";
  EXPECT_FALSE(prices_from_csv(many, UnitSystem::us));
}

TEST(PriceCsv, TenThousandSpoiledBooks) {
  std::mt19937 random(1896);
  const std::string whole = price_csv({}, {}, UnitSystem::us).substr(0, 2500);
  for (int i = 0; i < 10'000; ++i) {
    const auto csv = prices_from_csv(mutated(whole, random), UnitSystem::us);
    if (!csv) continue;
    Pricing pricing;
    Wishes wishes;
    take_prices(pricing.book, wishes, csv->value);
    const auto troubles = pricing_troubles(pricing, UnitSystem::us);
    ASSERT_TRUE(troubles.empty()) << troubles.front().message();
    EXPECT_TRUE(std::isfinite(wishes.prices.coil_pipe));
  }
}

}  // namespace
}  // namespace underlawn
