// SPDX-License-Identifier: GPL-3.0-or-later
// The proposal for the homeowner: what is done to the lot, what it costs and saves, what may go wrong.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/family_facts.h"
#include "sheets/flow.h"
#include "sheets/sheet.h"

namespace underlawn {

class ProposalSheet : public Sheet {
 public:
  ProposalSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup);
  QString title() const override { return QObject::tr("Proposal"); }
  int pages() const override { return static_cast<int>(pages_.size()); }
  QPageLayout page_layout() const override;
  QSizeF page_size() const override;
  void paint(QPainter& painter, int page) const override;

 private:
  // The page is set as if on letter or A4, and drawn larger on larger paper.
  double larger() const;
  QRectF inner() const;
  struct Setting {
    double points;               // of what is told
    int near_table, near_words;  // pages of what is near (ProposalPage)
    bool tight;
  };
  std::vector<sheet::FlowPage> laid_out(const Setting& how) const;

  Plan plan_;
  Outcome outcome_;
  FamilyFacts facts_;
  SheetSetup setup_;
  std::vector<sheet::FlowPage> pages_;
};

}  // namespace underlawn
