// SPDX-License-Identifier: GPL-3.0-or-later
// Contrast as WCAG 2.1 asks: 4.5:1 for text (1.4.3), 3:1 for what shows a control or its focus (1.4.11).
#include "window/theme.h"

#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QRegularExpression>
#include <QTableWidget>
#include <QVBoxLayout>

#include "window/form.h"

using namespace underlawn;

class ThemeTest : public testing::TestWithParam<bool> {
 protected:
  Theme t = GetParam() ? Theme::night() : Theme::light();
};

TEST(Theme, ContrastOfBlackOnWhiteIsTwentyOne) {
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21, 1e-9);
  EXPECT_NEAR(contrast(Qt::white, Qt::white), 1, 1e-9);
  // WCAG's often quoted grey: #767676 on white is the lightest that passes 4.5:1.
  EXPECT_NEAR(contrast(QColor("#767676"), Qt::white), 4.54, 0.005);
}

TEST_P(ThemeTest, EveryTextCanBeReadOnEveryGround) {
  for (const QColor& ground : {t.paper, t.ground, t.sunken}) {
    EXPECT_GE(contrast(t.text, ground), 7) << ground.name().toStdString();
    EXPECT_GE(contrast(t.faint, ground), 4.5) << ground.name().toStdString();
  }
  for (const QColor& ground : {t.paper, t.ground})
    for (const QColor& ink : {t.error, t.warning, t.hint, t.grass})
      EXPECT_GE(contrast(ink, ground), 4.5)
          << ink.name().toStdString() << " on " << ground.name().toStdString();
  EXPECT_GE(contrast(t.text, t.tint), 7);
  EXPECT_GE(contrast(t.on_grass, t.grass), 4.5);
}

TEST_P(ThemeTest, FieldsAndFocusStandOut) {
  for (const QColor& ground : {t.paper, t.ground}) {
    EXPECT_GE(contrast(t.edge, ground), 3);
    EXPECT_GE(contrast(t.focus, ground), 3);
  }
}

TEST_P(ThemeTest, StyleSheetNamesNoColourThatIsNotThere) {
  EXPECT_FALSE(style_sheet(t).contains('@'));
}

TEST_P(ThemeTest, PicturesItNamesAreThere) {
  const QRegularExpression picture("url\\((:[^)]+)\\)");
  const QString sheet = style_sheet(t);
  int found = 0;
  for (auto at = picture.globalMatch(sheet); at.hasNext(); ++found) {
    const QString path = at.next().captured(1);
    EXPECT_TRUE(QFile::exists(path)) << path.toStdString();
  }
  EXPECT_GE(found, 2);
}

// A frame round what has the keyboard, also where the widget has a frame of its own.
TEST_P(ThemeTest, WhateverHasTheKeyboardShowsIt) {
  QWidget page;
  page.setStyleSheet(style_sheet(t));
  auto* column = new QVBoxLayout(&page);
  std::vector<QWidget*> all = {new QLineEdit, new QPlainTextEdit, new QListWidget,
                               choice_box({"One", "Two"})};
  for (QWidget* boxed :
       std::initializer_list<QWidget*>{new QPlainTextEdit, new QTableWidget(2, 2), new QListWidget}) {
    boxed->setObjectName("boxed");
    all.push_back(boxed);
  }
  for (QWidget* widget : all) column->addWidget(widget);
  page.resize(300, 900);
  page.show();
  QApplication::setActiveWindow(&page);
  for (QWidget* widget : all) {
    widget->setFocus(Qt::TabFocusReason);
    const QImage seen = widget->grab().toImage();
    EXPECT_EQ(seen.pixelColor(0, seen.height() / 2), t.focus)
        << widget->metaObject()->className() << " " << widget->objectName().toStdString();
  }
}

INSTANTIATE_TEST_SUITE_P(LightAndDark, ThemeTest, testing::Bool());

TEST(Theme, AListOfChoicesShowsEachOfItsRowsWhole) {
  for (const int rows : {2, 5, 7}) {
    QWidget page;
    page.setStyleSheet(style_sheet(Theme::light()));
    auto* column = new QVBoxLayout(&page);
    QStringList names;
    for (int i = 0; i < rows; ++i) names << QString("Choice %1").arg(i + 1);
    auto* box = choice_box(names);
    column->addWidget(box);
    page.resize(300, 80);
    page.show();
    box->showPopup();
    const QAbstractItemView& view = *box->view();
    int height = 0;
    for (int i = 0; i < rows; ++i) height += view.visualRect(view.model()->index(i, 0)).height();
    EXPECT_GE(view.viewport()->height(), height) << rows;
    box->hidePopup();
  }
}
