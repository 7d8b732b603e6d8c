// SPDX-License-Identifier: GPL-3.0-or-later
// What each verb does; the table in verbs.cpp names them.
#pragma once

#include "cli/verb.h"

namespace underlawn::cli {

Exit run_solve(const Arguments& arguments, const Console& console);
Exit run_check(const Arguments& arguments, const Console& console);
Exit run_figures(const Arguments& arguments, const Console& console);
Exit run_sheet(const Arguments& arguments, const Console& console);
Exit run_response(const Arguments& arguments, const Console& console);
Exit run_hours(const Arguments& arguments, const Console& console);
Exit run_size(const Arguments& arguments, const Console& console);
Exit run_ways(const Arguments& arguments, const Console& console);
Exit run_bill(const Arguments& arguments, const Console& console);
Exit run_stakes(const Arguments& arguments, const Console& console);
Exit run_prices(const Arguments& arguments, const Console& console);
Exit run_calendar(const Arguments& arguments, const Console& console);
Exit run_as_built(const Arguments& arguments, const Console& console);
Exit run_deed(const Arguments& arguments, const Console& console);
Exit run_epanet(const Arguments& arguments, const Console& console);
Exit run_resave(const Arguments& arguments, const Console& console);
Exit run_drawing(const Arguments& arguments, const Console& console);
Exit run_import(const Arguments& arguments, const Console& console);
Exit run_export(const Arguments& arguments, const Console& console);
Exit run_new(const Arguments& arguments, const Console& console);

}  // namespace underlawn::cli
