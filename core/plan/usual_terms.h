// SPDX-License-Identifier: GPL-3.0-or-later
// Terms of a proposal as they are commonly agreed (common practice, no source), for the designer to take or
// leave. One that is kept untouched is kept in English and said with translated() where it is read; what was
// typed stays as typed.
#pragma once

#include <string>
#include <vector>

#include "base/say.h"
#include "plan/proposal_words.h"

namespace underlawn {

inline constexpr const char* kUsualGuarantee = mark(
    "We answer for the work as these pages describe it. Pipe and joints in the ground: 25 years. Heat pump "
    "and its fitting: 5 years, parts and labor. Lawn: until grass covers it, watered by you; where it sinks "
    "in the first year, earth and seed once more. Trees: one that dies within two years because of what we "
    "did over its roots we replace with a young one. What else we damage on the lot we make good at our own "
    "cost; we are insured for it.");
inline constexpr const char* kUsualPayment = mark(
    "A third on signing, a third when the loop has held its pressure test, the rest when the lawn is sown "
    "and the heat pump runs. We apply for the permit; if it is refused nothing is dug, and what you paid "
    "comes back less its fee. If you say no to something that costs more, we stop and fill in what is dug; "
    "what was done until then is paid by the lines of our bill, within the price signed, and nothing more.");
// What was usual before; plans that have it are still read in every language.
inline constexpr const char* kFormerGuarantee = mark(
    "We answer for everything on these pages. Pipe and joints in the ground: 25 years. Heat pump and its "
    "fitting: 5 years, parts and labor. Lawn: until it has grown over once, and where it sinks in the first "
    "year earth and seed once more. What we damage on the lot we make good at our own cost; we are insured "
    "for it.");
inline constexpr const char* kFormerPaymentWithNo = mark(
    "A third on signing, a third when the loop has held its pressure test, the rest when the lawn is sown "
    "and the heat pump runs. If you say no to something that costs more, we stop and fill in what is dug; "
    "what was done until then is paid, and nothing more.");
inline constexpr const char* kFormerPayment = mark(
    "A third on signing, a third when the loop has held its pressure test, the rest when the lawn is sown "
    "and the house is warm.");
inline constexpr const char* kUsualValidity = mark("60 days");

// Whether the payment is a usual one that tells what is paid where the owners say no; that is by thirds.
bool tells_of_no(const std::string& payment);
bool is_by_thirds(const std::string& payment);

// What is kept of a term that was typed: a usual one, as it is said here, in English.
std::string kept_term(const std::string& typed);

// The terms that were typed, in one language, so that a sheet in another cannot say them: "Guarantee", as the
// window calls them, in the language spoken.
std::vector<std::string> typed_terms(const ProposalWords& words);

}  // namespace underlawn
