// SPDX-License-Identifier: GPL-3.0-or-later
// The order in which everything is dug, the way each trench is dug, where its spoil lies and how the machine
// comes to it.
//
//            spoil                a heap lies `spoil_off` (2 ft, 1926.651(j)(2)) from the edge, on one side:
//        ____/~~~~\_              never over a trench still to be dug, on header or run, on a house, septic
//   ||  |    |                    parts, a reserve field, ground not to be dug, a trunk, a well, or outside
//   ||<-off->|<-B->|              the lot; on pavement and over roots only where nothing else will do
//   trench
//
// Where trenches lie too close for a heap between them, the spoil of one falls into the one before, whose
// coil is laid and bedded by then: that one is filled before the loop is tested.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dig/dig.h"
#include "dig/dig_wishes.h"
#include "layout/layout.h"
#include "site/site.h"

namespace underlawn {

enum class DigKind { trench, header, run };

struct DigStep {
  DigKind kind = DigKind::trench;
  int trench = 0;         // number of the coil trench; 0: header or run
  int part = 0;           // of header or run where they are dug in parts, from 1; 0: one part
  Polyline line;          // middle line as dug: the bucket begins at its front, the machine backs to its end
  bool from_end = false;  // a coil trench dug from its far end to its head; header and run: toward the house
  double width = 0;       // m, floor
  double depth = 0;       // m, where it is deepest
  double top = 0;         // m across at the ground, there
  Sides sides = Sides::stay_out;
  double slope = 0;       // horizontal per vertical; 0: vertical
  EarthWork work;         // with the sides as chosen
  bool trencher = false;  // too narrow for a bucket

  bool hauled = false;            // its spoil lies nowhere on the lot
  std::string no_room;            // why not, where it should have
  bool spoil_left = false;        // of the way it is dug
  SpoilHeap heap;                 // as it lies; nothing where hauled
  std::vector<Ring> spoil;        // on the lot
  double spoil_dear = 0;          // m2 of it on pavement or over roots
  double cast = 0;                // m from the trench's middle line to the middle of the heap
  std::vector<int> into;          // coil trenches it falls on: laid and bedded before, filled by it
  std::vector<int> filled_first;  // coil trenches whose own heap is in the way: filled before this is dug

  Polyline way;              // of the machine to where it begins; empty where there is none
  bool reached = true;       // there is a way to it
  Polyline truck_way;        // of the trucks that take its spoil off while it is dug, from the street
  Polyline fill_way;         // of those that bring it back when it is filled in: what is open then is another
  bool room_to_end = true;   // the machine has a place to stand all along, off what is open, and at the end
  bool deep_enough = true;   // the machine digs as deep
  bool cast_reached = true;  // the machine casts as far
  std::vector<Point> ladders;
  std::vector<int> crossings;  // places in Layout::crossings, dug by hand
  bool operator==(const DigStep&) const = default;
};

// m that stay free of earth on the floor at the head of a trench filled before the test, where its joints
// come: our own choice, no source.
inline constexpr double kHeadOpen = 1.8288;
// m from its head that no earth is cast: cast there it runs on down its own slope, to kHeadOpen.
double head_uncast(double depth, double repose);
// The opening that stays so long at the head of a coil trench.
Ring head_opening(const DigStep& step, double repose);

std::string step_name(const DigStep& step);  // "Trench 3", "Header, part 2", "Supply run"

struct DigOrder {
  std::vector<DigStep> steps;
  std::optional<Point> access;   // where machines come onto the lot; none where nobody said and no drive does
  bool over_drive = false;       // found from the drive
  Polyline way_out;              // from the last step; empty where there is none
  std::optional<Point> laydown;  // middle of the place for pipe and racks
  double laydown_radius = 0;     // m, free round it
  int filled_early = 0;          // coil trenches filled before the loop is tested
  int hauled = 0;                // steps whose spoil is trucked off, or finds no room
  bool operator==(const DigOrder&) const = default;
  bool complete() const;  // every step is reached and has room for its spoil, or it is hauled as asked
};

// m3 of loose earth trucked off and brought back: of steps hauled.
double hauled_loose(const DigOrder& order);

// Deterministic. No steps where nothing is laid, there is no lot, or `dig` is not of this layout. Of wishes
// the section of the run is read.
DigOrder make_dig_order(const Site& site, const Layout& layout, const DigPlan& dig, const Wishes& wishes,
                        const Ground& ground, const DigWishes& how);

}  // namespace underlawn
