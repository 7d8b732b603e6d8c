// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/bill.h"

#include <gtest/gtest.h>

#include <cmath>

#include "cost/crew_calendar.h"
#include "plan/solve.h"
#include "plan/ways.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

const BillLine* line(const Bill& bill, const std::string& key) {
  for (const BillLine& l : bill.lines)
    if (l.key == key) return &l;
  return nullptr;
}

const BillLine& at(const Bill& bill, const std::string& key) {
  const BillLine* l = line(bill, key);
  EXPECT_NE(l, nullptr) << key;
  static const BillLine none;
  return l != nullptr ? *l : none;
}

struct BillTest : testing::Test {
  Plan plan = sample::half_acre();
  Bill bill() const { return *solve(plan).bill; }
};

TEST_F(BillTest, CountsTheHalfAcreAsAPersonWould) {
  plan.flow.run_size = "1-1/4 in DR 11";
  plan.flow.header_sizes = {"1-1/4 in DR 11"};
  const Outcome o = solve(plan);
  const Bill& b = *o.bill;
  ASSERT_EQ(o.layout.trenches.size(), 4u);
  // Four coils of 800 ft and two tails of 0.6 m each, one out of each roll of 1000 ft.
  const BillLine& coils = at(b, "pipe_3_4_in_dr_11_coils");
  EXPECT_NEAR(coils.needed, 4 * (243.84 + 1.2), 0.05);
  EXPECT_EQ(coils.bought.packs, (std::vector<PackCount>{{304.8, 4}}));
  EXPECT_NEAR(coils.sum, 4 * 304.8 * 2.2, 1e-6);
  // Ends of the circuits stay plugged until they are joined.
  EXPECT_EQ(at(b, "cap_3_4_in").needed, 8);
  double trench = 0;
  for (const Trench& t : o.layout.trenches) trench += length_of(t);
  trench += o.layout.header.length + o.layout.run.length;
  EXPECT_NEAR(at(b, "tracer_wire").needed, trench, 0.01);
  EXPECT_NEAR(at(b, "warning_tape").needed, trench, 0.01);
  EXPECT_NEAR(at(b, "propylene_glycol").needed, 1000 * o.flow->antifreeze.concentrate, 1e-9);
  EXPECT_NEAR(at(b, "insulation").needed, 2 * 1.524, 1e-9);
  EXPECT_NEAR(at(b, "lawn").needed, o.work->torn.lawn, 1e-9);
  EXPECT_NEAR(at(b, "seed").needed, 0.02 * o.work->torn.lawn, 1e-9);
}

// Loose earth is swollen by a quarter, filled earth shrunk by a tenth of what it was in place: what the
// trenches take more than they gave is bought by the cubic yard, what they give more is hauled off.
TEST_F(BillTest, EarthThatIsShortIsBoughtAndEarthLeftOverIsHauledOff) {
  plan.ground.swell = 0.25;
  plan.ground.shrinkage = 0.10;
  const Outcome dense = solve(plan);
  const EarthWork& all = dense.dig.total;
  const double missing = 1.25 * (all.backfill / 0.9 - all.bank);
  ASSERT_GT(missing, 0.1);
  EXPECT_NEAR(at(*dense.bill, "fill_earth").needed, missing, 1e-6);
  EXPECT_NEAR(at(*dense.bill, "fill_earth").bought.amount,
              std::ceil(missing / 0.764554857984) * 0.764554857984, 1e-6);
  EXPECT_EQ(line(*dense.bill, "earth_off"), nullptr);
  plan.ground.shrinkage = 0;
  const Outcome loose = solve(plan);
  EXPECT_NEAR(at(*loose.bill, "earth_off").needed, 1.25 * loose.dig.total.bedding, 1e-6);
  EXPECT_EQ(line(*loose.bill, "fill_earth"), nullptr);
}

// Both pipes of header and run with 5 % for cuts, cut off for the buyer at a quarter more than by the roll.
TEST_F(BillTest, AFewMetresOfPipeAreNotAWholeRoll) {
  plan.flow.run_size = "1-1/4 in DR 11";
  plan.flow.header_sizes = {"1-1/4 in DR 11"};
  const BillLine& header = at(bill(), "pipe_1_1_4_in_dr_11");
  ASSERT_LT(header.needed, 91.44 / 1.25);
  EXPECT_NEAR(header.bought.amount, header.needed, 1e-6);
  EXPECT_NEAR(header.sum, header.needed * plan.wishes.prices.header_pipe * 1.25, 1e-6);
  EXPECT_NEAR(*header.price, plan.wishes.prices.header_pipe * 1.25, 1e-9);
}

// What is left over is written down roll by roll: 1000 ft less a coil of 800 ft and its tails.
TEST_F(BillTest, TellsWhichCoilComesFromWhichRoll) {
  plan.flow.run_size = "1-1/4 in DR 11";
  plan.flow.header_sizes = {"1-1/4 in DR 11"};
  const BillLine coils = at(bill(), "pipe_3_4_in_dr_11_coils");
  ASSERT_EQ(coils.bought.rolls.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) {
    const Roll& roll = coils.bought.rolls[i];
    ASSERT_EQ(roll.pieces.size(), 1u);
    EXPECT_EQ(coils.pieces.at(static_cast<std::size_t>(roll.pieces[0])),
              "coil of trench " + std::to_string(i + 1));
    EXPECT_NEAR(roll.left, 304.8 - 243.84 - 1.2, 0.05);
  }
}

TEST_F(BillTest, ARollOfItsOwnPriceIsBoughtWhereItIsCheaper) {
  plan.flow.run_size = "1-1/4 in DR 11";
  plan.flow.header_sizes = {"1-1/4 in DR 11"};
  PriceRow pipe = row_of(plan.pricing.book, plan.wishes, pipe_key(plan.wishes.pipe));
  pipe.packs = {250, 304.8};
  pipe.pack_prices = {2.1, 2.2};
  set_row(plan.pricing.book, plan.wishes, pipe);
  const BillLine coils = at(bill(), "pipe_3_4_in_dr_11_coils");
  EXPECT_EQ(coils.bought.packs, (std::vector<PackCount>{{250, 4}}));
  EXPECT_NEAR(coils.sum, 4 * 250 * 2.1, 1e-6);
}

// Each roll of 1000 ft leaves 196 ft: enough for a header.
TEST_F(BillTest, AHeaderOfTheCoilsSizeComesOutOfWhatTheRollsLeave) {
  plan.flow.run_size = "1-1/4 in DR 11";
  plan.flow.header_sizes = {"3/4 in DR 11"};
  const Bill b = bill();
  EXPECT_EQ(line(b, "pipe_3_4_in_dr_11"), nullptr);
  EXPECT_GT(at(b, "pipe_3_4_in_dr_11_coils").needed, 4 * (243.84 + 1.2) + 1);
  EXPECT_EQ(at(b, "pipe_3_4_in_dr_11_coils").bought.packs, (std::vector<PackCount>{{304.8, 4}}));
}

// Supply and return each: three circuits leave by a tee, the last by an elbow. Counted by hand, not by the
// network.
TEST_F(BillTest, TeesAndElbowsOfADirectHeader) {
  plan.flow.run_size = "1-1/4 in DR 11";
  plan.flow.header_sizes = {"1-1/4 in DR 11"};
  const Outcome o = solve(plan);
  const Bill& b = *o.bill;
  EXPECT_EQ(at(b, "union_1_1_4_in").needed, 2);
  double tees = 0, reducers = 0, small_elbows = 0;
  for (const BillLine& l : b.lines) {
    if (l.row.starts_with("tee ")) tees += l.needed;
    if (l.row.starts_with("reducer ")) reducers += l.needed;
    if (l.row == "elbow 90 3/4 in") small_elbows += l.needed;
  }
  // Heads in one row, the run comes in at its one end: all circuits but the last leave by a tee, that one by
  // an elbow; every end of a circuit changes size once.
  EXPECT_EQ(small_elbows, 2);
  EXPECT_EQ(tees, 2 * 3);
  EXPECT_EQ(reducers, 2 * 4);
}

TEST_F(BillTest, LinesAddUpToThePrice) {
  plan.pricing.terms = {
      LabourBy::days, 0.10, 0.20, 0.07, TaxOn::materials, {{"Permit", 2, "each", 150, false}}, {}};
  const Bill b = bill();
  double sum = 0, goods = 0;
  for (const BillLine& l : b.lines) {
    EXPECT_NEAR(l.sum, l.price.value_or(0) * l.bought.amount, 1e-9) << l.key;
    EXPECT_GE(l.bought.amount, l.needed * (1 - 1e-9)) << l.key;
    EXPECT_FALSE(l.how.empty()) << l.key;
    sum += l.sum;
    if (l.material) goods += l.sum;
  }
  EXPECT_NEAR(b.cost, sum, 1e-6);
  EXPECT_NEAR(at(b, "own_1").sum, 300, 1e-12);
  EXPECT_NEAR(b.price, sum * 1.10 * 1.20 + 0.07 * goods, 1e-6);
  EXPECT_EQ(b.net, b.price);
  plan.pricing.terms.tax_on = TaxOn::everything;
  EXPECT_NEAR(bill().price, sum * 1.10 * 1.20 * 1.07, 1e-6);
}

TEST_F(BillTest, IncentivesAreCappedAndNeverMoreThanThePrice) {
  const double price = bill().price;
  plan.pricing.terms.incentives = {{"State", IncentiveKind::percent, 0.30, 1000.0},
                                   {"Utility", IncentiveKind::fixed, 500, {}},
                                   {"Federal", IncentiveKind::percent, 0.30, {}}};
  EXPECT_NEAR(bill().net, price - 1000 - 500 - 0.30 * price, 1e-6);
  plan.pricing.terms.incentives.push_back({"Too much", IncentiveKind::fixed, 1e8, {}});
  EXPECT_EQ(bill().net, 0);
}

TEST_F(BillTest, HoursInsteadOfDays) {
  plan.pricing.terms.labour = LabourBy::hours;
  const Outcome o = solve(plan);
  const Bill& b = *o.bill;
  EXPECT_EQ(line(b, "digging"), nullptr);
  EXPECT_EQ(line(b, "crew_day"), nullptr);
  EXPECT_NEAR(at(b, "excavator_hour").needed, o.work->time.digging / 3600, 1e-9);
  EXPECT_NEAR(at(b, "coil_maker_hour").needed, o.work->time.making / 3600, 1e-9);
}

TEST_F(BillTest, ThePriceOfTheLayoutIsThePriceOfTheBill) {
  plan.wishes.prices.lawn = 11;
  const Outcome o = solve(plan);
  EXPECT_NEAR(at(*o.bill, "lawn").sum, 11 * o.work->torn.lawn, 1e-9);
  EXPECT_NEAR(at(*o.bill, "digging").sum, plan.wishes.prices.digging * o.dig.total.bank, 1e-9);
  EXPECT_NEAR(at(*o.bill, "crew_day").sum, plan.wishes.prices.crew_day * o.calendar->days_worked, 1e-9);
}

TEST_F(BillTest, SaysWhatIsMissingOldOrJoined) {
  const auto has = [&](const std::string& rule) {
    for (const Finding& f : solve(plan).findings)
      if (f.rule == rule) return true;
    return false;
  };
  EXPECT_FALSE(has("price_missing"));
  EXPECT_FALSE(has("price_old"));
  EXPECT_FALSE(has("pipe_joined"));
  PriceRow tie = row_of(plan.pricing.book, plan.wishes, "tie");
  tie.price.reset();
  set_row(plan.pricing.book, plan.wishes, tie);
  EXPECT_TRUE(has("price_missing"));
  for (const Finding& f : solve(plan).findings)
    if (f.rule == "price_missing") {
      EXPECT_NE(f.title.find("Tie"), std::string::npos) << f.title;
      EXPECT_EQ(f.measured, f.required);  // how many lines is no measure of anything asked
    }
  PriceRow tape = row_of(plan.pricing.book, plan.wishes, "warning_tape");
  tape.date = "2020-01-01";
  set_row(plan.pricing.book, plan.wishes, tape);
  EXPECT_FALSE(has("price_old"));
  plan.pricing.book.date = "2026-01-01";
  EXPECT_TRUE(has("price_old"));
  PriceRow pipe = row_of(plan.pricing.book, plan.wishes, pipe_key(plan.wishes.pipe));
  pipe.packs = {152.4};
  set_row(plan.pricing.book, plan.wishes, pipe);
  EXPECT_TRUE(has("pipe_joined"));
  EXPECT_EQ(at(bill(), "coupling_3_4_in").needed, 4);
}

TEST_F(BillTest, AHeatPumpThatIsALineOfItsOwnTooIsPointedOut) {
  const auto has = [&] {
    return std::ranges::any_of(solve(plan).findings,
                               [](const Finding& f) { return f.rule == "heat_pump_twice"; });
  };
  plan.pricing.terms.extras = {{"Heat Pump, 3 ton", 1, "each", 11500, false}};
  EXPECT_FALSE(has());
  plan.pricing.running.unit_cost = 11500;
  EXPECT_TRUE(has());
  plan.pricing.terms.extras[0].item = "Bomba de calor";
  EXPECT_TRUE(has());
  plan.pricing.terms.extras[0].item = "Permit";
  EXPECT_FALSE(has());
}

TEST_F(BillTest, TheLayoutsDiggingPriceIsComparedWithHours) {
  const auto has = [&] {
    for (const Finding& f : solve(plan).findings)
      if (f.rule == "digging_price_apart") return true;
    return false;
  };
  plan.wishes.aim = Aim::cost;
  plan.wishes.prices.digging = 400;
  EXPECT_FALSE(has());
  plan.pricing.terms.labour = LabourBy::hours;
  EXPECT_TRUE(has());
}

TEST_F(BillTest, OutOfBoundsThereIsNoBillButATrouble) {
  plan.pricing.terms.overhead = -1;
  plan.pricing.running.others.push_back({});
  const Outcome o = solve(plan);
  EXPECT_EQ(o.bill, nullptr);
  ASSERT_FALSE(o.troubles.empty());
  EXPECT_EQ(o.troubles.front().code, "overhead_out_of_bounds");
  EXPECT_FALSE(o.layout.trenches.empty());
}

TEST_F(BillTest, FiguresTellWhereEachCountComesFrom) {
  const Outcome o = solve(plan);
  for (const BillLine& l : o.bill->lines) {
    const Figure& cost = o.figures.at("cost." + l.key);
    EXPECT_NEAR(cost.value, o.figures.at("amount." + l.key).value * o.figures.at("price." + l.key).value,
                1e-6 * std::max(1.0, cost.value))
        << l.key;
    EXPECT_FALSE(o.figures.at("need." + l.key).method.empty());
  }
  EXPECT_EQ(o.figures.at("cost.total").value, o.bill->price);
}

}  // namespace
}  // namespace underlawn
