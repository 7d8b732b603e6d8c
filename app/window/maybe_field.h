// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "window/form.h"

namespace underlawn {

// A row for a number that may be missing: an empty field is none.
TypedField* maybe_number(Form& form, Document& document, const QString& label, Quantity quantity,
                         Form::Bound<std::optional<double>> bound);

// A row for a line of words kept as they are typed, blanks at the ends dropped.
TypedField* words_row(Form& form, const QString& label, std::function<std::string*(Plan&)> where,
                      const QString& what);

// The same for a moment: it is shown as print_moment writes it; what is none is said under the field.
TypedField* moment_row(Form& form, Document& document, const QString& label,
                       std::function<std::string*(Plan&)> where, const QString& what);

}  // namespace underlawn
