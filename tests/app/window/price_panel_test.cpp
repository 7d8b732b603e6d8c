// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/price_panel.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QTableWidget>
#include <QTemporaryDir>

#include "app/support/fields.h"
#include "app/support/wait.h"
#include "cost/bill.h"
#include "cost/comparison.h"
#include "cost/fuels.h"
#include "plots/chart_view.h"
#include "plots/cost_chart.h"
#include "report/headline.h"
#include "sheets/family_facts.h"
#include "support/sample_plans.h"
#include "window/kitchen_view.h"
#include "window/price_table.h"

using namespace underlawn;

namespace {

struct PricePanelTest : testing::Test {
  QTemporaryDir folder;
  Document document;
  std::unique_ptr<PricePanel> panel;
  QString told;

  void SetUp() override {
    Plan plan = sample::half_acre();
    plan.thermal.years = 3;
    document.commit(plan, "Drawn");
    panel = std::make_unique<PricePanel>(document);
    QObject::connect(panel.get(), &PricePanel::told, [this](const QString& words) { told = words; });
    current();
  }
  void current() {
    ASSERT_TRUE(wait_until([&] { return document.outcome() != nullptr && !document.stale(); }));
    panel->refresh();
  }
  // Without one the loop has no line in the chart.
  void with_a_heat_pump_price() {
    Plan plan = document.plan();
    plan.pricing.running.unit_cost = 9000;
    document.commit(plan, "Priced");
  }
  int row_of_key(const std::string& key) {
    const auto& rows = panel->table()->rows();
    for (std::size_t i = 0; i < rows.size(); ++i)
      if (rows[i].key == key) return static_cast<int>(i);
    return -1;
  }
  void enter(const std::string& key, int column, const QString& text) {
    const int row = row_of_key(key);
    ASSERT_GE(row, 0) << key;
    panel->table()->table()->item(row, column)->setText(text);
  }
  QString cell(const std::string& key, int column) {
    return panel->table()->table()->item(row_of_key(key), column)->text();
  }
  QString file(const QString& name, const std::string& text) {
    const QString path = folder.filePath(name);
    QFile out(path);
    EXPECT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(text.data(), static_cast<qint64>(text.size()));
    return path;
  }
  // The book as it is exported, but for the price of one row.
  void read_back_without(const std::string& key) {
    const QString path = folder.filePath("book.csv");
    panel->write_book(path);
    QFile in(path);
    ASSERT_TRUE(in.open(QIODevice::ReadOnly));
    QStringList lines = QString::fromUtf8(in.readAll()).split('\n');
    for (QString& line : lines)
      if (line.startsWith(QString::fromStdString(key + ","))) line = QString::fromStdString(key) + ",,,,,,,";
    panel->read_book(file("emptied.csv", lines.join('\n').toStdString()));
  }
  bool says(const QString& part) {
    for (const QLabel* label : panel->findChildren<QLabel*>())
      if (!label->isHidden() && label->text().contains(part)) return true;
    return false;
  }
  double total() { return document.outcome()->bill->price; }
};

constexpr int kPrice = 2, kSoldBy = 1, kDate = 3;

double print_to_number(const QString& price) {
  return price.section('/', 0, 0).toDouble();
}

}  // namespace

TEST_F(PricePanelTest, APriceTypedInTheTableIsThatOfTheLayoutAndOneEntry) {
  const double before = total();
  enter("digging", kPrice, "20");  // a cubic yard
  EXPECT_NEAR(document.plan().wishes.prices.digging, 20 / 0.764554857984, 1e-9);
  EXPECT_EQ(document.undo_name(), "Price");
  current();
  EXPECT_GT(total(), before);
  EXPECT_EQ(cell("digging", kPrice), "20.00/cu yd");
  document.undo();
  current();
  EXPECT_NEAR(total(), before, 1e-9);
}

TEST_F(PricePanelTest, WhatIsSoldTogetherAndTheDateAreTyped) {
  const std::string pipe = "pipe 3/4 in DR 11";
  EXPECT_EQ(cell(pipe, kSoldBy), "cut/ 300/ 500/ 600/ 800/ 1000 ft");
  const auto row = [&] { return row_of(document.plan().pricing.book, document.plan().wishes, pipe); };
  enter(pipe, kSoldBy, "900/450");
  ASSERT_EQ(row().packs.size(), 2u);
  EXPECT_NEAR(row().packs[1], 900 * 0.3048, 1e-9);
  enter(pipe, kSoldBy, "450/ cut/ 900 ft");
  ASSERT_EQ(row().packs.size(), 3u);
  EXPECT_EQ(row().packs[0], 0);
  EXPECT_NEAR(row().packs[1], 450 * 0.3048, 1e-9);
  EXPECT_EQ(cell(pipe, kSoldBy), "cut/ 450/ 900 ft");
  enter("tie", kDate, "yesterday");
  EXPECT_FALSE(panel->table()->wrong().isEmpty());
  enter("tie", kDate, "2026-03-01");
  EXPECT_TRUE(panel->table()->wrong().isEmpty());
  EXPECT_EQ(row_of(document.plan().pricing.book, document.plan().wishes, "tie").date, "2026-03-01");
  enter("tie", kDate, "2026-9-1");
  EXPECT_EQ(row_of(document.plan().pricing.book, document.plan().wishes, "tie").date, "2026-09-01");
  enter("tie", kDate, "2026-9-31");
  EXPECT_FALSE(panel->table()->wrong().isEmpty());
}

TEST_F(PricePanelTest, APriceForEachRollIsTypedUnderItsItem) {
  const std::string pipe = "pipe 3/4 in DR 11";
  const auto row = [&] { return row_of(document.plan().pricing.book, document.plan().wishes, pipe); };
  PriceTable* table = panel->table();
  const int item = row_of_key(pipe);
  EXPECT_EQ(table->roll_of(item), -1);
  table->table()->setCurrentCell(item, 0);
  table->show_rolls();
  // Cut, 300, 500, 600, 800 and 1000 ft: each a line under it, at the item's price or a quarter dearer.
  ASSERT_EQ(table->roll_of(item + 6), 5);
  const double cut = print_to_number(table->table()->item(item + 1, kPrice)->text()),
               long_roll = print_to_number(table->table()->item(item + 6, kPrice)->text());
  EXPECT_NEAR(cut / long_roll, 1.25, 0.02);
  table->table()->item(item + 6, kPrice)->setText("0.25/ft");
  EXPECT_TRUE(table->wrong().isEmpty()) << table->wrong().toStdString();
  ASSERT_EQ(row().pack_prices.size(), 6u);
  EXPECT_NEAR(row().pack_prices[5], 0.25 / 0.3048, 1e-9);
  EXPECT_NEAR(row().pack_prices[4], document.plan().wishes.prices.coil_pipe, 1e-9);
  EXPECT_EQ(document.undo_name(), "Price");
  const double before = total();
  current();
  EXPECT_LT(total(), before);  // four rolls of 1000 ft are cheaper now
  EXPECT_EQ(table->table()->item(item + 6, kPrice)->text(), "0.25/ft");
  // What is no price changes nothing; an emptied one is as the item's own again.
  const Plan kept = document.plan();
  table->table()->item(item + 6, kPrice)->setText("cheap");
  EXPECT_FALSE(table->wrong().isEmpty());
  EXPECT_EQ(document.plan(), kept);
  table->refresh();
  table->table()->item(item + 6, kPrice)->setText("");
  EXPECT_TRUE(row().pack_prices.empty());
  EXPECT_FALSE(table->table()->item(item + 6, 0)->flags() & Qt::ItemIsEditable);
  EXPECT_TRUE(table->table()->item(item, 0)->flags() & Qt::ItemIsEditable);
  table->table()->setCurrentCell(item, 0);
  table->show_rolls();
  EXPECT_NE(table->rows()[static_cast<std::size_t>(item) + 1].key, pipe);
  table->table()->setCurrentCell(row_of_key("lawn"), 0);
  table->show_rolls();
  EXPECT_FALSE(table->wrong().isEmpty());  // sold in any amount
}

TEST_F(PricePanelTest, WhatCannotBeAPriceIsSaidAndNothingChanges) {
  const Plan before = document.plan();
  for (const char* typed : {"cheap", "-4", "1e300"}) {
    enter("tie", kPrice, typed);
    EXPECT_FALSE(panel->table()->wrong().isEmpty()) << typed;
  }
  enter("lawn", kPrice, "");
  EXPECT_FALSE(panel->table()->wrong().isEmpty());
  EXPECT_EQ(document.plan(), before);
  enter("tie", kPrice, "");  // not known any more
  current();
  EXPECT_EQ(document.outcome()->bill->without_price(), 1);
  EXPECT_TRUE(says("no price"));
}

TEST_F(PricePanelTest, ABookGoesOutAndComesBack) {
  enter("tie", kPrice, "0.25");
  const Plan changed = document.plan();
  panel->write_book(folder.filePath("prices.csv"));
  EXPECT_EQ(told, "Written: " + folder.filePath("prices.csv"));
  document.undo();
  panel->read_book(folder.filePath("prices.csv"));
  EXPECT_TRUE(told.isEmpty()) << told.toStdString();
  EXPECT_EQ(document.plan().pricing.book.rows, changed.pricing.book.rows);
  EXPECT_EQ(document.plan().pricing.book.name, "prices");
  panel->read_book(file("bad.csv", "no,prices\n1,2\n"));
  EXPECT_TRUE(told.contains("bad.csv was not taken"));
  panel->read_book(file("some.csv", "key,price\ntie,0.3\ngrout,dear\n"));
  EXPECT_TRUE(told.contains("line 3"));
}

TEST_F(PricePanelTest, AnItemOfOnesOwnComesAndGoes) {
  panel->table()->add_item();
  EXPECT_EQ(document.plan().pricing.book.rows.size(), 1u);
  panel->table()->show_only(PriceTable::Show::changed);
  ASSERT_EQ(panel->table()->rows().size(), 1u);
  panel->table()->table()->setCurrentCell(0, 0);
  panel->table()->reset_current();
  EXPECT_TRUE(document.plan().pricing.book.rows.empty());
}

TEST_F(PricePanelTest, AnotherSystemIsAddedEditedAndRemoved) {
  EXPECT_TRUE(called<QLineEdit>(*panel, "Heating efficiency")->isHidden() ||
              !called<QLineEdit>(*panel, "Heating efficiency")->isVisibleTo(panel.get()));
  with_a_heat_pump_price();
  panel->add_system(1);
  current();
  ASSERT_EQ(document.plan().pricing.running.others.size(), 1u);
  EXPECT_EQ(document.plan().pricing.running.others[0].fuel, "propane");
  type(called<QLineEdit>(*panel, "Price of one unit"), "3.10");
  EXPECT_NEAR(document.plan().pricing.running.others[0].price, 3.10, 1e-12);
  type(called<QLineEdit>(*panel, "Heating efficiency"), "0");
  EXPECT_GT(document.plan().pricing.running.others[0].efficiency, 0);
  current();
  EXPECT_EQ(panel->chart()->chart().lines.size(), 2u);
  EXPECT_TRUE(says("Propane furnace"));
}

TEST_F(PricePanelTest, TheChartBeginsWithTheFirstCostAndEndsWithAllThatIsPaid) {
  with_a_heat_pump_price();
  panel->add_system(0);
  current();
  const Comparison& c = *document.outcome()->comparison;
  const Chart chart = paid_chart(document.plan(), *document.outcome());
  ASSERT_EQ(chart.lines.size(), 2u);
  ASSERT_EQ(chart.lines[0].points.size(), 4u);
  EXPECT_EQ(chart.lines[0].points[0].y(), c.loop.first);
  EXPECT_EQ(chart.lines[1].points[3].y(), c.others[0].paid[3]);
  EXPECT_GE(chart.y.high, c.loop.paid.back());
}

// One name, one number: what the family is told as the price in all stands under that name alone.
TEST_F(PricePanelTest, TheLoopAndTheWholePriceHaveNamesOfTheirOwn) {
  const Headline headline(document);
  EXPECT_TRUE(headline.words().contains("price in all")) << headline.words().toStdString();
  EXPECT_FALSE(says("In all, heat pump in"));
  with_a_heat_pump_price();
  current();
  EXPECT_TRUE(headline.words().contains("loop alone")) << headline.words().toStdString();
  EXPECT_FALSE(headline.words().contains("in all"));
  EXPECT_FALSE(says("Price in all"));
  EXPECT_TRUE(says("In all, heat pump in"));
  const double family = family_facts(document.plan(), *document.outcome()).price;
  EXPECT_NEAR(document.outcome()->figures.at("run.loop.first").value, family, 1);
  EXPECT_TRUE(says(
      QString::fromStdString(print_quantity(Quantity::money, family, UnitSystem::us, Fineness::coarse))));
}

TEST_F(PricePanelTest, ADotOfTheChartSaysAgainstWhatAndOfWhichKindItIs) {
  Plan plan = document.plan();
  plan.pricing.running.years = 30;
  plan.pricing.running.unit_cost = 9000;
  OtherSystem dear = usual_systems()[0];
  dear.name = "Furnace of somebody";
  dear.first_cost = 1000;
  dear.maintenance = 6000;
  plan.pricing.running.others = {dear};
  document.commit(plan, "Compared");
  current();
  const Chart chart = paid_chart(document.plan(), *document.outcome());
  ASSERT_EQ(chart.marks.size(), 1u);
  EXPECT_TRUE(chart.marks[0].text.startsWith("Furnace of some")) << chart.marks[0].text.toStdString();
  EXPECT_TRUE(says("against Furnace of somebody after " + chart.marks[0].text.section(": ", 1)));
}

// At the kitchen table as in the proposal: every way compared there, and when the loop pays.
TEST_F(PricePanelTest, TheKitchenTellsEveryWayAndItsPayback) {
  with_a_heat_pump_price();
  Plan plan = document.plan();
  plan.pricing.running.others.clear();
  for (int i = 0; i < 3; ++i) {
    OtherSystem other = usual_systems()[0];
    other.name = "Way " + std::to_string(i + 1);
    other.maintenance = 2000.0 * i;
    plan.pricing.running.others.push_back(other);
  }
  document.commit(plan, "Compared");
  current();
  const FamilyFacts facts = family_facts(document.plan(), *document.outcome());
  ASSERT_EQ(facts.others.size(), 3u);
  QStringList amounts;
  for (const KitchenScene& scene : kitchen_scenes(document.plan(), *document.outcome()))
    for (const auto& [number, words] : scene.amounts) amounts << number + " " + words;
  for (const OtherWay& other : facts.others) {
    const QStringList of = amounts.filter(other.name);
    ASSERT_EQ(of.size(), 1) << other.name.toStdString();
    EXPECT_TRUE(of[0].contains(other.payback ? QString("%1 to").arg(std::floor(other.payback->low + 1e-9))
                                             : QString("not at these prices")))
        << of[0].toStdString();
  }
}

TEST_F(PricePanelTest, LinesWithoutAPriceAreNamed) {
  const auto& lines = document.outcome()->bill->lines;
  const auto line =
      std::ranges::find_if(lines, [](const BillLine& l) { return l.row.starts_with("union "); });
  ASSERT_NE(line, lines.end());
  const QString key = QString::fromStdString(line->row), item = QString::fromStdString(line->item);
  read_back_without(key.toStdString());
  current();
  EXPECT_TRUE(told.contains(QString("The price of “%1” in line").arg(key))) << told.toStdString();
  EXPECT_TRUE(says("counts for nothing: " + item + "."));
}
