// SPDX-License-Identifier: GPL-3.0-or-later
// Sums as they are printed: rounded so that whoever adds the printed column up gets the printed total.
#pragma once

#include <vector>

#include "cost/bill.h"

namespace underlawn {

// Each part rounded to a multiple of `step` > 0, so that together they are `total` rounded to it: what
// rounding leaves goes to the parts with the largest remainders. Each is within one step of what it was where
// the parts add up to the total. Order of equals: the first.
std::vector<double> rounded_to_add_up(const std::vector<double>& parts, double total, double step);

// The same bill with every sum in hundredths: lines add up to the cost, cost and what is put on it to the
// price, price less incentives to the net.
Bill in_cents(Bill bill);

}  // namespace underlawn
