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

std::vector<SheetPtr> make_sheets(const std::vector<const SheetKind*>& kinds, const Plan& plan,
                                  const Outcome& outcome, const SheetSetup& setup) {
  std::vector<SheetPtr> sheets;
  Plan shown = plan;
  if (setup.units != SheetUnits::as_plan)
    shown.units = setup.units == SheetUnits::us ? UnitSystem::us : UnitSystem::metric;
  const bool spoken = find_language(setup.language) == nullptr || setup.language == language_spoken();
  if (spoken && shown.units == plan.units) {
    for (const SheetKind* kind : kinds) sheets.push_back(kind->make(plan, outcome, setup));
    return sheets;
  }
  // What findings and troubles say is in the language and the units that they were solved in.
  const Catalogue* catalogue = spoken ? spoken_here() : catalogue_of(setup.language);
  const SpeakHere here(catalogue);
  const Outcome said = solve(shown);
  for (const SheetKind* kind : kinds)
    sheets.push_back(std::make_unique<const SaidSheet>(catalogue, kind->make(shown, said, setup)));
  return sheets;
}

SheetPtr make_sheet(const SheetKind& kind, const Plan& plan, const Outcome& outcome,
                    const SheetSetup& setup) {
  return std::move(make_sheets({&kind}, plan, outcome, setup).front());
}

}  // namespace underlawn
