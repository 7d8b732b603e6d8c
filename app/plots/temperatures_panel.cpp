// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/temperatures_panel.h"

#include <QVBoxLayout>

#include "plots/temperature_charts.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kRefreshEvery = 60;  // ms: a drag makes outcomes faster than charts are read

Chart shown(Chart chart, bool stale) {
  chart.stale = stale;
  return chart;
}

}  // namespace

TemperaturesPanel::TemperaturesPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      water_(new ChartView(330)),
      ground_(new ChartView(290)),
      load_(new ChartView(250)) {
  setObjectName("page");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(2 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
  column->setSpacing(2 * kGap);
  for (ChartView* view : {water_, ground_, load_}) column->addWidget(view);
  column->addStretch();
  setFocusProxy(water_);
  soon_.setSingleShot(true);
  connect(&soon_, &QTimer::timeout, this, &TemperaturesPanel::refresh);
  connect(&document, &Document::outcome_changed, this, &TemperaturesPanel::refresh_soon);
}

void TemperaturesPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  refresh();
}

void TemperaturesPanel::refresh_soon() {
  if (isVisible() && !soon_.isActive()) soon_.start(kRefreshEvery);
}

void TemperaturesPanel::refresh() {
  const Outcome* outcome = document_.outcome();
  if (outcome == nullptr) return;
  const Plan& plan = *document_.outcome_plan();
  water_->set_chart(shown(water_chart(plan, *outcome), document_.stale()));
  ground_->set_chart(shown(ground_chart(plan, *outcome), document_.stale()));
  load_->set_chart(shown(load_chart(plan, *outcome), document_.stale()));
}

}  // namespace underlawn
