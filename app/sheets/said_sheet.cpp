// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/said_sheet.h"

#include "language/language.h"
#include "plan/solve.h"

namespace underlawn {

namespace {

// Words are made when a sheet is laid out and when it is painted: both in its language.
class SaidSheet : public Sheet {
 public:
  SaidSheet(const Catalogue* catalogue, SheetPtr sheet) : catalogue_(catalogue), sheet_(std::move(sheet)) {}

  QString title() const override {
    const SpeakHere here(catalogue_);
    return sheet_->title();
  }
  int pages() const override { return sheet_->pages(); }
  QPageLayout page_layout() const override { return sheet_->page_layout(); }
  QSizeF page_size() const override { return sheet_->page_size(); }
  int scale() const override { return sheet_->scale(); }
  const std::vector<Trouble>& remarks() const override { return sheet_->remarks(); }
  void paint(QPainter& painter, int page) const override {
    const SpeakHere here(catalogue_);
    sheet_->paint(painter, page);
  }

 private:
  const Catalogue* catalogue_;
  SheetPtr sheet_;
};

}  // namespace

Outcome outcome_in(std::string_view language, const Plan& plan) {
  const SpeakHere here(catalogue_of(language));
  return solve(plan);
}

SheetPtr make_sheet(const SheetKind& kind, const Plan& plan, const Outcome& outcome,
                    const SheetSetup& setup) {
  if (setup.language.empty() || setup.language == language_spoken()) return kind.make(plan, outcome, setup);
  const Catalogue* catalogue = catalogue_of(setup.language);
  const Outcome said = outcome_in(setup.language, plan);
  const SpeakHere here(catalogue);
  return std::make_unique<const SaidSheet>(catalogue, kind.make(plan, said, setup));
}

}  // namespace underlawn
