// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/crew_bars.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <numeric>

#include "app/support/written.h"
#include "plan/solve.h"
#include "sheets/contents.h"
#include "support/sample_plans.h"

using namespace underlawn;

namespace {

Outcome solved() {
  Plan plan = sample::half_acre();
  plan.thermal.years = 1;
  plan.crew.start = "2026-05-15";
  return solve(plan);
}

double ink(const QImage& image) {
  int dark = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) dark += qGray(image.pixel(x, y)) < 128;
  return static_cast<double>(dark) / (image.width() * image.height());
}

}  // namespace

// Every second of every task is in exactly one bar.
TEST(CrewBars, CutTasksAtTheEndOfTheDayAndLoseNothing) {
  const Outcome outcome = solved();
  ASSERT_NE(outcome.calendar, nullptr);
  const CrewCalendar& c = *outcome.calendar;
  std::vector<double> shown(c.tasks.size());
  for (const CrewDayBars& day : bars_by_day(c))
    for (const CrewRow& row : day.rows)
      for (const CrewBar& bar : row.bars) {
        EXPECT_GE(bar.from, 0);
        EXPECT_LE(bar.to, c.day_length + 1e-6);
        EXPECT_EQ(c.tasks[bar.task].station, row.station);
        EXPECT_NEAR(day.day * c.day_length + bar.from,
                    std::max(c.tasks[bar.task].begin, day.day * c.day_length), 1e-6);
        shown[bar.task] += bar.to - bar.from;
      }
  for (std::size_t i = 0; i < shown.size(); ++i)
    EXPECT_NEAR(shown[i], c.tasks[i].end - c.tasks[i].begin, 0.01) << i;
}

TEST(CrewBars, NameTheDayAndTellOfATask) {
  const Outcome outcome = solved();
  EXPECT_EQ(day_words(*outcome.calendar, 0), "Day 1, Friday 2026-05-15");
  EXPECT_EQ(day_words(*outcome.calendar, 1), "Day 2, Monday 2026-05-18");
  const QString said = task_said(outcome.calendar->tasks[0], *outcome.calendar, *outcome.order);
  EXPECT_TRUE(said.startsWith("Excavator: Digging")) << said.toStdString();
  EXPECT_TRUE(said.contains("day 1, 7:00")) << said.toStdString();
}

TEST(CrewBars, StandOnASheetWithinTheirHeight) {
  Plan plan = sample::half_acre();
  const Outcome outcome = solved();
  for (const auto& block : {sheet::calendar_block(plan, outcome), sheet::digging_sections(plan, outcome)}) {
    ASSERT_NE(block, nullptr);
    const double width = 4 * kSheetUnits, height = block->height(width);
    ASSERT_GT(height, 0);
    ASSERT_LT(height, 12 * kSheetUnits);
    QImage image(static_cast<int>(width / 8), static_cast<int>(height / 8) + 60, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(1.0 / 8, 1.0 / 8);
    block->paint(painter, {0, 0, width, height});
    painter.end();
    EXPECT_GT(ink(image), 0.002);
    EXPECT_EQ(ink(image.copy(0, static_cast<int>(height / 8) + 2, image.width(), 50)), 0);
  }
  EXPECT_EQ(sheet::calendar_block(plan, Outcome{}), nullptr);
  EXPECT_EQ(sheet::digging_sections(plan, Outcome{}), nullptr);
}

// The half acre's supply run meets a power line; the time it is laid bare in is the crew's own.
TEST(CrewBars, ShowTheStakingAndTheHoursDugByHand) {
  const Plan plan = sample::half_acre();
  const Outcome outcome = solved();
  const HandWork hand = hand_work(plan, outcome);
  int met = 0;
  for (const Crossing& c : outcome.layout.crossings)
    if (const Feature* f = find_feature(plan.site, c.feature_id))
      met += f->kind == FeatureKind::utility ? 1 : 0;
  ASSERT_GT(met, 0);
  EXPECT_NEAR(std::accumulate(hand.exposing.begin(), hand.exposing.end(), 0.0), met * plan.crew.hand_crossing,
              1e-6);
  EXPECT_EQ(hand.stakes, static_cast<int>(outcome.stake_out.ties.size()));
  const auto block = sheet::calendar_block(plan, outcome);
  const double width = 4 * kSheetUnits;
  const QStringList words = test::written_by([&](QPainter& painter) {
    block->paint(painter, {0, 0, width, block->height(width)});
  });
  EXPECT_TRUE(words.contains("Before day 1"));
  EXPECT_TRUE(words.contains("Staking"));
  EXPECT_TRUE(words.contains(QString("%1 stakes").arg(hand.stakes)));
}

// Only the bar of a step that meets lines is hatched.
TEST(CrewBars, HatchWhatIsDugByHand) {
  const Plan plan = sample::half_acre();
  const Outcome outcome = solved();
  const auto drawn = [&](const HandWork& hand) {
    QImage image(900, 900, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    CrewBarsStyle style = CrewBarsStyle::on_paper(QFont(), 1);
    style.hand = hand;
    paint_crew_bars(painter, *outcome.calendar, *outcome.order, {0, 0, 900, 900}, style);
    painter.end();
    return ink(image);
  };
  HandWork hand = hand_work(plan, outcome);
  hand.staking = 0;
  EXPECT_GT(drawn(hand), drawn({}));
}

// On a dark ground the ink of the bars is not seen: what stands beside a bar is in the ink of the page.
TEST(CrewBars, WriteBesideABarInTheInkOfThePage) {
  const Plan plan = sample::half_acre();
  const Outcome outcome = solved();
  QImage image(420, 1600, QImage::Format_RGB32);
  image.fill(Qt::black);
  QPainter painter(&image);
  QFont font("Inter");
  font.setPixelSize(12);
  CrewBarsStyle style = CrewBarsStyle::on_paper(font, 1);
  style.bar_text = QColor(255, 0, 255);
  style.text = style.faint = style.rule = Qt::white;
  for (QColor& fill : style.fill) fill = QColor(0, 255, 0);
  paint_crew_bars(painter, *outcome.calendar, *outcome.order, {0, 0, 420, 1600}, style);
  painter.end();
  const auto near_a_bar = [&](int x, int y) {
    for (int dy = -2; dy <= 2; ++dy)
      for (int dx = -2; dx <= 2; ++dx)
        if (image.valid(x + dx, y + dy) && qGreen(image.pixel(x + dx, y + dy)) > 200 &&
            qRed(image.pixel(x + dx, y + dy)) < 60)
          return true;
    return false;
  };
  int stray = 0, inside = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) {
      const QRgb p = image.pixel(x, y);
      if (qRed(p) < 150 || qBlue(p) < 150 || qGreen(p) > 60) continue;
      ++(near_a_bar(x, y) ? inside : stray);
    }
  EXPECT_EQ(stray, 0);
  EXPECT_GT(inside, 100);
}
