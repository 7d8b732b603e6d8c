// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/sheet_kinds.h"

#include <algorithm>

#include "sheets/as_built_sheet.h"
#include "sheets/details_sheet.h"
#include "sheets/dig_sheet.h"
#include "sheets/materials_sheet.h"
#include "sheets/permit_sheet.h"
#include "sheets/proposal_sheet.h"
#include "sheets/record_sheet.h"
#include "sheets/report_sheet.h"

namespace underlawn {

namespace {

template <class Made>
SheetPtr make(const Plan& plan, const Outcome& outcome, const SheetSetup& setup) {
  return std::make_unique<const Made>(plan, outcome, setup);
}

const SheetKind kKinds[] = {
    {"proposal", QT_TR_NOOP("Proposal"),
     QT_TR_NOOP("For the family: what is dug, what it costs and saves, what may go wrong."),
     make<ProposalSheet>},
    {"permit", QT_TR_NOOP("Permit plan"),
     QT_TR_NOOP("For the permit: the lot with its dimensions and clearances, to scale."), make<PermitSheet>},
    {"dig", QT_TR_NOOP("Dig sheet"), QT_TR_NOOP("For the crew: what is set out, dug and laid, to scale."),
     make<DigSheet>},
    {"details", QT_TR_NOOP("Details"), QT_TR_NOOP("Coil, header, entry and trench, drawn out."),
     make<DetailsSheet>},
    {"materials", QT_TR_NOOP("Materials list"), QT_TR_NOOP("What is bought, with what it is for."),
     make<MaterialsSheet>},
    {"record_form", QT_TR_NOOP("Record form"),
     QT_TR_NOOP("For the test, the flushing and the fill: what is asked, beside empty boxes."),
     make<RecordForm>},
    {"record", QT_TR_NOOP("Record"),
     QT_TR_NOOP("Test, flushing and fill as they were done, and what they tell."), make<RecordSheet>},
    {"as_built", QT_TR_NOOP("As-built"), QT_TR_NOOP("Where everything lies: for whoever digs there later."),
     make<AsBuiltSheet>},
    {"report", QT_TR_NOOP("Calculation report"),
     QT_TR_NOOP("Every number with its formula, inputs and source."), make<ReportSheet>},
};

}  // namespace

std::span<const SheetKind> sheet_kinds() {
  return kKinds;
}

const SheetKind* find_sheet_kind(std::string_view name) {
  const auto at = std::ranges::find(kKinds, name, &SheetKind::name);
  return at == std::end(kKinds) ? nullptr : &*at;
}

}  // namespace underlawn
