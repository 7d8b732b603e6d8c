// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/record_troubles.h"

#include <cmath>
#include <limits>
#include <set>

#include "base/say.h"
#include "pipe/pipe_size.h"
#include "plan/record/moment.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kAboveNought = std::numeric_limits<double>::denorm_min();

class Found {
 public:
  explicit Found(UnitSystem units) : units_(units) {}

  // A number that is there lies from `low` to `high`; kAboveNought: more than nought.
  void number(const std::string& thing, Quantity q, const std::optional<double>& value, double low,
              double high, const std::string& advice) {
    if (!value || (*value >= low && *value <= high)) return;
    const std::string bound = low == kAboveNought
                                  ? say("more than {} and at most {}", print(q, 0), print(q, high))
                                  : say("from {} to {}", print(q, low), print(q, high));
    troubles_.push_back({"record_out_of_bounds", thing, print(q, *value), bound, advice});
  }
  void moment(const std::string& thing, const std::string& text) {
    if (text.empty()) return;
    if (const auto m = moment_from_text(text, thing); !m) troubles_.push_back(m.error());
  }
  void pipe(const std::string& thing, const std::string& name) {
    if (name.empty()) return;
    auto size = find_pipe(name);
    if (size) return;
    Trouble t = size.error();
    t.thing = thing;
    troubles_.push_back(std::move(t));
  }
  void place(const std::string& thing, const std::optional<Point>& at) {
    if (!at) return;
    number(thing + ", x", Quantity::length, at->x, -kLargestPlan, kLargestPlan, say("Mark it again."));
    number(thing + ", y", Quantity::length, at->y, -kLargestPlan, kLargestPlan, say("Mark it again."));
  }
  void add(Trouble t) { troubles_.push_back(std::move(t)); }
  std::vector<Trouble> take() { return std::move(troubles_); }

 private:
  std::string print(Quantity q, double value) const {
    return std::isfinite(value) ? print_quantity(q, value, units_, Fineness::fine) : say("not a number");
  }
  UnitSystem units_;
  std::vector<Trouble> troubles_;
};

void find_test(Found& found, const TestRecord& t) {
  found.moment(say("Start of the pressure test"), t.start);
  found.moment(say("End of the pressure test"), t.end);
  found.moment(say("Date of the gauge's calibration"), t.gauge_checked);
  found.moment(say("Time the joints were covered"), t.joints_covered);
  found.number(say("Full scale of the gauge"), Quantity::pressure, t.gauge_range, kAboveNought, 1e7,
               say("Read it off the dial."));
  found.number(say("Air temperature at the test"), Quantity::temperature, t.air_temperature, -60, 60,
               say("Enter the temperature of the air."));
  found.number(say("Pressure kept while filling"), Quantity::pressure, t.pressure_while_filling, 0, 5e6,
               say("Enter what the gauge stood at while the trenches were filled."));
}

void find_flush(Found& found, const FlushReading& f, const std::string& name) {
  found.moment(say("Start of {}", name), f.when);
  found.number(say("Duration of {}", name), Quantity::duration, f.duration, 0, 30 * 86400.0,
               say("Enter how long it ran."));
  found.number(say("Flow of {}", name), Quantity::flow, f.flow, kAboveNought, 1,
               say("Enter the flow meter's reading."));
  found.number(say("Pressure drop of {}", name), Quantity::pressure, f.pressure_drop, 0, 5e6,
               say("Enter the pressure going in less that coming out."));
  found.number(say("Water temperature of {}", name), Quantity::temperature, f.temperature, -30, 60,
               say("Enter the temperature of the water."));
  found.number(say("Turbidity at {}", name), Quantity::count, f.turbidity, 0, 10'000,
               say("Enter it in NTU."));
}

void find_fill(Found& found, const FillRecord& f) {
  found.moment(say("Time of the fill"), f.when);
  found.number(say("Antifreeze in the product"), Quantity::ratio, f.strength, kAboveNought, 1,
               say("Enter the share by volume off the drum; 100 % where it is pure."));
  found.number(say("Product put in"), Quantity::fluid_volume, f.put_in, 0, 100,
               say("Enter what was poured in."));
  found.number(say("Freezing point read"), Quantity::temperature, f.freezing_point, -80, 5,
               say("Enter the refractometer's reading for this antifreeze."));
  found.number("pH", Quantity::count, f.ph, 0, 14, say("Enter the strip's or meter's reading."));
  found.number(say("Fluid temperature at the fill"), Quantity::temperature, f.temperature, -30, 60,
               say("Enter the temperature of the fluid."));
  found.number(say("Pressure left on the loop"), Quantity::pressure, f.pressure, 0, 5e6,
               say("Enter the gauge's reading."));
}

void find_point(Found& found, const BuiltPoint& p, const std::string& name) {
  for (const Tape& t : p.tapes)
    found.number(say("Tape from {} to {}", t.corner, name), Quantity::length, t.length, kAboveNought, 1000,
                 say("Enter the taped distance."));
  found.place(name, p.at);
}

void find_trench(Found& found, const BuiltTrench& t) {
  const std::string name = say("as-built trench {}", std::to_string(t.number));
  const Quantity m = Quantity::length;
  if (t.head) find_point(found, *t.head, say("the head of {}", name));
  if (t.end) find_point(found, *t.end, say("the end of {}", name));
  for (const BuiltPoint& p : t.bends) find_point(found, p, say("a bend of {}", name));
  found.number(say("Length of {}", name), m, t.length, kAboveNought, 2000,
               say("Enter the length dug from the head."));
  found.number(say("Depth of {}", name), m, t.depth, kAboveNought, 10,
               say("Enter ground to floor at the head."));
  found.number(say("Depth at the end of {}", name), m, t.end_depth, kAboveNought, 10,
               say("Enter ground to floor."));
  found.number(say("Pipe in {}", name), m, t.pipe, kAboveNought, 20'000,
               say("Enter the pipe laid, return included."));
  found.number(say("Pitch in {}", name), m, t.pitch, kAboveNought, 10, say("Enter the advance of a loop."));
  found.moment(say("Day {} was dug", name), t.dug_on);
  found.moment(say("Time {} was filled", name), t.filled_on);
}

void find_numbers(Found& found, const AsBuilt& built) {
  std::set<int> seen;
  for (const BuiltTrench& t : built.trenches) {
    if (t.number < 1 || t.number > 1000)
      found.add({"record_out_of_bounds", say("Number of an as-built trench"), std::to_string(t.number),
                 say("from 1 to 1000"), say("Give it the number of its trench on the plan.")});
    if (!seen.insert(t.number).second)
      found.add({"as_built_twice", say("As-built trench {}", std::to_string(t.number)), say("there twice"),
                 say("there once"), say("Delete one of the two.")});
  }
}

}  // namespace

std::vector<Trouble> record_troubles(const JobRecord& record, UnitSystem units) {
  Found found(units);
  find_test(found, record.test);
  for (std::size_t i = 0; i < record.flush.size(); ++i)
    find_flush(found, record.flush[i], say("flushing {}", std::to_string(i + 1)));
  find_fill(found, record.fill);
  for (const Signature& s : record.signatures)
    found.moment(say("Date of the signature of {}", (s.name.empty() ? s.role : s.name)), s.date);
  return found.take();
}

std::vector<Trouble> as_built_troubles(const AsBuilt& built, UnitSystem units) {
  Found found(units);
  found.moment(say("Day the as-built was measured"), built.measured_on);
  find_numbers(found, built);
  for (const BuiltTrench& t : built.trenches) find_trench(found, t);
  for (const BuiltPoint& p : built.run) find_point(found, p, say("the run as dug"));
  const Quantity m = Quantity::length;
  int leg = 0;
  for (const BuiltLine& l : built.header) {
    for (const BuiltPoint& p : l.points) find_point(found, p, say("the header as dug"));
    found.number(say("Depth of leg {} of the header as dug", ++leg), m, l.depth, kAboveNought, 10,
                 say("Enter ground to floor."));
  }
  found.number(say("Depth of the run as dug"), m, built.run_depth, kAboveNought, 10,
               say("Enter ground to floor."));
  found.number(say("Depth of the header as dug"), m, built.header_depth, kAboveNought, 10,
               say("Enter ground to floor."));
  found.pipe(say("Pipe of the run as laid"), built.run_pipe);
  found.pipe(say("Pipe of the header as laid"), built.header_pipe);
  for (const BuiltCrossing& c : built.crossings) {
    const std::string name = c.name.empty() ? say("a crossing") : c.name;
    if (c.place) find_point(found, *c.place, name);
    found.number(say("Depth of {}", name), m, c.depth, 0, 20, say("Enter ground to its top."));
    found.number(say("Depth of our pipe at {}", name), m, c.pipe_depth, 0, 20,
                 say("Enter ground to the pipe."));
  }
  for (const Photo& p : built.photos) {
    found.moment(say("Date of photo {}", p.file), p.taken);
    found.place(say("Place of photo {}", p.file), p.at);
  }
  return found.take();
}

}  // namespace underlawn
