// SPDX-License-Identifier: GPL-3.0-or-later
// What the as-built page shows, as rows and lines.
#pragma once

#include <QStringList>
#include <vector>

#include "plan/record/as_built_mends.h"
#include "plan/record/record_line.h"
#include "window/facts.h"
#include "window/form.h"

namespace underlawn {

// Of a trench; null where nothing is said of it. The other makes a place for it.
const BuiltTrench* find_said(const Plan& plan, int number);
BuiltTrench& said_of(Plan& plan, int number);
std::vector<int> trench_numbers(const Plan& plan, const Outcome* outcome);  // planned and added, rising
int next_trench(const Plan& plan, const Outcome* outcome);
std::string name_of(const Plan& plan, const BuiltCrossing& crossing);

void add_place_facts(std::vector<Fact>& facts, const BuiltPlace& place, const Plan& plan);
std::vector<QStringList> hold_rows(const std::vector<Hold>& holds, const Plan& plan);
std::vector<QStringList> change_rows(const std::vector<Change>& changes, const Plan& plan);
std::vector<RecordLine> finding_rows(const std::vector<Finding>& findings, const Plan& plan);
std::vector<RecordLine> mend_rows(const Mends& mends, const Plan& plan);

// Legs at the end of the header of which nothing is said.
void drop_idle_legs(AsBuilt& built);

// A row for taped points with | between them.
void add_taped_line(Form& form, Document& document, const QString& label, const QString& hint,
                    std::function<std::vector<BuiltPoint>*(Plan&)> where);

}  // namespace underlawn
