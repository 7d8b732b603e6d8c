// SPDX-License-Identifier: GPL-3.0-or-later
// The picture of a pressure test: the curves of core laid out in time since the valve was shut.
#include "plots/test_chart.h"

#include <QPainter>
#include <QTest>

#include "plots/chart_paint.h"

namespace underlawn {
namespace {

TestPicture picture_of(TestProcedure procedure) {
  const LoopVolume loop{{{"3/4 in DR 11", 0.02154, 0.02667, 11, 900}}};
  LoopTest asked;
  asked.procedure = procedure;
  const PlannedTest planned = planned_test(asked, loop).value();
  const auto prepared = prepare_band(planned.programme, planned.state, {}).value();
  TestPicture p{
      planned.programme, procedure, test_band(prepared, loop, planned.state, {}).value(), {}, 0, {}};
  p.leak_size = smallest_visible_leak(prepared, p.band, loop, planned.state).value();
  p.leak = leak_curve(prepared, loop, planned.state, p.leak_size).value();
  return p;
}

// What is read at a place, by the series' name.
QString read(const Chart& chart, double at, const QString& name) {
  for (const QString& text : chart_readings(chart, at))
    if (text.startsWith(name)) return text;
  return {};
}

}  // namespace

TEST(TestChart, StartsWhereTheValveIsShutAndEndsWithTheTest) {
  const TestPicture p = picture_of(TestProcedure::long_hold_then_shut_in);
  const Chart chart = test_chart(p, UnitSystem::metric);
  EXPECT_DOUBLE_EQ(chart.x.low, 0);
  EXPECT_DOUBLE_EQ(chart.x.high, 3600) << "an hour: ASTM F2164 (from memory)";
  for (const ChartLine& line : chart.lines) {
    EXPECT_DOUBLE_EQ(line.points.front().x(), 0);
    EXPECT_DOUBLE_EQ(line.points.back().x(), 3600);
  }
  // What is drawn is within the axes.
  for (const ChartBand::Span& s : chart.bands[0].spans) {
    EXPECT_GE(s.low, chart.y.low);
    EXPECT_LE(s.high, chart.y.high);
  }
  EXPECT_LT(chart.lines[1].points.back().y(), chart.bands[0].spans.back().low + 1)
      << "the smallest visible leak ends where the sound loop's bounds do";
}

TEST(TestChart, IsReadInTheUsersUnits) {
  const TestPicture p = picture_of(TestProcedure::hold_then_shut_in);
  const Chart us = test_chart(p, UnitSystem::us), metric = test_chart(p, UnitSystem::metric);
  EXPECT_TRUE(us.y.title.endsWith("psi")) << us.y.title.toStdString();
  EXPECT_TRUE(metric.y.title.endsWith("kPa")) << metric.y.title.toStdString();
  EXPECT_TRUE(read(us, 900, "A sound loop").endsWith("psi"));
  EXPECT_TRUE(read(metric, 900, "A leak of").endsWith("kPa"));
  EXPECT_EQ(metric.x.words(900), "15 min");
}

TEST(TestChart, ReadingsAreDotsWithinTheAxes) {
  TestPicture p = picture_of(TestProcedure::hold_then_shut_in);
  for (int i = -1; i <= 30; ++i) p.readings.push_back({60.0 * i, 600e3 - 5e3 * i, {}});
  const Chart chart = test_chart(p, UnitSystem::metric);
  ASSERT_EQ(chart.lines.size(), 3u);
  const ChartLine& dots = chart.lines.back();
  EXPECT_TRUE(dots.dots);
  EXPECT_EQ(dots.points.size(), 31u) << "what was read before the valve was shut is not shown";
  EXPECT_LE(chart.y.low, 450e3);
  QImage image(400, 300, QImage::Format_RGB32);
  image.fill(Theme::light().paper);
  QPainter painter(&image);
  const ChartFrame f = chart_frame(chart, QRectF(0, 0, 400, 300), painter.font());
  paint_chart(painter, chart, QRectF(0, 0, 400, 300), Theme::light());
  painter.end();
  const QPoint at = f.at(dots.points.back()).toPoint();
  EXPECT_EQ(image.pixelColor(at.x() - 1, at.y()), chart_colour(dots.style, Theme::light()));
}

TEST(TestChart, ReboundShowsTheStandardsTolerance) {
  TestPicture p = picture_of(TestProcedure::rebound);
  p.readings = {{0, 500e3, {}}, {600, 510e3, {}}};
  std::vector<double> bounds;
  for (const ChartLimit& l : test_chart(p, UnitSystem::us).limits)
    if (l.bound) bounds.push_back(l.y);
  // 5 %: ASTM F2164 (from memory).
  ASSERT_EQ(bounds.size(), 2u);
  EXPECT_NEAR(bounds[0], 475e3, 1);
  EXPECT_NEAR(bounds[1], 525e3, 1);
  for (const ChartLimit& l : test_chart(picture_of(TestProcedure::hold_then_shut_in), UnitSystem::us).limits)
    EXPECT_FALSE(l.bound);
}

TEST(TestChart, SaysWhyItIsEmpty) {
  EXPECT_FALSE(no_test_chart().has_data());
  EXPECT_FALSE(no_test_chart().empty.isEmpty());
}

}  // namespace underlawn
