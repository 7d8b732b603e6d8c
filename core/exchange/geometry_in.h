// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "exchange/drawing.h"

class OGRGeometry;

namespace underlawn {

// The simple shapes that a geometry of the library is made of; curves as chords of at most `chord_degrees`.
// Shapes whose coordinates are no numbers, or too few, are not among them.
std::vector<Shape> shapes_of(const OGRGeometry& geometry, double chord_degrees);

}  // namespace underlawn
