// SPDX-License-Identifier: GPL-3.0-or-later
// What a family asks, answered from the plan's own figures: the same on paper and at the kitchen table.
#pragma once

#include <QString>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/lot_picture.h"

namespace underlawn {

// "$20,700", "20 700 EUR": round figures, as people speak of money.
QString money(const Plan& plan, double amount);
// Between the two, rounded outward where they differ.
QString money_range(const Plan& plan, double low, double high);

// Lengths and energy as people speak of them: whole feet or tenths of a metre, rounded down; round kWh.
QString family_length(const Plan& plan, double metres);
QString family_energy(double joules);

struct WorkDay {
  QString title;     // "Day 2 of 5"
  QString sentence;  // what happens
  LotMoment moment = LotMoment::digging;
  double dug = 1;  // share of the digging done at its end
};
std::vector<WorkDay> work_days(const Plan& plan, const Outcome& outcome);

struct OtherWay {
  QString name;
  double saved = 0;             // currency in the first year at today's prices, negative where it costs more
  std::optional<double> years;  // until the difference in price is paid back
};

struct FamilyFacts {
  bool laid = false;        // is there a loop to speak of
  double price = 0;         // currency, as the sides are meant to be dug, after incentives
  double price_high = 0;    // with the days kept for rain
  double price_sloped = 0;  // where all sides have to be laid back; 0 where that is the price already
  double incentives = 0;
  bool whole_price = false;  // an offer with tax and markup, not only the estimate of the work
  int days = 0;
  int rain_days = 0;
  double electricity = 0;  // J a year, heat pump, circulator and back-up
  double electricity_low = 0, electricity_high = 0;
  double bill = 0, bill_low = 0, bill_high = 0;  // currency a year
  double backup = 0;                             // J a year
  std::vector<OtherWay> others;
};
// The house's need is known to Spreads::load: the range holds nine years in ten.
FamilyFacts family_facts(const Plan& plan, const Outcome& outcome);

// Sentences.
QString warmth_words(const Plan& plan, const Outcome& outcome);
QString dug_words(const Plan& plan, const Outcome& outcome);
std::vector<QString> put_back_words(const Plan& plan, const Outcome& outcome);
struct Risk {
  QString what, answer;
};
std::vector<Risk> risks(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
