// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QLineEdit>
#include <QRegularExpression>
#include <QTest>
#include <QTextBrowser>
#include <QTextDocument>

#include "app/support/wait.h"
#include "cost/bill.h"
#include "cost/comparison.h"
#include "files/plan_file.h"
#include "plan/solve.h"
#include "report/figure_table.h"
#include "report/headline.h"
#include "report/report_html.h"
#include "report/report_panel.h"
#include "support/sample_plans.h"
#include "window/theme_now.h"

using namespace underlawn;

namespace {

struct ReportTest : testing::Test {
  Plan plan = sample::half_acre();
  Outcome outcome = solve(plan);
  Theme theme = Theme::light();

  static QString text_of(const QString& html) {
    QTextDocument page;
    page.setHtml(html);
    return page.toPlainText().replace(QChar(0x00a0), ' ');
  }
  QString shown(const char* key) const {
    const Figure& f = outcome.figures.at(key);
    return QString::fromStdString(print_quantity(f.quantity, f.value, plan.units));
  }
};

}  // namespace

TEST_F(ReportTest, ShowsTheNumbersOfTheFigures) {
  const QString page = text_of(report_html(plan, outcome, theme));
  for (const char* key :
       {"trench.1.length", "trench.1.coil_length", "trench.1.head_x", "header.length", "run.length",
        "buy.coil_pipe", "buy.header_pipe", "buy.pipe", "buy.counted_pipe", "dig.total.bank_volume",
        "dig.total.bedding_volume", "dig.total.loose_volume", "dig.total.backfill_volume"})
    EXPECT_TRUE(page.contains(shown(key))) << key << " = " << shown(key).toStdString();
}

// Half an inch of pitch is 10 ft of pipe in a trench: as finely as on the sheets.
TEST_F(ReportTest, ShowsAPitchFinerThanOtherLengths) {
  const double pitch = outcome.figures.at("trench.1.pitch").value;
  const QString page = text_of(report_html(plan, outcome, theme));
  const auto printed = [&](Fineness fineness) {
    return QString::fromStdString(print_quantity(Quantity::length, pitch, UnitSystem::us, fineness));
  };
  ASSERT_NE(printed(Fineness::fine), printed(Fineness::normal));
  EXPECT_TRUE(page.contains(printed(Fineness::fine)));
}

TEST_F(ReportTest, ShowsTheBillAndTheDays) {
  const QString page = text_of(report_html(plan, outcome, theme));
  EXPECT_TRUE(page.contains("Cost, USD"));
  for (const char* key : {"cost.digging", "cost.joint", "cost.total"})
    EXPECT_TRUE(page.contains(QString::number(outcome.figures.at(key).value, 'f', 2))) << key;
  EXPECT_TRUE(page.contains(shown("days.open")));
  EXPECT_TRUE(page.contains("15.29 per cu yd"));  // 20 a cubic metre
  plan.units = UnitSystem::metric;
  EXPECT_TRUE(text_of(report_html(plan, outcome, theme)).contains("20.00 per m³"));
}

// What is left between two printed amounts is printed as a reader subtracts them, in whole units; a bill has
// cents.
TEST_F(ReportTest, AmountsAddUpAsPrinted) {
  for (const char* name : {"alder-lane", "kestrel-bend"}) {
    const Plan lot = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name + ".underlawn")->value;
    const Outcome solved = solve(lot);
    const QString html = report_html(lot, solved, theme);
    const auto printed = [&](const std::string& key) {
      const QRegularExpression link(kFigureLink + QRegularExpression::escape(QString::fromStdString(key)) +
                                    "\"[^>]*>([^<]*)</a>");
      const auto found = link.match(html);
      EXPECT_TRUE(found.hasMatch()) << key;
      return found.captured(1).toDouble();
    };
    for (std::size_t i = 1; i <= solved.comparison->others.size(); ++i) {
      const std::string other = "run.other_" + std::to_string(i);
      EXPECT_EQ(printed(other + ".saved"), printed(other + ".running") - printed("run.loop.running"));
      EXPECT_EQ(printed(other + ".net_savings"),
                printed(other + ".life_cycle") - printed("run.loop.life_cycle"));
    }
    double sum = 0;
    for (const BillLine& line : solved.bill->lines) sum += printed("cost." + line.key);
    EXPECT_NEAR(sum, printed("bill.cost"), 0.005 * static_cast<double>(solved.bill->lines.size() + 1));
    EXPECT_NEAR(printed("bill.cost") + printed("bill.overhead") + printed("bill.markup"),
                printed("cost.total"), 0.011);
  }
}

TEST_F(ReportTest, ShowsThemInTheUnitsOfThePlan) {
  plan.units = UnitSystem::metric;
  outcome = solve(plan);  // findings say their figures in the units of the plan that was solved
  const QString page = text_of(report_html(plan, outcome, theme));
  EXPECT_TRUE(page.contains(shown("dig.total.bank_volume")));
  EXPECT_FALSE(page.contains("cu yd"));
}

TEST_F(ReportTest, EveryLinkOfANumberLeadsToAFigure) {
  const QString page = report_html(plan, outcome, theme);
  auto links = QRegularExpression("href=\"([^\"]*)\"").globalMatch(page);
  int figures = 0;
  while (links.hasNext()) {
    const QString key = target_of(QUrl(links.next().captured(1)), kFigureLink);
    if (key.isEmpty()) continue;
    ++figures;
    EXPECT_NE(outcome.figures.find(key.toStdString()), nullptr) << key.toStdString();
  }
  EXPECT_GT(figures, 40);
}

TEST_F(ReportTest, EveryFindingIsThereWithWhatIsAndWhatIsAsked) {
  const QString page = text_of(report_html(plan, outcome, theme));
  ASSERT_FALSE(outcome.findings.empty());
  for (const Finding& f : outcome.findings) {
    EXPECT_TRUE(page.contains(QString::fromStdString(f.title))) << f.key;
    EXPECT_TRUE(page.contains(QString::fromStdString(print_quantity(f.quantity, f.required, plan.units))))
        << f.key;
  }
}

TEST_F(ReportTest, TroublesOfAPlanThatCannotBeSolvedAreSaid) {
  plan.wishes.trench_width = -1;
  outcome = solve(plan);
  const QString page = text_of(report_html(plan, outcome, theme));
  ASSERT_FALSE(outcome.troubles.empty());
  EXPECT_TRUE(page.contains(QString::fromStdString(outcome.troubles.front().message())));
}

TEST_F(ReportTest, TraceNamesTheFormulaAndEachInput) {
  const QString page = text_of(trace_html(outcome.figures, "dig.total.bank_volume", plan.units, theme));
  const Figure& f = outcome.figures.at("dig.total.bank_volume");
  EXPECT_TRUE(page.contains(QString::fromStdString(f.method)));
  ASSERT_FALSE(f.from.empty());
  for (const std::string& key : f.from)
    EXPECT_TRUE(page.contains(QString::fromStdString(outcome.figures.at(key).label))) << key;
}

TEST_F(ReportTest, TraceOfANumberThatIsGoneSaysSo) {
  EXPECT_TRUE(text_of(trace_html(outcome.figures, "no.such", plan.units, theme)).contains("not there"));
}

TEST_F(ReportTest, HtmlInNamesIsShownAsTyped) {
  plan.wishes.pipe = "<b>&pipe";
  outcome = solve(plan);
  EXPECT_TRUE(text_of(report_html(plan, outcome, theme)).contains("<b>&pipe"));
}

// It is said once and stands while the theme is changed: painted in the error ink of the theme of the moment.
TEST(HeadlineTest, WhatDoesNotHoldIsPaintedInTheThemeOfTheMoment) {
  ThemeKeeper& keeper = ThemeKeeper::instance();
  const ThemeChoice before = keeper.choice();
  Document document;
  Headline headline(document);
  headline.resize(360, 220);
  keeper.choose(ThemeChoice::light);
  headline.show_as_built(false);
  const auto holds = [&](const QColor& ink) {
    const QImage image = headline.grab().toImage();
    for (int y = 0; y < image.height(); ++y)
      for (int x = 0; x < image.width(); ++x)
        if (image.pixelColor(x, y).rgb() == ink.rgb()) return true;
    return false;
  };
  const QColor light = theme_now().error;
  EXPECT_TRUE(holds(light));
  keeper.choose(ThemeChoice::dark);
  ASSERT_NE(theme_now().error, light);
  EXPECT_TRUE(holds(theme_now().error));
  EXPECT_FALSE(holds(light));
  keeper.choose(before);
}

TEST_F(ReportTest, HeadlineShowsTheFigures) {
  Document document;
  Headline headline(document);
  document.commit(plan, "Drawn");
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  for (const char* key :
       {"layout.circuits_placed", "dig.length", "buy.pipe", "dig.total.bank_volume", "cost.total"}) {
    const Figure& f = outcome.figures.at(key);
    const auto fineness = f.quantity == Quantity::length ? Fineness::normal : Fineness::coarse;
    const auto words = QString::fromStdString(print_quantity(f.quantity, f.value, plan.units, fineness));
    EXPECT_TRUE(headline.words().contains(words)) << key << ": " << headline.words().toStdString();
  }
}

// What running the house costs has keys that begin alike.
TEST_F(ReportTest, OfTheSupplyRunOnlyItsOwnFiguresAreShown) {
  Document document;
  document.commit(plan, "Drawn");
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  ASSERT_TRUE(document.outcome()->figures.find("run.years") != nullptr);
  const FigureTable table(document, {Selected::Kind::run, 0, 0});
  const QString text = table.toPlainText();
  EXPECT_TRUE(text.contains("Supply run pipe") && text.contains("Excavated")) << text.toStdString();
  EXPECT_FALSE(text.contains("Years looked at")) << text.toStdString();
}

TEST_F(ReportTest, FindingIsAcceptedWithAReasonAndTakenBack) {
  Document document;
  Selection selection;
  ReportPanel panel(document, selection);
  document.commit(plan, "Drawn");
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  const std::string key = outcome.findings.front().key;
  panel.ask_reason(QString::fromStdString(key));
  QTest::keyClick(panel.reason(), Qt::Key_Return);
  EXPECT_TRUE(document.plan().accepted.empty()) << "without a reason nothing is accepted";
  QTest::keyClicks(panel.reason(), "shored by the contractor");
  QTest::keyClick(panel.reason(), Qt::Key_Return);
  ASSERT_EQ(document.plan().accepted.size(), 1u);
  EXPECT_EQ(document.plan().accepted[0].finding, key);
  EXPECT_EQ(document.plan().accepted[0].reason, "shored by the contractor");
  emit panel.browser()->anchorClicked(QUrl(kWithdrawLink + QString::fromStdString(key)));
  EXPECT_TRUE(document.plan().accepted.empty());
}

TEST_F(ReportTest, MissingCircuitsPointToOtherWaysAndToTheSize) {
  EXPECT_FALSE(report_html(plan, outcome, theme).contains(kPanelLink));
  plan.wishes.circuits = 40;
  outcome = solve(plan);
  const QString html = report_html(plan, outcome, theme);
  ASSERT_TRUE(text_of(html).contains("circuits fit"));
  EXPECT_TRUE(html.contains("\"panel:ways\"") && html.contains("\"panel:size\""));
  Document document;
  Selection selection;
  ReportPanel panel(document, selection);
  QString asked;
  QObject::connect(&panel, &ReportPanel::panel_asked, [&](const QString& which) { asked = which; });
  emit panel.browser()->anchorClicked(QUrl("panel:size"));
  EXPECT_EQ(asked, "size");
}

// Four rows 12 ft apart fit but for the tank's clearance.
TEST_F(ReportTest, WhatMakesRoomIsFoundWhenAskedAndTakenWithAClick) {
  Plan strip = sample::empty();
  for (Point corner : {Point{0, 0}, {30, 0}, {30, 13}, {0, 13}}) strip.site.lot.push_back({corner, 0.2});
  strip.site.features.push_back({});
  Feature& tank = strip.site.features[0];
  tank.id = 2;
  tank.kind = FeatureKind::septic_tank;
  tank.points = {{13, 12.6}, {15, 12.6}, {15, 12.7}, {13, 12.7}};
  tank.trench_clearance = tank.run_clearance = 4;
  strip.wishes.trench_length = 26;
  strip.wishes.coil_in_run = false;
  strip.thermal.years = 1;
  Document document;
  Selection selection;
  ReportPanel panel(document, selection);
  panel.show();
  document.commit(strip, "Drawn");
  const auto shows = [&](const QString& link) {
    return wait_until([&] { return panel.browser()->toHtml().contains(link); });
  };
  ASSERT_TRUE(shows(kFindRemediesLink));
  emit panel.browser()->anchorClicked(QUrl(kFindRemediesLink));
  ASSERT_TRUE(wait_until([&] { return !panel.remedies().busy(); }));
  ASSERT_TRUE(shows(QString(kTakeLink) + "0"));
  EXPECT_TRUE(panel.browser()->toPlainText().contains("Only where the local code"));
  const MoreRoom first = panel.remedies().newest()->remedies.at(0);
  emit panel.browser()->anchorClicked(QUrl(QString(kTakeLink) + "0"));
  EXPECT_EQ(document.committed().wishes.circuits, 4);
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  EXPECT_EQ(document.outcome()->layout.trenches.size(), static_cast<std::size_t>(first.circuits));
  // Of the plan before: no longer shown, and cannot be taken again.
  ASSERT_TRUE(wait_until([&] { return !panel.browser()->toHtml().contains(kTakeLink); }));
  const Plan taken = document.committed();
  emit panel.browser()->anchorClicked(QUrl(QString(kTakeLink) + "0"));
  EXPECT_EQ(document.committed(), taken);
}

TEST_F(ReportTest, ClickOnAFindingPointsOutItsPlaces) {
  Document document;
  Selection selection;
  ReportPanel panel(document, selection);
  document.commit(plan, "Drawn");
  ASSERT_TRUE(wait_until([&] { return !document.stale(); }));
  std::vector<Polyline> shown;
  QObject::connect(&selection, &Selection::pointed_out,
                   [&](const std::vector<Polyline>& places) { shown = places; });
  const auto with_place = std::find_if(outcome.findings.begin(), outcome.findings.end(),
                                       [](const Finding& f) { return !f.places.empty(); });
  ASSERT_NE(with_place, outcome.findings.end());
  emit panel.browser()->anchorClicked(QUrl(kPlaceLink + QString::fromStdString(with_place->key)));
  EXPECT_EQ(shown, with_place->places);
}
