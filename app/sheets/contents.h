// SPDX-License-Identifier: GPL-3.0-or-later
// What the sheet says, block by block. Numbers are figures of the outcome, by key.
#pragma once

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/block.h"

namespace underlawn::sheet {

// A figure as the sheet shows it; a dash where the outcome has none of that key.
QString shown(const Plan& plan, const Outcome& outcome, const std::string& key);
QString shown_length(const Plan& plan, double metres);
QString shown_pitch(const Plan& plan, double metres);  // finer: half an inch is 10 ft of pipe in a trench
// m from the ground to the floor at the head and at the end of the trench with this index.
struct EndDepths {
  double head = 0, end = 0;
};
EndDepths end_depths(const Outcome& outcome, std::size_t trench);

// "73 + 0.9": whole loops of a coil and the part of one more in which its pipe is used up.
QString shown_loops(double loops);
// "30 min", "5 h 1 min".
QString lasting(double seconds);
// "30 min at 87 psi, then 57 psi": a coil that is covered before the test; empty where none is.
QString coil_watch_words(const Plan& plan, const Outcome& outcome);
// "under it": how our pipes pass what they cross.
QString passing_word(const Plan& plan, const Crossing& crossing);

// "Trench 3 end", "Header 2": how the sheet calls a point to be staked.
QString point_name(const Tie& tie);

// Null where there is nothing to say.
TablePtr tie_table(const Plan& plan, const Outcome& outcome, double points);
BlockPtr trench_table(const Plan& plan, const Outcome& outcome);
BlockPtr crossing_table(const Plan& plan, const Outcome& outcome);
BlockPtr volume_table(const Plan& plan, const Outcome& outcome);
BlockPtr distance_table(const Plan& plan, const Outcome& outcome);
BlockPtr test_table(const Plan& plan, const Outcome& outcome);
BlockPtr coil_watch_table(const Plan& plan, const Outcome& outcome);
BlockPtr pipe_table(const Plan& plan, const Outcome& outcome);
BlockPtr section_block(const Plan& plan, const Outcome& outcome);
BlockPtr digging_sections(const Plan& plan, const Outcome& outcome);
BlockPtr calendar_block(const Plan& plan, const Outcome& outcome);
// One row a step; the lot with heaps and machine's ways; what is done before and after.
BlockPtr order_of_digging(const Plan& plan, const Outcome& outcome);
BlockPtr dig_map(const Plan& plan, const Outcome& outcome);
BlockPtr before_and_after(const Plan& plan, const Outcome& outcome);
BlockPtr cautions(const Plan& plan, const Outcome& outcome);
BlockPtr open_findings(const Plan& plan, const Outcome& outcome);
BlockPtr accepted_findings(const Plan& plan, const Outcome& outcome);
BlockPtr locate_ticket(const Plan& plan, const Outcome& outcome);
// A page of its own for each trench: its place, tapes, depths, coil, cautions and boxes to tick.
std::vector<BlockPtr> trench_pages(const Plan& plan, const Outcome& outcome);
// Walls of the buildings whose corners are taped from, and the entry; how a barn stands to the
// house.
BlockPtr corner_table(const Plan& plan, const Outcome& outcome);
BlockPtr building_table(const Plan& plan, const Outcome& outcome);
// Stakes by a second pair of corners and from a base line; from one another.
BlockPtr check_table(const Plan& plan, const Outcome& outcome);
BlockPtr between_table(const Plan& plan, const Outcome& outcome);
BlockPtr utility_table(const Plan& plan, const Outcome& outcome);
BlockPtr coil_block(const Plan& plan, const Outcome& outcome);
BlockPtr head_block(const Plan& plan, const Outcome& outcome);
BlockPtr header_block(const Plan& plan, const Outcome& outcome);
BlockPtr header_table(const Plan& plan, const Outcome& outcome);
BlockPtr entry_block(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn::sheet
