// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/entry_tool.h"

#include "plan/edits.h"

namespace underlawn {

namespace {

bool has_house(const Plan& plan) {
  const auto& all = plan.site.features;
  return std::any_of(all.begin(), all.end(), [](const Feature& f) { return f.kind == FeatureKind::house; });
}

}  // namespace

QString EntryTool::status() const {
  return has_house(context_.plan()) ? tr("Entry point: click the house wall where the supply run goes in.")
                                    : tr("Entry point: draw a house first (H).");
}

void EntryTool::place(Point p) {
  if (!has_house(context_.plan()))
    return context_.say(tr("There is no house to enter. Draw the house first (H), then its entry point."));
  context_.commit(edit::with_entry(context_.plan(), p), tr("Set the entry point"));
  context_.pick({{Selected::Kind::entry}});
  context_.back_to_select();
}

Point EntryTool::steered(Point p) const {
  const Plan moved = edit::with_entry(context_.plan(), p);
  return has_house(moved) ? moved.site.entry->at : p;
}

SnapTargets EntryTool::targets() const {
  Plan houses;
  for (const Feature& f : context_.plan().site.features)
    if (f.kind == FeatureKind::house) houses.site.features.push_back(f);
  return snap_targets(houses);
}

void EntryTool::paint(const ToolPaint& p) const {
  if (!has_house(context_.plan())) return;
  p.painter.setPen(QPen(p.look.selection, 2));
  p.painter.setBrush(p.look.ground);
  p.painter.drawEllipse(p.view.to_device(p.pointer.at), 6, 6);
}

}  // namespace underlawn
