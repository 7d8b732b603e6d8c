// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/chart.h"

#include <QPainter>
#include <QTest>
#include <cmath>

#include "plots/chart_paint.h"
#include "plots/chart_view.h"

namespace underlawn {
namespace {

Chart some_chart() {
  Chart chart;
  chart.title = "Water";
  chart.x = year_axis();
  chart.y = quantity_axis("Temperature", Quantity::temperature, UnitSystem::metric, -1, 19);
  chart.lines.push_back({"First year", {{0, 4}, {100, 8}, {200, 16}, {365, 4}}, 0});
  return chart;
}

TEST(Chart, TicksAreRoundNumbersOfTheUsersUnit) {
  // 0 and 20 deg C are 32 and 68 F by the definition of the scale.
  const ChartAxis us = quantity_axis("Temperature", Quantity::temperature, UnitSystem::us, 0, 20);
  EXPECT_TRUE(us.title.endsWith("°F")) << us.title.toStdString();
  ASSERT_EQ(us.ticks.front().text, "30");
  EXPECT_NEAR(us.ticks.front().at, (30 - 32) / 1.8, 1e-9);
  EXPECT_EQ(us.ticks.back().text, "70");
  EXPECT_LE(us.low, 0);
  EXPECT_GE(us.high, 20);
  const ChartAxis depth = quantity_axis("Depth", Quantity::length, UnitSystem::metric, 0, 1);
  EXPECT_EQ(depth.ticks[1].text, "0.2");
}

TEST(Chart, MapsValuesToPixelsAndBack) {
  const Chart chart = some_chart();
  const ChartFrame f = chart_frame(chart, QRectF(0, 0, 400, 300), QFont());
  EXPECT_EQ(f.at({0, chart.y.low}), f.plot.bottomLeft());
  EXPECT_EQ(f.at({365, chart.y.high}), f.plot.topRight());
  const QPointF back = f.value(f.at({123, 4.5}));
  EXPECT_NEAR(back.x(), 123, 1e-9);
  EXPECT_NEAR(back.y(), 4.5, 1e-9);
}

TEST(Chart, TextsOfMarksLieOverNoLimitNoCurveAndNoOtherText) {
  Chart chart = some_chart();
  chart.lines[0].points.clear();
  for (int day = 0; day <= 365; ++day)
    chart.lines[0].points.push_back({1.0 * day, 9 - 8 * std::cos(day * 2 * M_PI / 365)});
  chart.limits = {{"Limits", 18}, {"Limits", 0.5}};
  chart.marks = {{{182.5, 17}, "17.0 °C, 1 Jul, 17:00, year 1", true},
                 {{0, 1}, "1.0 °C, 1 Jan, 05:00, year 2", false}};
  const ChartFrame f = chart_frame(chart, QRectF(0, 0, 330, 300), QFont());
  const QVector<QRectF> boxes = mark_boxes(chart, f, QFont());
  ASSERT_EQ(boxes.size(), 2);
  EXPECT_FALSE(boxes[0].intersects(boxes[1]));
  for (const QRectF& box : boxes) {
    EXPECT_TRUE(f.plot.contains(box));
    for (const ChartLimit& l : chart.limits) EXPECT_FALSE(box.contains(box.center().x(), f.at({0, l.y}).y()));
    for (const QPointF& p : chart.lines[0].points) EXPECT_FALSE(box.contains(f.at(p)));
  }
}

TEST(Chart, ALineIsPaintedWhereItsValuesLie) {
  const Chart chart = some_chart();
  QImage image(400, 300, QImage::Format_RGB32);
  image.fill(Theme::light().paper);
  QPainter painter(&image);
  const ChartFrame f = chart_frame(chart, QRectF(0, 0, 400, 300), painter.font());
  paint_chart(painter, chart, QRectF(0, 0, 400, 300), Theme::light());
  painter.end();
  const QColor ink = chart_colour(0, Theme::light());
  const auto is_ink = [&](QPoint p) {
    const QColor c = image.pixelColor(p);
    return std::abs(c.red() - ink.red()) + std::abs(c.green() - ink.green()) +
               std::abs(c.blue() - ink.blue()) <
           120;
  };
  // A line lies between pixels as often as on one.
  const auto inked = [&](QPointF at) {
    const QPoint p = at.toPoint();
    return is_ink(p) || is_ink(p + QPoint(0, 1)) || is_ink(p - QPoint(0, 1));
  };
  EXPECT_TRUE(inked(f.at({150, 12})));
  EXPECT_FALSE(inked(f.at({150, 6})));
}

TEST(Chart, ReadsBetweenPointsAndSaysNothingBeyondThem) {
  const Chart chart = some_chart();
  const auto read = chart_readings(chart, 150);
  ASSERT_EQ(read.size(), 1u);
  EXPECT_EQ(read[0], "First year: " + QString::fromStdString(
                                          print_quantity(Quantity::temperature, 12, UnitSystem::metric)));
  EXPECT_TRUE(chart_readings(chart, 366).empty());
}

TEST(Chart, EveryColourStandsOutFromThePaper) {
  for (const Theme& theme : {Theme::light(), Theme::night()})
    for (int style = 0; style < kChartStyles; ++style)
      EXPECT_GE(contrast(chart_colour(style, theme), theme.paper), 3.0) << style;
}

TEST(ChartView, IsReadByPointerAndByKeys) {
  ChartView view(240);
  view.resize(360, 240);
  view.set_chart(some_chart());
  view.show();
  QTest::mouseMove(&view, view.place_of({200, 10}).toPoint());
  ASSERT_TRUE(view.reading());
  EXPECT_NEAR(*view.reading(), 200, 1.5);
  QTest::keyClick(&view, Qt::Key_Home);
  EXPECT_EQ(*view.reading(), 0);
  QTest::keyClick(&view, Qt::Key_Right);
  EXPECT_EQ(*view.reading(), 5);
  EXPECT_TRUE(view.accessibleDescription().contains("First year"))
      << view.accessibleDescription().toStdString();
  QTest::keyClick(&view, Qt::Key_Escape);
  EXPECT_FALSE(view.reading());
}

}  // namespace
}  // namespace underlawn
