// SPDX-License-Identifier: GPL-3.0-or-later
// The verbs about money, as a shell sees them.
#include <gtest/gtest.h>

#include <QProcess>
#include <QTemporaryDir>

#include "base/csv.h"
#include "cost/fuels.h"
#include "files/atomic_file.h"
#include "files/json_text.h"
#include "files/plan_file.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

struct BillCli : testing::Test {
  QTemporaryDir folder;
  std::string err;
  int status = -1;

  void SetUp() override {
    Plan plan = sample::half_acre();
    plan.thermal.years = 2;
    plan.pricing.running.others = {usual_systems()[1]};
    put("a.underlawn", plan_to_text(plan));
  }
  std::string path(const std::string& name) const { return (folder.path() + "/").toStdString() + name; }
  void put(const std::string& name, std::string_view text) {
    ASSERT_TRUE(write_file(path(name), text).has_value());
  }
  std::string run(const QStringList& words) {
    QProcess process;
    process.setWorkingDirectory(folder.path());
    process.start(UNDERLAWN_PROGRAM, words);
    EXPECT_TRUE(process.waitForFinished(120'000));
    err = process.readAllStandardError().toStdString();
    status = process.exitCode();
    return process.readAllStandardOutput().toStdString();
  }
};

}  // namespace

TEST_F(BillCli, TellsEveryLineAndWhenItPays) {
  const std::string out = run({"bill", "a.underlawn"});
  EXPECT_EQ(status, 0) << err;
  for (const char* words :
       {"4 x 1000 ft", "Tracer wire", "Price in all", "Propane furnace", "simple payback"})
    EXPECT_NE(out.find(words), std::string::npos) << words << "\n" << out;
}

TEST_F(BillCli, CsvAddsUpToThePriceOfTheJson) {
  const auto json = json_from_text(run({"bill", "a.underlawn", "--json"}), "the bill");
  ASSERT_TRUE(json);
  const auto csv = csv_from_text(run({"bill", "a.underlawn", "--csv"}), "bad", "the bill");
  ASSERT_TRUE(csv) << csv.error().message();
  double sum = 0, price = 0;
  for (const CsvRow& row : csv->rows) {
    ASSERT_EQ(row.fields.size(), 10u);
    if (row.fields[0] == "group") continue;
    if (row.fields[0] != "sum") sum += std::stod(row.fields[7]);
    if (row.fields[1] == "Price") price = std::stod(row.fields[7]);
  }
  EXPECT_NEAR(sum, price, 0.01 * static_cast<double>(csv->rows.size()));
  EXPECT_NEAR(json->value["bill"]["price_money"].get<double>(), price, 0.006);
  EXPECT_EQ(json->value["running"]["others"].size(), 1u);
}

TEST_F(BillCli, ABookWrittenCanBeReckonedWith) {
  EXPECT_EQ(run({"prices", "a.underlawn", "--out", "book.csv"}), "book.csv\n");
  const std::string plain = run({"bill", "a.underlawn", "--csv"});
  EXPECT_EQ(run({"bill", "a.underlawn", "--csv", "--prices", "book.csv"}), plain);
  put("mine.csv", "key,unit,price\ntie,each,99\ntee,each,oops\n");
  const std::string dear = run({"bill", "a.underlawn", "--csv", "--prices", "mine.csv"});
  EXPECT_NE(dear, plain);
  EXPECT_NE(err.find("line 3"), std::string::npos) << err;
  put("bad.csv", "nothing here");
  EXPECT_EQ(run({"bill", "a.underlawn", "--prices", "bad.csv"}), "");
  EXPECT_EQ(status, 3);
}

TEST_F(BillCli, OfAnEmptyPlanThereIsNone) {
  put("empty.underlawn", plan_to_text(Plan{}));
  EXPECT_EQ(run({"bill", "empty.underlawn"}), "");
  EXPECT_EQ(status, 1);
  EXPECT_NE(err.find("Lot line is not drawn"), std::string::npos) << err;
}

}  // namespace underlawn
