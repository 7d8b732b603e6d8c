// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/page.h"
#include "window/remedy_service.h"

namespace underlawn {

// How far the search for what makes room for missing circuits is.
struct RemedySearch {
  std::optional<double> share;  // 0..1, while it runs
  std::shared_ptr<const RemedyAnswer> answer;
};

// The side report of an outcome, in the order one reads it: what stops it, findings, trenches, header and
// run, pipe, earth, cost.
QString report_html(const Plan& plan, const Outcome& outcome, const Theme& theme,
                    const RemedySearch& remedies = {});

inline constexpr const char* kFindingsAnchor = "findings";

// How the figure came about: its formula, source and inputs, and theirs in turn.
QString trace_html(const Figures& figures, std::string_view key, UnitSystem units, const Theme& theme);

// The parts.
void add_troubles(Page& page, const Outcome& outcome);
// `remedies`: rich text that goes with what says that circuits are missing.
void add_errors(Page& page, const Outcome& outcome, const QString& remedies);
// What was found, where it was found for this plan; else the link that starts the search.
QString remedies_html(const Page& page, const Plan& plan, const RemedySearch& search);
void add_findings(Page& page, const Outcome& outcome);  // the other ones
void add_costs(Page& page, const Outcome& outcome);
void add_trenches(Page& page, const Outcome& outcome);
void add_header_run(Page& page, const Outcome& outcome);
void add_pipe_to_buy(Page& page, const Plan& plan);
void add_temperatures(Page& page);
void add_flow(Page& page, const Outcome& outcome);
void add_assumptions(Page& page, const Plan& plan, const Outcome& outcome);
void add_earth(Page& page);
void add_cost(Page& page, const Plan& plan, const Outcome& outcome);
void add_bill(Page& page, const Plan& plan, const Outcome& outcome);
void add_running(Page& page, const Plan& plan, const Outcome& outcome);

// The mark of a severity, told apart by shape as well as colour.
QString severity_mark(Severity severity);
QString severity_word(Severity severity);
QColor severity_ink(Severity severity, const Theme& theme);

}  // namespace underlawn
