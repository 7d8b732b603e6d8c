// SPDX-License-Identifier: GPL-3.0-or-later
// One price: headline, Price tab, alternatives, report, proposal, results file and materials sheet say the
// same, whatever sides the trenches are to have.
#include <gtest/gtest.h>

#include <QLabel>
#include <QRegularExpression>
#include <QTextDocument>
#include <cmath>

#include "app/support/pdf_tools.h"
#include "app/support/wait.h"
#include "cost/bill.h"
#include "cost/crew_calendar.h"
#include "files/bill_file.h"
#include "files/json_text.h"
#include "files/results_file.h"
#include "plan/solve.h"
#include "plan/ways.h"
#include "report/headline.h"
#include "report/report_html.h"
#include "sheets/family_facts.h"
#include "sheets/sheet_kinds.h"
#include "sheets/sheets_out.h"
#include "support/sample_plans.h"
#include "window/price_panel.h"

using namespace underlawn;

namespace {

QString plain(const QString& html) {
  QTextDocument page;
  page.setHtml(html);
  return page.toPlainText().replace(QChar(0x00a0), ' ');
}

QString printed(double money, Fineness fineness = Fineness::normal) {
  return QString::fromStdString(print_quantity(Quantity::money, money, UnitSystem::us, fineness));
}

QString pages_of(const char* kind, const Plan& plan, const Outcome& outcome) {
  const SheetPtr sheet = find_sheet_kind(kind)->make(plan, outcome, {Paper::letter, {}, QDate(2026, 5, 4)});
  return pdf::text(pdf_of(*sheet)).simplified();
}

QString words_of(const QWidget& panel) {
  QString all;
  for (const QLabel* label : panel.findChildren<QLabel*>()) all += plain(label->text()) + "\n";
  return all;
}

// Amounts of money that a family reads: "$20,700".
std::vector<double> dollars(const QString& text) {
  static const QRegularExpression amount(R"(\$([0-9,]+))");
  std::vector<double> all;
  for (auto i = amount.globalMatch(text); i.hasNext();)
    all.push_back(i.next().captured(1).remove(',').toDouble());
  return all;
}

void expect_one_price(Plan plan) {
  plan.thermal.years = 1;
  Document document;
  document.commit(plan, "Drawn");
  ASSERT_TRUE(wait_until([&] { return document.outcome() != nullptr && !document.stale(); }));
  const Outcome& o = *document.outcome();
  ASSERT_NE(o.bill, nullptr);
  const double price = o.bill->price;
  double sum = 0;
  for (const BillLine& line : o.bill->lines) sum += line.sum;
  EXPECT_NEAR(sum + o.bill->overhead + o.bill->markup + o.bill->tax, price, 1e-6);

  EXPECT_EQ(o.figures.at("cost.total").value, price);
  Headline headline(document);
  EXPECT_TRUE(headline.words().contains(printed(price, Fineness::coarse))) << headline.words().toStdString();
  PricePanel panel(document);
  panel.refresh();
  EXPECT_TRUE(words_of(panel).contains(printed(price, Fineness::coarse))) << words_of(panel).toStdString();
  EXPECT_TRUE(plain(report_html(plan, o, Theme::light())).contains(printed(price, Fineness::coarse)));
  EXPECT_TRUE(pages_of("materials", plan, o).contains(printed(price)));
  const Json results = Json::parse(results_to_text(plan, o));
  EXPECT_NEAR(results["values"]["cost.total_money"].get<double>(), price, 1e-6);
  const Json bill = Json::parse(bill_json(plan, o));
  EXPECT_NEAR(bill["bill"]["price_money"].get<double>(), price, 1e-6);

  // The family pays for the heat pump too and reads three figures of it.
  const FamilyFacts facts = family_facts(plan, o);
  // What a family signs is in whole units of money, so that the page adds up as it is printed.
  EXPECT_EQ(facts.price - facts.unit, std::round(o.bill->net));
  const std::vector<double> said = dollars(pages_of("proposal", plan, o));
  EXPECT_TRUE(
      std::ranges::any_of(said, [&](double v) { return v <= facts.price + 0.5 && v >= 0.99 * facts.price; }));
  // Trench, pipe and joints are one number each too.
  double pipe = 0;
  for (const BillLine& line : o.bill->lines)
    if (line.group == BillGroup::pipe) pipe += line.bought.amount;
  EXPECT_NEAR(o.figures.at("buy.pipe").value, pipe, 1e-9);
  double needed = 0;
  for (const BillLine& line : o.bill->lines)
    if (line.group == BillGroup::pipe) needed += line.needed;
  EXPECT_NEAR(o.figures.at("buy.counted_pipe").value, needed, 1e-9);
}

Plan with_sides(Sides coil, Sides run) {
  Plan plan = sample::half_acre();
  plan.dig.coil_sides = coil;
  plan.dig.run_sides = run;
  return plan;
}

double price_of(const Plan& plan) {
  return solve(plan).bill->price;
}

}  // namespace

TEST(OnePrice, IsSaidEverywhereWithTheUsualSides) {
  expect_one_price(sample::half_acre());
}

TEST(OnePrice, IsSaidEverywhereWithSlopes) {
  expect_one_price(with_sides(Sides::slope, Sides::slope));
}

TEST(OnePrice, IsSaidEverywhereWithEachKindOfTrenchItsOwn) {
  Plan plan = with_sides(Sides::shield, Sides::slope);
  plan.pricing.terms.labour = LabourBy::hours;
  plan.pricing.terms.overhead = 0.1;
  plan.pricing.terms.tax = 0.06;
  plan.dig.haul = Haul::all;
  expect_one_price(plan);
}

TEST(OnePrice, IsThatOfTheAlternatives) {
  Plan plan = with_sides(Sides::slope, Sides::shield);
  plan.thermal.years = 1;
  const std::vector<Way> ways = ways_of(plan);
  ASSERT_FALSE(ways.empty());
  EXPECT_EQ(ways[0].cost, price_of(plan));
}

// A slope is more earth, so it is dearer, for each kind of trench by itself.
TEST(OnePrice, FollowsTheSidesOfEachKindOfTrench) {
  Plan plan = with_sides(Sides::stay_out, Sides::shield);
  plan.thermal.years = 1;
  const double upright = price_of(plan);
  plan.dig.run_sides = Sides::slope;
  const double run = price_of(plan);
  plan.dig.coil_sides = Sides::slope;
  const double all = price_of(plan);
  EXPECT_GT(run, upright);
  EXPECT_GT(all, run);
}

// Every hour and day of the bill is the calendar's.
TEST(OnePrice, ChargesTheHoursOfTheCalendar) {
  Plan plan = with_sides(Sides::slope, Sides::slope);
  plan.thermal.years = 1;
  plan.pricing.terms.labour = LabourBy::hours;
  plan.dig.haul = Haul::all;
  const Outcome o = solve(plan);
  double hours[kCrewStations] = {};
  for (const CrewTask& task : o.calendar->tasks)
    hours[static_cast<std::size_t>(task.station)] += (task.end - task.begin) / 3600;
  const std::pair<const char*, CrewStation> lines[] = {
      {"excavator_hour", CrewStation::digging}, {"coil_maker_hour", CrewStation::making},
      {"layer_hour", CrewStation::laying},      {"joiner_hour", CrewStation::joining},
      {"tester_hour", CrewStation::testing},    {"loader_hour", CrewStation::filling},
      {"truck_hour", CrewStation::hauling}};
  for (const auto& [key, station] : lines) {
    const auto line = std::ranges::find(o.bill->lines, key, &BillLine::key);
    ASSERT_NE(line, o.bill->lines.end()) << key;
    EXPECT_NEAR(line->needed, hours[static_cast<std::size_t>(station)], 1e-9) << key;
  }
  plan.pricing.terms.labour = LabourBy::days;
  const Outcome days = solve(plan);
  const auto day = std::ranges::find(days.bill->lines, "crew_day", &BillLine::key);
  ASSERT_NE(day, days.bill->lines.end());
  EXPECT_EQ(day->needed, days.calendar->days_worked);
}
