// SPDX-License-Identifier: GPL-3.0-or-later
// The pages for the family: what they say is what bill, comparison and calendar have, read back from the PDF
// by poppler.
#include <gtest/gtest.h>

#include <QRegularExpression>
#include <cmath>

#include "app/support/pdf_tools.h"
#include "cost/bill.h"
#include "cost/comparison.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "files/plan_file.h"
#include "plan/clearings.h"
#include "plan/laid_solver.h"
#include "plan/solve.h"
#include "sheets/family_facts.h"
#include "sheets/proposal_blocks.h"
#include "sheets/sheet_kinds.h"
#include "sheets/sheets_out.h"
#include "sheets/works_at.h"
#include "window/kitchen_view.h"

using namespace underlawn;

namespace {

struct Solved {
  Plan plan;
  Outcome outcome;
};

Solved solved(Plan plan) {
  Outcome outcome = solve(plan);
  return {std::move(plan), std::move(outcome)};
}

Plan sample_file(const std::string& name) {
  auto plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn");
  EXPECT_TRUE(plan.has_value()) << name;
  return plan->value;
}

const Solved& alder() {
  static const Solved all = solved(sample_file("alder-lane"));
  return all;
}

const Solved& kestrel() {
  static const Solved all = solved(sample_file("kestrel-bend"));
  return all;
}

QString pages_of(const Solved& s, Paper paper = Paper::letter) {
  const SheetPtr sheet = find_sheet_kind("proposal")->make(s.plan, s.outcome, {paper, {}, QDate(2026, 5, 4)});
  return pdf::text_in_order(pdf_of(*sheet)).simplified();
}

int number_of_pages(const Solved& s, Paper paper) {
  return find_sheet_kind("proposal")->make(s.plan, s.outcome, {paper, {}, QDate(2026, 5, 4)})->pages();
}

// "$39,800 to $42,300" as numbers.
std::pair<double, double> range_in(QString words) {
  const QRegularExpression two(R"(\$([\d,]+) to \$([\d,]+))");
  const auto match = two.match(words);
  const auto number = [&](int i) { return match.captured(i).remove(',').toDouble(); };
  return {number(1), number(2)};
}

// Rounded outward to three figures: at most one part in a hundred.
void expect_outward(std::pair<double, double> shown, double low, double high) {
  EXPECT_LE(shown.first, low + 0.5);
  EXPECT_GE(shown.first, 0.99 * low);
  EXPECT_GE(shown.second, high - 0.5);
  EXPECT_LE(shown.second, 1.01 * high);
}

}  // namespace

TEST(Family, PriceIsTheBillsWithTheHeatPumpAndTheDaysKeptForRain) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const QString text = pages_of(*s);
    const Bill& bill = *s->outcome.bill;
    const OfferTerms& terms = s->plan.pricing.terms;
    int rain = 0;
    for (const CrewDay& day : s->outcome.calendar->days) rain += day.reserve;
    ASSERT_GT(rain, 0);
    // A day more of the crew, charged as the bill charges it.
    const double day = s->plan.wishes.prices.crew_day * (1 + terms.overhead) * (1 + terms.markup);
    const double low = bill.net + s->plan.pricing.running.unit_cost;
    const auto at = text.indexOf("Price in all");
    ASSERT_GT(at, 0);
    // pdftotext -raw has the amount behind the note.
    expect_outward(range_in(text.mid(at, 160)), low, low + rain * day);
    // Everything dug again with all sides laid back.
    Plan laid_back = s->plan;
    laid_back.dig.coil_sides = laid_back.dig.run_sides = Sides::slope;
    LaidSolver solver;
    const Outcome dug = solver.solve(laid_back, s->outcome.layout);
    const double sloped = dug.bill->net + s->plan.pricing.running.unit_cost;
    // Said three times: on the first page, among the risks, and neither differs.
    EXPECT_EQ(text.count("nearer " + money(s->plan, sloped)), 2);
    EXPECT_EQ(text.count(QString("one day of rain (%1)").arg(money(s->plan, day))), rain == 1 ? 3 : 0);
    EXPECT_TRUE(text.contains("built for " + money_range(s->plan, low, low + rain * day)));
  }
}

TEST(Family, SavingsAreThoseOfTheComparisonOverTheSpreadOfTheNeed) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const FamilyFacts facts = family_facts(s->plan, s->outcome);
    const Comparison& c = *s->outcome.comparison;
    ASSERT_EQ(facts.others.size(), c.others.size());
    ASSERT_EQ(facts.others.size(), 2u);
    // 5 and 95 % of a lognormal with sigma 0.1: exp(-+1.645 x 0.1), a table's quantile of the normal.
    const double less = std::exp(-0.1645), more = std::exp(0.1645);
    const QString text = pages_of(*s);
    for (std::size_t i = 0; i < c.others.size(); ++i) {
      const OtherWay& way = facts.others[i];
      EXPECT_DOUBLE_EQ(way.bill, c.others[i].running_today);
      EXPECT_DOUBLE_EQ(way.saved, c.against[i].saved_first);
      const double energy = c.others[i].energy_today - c.loop.energy_today, upkeep = way.saved - energy;
      EXPECT_NEAR(way.saves.low, less * energy + upkeep, 1e-6 * std::abs(energy));
      EXPECT_NEAR(way.saves.high, more * energy + upkeep, 1e-6 * std::abs(energy));
      if (way.payback && c.against[i].simple) {
        EXPECT_LE(way.payback->low, *c.against[i].simple);
        EXPECT_GE(way.payback->high, *c.against[i].simple);
      }
      EXPECT_TRUE(text.contains(money_range(s->plan, way.bills.low, way.bills.high)));
      EXPECT_TRUE(text.contains(money_range(s->plan, way.saves.low, way.saves.high)));
    }
    EXPECT_TRUE(text.contains("between 15 % less and 18 % more"));
    EXPECT_TRUE(text.contains("what it costs and saves"));
  }
}

TEST(Family, WithoutThePriceOfTheHeatPumpNothingIsPaidBack) {
  Solved s = alder();
  s.plan.pricing.running.unit_cost = 0;
  s.plan.pricing.terms.extras.clear();
  s.outcome = solve(s.plan);
  for (const OtherWay& way : family_facts(s.plan, s.outcome).others) EXPECT_FALSE(way.payback || way.years);
  const QString text = pages_of(s);
  EXPECT_EQ(text.count("not reckoned"), 2);
  EXPECT_TRUE(text.contains("no payback is reckoned"));
  EXPECT_TRUE(text.contains("The ground loop, no heat pump"));
}

TEST(Family, WithNothingToCompareNoSavingIsPromised) {
  Solved s = alder();
  s.plan.pricing.running.others.clear();
  s.outcome = solve(s.plan);
  const QString text = pages_of(s);
  EXPECT_FALSE(text.contains("save"));
  EXPECT_TRUE(text.contains("What it costs"));
  for (const KitchenScene& scene : kitchen_scenes(s.plan, s.outcome)) {
    EXPECT_FALSE(scene.title.contains("save"));
    for (const auto& [number, words] : scene.amounts) EXPECT_FALSE(words.contains("saved"));
  }
}

TEST(Family, WhereNobodyAnswersForItThereIsNothingToSign) {
  Solved s = alder();
  EXPECT_EQ(pages_of(s).count("Tom Varga date"), 1);
  s.plan.proposal.guarantee.clear();
  const QString text = pages_of(s);
  EXPECT_FALSE(text.contains("We agree"));
  EXPECT_TRUE(text.contains("To be agreed in writing"));
}

TEST(Family, SignatureNamesPricePagesPlanAndDay) {
  const QString text = pages_of(alder());
  const QString agreed = text.mid(text.indexOf("We agree"), 260);
  for (const QString& part : {QString("$"), QString("these 4 pages"), QString("4 May 2026"),
                              QString::fromStdString(alder().outcome.fingerprint)})
    EXPECT_TRUE(agreed.contains(part)) << part.toStdString() << agreed.toStdString();
}

TEST(Family, OwnersSignEachOnALineOfTheirOwn) {
  using sheet::owners_of;
  EXPECT_EQ(owners_of("Ines and Tom Varga"), (QStringList{"Ines Varga", "Tom Varga"}));
  EXPECT_EQ(owners_of("Dana Okafor"), QStringList{"Dana Okafor"});
  EXPECT_EQ(owners_of("Ana Ruiz y Luis Paz"), (QStringList{"Ana Ruiz", "Luis Paz"}));
  EXPECT_EQ(owners_of("Andy Sandholm"), QStringList{"Andy Sandholm"});
  EXPECT_TRUE(owners_of("").isEmpty());
}

TEST(Family, AFourPageProposalOnBothPapersInBothUnits) {
  for (Solved s : {alder(), kestrel()})
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      s.plan.units = units;
      EXPECT_EQ(number_of_pages(s, Paper::letter), 4);
      EXPECT_EQ(number_of_pages(s, Paper::a4), 4);
    }
}

TEST(Family, MostIsOpenWhenTheCalendarSaysSo) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const CrewCalendar& c = *s->outcome.calendar;
    // Minute by minute, without the search.
    int most = 0;
    for (double t = 0; t < c.filled; t += 60) {
      int open = 0;
      for (const OpenTrench& o : c.open)
        open += s->outcome.order->steps[static_cast<std::size_t>(o.step)].kind == DigKind::trench &&
                o.from <= t && t < o.to;
      most = std::max(most, open);
    }
    const auto found = most_open(s->outcome);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->trenches, most);
    int drawn = 0;
    for (const PieceAt& piece : works_at(s->outcome, found->at))
      drawn += s->outcome.order->steps[static_cast<std::size_t>(piece.step)].kind == DigKind::trench &&
               !piece.filled && piece.dug > 0;
    EXPECT_EQ(drawn, most);
    EXPECT_TRUE(pages_of(*s).contains(QString("Day %1 of %2, when most is open: %3 of the %4")
                                          .arg(found->day)
                                          .arg(c.days_worked)
                                          .arg(most)
                                          .arg(s->outcome.layout.trenches.size())));
  }
}

TEST(Family, AtTheBeginningNothingIsOpenAndAtTheEndAllIsFilled) {
  const Outcome& outcome = alder().outcome;
  EXPECT_TRUE(works_at(outcome, 0).empty());
  const auto last = works_at(outcome, outcome.calendar->filled);
  EXPECT_EQ(last.size(), outcome.order->steps.size());
  for (const PieceAt& piece : last) {
    EXPECT_TRUE(piece.filled);
    EXPECT_FALSE(piece.earth);
  }
}

TEST(Family, ADayTellsWhatItsTasksAre) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const auto days = work_days(s->plan, s->outcome);
    const CrewCalendar& c = *s->outcome.calendar;
    for (const CrewTask& task : c.tasks) {
      if (task.station != CrewStation::testing || task.step >= 0) continue;  // of the whole loop
      for (std::size_t d = 0; d < days.size(); ++d) {
        const double from = static_cast<double>(d) * c.day_length;
        EXPECT_EQ(days[d].sentence.contains("tested"),
                  task.begin < from + c.day_length - 1 && task.end > from + 1)
            << d;
      }
    }
  }
}

TEST(Family, DistancesAreThoseToEverythingThatPeopleAskFor) {
  const auto all = loved(alder().plan, alder().outcome);
  for (const char* name : {"House", "Septic tank", "Drain field", "Reserve field", "Well", "Lot line",
                           "Sugar maple", "Kitchen garden", "Patio"})
    EXPECT_TRUE(std::ranges::any_of(all, [&](const Loved& l) { return l.name == name; })) << name;
  for (const Loved& l : all) {
    double nearest = 1e9;
    for (const Clearing& c : clearings(alder().plan, alder().outcome))
      if (c.feature_id == l.feature_id) nearest = std::min(nearest, c.measured);
    EXPECT_DOUBLE_EQ(l.distance, nearest) << l.name;
    if (l.name == "Sugar maple") {
      EXPECT_NEAR(l.roots, 18 * 0.3556, 1e-3);  // 18 trunk diameters: 21 ft
    }
  }
}

TEST(Family, FluidIsNamedWithItsAmount) {
  const QString text = pages_of(alder());
  EXPECT_TRUE(text.contains("propylene glycol"));
  EXPECT_TRUE(text.contains(family_volume(alder().plan, alder().outcome.flow->volume) + " in all"));
  EXPECT_TRUE(text.contains("Your well is 40 ft"));
}

TEST(Family, AnAddressThatNamesTheProjectIsSaidOnce) {
  const QString text = pages_of(alder());
  EXPECT_EQ(text.count("Alder Lane"), 1);
}
