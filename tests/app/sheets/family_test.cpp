// SPDX-License-Identifier: GPL-3.0-or-later
// The pages for the family: what they say is what bill, comparison and calendar have, read back from the PDF
// by poppler.
#include <gtest/gtest.h>

#include <QImage>
#include <QLocale>
#include <QPainter>
#include <QRegularExpression>
#include <cmath>

#include "app/support/pdf_tools.h"
#include "cost/bill.h"
#include "cost/comparison.h"
#include "cost/crew_calendar.h"
#include "dig/dig_order.h"
#include "dig/machine_ways.h"
#include "files/plan_file.h"
#include "language/language.h"
#include "plan/clearings.h"
#include "plan/laid_solver.h"
#include "plan/roots_driven.h"
#include "plan/solve.h"
#include "plane/strip.h"
#include "sheets/days_chart.h"
#include "sheets/family_facts.h"
#include "sheets/ground_at.h"
#include "sheets/proposal_blocks.h"
#include "sheets/said_sheet.h"
#include "sheets/sheet_kinds.h"
#include "sheets/sheets_out.h"
#include "sheets/typed_words.h"
#include "sheets/while_dug.h"
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

// Every "$39,812" of a text, in order.
std::vector<double> amounts_in(const QString& words) {
  static const QRegularExpression amount(R"(\$([\d,]+))");
  std::vector<double> all;
  for (auto m = amount.globalMatch(words); m.hasNext();)
    all.push_back(m.next().captured(1).remove(',').toDouble());
  return all;
}

// The first of them; -1 where there is none.
double amount_in(const QString& words) {
  const auto all = amounts_in(words);
  return all.empty() ? -1 : all.front();
}

// What stands behind `after`, up to `length` letters.
QString behind(const QString& text, const QString& after, int length) {
  const auto at = text.indexOf(after);
  EXPECT_GE(at, 0) << after.toStdString();
  return at < 0 ? QString() : text.mid(at + after.size(), length);
}

}  // namespace

TEST(Family, OnePriceIsSignedTheBillsWithTheHeatPumpAndWhatMayBeAddedIsBounded) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const QString text = pages_of(*s);
    const Bill& bill = *s->outcome.bill;
    const OfferTerms& terms = s->plan.pricing.terms;
    const double price = std::round(bill.net) + s->plan.pricing.running.unit_cost;
    const QString said = money(s->plan, price);
    // On the first page, in the sums, among the ways to heat and where it is signed: one and the same.
    EXPECT_TRUE(text.contains(said + " is one price for everything"));
    EXPECT_TRUE(behind(text, "Price in all", 200).contains(said));
    EXPECT_TRUE(behind(text, "Price in all", 200).contains("with: Permit and inspection"));
    EXPECT_TRUE(text.contains("The price you sign is " + said));
    EXPECT_TRUE(text.contains("built for " + said + " as described on these"));
    EXPECT_FALSE(text.contains("is nearer $"));
    int rain = 0;
    for (const CrewDay& day : s->outcome.calendar->days) rain += day.reserve;
    ASSERT_GT(rain, 0);
    // A day more of the crew, charged as the bill charges it.
    const double day =
        std::ceil(s->plan.wishes.prices.crew_day * (1 + terms.overhead) * (1 + terms.markup) - 1e-6);
    EXPECT_TRUE(behind(text, "Rain adds", 90).contains(money(s->plan, day)));
    // Everything dug, scheduled and billed again with all sides laid back.
    Plan laid_back = s->plan;
    laid_back.dig.coil_sides = laid_back.dig.run_sides = Sides::slope;
    LaidSolver solver;
    const Outcome dug = solver.solve(laid_back, s->outcome.layout);
    int more_rain = 0;
    for (const CrewDay& d : dug.calendar->days) more_rain += d.reserve;
    // As printed: the price and what may be added to it unasked make the most.
    const double most = amount_in(behind(text, "With this it is", 20));
    EXPECT_EQ(price + rain * day, most);
    // What is asked for first: no more than the same with all sides laid back, and its days kept for rain.
    const double sloped = amount_in(behind(text, "laid back only with your written yes:", 20));
    EXPECT_GE(sloped, dug.bill->net - bill.net - 1);
    EXPECT_LE(sloped, dug.bill->net - bill.net + (more_rain - rain) * day + 2);
    // On the first page, under its heading and in what is signed: the same bounds everywhere.
    const QString signed_words = behind(text, "and contractor agree", 700);
    const QString all = money(s->plan, most + sloped);
    EXPECT_EQ(text.count("to " + money(s->plan, most) + " at most"), 2);
    EXPECT_TRUE(signed_words.contains("to " + money(s->plan, most) + " at most"));
    EXPECT_TRUE(signed_words.contains(money(s->plan, sloped) + " more at most, " + all + " in all"));
    EXPECT_TRUE(
        behind(text, "Trench sides laid back only with your written yes", 80).contains(all + " in all"));
    EXPECT_TRUE(text.contains("would make it up to " + all));
    // "We" is the contractor: the yes is the owners'.
    EXPECT_TRUE(signed_words.contains(QRegularExpression("needs a written yes from the owners? beforehand")));
    EXPECT_EQ(text.count(QRegularExpression("\\bour written yes")), 0);
    EXPECT_TRUE(text.contains("Nothing else is charged without your written yes"));
  }
}

TEST(Family, AnIncentiveThatIsNotReceivedIsAmongWhatMayBeAdded) {
  Solved s = alder();
  s.plan.pricing.terms.incentives = {{"Grant", IncentiveKind::fixed, 3000, std::nullopt}};
  s.outcome = solve(s.plan);
  const FamilyFacts with = family_facts(s.plan, s.outcome),
                    without = family_facts(alder().plan, alder().outcome);
  EXPECT_EQ(with.price, without.price - 3000);
  EXPECT_EQ(with.at_most, without.at_most);
  EXPECT_TRUE(pages_of(s).contains("Incentives of $3,000 are taken off already"));
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
      EXPECT_NEAR(way.saves.low, less * energy + upkeep, 3 * facts.step);
      EXPECT_NEAR(way.saves.high, more * energy + upkeep, 3 * facts.step);
      if (way.payback && c.against[i].simple) {
        EXPECT_LE(way.payback->low, *c.against[i].simple);
        EXPECT_GE(way.payback->high, *c.against[i].simple);
      }
    }
    EXPECT_TRUE(text.contains("between 15% less and 18% more"));
    EXPECT_TRUE(text.contains("what it costs and saves"));
  }
}

// A reader who subtracts one printed column from another gets the third, and the years by dividing.
TEST(Family, PrintedFiguresAddUpAsPrinted) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const FamilyFacts facts = family_facts(s->plan, s->outcome);
    const QString text = pages_of(*s);
    const QString table = behind(text, "pays back in", 700);
    const auto loop = amounts_in(behind(table, "The ground loop", 60));
    ASSERT_GE(loop.size(), 3u) << table.toStdString();
    EXPECT_EQ(loop[0], facts.price);
    // Its bill, which stands above without the upkeep.
    const auto bill = amounts_in(behind(text, "Electricity a year, heating and cooling", 130));
    ASSERT_GE(bill.size(), 2u);
    EXPECT_EQ(loop[1] - bill[0], facts.upkeep);
    EXPECT_EQ(loop[2] - bill[1], facts.upkeep);
    for (const OtherWay& other : facts.others) {
      const QString row = behind(table, other.name.section(' ', -1), 120);
      const auto printed = amounts_in(row);
      ASSERT_GE(printed.size(), 5u) << row.toStdString();
      EXPECT_EQ(std::min(printed[1] - loop[1], printed[2] - loop[2]), printed[3]);
      EXPECT_EQ(std::max(printed[1] - loop[1], printed[2] - loop[2]), printed[4]);
      if (printed[3] <= 0) continue;
      static const QRegularExpression years(R"((\d+) to (\d+) years)");
      const auto said = years.match(row);
      ASSERT_TRUE(said.hasMatch()) << row.toStdString();
      EXPECT_EQ(said.captured(1).toInt(), static_cast<int>(std::floor((loop[0] - printed[0]) / printed[4])));
      EXPECT_EQ(said.captured(2).toInt(), static_cast<int>(std::ceil((loop[0] - printed[0]) / printed[3])));
      EXPECT_TRUE(
          behind(text, "Upkeep in it a year, from the top", 60).contains(money(s->plan, other.upkeep)));
    }
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
  EXPECT_FALSE(text.contains("contractor agree"));
  EXPECT_TRUE(text.contains("To be agreed in writing"));
}

TEST(Family, SignatureNamesPricePagesPlanAndDay) {
  const QString text = pages_of(alder());
  const QString agreed = text.mid(text.indexOf("Owners and contractor agree"), 300);
  for (const QString& part : {QString("$"), QString("these 4 pages"), QString("May 4, 2026"),
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
    EXPECT_EQ(found->ever, most);
    // In the evening as many as the calendar has open then, and on no other evening more.
    for (int day = 1; day <= c.days_worked; ++day) {
      const double at = std::min(day * c.day_length, c.filled);
      int open = 0;
      for (const OpenTrench& o : c.open)
        open += s->outcome.order->steps[static_cast<std::size_t>(o.step)].kind == DigKind::trench &&
                o.from < at && at < o.to;
      EXPECT_LE(open, found->trenches) << day;
      if (day == found->day) {
        EXPECT_EQ(open, found->trenches);
      }
    }
    const QString text = pages_of(*s);
    EXPECT_TRUE(text.contains(QString("The evening of day %1, when most is open.").arg(found->day)));
    EXPECT_TRUE(text.contains(QString("never more than %1 of the %2 deep trenches")
                                  .arg(most)
                                  .arg(s->outcome.layout.trenches.size())));
  }
}

// What the picture of a moment shows is what the calendar has then, by area.
TEST(Family, NoHeapLiesOnAnOpenTrenchAndWhatIsFilledIsDrawnFilled) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const CrewCalendar& c = *s->outcome.calendar;
    for (double at = 0.37 * c.day_length; at < c.filled; at += 0.21 * c.day_length) {
      const GroundAt now = ground_at(s->plan, s->outcome, at);
      EXPECT_LT(area(intersect(now.open, now.heaps)), 0.01);
      EXPECT_LT(area(intersect(now.open, now.filled)), 0.01);
      EXPECT_LT(area(intersect(now.heaps, now.filled)), 0.01);
      for (const OpenTrench& o : c.open) {
        const DigStep& step = s->outcome.order->steps[static_cast<std::size_t>(o.step)];
        if (step.kind != DigKind::trench) continue;
        const Region floor = region_of(strip_along(step.line, step.width));
        const double whole = area(floor), open = area(intersect(floor, now.open)),
                     filled = area(intersect(floor, now.filled));
        // Its head lies under the header, which is filled later: a few square metres.
        if (o.to <= at) {
          EXPECT_GT(filled, 0.85 * whole) << step.trench << " at " << at;
        }
        if (at <= o.from) {
          EXPECT_LT(open + filled, 0.15 * whole) << step.trench << " at " << at;
        }
      }
    }
  }
}

// While one trench is dug into the one before, as much is filled there as is dug here, and the heap ends with
// the digging.
TEST(Family, ATrenchIsFilledAsFarAsItsNeighbourIsDug) {
  const Outcome& outcome = alder().outcome;
  const auto& steps = outcome.order->steps;
  int seen = 0;
  for (const CrewTask& task : outcome.calendar->tasks) {
    if (task.station != CrewStation::digging) continue;
    const DigStep& digs = steps[static_cast<std::size_t>(task.step)];
    if (digs.into.size() != 1) continue;
    const auto into = std::ranges::find_if(
        steps, [&](const DigStep& o) { return o.kind == DigKind::trench && o.trench == digs.into[0]; });
    const GroundAt now = ground_at(alder().plan, outcome, task.begin + 0.4 * (task.end - task.begin));
    const Region floor = region_of(strip_along(into->line, into->width));
    EXPECT_NEAR(area(intersect(floor, now.filled)) / area(floor), 0.4, 0.08) << digs.trench;
    ++seen;
  }
  EXPECT_EQ(seen, 3);
}

// Everything that the work takes is sown, the figure is its area, and the picture shows as much.
TEST(Family, WhatIsSownIsAllThatWasDugHeapedOnAndDrivenOver) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const Region used = ground_used(s->plan, s->outcome);
    Region lawn = region_of(lot_ring(s->plan.site));
    for (const Feature& f : s->plan.site.features)
      if (f.kind == FeatureKind::house || f.kind == FeatureKind::drive || f.kind == FeatureKind::no_dig)
        lawn = subtract(lawn, region_of(f.points));
    const auto missed = [&](const Region& part) { return area(subtract(intersect(part, lawn), used)); };
    const DigOrder& order = *s->outcome.order;
    for (const DigStep& step : order.steps) {
      EXPECT_LT(missed(region_of(strip_along(step.line, step.width))), 0.05);
      for (const Ring& heap : step.spoil) EXPECT_LT(missed(region_of(heap)), 0.05);
      if (step.way.size() > 1) {
        EXPECT_LT(missed(buffered(step.way, 0.45 * s->plan.dig.excavator.width)), 0.1);
      }
    }
    EXPECT_TRUE(pages_of(*s).contains(family_area(s->plan, area(used)) + " of lawn are used and sown again"));
    const auto painted = [&](LotMoment moment) {
      QImage image(1400, 1400, QImage::Format_RGB32);
      image.fill(Qt::white);
      QPainter painter(&image);
      LotPicture how;
      how.moment = moment;
      how.names = how.numbers = false;
      paint_lot_picture(painter, s->plan, &s->outcome, QRectF(0, 0, 1400, 1400), how);
      return image;
    };
    const QImage before = painted(LotMoment::before), leaving = painted(LotMoment::closed);
    int other = 0;
    for (int y = 0; y < 1400; ++y)
      for (int x = 0; x < 1400; ++x) other += before.pixel(x, y) != leaving.pixel(x, y);
    const double metre = lot_picture_view(s->plan, QSizeF(1400, 1400), LotPicture{}.text).to_device(1.0);
    // To a pixel along its edges.
    double edge = 0;
    for (const Polygon& part : used) {
      edge += perimeter(part.outer);
      for (const Ring& hole : part.holes) edge += perimeter(hole);
    }
    EXPECT_NEAR(other / (metre * metre), area(used), edge / metre);
    EXPECT_LT(edge / metre, 0.06 * area(used));
  }
}

TEST(Family, HouseAndEveryTreeAreNamedAmongWhatIsNear) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    QString text = pages_of(*s);
    const auto from = text.indexOf("How near to what you love"), to = text.indexOf("Trench: from its edge");
    ASSERT_TRUE(from >= 0 && to > from);
    const QString near = text.mid(from, to - from), foot = text.mid(to, 500);
    for (const Feature& f : s->plan.site.features)
      if (f.kind == FeatureKind::tree || f.kind == FeatureKind::house) {
        EXPECT_TRUE(near.contains(QString::fromStdString(display_name(f)))) << display_name(f);
      }
    // Whatever people ask for is in the list or said to be left out.
    for (const Loved& l : loved(s->plan, s->outcome)) {
      const QString name = QString::fromStdString(l.name);
      EXPECT_TRUE(near.contains(name) || behind(foot, "left out:", 200).contains(name)) << l.name;
    }
    EXPECT_FALSE(near.contains(QRegularExpression("\\d in\\b")));
  }
}

// Counted on a calendar of Monday to Friday by hand.
TEST(Family, TheLastDayIsNamed) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    QDate day = QDate::fromString(QString::fromStdString(s->plan.proposal.start), Qt::ISODate);
    ASSERT_TRUE(day.isValid());
    for (int worked = 1; worked < s->outcome.calendar->days_worked;) {
      day = day.addDays(1);
      worked += day.dayOfWeek() < 6;
    }
    const QString said = QLocale(QLocale::English).toString(day, "dddd, MMMM d, yyyy");
    EXPECT_TRUE(pages_of(*s).contains("Last day: " + said)) << said.toStdString();
    EXPECT_TRUE(pages_of(*s).contains("No work on: Saturday, Sunday"));
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
    const auto days = work_days(s->outcome);
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

// Heaps, the machine's ways and what it digs along: measured at points along them, without the program's
// search.
TEST(Family, EarthAndMachineAreCountedToo) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const DigOrder& order = *s->outcome.order;
    const double half = s->plan.dig.excavator.width / 2;
    const auto nearest = [](const Polyline& line, bool closed, Point p) {
      double least = 1e9;
      for (std::size_t i = 0; i < line.size(); ++i) {
        const Point a = line[i], b = line[closed ? (i + 1) % line.size() : std::min(i + 1, line.size() - 1)];
        for (int k = 0; k <= 400; ++k) least = std::min(least, distance(p, a + k / 400.0 * (b - a)));
      }
      return least;
    };
    for (const Loved& l : loved(s->plan, s->outcome)) {
      if (l.roots <= 0) continue;
      const Point trunk = find_feature(s->plan.site, l.feature_id)->points[0];
      const WhileDug w = while_dug(s->plan, s->outcome, l);
      double earth = 1e9, machine = 1e9;
      for (const DigStep& step : order.steps) {
        for (const Ring& heap : step.spoil) earth = std::min(earth, nearest(heap, true, trunk));
        if (!step.way.empty()) machine = std::min(machine, nearest(step.way, false, trunk) - half);
        machine = std::min(machine, nearest(step.line, false, trunk) - half);
      }
      if (!order.way_out.empty()) machine = std::min(machine, nearest(order.way_out, false, trunk) - half);
      for (const DigStep& step : order.steps)
        for (const Polyline& way : {step.truck_way, step.fill_way})
          if (!way.empty()) machine = std::min(machine, nearest(way, false, trunk) - kTruckWidth / 2);
      if (order.laydown) machine = std::min(machine, distance(*order.laydown, trunk) - order.laydown_radius);
      ASSERT_TRUE(w.earth && w.machine);
      EXPECT_NEAR(*w.earth, earth, 0.1) << l.name;
      EXPECT_NEAR(*w.machine, std::max(0.0, machine), 0.1) << l.name;
      EXPECT_EQ(w.earth_on_roots, *w.earth < l.roots);
      const QString page = pages_of(*s);
      EXPECT_EQ(page.contains(QString::fromStdString(l.name) + ": earth lies on its roots"),
                w.earth_on_roots);
    }
  }
}

// The maple of Alder Lane bears a heap from when its trench is dug until the loader comes.
TEST(Family, TheDaysThatEarthLiesOnRootsAreThoseOfTheCalendar) {
  const Outcome& outcome = alder().outcome;
  for (const Loved& l : loved(alder().plan, outcome)) {
    const WhileDug w = while_dug(alder().plan, outcome, l);
    if (!w.earth_on_roots) continue;
    EXPECT_GE(w.first_day, 1);
    EXPECT_LE(w.last_day, outcome.calendar->days_worked);
    // In the middle of the last day, and of the first, a heap of it lies there by the picture's reckoning.
    int lying = 0;
    for (const double at : {(w.first_day - 0.02) * outcome.calendar->day_length,
                            (w.last_day - 0.98) * outcome.calendar->day_length})
      for (const PieceAt& piece : works_at(outcome, at))
        for (const Ring& heap : outcome.order->steps[static_cast<std::size_t>(piece.step)].spoil)
          for (const Point p : heap)
            if (piece.earth &&
                distance(p, find_feature(alder().plan.site, l.feature_id)->points[0]) < l.roots) {
              ++lying;
              break;
            }
    EXPECT_GE(lying, 2) << l.name;
  }
}

// A remark is put together where it is read: its parts and their frame are of one language.
TEST(Family, ARemarkOfASpanishSheetIsSpanishThroughout) {
  const Solved s = alder();
  SheetSetup setup{Paper::letter, 60, QDate(2026, 5, 4)};
  setup.language = "es";
  const SheetPtr sheet = make_sheet(*find_sheet_kind("permit"), s.plan, s.outcome, setup);
  ASSERT_FALSE(sheet->remarks().empty());
  const std::string words = sheet->remarks()[0].message();
  EXPECT_NE(words.find("fuera de la"), std::string::npos) << words;
  EXPECT_EQ(words.find("must be"), std::string::npos) << words;
}

TEST(Family, UsualTermsAndDaysAreSaidInTheLanguageOfTheSheetAndTypedOnesAreTold) {
  let_qt_speak();
  Solved s = alder();
  const SheetKind* kind = find_sheet_kind("proposal");
  SheetSetup setup{Paper::letter, {}, QDate(2026, 5, 4)};
  setup.language = "es";
  const auto spanish = [&] { return make_sheet(*kind, s.plan, s.outcome, setup); };
  SheetPtr sheet = spanish();
  // Names are no term: they stay as they were typed, which is said once.
  ASSERT_EQ(sheet->remarks().size(), 1u);
  EXPECT_EQ(
      sheet->remarks()[0].message().find(
          "Typed by hand in the proposal: names of other ways to heat and cool, your own lines of the price, "
          "names on the lot."),
      0u);
  QString text = pdf::text_in_order(pdf_of(*sheet)).simplified();
  for (const char* part : {"Respondemos por la obra", "Un tercio al firmar", "60 días"})
    EXPECT_TRUE(text.contains(part)) << part;
  static const QRegularExpression day("lunes, 17 (de )?mayo (de )?2027");
  EXPECT_TRUE(day.match(text).hasMatch());
  s.plan.proposal.guarantee = "We stand by our word.";
  sheet = spanish();
  ASSERT_EQ(sheet->remarks().size(), 1u);
  EXPECT_EQ(sheet->remarks()[0].message().find("Typed by hand in the proposal: Guarantee, names of"), 0u);
  text = pdf::text_in_order(pdf_of(*sheet)).simplified();
  EXPECT_TRUE(text.contains("We stand by our word."));
  setup.language.clear();
  EXPECT_TRUE(spanish()->remarks().empty());
}

// In a program that speaks the sheet's language what was typed is told where it does not read like it.
TEST(Family, TypedWordsThatReadLikeAnotherLanguageAreTold) {
  Plan plan = sample_file("alder-lane");
  EXPECT_TRUE(typed_in_another_language(plan, "en").empty());
  plan.proposal.guarantee = "Respondemos de todo lo que dicen estas páginas por cinco años.";
  EXPECT_EQ(typed_in_another_language(plan, "en"), std::vector<std::string>{"Guarantee"});
  plan.proposal.guarantee = "We stand by all of the work for five years.";
  const auto told = typed_in_another_language(plan, "es");
  ASSERT_FALSE(told.empty());
  EXPECT_EQ(told.front(), "Guarantee");
  EXPECT_TRUE(std::ranges::count(typed_in_another_language(plan, "en"), "Guarantee") == 0);
}

TEST(Family, WhatOnlyNamesTheKindOfAThingIsSaidInTheLanguageOfTheSheet) {
  SheetSetup setup{Paper::letter, {}, QDate(2026, 5, 4)};
  setup.language = "es";
  const SheetPtr sheet = make_sheet(*find_sheet_kind("proposal"), alder().plan, alder().outcome, setup);
  const QString text = pdf::text_in_order(pdf_of(*sheet)).simplified();
  EXPECT_TRUE(text.contains("Fosa séptica"));
  EXPECT_TRUE(text.contains("Sugar maple"));  // as it was typed
  EXPECT_FALSE(text.contains("Septic tank"));
}

TEST(Family, ThePicturesOfTheWorkHaveAKey) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const QString text = pages_of(*s);
    const auto key = picture_colours(s->plan, s->outcome);
    EXPECT_GE(key.size(), 6u);
    for (const PictureColour& one : key) EXPECT_TRUE(text.contains(one.words)) << one.words.toStdString();
  }
}

TEST(Family, FluidIsNamedWithItsAmount) {
  const QString text = pages_of(alder());
  EXPECT_TRUE(text.contains("propylene glycol"));
  EXPECT_TRUE(
      text.contains(family_volume(alder().plan, alder().outcome.flow->volume) + " of this mixture in all"));
  EXPECT_TRUE(text.contains("Your well is 40 ft"));
}

TEST(Family, AnAddressThatNamesTheProjectIsSaidOnce) {
  const QString text = pages_of(alder());
  EXPECT_EQ(text.count("Alder Lane"), 1);
}

// The list below the table is all that the table has nearer than 3 ft by earth or machine, of the lot line by
// earth alone; the figures are read back from the page.
TEST(Family, WhatComesNearerThanThreeFeetIsWhatTheTableHas) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const QString text = pages_of(*s);
    const auto from = text.indexOf("How near to what you love"), to = text.indexOf("Trench: from its edge");
    ASSERT_TRUE(from >= 0 && to > from);
    const QString table = text.mid(from, to - from);
    const auto listed = behind(text, "comes nearer than 3 ft to: ", 200).section(". ", 0, 0).split(", ");
    const auto near = [](const QString& cell) {
      return cell == "at it" || (cell.endsWith(" ft") && cell.chopped(3).toDouble() < 3);
    };
    int seen = 0;
    for (const Loved& l : loved(s->plan, s->outcome)) {
      const QString name = QString::fromStdString(l.name);
      const QRegularExpression row(
          QRegularExpression::escape(name) +
          "(?: roots \\d+ ft)? ([\\d.]+ ft) ([\\d.]+ ft|at it) ([\\d.]+ ft|at it|over it)");
      const auto cells = row.match(table);
      ASSERT_TRUE(cells.hasMatch()) << l.name << " in " << table.toStdString();
      EXPECT_EQ(listed.contains(name), near(cells.captured(2)) || near(cells.captured(3))) << l.name;
      seen += listed.contains(name);
    }
    EXPECT_EQ(seen, listed.size());
    EXPECT_GE(seen, 2);
  }
  EXPECT_TRUE(pages_of(kestrel()).contains("The ways lead past Septic tank, never over;"));
}

// The machine's and the trucks' ways against the ground of tank and field, by area.
TEST(Family, NobodyDrivesOverTankOrFieldThatItSaysSoOf) {
  const DigOrder& order = *kestrel().outcome.order;
  for (const Feature& f : kestrel().plan.site.features) {
    if (f.kind != FeatureKind::septic_tank && f.kind != FeatureKind::drain_field) continue;
    for (const Drive& drive : drives_of(order, kestrel().plan.dig.excavator))
      EXPECT_LT(area(intersect(buffered(*drive.way, drive.width / 2), region_of(f.points))), 1e-6);
  }
}

// As the crew's sheet: mats over every root zone that is driven over, and no word of it where none is.
TEST(Family, MatsAreAskedForWhereRootsAreDrivenOver) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const auto driven = roots_driven(s->plan, s->outcome);
    const QString text = pages_of(*s);
    EXPECT_EQ(text.contains("mats or planks are laid"), !driven.empty());
    EXPECT_FALSE(text.contains("Nothing is laid over roots"));
    for (const RootsDriven& r : driven) {
      const QString name = QString::fromStdString(display_name(*find_feature(s->plan.site, r.tree)));
      EXPECT_TRUE(behind(text, name + ": ", 140).contains("driven over")) << name.toStdString();
    }
  }
}

// A field crossed by the machine everywhere: it comes in, and out of the lot on the other side.
TEST(Family, WhereTheMachineCrossesTheLotLineIsSeen) {
  EXPECT_TRUE(crosses_line_only_at_entry(alder().plan, alder().outcome));
  Plan plan = alder().plan;
  for (LotCorner& corner : plan.site.lot) corner.at = corner.at + Point{22, 0};
  EXPECT_FALSE(crosses_line_only_at_entry(plan, alder().outcome));
}

TEST(Family, TreesAreNamedAmongWhatIsAnsweredForOrSaidToBeMissing) {
  Solved s = alder();
  EXPECT_TRUE(trees_answered_for(s.plan));
  EXPECT_FALSE(pages_of(s).contains("Trees are not named there"));
  s.plan.proposal.guarantee = "Five years on all of it.";
  EXPECT_TRUE(pages_of(s).contains("Trees are not named there: agree on them in writing before you sign."));
  s.plan.proposal.guarantee = "Five years, the sugar maple too.";
  EXPECT_FALSE(pages_of(s).contains("Trees are not named there"));
}

// Counted evening by evening from the calendar's trenches, by its dates.
TEST(Family, NightsThatTrenchesStandOpenAreThoseOfTheCalendar) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const CrewCalendar& c = *s->outcome.calendar;
    const QString words = nights_words(s->outcome);
    EXPECT_TRUE(pages_of(*s).contains(words));
    const auto day = [&](std::size_t i) {
      return QDate::fromString(QString::fromStdString(c.days[i].date), Qt::ISODate);
    };
    for (const Trench& t : s->outcome.layout.trenches) {
      int nights = 0;
      bool weekend = false;
      for (const OpenTrench& o : c.open) {
        const DigStep& step = s->outcome.order->steps[static_cast<std::size_t>(o.step)];
        if (step.kind != DigKind::trench || step.trench != t.number) continue;
        for (std::size_t d = 1; d < static_cast<std::size_t>(c.days_worked); ++d) {
          const double evening = static_cast<double>(d) * c.day_length;
          if (o.from >= evening - 60 || o.to <= evening + 60) continue;
          nights += static_cast<int>(day(d - 1).daysTo(day(d)));
          weekend |= day(d - 1).daysTo(day(d)) > 1;
        }
      }
      const QRegularExpression said("(?:trench|to) " + QString::number(t.number) + " for (\\d+) night");
      if (const auto m = said.match(words); m.hasMatch()) {
        EXPECT_EQ(m.captured(1).toInt(), nights) << t.number;
        EXPECT_EQ(words.mid(m.capturedEnd(), 30).section(';', 0, 0).contains("weekend"), weekend) << t.number;
      }
    }
    EXPECT_TRUE(words.contains("The longest waits for the pressure test"));
  }
}

TEST(Family, TheBarsShowTheDaysOffBetweenTheDaysWorked) {
  for (const Solved* s : {&alder(), &kestrel()}) {
    const auto columns = days_columns(s->outcome);
    const CrewCalendar& c = *s->outcome.calendar;
    const QDate first = QDate::fromString(QString::fromStdString(c.days.front().date), Qt::ISODate),
                last = QDate::fromString(QString::fromStdString(c.days.back().date), Qt::ISODate);
    // A column for every date from the first to the last, the weekends off.
    ASSERT_EQ(static_cast<qint64>(columns.size()), first.daysTo(last) + 1);
    for (std::size_t i = 0; i < columns.size(); ++i)
      EXPECT_EQ(columns[i].off, first.addDays(static_cast<qint64>(i)).dayOfWeek() > 5) << i;
  }
}

TEST(Family, AnOfferInDaysNamesItsLastDayAndThirdsAreMoney) {
  const QString text = pages_of(alder());
  EXPECT_TRUE(text.contains("stands for 60 days, until July 3, 2026"));  // 4 May and 60 days
  const auto parts = amounts_in(behind(text, "Of the price signed a third is", 40));
  ASSERT_EQ(parts.size(), 2u);
  EXPECT_EQ(2 * parts[0] + parts[1], family_facts(alder().plan, alder().outcome).price);
  Solved s = alder();
  s.plan.proposal.payment = "Half before, half after.";
  s.plan.proposal.validity = "a while";
  const QString other = pages_of(s);
  EXPECT_FALSE(other.contains("a third is"));
  EXPECT_TRUE(other.contains("stands for a while."));
}

// What laid-back sides take besides money is what the same loop takes dug that way.
TEST(Family, LaidBackSidesAreToldWithTheirDaysAndLawn) {
  const FamilyFacts facts = family_facts(alder().plan, alder().outcome);
  Plan plan = alder().plan;
  plan.dig.coil_sides = plan.dig.run_sides = Sides::slope;
  LaidSolver solver;
  const Outcome dug = solver.solve(plan, alder().outcome.layout);
  EXPECT_EQ(facts.laid_back_days, dug.work->time.days - alder().outcome.work->time.days);
  EXPECT_NEAR(facts.laid_back_lawn, dug.work->torn.lawn - alder().outcome.work->torn.lawn, 0.5);
  EXPECT_TRUE(pages_of(alder()).contains(QString("%1 more working days").arg(facts.laid_back_days)));
}

// Against the years that the temperatures are reckoned for: 25 in both samples.
TEST(Family, WhatIsNotPaidBackWithinTheYearsReckonedIsToldPlainly) {
  const auto told = [](const Solved& s, const QString& how) { return behind(pages_of(s), how, 120); };
  EXPECT_TRUE(
      behind(pages_of(alder()), "Compared with Air-source heat pump the loop does not pay back within", 10)
          .contains("25 years"));
  EXPECT_TRUE(told(kestrel(), "Compared with New oil furnace and central air")
                  .contains("may not pay back within 25"));
  for (const Solved* s : {&alder(), &kestrel()})
    for (const OtherWay& other : family_facts(s->plan, s->outcome).others)
      EXPECT_EQ(behind(pages_of(*s), "Compared with", 140).section(" years", 0, 0).contains(other.name),
                other.payback && other.payback->high > 25)
          << other.name.toStdString();
}

TEST(Family, EarthThatIsMissingOrLeftOverIsThatOfTheDigPlan) {
  const double over = alder().outcome.dig.total.surplus_loose;
  ASSERT_LT(over, -0.5);
  EXPECT_TRUE(pages_of(alder()).contains(
      QString("about %1 cubic yards more are brought").arg(family_number(-over / 0.764554857984))));
}
