// SPDX-License-Identifier: GPL-3.0-or-later
// The record and the as-built on paper, read back by poppler.
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "app/support/laid_out.h"
#include "app/support/pdf_tools.h"
#include "files/plan_file.h"
#include "plan/coil_watch.h"
#include "plan/record/as_built_solve.h"
#include "plan/record/record_judge.h"
#include "plan/solve.h"
#include "plane/region.h"
#include "sheets/as_built_sheet.h"
#include "sheets/record_sheet.h"
#include "sheets/sheets_out.h"
#include "sheets/tapes.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

const QDate kDay(2026, 5, 16);

laid_out::Sample solved(UnitSystem units) {
  laid_out::Sample s{sample::half_acre(), {}};
  s.plan.units = units;
  s.plan.thermal.years = 1;
  s.plan.record.test.tester = "J. Doe";
  s.plan.record.test.start = "2026-05-14 08:30";
  FlushReading flush;
  flush.flow = 1.5e-3;
  flush.pressure_drop = 9.9e5;
  s.plan.record.flush = {flush};
  s.plan.record.fill.freezing_point = -0.5;
  s.outcome = solve(s.plan);
  return s;
}

QString text_of_pdf(const Sheet& sheet) {
  return pdf::text(pdf_of(sheet)).simplified();
}

std::string shown(Quantity q, double value, UnitSystem units) {
  return print_quantity(q, value, units);
}

}  // namespace

TEST(RecordSheets, TheBlankFormHasWhatIsAskedAndNothingThatWasRead) {
  for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    const laid_out::Sample s = solved(units);
    const Paper paper = units == UnitSystem::us ? Paper::letter : Paper::a4;
    const QString form = text_of_pdf(RecordForm(s.plan, s.outcome, {paper, {}, kDay}));
    const QString filled = text_of_pdf(RecordSheet(s.plan, s.outcome, {paper, {}, kDay}));
    const RecordJudgement judged = judge_record(s.plan, s.outcome.flow.get(), s.outcome.temperatures.get());
    for (const std::string& asked : {shown(Quantity::flow, judged.flush_asked.asked, units),
                                     shown(Quantity::pressure, judged.flush_asked.expected_at_asked, units),
                                     shown(Quantity::fluid_volume, judged.fill.asked_product, units),
                                     shown(Quantity::temperature, judged.fill.wanted_freezing, units)}) {
      EXPECT_TRUE(form.contains(QString::fromStdString(asked))) << asked;
      EXPECT_TRUE(filled.contains(QString::fromStdString(asked))) << asked;
    }
    for (const QString& read :
         {QString("J. Doe"), QString("2026-05-14 08:30"), QString("WHAT THE RECORD TELLS")}) {
      EXPECT_FALSE(form.contains(read)) << read.toStdString();
      EXPECT_TRUE(filled.contains(read)) << read.toStdString();
    }
    EXPECT_TRUE(form.contains("Test with water") || form.contains("water")) << form.toStdString();
  }
}

TEST(RecordSheets, TheAsBuiltSaysWhatWasDugAndItsTiesFindItAgain) {
  laid_out::Sample s = solved(UnitSystem::us);
  const Trench& planned = s.outcome.layout.trenches[1];
  BuiltTrench t;
  t.number = planned.number;
  t.length = 12;
  t.stopped_by = StopCause::rock;
  s.plan.as_built.trenches = {t};
  const AsBuiltAnswer built = solve_as_built(s.plan, s.outcome);
  const AsBuiltSheet sheet(s.plan, s.outcome, {Paper::letter, {}, kDay});
  const QString text = text_of_pdf(sheet);
  EXPECT_TRUE(text.contains("stopped by rock"));
  EXPECT_TRUE(text.contains(QString::fromStdString(built.outcome->fingerprint)));
  EXPECT_TRUE(text.contains(QString::fromStdString(s.outcome.fingerprint)));
  EXPECT_TRUE(text.contains("AS BUILT"));
  EXPECT_FALSE(text.contains("TO RECORD AS DUG"));
  EXPECT_TRUE(pdf::text(pdf_of(sheet), 1).contains("planned"));  // beside the dashes of what was not dug
  const QString in_order = pdf::text_in_order(pdf_of(sheet)).simplified();
  int found = 0;
  for (const Tie& tie : built.outcome->stake_out.ties) {
    const QRegularExpression row(
        QRegularExpression::escape(QString::fromStdString(tie.point)) +
        R"( ?\*? ([A-Z]+) ((?:\d+'-)?\d+(?: \d+/\d+)?") ([A-Z]+) ((?:\d+'-)?\d+(?: \d+/\d+)?"))");
    const auto match = row.match(in_order);
    if (!match.hasMatch()) continue;
    Tie read = tie;
    read.first = match.captured(1).toStdString();
    read.first_distance = *parse_quantity(Quantity::length, match.captured(2).toStdString(), UnitSystem::us);
    read.second = match.captured(3).toStdString();
    read.second_distance = *parse_quantity(Quantity::length, match.captured(4).toStdString(), UnitSystem::us);
    const auto at = find_point_from_tie(built.outcome->stake_out, read);
    ASSERT_TRUE(at) << tie.point;
    EXPECT_LT(distance(*at, tie.at), 0.01) << tie.point;
    ++found;
  }
  EXPECT_GE(found, 8);
}

TEST(RecordSheets, WhereNothingIsRecordedTheAsBuiltIsTheFormForIt) {
  const laid_out::Sample s = solved(UnitSystem::metric);
  const QString text = text_of_pdf(AsBuiltSheet(s.plan, s.outcome, {Paper::a4, {}, kDay}));
  EXPECT_TRUE(text.contains("TO RECORD AS DUG"));
  EXPECT_TRUE(text.contains("Check tape"));
  EXPECT_FALSE(
      pdf::text(pdf_of(AsBuiltSheet(s.plan, s.outcome, {Paper::a4, {}, kDay})), 1).contains("planned"));
}

// Scaled, captioned with their names; what is not there is said; the same bytes in two runs.
TEST(RecordSheets, PhotosArePrintedOverTheirNames) {
  QTemporaryDir folder;
  ASSERT_TRUE(QDir(folder.path()).mkdir("photos"));
  QImage image(1600, 1200, QImage::Format_RGB32);
  image.fill(QColor(20, 120, 40));
  ASSERT_TRUE(image.save(folder.filePath("photos/rock.png")));
  QFile broken(folder.filePath("broken.jpg"));
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("no picture at all");
  broken.close();
  laid_out::Sample s = solved(UnitSystem::us);
  s.plan.as_built.photos = {{"photos/rock.png", "Rock at the end", 2, "2026-05-14 10:20", {}},
                            {"photos/gone.jpg", "The header", 0, "", {}},
                            {"broken.jpg", "", 0, "", {}}};
  SheetSetup setup{Paper::letter, {}, kDay};
  setup.folder = folder.path();
  const AsBuiltSheet sheet(s.plan, s.outcome, setup);
  const QByteArray bytes = pdf_of(sheet);
  const QString text = pdf::text(bytes).simplified();
  for (const char* words :
       {"Trench 2: Rock at the end", "photos/rock.png, 2026-05-14 10:20", "The header", "photos/gone.jpg",
        "broken.jpg", "This photo was not found.", "No picture can be read from this file."})
    EXPECT_TRUE(text.contains(words)) << words;
  // One picture, 4 to 3 as it was taken, with no more dots than paper shows.
  const QStringList images = pdf::images(bytes);
  ASSERT_EQ(images.size(), 1) << images.join("\n").toStdString();
  const QStringList cells = images[0].simplified().split(' ');
  EXPECT_EQ(cells[3].toInt() * 3, cells[4].toInt() * 4);
  EXPECT_LE(cells[3].toInt(), 1500);
  EXPECT_GE(cells[12].toInt(), 200);  // dots an inch
  EXPECT_EQ(bytes, pdf_of(AsBuiltSheet(s.plan, s.outcome, setup)));
}

TEST(RecordSheets, ManyPhotosGoOnFromPageToPage) {
  laid_out::Sample s = solved(UnitSystem::us);
  const int without = AsBuiltSheet(s.plan, s.outcome, {Paper::letter, {}, kDay}).pages();
  for (int i = 1; i <= 15; ++i)
    s.plan.as_built.photos.push_back(
        {"p" + std::to_string(i) + ".jpg", "View " + std::to_string(i), 0, "", {}});
  const AsBuiltSheet sheet(s.plan, s.outcome, {Paper::letter, {}, kDay});
  EXPECT_GT(sheet.pages(), without + 1);
  const QString text = text_of_pdf(sheet);
  for (int i = 1; i <= 15; ++i) EXPECT_EQ(text.count(QString("p%1.jpg").arg(i)), 1) << i;
}

TEST(RecordSheets, EachLegOfTheHeaderHasItsDepth) {
  laid_out::Sample s = solved(UnitSystem::metric);
  s.plan.as_built.run_depth = 1.21;
  s.plan.as_built.header = {{{}, 1.93}};
  const QString text = text_of_pdf(AsBuiltSheet(s.plan, s.outcome, {Paper::a4, {}, kDay}));
  EXPECT_TRUE(text.contains("1.21 m")) << text.toStdString();
  EXPECT_TRUE(text.contains("1.93 m"));
}

// Boxes beside a tape that is printed otherwise on the page before would be doubted.
TEST(RecordSheets, TheFormForItHasTheTapesOfItsFirstPage) {
  for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    const laid_out::Sample s = solved(units);
    const AsBuiltSheet sheet(s.plan, s.outcome, {Paper::letter, {}, kDay});
    const QString text = pdf::text_in_order(pdf_of(sheet)).simplified();
    const QString form = text.mid(text.indexOf("TO RECORD AS DUG"));
    for (const Tie& tie : s.outcome.stake_out.ties) {
      if (tie.key.starts_with("run") || tie.key.starts_with("header")) continue;
      const sheet::PrintedTapes tapes = sheet::printed_tapes(s.plan, s.outcome.stake_out, tie);
      const QString row = QString("%1 %2, %3 %4")
                              .arg(QString::fromStdString(tie.first), tapes.first,
                                   QString::fromStdString(tie.second), tapes.second);
      EXPECT_TRUE(form.contains(row)) << row.toStdString();
    }
  }
}

// Which pipe lies in which leg: by the heads it passes and what they carry.
TEST(RecordSheets, EveryLegNamesItsHeadsAndHasItsOwnPipe) {
  const laid_out::Sample s = solved(UnitSystem::us);
  const QString text = text_of_pdf(AsBuiltSheet(s.plan, s.outcome, {Paper::letter, {}, kDay}));
  const Layout& layout = s.outcome.layout;
  ASSERT_FALSE(layout.header.legs.empty());
  for (const Trench& t : layout.trenches) {
    bool on_a_leg = false;
    for (const Polyline& leg : layout.header.legs) on_a_leg = on_a_leg || line_distance({t.head}, leg) < 0.05;
    if (!on_a_leg) continue;
    EXPECT_TRUE(text.contains(QRegularExpression(QString("heads [0-9, ]*\\b%1\\b").arg(t.number))))
        << t.number;
  }
}

// A coil that is covered before the test has boxes for its own proof; where none is, there are none.
TEST(RecordSheets, CoilsCoveredEarlyHaveBoxesOfTheirOwn) {
  laid_out::Sample s;
  s.plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/alder-lane.underlawn")->value;
  s.plan.thermal.years = 1;
  s.outcome = solve(s.plan);
  const std::vector<CoilWatch> coils = coil_watches(s.plan, s.outcome);
  ASSERT_FALSE(coils.empty());
  const QString text = text_of_pdf(RecordForm(s.plan, s.outcome, {Paper::letter, {}, kDay}));
  EXPECT_TRUE(text.contains("COILS PROVED BEFORE THEY ARE COVERED"));
  EXPECT_TRUE(text.contains(
      "30 min at " + QString::fromStdString(shown(Quantity::pressure, coils[0].hold.proved, s.plan.units))));
  for (const CoilWatch& coil : coils) {
    EXPECT_TRUE(text.contains(QString("Coil %1").arg(coil.trench)));
    EXPECT_TRUE(
        text.contains(QString::fromStdString(shown(Quantity::pressure, coil.hold.least, s.plan.units))));
  }
  EXPECT_TRUE(text.contains(
      QString::fromStdString(shown(Quantity::pressure, coils[0].hold.kept, s.plan.units)) + " on each coil"));
  s.outcome.order = nullptr;
  s.outcome.calendar = nullptr;
  EXPECT_FALSE(
      text_of_pdf(RecordForm(s.plan, s.outcome, {Paper::letter, {}, kDay})).contains("COILS PROVED"));
}

// The unit that the reader's gauge has comes first.
TEST(RecordSheets, CautionsSayThePressureInTheSheetsUnitsFirst) {
  for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    const laid_out::Sample s = solved(units);
    const QString text = text_of_pdf(RecordForm(s.plan, s.outcome, {Paper::letter, {}, kDay}));
    const QRegularExpression air("Filled with air at [0-9.]+ (psi|kPa) \\(");
    ASSERT_TRUE(air.match(text).hasMatch());
    EXPECT_EQ(air.match(text).captured(1), units == UnitSystem::us ? "psi" : "kPa");
  }
}

TEST(AsBuiltSheets, ASpacingBrokenByDiggingIsSaidInWordsAndOnlyThen) {
  laid_out::Sample s = solved(UnitSystem::us);
  const auto told = [&] {
    return text_of_pdf(AsBuiltSheet(s.plan, s.outcome, {Paper::letter, {}, kDay})).contains("are too close");
  };
  EXPECT_FALSE(told());
  const Trench &a = s.outcome.layout.trenches[0], &b = s.outcome.layout.trenches[1];
  BuiltTrench moved;
  moved.number = a.number;
  moved.head = BuiltPoint{{}, true, a.head + 0.3 * (b.head - a.head)};
  moved.end = BuiltPoint{{}, true, a.end + 0.3 * (b.head - a.head)};
  s.plan.as_built.trenches = {moved};
  EXPECT_TRUE(told());
}
