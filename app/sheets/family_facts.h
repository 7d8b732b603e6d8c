// SPDX-License-Identifier: GPL-3.0-or-later
// What a family asks, answered from the plan's own figures: the same on paper and at the kitchen table.
#pragma once

#include <QDate>
#include <QString>
#include <vector>

#include "plan/outcome.h"
#include "plan/plan.h"
#include "sheets/lot_picture.h"

namespace underlawn {

// "$20,708", "20,708 EUR": whole units. What is to be rounded more is rounded in FamilyFacts, so that the
// printed figures add up.
QString money(const Plan& plan, double amount);
QString price_of_unit(const Plan& plan, double price);  // "$2.95"
QString money_range(const Plan& plan, double low, double high);

// Lengths and energy as people speak of them: whole feet or tenths of a metre, rounded down; round kWh.
QString family_length(const Plan& plan, double metres);
QString family_energy(double joules);
QString family_area(const Plan& plan, double square_metres);   // "6,270 sq ft"
QString family_volume(const Plan& plan, double cubic_metres);  // of liquid: "21 gal"
QString family_number(double number);                          // three figures that matter, grouped

// A range that is nine years in ten of what is not known: 0.15 less, 0.18 more.
struct Spread {
  double less = 0, more = 0;  // shares
};
Spread spread_of_need();

// A day of the work by the crew's calendar; what it says of trenches is what the picture at `at` shows.
struct WorkDay {
  QString title;     // "Day 2 of 5"
  QString sentence;  // what happens, and what is open at its end
  LotMoment moment = LotMoment::digging;
  double dug = 1;            // share of the digging done at its end
  std::optional<double> at;  // s of working time at its end
};
std::vector<WorkDay> work_days(const Outcome& outcome);

// "trench 1, part of trench 2, the smaller trench"; "" where there is none.
QString open_then(const Outcome& outcome, double at);

// The last day of the work begun on `start`, no day lost; and with those kept for rain.
struct LastDays {
  QDate first, last, with_rain;
};
std::optional<LastDays> last_days(const Plan& plan, const Outcome& outcome, const QDate& start);
QString days_off(const Plan& plan);  // "Saturday, Sunday"; "" where none is free

struct Range {
  double low = 0, high = 0;
};

// Another way to heat and cool that was described, against the loop.
struct OtherWay {
  QString name, fuel;
  double first = 0;             // currency, to buy
  double bill = 0;              // currency in the first year at today's prices, upkeep with it
  double upkeep = 0;            // of it, in steps
  Range bills;                  // the same over the spread of the need, in steps
  double saved = 0;             // currency in the first year, negative where the loop costs more
  Range saves;                  // bills less the loop's, as printed
  std::optional<double> years;  // until the difference in price is paid back
  // The difference in price by what is saved, both as printed: no interest, no rise of prices, nothing bought
  // again. None where less than nothing may be saved, or the heat pump has no price.
  std::optional<Range> payback;
};

struct FamilyFacts {
  bool laid = false;         // is there a loop to speak of
  double price = 0;          // whole currency: what the bill comes to, after incentives; with the unit
  double unit = 0;           // of it the heat pump and what belongs to it indoors; 0 where nobody gave it
  double incentives = 0;     // whole currency, taken off
  bool whole_price = false;  // the heat pump is in it, or lines of the designer's own are
  int days = 0;
  // What may be added to the price, each rounded up to whole currency.
  int rain_days = 0;      // kept for rain, charged where they are lost
  double rain_day = 0;    // what one costs
  double rain = 0;        // all of them
  double price_high = 0;  // with the days kept for rain
  double at_most = 0;     // that too, and without any incentive
  double sloped_more =
      0;  // where all sides have to be laid back, which is asked for; 0 where they are already
  double laid_back_in_all = 0;                       // at_most with that; 0 likewise
  int laid_back_days = 0;                            // working days more with that; 0: not known
  double laid_back_lawn = 0;                         // m2 more; 0: not known
  double electricity = 0;                            // J a year, heat pump, circulator and back-up
  double electricity_low = 0, electricity_high = 0;  // over the spread, in steps
  double bill = 0;                                   // currency a year, electricity alone
  double step = 1;                                   // that yearly amounts are rounded to
  double bill_low = 0, bill_high = 0;                // in steps, of the rounded electricity
  double upkeep = 0;                                 // currency a year, in steps
  double backup = 0;                                 // J a year
  bool payback_known = true;                         // the heat pump has a price
  std::vector<OtherWay> others;
};
// The house's need is known to Spreads::load: nine times in ten it is within the range.
FamilyFacts family_facts(const Plan& plan, const Outcome& outcome);

// The evening on which most coil trenches are open, in whole or in part.
struct MostOpen {
  double at = 0;  // s of working time
  int day = 1;
  int trenches = 0;  // open then
  int ever = 0;      // most at any time of any day
};
std::optional<MostOpen> most_open(const Outcome& outcome);

// How many nights each trench stands open, those over days without work told; "" without a calendar. Then why
// the longest does.
QString nights_words(const Outcome& outcome);

// Sentences.
QString price_words(const Plan& plan, const FamilyFacts& facts);  // what the price is, and what bounds it
struct PriceChange {
  QString lead, words;
};
// The price that is signed, what may change it and by how much, and that nothing else does.
std::vector<PriceChange> price_changes(const Plan& plan, const FamilyFacts& facts);
QString spread_words();                 // what the ranges are
QString pays_back_words();              // how the years follow from the figures, and what is not in them
QString sides_words(const Plan& plan);  // how the pipe is laid without anybody in danger
QString earth_words(const Plan& plan, const Outcome& outcome);
QString fluid_words(const Plan& plan, const Outcome& outcome);
QString warmth_words(const Plan& plan, const Outcome& outcome);
QString dug_words(const Plan& plan, const Outcome& outcome);
bool answered_for(const Plan& plan);        // somebody said who answers for what
bool trees_answered_for(const Plan& plan);  // what was said names trees, or one of them
std::vector<QString> put_back_words(const Plan& plan, const Outcome& outcome);
struct Risk {
  QString what, answer;
};
std::vector<Risk> risks(const Plan& plan, const Outcome& outcome);

}  // namespace underlawn
