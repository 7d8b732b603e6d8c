// SPDX-License-Identifier: GPL-3.0-or-later
// Trenches of any length between two bounds, for the most metres of trench.
#pragma once

#include "layout/setting.h"
#include "layout/whole.h"

namespace underlawn {

// Lengths that arrangements are sought with, before each trench is drawn out as far as it may go: the longest
// of which `wanted` equal trenches fit, of which one and two fewer do (to 0.1 m), and Wishes::least_length.
// m, longest first.
std::vector<double> lengths_to_seek(const Keeping& keeping, const Coil& coil, int wanted,
                                    const std::stop_token& stop);

// The arrangement joined up, without trenches that no header reaches: once more without those.
Whole joined_alone(const Keeping& keeping, const Completer& completer, Arrangement arrangement);
// The same of one that is joined up already.
Whole joined_alone(const Completer& completer, Whole whole);

// Draws out the far end of each field trench, the first to the last, as far as it is free without a gap: to
// Wishes::most_length, off what keeps trenches out, by the pair rule and off header and run. Heads stay.
void draw_out(const Keeping& keeping, Whole& whole);

// Whether header or run pass the head.
bool reaches(const Connection& connection, Point head);

double metres_of(const std::vector<Segment>& trenches);
double metres_of(const Whole& whole);  // of field trenches

// A run that reaches the house first, then heads joined, then metres, then the measure.
bool more_metres(const Whole& l, const Whole& r);

// The coil of the usual pitch in each field trench that has not the usual length; unchanged where it cannot
// be wound.
void fit_coils(const Wishes& wishes, const Coil& usual, std::vector<Trench>& trenches);

}  // namespace underlawn
