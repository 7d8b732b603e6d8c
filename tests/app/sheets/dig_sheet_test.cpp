// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/dig_sheet.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QRegularExpression>
#include <QSet>
#include <QTemporaryDir>
#include <map>

#include "app/support/laid_out.h"
#include "app/support/pdf_tools.h"
#include "base/quantity.h"
#include "dig/dig_order.h"
#include "files/plan_file.h"
#include "plan/coil_watch.h"
#include "plan/solve.h"
#include "plan/stake_out.h"
#include "plan/tape.h"
#include "plan/tie_check.h"
#include "sheets/contents.h"
#include "sheets/sheet_kinds.h"
#include "sheets/sheets_out.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

const QDate kDay(2026, 5, 4);

QByteArray pdf_of(const laid_out::Sample& sample, Paper paper = Paper::letter) {
  return pdf_of(DigSheet(sample.plan, sample.outcome, {paper, {}, kDay}));
}

std::string squeezed(const QString& text) {
  return text.simplified().toStdString();
}

void expect_everything_said(const laid_out::Sample& sample, Paper paper) {
  const std::string text = squeezed(pdf::text(pdf_of(sample, paper)));
  for (const Tie& tie : sample.outcome.stake_out.ties) {
    const std::string row = tie.point + " " + tie.first + " ";
    EXPECT_NE(text.find(row), std::string::npos) << row;
  }
  for (const Trench& t : sample.outcome.layout.trenches) {
    const std::string tags = std::to_string(t.number) + "-S " + std::to_string(t.number) + "-R";
    EXPECT_NE(text.find(tags), std::string::npos) << tags;
  }
}

}  // namespace

TEST(DigSheet, SaysEveryTrenchAndEveryTapeInFeet) {
  expect_everything_said(laid_out::alder(3), Paper::letter);
  expect_everything_said(laid_out::half_acre(14), Paper::letter);
  expect_everything_said(laid_out::half_acre(14), Paper::tabloid);
}

TEST(DigSheet, SaysEveryTrenchAndEveryTapeInMetres) {
  laid_out::Sample sample = laid_out::half_acre(14);
  sample.plan.units = UnitSystem::metric;
  expect_everything_said(sample, Paper::a4);
  sample = laid_out::alder(3);
  sample.plan.units = UnitSystem::metric;
  expect_everything_said(sample, Paper::a3);
}

TEST(DigSheet, CarriesTitleBlockFingerprintAndCautionsOnItsPages) {
  const laid_out::Sample sample = laid_out::alder(3);
  const QByteArray pdf = pdf_of(sample);
  const DigSheet sheet(sample.plan, sample.outcome, {Paper::letter, {}, kDay});
  for (int page = 1; page <= sheet.pages(); ++page) {
    const std::string text = squeezed(pdf::text(pdf, page));
    for (const std::string& said :
         {std::string("Alder Lane 14"), sample.outcome.fingerprint, std::string("2026-05-04"),
          std::to_string(page) + " of " + std::to_string(sheet.pages()), std::string("Call before you dig")})
      EXPECT_NE(text.find(said), std::string::npos) << said << " on page " << page;
  }
  const std::string all = squeezed(pdf::text_in_order(pdf));
  for (const char* said : {"29 CFR 1926 Subpart P", "Private lines", "tolerance zone", "2 ft from the edge",
                           "within 25 ft", "4 ft deep", "competent person", "Test with water, never with air",
                           "Local codes govern", "LOCATE TICKET", "slope 1.5:1 where sides are laid back",
                           "As planned: nobody goes into a coil trench"})
    EXPECT_NE(all.find(said), std::string::npos) << said;
}

// Solved, not laid out by the test: it has an order of digging.
laid_out::Sample solved_sample() {
  laid_out::Sample sample{sample::half_acre(), {}};
  sample.outcome = solve(sample.plan);
  return sample;
}

TEST(DigSheet, TheOrderOfDiggingHasARowForEveryStepInOnePlace) {
  const laid_out::Sample sample = solved_sample();
  ASSERT_NE(sample.outcome.order, nullptr);
  const DigSheet sheet(sample.plan, sample.outcome, {Paper::letter, {}, kDay});
  const QByteArray pdf = pdf_of(sheet);
  int pages = 0;
  for (int page = 1; page <= sheet.pages(); ++page) {
    const std::string text = squeezed(pdf::text(pdf, page));
    const std::size_t from = text.find("ORDER OF DIGGING");
    if (from == std::string::npos) continue;
    ++pages;
    const std::vector<std::string> roman = {"I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X"};
    std::size_t number = 0;
    for (const DigStep& step : sample.outcome.order->steps) {
      const std::string row = roman.at(number++) + " " + step_name(step);
      EXPECT_NE(text.find(row, from), std::string::npos) << row;
    }
  }
  EXPECT_EQ(pages, 1);
}

// Colon and hyphen between capitals, and a length behind the base line, are still there when the text is
// taken out of the PDF.
TEST(DigSheet, SignsBetweenCapitalsSurviveInTheTextOfThePdf) {
  const std::string text = squeezed(pdf::text_in_order(pdf_of(solved_sample())));
  EXPECT_NE(text.find("CHECK EVERY STAKE: SECOND PAIR OF CORNERS"), std::string::npos);
  EXPECT_NE(text.find("Base line: the wall from corner"), std::string::npos);
}

TEST(DigSheet, NamesEveryWallOfTheFrameWithItsLength) {
  const laid_out::Sample sample = solved_sample();
  const std::string text = squeezed(pdf::text_in_order(pdf_of(sample)));
  for (const Wall& wall : building_walls(sample.plan.site, sample.outcome.stake_out)) {
    const std::string row = wall.line.from.tag + "–" + wall.line.to.tag;
    EXPECT_NE(text.find(row), std::string::npos) << row;
    const std::string length = print_quantity(Quantity::length, distance(wall.line.from.at, wall.line.to.at),
                                              sample.plan.units, Fineness::fine);
    EXPECT_NE(text.find(length), std::string::npos) << length;
  }
}

TEST(DigSheet, EveryFontIsEmbedded) {
  for (const QString& line : pdf::fonts(pdf_of(laid_out::half_acre(3))).split('\n').mid(2)) {
    if (line.trimmed().isEmpty()) continue;
    EXPECT_TRUE(line.contains(QRegularExpression(" yes (yes|no) +yes "))) << line.toStdString();
  }
}

TEST(DigSheet, HasThePagesItSays) {
  for (int trenches : {3, 14}) {
    const laid_out::Sample sample = laid_out::half_acre(trenches);
    const DigSheet sheet(sample.plan, sample.outcome, {Paper::letter, {}, kDay});
    EXPECT_GE(sheet.pages(), 2);
    EXPECT_TRUE(
        pdf::info(pdf_of(sheet)).contains(QRegularExpression(QString("Pages: +%1\n").arg(sheet.pages()))));
  }
}

TEST(DigSheet, SameDayGivesTheSameBytes) {
  const laid_out::Sample sample = laid_out::half_acre(4);
  EXPECT_EQ(pdf_of(sample), pdf_of(sample));
}

TEST(DigSheet, LongNamesEndInAnEllipsisInsideTheirBox) {
  laid_out::Sample sample = laid_out::alder(3);
  const std::string many = "Wolfeschlegelsteinhausenbergerdorff ";
  for (int i = 0; i < 6; ++i) sample.plan.title.project += many;
  sample.plan.title.address = sample.plan.title.owner = sample.plan.title.project;
  for (Feature& f : sample.plan.site.features) f.name += " " + many;
  const QString text = pdf::text(pdf_of(sample), 2);
  EXPECT_GE(text.count("…"), 3);
}

TEST(DigSheet, OfAnEmptyPlanIsStillASheet) {
  laid_out::Sample sample;
  const std::string text = squeezed(pdf::text(pdf_of(sample)));
  EXPECT_NE(text.find("CAUTIONS"), std::string::npos);
}

TEST(DigSheet, RefusesAPlaceItCannotWriteTo) {
  const laid_out::Sample sample = laid_out::half_acre(3);
  const DigSheet sheet(sample.plan, sample.outcome, {});
  const auto written = write_pdf({&sheet}, sheet.title(), "/no such folder/sheet.pdf");
  ASSERT_FALSE(written.has_value());
  EXPECT_EQ(written.error().code, "sheet_not_written");
  EXPECT_NE(written.error().message().find("/no such folder/sheet.pdf"), std::string::npos);
}

namespace {

const laid_out::Sample& kestrel() {
  static const laid_out::Sample all = [] {
    laid_out::Sample s;
    s.plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/kestrel-bend.underlawn")->value;
    s.plan.thermal.years = 1;
    s.outcome = solve(s.plan);
    return s;
  }();
  return all;
}

std::string said_of_kestrel() {
  static const std::string text = squeezed(pdf::text_in_order(pdf_of(kestrel())));
  return text;
}

}  // namespace

// 90 and 60 psi at the lowest point are 87.2 and 57.2 at a gauge 2 m over it (9.80665 kPa a metre of water).
TEST(DigSheet, SaysThePressureOfCoilsThatAreCoveredBeforeTheTest) {
  ASSERT_FALSE(coils_covered_early(kestrel().outcome).empty());
  for (const char* said :
       {"COILS COVERED BEFORE THE TEST", "Under pressure: 30 min at 87.2 psi, then 57.2 psi",
        "then 57.2 psi until it is", "let down to 57.2 psi"})
    EXPECT_NE(said_of_kestrel().find(said), std::string::npos) << said;
}

// The feeder lies 3 ft deep in the middle of the easement, our trench is 5 ft deep.
TEST(DigSheet, SaysWhatLiesInAnEasementOnceAndOnWhichSideALineIsPassed) {
  const std::string text = said_of_kestrel();
  const auto first = text.find("Power easement: in it Buried feeder (E1)");
  ASSERT_NE(first, std::string::npos);
  EXPECT_EQ(text.find("Power easement: in it", first + 1), std::string::npos);
  EXPECT_NE(text.find("Expose X1 (we pass under it) by hand"), std::string::npos);
  EXPECT_NE(text.find("under it", first), std::string::npos);
}

// No tape of the sample runs through the orchard: other corners fix every stake as well or better.
TEST(DigSheet, NoStakeOfTheSampleIsTapedThroughTheOrchard) {
  const TapeGround ground = tape_ground(kestrel().plan.site);
  ASSERT_EQ(ground.planted.size(), 1u);
  const StakeOut& stakes = kestrel().outcome.stake_out;
  for (const Tie& tie : stakes.ties)
    for (const HouseCorner& c : stakes.corners)
      if (c.tag == tie.first || c.tag == tie.second) {
        EXPECT_TRUE(stays_off_planted(ground, c.at, tie.at)) << tie.point << " from " << c.tag;
      }
}

// What is hauled has a way for the trucks, whichever way it is drawn.
TEST(DigSheet, HauledStepsOfTheSampleHaveAWayForTrucks) {
  int hauled = 0;
  for (const DigStep& step : kestrel().outcome.order->steps) {
    if (!step.hauled) continue;
    ++hauled;
    EXPECT_FALSE(step.truck_way.empty() && step.fill_way.empty()) << step_name(step);
  }
  EXPECT_GT(hauled, 0);
  for (const char* said : {"trucks take off", "trucks bring back"})
    EXPECT_NE(said_of_kestrel().find(said), std::string::npos) << said;
}

// 800 ft and two ends of 0.6 m, 6 ft and 0.6 m: 819 ft 10.5 in.
TEST(DigSheet, SaysThatEndsUpOverTheEdgeAreInTheCut) {
  laid_out::Sample s;
  s.plan = sample::half_acre();
  s.plan.dig.coil_sides = s.plan.dig.run_sides = Sides::stay_out;
  s.outcome = solve(s.plan);
  const std::string dig = squeezed(pdf::text_in_order(pdf_of(s)));
  EXPECT_NE(dig.find("all of it in the cut of the table. Order nothing on top."), std::string::npos);
  EXPECT_EQ(dig.find("longer each"), std::string::npos);
  const auto listed = find_sheet_kind("materials")->make(s.plan, s.outcome, {Paper::letter, {}, kDay});
  const std::string materials = squeezed(pdf::text_in_order(pdf_of(*listed)));
  for (const std::string* text : {&dig, &materials})
    EXPECT_NE(text->find("819'-10 1/2\""), std::string::npos);
}

namespace {

laid_out::Sample solved_sample(const char* name, UnitSystem units) {
  laid_out::Sample s;
  s.plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR "/samples/") + name + ".underlawn")->value;
  s.plan.thermal.years = 1;
  s.plan.units = units;
  s.outcome = solve(s.plan);
  return s;
}

// By stake and corner every length that is printed for that tape, page by page.
std::map<QString, QStringList> tapes_printed(const laid_out::Sample& s) {
  SheetSetup setup{Paper::letter, {}, kDay};
  setup.page_a_trench = true;
  const QString length =
      s.plan.units == UnitSystem::us ? R"(((?:\d+'-)?\d+(?: \d+/\d+)?"))" : R"((\d+\.\d+ m))";
  const QRegularExpression row(
      "(\\d+ head|\\d+ end|\\d+ bend \\d+|run \\d+|header \\d+|X\\d+|check) ?\\*? "
      "([A-Z]+) " +
      length + " ([A-Z]+) " + length + " [LR]");
  std::map<QString, QStringList> all;
  for (const char* kind : {"dig", "as_built"}) {
    const auto sheet = find_sheet_kind(kind)->make(s.plan, s.outcome, setup);
    const QString text = pdf::text_in_order(pdf_of(*sheet)).simplified();
    QString stake;
    for (auto found = row.globalMatch(text); found.hasNext();) {
      const auto match = found.next();
      if (match.captured(1) != "check") stake = match.captured(1);
      all[stake + " – " + match.captured(2)] << match.captured(3);
      all[stake + " – " + match.captured(4)] << match.captured(5);
    }
  }
  return all;
}

}  // namespace

// One tape, one length: in the table of stakes, among the checks, on the trench's own page, as built.
TEST(DigSheet, ATapeReadsTheSameOnAllPages) {
  for (const char* name : {"alder-lane", "kestrel-bend"})
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      const auto tapes = tapes_printed(solved_sample(name, units));
      EXPECT_GT(tapes.size(), 20u) << name;
      int several = 0;
      for (const auto& [tape, lengths] : tapes) {
        several += lengths.size() > 1;
        EXPECT_EQ(QSet<QString>(lengths.begin(), lengths.end()).size(), 1)
            << name << ": " << tape.toStdString() << ": " << lengths.join("; ").toStdString();
      }
      EXPECT_GT(several, 10) << name;
    }
}

TEST(DigSheet, LoopsAreWholeOnesAndAPart) {
  EXPECT_EQ(sheet::shown_loops(73.94), "73 + 0.9");
  EXPECT_EQ(sheet::shown_loops(73.96), "74");
  EXPECT_EQ(sheet::shown_loops(74), "74");
  EXPECT_EQ(sheet::lasting(5 * 3600 + 60), "5 h 1 min");
  EXPECT_EQ(sheet::lasting(1800), "30 min");
}
