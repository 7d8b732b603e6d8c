// SPDX-License-Identifier: GPL-3.0-or-later
// What the canvas shows: the picture of the plan, kept until it changes, and over it what moves with the
// pointer.
#include <QPaintEvent>
#include <QPainter>

#include "canvas/canvas.h"
#include "canvas/marks.h"
#include "canvas/pictures.h"

namespace underlawn {

void Canvas::resizeEvent(QResizeEvent*) {
  view_.size = size();
  if (fitted_)
    zoom_to_fit();
  else
    plan_redrawn();
}

void Canvas::paint_picture() {
  const double ratio = devicePixelRatioF();
  const QSize pixels = (QSizeF(size()) * ratio).toSize();
  if (!std::exchange(picture_old_, false) && picture_.size() == pixels) return;
  picture_ = QPixmap(pixels);
  picture_.setDevicePixelRatio(ratio);
  picture_.fill(look_.background);
  QPainter painter(&picture_);
  PaintOptions options = options_;
  options.stale = drawn_ == nullptr && (gesture_.unsettled() || dim_what_is_drawn(ghosts_));
  options.pictures = true;
  options.picture_folder = picture_folder(document_.path());
  if (veil_) options.zones = false;  // their tints would falsify its colours
  paint_plan(painter, document_.plan(), drawn_ != nullptr ? drawn_.get() : document_.outcome(), view_, look_,
             options);
}

void Canvas::paintEvent(QPaintEvent*) {
  paint_picture();
  QPainter painter(this);
  painter.drawPixmap(0, 0, picture_);
  if (veil_) veil_(painter, view_);
  painter.setRenderHint(QPainter::Antialiasing);
  if (guest_) guest_(painter, view_);
  paint_ghosts(painter, ghosts_, view_, look_);
  if (!survey_.empty()) paint_survey(painter, survey_, view_, look_);
  paint_overlay(painter);
  paint_ghost_legend(painter, ghosts_, view_, look_);
}

void Canvas::paint_overlay(QPainter& painter) const {
  const ToolPaint p{painter, view_, look_, pointer_};
  const Plan& shown = document_.plan();
  const bool bare =
      shown.site.lot.empty() && shown.site.features.empty() && shown.pictures.empty() && survey_.empty();
  if (bare && tool_id_ == ToolId::select) paint_welcome(p);
  paint_scale_bar(p, shown.units);
  paint_north(p, shown.site.north);
  paint_selected(p, shown, drawn_ != nullptr ? drawn_.get() : document_.outcome(), picked(),
                 drawn_ == nullptr && tool_id_ == ToolId::select);
  paint_pointed_out(p, pointed_out_);
  if (hasFocus()) {
    painter.setPen(QPen(look_.selection, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
  if (!pointer_inside_ && !now().busy() && !typed_.begun()) return;
  if (held_way_ && now().from()) paint_held_way(p, *now().from(), *held_way_);
  // Under what the tool says: a length may be covered, what stopped the drag may not.
  if (document_.previewing()) paint_live_lengths(p, document_.committed(), shown, picked());
  now().paint(p);
  const bool typing = tool_id_ != ToolId::select || now().busy() || typed_.begun();
  if (typing && pointer_.snap && !typed_.begun()) paint_snap(p, *pointer_.snap, now().from());
  if (key_cursor_ && tool_id_ != ToolId::select) paint_key_cursor(p, pointer_.at);
  if (typing && (typed_.begun() || now().from() || !now().reads_text()))
    paint_readout(p, typed_, now().from(), shown);
}

}  // namespace underlawn
