// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/ground_cut.h"

#include <QObject>
#include <cmath>
#include <numeric>

#include "base/quantity.h"
#include "canvas/look.h"
#include "field/straight.h"
#include "ground/undisturbed.h"
#include "plots/heat_colours.h"

namespace underlawn {

namespace {

struct Season {
  QString name;
  double day;  // of the year
  int month;   // 0..11
  QColor sky;
};

std::vector<Season> seasons() {
  return {{QObject::tr("Winter"), 31, 0, QColor("#dfe7ee")},
          {QObject::tr("Spring"), 121, 3, QColor("#e3eef0")},
          {QObject::tr("Summer"), 212, 6, QColor("#eaf1e2")},
          {QObject::tr("Fall"), 304, 9, QColor("#f1ebe0")}};
}

// Mean of the air over the month before the day, deg C.
double air(const WeatherYear& weather, double day) {
  if (weather.outdoor.size() != kWeatherHours) return std::nan("");
  double sum = 0;
  constexpr int kHours = 30 * 24;
  for (int h = 0; h < kHours; ++h) {
    const int hour = (static_cast<int>(day * 24) - h + kWeatherHours) % kWeatherHours;
    sum += weather.outdoor[static_cast<std::size_t>(hour)];
  }
  return sum / kHours;
}

// Mean of the water in the pipe over the month before the day, deg C, in the last year reckoned.
double water(const Outcome& outcome, double day) {
  if (!outcome.temperatures) return std::nan("");
  const std::vector<HourState>& hours = outcome.temperatures->simulation.last;
  if (hours.size() != kYearHours) return std::nan("");
  double sum = 0;
  constexpr int kHours = 30 * 24;
  for (int h = 0; h < kHours; ++h) {
    const int hour = (static_cast<int>(day * 24) - h + kYearHours) % kYearHours;
    const HourState& now = hours[static_cast<std::size_t>(hour)];
    sum += (now.entering + now.leaving) / 2;
  }
  return sum / kHours;
}

class Cut {
 public:
  Cut(QPainter& painter, const Plan& plan, const Outcome& outcome, const QRectF& area, double text)
      : p_(painter), plan_(plan), outcome_(outcome), area_(area), text_(text) {
    depth_ = std::max(1.6 * plan.wishes.trench_depth, 2.5);
    grass_ = area.top() + 4.0 * text;
    plot_ = QRectF(QPointF(area.left() + 4.2 * text, grass_), QPointF(area.right(), area.bottom()));
  }

  void paint() {
    const auto all = seasons();
    const double width = plot_.width() / static_cast<double>(all.size());
    for (std::size_t i = 0; i < all.size(); ++i)
      paint_season(all[i],
                   QRectF(plot_.left() + static_cast<double>(i) * width, plot_.top(), width, plot_.height()));
    paint_depths();
    paint_pipe();
  }

 private:
  double y_of(double z) const { return grass_ + z / depth_ * plot_.height(); }
  double temperature(double z, double day) const {
    const Surroundings& s = *outcome_.surroundings;
    return undisturbed_temperature(s.climate, s.soil.diffusivity(), z, day);
  }
  QString shown(double celsius) const {
    const bool us = plan_.units == UnitSystem::us;
    return QString(us ? "%1 °F" : "%1 °C").arg(qRound(us ? celsius * 9 / 5 + 32 : celsius));
  }
  void say(QPointF middle, const QString& words, double size, QFont::Weight weight, const QColor& colour) {
    const QFont font = set_for(plan_font(size, weight), words);
    p_.setFont(font);
    p_.setPen(colour);
    const double width = QFontMetricsF(font).horizontalAdvance(words);
    p_.drawText(middle + QPointF(-width / 2, 0.36 * size), words);
  }
  void paint_season(const Season& season, const QRectF& column);
  void paint_chip(QPointF at, const QString& words, bool dark);
  void paint_depths();
  void paint_pipe();

  QPainter& p_;
  const Plan& plan_;
  const Outcome& outcome_;
  QRectF area_, plot_;
  double text_, depth_ = 3, grass_ = 0;
};

void Cut::paint_season(const Season& season, const QRectF& column) {
  const Surroundings& s = *outcome_.surroundings;
  const QRectF sky(column.left(), area_.top(), column.width(), grass_ - area_.top());
  p_.fillRect(sky, season.sky);
  say(sky.center() - QPointF(0, 0.75 * text_), season.name, 1.25 * text_, QFont::DemiBold, QColor("#2b2a26"));
  if (const double t = air(s.weather, season.day); std::isfinite(t))
    say(sky.center() + QPointF(0, 0.75 * text_), QObject::tr("air %1").arg(shown(t)), text_, QFont::Normal,
        QColor("#2b2a26"));
  const double swing = std::max(std::abs(s.climate.amplitude), 1.0);
  constexpr int kBands = 60;
  for (int i = 0; i < kBands; ++i) {
    const double z = depth_ * (i + 0.5) / kBands;
    const double share = (temperature(z, season.day) - (s.climate.mean - swing)) / (2 * swing);
    // Down to the bottom, so that no seam shows between it and the next.
    p_.fillRect(
        QRectF(QPointF(column.left(), y_of(depth_ * i / kBands)), QPointF(column.right(), y_of(depth_))),
        QColor::fromRgb(heat_colour(std::clamp(share, 0.0, 1.0), false)));
  }
  p_.setPen(QPen(QColor(255, 255, 255, 150), 0.08 * text_));
  p_.drawLine(column.topRight(), column.bottomRight());
  p_.fillRect(QRectF(column.left(), grass_ - 0.28 * text_, column.width(), 0.36 * text_), QColor("#7fa65a"));
  const double pipe = plan_.wishes.trench_depth - 0.5 * plan_.wishes.bedding;
  const double middle = column.center().x();
  paint_chip({middle, y_of(0.12) + 0.7 * text_}, shown(temperature(0.12, season.day)), false);
  paint_chip({middle, y_of(pipe) - 1.3 * text_}, shown(temperature(pipe, season.day)), false);
  if (const double t = water(outcome_, season.day); std::isfinite(t))
    paint_chip({middle, y_of(pipe) + 1.3 * text_}, QObject::tr("pipe %1").arg(shown(t)), true);
}

// A number on the ground; dark: of the water in the pipe.
void Cut::paint_chip(QPointF at, const QString& words, bool dark) {
  const QFont font = plan_font(1.02 * text_, QFont::DemiBold);
  const double wide = QFontMetricsF(set_for(font, words)).horizontalAdvance(words) + text_;
  p_.setPen(Qt::NoPen);
  p_.setBrush(dark ? QColor("#0d3550") : QColor(255, 255, 255, 215));
  p_.drawRoundedRect(QRectF(at - QPointF(wide / 2, 0.75 * text_), QSizeF(wide, 1.5 * text_)), 0.4 * text_,
                     0.4 * text_);
  p_.setBrush(Qt::NoBrush);
  say(at, words, 1.02 * text_, QFont::DemiBold, dark ? QColor(Qt::white) : QColor("#2b2a26"));
}

void Cut::paint_depths() {
  const bool us = plan_.units == UnitSystem::us;
  const double step = us ? 2 * 0.3048 : 0.5;
  for (double z = 0; z < depth_ - 0.05; z += step) {
    const QString words = us ? QString("%1 ft").arg(qRound(z / 0.3048)) : QString("%1 m").arg(z, 0, 'f', 1);
    const QFont font = set_for(plan_font(0.9 * text_), words);
    p_.setFont(font);
    p_.setPen(QColor("#55524a"));
    p_.drawText(QPointF(plot_.left() - 0.5 * text_ - QFontMetricsF(font).horizontalAdvance(words),
                        y_of(z) + 0.33 * text_),
                words);
    p_.setPen(QPen(QColor("#55524a"), 0.06 * text_));
    p_.drawLine(QPointF(plot_.left() - 0.35 * text_, y_of(z)), QPointF(plot_.left(), y_of(z)));
  }
}

// The pipe as the trench shows it lengthways: a row of dots at the depth of each of its levels.
void Cut::paint_pipe() {
  const double low = plan_.wishes.trench_depth - 0.5 * plan_.wishes.bedding;
  std::vector<double> depths{low};
  const Coil& coil = outcome_.coil;
  if (coil.pattern == CoilPattern::upright_coil) depths.push_back(low - coil.loop_diameter);
  if (is_straight(coil.pattern))
    for (const StraightPipe& pipe : straight_pipes(coil))
      if (std::ranges::find(depths, low - pipe.up) == depths.end()) depths.push_back(low - pipe.up);
  for (const double z : depths)
    for (double x = plot_.left() + 0.6 * text_; x < plot_.right(); x += 0.9 * text_) {
      p_.setPen(QPen(QColor("#0d3550"), 0.14 * text_));
      p_.setBrush(Qt::white);
      p_.drawEllipse(QPointF(x, y_of(z)), 0.26 * text_, 0.26 * text_);
    }
  p_.setBrush(Qt::NoBrush);
}

}  // namespace

void paint_ground_cut(QPainter& painter, const Plan& plan, const Outcome& outcome, const QRectF& area,
                      double text) {
  if (!outcome.surroundings) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setClipRect(area);
  Cut(painter, plan, outcome, area, text).paint();
  painter.restore();
}

QString ground_cut_words(const Outcome& outcome) {
  return outcome.temperatures
             ? QObject::tr(
                   "A cut through your ground. White: the ground by itself. Dark: the water in the pipe "
                   "after "
                   "%1 years.")
                   .arg(outcome.temperatures->years)
             : QObject::tr(
                   "A cut through your ground in the four seasons, before the loop is there: at the pipe "
                   "(the row of dots) it is warmer than the air in winter and cooler in summer.");
}

}  // namespace underlawn
