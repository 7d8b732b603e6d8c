// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/sample_outcome.h"

namespace underlawn::sample {

namespace {

Layout layout(const Coil& coil) {
  Layout made;
  made.buildable = {{{{0, 0}, {40, 0}, {40, 40}, {0, 40}}, {{{10, 10}, {10, 20}, {20, 20}}}}};
  made.routable = {{{{0, 0}, {45, 0}, {45, 45}}, {}}};
  made.trenches = {{1, TrenchRole::field, {1, 2}, {31.48, 2}, 0.9144, 1.8288, coil},
                   {2, TrenchRole::supply, {1, 6}, {31.48, 6}, 0.9144, 1.8288, coil}};
  made.header = {{{{0, 2}, {0, 6}}}, 4};
  made.run = {{{0, 4}, {-3, 4}, {-3, 9}}, 8};
  made.crossings = {{9, Conduit::run, {-2, 4}, 1.5, 0.6, 1.524, 0.4572}};
  made.direction = 0.25;
  made.wanted = 4;
  made.fits = 2;
  made.costs = {{{Restriction::Kind::setback, 2, 0}, 1}, {{Restriction::Kind::feature, -1, 5}, 1}};
  made.troubles = {{"too_few_fit", "number of trenches", "2", "4", "Ask for fewer."}};
  return made;
}

}  // namespace

Outcome outcome() {
  Outcome made;
  made.coil = {0.9144, 0.4, 74, 30.48, 243.84, 213.36, 30.48};
  made.layout = layout(made.coil);
  const EarthWork earth{30.48, 50.97, 4.2, 63.7, 46.7, 2.5};
  made.dig.slope = 1.5;
  made.dig.trenches = {earth, earth};
  made.dig.total = earth;
  made.stake_out.corners = {{"A", {5, 5}}, {"B", {9, 5}}};
  made.stake_out.ties = {{"1 head", {1, 2}, "A", "B", 5, 8.54, 0.3, false, "1 head"}};
  made.findings = {{"spacing/1/2",
                    "spacing",
                    Severity::error,
                    "Too close",
                    3,
                    3.6,
                    Quantity::length,
                    "Move one.",
                    "wish",
                    {{{1, 2}, {3, 4}}, {{5, 6}}},
                    true,
                    "agreed"}};
  made.figures.add(
      {"dig.bank_volume", "Excavated volume", 50.97, Quantity::volume, "w d l", "", {"typed.width"}});
  made.figures.add({"typed.width", "Width", 0.9144, Quantity::length, "typed", "", {}});
  made.troubles = {{"pitch_out_of_bounds", "pitch", "0 m", "more than 0 m", "Enter the pitch."}};
  made.fingerprint = "0123456789ab";
  return made;
}

}  // namespace underlawn::sample
