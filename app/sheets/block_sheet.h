// SPDX-License-Identifier: GPL-3.0-or-later
// A sheet of blocks over a title block: what most sheets are.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/flow.h"
#include "sheets/sheet.h"

namespace underlawn::sheet {

class BlockSheet : public Sheet {
 public:
  struct Name {
    QString title;     // "Materials list"
    QString subtitle;  // of the title block: "MATERIALS LIST, buried coil loop"
  };
  // Columns are as many as asked on upright letter paper, one more on paper half as wide again.
  BlockSheet(Plan plan, Outcome outcome, const SheetSetup& setup, Name name, int columns);

  QString title() const override { return name_.title; }
  int pages() const override { return static_cast<int>(pages_.size()); }
  QPageLayout page_layout() const override;
  QSizeF page_size() const override;
  void paint(QPainter& painter, int page) const override;

 protected:
  void set(const std::vector<Piece>& pieces);
  void set(std::vector<FlowPage> pages) { pages_ = std::move(pages); }
  int columns() const;
  const Plan& plan() const { return plan_; }
  const Outcome& outcome() const { return outcome_; }
  QRectF inner() const;  // room of the blocks

 private:
  Plan plan_;
  Outcome outcome_;
  SheetSetup setup_;
  Name name_;
  int columns_;
  std::vector<FlowPage> pages_{1};
};

}  // namespace underlawn::sheet
