// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/split_tool.h"

#include "plan/cut_and_join.h"
#include "plane/region.h"
#include "tools/gesture_paint.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

constexpr double kHitReach = 9;  // px

}  // namespace

QString SplitTool::status() const {
  if (first_) return tr("Click the other end of the cut; the line through both cuts the area. Esc drops it.");
  return hovered_.kind == Kind::nothing ? tr("Split: click a utility or a drawn trench where it is to be "
                                             "cut, or begin a cut through an area.")
                                        : tr("Click to cut the line here.");
}

Selected SplitTool::line_at(Point p) const {
  for (const Selected& s : under(p, kHitReach, false)) {
    if (s.kind == Kind::locked) return s;
    const Feature* f = s.kind == Kind::feature ? find_feature(context_.plan().site, s.id) : nullptr;
    if (f != nullptr && shape_of(f->kind) == FeatureShape::line) return s;
  }
  return {};
}

// The one that is selected where the cut crosses it, else the smallest that is crossed.
int SplitTool::area_at(Point p) const {
  const auto crossed = [&](const Feature& f) {
    if (shape_of(f.kind) != FeatureShape::area || f.points.size() < 3) return false;
    for (std::size_t i = 0; i < f.points.size(); ++i)
      if (distance(Segment{*first_, p}, Segment{f.points[i], f.points[(i + 1) % f.points.size()]}) <
          kSamePlace)
        return true;
    return contains(f.points, 0.5 * (*first_ + p));
  };
  for (const Selected& s : context_.picked()) {
    const Feature* f = s.kind == Kind::feature ? find_feature(context_.plan().site, s.id) : nullptr;
    if (f != nullptr && crossed(*f)) return f->id;
  }
  const Feature* best = nullptr;
  for (const Feature& f : context_.plan().site.features)
    if (crossed(f) && (best == nullptr || area(f.points) < area(best->points))) best = &f;
  return best == nullptr ? 0 : best->id;
}

void SplitTool::move(const Pointer& pointer) {
  hovered_ = first_ ? Selected{} : line_at(pointer.at);
}

void SplitTool::place(Point p) {
  if (!first_) {
    const Selected line = line_at(p);
    if (line.kind == Kind::feature) return keep(edit::line_cut(context_.plan(), line.id, p), line);
    if (line.kind == Kind::locked) return keep(edit::trench_cut(context_.plan(), line.id, p), line);
    first_ = p;
    return;
  }
  const int id = area_at(p);
  if (id == 0) return context_.say(tr("This cut meets no area. Click so that the line crosses one, or Esc."));
  const Result<Plan> cut = edit::area_cut(context_.plan(), id, {*first_, p});
  if (cut) first_.reset();
  keep(cut, {Kind::feature, id});
}

void SplitTool::keep(const Result<Plan>& cut, const Selected& what) {
  if (!cut) return context_.say(QString::fromStdString(cut.error().message()));
  hovered_ = {};
  context_.commit(*cut, tr("Split"));
  context_.pick({what});
}

void SplitTool::paint(const ToolPaint& p) const {
  if (first_) return paint_drawn(p, {*first_}, p.pointer.at, false);
  if (hovered_.kind == Kind::nothing) return;
  const QPointF at = p.view.to_device(p.pointer.at);
  p.painter.setPen(QPen(p.look.selection, 2.4));
  p.painter.drawLine(at - QPointF(7, 7), at + QPointF(7, 7));
  p.painter.drawLine(at - QPointF(7, -7), at + QPointF(7, -7));
}

}  // namespace underlawn
