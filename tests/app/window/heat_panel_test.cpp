// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/heat_panel.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QWheelEvent>
#include <cmath>

#include "app/support/fields.h"
#include "house/heat_pump_file.h"
#include "support/sample_plans.h"
#include "window/main_window.h"
#include "window/notice_bar.h"
#include "window/side_column.h"

using namespace underlawn;

namespace {

struct HeatPanelTest : testing::Test {
  QTemporaryDir folder;
  Document document;
  std::unique_ptr<HeatPanel> panel;
  QString told;

  void SetUp() override {
    document.commit(sample::half_acre(), "Drawn");
    panel = std::make_unique<HeatPanel>(document);
    QObject::connect(panel.get(), &HeatPanel::told, [this](const QString& words) { told = words; });
  }
  QString file(const QString& name, const std::string& text) {
    const QString path = folder.filePath(name);
    QFile out(path);
    EXPECT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(text.data(), static_cast<qint64>(text.size()));
    return path;
  }
  void choose(const QString& name, int index) {
    auto* box = called<QComboBox>(*panel, name);
    ASSERT_NE(box, nullptr) << name.toStdString();
    emit box->activated(index);
  }
  QTableWidget* table(const QString& name) { return called<QTableWidget>(*panel, name); }
  bool says(const QString& part) {
    for (const QLabel* label : panel->findChildren<QLabel*>())
      if (!label->isHidden() && label->text().contains(part)) return true;
    return false;
  }
  const ThermalWishes& heat() const { return document.plan().thermal; }
};

// The line source at late times, T = a + q/(4 pi k) ln t (ASTM D5334), with k 1.5 and q 5.
std::string ideal_log() {
  std::string text = "power_w_m = 5\ntime_s,temperature_c\n";
  for (int t = 10; t <= 600; t += 10)
    text += std::to_string(t) + "," + std::to_string(15 + 5 / (4 * M_PI * 1.5) * std::log(t)) + "\n";
  return text;
}

std::string flat_year(int hours) {
  std::string text = "heating_w,cooling_w\n";
  for (int h = 0; h < hours; ++h) text += "1000,0\n";
  return text;
}

std::string epw(int days_of_january) {
  std::string text = "LOCATION,Testford,-,-,-,0,0,0,0,0\nDATA PERIODS,1,1,Data,Sunday,1/1,12/31\n";
  constexpr int kDays[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  for (int m = 0; m < 12; ++m)
    for (int d = 1; d <= (m == 0 ? days_of_january : kDays[m]); ++d)
      for (int h = 1; h <= 24; ++h)
        text += "2001," + std::to_string(m + 1) + "," + std::to_string(d) + "," + std::to_string(h) +
                ",60,?," + std::to_string(m) + ".5,0,50,100000\n";
  return text;
}

}  // namespace

TEST_F(HeatPanelTest, TypedConductivityIsOneEntryAndUndoShowsTheOldOneAgain) {
  choose("Known by", 0);
  auto* k = called<QLineEdit>(*panel, "Conductivity");
  const QString before = k->text();
  type(k, "1.9 W/(m K)");
  EXPECT_NEAR(heat().soil.typed.conductivity, 1.9, 1e-12);
  EXPECT_EQ(document.undo_name(), "Soil conductivity");
  document.undo();
  EXPECT_EQ(k->text(), before);
  document.undo();
  EXPECT_EQ(heat().soil.source, SoilSource::matter)
      << "the choice was an entry of its own, and the only other";
  EXPECT_EQ(document.undo_name(), "Drawn");
}

TEST_F(HeatPanelTest, ConductivityNoSoilHasIsSaidAndNotCommitted) {
  choose("Known by", 0);
  const Plan before = document.plan();
  auto* k = called<QLineEdit>(*panel, "Conductivity");
  type(k, "50 W/(m K)");
  EXPECT_EQ(document.plan(), before);
  EXPECT_TRUE(k->accessibleDescription().contains("conductivity"));
}

TEST_F(HeatPanelTest, KindOfSoilSetsItsNumbersAndOnesOwnAreNoPreset) {
  choose("Texture and moisture", 1);
  EXPECT_EQ(heat().soil.matter, soil_presets()[1].matter);
  type(called<QLineEdit>(*panel, "Dry density"), "1500 kg/m3");
  EXPECT_NEAR(heat().soil.matter.porosity, 1 - 1500.0 / 2700, 1e-9);
  EXPECT_EQ(called<QComboBox>(*panel, "Texture and moisture")->currentIndex(), -1);
}

TEST_F(HeatPanelTest, FieldsOfTheOtherSourceAreOutOfSight) {
  EXPECT_TRUE(called<QLineEdit>(*panel, "Conductivity")->parentWidget()->isHidden());
  EXPECT_FALSE(called<QLineEdit>(*panel, "Porosity")->parentWidget()->isHidden());
  choose("Known by", 0);
  EXPECT_FALSE(called<QLineEdit>(*panel, "Conductivity")->parentWidget()->isHidden());
  EXPECT_TRUE(called<QLineEdit>(*panel, "Porosity")->parentWidget()->isHidden());
}

TEST_F(HeatPanelTest, ThreeModelsStandSideBySide) {
  for (const char* name : {"Johansen: ", "Lu et al.: ", "Côté and Konrad: "}) EXPECT_TRUE(says(name)) << name;
}

TEST_F(HeatPanelTest, ProbeLogGivesItsConductivityAndSaysHowSure) {
  panel->read_probe(file("north.csv", ideal_log()));
  EXPECT_EQ(heat().soil.source, SoilSource::typed);
  EXPECT_NEAR(heat().soil.typed.conductivity, 1.5, 1e-3);
  EXPECT_EQ(heat().soil.typed.heat_capacity, heat_capacity(heat().soil.matter));
  EXPECT_EQ(document.undo_name(), "Needle-probe log");
  EXPECT_TRUE(says("From north.csv"));
  EXPECT_TRUE(says("95 %"));
  document.undo();
  EXPECT_FALSE(says("From north.csv"));
  EXPECT_EQ(document.undo_name(), "Drawn");
}

TEST_F(HeatPanelTest, ProbeLogWithoutPowerIsRefused) {
  const Plan before = document.plan();
  panel->read_probe(file("bare.csv", "time_s,temperature_c\n1,15\n2,16\n"));
  EXPECT_EQ(document.plan(), before);
  EXPECT_TRUE(told.contains("bare.csv")) << told.toStdString();
}

TEST_F(HeatPanelTest, WeatherFileIsTakenAsOneEntryUnderItsName) {
  panel->read_weather(file("t.epw", epw(31)));
  EXPECT_EQ(told, "");
  EXPECT_EQ(heat().weather_source, WeatherSource::file);
  ASSERT_EQ(heat().weather_file.outdoor.size(), 8760U);
  EXPECT_EQ(heat().weather_file.outdoor.back(), 11.5);
  EXPECT_TRUE(says("Testford"));
  document.undo();
  EXPECT_EQ(document.undo_name(), "Drawn");
}

TEST_F(HeatPanelTest, WeatherFileWithAMissingDayIsRefusedWithItsMessage) {
  const Plan before = document.plan();
  const std::string text = epw(30);
  panel->read_weather(file("gap.epw", text));
  EXPECT_EQ(document.plan(), before);
  EXPECT_TRUE(told.startsWith("gap.epw was not taken. "));
  EXPECT_TRUE(told.contains("line " + QString::number(2 + 30 * 24 + 1))) << told.toStdString();
}

TEST_F(HeatPanelTest, FileThatIsNotThereIsTold) {
  panel->read_weather(folder.filePath("none.epw"));
  EXPECT_TRUE(told.contains("none.epw")) << told.toStdString();
}

TEST_F(HeatPanelTest, MonthTypedInTheTableIsNoPresetsAnyMore) {
  choose("Climate", 1);
  EXPECT_EQ(heat().normals, normals_presets()[1]);
  table("Monthly normals")->item(0, 0)->setText("-7 C");
  EXPECT_NEAR(heat().normals.mean[0], -7, 1e-9);
  EXPECT_EQ(called<QComboBox>(*panel, "Climate")->currentIndex(), -1);
  EXPECT_NE(heat().normals.name, normals_presets()[1].name);
  document.undo();
  EXPECT_EQ(called<QComboBox>(*panel, "Climate")->currentIndex(), 1);
}

TEST_F(HeatPanelTest, CellThatCannotBeIsSaidUnderTheTable) {
  const Plan before = document.plan();
  table("Monthly normals")->item(0, 0)->setText("mild");
  EXPECT_EQ(document.plan(), before);
  EXPECT_TRUE(says("mild"));
  table("Monthly normals")->item(0, 0)->setText("900 C");
  EXPECT_EQ(document.plan(), before);
  EXPECT_TRUE(says("Mean is"));
}

TEST_F(HeatPanelTest, BlockShowsTheLossThatItsSurfacesGive) {
  choose("Loads from", 1);
  ASSERT_EQ(document.undo_name(), "Source of the loads");
  const auto rows = heat().block.surfaces.size();
  ASSERT_GT(rows, 0U);
  called<QPushButton>(*panel, "Add a row: Surfaces of the house")->click();
  EXPECT_EQ(heat().block.surfaces.size(), rows + 1);
  table("Surfaces of the house")->setCurrentCell(0, 0);
  for (std::size_t i = 0; i < rows; ++i)
    called<QPushButton>(*panel, "Remove the row: Surfaces of the house")->click();
  ASSERT_EQ(heat().block.surfaces.size(), 1U);
  table("Surfaces of the house")->item(0, 0)->setText("All of it");
  table("Surfaces of the house")->item(0, 1)->setText("200 m2");
  table("Surfaces of the house")->item(0, 2)->setText("0.5 W/(m2 K)");
  EXPECT_EQ(heat().block.surfaces[0], (Surface{"All of it", 200, 0.5}));
  type(called<QLineEdit>(*panel, "Air changes an hour"), "0");
  type(called<QLineEdit>(*panel, "Indoors, heating"), "20 C");
  type(called<QLineEdit>(*panel, "Cold design day"), "-10 C");
  // U A dT by hand: 200 x 0.5 x 30.
  EXPECT_TRUE(says("Design heat loss " +
                   QString::fromStdString(print_quantity(Quantity::power, 3000, document.plan().units))));
}

TEST_F(HeatPanelTest, HourlyLoadsAreTakenOrRefusedWhole) {
  panel->read_loads(file("year.csv", flat_year(8760)));
  EXPECT_EQ(heat().load_source, LoadSource::hours);
  EXPECT_EQ(heat().hours.name, "year");
  // 1 kW for 8760 hours.
  EXPECT_TRUE(says("Heating: " + QString::fromStdString(
                                     print_quantity(Quantity::energy, 8760 * 3.6e6, document.plan().units))));
  const Plan before = document.plan();
  panel->read_loads(file("short.csv", flat_year(100)));
  EXPECT_EQ(document.plan(), before);
  EXPECT_TRUE(told.startsWith("short.csv was not taken. "));
}

TEST_F(HeatPanelTest, PerformanceIsReadShownAndChangedByTheCell) {
  choose("Start from", 3);
  EXPECT_EQ(heat().unit, heat_pump_presets()[3]);
  const HeatPump small = scaled(generic_heat_pump(), 0.5);
  panel->read_performance(file("small.csv", heat_pump_to_csv(small)));
  EXPECT_EQ(heat().unit, small);
  auto* heating = table("Heating, by entering water");
  ASSERT_EQ(heating->rowCount(), static_cast<int>(small.heating.size()));
  heating->item(0, 2)->setText("1.5");
  EXPECT_NEAR(heat().unit.heating[0].power, 1500, 1e-9) << "electricity is typed in kW in every system";
  document.undo();
  EXPECT_EQ(heat().unit, small);
}

// Every row of a table is typed one after the other; in between it may not hold, and says so.
TEST_F(HeatPanelTest, TableThatDoesNotHoldYetIsKeptAndSaid) {
  auto* heating = table("Heating, by entering water");
  heating->item(0, 1)->setText("60 kW");
  EXPECT_NEAR(heat().unit.heating[0].capacity, 60'000, 1e-6);
  const auto refused = check_heat_pump(heat().unit);
  ASSERT_FALSE(refused.has_value());
  EXPECT_TRUE(says(QString::fromStdString(refused.error().message())));
}

TEST_F(HeatPanelTest, ResistanceIsFromTheFlowUntilOneIsGiven) {
  auto* given = called<QLineEdit>(*panel, "Resistance of pipe and film");
  EXPECT_TRUE(given->parentWidget()->isHidden());
  Plan plan = document.plan();
  plan.thermal.fluid_resistance = 0.2;
  document.commit(plan, "Given");
  EXPECT_FALSE(given->parentWidget()->isHidden());
  type(given, "0.08 m K/W");
  ASSERT_TRUE(heat().fluid_resistance.has_value());
  EXPECT_NEAR(*heat().fluid_resistance, 0.08, 1e-12);
}

TEST_F(HeatPanelTest, WheelAndPageKeysOverAChoiceChooseNothing) {
  const Plan before = document.plan();
  auto* box = called<QComboBox>(*panel, "Climate");
  QWheelEvent wheel({5, 5}, {5, 5}, {}, {0, -120}, Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(box, &wheel);
  for (Qt::Key key : {Qt::Key_PageDown, Qt::Key_PageUp}) QTest::keyClick(box, key);
  EXPECT_EQ(document.plan(), before);
}

TEST(HeatPanelInWindow, RefusedFileIsSaidInTheBarAndGoesWithAGoodOne) {
  QTemporaryDir folder;
  MainWindow window(folder.filePath("kept"));
  window.show();
  window.actions().action("panel.heat")->trigger();
  auto* panel = window.side()->findChild<HeatPanel*>();
  ASSERT_NE(panel, nullptr);
  EXPECT_TRUE(panel->isVisible());
  QFile bad(folder.filePath("bad.epw"));
  ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
  bad.write("not weather\n");
  bad.close();
  panel->read_weather(bad.fileName());
  EXPECT_TRUE(window.bar()->isVisible());
  EXPECT_TRUE(window.bar()->words().startsWith("bad.epw was not taken. "));
  QFile good(folder.filePath("good.epw"));
  ASSERT_TRUE(good.open(QIODevice::WriteOnly));
  good.write(QByteArray::fromStdString(epw(31)));
  good.close();
  panel->read_weather(good.fileName());
  EXPECT_FALSE(window.bar()->telling("panel file"));
  window.document().start_new();
}
