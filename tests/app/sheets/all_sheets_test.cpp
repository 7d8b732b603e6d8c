// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of sheet, seen by two readers that are not ours: poppler and mupdf.
#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "app/support/laid_out.h"
#include "app/support/pdf_tools.h"
#include "base/quantity.h"
#include "cost/bill.h"
#include "dig/dig_order.h"
#include "plan/solve.h"
#include "plan/tie_check.h"
#include "sheets/sheet_kinds.h"
#include "sheets/sheets_out.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

const QDate kDay(2026, 5, 4);

SheetPtr made(std::string_view kind, const laid_out::Sample& sample, Paper paper) {
  SheetSetup setup{paper, {}, kDay};
  setup.page_a_trench = true;
  return find_sheet_kind(kind)->make(sample.plan, sample.outcome, setup);
}

// Solved in full, so that heat and flow have their say.
const laid_out::Sample& solved() {
  static const laid_out::Sample sample = [] {
    laid_out::Sample s{sample::half_acre(), {}};
    s.plan.title.project = "Alder Lane 14";
    s.outcome = solve(s.plan);
    return s;
  }();
  return sample;
}

laid_out::Sample in(laid_out::Sample sample, UnitSystem units) {
  sample.plan.units = units;
  return sample;
}

int status_of(const QString& tool, const QStringList& arguments) {
  QProcess process;
  process.start(tool, arguments);
  if (!process.waitForFinished(120'000) || process.exitStatus() != QProcess::NormalExit) return -1;
  return process.exitCode();
}

void expect_readable(const QByteArray& pdf, int pages, const std::string& what) {
  QTemporaryDir folder;
  const QString path = folder.filePath("sheet.pdf");
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(pdf);
  file.close();
  EXPECT_EQ(status_of("qpdf", {"--check", path}), 0) << what;
  EXPECT_EQ(status_of("mutool", {"draw", "-q", "-F", "txt", "-o", folder.filePath("text"), path}), 0) << what;
  QFile text(folder.filePath("text"));
  ASSERT_TRUE(text.open(QIODevice::ReadOnly)) << what;
  const QString seen = QString::fromUtf8(text.readAll()).simplified();
  EXPECT_TRUE(seen.contains("Alder Lane 14")) << what;
  EXPECT_TRUE(pdf::info(pdf).contains(QRegularExpression(QString("Pages: +%1\n").arg(pages)))) << what;
  for (const QString& line : pdf::fonts(pdf).split('\n').mid(2))
    if (!line.trimmed().isEmpty()) {
      EXPECT_TRUE(line.contains(QRegularExpression(" yes (yes|no) +yes "))) << what << line.toStdString();
    }
}

const QString kFeet = R"(((?:\d+'-)?\d+(?: \d+/\d+)?"))";
const QString kMetres = R"((\d+\.\d+ m))";

double length_in(const QString& text, UnitSystem units) {
  return parse_quantity(Quantity::length, text.toStdString(), units).value();
}

// Tapes as a crew reads them off the page; gives back how many rows were found.
int expect_stakes(const laid_out::Sample& sample, bool second_pair) {
  const UnitSystem units = sample.plan.units;
  const auto sheet = find_sheet_kind("dig")->make(sample.plan, sample.outcome, {Paper::letter, {}, kDay});
  QString text = pdf::text_in_order(pdf_of(*sheet)).simplified();
  const int from = text.indexOf(second_pair ? "CHECK EVERY STAKE" : "TAPE FROM ");
  text = text.mid(from);
  int found = 0;
  for (const Tie& tie : sample.outcome.stake_out.ties) {
    const auto expected =
        second_pair ? second_tie(sample.plan.site, sample.outcome.stake_out, tie) : std::optional(tie);
    if (!expected) continue;
    const QString length = units == UnitSystem::us ? kFeet : kMetres;
    const QRegularExpression row(QRegularExpression::escape(QString::fromStdString(tie.point)) +
                                 R"( ?\*? ([A-Z]+) )" + length + " ([A-Z]+) " + length + " ([LR])");
    const auto match = row.match(text);
    EXPECT_TRUE(match.hasMatch()) << tie.point;
    if (!match.hasMatch()) continue;
    Tie read = *expected;
    read.first = match.captured(1).toStdString();
    read.first_distance = length_in(match.captured(2), units);
    read.second = match.captured(3).toStdString();
    read.second_distance = length_in(match.captured(4), units);
    read.left_of_base = match.captured(5) == "L";
    const auto at = find_point_from_tie(sample.outcome.stake_out, read);
    EXPECT_TRUE(at.has_value()) << tie.point;
    if (at) {
      EXPECT_LT(distance(*at, tie.at), 0.01) << tie.point;
    }
    ++found;
  }
  return found;
}

}  // namespace

TEST(AllSheets, AreReadByTwoReadersOnEveryPaper) {
  for (const SheetKind& kind : sheet_kinds())
    for (const auto& [paper, units] :
         {std::pair(Paper::letter, UnitSystem::us), std::pair(Paper::a4, UnitSystem::metric),
          std::pair(Paper::tabloid, UnitSystem::us), std::pair(Paper::a3, UnitSystem::metric)}) {
      const auto sheet = made(kind.name, in(solved(), units), paper);
      expect_readable(pdf_of(*sheet), sheet->pages(), std::string(kind.name));
    }
}

TEST(AllSheets, AreReadInOneFile) {
  std::vector<SheetPtr> sheets;
  SheetList list;
  int pages = 0;
  for (const SheetKind& kind : sheet_kinds()) {
    sheets.push_back(made(kind.name, solved(), Paper::tabloid));
    list.push_back(sheets.back().get());
    pages += sheets.back()->pages();
  }
  const QByteArray pdf = pdf_of(list, "Alder Lane 14: sheets");
  expect_readable(pdf, pages, "all");
  EXPECT_TRUE(pdf::info(pdf).contains(QRegularExpression("Title: +Alder Lane 14: sheets")));
  EXPECT_EQ(pdf, pdf_of(list, "Alder Lane 14: sheets"));
}

TEST(AllSheets, OfPlansWithNothingLaidAreStillSheets) {
  laid_out::Sample empty, tiny{sample::tiny_lot(), {}};
  tiny.outcome = solve(tiny.plan);
  for (const SheetKind& kind : sheet_kinds())
    for (const laid_out::Sample* sample : {&empty, &tiny}) {
      const auto sheet = made(kind.name, *sample, Paper::letter);
      EXPECT_GE(sheet->pages(), 1) << kind.name;
      EXPECT_TRUE(pdf_of(*sheet).startsWith("%PDF-")) << kind.name;
    }
}

TEST(AllSheets, TapesOnPaperGiveTheStakesBackWithinACentimetre) {
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    EXPECT_GE(expect_stakes(in(laid_out::alder(3), units), false), 6);
    EXPECT_GE(expect_stakes(in(laid_out::half_acre(14), units), false), 28);
  }
}

TEST(AllSheets, SecondTapesOnPaperGiveTheStakesBackToo) {
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    EXPECT_GE(expect_stakes(in(laid_out::alder(3), units), true),
              3);                                             // the heads; no pair sees an end at 30°
    expect_stakes(in(laid_out::half_acre(14), units), true);  // its house hides most of its corners
  }
}

TEST(AllSheets, EveryFigureStandsInTheReport) {
  const auto sheet = made("report", solved(), Paper::letter);
  const QString text = pdf::text_in_order(pdf_of(*sheet));
  for (const Figure& f : solved().outcome.figures.all())
    EXPECT_TRUE(text.contains(QString::fromStdString(key_with_unit(f)) + " = ")) << f.key;
}

// Added up from the page itself.
TEST(AllSheets, SumsOfTheMaterialsListAddUpOnPaper) {
  ASSERT_TRUE(solved().outcome.bill != nullptr);
  const QString text = pdf::text(pdf_of(*made("materials", solved(), Paper::letter)));
  const QRegularExpression money("(-?[0-9]+\\.[0-9]{2})$");
  double sum = 0;
  int lines = 0;
  bool inside = false, compared = false;
  for (const QString& raw : text.split('\n')) {
    const QString line = raw.trimmed();
    inside = inside || line.startsWith("MATERIALS AND WORK");
    const auto match = money.match(line);
    if (!inside || compared || !match.hasMatch()) continue;
    const double value = match.captured(1).toDouble();
    if (line.startsWith("Cost ")) {
      EXPECT_NEAR(value, sum, 0.005 * (lines + 1));
      compared = true;
    } else {
      sum += value;
      ++lines;
    }
  }
  EXPECT_TRUE(compared);
  EXPECT_GT(lines, 8);
}

// Nothing is free without a word.
TEST(AllSheets, WhatCostsNothingOnTheMaterialsListSaysWhy) {
  const QString text = pdf::text(pdf_of(*made("materials", solved(), Paper::letter)));
  const auto line_of = [&](const QString& item) {
    for (const QString& line : text.split('\n'))
      if (line.trimmed().startsWith(item)) return line;
    return QString();
  };
  for (const char* item : {"Grass seed", "Straw"}) {
    EXPECT_TRUE(line_of(item).contains("in the price of the lawn")) << line_of(item).toStdString();
    EXPECT_TRUE(line_of(item).trimmed().endsWith("0.00"));
  }
}

// Dug, loose, trucked off, sand and filled back, step by step, as the page has them.
TEST(AllSheets, VolumesOfTheDigSheetAddUpOnPaper) {
  laid_out::Sample sample{sample::half_acre(), {}};
  sample.plan.units = UnitSystem::metric;
  sample.plan.thermal.years = 1;
  sample.plan.dig.haul = Haul::all;
  sample.plan.dig.run_sides = Sides::slope;
  sample.outcome = solve(sample.plan);
  const QString text = pdf::text(pdf_of(*made("dig", sample, Paper::a4)));
  const QRegularExpression volume(R"((\d+(?:\.\d+)?) m³)");
  std::vector<double> sums(5);
  int steps = 0;
  bool compared = false;
  for (const QString& line : text.mid(text.indexOf("EARTH, STEP BY STEP")).split('\n')) {
    std::vector<double> row;
    for (auto m = volume.globalMatch(line); m.hasNext();) row.push_back(m.next().captured(1).toDouble());
    if (row.size() != sums.size() || compared) continue;
    compared = line.trimmed().startsWith("In all");
    for (std::size_t i = 0; i < sums.size(); ++i) {
      // Each is rounded to a tenth or to a whole cubic metre.
      EXPECT_TRUE(!compared || std::abs(row[i] - sums[i]) <= 0.5 * (steps + 1)) << i << ": " << sums[i];
      sums[i] += row[i];
    }
    ++steps;
  }
  EXPECT_TRUE(compared);
  EXPECT_EQ(steps - 1, static_cast<int>(sample.outcome.order->steps.size()));
  const QString all = QString::fromStdString(
      print_quantity(Quantity::volume, sample.outcome.dig.total.bank, UnitSystem::metric));
  EXPECT_TRUE(text.contains(all)) << all.toStdString();
}

TEST(AllSheets, FamilyLearnsWhatIsDugHowLongWhatItCostsAndWhatMayGoWrong) {
  laid_out::Sample sample = solved();
  sample.plan.proposal.guarantee = "We answer for it.";  // else there is nothing to sign
  const QString text = pdf::text_in_order(pdf_of(*made("proposal", sample, Paper::letter))).simplified();
  for (const char* said : {"trenches in the lawn", "days", "What we put back", "How near to what you love",
                           "What it costs", "What may go wrong", "What we answer for"})
    EXPECT_TRUE(text.contains(said)) << said;
}
