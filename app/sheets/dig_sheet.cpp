// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/dig_sheet.h"

#include "sheets/base_line_mark.h"
#include "sheets/contents.h"
#include "sheets/crew_needs.h"

namespace underlawn {

using namespace sheet;

namespace {

// Without what the designer alone can act on; it stands in the window, the report and the permit sheet. Tapes
// that cut thin are marked in their rows.
Outcome for_the_crew(Outcome outcome) {
  std::erase_if(outcome.findings, [](const Finding& f) {
    return f.rule == "laminar_in_winter" || f.rule == "outside_table" || f.rule == "circulator_weak" ||
           f.rule == "tie_cut";
  });
  return outcome;
}

// Each block once, in the order a crew needs them. Beside the ties there is room for what else is narrow.
std::vector<Piece> pieces(const Plan& plan, const Outcome& outcome, bool ties_too) {
  std::vector<Piece> all;
  if (ties_too) add(all, tie_table(plan, outcome, kTiePoints));
  add(all, corner_table(plan, outcome));
  add(all, building_table(plan, outcome));
  add(all, between_table(plan, outcome), false, true);
  add(all, check_table(plan, outcome), true);
  add(all, dig_map(plan, outcome), true);
  add(all, order_of_digging(plan, outcome), true, true);  // all steps before one's eyes
  add(all, before_and_after(plan, outcome), true);
  add(all, locate_ticket(plan, outcome));
  add(all, safety_form(plan, outcome));
  add(all, bring_and_fill(plan, outcome), true);
  add(all, distance_table(plan, outcome), true);
  add(all, trench_table(plan, outcome), true);
  add(all, utility_table(plan, outcome), true);
  add(all, crossing_table(plan, outcome), true);
  add(all, cautions(plan, outcome), true);
  add(all, section_block(plan, outcome), true);
  add(all, digging_sections(plan, outcome));
  add(all, calendar_block(plan, outcome), true, true);
  add(all, who_when(plan, outcome), true, true);
  add(all, coil_block(plan, outcome), true);
  add(all, header_block(plan, outcome), true);
  add(all, head_block(plan, outcome), true);
  add(all, header_table(plan, outcome));
  add(all, fittings_table(plan, outcome));
  add(all, entry_block(plan, outcome));
  add(all, volume_table(plan, outcome), true);
  add(all, pipe_table(plan, outcome));
  add(all, test_table(plan, outcome));
  // Findings are parted where need be; so they fill what is left of a page on which the table has no room.
  add(all, open_findings(plan, for_the_crew(outcome)));
  add(all, coil_watch_table(plan, outcome), false, true);
  add(all, accepted_findings(plan, outcome));
  return all;
}

MapContent content(const Plan& plan, const Outcome& outcome, const SheetSetup& setup) {
  MapContent c;
  c.title = QObject::tr("Dig sheet");
  c.subtitle = QObject::tr("DIG SHEET, buried coil loop");
  c.beside = tie_table(plan, outcome, kTiePoints);
  c.after = pieces(plan, outcome, false);
  c.after_without = pieces(plan, outcome, true);
  if (setup.page_a_trench) c.whole_pages = trench_pages(plan, outcome);
  c.options.corner_tags = c.options.pictures = c.options.sheet = true;
  c.options.over = paint_base_line;
  return c;
}

}  // namespace

DigSheet::DigSheet(const Plan& plan, const Outcome& outcome, const SheetSetup& setup)
    : MapSheet(plan, for_the_crew(outcome), setup, content(plan, outcome, setup)) {}

}  // namespace underlawn
