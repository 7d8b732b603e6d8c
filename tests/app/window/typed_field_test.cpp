// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/typed_field.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <cmath>

using namespace underlawn;

namespace {

struct FieldTest : testing::Test {
  QuantityField field{Quantity::length};
  std::vector<double> entered;

  void SetUp() override {
    field.show_value(1.8288, UnitSystem::us);
    QObject::connect(&field, &QuantityField::entered, [this](double v) { entered.push_back(v); });
    field.show();
  }
  void type(const QString& text) {
    field.edit()->selectAll();
    QTest::keyClicks(field.edit(), text);
  }
  void press(Qt::Key key) { QTest::keyClick(field.edit(), key); }
};

}  // namespace

TEST(TypedField, ShownAgainKeepsWhatIsMarked) {
  TypedField field;
  field.show();
  field.show_text("12 ft");
  field.setFocus(Qt::ShortcutFocusReason);
  field.edit()->selectAll();
  field.show_text("12 ft");
  QTest::keyClicks(field.edit(), "20");
  EXPECT_EQ(field.edit()->text(), "20");
}

TEST(TypedField, UndoIsThePlansUntilSomethingIsTyped) {
  TypedField field;
  field.show();
  field.show_text("12");
  const auto takes_undo = [&] {
    QKeyEvent undo(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    undo.ignore();
    QApplication::sendEvent(field.edit(), &undo);
    return undo.isAccepted();
  };
  EXPECT_FALSE(takes_undo());
  QTest::keyClicks(field.edit(), "3");
  EXPECT_TRUE(takes_undo());
  field.set_taker([](const QString&) { return QString(); });
  QTest::keyClick(field.edit(), Qt::Key_Return);
  EXPECT_FALSE(takes_undo());
}

TEST_F(FieldTest, EnterCommitsWhatWasTypedOnce) {
  type("7'-6\"");
  press(Qt::Key_Return);
  ASSERT_EQ(entered.size(), 1u);
  EXPECT_NEAR(entered[0], 7.5 * 0.3048, 1e-12);
  EXPECT_EQ(field.edit()->text(), "7'-6\"");
  press(Qt::Key_Return);
  EXPECT_EQ(entered.size(), 1u);
}

TEST_F(FieldTest, TakesArithmeticAndAnyUnitOfTheQuantity) {
  type("2*1.5 m");
  press(Qt::Key_Return);
  type("6' + 3 in");
  press(Qt::Key_Return);
  ASSERT_EQ(entered.size(), 2u);
  EXPECT_NEAR(entered[0], 3, 1e-12);
  EXPECT_NEAR(entered[1], 6.25 * 0.3048, 1e-12);
}

TEST_F(FieldTest, EscTakesBackWhatWasTyped) {
  type("99");
  press(Qt::Key_Escape);
  EXPECT_EQ(field.edit()->text(), "6'-0\"");
  press(Qt::Key_Return);
  EXPECT_TRUE(entered.empty());
}

TEST_F(FieldTest, WhatCannotBeReadIsSaidAndNothingTypedIsLost) {
  type("deep");
  press(Qt::Key_Return);
  EXPECT_TRUE(entered.empty());
  EXPECT_TRUE(field.wrong().contains("deep"));
  EXPECT_EQ(field.edit()->text(), "deep");
  press(Qt::Key_Escape);
  EXPECT_TRUE(field.wrong().isEmpty());
  EXPECT_EQ(field.edit()->text(), "6'-0\"");
}

TEST_F(FieldTest, WhatTheJudgeRefusesIsNotEntered) {
  field.set_judge([](double v) { return v > 3 ? QString("deeper than 3 m") : QString(); });
  type("20");
  press(Qt::Key_Return);
  EXPECT_TRUE(entered.empty());
  EXPECT_EQ(field.wrong(), "deeper than 3 m");
  type("2");
  press(Qt::Key_Return);
  EXPECT_EQ(entered.size(), 1u);
  EXPECT_TRUE(field.wrong().isEmpty());
}

TEST_F(FieldTest, ValueShownAgainDoesNotDisturbSomebodyTyping) {
  QApplication::setActiveWindow(&field);
  field.edit()->setFocus();
  ASSERT_TRUE(field.edit()->hasFocus());
  type("1");
  field.show_value(3, UnitSystem::us);
  EXPECT_EQ(field.edit()->text(), "1");
}

TEST_F(FieldTest, ValueIsShownInTheUnitsAskedFor) {
  field.show_value(1.5, UnitSystem::metric);
  EXPECT_EQ(field.edit()->text().toStdString(), print_quantity(Quantity::length, 1.5, UnitSystem::metric));
}

TEST(TimeField, ShowsSecondsAndMinutesAndTakesABareNumberAsWhatStandsThere) {
  QuantityField field{Quantity::duration};
  std::vector<double> entered;
  QObject::connect(&field, &QuantityField::entered, [&](double v) { entered.push_back(v); });
  const auto put = [&](const char* text) {
    field.edit()->selectAll();
    QTest::keyClicks(field.edit(), text);
    QTest::keyClick(field.edit(), Qt::Key_Return);
  };
  field.show_value(18, UnitSystem::us);
  EXPECT_EQ(field.edit()->text(), "18 s");
  put("21,5");
  put("20 min");
  EXPECT_EQ(field.edit()->text(), "20 min");
  put("45");
  put("2 h");
  EXPECT_EQ(field.edit()->text(), "2.0 h");
  put("3");
  EXPECT_EQ(entered, (std::vector<double>{21.5, 1200, 2700, 7200, 10800}));
}
