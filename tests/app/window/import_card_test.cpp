// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/import_card.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include "app/support/fields.h"
#include "app/support/wait.h"
#include "canvas/canvas.h"
#include "plane/region.h"
#include "support/drawing_files.h"
#include "window/export_flow.h"
#include "window/main_window.h"
#include "window/notice_bar.h"
#include "window/typed_field.h"

using namespace underlawn;

namespace {

struct ImportCardTest : testing::Test {
  QTemporaryDir folder;
  MainWindow window{folder.filePath("kept")};
  ImportCard* card = window.import_card();

  void SetUp() override {
    DrawingReader::set_program(UNDERLAWN_PROGRAM);
    window.resize(1280, 800);
    window.show();
    QApplication::setActiveWindow(&window);
  }
  void TearDown() override { window.document().start_new(); }
  QString put(const QString& name, const std::string& bytes) {
    QFile file(folder.filePath(name));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes.data(), static_cast<qint64>(bytes.size()));
    return file.fileName();
  }
  void read(const QString& path) {
    card->read(path);
    ASSERT_TRUE(wait_until([&] { return !card->reading(); }));
    QCoreApplication::processEvents();
  }
  std::string lot(int units = 2) {
    auto parts = sample::surveyed_lot();
    parts.header.back().second = std::to_string(units);
    return sample::dxf_text(sample::in_order(parts));
  }
  double lot_width() {
    const Box box = bounds(lot_ring(window.document().plan().site));
    return box.high.x - box.low.x;
  }
};

}  // namespace

TEST_F(ImportCardTest, ShowsWhatWouldComeInAndBringsItInAsOneEntry) {
  read(put("lot.dxf", lot()));
  ASSERT_TRUE(card->isVisible());
  EXPECT_TRUE(window.document().previewing());
  EXPECT_TRUE(window.document().committed().site.lot.empty());
  EXPECT_NEAR(lot_width(), 60.96, 1e-3);
  QTest::mouseClick(card->bring_button(), Qt::LeftButton);
  EXPECT_FALSE(card->isVisible());
  EXPECT_FALSE(window.document().previewing());
  EXPECT_FALSE(window.document().committed().site.lot.empty());
  EXPECT_EQ(window.document().undo_name(), "Bring in lot.dxf");
  window.document().undo();
  EXPECT_TRUE(window.document().committed().site.lot.empty());
  EXPECT_FALSE(window.document().can_undo());
}

TEST_F(ImportCardTest, EscLeavesNoTrace) {
  const Plan before = window.document().committed();
  read(put("lot.dxf", lot()));
  QTest::keyClick(card, Qt::Key_Escape);
  EXPECT_FALSE(card->isVisible());
  EXPECT_EQ(window.document().plan(), before);
  EXPECT_FALSE(window.document().can_undo());
}

TEST_F(ImportCardTest, WithoutAUnitNothingComesInUntilItIsChosen) {
  read(put("lot.dxf", lot(0)));
  EXPECT_FALSE(card->bring_button()->isEnabled());
  card->unit_box()->setCurrentIndex(card->unit_box()->findText("metres"));
  emit card->unit_box()->activated(card->unit_box()->currentIndex());
  EXPECT_TRUE(card->bring_button()->isEnabled());
  EXPECT_NEAR(lot_width(), 200, 1e-3);
}

TEST_F(ImportCardTest, TwoClicksAndADistanceCorrectAWrongUnit) {
  read(put("lot.dxf", lot(6)));  // says metres, was drawn in feet
  EXPECT_NEAR(lot_width(), 200, 1e-3);
  const Ring ring = lot_ring(window.document().plan().site);
  const Box box = bounds(ring);
  card->ask_points(2, "", [&](const std::vector<Point>& p) { card->scale_by(p[0], p[1]); });
  Canvas* canvas = window.canvas();
  // A few pixels off each corner: the drawing's own corners are caught.
  QTest::mouseClick(canvas, Qt::LeftButton, Qt::NoModifier,
                    (canvas->view().to_device(box.low) + QPointF(3, 2)).toPoint());
  QTest::mouseClick(canvas, Qt::LeftButton, Qt::NoModifier,
                    (canvas->view().to_device({box.high.x, box.low.y}) + QPointF(-3, 2)).toPoint());
  ASSERT_TRUE(card->distance_field()->isVisible());
  type(card->distance_field()->edit(), "200 ft");
  EXPECT_NEAR(lot_width(), 60.96, 1e-3);
}

TEST_F(ImportCardTest, AClickChoosesWhichParcelIsTheLot) {
  read(put("site.geojson", sample::parcels_geojson()));
  ASSERT_EQ(card->brought().lots.size(), 2u);
  const Ring first = lot_ring(window.document().plan().site);
  const Point in_other = centroid(card->brought().lots[1]);
  QTest::mouseClick(window.canvas(), Qt::LeftButton, Qt::NoModifier,
                    window.canvas()->view().to_device(in_other).toPoint());
  const Ring now = lot_ring(window.document().plan().site);
  EXPECT_NE(now, first);
  EXPECT_TRUE(contains(now, in_other));
}

TEST_F(ImportCardTest, AKeyChoosesWhichParcelIsTheLot) {
  read(put("site.geojson", sample::parcels_geojson()));
  const Ring first = lot_ring(window.document().plan().site);
  ASSERT_TRUE(card->next_outline_button()->isVisible());
  card->next_outline_button()->setFocus();
  QTest::keyClick(card->next_outline_button(), Qt::Key_Space);
  EXPECT_NE(lot_ring(window.document().plan().site), first);
  QTest::keyClick(card->next_outline_button(), Qt::Key_Space);
  EXPECT_EQ(lot_ring(window.document().plan().site), first) << "round and round";
}

TEST_F(ImportCardTest, TwoTypedPointsAndADistanceCorrectAWrongUnit) {
  read(put("lot.dxf", lot(6)));  // says metres, was drawn in feet
  const Box box = bounds(lot_ring(window.document().plan().site));
  card->ask_points(2, "Which?", [&](const std::vector<Point>& p) { card->scale_by(p[0], p[1]); });
  EXPECT_TRUE(window.document().previewing()) << "it stays in sight while places are asked for";
  const auto metres = [](double v) { return QString::number(v, 'f', 9) + "m"; };
  for (const Point p : {box.low, Point{box.high.x, box.low.y}}) {
    QTest::keyClicks(window.canvas(), "#" + metres(p.x) + "," + metres(p.y));
    QTest::keyClick(window.canvas(), Qt::Key_Return);
  }
  ASSERT_TRUE(card->distance_field()->isVisible());
  EXPECT_TRUE(window.document().previewing());
  type(card->distance_field()->edit(), "200 ft");
  EXPECT_NEAR(lot_width(), 60.96, 1e-6);
}

TEST_F(ImportCardTest, EscGivesUpWhatIsAskedAndOnlyThenTheCard) {
  read(put("lot.dxf", lot()));
  card->ask_points(2, "Which?", [](const std::vector<Point>&) { FAIL(); });
  ASSERT_TRUE(card->asking());
  QTest::keyClick(window.canvas(), Qt::Key_Escape);
  EXPECT_FALSE(card->asking());
  EXPECT_TRUE(card->isVisible());
  EXPECT_TRUE(window.document().previewing());
  QTest::keyClick(window.canvas(), Qt::Key_Escape);
  EXPECT_FALSE(card->isVisible());
  EXPECT_FALSE(window.document().previewing());
}

// Heights without a place under them are brought in by nobody who was not told.
TEST_F(ImportCardTest, HeightsThatLieAstrayAreAnAlarm) {
  const std::string grid =
      "ncols 3\nnrows 2\nxllcorner -89.4\nyllcorner 43.07\ncellsize 0.0001\n1 2 3\n4 5 6\n";
  const std::string degrees =
      "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
      "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
  // Degrees without a word are taken for degrees by the library; metres are not.
  const std::string metres =
      "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 4500000\ncellsize 1\n1 2 3\n4 5 6\n";
  const QString bare = put("bare.asc", metres), placed = put("placed.asc", grid);
  put("placed.prj", degrees);
  read(bare);
  EXPECT_TRUE(card->alarms().isEmpty()) << "no lot, nothing to lie beside";
  Plan plan = window.document().committed();
  plan.site.lot = {{{0, 0}}, {{50, 0}}, {{50, 40}}};
  window.document().commit(plan, "Lot");
  read(bare);
  EXPECT_TRUE(card->alarms().contains("does not say where on the Earth")) << card->alarms().toStdString();
  read(placed);
  EXPECT_TRUE(card->alarms().contains("The plan does not know where its lot lies"));
  card->bring_button()->click();
  EXPECT_FALSE(window.document().committed().map_place) << "a guess is nothing to be learned";
  plan.map_place = MapPlace{43.07, -89.4, {0, 0}};
  window.document().commit(plan, "Place");
  read(placed);
  EXPECT_TRUE(card->alarms().isEmpty());
}

TEST_F(ImportCardTest, WhatALayerBecomesCanBeChosen) {
  read(put("lot.dxf", lot()));
  for (std::size_t i = 0; i < card->groups().size(); ++i)
    if (card->drawing().layers[static_cast<std::size_t>(card->groups()[i].layer)].name == "V-NGAS-UNDR") {
      QComboBox* choice = card->choice_of(static_cast<int>(i));
      choice->setCurrentIndex(static_cast<int>(Becomes::water));
      emit choice->activated(choice->currentIndex());
    }
  EXPECT_EQ(card->brought().counts.count(Becomes::gas), 0u);
  EXPECT_EQ(card->brought().counts.at(Becomes::water), 1);
}

TEST_F(ImportCardTest, ARefusalIsSaidAndHarmsNothing) {
  const Plan before = window.document().committed();
  read(put("broken.gpkg", "SQLite format 3" + std::string(1, '\0') + "and then nothing"));
  EXPECT_FALSE(card->isVisible());
  EXPECT_TRUE(window.bar()->words().contains("broken.gpkg")) << window.bar()->words().toStdString();
  EXPECT_EQ(window.document().plan(), before);
  read(folder.filePath("not there.dxf"));
  EXPECT_TRUE(window.bar()->words().contains("not there.dxf"));
}

TEST_F(ImportCardTest, WhatComesInGoesOutAgain) {
  read(put("lot.dxf", lot()));
  card->bring_button()->click();
  bool current = false;
  window.document().when_current([&] { current = true; });
  ASSERT_TRUE(wait_until([&] { return current; }));
  ASSERT_TRUE(export_to(window.document(), folder.filePath("out.dxf")).has_value());
  EXPECT_FALSE(export_to(window.document(), folder.filePath("out.txt")).has_value());
  window.document().start_new();
  read(folder.filePath("out.dxf"));
  EXPECT_NEAR(lot_width(), 60.96, 1e-3);
}
