// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/price_book.h"

#include <gtest/gtest.h>

#include "pipe/pipe_size.h"

namespace underlawn {
namespace {

struct PriceBookTest : testing::Test {
  PriceBook book;
  Wishes wishes;
  PriceRow row(const std::string& key) { return row_of(book, wishes, key); }
  void set_price(const std::string& key, double price) {
    PriceRow r = row(key);
    r.price = price;
    set_row(book, wishes, r);
  }
};

TEST_F(PriceBookTest, EveryUsualRowHasAPriceAndIsUsual) {
  for (const PriceRow& r : all_rows(book, wishes)) {
    EXPECT_TRUE(r.price && *r.price >= 0) << r.key;
    EXPECT_TRUE(is_usual(book, wishes, r.key)) << r.key;
    EXPECT_FALSE(r.item.empty()) << r.key;
  }
  for (const PipeSize& size : pipe_sizes())
    for (const char* word : {"tee", "elbow 45", "elbow 90", "coupling", "cap", "union"})
      EXPECT_TRUE(usual_row(fitting_key(word, size.nominal))) << word << size.nominal;
  EXPECT_TRUE(usual_row("reducer 2 in x 1 in"));
  EXPECT_FALSE(usual_row("reducer 2 in x 17 in"));
  EXPECT_FALSE(usual_row("tee"));
}

// What the layout weighs and what the bill charges are one number.
TEST_F(PriceBookTest, TheLayoutsPricesAreRowsOfTheBook) {
  wishes.prices.lawn = 7;
  EXPECT_EQ(row("lawn").price, 7);
  set_price("digging", 33);
  EXPECT_EQ(wishes.prices.digging, 33);
  EXPECT_TRUE(book.rows.empty());  // kept once, with the wishes
  set_price("pipe 3/4 in DR 11", 2.5);
  EXPECT_EQ(wishes.prices.coil_pipe, 2.5);
  set_price("pipe 1-1/4 in DR 11", 8);
  EXPECT_EQ(wishes.prices.header_pipe, 8);
}

TEST_F(PriceBookTest, OnlyWhatDiffersIsKept) {
  set_price("tie", 0.3);
  ASSERT_EQ(book.rows.size(), 1u);
  EXPECT_EQ(row("tie").price, 0.3);
  set_price("tie", *usual_row("tie")->price);
  EXPECT_TRUE(book.rows.empty());
  PriceRow dated = row("lawn");
  dated.date = "2026-03-01";
  set_row(book, wishes, dated);
  EXPECT_EQ(book.rows.size(), 1u);
  reset_row(book, wishes, "lawn");
  EXPECT_TRUE(book.rows.empty());
}

TEST_F(PriceBookTest, AnotherSizeComesWithItsPriceAndTheOldOneIsRemembered) {
  wishes.prices.coil_pipe = 2.9;
  set_coil_pipe(book, wishes, "1 in DR 11");
  EXPECT_EQ(wishes.prices.coil_pipe, usual_row("pipe 1 in DR 11")->price);
  EXPECT_EQ(row("pipe 3/4 in DR 11").price, 2.9);
  set_coil_pipe(book, wishes, "3/4 in DR 11");
  EXPECT_EQ(wishes.prices.coil_pipe, 2.9);
}

TEST_F(PriceBookTest, AnUnknownPriceIsNoPrice) {
  PriceRow tie = row("tie");
  tie.price.reset();
  set_row(book, wishes, tie);
  EXPECT_FALSE(row("tie").price);
  EXPECT_FALSE(row("nobody knows").price);
}

TEST_F(PriceBookTest, PricesAreOldAgainstTheOfferOrTheNewest) {
  PriceRow tie = row("tie"), tape = row("warning_tape");
  tie.date = "2024-01-01";
  tape.date = "2026-01-01";
  set_row(book, wishes, tie);
  EXPECT_FALSE(is_old(book, row("tie")));  // the newest there is
  set_row(book, wishes, tape);
  EXPECT_TRUE(is_old(book, row("tie")));
  EXPECT_FALSE(is_old(book, row("warning_tape")));
  book.date = "2027-06-01";
  EXPECT_TRUE(is_old(book, row("warning_tape")));
  book.oldest = 10'000;
  EXPECT_FALSE(is_old(book, row("tie")));
}

}  // namespace
}  // namespace underlawn
