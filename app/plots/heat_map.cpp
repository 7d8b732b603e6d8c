// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/heat_map.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QSlider>
#include <algorithm>

#include "canvas/canvas.h"
#include "house/calendar.h"
#include "plots/chart.h"
#include "plots/heat_legend.h"
#include "thermal/loop_geometry.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kDays = 365;
constexpr int kMostPlaces = 12000;
constexpr double kStep = 0.5;  // m
constexpr double kPale = 0.35;

}  // namespace

// All that a day's image needs, of one outcome.
struct HeatMap::Made {
  std::shared_ptr<const Surroundings> surroundings;
  std::shared_ptr<const Temperatures> temperatures;
  Ring lot;
  GroundGrid grid;
  double low = 1e9, high = -1e9;  // deg C, what a day of each month reaches

  double undisturbed(int day) const {
    return undisturbed_temperature(surroundings->climate, surroundings->soil.diffusivity(), grid.depth,
                                   day + 1);
  }
  KernelTable heat(int day) const {
    return heat_by_node(temperatures->simulation.daily_heat, temperatures->pipe,
                        surroundings->soil.diffusivity(), day);
  }
  // One scale for every day and year, so that colours can be compared.
  void find_reach(const std::stop_token& stop) {
    const int days = static_cast<int>(temperatures->simulation.daily_heat.size());
    for (int first : {0, days - kDays})
      for (int day = 15; day < kDays && !stop.stop_requested(); day += 30) {
        const double ground = undisturbed(day);
        const KernelTable heat_then = heat(first + day);
        for (const KernelTable& reach : grid.reach) {
          const double t = ground - ground_fall(reach, heat_then);
          low = std::min(low, t);
          high = std::max(high, t);
        }
      }
  }
  HeatScale scale(UnitSystem units) const {
    const ChartAxis round = quantity_axis({}, Quantity::temperature, units, low, high, 6);
    return {round.low, round.high};
  }
};

HeatMap::HeatMap(Document& document, Canvas& canvas)
    : QFrame(&canvas),
      document_(document),
      canvas_(canvas),
      day_(new QSlider(Qt::Horizontal)),
      year_(new QComboBox),
      date_(new QLabel),
      legend_(new HeatLegend) {
  build();
  hide();
  canvas.installEventFilter(this);
  connect(day_, &QSlider::valueChanged, this, &HeatMap::repaint_image);
  connect(year_, &QComboBox::currentIndexChanged, this, &HeatMap::repaint_image);
  connect(&document, &Document::outcome_changed, this, &HeatMap::take_outcome);
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &HeatMap::repaint_image);
}

HeatMap::~HeatMap() = default;

void HeatMap::build() {
  setObjectName("card");
  setCursor(Qt::ArrowCursor);
  setFixedWidth(520);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3 * kGap, 2 * kGap, 3 * kGap, 2 * kGap);
  column->setSpacing(kGap);
  auto* upper = new QHBoxLayout;
  auto* lower = new QHBoxLayout;
  upper->addWidget(date_, 1);
  upper->addWidget(legend_);
  lower->addWidget(day_, 1);
  lower->addWidget(year_);
  column->addLayout(upper);
  column->addLayout(lower);
  day_->setRange(0, kDays - 1);
  day_->setValue(20);
  day_->setPageStep(30);
  day_->setAccessibleName(tr("Day of the year"));
  year_->setAccessibleName(tr("Year"));
  date_->setWordWrap(true);
}

void HeatMap::set_on(bool on) {
  on_ = on;
  setVisible(on);
  if (!on) {
    worker_ = {};
    asked_ = made_ ? made_->temperatures : nullptr;  // what was being made is asked for again
    canvas_.set_veil({});
    return;
  }
  canvas_.set_veil([this](QPainter& painter, const View& view) { paint(painter, view); });
  take_outcome();
  tell();
  place();
  day_->setFocus(Qt::ShortcutFocusReason);
}

bool HeatMap::current() const {
  return made_ && !document_.stale() && document_.outcome() != nullptr &&
         made_->temperatures == document_.outcome()->temperatures;
}

void HeatMap::take_outcome() {
  if (!on_) return;
  const Outcome* outcome = document_.outcome();
  tell();
  canvas_.update();
  if (outcome == nullptr || document_.stale()) return;
  const Plan& plan = *document_.outcome_plan();
  if (!outcome->temperatures || outcome->temperatures->simulation.daily_heat.empty() ||
      plan.site.lot.empty()) {
    worker_ = {};
    made_.reset();
    asked_.reset();
    image_ = {};
    return tell();
  }
  if (asked_ == outcome->temperatures) {
    if (units_ != plan.units) repaint_image();
    return;
  }
  asked_ = outcome->temperatures;
  auto made = std::make_shared<Made>();
  made->surroundings = outcome->surroundings;
  made->temperatures = outcome->temperatures;
  made->lot = lot_ring(plan.site);
  PipesInGround pipes = pipes_in_ground(outcome->layout, plan.wishes);
  const double raise = outcome->surroundings->soil.conductivity * plan.thermal.surface_resistance;
  worker_ = std::jthread([this, made, pipes = std::move(pipes), raise](std::stop_token stop) {
    const SoilThermal& soil = made->surroundings->soil;
    const double depth = pipes.coils.empty() ? made->temperatures->depth : pipes.coils.front().depth;
    made->grid = make_ground_grid(GroundReach(pipes, {soil.conductivity, soil.diffusivity(), raise}),
                                  bounds(made->lot), depth, kStep, kMostPlaces, stop);
    if (made->grid.reach.empty()) return;
    made->find_reach(stop);
    if (stop.stop_requested()) return;
    QMetaObject::invokeMethod(
        this, [this, made] { take(made); }, Qt::QueuedConnection);
  });
}

void HeatMap::take(std::shared_ptr<const Made> made) {
  if (made->temperatures != asked_) return;
  made_ = std::move(made);
  offer_years(static_cast<int>(made_->temperatures->simulation.daily_heat.size()) / kDays);
  repaint_image();
}

void HeatMap::offer_years(int years) {
  const QSignalBlocker quiet(year_);
  const int before = year_->currentIndex();
  year_->clear();
  for (int y : {1, 10, years})
    if (y <= years && year_->findData(y - 1) < 0) year_->addItem(tr("Year %1").arg(y), y - 1);
  year_->setCurrentIndex(before < 0 ? year_->count() - 1 : std::min(before, year_->count() - 1));
}

void HeatMap::repaint_image() {
  units_ = document_.plan().units;
  tell();
  if (!made_) return;
  const HeatScale scale = made_->scale(units_);
  legend_->set_scale(scale, units_);
  const int first = kDays * year_->currentData().toInt();
  image_ = heat_image(made_->grid, made_->heat(first + day_->value()), made_->undisturbed(day_->value()),
                      scale, theme_now().dark);
  canvas_.update();
}

QString HeatMap::words() const {
  return date_->text();
}

void HeatMap::tell() {
  const QString date = QString::fromStdString(date_of_day(day_->value()));
  const Outcome* outcome = document_.outcome();
  const bool none = outcome != nullptr && !document_.stale() && !outcome->temperatures;
  if (none) return date_->setText(tr("No temperatures: the report says what is missing."));
  if (outcome != nullptr && document_.plan().site.lot.empty())
    return date_->setText(tr("The map lies inside the lot line, which is still to be drawn."));
  legend_->setVisible(made_ != nullptr);
  if (!made_) return date_->setText(tr("Working…"));
  const QString depth = QString::fromStdString(print_quantity(Quantity::length, made_->grid.depth, units_));
  const QString line = tr("<b>%1</b>, %2 down").arg(date, depth);
  date_->setText(current() ? line : line + "<br>" + tr("of the plan before; working…"));
}

void HeatMap::place() {
  adjustSize();
  move((canvas_.width() - width()) / 2, canvas_.height() - height() - 12);
}

void HeatMap::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QFrame::keyPressEvent(event);
  set_on(false);
  emit closed();
}

bool HeatMap::eventFilter(QObject* watched, QEvent* event) {
  if (watched == &canvas_ && event->type() == QEvent::Resize && on_) place();
  return QFrame::eventFilter(watched, event);
}

// Light paper takes the colours as ink does, dark ground as light: the lines of the drawing stay on top.
void HeatMap::paint(QPainter& painter, const View& view) const {
  if (!made_ || image_.isNull()) return;
  const GroundGrid& g = made_->grid;
  const auto corner = [&](double column, double row) {
    return view.to_device(g.corner + Point{(column - 0.5) * g.step, (row - 0.5) * g.step});
  };
  const QPolygonF from(QVector<QPointF>{
      {0, 0}, {double(g.columns), 0}, {double(g.columns), double(g.rows)}, {0, double(g.rows)}});
  const QPolygonF to(
      QVector<QPointF>{corner(0, 0), corner(g.columns, 0), corner(g.columns, g.rows), corner(0, g.rows)});
  QTransform onto;
  if (!QTransform::quadToQuad(from, to, onto)) return;
  QPolygonF lot;
  for (Point p : made_->lot) lot << view.to_device(p);
  QPainterPath clip;
  clip.addPolygon(lot);
  painter.save();
  painter.setClipPath(clip);
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.setCompositionMode(theme_now().dark ? QPainter::CompositionMode_Screen
                                              : QPainter::CompositionMode_Multiply);
  if (!current()) painter.setOpacity(kPale);
  painter.setTransform(onto, true);
  painter.drawImage(QPointF(0, 0), image_);
  painter.restore();
}

}  // namespace underlawn
