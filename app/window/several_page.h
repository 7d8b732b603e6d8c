// SPDX-License-Identifier: GPL-3.0-or-later
// The page of several things at once: how many of what, and what they share, to be edited for all.
#pragma once

#include "window/form.h"
#include "window/selection.h"

namespace underlawn {

Form* several_page(Document& document, Selection& selection, const std::vector<Selected>& what);

// Its parts, and what the pages of one thing share with it.
void add_shared_fields(Form& form, Document& document, const std::vector<int>& feature_ids);
void add_kind_choice(Form& form, Document& document, const std::vector<int>& feature_ids);
QStringList utility_names();
QString depths_are_guesses();
QStringList ways_of_dimensions();
QString setback_source(const Plan& plan);

}  // namespace underlawn
