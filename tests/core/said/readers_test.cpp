// SPDX-License-Identifier: GPL-3.0-or-later
// What readers of files refuse and remark is said, every word of it, in the language of whoever reads it.
#include <random>
#include <regex>

#include "exchange/drawing_json.h"
#include "exchange/read_drawing.h"
#include "files/atomic_file.h"
#include "files/plan_file.h"
#include "files/price_csv.h"
#include "flow/test_readings.h"
#include "ground/probe.h"
#include "house/heat_pump_file.h"
#include "house/load_file.h"
#include "house/weather_file.h"
#include "support/drawing_files.h"
#include "support/mutated_text.h"
#include "support/said.h"
#include "support/sample_plans.h"
#include "survey/deed_calls.h"
#include "survey/field_points.h"

namespace underlawn {
namespace {

using test::Listener;
using test::units_and;
using testing::ElementsAre;
using testing::IsEmpty;

// Hears what `read` says of each text, and of each spoiled at random.
template <class Read>
void spoil(Listener& listener, const std::vector<std::string>& texts, const Read& read, int times = 200) {
  std::mt19937 random(71);
  for (const std::string& text : texts) {
    listener.hear(read(text));
    for (int i = 0; i < times; ++i) listener.hear(read(mutated(text, random)));
  }
}

// Keys and choices of plan files, which are the same in every language: what stands alone in quotes in the
// schema.
std::set<std::string> words_of_plan_files() {
  const std::string schema = *read_file(UNDERLAWN_SOURCE_DIR "/resources/plan.schema.json", 1 << 24);
  static const std::regex alone("\"([A-Za-z]+)\"");
  std::set<std::string> words{"null", "JSON"};
  for (std::sregex_iterator at(schema.begin(), schema.end(), alone), end; at != end; ++at)
    words.insert((*at)[1]);
  return words;
}

}  // namespace

// The test of this test: what is not in the catalogue is heard, and what fills a text as well.
TEST(ReadersSay, AWordThatNobodyTranslatedIsHeard) {
  Listener listener({"ft"});
  listener.hear("3 ft " + say("the plan") + " “any name” time_s");
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  listener.hear(say("{} in line {}", "nowhere", 3));
  EXPECT_THAT(listener.unsaid(), ElementsAre(testing::StartsWith("nowhere in: ")));
}

TEST(ReadersSay, PlanFiles) {
  Listener listener(words_of_plan_files());
  const std::string whole = plan_to_text(sample::half_acre());
  spoil(
      listener,
      {"", "{", "[1, 2]", "{\"a\": 1e999}", "{} {}", "{\"format_version\": 99}",
       "{\"format_version\": 1, \"x\": 1}", std::string(300, '['), whole},
      [](const std::string& text) { return plan_from_text(text); }, 60);
  // Every value in turn of another kind.
  for (std::size_t at = 0; (at = whole.find(": ", at)) != std::string::npos; at += 2) {
    std::string text = whole;
    const std::size_t end = text.find_first_of(",}\n", at);
    for (const char* odd : {"\"odd\"", "-7.5", "[[], 3]", "null", "{}"})
      listener.hear(plan_from_text(std::string(text).replace(at + 2, end - at - 2, odd)));
  }
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  EXPECT_GT(listener.heard(), 500);
}

TEST(ReadersSay, FilesThatAreNotThere) {
  Listener listener({});
  listener.hear(read_file("/no/such/file", 10));
  listener.hear(read_file("/", 10));
  listener.hear(write_file("/", "x"));
  listener.hear(write_file("/no/such/folder/file", "x"));
  EXPECT_THAT(listener.unsaid(), IsEmpty());
}

TEST(ReadersSay, TablesOfPrices) {
  Listener listener(units_and({"each", "day", "UTF", "CSV", "RFC"}));
  spoil(listener,
        {"", "key\n", "key,price\n", "key,price\n,1\n",
         "key,price,unit,pack,date\nx,-1,ell,0,tomorrow\nx,1,,-3,\n", "key,price\n\"open",
         price_csv({}, {}, UnitSystem::us).substr(0, 2500)},
        [](const std::string& text) { return prices_from_csv(text, UnitSystem::us); });
  EXPECT_THAT(listener.unsaid(), IsEmpty());
}

TEST(ReadersSay, TablesOfHeatPumpsAndLoads) {
  Listener listener(units_and({"COP", "mode"}));
  spoil(listener,
        {"", "mode\n", "mode,entering_c,entering_f,capacity_w,power_w\n1,2,3,4,5\n",
         heat_pump_to_csv(generic_heat_pump())},
        [](const std::string& text) { return heat_pump_from_csv(text); });
  std::string loads = "hour,heating_w,cooling_w\n", times = "time,heating_kw\n";
  for (int h = 0; h < 40; ++h) loads += std::to_string(h) + ",0," + std::to_string(h) + "\n";
  for (int h = 0; h < 20; ++h)
    times += "2023-01-01T" + std::string(h < 10 ? "0" : "") + std::to_string(h) + ":00,1\n";
  spoil(listener,
        {"", "a,b\n1,2\n", "heating_w,heating_kw\n1,2\n", "heating_w,ground_w\n1,2\n", loads, times},
        [](const std::string& text) { return loads_from_csv(text, "loads"); });
  EXPECT_THAT(listener.unsaid(), IsEmpty());
}

TEST(ReadersSay, WeatherAndLogs) {
  Listener listener(units_and({"DATA", "PERIODS", "LOCATION", "ln"}));
  std::string weather = "LOCATION,Here,-,USA\n";
  for (int i = 0; i < 6; ++i) weather += "DESIGN CONDITIONS,0\n";
  weather += "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n";
  for (int h = 1; h <= 24; ++h) weather += "1992,1,1," + std::to_string(h) + ",0,flags,-3.5,1\n";
  spoil(listener, {"", "x\n", "LOCATION,x\n", weather},
        [](const std::string& text) { return weather_from_epw(text); });
  std::string probe = "power_w_m = 5.2\ntime_s,temperature_c\n",
              test = "time_min,pressure_psi,temperature_c\n";
  for (int i = 1; i < 12; ++i) probe += std::to_string(10 * i) + ",20." + std::to_string(i) + "\n";
  for (int i = 0; i < 12; ++i) test += std::to_string(5 * i) + "," + std::to_string(90 - i) + ",15\n";
  spoil(listener, {"", "time_s\n1\n", probe}, [](const std::string& text) {
    const auto log = probe_log_from_csv(text);
    return log ? fit_probe(*log).map([](const auto&) {}) : tl::unexpected(log.error());
  });
  spoil(listener, {"", "time_s,time_min\n1,1\n", "time_s\n3\n", test},
        [](const std::string& text) { return readings_from_text(text); });
  EXPECT_THAT(listener.unsaid(), IsEmpty());
}

TEST(ReadersSay, TablesOfPoints) {
  Listener listener(
      units_and({"XML", "gpx", "GPX", "latitude", "longitude", "long", "east", "north", "name"}));
  spoil(listener,
        {"", "name\nx\n", "name,latitude,longitude\nx,91,0\ny,5,5\n", "name,east,north\na,1e9,2\nb,1,2\n"},
        [](const std::string& text) { return points_from_csv(text, UnitSystem::us); });
  spoil(
      listener, {"<gpx/>", "<kml/>", "<gpx><wpt lat=\"1\" lon=\"2\"/><wpt lat=\"x\"/></gpx>"},
      [](const std::string& text) { return points_from_gpx(text); }, 0);
  EXPECT_THAT(listener.unsaid(), IsEmpty());
}

TEST(ReadersSay, DeedCalls) {
  Listener listener(units_and());
  std::mt19937 random(72);
  const std::string good =
      "Beginning at an iron pin; thence N 45°30'15\" E 120.50 ft; thence S 89°61' E 1,234 m; thence along a "
      "curve to "
      "the left with a radius of 50 feet and an arc of 30.20 feet, chord N 10° E 900 ft; thence due west 10 "
      "chains\n"
      "thence 30 ft\nthence N 95° E 3 ft\nAZ 400° 20 ft\nthence north 30 ft (45 ft)\nthence N 3° E 0 ft\n"
      "thence along a curve R=1 ft\nthence S 10° W 20 30\ncontaining 3 acres\n";
  for (int i = 0; i < 400; ++i) {
    const DeedReading reading = read_deed(i == 0 ? good : mutated(good, random), UnitSystem::us);
    for (const DeedNote& n : reading.refusals) listener.hear(n.trouble);
    for (const DeedNote& n : reading.passed) listener.hear(n.trouble);
  }
  EXPECT_THAT(listener.unsaid(), IsEmpty());
  EXPECT_GT(listener.heard(), 800);
}

TEST(ReadersSay, Drawings) {
  Listener listener(units_and({"UTF", "DXF", "GeoJSON", "KML"}));
  const std::string dxf = sample::dxf_text(sample::in_order(sample::surveyed_lot()));
  std::mt19937 random(73);
  const auto hear = [&](const std::string& name, const std::string& bytes) {
    const auto drawing = read_drawing({name, bytes, {}});
    if (!drawing) return listener.hear(drawing.error());
    listener.hear(drawing->remarks);
    for (const LeftOut& l : drawing->left_out) listener.hear(l.why);
  };
  for (const char* bytes : {"", "PK\x03\x04", "AC1032", "%PDF", "hello", "{", "{}", "<kml>", "0\nEOF\n"})
    hear("x", bytes);
  hear("a.dxf", dxf);
  hear("a.dxf", dxf.substr(0, dxf.size() / 2));
  for (int i = 0; i < 40; ++i) hear("a.dxf", mutated(dxf, random));
  listener.hear(drawing_from_json("{"));
  for (std::size_t i = 0; i < listener.unsaid().size(); ++i)
    EXPECT_THAT(listener.unsaid()[i],
                testing::HasSubstr("⟦the reader of the file said: ⟧"));  // a library's words
}

}  // namespace underlawn
