// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/said_sheet.h"

#include "base/say.h"
#include "language/language.h"
#include "plan/solve.h"
#include "sheets/typed_words.h"

namespace underlawn {

namespace {

// A trouble is put together where it is read, in the language of there, of parts said here: as whole
// sentences it stays in this one.
Trouble said_whole(const Trouble& t) {
  Trouble sentence = t;
  sentence.advice.clear();
  return {t.code, sentence.message(), "", "", t.advice};
}

// Words are made when a sheet is laid out and when it is painted: both in its language.
class SaidSheet : public Sheet {
 public:
  SaidSheet(const Catalogue* catalogue, SheetPtr sheet, const std::vector<Trouble>& more)
      : catalogue_(catalogue), sheet_(std::move(sheet)) {
    const SpeakHere here(catalogue_);
    for (const Trouble& remark : sheet_->remarks()) remarks_.push_back(said_whole(remark));
    remarks_.insert(remarks_.end(), more.begin(), more.end());
  }

  QString title() const override {
    const SpeakHere here(catalogue_);
    return sheet_->title();
  }
  int pages() const override { return sheet_->pages(); }
  QPageLayout page_layout() const override { return sheet_->page_layout(); }
  QSizeF page_size() const override { return sheet_->page_size(); }
  int scale() const override { return sheet_->scale(); }
  const std::vector<Trouble>& remarks() const override { return remarks_; }
  void paint(QPainter& painter, int page) const override {
    const SpeakHere here(catalogue_);
    sheet_->paint(painter, page);
  }

 private:
  const Catalogue* catalogue_;
  SheetPtr sheet_;
  std::vector<Trouble> remarks_;
};

// What was typed is no language's but that of who typed it: said in the window's before it is printed. In a
// sheet of the window's language only what does not read like it.
std::vector<Trouble> as_typed(const SheetKind& kind, const Plan& plan, bool spoken) {
  if (kind.name != "proposal") return {};
  std::string names;
  for (const std::string& name :
       spoken ? typed_in_another_language(plan, std::string(language_spoken())) : typed_in_proposal(plan))
    names += (names.empty() ? "" : ", ") + name;
  if (names.empty()) return {};
  return {
      {"terms_as_typed", say("Typed by hand in the proposal: {}", names), "", "",
       say("They are printed as they were typed. Type them in the language of the sheet for this family, or "
           "take the usual words.")}};
}

}  // namespace

std::vector<SheetPtr> make_sheets(const std::vector<const SheetKind*>& kinds, const Plan& plan,
                                  const Outcome& outcome, const SheetSetup& setup) {
  std::vector<SheetPtr> sheets;
  Plan shown = plan;
  if (setup.units != SheetUnits::as_plan)
    shown.units = setup.units == SheetUnits::us ? UnitSystem::us : UnitSystem::metric;
  const bool spoken = find_language(setup.language) == nullptr || setup.language == language_spoken();
  std::vector<std::vector<Trouble>> typed;  // in the language of the window
  bool any = false;
  for (const SheetKind* kind : kinds) {
    typed.push_back(as_typed(*kind, plan, spoken));
    any = any || !typed.back().empty();
  }
  const bool as_solved = spoken && shown.units == plan.units;
  if (as_solved && !any) {
    for (const SheetKind* kind : kinds) sheets.push_back(kind->make(plan, outcome, setup));
    return sheets;
  }
  // What findings and troubles say is in the language and the units that they were solved in.
  const Catalogue* catalogue = spoken ? spoken_here() : catalogue_of(setup.language);
  const SpeakHere here(catalogue);
  const Outcome said = as_solved ? outcome : solve(shown);
  for (std::size_t i = 0; i < kinds.size(); ++i)
    sheets.push_back(
        std::make_unique<const SaidSheet>(catalogue, kinds[i]->make(shown, said, setup), typed[i]));
  return sheets;
}

SheetPtr make_sheet(const SheetKind& kind, const Plan& plan, const Outcome& outcome,
                    const SheetSetup& setup) {
  return std::move(make_sheets({&kind}, plan, outcome, setup).front());
}

}  // namespace underlawn
