// SPDX-License-Identifier: GPL-3.0-or-later
// An arrangement of field trenches with everything that hangs on it: header, run, the coil in the run.
#pragma once

#include <optional>
#include <stop_token>

#include "layout/candidates.h"
#include "layout/layout.h"

namespace underlawn {

struct Whole {
  std::vector<Segment> field;
  std::vector<std::vector<Point>> bends = {};  // of the first so many of them, between head and end
  std::vector<Polyline> locked;                // middle lines of trenches that lie already, from head to end
  std::optional<Segment> in_run;
  Connection connection;
  double angle = 0;    // rad
  double cost = 0;     // m of plain digging
  double measure = 0;  // what the aim makes least
  double digging = 0;  // the part of header and run in the cost, as Arrangement::estimate guesses it
  int unjoined() const { return static_cast<int>(field.size() + locked.size()) - connection.joined; }
  int count() const { return static_cast<int>(field.size()) + (in_run ? 1 : 0); }
};

// What cannot be proved by distances is not drawn: lines of header and run that are not legal go, and with
// them the legs that start on them.
void drop_illegal_lines(const Site& site, const Wishes& wishes, Whole& whole);

// Slanting crossings of utilities made square where that is legal and worth it, before what is drawn is
// judged. The run's first leg, out of the wall, and legs of the header that pass heads stay as they are.
void square_up_crossings(const Site& site, const Wishes& wishes, Whole& whole);

// Bends of header and run that their pipe cannot take within the trench; each needs a fitting.
int tight_turns(const Wishes& wishes, const Polyline& line);
int tight_turns(const Wishes& wishes, const Connection& connection);
inline constexpr double kFitting = 2;  // m of plain digging that a fitting is worth avoiding

// Header, run and coil in the run for an arrangement round what is held. `wishes.circuits`: without the
// locked ones. `conduits` keep off what is held.
class Completer {
 public:
  Completer(const Keeping& keeping, const Coil& coil, const Conduits& conduits, std::stop_token stop);
  Whole complete(const Arrangement& arrangement) const;
  // The same with a joiner of that arrangement, which may be used again: making it takes as long as a join.
  Whole complete(const Arrangement& arrangement, Joiner& joiner, bool shift) const;
  // The same by the run last shown; its run is empty where that is not to be had.
  Whole complete_by_kept_run(const Arrangement& arrangement, Joiner& joiner) const;
  Joiner joiner_of(const Arrangement& arrangement) const { return {conduits_, arrangement}; }

 private:
  Whole joined_at(const Arrangement& arrangement, Joiner& joiner, std::optional<double> share, bool shift,
                  double at_most) const;
  Whole joined_by(const Arrangement& arrangement, const Joiner& joiner, Connection connection) const;
  double fittings_cost(const Whole& whole) const;
  void join_locked(Whole& whole) const;

  const Keeping keeping_;
  const Coil& coil_;
  const Conduits& conduits_;
  std::stop_token stop_;
};

}  // namespace underlawn
