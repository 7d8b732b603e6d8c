// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/picture_card.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QFile>
#include <QPainter>
#include <QPdfWriter>
#include <QPushButton>
#include <QSlider>
#include <QTemporaryDir>
#include <QTest>

#include "app/support/fields.h"
#include "canvas/canvas.h"
#include "canvas/pictures.h"
#include "plan/picture_edits.h"
#include "window/main_window.h"
#include "window/notice_bar.h"
#include "window/picture_file.h"
#include "window/typed_field.h"

using namespace underlawn;

namespace {

struct PictureCardTest : testing::Test {
  QTemporaryDir folder;
  MainWindow window{folder.filePath("kept")};
  PictureCard* card = window.picture_card();

  void SetUp() override {
    window.resize(1280, 800);
    window.show();
    QApplication::setActiveWindow(&window);
    QCoreApplication::processEvents();
  }
  void TearDown() override { window.document().start_new(); }
  // Red, 400 by 200.
  QString png(const QString& name = "plat.png") {
    QImage image(400, 200, QImage::Format_RGB32);
    image.fill(Qt::red);
    EXPECT_TRUE(image.save(folder.filePath(name)));
    return folder.filePath(name);
  }
  QString pdf(int pages) {
    const QString path = folder.filePath("plat.pdf");
    QPdfWriter writer(path);
    writer.setPageSize(QPageSize(QPageSize::A4));
    QPainter painter(&writer);
    for (int i = 0; i < pages; ++i) {
      if (i > 0) writer.newPage();
      painter.fillRect(QRect(0, 0, writer.width(), writer.height()), i == 1 ? Qt::blue : Qt::green);
    }
    return path;
  }
  const Picture& now() { return window.document().plan().pictures.at(0); }
  void click(Point p) {
    QTest::mouseClick(window.canvas(), Qt::LeftButton, Qt::NoModifier,
                      window.canvas()->view().to_device(p).toPoint());
  }
};

}  // namespace

TEST_F(PictureCardTest, APictureIsStoredWithThePlanAndKeepsItsShape) {
  card->add(png());
  ASSERT_EQ(window.document().plan().pictures.size(), 1u);
  EXPECT_FALSE(now().data.empty());
  EXPECT_NEAR(now().width / now().height, 2, 1e-9);
  EXPECT_EQ(window.document().undo_name(), "Add picture");
  window.document().undo();
  EXPECT_TRUE(window.document().plan().pictures.empty());
}

TEST_F(PictureCardTest, TwoClicksAndADistanceScaleIt) {
  card->add(png());  // asks for the scale by itself
  ASSERT_TRUE(card->asking());
  const Picture before = now();
  const Point a = before.at + Point{1, 1}, b = before.at + Point{11, 1};
  click(a);
  click(b);
  ASSERT_TRUE(card->distance_field()->isVisible());
  type(card->distance_field()->edit(), "100 ft");
  EXPECT_NEAR(now().width / before.width, 3.048, 0.05);  // clicks are whole pixels
  EXPECT_NEAR(now().width / now().height, 2, 1e-9);
  EXPECT_EQ(window.document().undo_name(), "Scale picture");
}

TEST_F(PictureCardTest, TwoTypedPlacesAndADistanceScaleIt) {
  card->add(png());
  const Picture before = now();
  Canvas* canvas = window.canvas();
  const auto enter = [&](const QString& text) {
    QTest::keyClicks(canvas, text);
    QTest::keyClick(canvas, Qt::Key_Return);
  };
  ASSERT_TRUE(canvas->hasFocus());
  enter("1,1");
  EXPECT_EQ(card->clicked().size(), 1u);
  EXPECT_TRUE(canvas->status().contains("#x,y"));
  enter("@40,0");  // 40 ft to the right of the first
  ASSERT_TRUE(card->distance_field()->isVisible());
  type(card->distance_field()->edit(), "100 ft");
  EXPECT_NEAR(now().width / before.width, 2.5, 1e-9);
}

TEST_F(PictureCardTest, ArrowKeysLeadToThePlaces) {
  card->add(png());
  Canvas* canvas = window.canvas();
  const Point from = now().at;
  QTest::keyClick(canvas, Qt::Key_Right);
  QTest::keyClick(canvas, Qt::Key_Return);
  QTest::keyClick(canvas, Qt::Key_Right, Qt::ShiftModifier);
  QTest::keyClick(canvas, Qt::Key_Return);
  EXPECT_FALSE(card->asking());
  ASSERT_TRUE(card->distance_field()->isVisible());
  QTest::keyClick(card->distance_field()->edit(), Qt::Key_Escape);
  card->move_button()->setFocus();
  QTest::keyClick(card->move_button(), Qt::Key_Space);
  QTest::keyClicks(canvas, "0,0");
  QTest::keyClick(canvas, Qt::Key_Return);
  QTest::keyClicks(canvas, "@3,4");
  QTest::keyClick(canvas, Qt::Key_Return);
  EXPECT_NEAR(distance(now().at, from), 5 * 0.3048, 1e-9);
}

TEST_F(PictureCardTest, TwoClicksAndABearingTurnIt) {
  card->add(png());
  card->stop_asking();
  const Picture before = now();
  card->turn_button()->click();
  click(before.at + Point{1, 1});
  click(before.at + Point{21, 1});  // a line that goes east on the drawing
  ASSERT_TRUE(card->bearing_field()->isVisible());
  type(card->bearing_field()->edit(), "0 deg");  // and was the north arrow
  EXPECT_NEAR(now().turn, 1.5707963, 0.01);
}

TEST_F(PictureCardTest, IsPaintedWhereItLiesAsStronglyAsAsked) {
  card->add(png());
  card->close_card();
  Picture p = now();
  p.at = {0, 0};
  p.width = 20;
  p.height = 10;
  p.turn = 1.5707963267948966;  // its foot goes up: it covers x from -10 to 0
  p.strength = 1;
  window.document().commit(edit::with_picture(window.document().committed(), 0, p), "Placed");
  window.canvas()->look_at({{-15, -5}, {15, 25}});
  const auto colour = [&](Point at) {
    return window.canvas()->grab().toImage().pixelColor(window.canvas()->view().to_device(at).toPoint());
  };
  EXPECT_EQ(colour({-5, 10}), QColor(Qt::red));
  EXPECT_NE(colour({5, 10}), QColor(Qt::red));
  p.strength = 0.5;
  window.document().commit(edit::with_picture(window.document().committed(), 0, p), "Dimmed");
  EXPECT_NE(colour({-5, 10}), QColor(Qt::red));
  p.hidden = true;
  window.document().commit(edit::with_picture(window.document().committed(), 0, p), "Hidden");
  EXPECT_EQ(colour({-5, 10}), colour({5, 12}));
}

TEST_F(PictureCardTest, LockedIsLeftAlone) {
  card->add(png());
  card->stop_asking();
  card->locked()->click();
  EXPECT_TRUE(now().locked);
  for (QPushButton* button : {card->scale_button(), card->turn_button(), card->move_button()})
    EXPECT_FALSE(button->isEnabled());
  Picture p = now();
  p.at = {99, 99};
  EXPECT_EQ(edit::with_picture(window.document().committed(), 0, p).pictures[0].at, now().at);
}

TEST_F(PictureCardTest, APageOfAPdfCanBeChosen) {
  const QString path = pdf(3);
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray bytes = file.readAll();
  const DecodedPicture second = decode_picture(bytes, 2);
  ASSERT_TRUE(second.shown());
  EXPECT_EQ(second.pages, 3);
  EXPECT_NEAR(static_cast<double>(second.size().height()) / second.size().width(), 297.0 / 210, 0.01);
  EXPECT_EQ(second.levels[0].pixelColor(second.size().width() / 2, second.size().height() / 2),
            QColor(Qt::blue));
  EXPECT_FALSE(decode_picture(bytes, 4).shown());
}

TEST_F(PictureCardTest, BesideThePlanItsPathCountsFromThere) {
  card->add(png());
  card->stop_asking();
  card->beside()->click();  // the plan has no file yet
  EXPECT_FALSE(now().data.empty());
  EXPECT_TRUE(window.bar()->words().contains("Save it first"));
  ASSERT_TRUE(window.document().save_as(folder.filePath("a.underlawn")).has_value());
  card->beside()->click();
  EXPECT_EQ(now().file, "plat.png");
  EXPECT_TRUE(now().data.empty());
  ASSERT_TRUE(window.document().save().has_value());
  ASSERT_TRUE(QFile::remove(folder.filePath("plat.png")));
  ASSERT_TRUE(window.document().open(folder.filePath("a.underlawn")).has_value());
  EXPECT_EQ(now().file, "plat.png");
  EXPECT_TRUE(window.bar()->words().contains("plat.png")) << window.bar()->words().toStdString();
}

TEST_F(PictureCardTest, WhatIsNoPictureIsRefused) {
  const auto put = [&](const QString& name, const QByteArray& bytes) {
    QFile file(folder.filePath(name));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
    return file.fileName();
  };
  QFile good(png());
  ASSERT_TRUE(good.open(QIODevice::ReadOnly));
  const QByteArray bytes = good.readAll();
  QByteArray huge = bytes;
  huge.replace(
      16, 8,
      QByteArray::fromHex("7fffffff7fffffff"));  // its header claims two thousand million pixels a side
  for (const QByteArray& bad :
       {QByteArray(), QByteArray("no picture"), bytes.left(40), huge, QByteArray("%PDF-1.7 and then nothing"),
        QByteArray("%PDF") + QByteArray(10'000, '<')}) {
    card->add(put("bad.png", bad));
    EXPECT_TRUE(window.document().plan().pictures.empty());
    EXPECT_TRUE(window.bar()->words().contains("bad.png"));
  }
}
