// SPDX-License-Identifier: GPL-3.0-or-later
// Houses of chance, oblong and L-shaped, turned any way and drawn either way round.
#pragma once

#include <random>

#include "site/site.h"

namespace underlawn::sample {

Ring random_house(std::mt19937& random, Point around);
Feature house_of(int id, Ring ring);

}  // namespace underlawn::sample
