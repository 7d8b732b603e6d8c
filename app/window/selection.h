// SPDX-License-Identifier: GPL-3.0-or-later
// What is selected, shared by drawing, panels and report. Not part of the plan and not undone.
#pragma once

#include <QObject>
#include <vector>

#include "plan/plan.h"

namespace underlawn {

struct Selected {
  enum class Kind {
    nothing,
    lot,
    lot_edge,
    feature,
    entry,
    locked,
    height,
    trench,
    header,
    run,
    dimension
  } kind = Kind::nothing;
  int id = 0;      // feature: its id; trench: its number; locked, height, dimension: its place in the plan's
                   // list; header: its group of trenches, 0: all of it
  int index = -1;  // lot_edge: the corner it starts at; lot, feature, locked, dimension: the point taken hold
                   // of, -1: none
  bool operator==(const Selected&) const = default;
};

// Whether the plan still has it. Trenches come and go with the outcome and are not looked for.
bool is_there(const Plan& plan, const Selected& what);

class Selection : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;
  const Selected& now() const;  // the last one picked, which pages of one thing show; nothing: a blank one
  const std::vector<Selected>& all() const { return all_; }
  void select(Selected what);                       // it alone; a blank one: nothing
  void select_several(std::vector<Selected> what);  // in the order they were picked
  void clear() { select({}); }
  // Asks the drawing to bring these places into view and mark them for a moment.
  void point_out(std::vector<Polyline> places) { emit pointed_out(places); }

 signals:
  void changed();
  void pointed_out(const std::vector<underlawn::Polyline>& places);

 private:
  std::vector<Selected> all_;
};

// Whether both are of the same thing, be it of different corners of it; each edge of the lot line is one.
bool same_thing(const Selected& a, const Selected& b);
bool holds_thing(const std::vector<Selected>& all, const Selected& what);

}  // namespace underlawn
