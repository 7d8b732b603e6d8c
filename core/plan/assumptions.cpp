// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/assumptions.h"

#include "base/say.h"
#include "cost/comparison.h"

namespace underlawn {

namespace {

using Lines = std::vector<std::string>;

void of_ground(Lines& out, const ThermalWishes& t) {
  out.push_back(
      say("The soil is one, of equal moisture through the year; its k and heat capacity do not change."));
  out.push_back(say("Latent heat of freezing ground is left out: the coldest water is on the safe side."));
  out.push_back(say(
      "Every metre of pipe gives the same heat; real pipe of one fluid temperature does 3 to 7 % better."));
  out.push_back(
      say("The ground's surface follows the yearly wave alone (Kusuda & Achenbach 1965); days and weather do "
          "not reach the pipe."));
  if (t.climate_source == ClimateSource::weather)
    out.push_back(
        say("The ground's surface is as warm as the air over the year: mean, swing and coldest day are the "
            "weather year's."));
  if (t.weather_source == WeatherSource::normals)
    out.push_back(
        say("The weather year is made from monthly normals with a fixed pattern of spells (an assumption of "
            "our own): every year is the same year."));
  else
    out.push_back(say("Every year has the weather of {}.", translated(t.weather_file.name)));
}

void of_house(Lines& out, const Surroundings& s, const ThermalWishes& t) {
  if (!s.ground_hours.empty()) {
    out.push_back(say("The ground's load is read by the hour from {}, the same every year.", t.hours.name));
    return;
  }
  if (t.load_source == LoadSource::hours)
    out.push_back(say("The house's loads are read by the hour from {}, the same every year.", t.hours.name));
  else
    out.push_back(
        say("The house's load is a straight line in the outdoor temperature between its design days and its "
            "balance temperatures (change-point form, ASHRAE Fundamentals)."));
  out.push_back(
      say("The heat pump is {}; between its rows capacity and power are straight lines, beyond its rows the "
          "end value holds.",
          translated(t.unit.name)));
  out.push_back(
      say("An hour with heating and cooling is met by the larger; the entering temperature is that of the "
          "running unit, not the mean of the hour."));
  out.push_back(say("Back-up heat is electric and takes what the unit cannot."));
}

void of_flow(Lines& out, const Outcome& outcome) {
  if (outcome.flow == nullptr) {
    out.push_back(say("The flow is shared equally by the circuits: there is no way to the house yet."));
    return;
  }
  out.push_back(
      say("Flow is the design flow whenever the unit runs; the films are those of the coldest fluid all year "
          "(straight-pipe Nusselt numbers in coils too, on the safe side)."));
  out.push_back(
      say("Bores are average bores, OD - 2.12 OD/DR; the pipe is smooth polyethylene of 0.389 W/(m K)."));
  out.push_back(
      say("The return pipe of a coil that lies flat runs back along the middle of its trench, on the loops; "
          "supply and return lie 0.3 m apart in the header and run trench (common practice, no source)."));
}

void of_cost(Lines& out, const Plan& plan, const Outcome& outcome) {
  if (!outcome.work) return;
  out.push_back(say(
      "The price is what is counted on this plan, rounded up to what is sold, at this plan's price book, "
      "with "
      "overhead, markup, tax and further lines as typed; what was not typed (permits, the way to the lot, "
      "the "
      "heat pump) is not in it. Sand and earth are paid by volume in place."));
  out.push_back(
      say("Days are working days of {} with a {}, a {} and two people for coils and joints (the usual rates "
          "are common practice, no source); rain, rock and waiting for inspections are not in them.",
          print_quantity(Quantity::duration, plan.crew.day_length, plan.units),
          translated(plan.dig.excavator.name), translated(plan.crew.loader.name)));
}

std::string percent(double share) {
  return print_quantity(Quantity::ratio, share, UnitSystem::metric);
}

void of_running(Lines& out, const Plan& plan, const Outcome& outcome) {
  if (outcome.comparison == nullptr) return;
  const Running& r = plan.pricing.running;
  out.push_back(
      say("Running costs look at {} years, each like the year of weather entered; what is paid in a year "
          "falls due at its end and is discounted by {} a year (NIST Handbook 135). Electricity rises by {} "
          "a year, maintenance and what is bought again by {}. Nothing is worth anything at the end; the "
          "loop itself is not bought again.",
          std::to_string(outcome.comparison->years), percent(r.discount), percent(r.electricity_escalation),
          percent(r.inflation)));
  if (!r.others.empty())
    out.push_back(
        say("Every other system gives the same heat and takes away the same cooling; its efficiency is the "
            "season's, as typed. The usual prices and efficiencies are round figures of our own. Emissions "
            "are of burning the fuel and of making the electricity, {} of CO2 a kWh.",
            print_quantity(Quantity::mass, r.electricity_emission, plan.units)));
}

}  // namespace

std::vector<std::string> assumptions(const Plan& plan, const Outcome& outcome) {
  Lines out;
  if (outcome.temperatures != nullptr) {
    of_ground(out, plan.thermal);
    of_house(out, *outcome.surroundings, plan.thermal);
    of_flow(out, outcome);
  }
  of_cost(out, plan, outcome);
  of_running(out, plan, outcome);
  return out;
}

}  // namespace underlawn
