// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/record_troubles.h"

#include <cmath>
#include <limits>
#include <set>

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
              double high, const char* advice) {
    if (!value || (*value >= low && *value <= high)) return;
    const std::string bound = low == kAboveNought
                                  ? "more than " + print(q, 0) + " and at most " + print(q, high)
                                  : "from " + print(q, low) + " to " + print(q, high);
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
    number(thing + ", x", Quantity::length, at->x, -kLargestPlan, kLargestPlan, "Mark it again.");
    number(thing + ", y", Quantity::length, at->y, -kLargestPlan, kLargestPlan, "Mark it again.");
  }
  void add(Trouble t) { troubles_.push_back(std::move(t)); }
  std::vector<Trouble> take() { return std::move(troubles_); }

 private:
  std::string print(Quantity q, double value) const {
    return std::isfinite(value) ? print_quantity(q, value, units_, Fineness::fine) : "not a number";
  }
  UnitSystem units_;
  std::vector<Trouble> troubles_;
};

void find_test(Found& found, const TestRecord& t) {
  found.moment("Start of the pressure test", t.start);
  found.moment("End of the pressure test", t.end);
  found.moment("Date of the gauge's calibration", t.gauge_checked);
  found.moment("Time the joints were covered", t.joints_covered);
  found.number("Full scale of the gauge", Quantity::pressure, t.gauge_range, kAboveNought, 1e7,
               "Read it off the dial.");
  found.number("Air temperature at the test", Quantity::temperature, t.air_temperature, -60, 60,
               "Enter the temperature of the air.");
  found.number("Pressure kept while filling", Quantity::pressure, t.pressure_while_filling, 0, 5e6,
               "Enter what the gauge stood at while the trenches were filled.");
}

void find_flush(Found& found, const FlushReading& f, const std::string& name) {
  found.moment("Start of " + name, f.when);
  found.number("Duration of " + name, Quantity::duration, f.duration, 0, 30 * 86400.0,
               "Enter how long it ran.");
  found.number("Flow of " + name, Quantity::flow, f.flow, kAboveNought, 1, "Enter the flow meter's reading.");
  found.number("Pressure drop of " + name, Quantity::pressure, f.pressure_drop, 0, 5e6,
               "Enter the pressure going in less that coming out.");
  found.number("Water temperature of " + name, Quantity::temperature, f.temperature, -30, 60,
               "Enter the temperature of the water.");
  found.number("Turbidity at " + name, Quantity::count, f.turbidity, 0, 10'000, "Enter it in NTU.");
}

void find_fill(Found& found, const FillRecord& f) {
  found.moment("Time of the fill", f.when);
  found.number("Antifreeze in the product", Quantity::ratio, f.strength, kAboveNought, 1,
               "Enter the share by volume off the drum; 100 % where it is pure.");
  found.number("Product put in", Quantity::fluid_volume, f.put_in, 0, 100, "Enter what was poured in.");
  found.number("Freezing point read", Quantity::temperature, f.freezing_point, -80, 5,
               "Enter the refractometer's reading for this antifreeze.");
  found.number("pH", Quantity::count, f.ph, 0, 14, "Enter the strip's or meter's reading.");
  found.number("Fluid temperature at the fill", Quantity::temperature, f.temperature, -30, 60,
               "Enter the temperature of the fluid.");
  found.number("Pressure left on the loop", Quantity::pressure, f.pressure, 0, 5e6,
               "Enter the gauge's reading.");
}

void find_point(Found& found, const BuiltPoint& p, const std::string& name) {
  for (const Tape& t : p.tapes)
    found.number("Tape from " + t.corner + " to " + name, Quantity::length, t.length, kAboveNought, 1000,
                 "Enter the taped distance.");
  found.place(name, p.at);
}

void find_trench(Found& found, const BuiltTrench& t) {
  const std::string name = "as-built trench " + std::to_string(t.number);
  const Quantity m = Quantity::length;
  if (t.head) find_point(found, *t.head, "the head of " + name);
  if (t.end) find_point(found, *t.end, "the end of " + name);
  for (const BuiltPoint& p : t.bends) find_point(found, p, "a bend of " + name);
  found.number("Length of " + name, m, t.length, kAboveNought, 2000, "Enter the length dug from the head.");
  found.number("Depth of " + name, m, t.depth, kAboveNought, 10, "Enter ground to floor at the head.");
  found.number("Depth at the end of " + name, m, t.end_depth, kAboveNought, 10, "Enter ground to floor.");
  found.number("Pipe in " + name, m, t.pipe, kAboveNought, 20'000, "Enter the pipe laid, return included.");
  found.number("Pitch in " + name, m, t.pitch, kAboveNought, 10, "Enter the advance of a loop.");
  found.moment("Day " + name + " was dug", t.dug_on);
  found.moment("Time " + name + " was filled", t.filled_on);
}

void find_numbers(Found& found, const AsBuilt& built) {
  std::set<int> seen;
  for (const BuiltTrench& t : built.trenches) {
    if (t.number < 1 || t.number > 1000)
      found.add({"record_out_of_bounds", "Number of an as-built trench", std::to_string(t.number),
                 "from 1 to 1000", "Give it the number of its trench on the plan."});
    if (!seen.insert(t.number).second)
      found.add({"as_built_twice", "As-built trench " + std::to_string(t.number), "there twice", "there once",
                 "Delete one of the two."});
  }
}

}  // namespace

std::vector<Trouble> record_troubles(const JobRecord& record, UnitSystem units) {
  Found found(units);
  find_test(found, record.test);
  for (std::size_t i = 0; i < record.flush.size(); ++i)
    find_flush(found, record.flush[i], "flushing " + std::to_string(i + 1));
  find_fill(found, record.fill);
  for (const Signature& s : record.signatures)
    found.moment("Date of the signature of " + (s.name.empty() ? s.role : s.name), s.date);
  return found.take();
}

std::vector<Trouble> as_built_troubles(const AsBuilt& built, UnitSystem units) {
  Found found(units);
  found.moment("Day the as-built was measured", built.measured_on);
  find_numbers(found, built);
  for (const BuiltTrench& t : built.trenches) find_trench(found, t);
  for (const BuiltPoint& p : built.run) find_point(found, p, "the run as dug");
  for (const BuiltLine& l : built.header)
    for (const BuiltPoint& p : l.points) find_point(found, p, "the header as dug");
  const Quantity m = Quantity::length;
  found.number("Depth of the run as dug", m, built.run_depth, kAboveNought, 10, "Enter ground to floor.");
  found.number("Depth of the header as dug", m, built.header_depth, kAboveNought, 10,
               "Enter ground to floor.");
  found.pipe("Pipe of the run as laid", built.run_pipe);
  found.pipe("Pipe of the header as laid", built.header_pipe);
  for (const BuiltCrossing& c : built.crossings) {
    const std::string name = c.name.empty() ? "a crossing" : c.name;
    if (c.place) find_point(found, *c.place, name);
    found.number("Depth of " + name, m, c.depth, 0, 20, "Enter ground to its top.");
    found.number("Depth of our pipe at " + name, m, c.pipe_depth, 0, 20, "Enter ground to the pipe.");
  }
  for (const Photo& p : built.photos) {
    found.moment("Date of photo " + p.file, p.taken);
    found.place("Place of photo " + p.file, p.at);
  }
  return found.take();
}

}  // namespace underlawn
