// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/usual_terms.h"

#include <array>

#include "dig/dates.h"

namespace underlawn {

namespace {

constexpr std::array kUsual{kUsualGuarantee,  kUsualPayment,        kUsualValidity,
                            kFormerGuarantee, kFormerPaymentWithNo, kFormerPayment};

// Nothing, a usual term or a day: said in any language.
bool sayable(const std::string& term) {
  for (const char* usual : kUsual)
    if (term == usual) return true;
  return term.empty() || day_number(term).has_value();
}

}  // namespace

bool tells_of_no(const std::string& payment) {
  return payment == kUsualPayment || payment == kFormerPaymentWithNo;
}

bool is_by_thirds(const std::string& payment) {
  return tells_of_no(payment) || payment == kFormerPayment;
}

std::string kept_term(const std::string& typed) {
  for (const char* usual : kUsual)
    if (typed == translated(usual)) return usual;
  return typed;
}

std::vector<std::string> typed_terms(const ProposalWords& words) {
  std::vector<std::string> all;
  const auto look = [&all](const std::string& term, std::string name) {
    if (!sayable(term)) all.push_back(std::move(name));
  };
  look(words.opening, say("Opening"));
  look(words.start, say("Begins"));
  look(words.guarantee, say("Guarantee"));
  look(words.payment, say("Payment"));
  look(words.validity, say("Stands for"));
  return all;
}

}  // namespace underlawn
