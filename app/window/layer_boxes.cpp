// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/layer_boxes.h"

#include <QGridLayout>
#include <QLabel>
#include <QSignalBlocker>

#include "window/form.h"
#include "window/theme.h"

namespace underlawn {

namespace {

bool has_kind(const Plan& plan, FeatureKind kind) {
  return std::any_of(plan.site.features.begin(), plan.site.features.end(),
                     [kind](const Feature& f) { return f.kind == kind; });
}

}  // namespace

LayerBoxes::LayerBoxes(Document& document, Canvas& canvas, QWidget* parent)
    : QWidget(parent), document_(document), canvas_(canvas), grid_(new QGridLayout(this)) {
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setHorizontalSpacing(3 * kGap);
  grid_->setVerticalSpacing(kGap / 2);
  setAccessibleName(tr("Shown on the drawing"));
  auto* heading = new QLabel(tr("Shown on the drawing"));
  heading->setObjectName("section");
  grid_->addWidget(heading, 0, 0, 1, 2);
  connect(&document, &Document::plan_changed, this, &LayerBoxes::refresh);
  connect(&canvas, &Canvas::layers_changed, this, &LayerBoxes::refresh);
  for (int i = 0; i < kFeatureKinds; ++i) {
    const auto kind = static_cast<FeatureKind>(i);
    add(
        capital(QString::fromUtf8(kind_name(kind))), [kind](const Layers& l) { return l.shows(kind); },
        [kind](Layers& l, bool on) { l.show(kind, on); });
  }
  add(
      tr("Loop"), [](const Layers& l) { return l.loop; }, [](Layers& l, bool on) { l.loop = on; });
  add(
      tr("Dimensions"), [](const Layers& l) { return l.dimensions; },
      [](Layers& l, bool on) { l.dimensions = on; });
  refresh();
}

QCheckBox* LayerBoxes::add(const QString& name, std::function<bool(const Layers&)> is_on,
                           std::function<void(Layers&, bool)> turn) {
  auto* box = new QCheckBox(name, this);  // with a parent before it is shown: it is no window of its own
  box->setToolTip(tr("Shown, picked and caught on the drawing. Sheets always show everything."));
  connect(box, &QCheckBox::toggled, this, [this, turn](bool on) {
    Layers layers = canvas_.layers();
    turn(layers, on);
    canvas_.set_layers(layers);
  });
  rows_.push_back({box, std::move(is_on)});
  return box;
}

void LayerBoxes::refresh() {
  const Plan& plan = document_.plan();
  int place = 0;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const auto& [box, is_on] = rows_[i];
    const bool on = is_on(canvas_.layers());
    const QSignalBlocker quiet(box);
    box->setChecked(on);
    const bool is_kind = i < static_cast<std::size_t>(kFeatureKinds);
    const bool there = is_kind ? has_kind(plan, static_cast<FeatureKind>(i))
                       : i == static_cast<std::size_t>(kFeatureKinds) ? !plan.site.lot.empty()
                                                                      : !plan.dimensions.empty();
    box->setVisible(there || !on);
    if (!there && on) continue;
    grid_->addWidget(box, 1 + place / 2, place % 2);
    ++place;
  }
}

}  // namespace underlawn
