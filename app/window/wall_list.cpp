// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/wall_list.h"

#include <QCheckBox>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "plane/region.h"
#include "window/form.h"

namespace underlawn {

namespace {

constexpr double kWorthNaming = 3;  // m

Segment wall_of(const Feature& house, int wall) {
  const auto i = static_cast<std::size_t>(wall);
  return {house.points[i], house.points[(i + 1) % house.points.size()]};
}

// Which of the eight winds the wall looks to.
QString facing(const Site& site, const Feature& house, int wall) {
  static const char* const names[] = {QT_TR_NOOP("North wall"), QT_TR_NOOP("North-east wall"),
                                      QT_TR_NOOP("East wall"),  QT_TR_NOOP("South-east wall"),
                                      QT_TR_NOOP("South wall"), QT_TR_NOOP("South-west wall"),
                                      QT_TR_NOOP("West wall"),  QT_TR_NOOP("North-west wall")};
  const Segment s = wall_of(house, wall);
  const Point left = left_normal(unit(s.b - s.a));
  const bool inward = contains(house.points, 0.5 * (s.a + s.b) + 1e-3 * left);
  const Point out = inward ? -1.0 * left : left;
  const double clockwise = site.north - std::atan2(out.y, out.x);
  const long eighth = std::lround(clockwise / (std::numbers::pi / 4));
  return WallList::tr(names[((eighth % 8) + 8) % 8]);
}

bool is_closed(const Plan& plan, const ClosedSide& side) {
  const auto& closed = plan.wishes.closed;
  return std::find(closed.begin(), closed.end(), side) != closed.end();
}

QString label_of(const Plan& plan, const ClosedSide& side) {
  const Feature& house = *find_feature(plan.site, side.house_id);
  const Segment s = wall_of(house, side.wall);
  const QString wall = facing(plan.site, house, side.wall);
  const QString size = printed(Quantity::length, distance(s.a, s.b), plan);
  const bool one = std::ranges::count(plan.site.features, FeatureKind::house, &Feature::kind) == 1;
  if (one) return WallList::tr("%1, %2").arg(wall, size);
  return WallList::tr("%1: %2, %3").arg(QString::fromStdString(display_name(house)), wall, size);
}

}  // namespace

std::vector<ClosedSide> walls_of(const Site& site) {
  std::vector<ClosedSide> all;
  for (const Feature& f : site.features) {
    if (f.kind != FeatureKind::house || f.points.size() < 3) continue;
    for (int i = 0; i < static_cast<int>(f.points.size()); ++i) {
      const Segment s = wall_of(f, i);
      if (distance(s.a, s.b) >= kWorthNaming) all.push_back({f.id, i});
    }
  }
  return all;
}

WallList::WallList(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), column_(new QVBoxLayout(this)) {
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(2);
  refresh();
}

void WallList::rebuild(std::size_t count) {
  for (QCheckBox* box : std::exchange(boxes_, {})) delete box;
  for (std::size_t i = 0; i < count; ++i) {
    auto* box = new QCheckBox;
    column_->addWidget(box);
    boxes_.push_back(box);
    connect(box, &QCheckBox::clicked, this, [this, i](bool on) { toggle(i, on); });
  }
}

void WallList::refresh() {
  const Plan& plan = document_.plan();
  const auto walls = walls_of(plan.site);
  if (walls.size() != boxes_.size()) rebuild(walls.size());
  for (std::size_t i = 0; i < walls.size(); ++i) {
    boxes_[i]->setText(label_of(plan, walls[i]));
    boxes_[i]->setChecked(is_closed(plan, walls[i]));
  }
}

void WallList::toggle(std::size_t which, bool closed) {
  Plan plan = document_.committed();
  const auto walls = walls_of(plan.site);
  if (which >= walls.size()) return;
  std::erase(plan.wishes.closed, walls[which]);
  if (closed) plan.wishes.closed.push_back(walls[which]);
  document_.commit(std::move(plan), closed ? tr("Close a side") : tr("Open a side"));
}

}  // namespace underlawn
