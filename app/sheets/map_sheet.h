// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet whose first page is the plan to scale, with a table beside it where there is room; blocks on the
// pages after it.
#pragma once

#include <QRectF>

#include "canvas/plan_painter.h"
#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/flow.h"
#include "sheets/plan_page.h"
#include "sheets/sheet.h"

namespace underlawn::sheet {

struct MapContent {
  QString title;     // "Dig sheet"
  QString subtitle;  // of the title block
  TablePtr beside;   // may be null
  // On the pages after: where `beside` stands on the first, and where there was no room for it.
  std::vector<Piece> after, after_without;
  std::vector<BlockPtr> whole_pages = {};  // a page each, last
  PaintOptions options = {};
};

class MapSheet : public Sheet {
 public:
  MapSheet(Plan plan, Outcome outcome, const SheetSetup& setup, MapContent content);

  QString title() const override { return content_.title; }
  int pages() const override { return 1 + static_cast<int>(rest_.size()); }
  int scale() const override { return first_.scale; }
  QPageLayout page_layout() const override;
  QSizeF page_size() const override { return first_.size; }
  const View& view() const { return first_.view; }  // of the plan, in sheet units from map().topLeft()
  QRectF map() const { return first_.map; }         // the plan's frame on the first page, sheet units
  const std::vector<Trouble>& remarks() const override { return remarks_; }
  void paint(QPainter& painter, int page) const override;

 private:
  void paint_first(QPainter& painter) const;

  Plan plan_;
  Outcome outcome_;
  SheetSetup setup_;
  MapContent content_;
  PlanPage first_;
  std::vector<FlowPage> rest_;
  std::vector<Trouble> remarks_;
};

}  // namespace underlawn::sheet
