// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "base/say.h"
#include "base/typed_text.h"
#include "files/json_text.h"
#include "files/migrate.h"
#include "files/plan_file.h"
#include "files/plan_keys.h"
#include "files/plan_mend.h"
#include "plane/region.h"

namespace underlawn {

namespace {

using Remarks = std::vector<Trouble>;

constexpr std::size_t kMostNumbers = 100'000;  // in one list: eleven years of hours
constexpr std::size_t kMostTexts = 1000;

std::string shown(const Json& json) {
  if (json.is_array()) return say("a list of {}", std::to_string(json.size()));
  if (json.is_object()) return say("an object");
  return json.is_string() ? in_quotes(json.get_ref<const std::string&>()) : json.dump();
}

// Each `read` leaves the value alone and says what was expected when the JSON is of another kind; "" when all
// is well.

std::string read(const Json& json, double& value) {
  if (!json.is_number()) return say("a number");
  value = json.get<double>();
  return "";
}

std::string read(const Json& json, int& value) {
  const double number = json.is_number() ? json.get<double>() : std::nan("");
  constexpr double kMost = std::numeric_limits<int>::max();
  if (!(std::abs(number) <= kMost) || number != std::floor(number)) return say("a whole number");
  value = static_cast<int>(number);
  return "";
}

std::string read(const Json& json, bool& value) {
  if (!json.is_boolean()) return say("true or false");
  value = json.get<bool>();
  return "";
}

std::string read(const Json& json, std::string& value) {
  if (!json.is_string()) return say("a text");
  value = json.get<std::string>();
  return "";
}

std::string read(const Json& json, SharedText& value) {
  if (!json.is_string()) return say("a text");
  value = SharedText(json.get<std::string>());
  return "";
}

std::string read(const Json& json, Point& value) {
  if (!json.is_array() || json.size() != 2 || !json[0].is_number() || !json[1].is_number())
    return say("two numbers [x, y]");
  value = {json[0].get<double>(), json[1].get<double>()};
  return "";
}

std::string read(const Json& json, std::vector<Point>& value) {
  const std::string expected =
      say("a list of 1 to {} points [x, y], each of two numbers", std::to_string(kMostRingPoints));
  if (!json.is_array() || json.empty() || json.size() > kMostRingPoints) return expected;
  std::vector<Point> points(json.size());
  for (std::size_t i = 0; i < json.size(); ++i)
    if (!read(json[i], points[i]).empty()) return expected;
  value = std::move(points);
  return "";
}

std::string read(const Json& json, std::vector<double>& value) {
  const std::string expected = say("a list of at most {} numbers", std::to_string(kMostNumbers));
  if (!json.is_array() || json.size() > kMostNumbers) return expected;
  std::vector<double> numbers(json.size());
  for (std::size_t i = 0; i < json.size(); ++i)
    if (!read(json[i], numbers[i]).empty()) return expected;
  value = std::move(numbers);
  return "";
}

std::string read(const Json& json, std::vector<int>& value) {
  const std::string expected = say("a list of at most {} whole numbers", std::to_string(kMostTexts));
  if (!json.is_array() || json.size() > kMostTexts) return expected;
  std::vector<int> numbers(json.size());
  for (std::size_t i = 0; i < json.size(); ++i)
    if (!read(json[i], numbers[i]).empty()) return expected;
  value = std::move(numbers);
  return "";
}

std::string read(const Json& json, std::vector<std::string>& value) {
  const std::string expected = say("a list of at most {} texts", std::to_string(kMostTexts));
  if (!json.is_array() || json.size() > kMostTexts) return expected;
  std::vector<std::string> texts(json.size());
  for (std::size_t i = 0; i < json.size(); ++i)
    if (!read(json[i], texts[i]).empty()) return expected;
  value = std::move(texts);
  return "";
}

template <std::size_t N>
std::string read(const Json& json, std::array<double, N>& value) {
  std::vector<double> numbers;
  if (!read(json, numbers).empty() || numbers.size() != N) return say("{} numbers", std::to_string(N));
  std::copy(numbers.begin(), numbers.end(), value.begin());
  return "";
}

template <class T>
std::string read(const Json& json, std::optional<T>& value) {
  T there{};
  std::string expected = read(json, there);
  if (expected.empty()) value = there;
  return expected;
}

// Without these an element is nothing; it is then left out as a whole.
std::set<std::string> essential(const LotCorner&) {
  return {"at_m"};
}
std::set<std::string> essential(const Feature&) {
  return {"kind", "points_m"};
}
std::set<std::string> essential(const SpotHeight&) {
  return {"at_m", "height_m"};
}
std::set<std::string> essential(const EntryPoint&) {
  return {"house_id", "at_m"};
}
std::set<std::string> essential(const ClearanceRule&) {
  return {"kind", "trench_m", "run_m"};
}
std::set<std::string> essential(const Sighting&) {
  return {"name", "method"};
}
std::set<std::string> essential(const GridTie&) {
  return {"east_m", "north_m", "at_m"};
}
std::set<std::string> essential(const GivenTrench&) {
  return {"head_m", "end_m"};
}
std::set<std::string> essential(const Segment&) {
  return {"head_m", "end_m"};
}
std::set<std::string> essential(const GroupHeader&) {
  return {"group", "head_m", "end_m"};
}
std::set<std::string> essential(const ClosedSide&) {
  return {"house_id", "wall"};
}
std::set<std::string> essential(const Surface&) {
  return {"area_m2", "u_value_w_m2k"};
}
std::set<std::string> essential(const CurvePoint&) {
  return {"flow_m3_s", "head_m"};
}
std::set<std::string> essential(const PressureReading&) {
  return {"time_s", "pressure_pa"};
}
std::set<std::string> essential(const PerformancePoint&) {
  return {"entering_c", "capacity_w", "power_w"};
}
std::set<std::string> essential(const Dimension&) {
  return {"from_m", "to_m"};
}
std::set<std::string> essential(const Picture&) {
  return {"at_m", "width_m", "height_m"};
}
std::set<std::string> essential(const MapPlace&) {
  return {"latitude_deg", "longitude_deg"};
}
std::set<std::string> essential(const PriceRow&) {
  return {"key", "unit"};
}
std::set<std::string> essential(const ExtraLine&) {
  return {"item", "price"};
}
std::set<std::string> essential(const Incentive&) {
  return {"kind", "amount"};
}
std::set<std::string> essential(const OtherSystem&) {
  return {"heat_content_j", "price", "efficiency"};
}
std::set<std::string> essential(const FlushReading&) {
  return {};
}
std::set<std::string> essential(const Signature&) {
  return {};
}
std::set<std::string> essential(const Tape&) {
  return {"corner", "length_m"};
}
std::set<std::string> essential(const BuiltPoint&) {
  return {};
}
std::set<std::string> essential(const BuiltTrench&) {
  return {"number"};
}
std::set<std::string> essential(const BuiltLine&) {
  return {};
}
std::set<std::string> essential(const BuiltCrossing&) {
  return {"feature_id"};
}
std::set<std::string> essential(const Photo&) {
  return {"file"};
}
std::set<std::string> essential(const Acceptance&) {
  return {"finding"};
}

// What an element is called, by the key of its list.
constexpr std::pair<std::string_view, const char*> kElements[] = {
    {"flush", mark("flushing {} in the file")},
    {"signatures", mark("signature {} in the file")},
    {"tapes", mark("tape {} in the file")},
    {"trenches", mark("as-built trench {} in the file")},
    {"bends", mark("as-built bend {} in the file")},
    {"run", mark("as-built run point {} in the file")},
    {"header", mark("as-built header line {} in the file")},
    {"points", mark("as-built header point {} in the file")},
    {"crossings", mark("as-built crossing {} in the file")},
    {"photos", mark("photo {} in the file")},
    {"lot", mark("lot corner {} in the file")},
    {"features", mark("feature {} in the file")},
    {"rules", mark("clearance rule {} in the file")},
    {"notebook", mark("notebook point {} in the file")},
    {"heights", mark("spot height {} in the file")},
    {"heating", mark("heating point {} in the file")},
    {"cooling", mark("cooling point {} in the file")},
    {"surfaces", mark("surface {} in the file")},
    {"given", mark("given trench {} in the file")},
    {"locked", mark("locked trench {} in the file")},
    {"closed", mark("closed side {} in the file")},
    {"kept", mark("kept trench {} in the file")},
    {"readings", mark("reading {} in the file")},
    {"pictures", mark("picture {} in the file")},
    {"curve", mark("pump curve point {} in the file")},
    {"rows", mark("price {} in the file")},
    {"extras", mark("line of your own {} in the file")},
    {"incentives", mark("incentive {} in the file")},
    {"others", mark("other system {} in the file")},
    {"dimensions", mark("dimension {} in the file")},
};

std::string element_name(std::string_view list, std::size_t index, const Json& element) {
  const auto* row = std::ranges::find(kElements, list, &std::pair<std::string_view, const char*>::first);
  const char* called = row != std::end(kElements) ? row->second : mark("accepted finding {} in the file");
  const std::string number = std::to_string(index + 1);
  std::string text = words::filled(translated(called), &number, 1);
  if (!element.is_object() || list != "features") return text;
  const auto id = element.find("id");
  if (id != element.end() && id->is_number()) text = say("{}, id {}", text, id->dump());
  const auto name = element.find("name");
  if (name != element.end() && name->is_string() && !name->get_ref<const std::string&>().empty())
    text = say("{}, {}", text, shown(*name));
  return text;
}

// Fills in what it is shown from an object, and remarks on what it could not use.
class Reader {
 public:
  Reader(const Json& object, std::string thing, Remarks& remarks)
      : object_(object), thing_(std::move(thing)), remarks_(remarks) {}

  template <class T>
  void key(const char* name, T& value) {
    key_if(true, name, value);
  }
  template <class T>
  void key(const char* name, std::optional<T>& value) {
    key_if(false, name, value);
  }
  template <class T>
  void key_if(bool expected, const char* name, T& value) {
    if (const Json* json = take(expected, name)) check(name, *json, read(*json, value));
  }
  template <class E, std::size_t N>
  void choice(const char* name, E& value, const Names<E, N>& names) {
    choice_if(true, name, value, names);
  }
  template <class E, std::size_t N>
  void choice_if(bool expected, const char* name, E& value, const Names<E, N>& names) {
    const Json* json = take(expected, name);
    if (json == nullptr) return;
    for (const auto& [choice, word] : names)
      if (*json == word) {
        value = choice;
        return;
      }
    check(name, *json, choices(names));
  }
  template <class T>
  void part(const char* name, T& value) {
    part_if(true, name, value);
  }
  template <class T>
  void part_if(bool expected, const char* name, T& value) {
    const Json* json = take(expected, name);
    if (json == nullptr) return;
    check(name, *json, json->is_object() ? "" : say("an object"));
    if (!json->is_object()) return;
    Reader reader(*json, say("part {}", name), remarks_);
    walk_keys(reader, value);
    reader.finish();
  }
  template <class T>
  void part(const char* name, std::optional<T>& value) {
    const Json* json = take(false, name);
    if (json != nullptr) value = element<T>(*json, say("part {}", name));
  }
  template <class T>
  void list(const char* name, std::vector<T>& values) {
    list_if(true, name, values);
  }
  template <class T>
  void list_if(bool expected, const char* name, std::vector<T>& values) {
    const Json* json = take(expected, name);
    if (json == nullptr) return;
    check(name, *json, json->is_array() ? "" : say("a list"));
    if (!json->is_array()) return;
    values.clear();
    for (std::size_t i = 0; i < json->size(); ++i)
      if (auto there = element<T>((*json)[i], element_name(name, i, (*json)[i])))
        values.push_back(std::move(*there));
  }
  void finish();

 private:
  template <class T>
  std::optional<T> element(const Json& json, const std::string& thing);
  const Json* take(bool expected, const char* name);
  void check(const char* name, const Json& json, const std::string& expected);

  const Json& object_;
  std::string thing_;
  Remarks& remarks_;
  std::set<std::string> known_, missing_;
  std::map<std::string, std::string> failed_;  // with what was expected
};

const Json* Reader::take(bool expected, const char* name) {
  known_.insert(name);
  const auto at = object_.find(name);
  if (at != object_.end()) return &*at;
  if (expected) missing_.insert(name);
  return nullptr;
}

void Reader::check(const char* name, const Json& json, const std::string& expected) {
  if (expected.empty()) return;
  failed_[name] = expected;
  remarks_.push_back({"plan_value_not_usable", say("the value {} of {}", std::string(name), thing_),
                      shown(json), expected, say("The usual value was taken.")});
}

std::string joined(const std::set<std::string>& names) {
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + in_quotes(name);
  return all;
}

void Reader::finish() {
  if (!missing_.empty())
    remarks_.push_back({"plan_keys_missing", say("{} has no {}", thing_, joined(missing_)), "", "",
                        say("The usual values were taken.")});
  std::set<std::string> unknown;
  for (const auto& [name, value] : object_.items())
    if (!known_.contains(name)) unknown.insert(name);
  if (!unknown.empty())
    remarks_.push_back({"plan_keys_unknown",
                        say("{} has {}, which is not understood", thing_, joined(unknown)), "", "",
                        say("It was left out and is lost when the plan is saved over the file.")});
}

template <class T>
std::optional<T> Reader::element(const Json& json, const std::string& thing) {
  if (!json.is_object()) {
    remarks_.push_back(
        {"plan_element_left_out", thing, shown(json), say("an object"), say("It was left out.")});
    return std::nullopt;
  }
  Remarks own;
  Reader reader(json, thing, own);
  T value{};
  walk_keys(reader, value);
  for (const std::string& name : essential(value)) {
    if (!reader.failed_.contains(name) && !reader.missing_.contains(name)) continue;
    const bool missing = reader.missing_.contains(name);
    const std::string found = missing ? say("missing") : shown(json[name]);
    const std::string bound = missing ? say("there") : reader.failed_[name];
    remarks_.push_back({"plan_element_left_out", say("the value {} of {}", name, thing), found, bound,
                        say("This one was left out; the rest of the plan was read.")});
    return std::nullopt;
  }
  reader.finish();
  remarks_.insert(remarks_.end(), own.begin(), own.end());
  return value;
}

// The version, when the tree is a plan that this program can read.
Result<int> readable_version(const Json& tree) {
  const std::string this_program = say("format_version {}", std::to_string(kPlanFormat));
  int version = 0;
  if (!tree.is_object() || !tree.contains("format_version") ||
      !read(tree["format_version"], version).empty() || version < 1)
    return refuse({"not_a_plan", say("the file is JSON but no plan: it has no usable format_version"), "", "",
                   say("A plan begins with \"format_version\": {}.", std::to_string(kPlanFormat))});
  if (version > kPlanFormat)
    return refuse(
        {"plan_too_new", say("the plan"), say("of format_version {}", std::to_string(version)),
         say("at most of {}, the newest that this program knows", this_program),
         say("It was written by a newer Underlawn: install that, or save the plan there for this one.")});
  return version;
}

}  // namespace

Result<WithRemarks<Plan>> plan_from_text(std::string_view text) {
  auto parsed = json_from_text(text, say("the plan"));
  if (!parsed) return refuse(parsed.error());
  Json& tree = parsed->value;
  Remarks& remarks = parsed->remarks;
  const auto version = readable_version(tree);
  if (!version) return refuse(version.error());
  migrate(tree, *version, migration_steps(), remarks);

  tree.erase("format_version");
  Plan plan;
  Reader reader(tree, say("the plan"), remarks);
  walk_keys(reader, plan);
  reader.finish();
  mend(plan, remarks);
  return WithRemarks<Plan>{std::move(plan), std::move(remarks)};
}

}  // namespace underlawn
