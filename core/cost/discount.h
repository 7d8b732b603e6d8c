// SPDX-License-Identifier: GPL-3.0-or-later
// What money of later years is worth today. Amounts fall due at the end of their year; rates are shares a
// year. Formulas: NIST Handbook 135 (SPV, UPV, UPV*); the GSA criteria print the same as UPW and UPW*.
#pragma once

#include <optional>
#include <vector>

#include "base/say.h"

namespace underlawn {

inline constexpr const char* kDiscountSource = mark("NIST Handbook 135");

// Of 1 in year t: (1 + d)^-t. d > -1.
double single_present_value(double discount, int year);
// Of 1 in each of the years 1..n: ((1 + d)^n - 1)/(d (1 + d)^n); n where d is 0.
double uniform_present_value(double discount, int years);
// Of (1 + e)^t in each of the years 1..n: (1 + e)/(d - e) (1 - ((1 + e)/(1 + d))^n); n where d = e.
double modified_present_value(double discount, double escalation, int years);

// Years until `savings` of years 1, 2, ... have made up for `extra` for good, discounted; within that year in
// proportion. 0 where nothing extra is paid and none is lost later; nothing where they do not, within the
// years there are. Something bought in a later year may undo a payback: then the later one counts.
std::optional<double> payback_years(double extra, const std::vector<double>& savings, double discount);
// extra/savings of a year; nothing where nothing is saved. 0 where nothing extra is paid.
std::optional<double> simple_payback(double extra, double yearly_savings);

}  // namespace underlawn
