// SPDX-License-Identifier: GPL-3.0-or-later
// The page measured with poppler's eyes, as a crew would with a rule.
#include <gtest/gtest.h>

#include <QPrinter>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <cmath>

#include "app/support/laid_out.h"
#include "app/support/pdf_tools.h"
#include "sheets/as_built_sheet.h"
#include "sheets/detail_parts.h"
#include "sheets/details_sheet.h"
#include "sheets/dig_sheet.h"
#include "sheets/paper.h"
#include "sheets/permit_sheet.h"
#include "sheets/sheets_out.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

constexpr double kMillimetre = 72 / 25.4;  // points
constexpr Paper kPapers[] = {Paper::letter, Paper::tabloid, Paper::a4, Paper::a3};
const QDate kDay(2026, 5, 4);

// A bare lot that is 100 mm by 60 mm on paper at the scale, within half a unit.
laid_out::Sample bare_lot(UnitSystem units, int scale) {
  const double unit = units == UnitSystem::us ? 0.3048 : 1;
  const double w = std::round(0.1 * scale / unit) * unit, h = std::round(0.06 * scale / unit) * unit;
  laid_out::Sample sample;
  sample.plan.units = units;
  sample.plan.site.lot = {{{0, 0}, 1}, {{w, 0}, 1}, {{w, h}, 1}, {{0, h}, 1}};
  return sample;
}

// The lot line is the one stroke of six dashes and that weight: one edge a stroke.
QVector<double> lot_edges(const QByteArray& pdf) {
  QVector<double> lengths;
  for (const pdf::Stroke& stroke : pdf::strokes(pdf, 1))
    if (stroke.dashes == 6 && stroke.width > 1.1 && stroke.lines.size() == 1)
      lengths.push_back(stroke.lines[0].length());
  std::sort(lengths.begin(), lengths.end());
  return lengths;
}

template <class Drawn = DigSheet>
void expect_edges(UnitSystem units, Paper paper, int scale) {
  const laid_out::Sample sample = bare_lot(units, scale);
  const Drawn sheet(sample.plan, sample.outcome, {paper, scale, kDay});
  EXPECT_EQ(sheet.scale(), scale);
  EXPECT_TRUE(sheet.remarks().empty());
  const Ring lot = lot_ring(sample.plan.site);
  const double w = lot[2].x / scale * 1000 * kMillimetre, h = lot[2].y / scale * 1000 * kMillimetre;
  const QVector<double> edges = lot_edges(pdf_of(sheet));
  ASSERT_EQ(edges.size(), 4) << "1:" << scale;
  EXPECT_NEAR(edges[0], h, 0.2 * kMillimetre) << "1:" << scale;
  EXPECT_NEAR(edges[1], h, 0.2 * kMillimetre) << "1:" << scale;
  EXPECT_NEAR(edges[2], w, 0.2 * kMillimetre) << "1:" << scale;
  EXPECT_NEAR(edges[3], w, 0.2 * kMillimetre) << "1:" << scale;
}

}  // namespace

TEST(MeasuredPage, LotEdgeIsTrueAtEveryUsScaleOnEveryPaper) {
  for (Paper paper : kPapers)
    for (int scale : sheet::usual_scales(UnitSystem::us)) expect_edges(UnitSystem::us, paper, scale);
}

TEST(MeasuredPage, LotEdgeIsTrueAtEveryMetricScaleOnEveryPaper) {
  for (Paper paper : kPapers)
    for (int scale : sheet::usual_scales(UnitSystem::metric)) expect_edges(UnitSystem::metric, paper, scale);
}

TEST(MeasuredPage, LotEdgeIsTrueOnThePermitPlanToo) {
  for (Paper paper : kPapers)
    for (UnitSystem units : {UnitSystem::us, UnitSystem::metric})
      for (int scale : sheet::usual_scales(units)) expect_edges<PermitSheet>(units, paper, scale);
}

TEST(MeasuredPage, LotEdgeIsTrueOnTheAsBuiltToo) {
  for (Paper paper : kPapers)
    for (UnitSystem units : {UnitSystem::us, UnitSystem::metric})
      for (int scale : sheet::usual_scales(units)) expect_edges<AsBuiltSheet>(units, paper, scale);
}

// A trench's width on the coil's detail, at the scale that its heading says.
TEST(MeasuredPage, CoilDetailIsTrueToTheScaleItSays) {
  for (Paper paper : kPapers)
    for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      laid_out::Sample sample = laid_out::half_acre(3);
      sample.plan.units = units;
      const QByteArray pdf = pdf_of(DetailsSheet(sample.plan, sample.outcome, {paper, {}, kDay}));
      const QRegularExpression heading("COIL, HEAD END[^\\n]*1:([0-9]+)");
      const auto said = heading.match(pdf::text(pdf, 1));
      ASSERT_TRUE(said.hasMatch());
      const double width = sample.outcome.layout.trenches[0].width;
      const double wanted = width / said.captured(1).toInt() * 1000 * kMillimetre;
      // The outline is the one stroke of three lines: side, head, side.
      QVector<double> heads;
      for (const pdf::Stroke& stroke : pdf::strokes(pdf, 1))
        if (stroke.lines.size() == 3 && stroke.dashes == 0 &&
            std::abs(stroke.lines[0].length() - stroke.lines[2].length()) < 0.1)
          heads.push_back(stroke.lines[1].length());
      ASSERT_FALSE(heads.isEmpty());
      EXPECT_NEAR(heads[0], wanted, 0.2 * kMillimetre) << said.captured(0).toStdString();
    }
}

TEST(MeasuredPage, DetailScalesAreSaidAsOnAnArchitectsRule) {
  EXPECT_EQ(sheet::detail_scale_text(32, UnitSystem::us), "3/8\" = 1'-0\" (1:32)");
  EXPECT_EQ(sheet::detail_scale_text(12, UnitSystem::us), "1\" = 1'-0\" (1:12)");
  EXPECT_EQ(sheet::detail_scale_text(240, UnitSystem::us), "1\" = 20' (1:240)");
  EXPECT_EQ(sheet::detail_scale_text(50, UnitSystem::us), "1:50");
  EXPECT_EQ(sheet::detail_scale_text(48, UnitSystem::metric), "1:48");
  // Each that is chosen is on a rule: inches to the foot times the ratio are twelve, feet to the inch times
  // twelve the ratio.
  for (double metres = 0.3; metres < 60; metres *= 1.3) {
    const int scale = sheet::detail_scale(UnitSystem::us, metres, 300);
    const QRegularExpression rule("^(?:([0-9]+)/)?([0-9]+)\" = 1'-0\" \\(1:([0-9]+)\\)$");
    const QString text = sheet::detail_scale_text(scale, UnitSystem::us);
    const auto feet = QRegularExpression("^1\" = ([0-9]+)' \\(1:([0-9]+)\\)$").match(text);
    if (feet.hasMatch()) {
      EXPECT_EQ(12 * feet.captured(1).toInt(), scale);
      continue;
    }
    const auto said = rule.match(text);
    ASSERT_TRUE(said.hasMatch()) << scale;
    const double inches = said.captured(1).isEmpty()
                              ? said.captured(2).toDouble()
                              : said.captured(1).toDouble() / said.captured(2).toDouble();
    EXPECT_NEAR(inches * scale, 12, 1e-9);
  }
}

TEST(MeasuredPage, PrinterOfAnotherResolutionPrintsTheSameLengths) {
  const laid_out::Sample sample = bare_lot(UnitSystem::metric, 200);
  QTemporaryDir folder;
  QPrinter printer;
  printer.setResolution(300);
  printer.setOutputFormat(QPrinter::PdfFormat);
  printer.setOutputFileName(folder.filePath("printed.pdf"));
  const DigSheet sheet(sample.plan, sample.outcome, {Paper::a4, 200, kDay});
  ASSERT_TRUE(print_sheets(printer, {&sheet}).has_value());
  QFile file(folder.filePath("printed.pdf"));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QVector<double> edges = lot_edges(file.readAll());
  ASSERT_EQ(edges.size(), 4);
  EXPECT_NEAR(edges[0], 60 * kMillimetre, 0.2 * kMillimetre);
  EXPECT_NEAR(edges[3], 100 * kMillimetre, 0.2 * kMillimetre);
}

TEST(MeasuredPage, PaperHasItsSize) {
  const laid_out::Sample sample = bare_lot(UnitSystem::us, 240);
  const std::pair<Paper, QString> sizes[] = {{Paper::letter, "612 x 792|792 x 612"},
                                             {Paper::tabloid, "792 x 1224|1224 x 792"},
                                             {Paper::a4, "595 x 842|842 x 595"},
                                             {Paper::a3, "842 x 1191|1191 x 842"}};
  for (const auto& [paper, size] : sizes) {
    const QString info = pdf::info(pdf_of(DigSheet(sample.plan, sample.outcome, {paper, {}, kDay})));
    EXPECT_TRUE(info.contains(QRegularExpression("Page size: +(" + size + ") pts"))) << info.toStdString();
  }
}

TEST(MeasuredPage, ScaleBarAgreesWithTheScale) {
  for (const auto& [units, scale, length] :
       {std::tuple(UnitSystem::us, 240, 50), std::tuple(UnitSystem::us, 480, 100),
        std::tuple(UnitSystem::metric, 200, 10), std::tuple(UnitSystem::metric, 500, 20)}) {
    const laid_out::Sample sample = bare_lot(units, scale);
    const QByteArray pdf = pdf_of(DigSheet(sample.plan, sample.outcome, {Paper::a3, scale, kDay}));
    const double unit = units == UnitSystem::us ? 0.3048 : 1;
    const double metres = length * unit;
    EXPECT_NEAR(sheet::scale_bar_length(scale, units), metres, 1e-9);
    const QString named = QString("%1 %2").arg(length).arg(units == UnitSystem::us ? "ft" : "m");
    EXPECT_TRUE(pdf::text(pdf, 1).contains(named)) << named.toStdString();
    // Two of its four quarters are black, the first and the third: half the bar from one to the other.
    QVector<QRectF> quarters;
    const double quarter = metres / 4 / scale * 1000 * kMillimetre;
    for (const QRectF& box : pdf::filled_boxes(pdf, 1))
      if (std::abs(box.width() - quarter) < 0.2 * kMillimetre && std::abs(box.height() - 5) < 0.2)
        quarters.push_back(box);
    ASSERT_EQ(quarters.size(), 2) << scale;
    EXPECT_NEAR(std::abs(quarters[1].left() - quarters[0].left()), 2 * quarter, 0.2 * kMillimetre);
  }
}

TEST(MeasuredPage, UsualScaleIsTheLargestAtWhichAllFits) {
  const laid_out::Sample sample = laid_out::half_acre(3);
  const SheetSetup automatic{Paper::letter, {}, kDay};
  const DigSheet sheet(sample.plan, sample.outcome, automatic);
  EXPECT_TRUE(sheet.remarks().empty());
  const auto& scales = sheet::usual_scales(UnitSystem::us);
  const auto at = std::find(scales.begin(), scales.end(), sheet.scale());
  ASSERT_NE(at, scales.end());
  ASSERT_NE(at, scales.begin());
  // Two steps larger something is off, whichever way the page is divided.
  ASSERT_GE(at - scales.begin(), 2);
  EXPECT_FALSE(DigSheet(sample.plan, sample.outcome, {Paper::letter, *(at - 2), kDay}).remarks().empty());
}

TEST(MeasuredPage, WhatIsOffThePageIsNamedOnItAndReturned) {
  const laid_out::Sample sample = laid_out::half_acre(3);
  const DigSheet sheet(sample.plan, sample.outcome, {Paper::letter, 120, kDay});
  ASSERT_EQ(sheet.remarks().size(), 1U);
  EXPECT_NE(sheet.remarks()[0].value.find("trench 1"), std::string::npos);
  EXPECT_NE(sheet.remarks()[0].advice.find("1\" = "), std::string::npos);
  const QString text = pdf::text(pdf_of(sheet), 1);
  EXPECT_TRUE(text.contains("NOT ALL OF THE PLAN IS ON THIS PAGE"));
}
