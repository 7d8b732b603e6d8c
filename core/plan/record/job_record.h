// SPDX-License-Identifier: GPL-3.0-or-later
// What was written down on the job: pressure test, flushing, fill, who saw it. The gauge's readings are in
// LoopTest. Dates and times are texts as typed, "2026-05-14" and "2026-05-14 09:30" (moment.h); core has no
// clock. What was not measured is empty.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace underlawn {

enum class TestResult { not_said, passed, failed };  // as the tester judged; the readings judge beside it
enum class TestMedium { water, air };

struct TestRecord {
  std::string start, end;  // moments: pumping began, last reading
  std::string part;        // what was under test where it was not the whole loop: "trenches 1 to 3"
  TestMedium medium = TestMedium::water;
  TestResult result = TestResult::not_said;
  std::string tester, witness;
  std::string gauge;                  // its id or serial number
  std::string gauge_checked;          // date it was last calibrated
  std::optional<double> gauge_range;  // Pa, full scale, above 0 to 1e7
  std::string weather;
  std::optional<double> air_temperature;  // deg C, -60..60
  std::string joints_covered;             // moment: the first joint was buried
  std::optional<double>
      pressure_while_filling;  // Pa gauge kept on the loop while trenches were filled, 0..5e6
  std::string note;
  bool operator==(const TestRecord&) const = default;
};

enum class FlushDirection { forward, reverse };  // forward: as the loop runs
enum class WaterSeen { not_noted, clear, cloudy, dirty };
enum class AirSeen { not_noted, none, bubbles, slugs };

// One flushing, read at its end.
struct FlushReading {
  std::vector<int> open;  // trench numbers whose circuits were open; empty: all
  FlushDirection direction = FlushDirection::forward;
  std::string when;                     // moment it began
  std::optional<double> duration;       // s, 0..30 days
  std::optional<double> flow;           // m3/s, above 0 to 1
  std::optional<double> pressure_drop;  // Pa between the two flush ports, 0..5e6
  std::optional<double> temperature;    // deg C of the water, -30..60
  WaterSeen water = WaterSeen::not_noted;
  std::optional<double> turbidity;  // NTU, 0..10 000
  AirSeen air = AirSeen::not_noted;
  std::string note;
  bool operator==(const FlushReading&) const = default;
};

struct FillRecord {
  std::string when;  // moment
  std::string filled_by;
  std::string product;  // as on the drum
  std::string batch;
  std::optional<double> strength;        // volumes of antifreeze in one of product, above 0 to 1; none: 1
  std::optional<double> put_in;          // m3 of product, 0..100
  std::optional<double> freezing_point;  // deg C by refractometer, -80..5
  std::string refractometer;             // its id
  std::optional<double> ph;              // 0..14
  std::string inhibitor;                 // which, and what its strip or kit read
  std::string water;                     // where it came from: "well", "town", "delivered, deionised"
  std::optional<double> temperature;     // deg C of the fluid at the fill, -30..60
  std::optional<double> pressure;        // Pa gauge left on the loop, 0..5e6
  bool labelled = false;                 // a label with product and freezing point hangs at the ports
  std::string note;
  bool operator==(const FillRecord&) const = default;
};

struct Signature {
  std::string role;  // "installer", "inspector", "owner"
  std::string name;
  std::string licence;  // number or company
  std::string date;
  bool operator==(const Signature&) const = default;
};

struct JobRecord {
  std::string permit;         // its number
  std::string locate_ticket;  // of the utility locating
  TestRecord test;
  std::vector<FlushReading> flush;
  FillRecord fill;
  std::vector<Signature> signatures;
  std::string note;
  bool operator==(const JobRecord&) const = default;
};

}  // namespace underlawn
