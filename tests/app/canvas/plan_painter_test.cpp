// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/plan_painter.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <cmath>
#include <limits>

#include "app/support/laid_out.h"

using namespace underlawn;

namespace {

QImage painted(const Plan& plan, const Outcome* outcome, const View& view, const Look& look,
               const PaintOptions& options = {}) {
  QImage image(view.size.toSize(), QImage::Format_RGB32);
  image.fill(look.background);
  QPainter painter(&image);
  paint_plan(painter, plan, outcome, view, look, options);
  return image;
}

int pixels_near(const QImage& image, const QColor& colour, int within) {
  int count = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) {
      const QColor c = image.pixelColor(x, y);
      if (std::abs(c.red() - colour.red()) + std::abs(c.green() - colour.green()) +
              std::abs(c.blue() - colour.blue()) <=
          within)
        ++count;
    }
  return count;
}

View view_of(const Plan& plan, QSizeF size = {900, 900}) {
  return fit_view(bounds(lot_ring(plan.site)), size, 40);
}

}  // namespace

TEST(PlanPainter, EveryUtilityIsSeenInItsColour) {
  const laid_out::Sample sample = laid_out::half_acre(4);
  const Look look = Look::light();
  const QImage image = painted(sample.plan, &sample.outcome, view_of(sample.plan), look);
  EXPECT_GT(pixels_near(image, apwa_colour(UtilityKind::electric, look), 20), 50);
  EXPECT_GT(pixels_near(image, apwa_colour(UtilityKind::water, look), 20), 20);
  EXPECT_EQ(pixels_near(image, apwa_colour(UtilityKind::gas, look), 20), 0);
}

TEST(PlanPainter, TrenchLiesWhereItsPointsLie) {
  const laid_out::Sample sample = laid_out::half_acre(4);
  const Look look = Look::light();
  PaintOptions bare;
  bare.coils = bare.labels = bare.findings = false;
  const View view = view_of(sample.plan);
  const QImage image = painted(sample.plan, &sample.outcome, view, look, bare);
  for (const Trench& t : sample.outcome.layout.trenches) {
    const QPointF inside = view.to_device(t.head + 0.3 * (t.end - t.head));
    EXPECT_EQ(image.pixelColor(inside.toPoint()), look.trench_fill) << t.number;
  }
}

TEST(PlanPainter, ATrenchThatBendsIsFilledAlongItsBendsAndNotAcrossThem) {
  laid_out::Sample sample = laid_out::half_acre(4);
  const Look look = Look::light();
  PaintOptions bare;
  bare.coils = bare.labels = bare.findings = false;
  const View view = view_of(sample.plan);
  sample.outcome.layout.trenches.resize(1);
  Trench& bent = sample.outcome.layout.trenches[0];
  const Point across = left_normal(unit(bent.end - bent.head));
  const Point corner = bent.head + 0.5 * (bent.end - bent.head) + 6.0 * across;
  bent.bends = {corner};
  const QImage image = painted(sample.plan, &sample.outcome, view, look, bare);
  const auto colour = [&](Point p) { return image.pixelColor(view.to_device(p).toPoint()); };
  EXPECT_EQ(colour(corner + 0.3 * (bent.end - corner)), look.trench_fill);
  EXPECT_EQ(colour(bent.head + 0.6 * (corner - bent.head)), look.trench_fill);
  EXPECT_NE(colour(bent.head + 0.5 * (bent.end - bent.head)), look.trench_fill);
}

TEST(PlanPainter, StaleOutcomeIsDrawnPale) {
  const laid_out::Sample sample = laid_out::half_acre(4);
  const Look look = Look::light();
  PaintOptions stale;
  stale.stale = true;
  const View view = view_of(sample.plan);
  EXPECT_GT(pixels_near(painted(sample.plan, &sample.outcome, view, look), look.trench, 12), 100);
  EXPECT_EQ(pixels_near(painted(sample.plan, &sample.outcome, view, look, stale), look.trench, 12), 0);
}

TEST(PlanPainter, SamePlanGivesTheSamePicture) {
  const laid_out::Sample sample = laid_out::half_acre(14);
  const View view = view_of(sample.plan);
  EXPECT_EQ(painted(sample.plan, &sample.outcome, view, Look::night()),
            painted(sample.plan, &sample.outcome, view, Look::night()));
}

TEST(PlanPainter, SurvivesWhateverAPlanHolds) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  laid_out::Sample sample = laid_out::half_acre(3);
  for (Feature& f : sample.plan.site.features) f.points.push_back({nan, 1e300});
  for (Trench& t : sample.outcome.layout.trenches) t.end.x = nan;
  sample.plan.site.lot.push_back({{nan, nan}, nan});
  sample.plan.wishes.locked = {
      {{nan, 0}, {1, 1}}, {{0, 0}, {0, 0}}, {{0, 0}, {1e300, 0}}, {{0, 0}, {9, 0}, 0, 0, {{5, 5}, {5, 5}}}};
  Plan empty;
  Feature pointless;
  pointless.kind = FeatureKind::tree;
  empty.site.features = {pointless, pointless};
  const View view{.centre = {0, 0}, .scale = 1e5, .size = {300, 200}};
  EXPECT_FALSE(painted(sample.plan, &sample.outcome, view, Look::light()).isNull());
  EXPECT_FALSE(
      painted(sample.plan, &sample.outcome, fit_view({{0, 0}, {50, 50}}, {300, 200}, 5), Look::light())
          .isNull());
  EXPECT_FALSE(painted(empty, nullptr, view, Look::paper()).isNull());
}

// With UNDERLAWN_LOOK_AT set to a folder, leaves there what a person should look at.
TEST(PlanPainter, DrawsEveryLookAtEverySize) {
  const QString folder = qEnvironmentVariable("UNDERLAWN_LOOK_AT");
  for (const auto& [name, look] : {std::pair("light", Look::light()), std::pair("night", Look::night())})
    for (const auto& sample : {laid_out::alder(3), laid_out::half_acre(4)})
      for (int side : {500, 1000}) {
        const QImage image =
            painted(sample.plan, &sample.outcome, view_of(sample.plan, QSizeF(side, side)), look);
        EXPECT_GT(pixels_near(image, look.trench, 30), 20) << name << side;
        if (!folder.isEmpty())
          image.save(folder + "/" + QString::fromStdString(sample.plan.title.project).replace(' ', '-') +
                     "-" + name + "-" + QString::number(side) + ".png");
      }
}
