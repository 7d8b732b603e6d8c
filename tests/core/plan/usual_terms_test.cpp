// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/usual_terms.h"

#include <gtest/gtest.h>

#include "support/catalogues.h"

namespace underlawn {
namespace {

TEST(UsualTerms, WhatWasTypedIsToldAndWhatIsUsualIsNot) {
  ProposalWords words;
  EXPECT_TRUE(typed_terms(words).empty());
  words.guarantee = kUsualGuarantee;
  words.payment = kUsualPayment;
  words.validity = kUsualValidity;
  words.start = "2027-05-17";
  EXPECT_TRUE(typed_terms(words).empty());
  words.start = "in May";
  words.payment += " Or in cash.";
  EXPECT_EQ(typed_terms(words), (std::vector<std::string>{"Begins", "Payment"}));
}

TEST(UsualTerms, AUsualTermTypedBackInAnotherLanguageIsKeptInEnglish) {
  EXPECT_EQ(kept_term("By the week"), "By the week");
  const SpeakHere here(&test::marking_language(UNDERLAWN_SPANISH));
  const std::string said = translated(kUsualPayment);
  ASSERT_NE(said, kUsualPayment);
  EXPECT_EQ(kept_term(said), kUsualPayment);
  EXPECT_EQ(kept_term("By the week"), "By the week");
}

// Plans made before keep their terms, which are still said in any language.
TEST(UsualTerms, FormerOnesAreStillUsual) {
  ProposalWords words;
  words.guarantee = kFormerGuarantee;
  for (const char* payment : {kFormerPayment, kFormerPaymentWithNo}) {
    words.payment = payment;
    EXPECT_TRUE(typed_terms(words).empty());
    EXPECT_TRUE(is_by_thirds(payment));
  }
  EXPECT_FALSE(tells_of_no(kFormerPayment));
  EXPECT_TRUE(tells_of_no(kFormerPaymentWithNo));
  EXPECT_TRUE(tells_of_no(kUsualPayment));
  EXPECT_FALSE(is_by_thirds("A third now, the rest in May"));
}

}  // namespace
}  // namespace underlawn
