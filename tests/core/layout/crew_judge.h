// SPDX-License-Identifier: GPL-3.0-or-later
// What a crew sees in a layout, measured on the drawn lines alone; shares no geometry with what it measures.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "layout/layout.h"

namespace underlawn::judge {

// One group of field trenches and the trench that its joints lie in: what of header and run some of its
// circuits use and not all.
struct HeaderPlace {
  int circuits = 0;
  int unjoined = 0;  // heads that no line leads to
  double off_line =
      0;              // m along the trenches by which heads that point the same way miss one line across them
  double aslant = 0;  // m of that trench that lie more than 15 degrees off the right angle to the coils
  double trench = 0;  // m of it
  double spanning = 0;  // m of the shortest tree of straight lines between the heads
  bool side_by_side() const { return off_line < 2e-3 && aslant < 2e-3; }
};
std::vector<HeaderPlace> header_places(const Layout& layout);

// The pipe of a circuit from where its flow parts from the others' and back: its coil and twice the trench
// that no other circuit uses; and with twice the rest of the way to the run's end. m
struct CircuitPipe {
  int number = 0;
  double coil = 0, own = 0, whole = 0;
};
// Of every head that the lines reach.
std::vector<CircuitPipe> circuit_pipes(const Layout& layout);
double spread(const std::vector<CircuitPipe>& pipes, double CircuitPipe::*length);  // (most - least)/mean

// Bends that pipe of that outside diameter and least radius cannot take between walls `width` apart: the arc
// that touches both outer walls leaves the trench at the inner corner, or takes more leg than there is.
int tight_bends(const Polyline& line, double width, double diameter, double radius);

// m of the line for which `in` holds of its middle points, a centimetre apart.
template <class In>
double metres_in(const Polyline& line, const In& in) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point d{line[i].x - line[i - 1].x, line[i].y - line[i - 1].y};
    const double long_ = std::sqrt(d.x * d.x + d.y * d.y);
    const int steps = std::max(1, static_cast<int>(long_ / 0.01));
    for (int k = 0; k < steps; ++k) {
      const double t = (k + 0.5) / steps;
      if (in(Point{line[i - 1].x + t * d.x, line[i - 1].y + t * d.y})) sum += long_ / steps;
    }
  }
  return sum;
}
bool in_ring(const Ring& ring, Point p);
double to_ring(const Ring& ring, Point p);  // m to its outline

}  // namespace underlawn::judge
