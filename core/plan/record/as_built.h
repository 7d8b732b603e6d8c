// SPDX-License-Identifier: GPL-3.0-or-later
// What was really dug and laid, where it differs from the plan or was measured. What is not said is as
// planned.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plane/point.h"
#include "site/site.h"

namespace underlawn {

struct Tape {
  std::string corner;  // tag of a house corner (house_corners)
  double length = 0;   // m, above 0 to 1000
  bool operator==(const Tape&) const = default;
};

// A point in the field. Two tapes fix it, further ones check it; without two tapes, where it was marked.
struct BuiltPoint {
  std::vector<Tape> tapes;
  bool left = true;         // of the line from the first tape's corner to the second's
  std::optional<Point> at;  // marked on the drawing, or measured by other means
  bool operator==(const BuiltPoint&) const = default;
};

// dug: as the rest says. left_out: not dug at all. added: one more than planned.
enum class TrenchFate { dug, left_out, added };
enum class StopCause { none, rock, water, roots, utility, caving, other };

struct BuiltTrench {
  int number = 0;  // of the planned trench; of an added one, above all planned
  TrenchFate fate = TrenchFate::dug;
  std::optional<BuiltPoint> head, end;  // none: as planned
  std::vector<BuiltPoint> bends;        // from head to end; only where head or end is moved too
  std::optional<double> length;  // m dug from the head, above 0 to 2000; beside a taped end it checks it
  StopCause stopped_by = StopCause::none;
  std::optional<double> depth;      // m, ground to floor at the head, above 0 to 10
  std::optional<double> end_depth;  // m at the end; none: as at the head
  std::optional<double> pipe;       // m really laid, above 0 to 20 000; none: what the pitch makes
  std::optional<double> pitch;    // m as laid, above 0 to 10; none: as planned. With `pipe`, that goes first
  std::string dug_on, filled_on;  // moments
  std::string note;
  bool operator==(const BuiltTrench&) const = default;
};

// A leg of the header.
struct BuiltLine {
  std::vector<BuiltPoint> points;    // none: the leg of the same place in the plan's header
  std::optional<double> depth = {};  // m, ground to floor, above 0 to 10; none: as AsBuilt::header_depth
  bool operator==(const BuiltLine&) const = default;
};

struct BuiltCrossing {
  int feature_id = 0;                           // 0: a thing that is not on the plan
  std::string name;                             // of such a thing
  UtilityKind utility = UtilityKind::electric;  // of such a thing
  std::optional<BuiltPoint> place;              // none: as planned
  std::optional<double> depth;                  // m from ground to its top, 0..20
  std::optional<double> pipe_depth;             // m to our pipe's top there, 0..20
  std::string note;
  bool operator==(const BuiltCrossing&) const = default;
};

struct Photo {
  std::string file;  // a path, from the plan file's folder where it is not absolute
  std::string caption;
  int trench = 0;     // number; 0: of none
  std::string taken;  // moment
  std::optional<Point> at;
  bool operator==(const Photo&) const = default;
};

struct AsBuilt {
  std::string measured_by, measured_on;
  std::vector<BuiltTrench> trenches;  // sorted by number, each once
  std::vector<BuiltPoint> run;      // from the entry point to the header, without the entry; none: as planned
  std::vector<BuiltLine> header;    // none: as planned
  std::optional<double> run_depth;  // m, above 0 to 10
  std::optional<double> header_depth;  // m, of legs without a depth of their own, above 0 to 10
  std::string run_pipe, header_pipe;   // names in pipe_sizes(); empty: as planned
  std::vector<BuiltCrossing> crossings;
  std::vector<Photo> photos;
  std::string note;
  bool operator==(const AsBuilt&) const = default;
};

}  // namespace underlawn
