// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/notebook.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "base/say.h"
#include "base/typed_text.h"
#include "plane/region.h"
#include "survey/earth.h"

namespace underlawn {

namespace {

using std::numbers::pi;

std::string folded_name(const std::string& name) {
  std::string out;
  for (char c : name) {
    const bool blank = c == ' ' || c == '\t';
    if (blank && (out.empty() || out.back() == ' ')) continue;
    out += blank ? ' ' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

Trouble about(const Sighting& s, const char* code, std::string what, std::string value, std::string bound,
              std::string advice) {
  return {code, say("{} of {}", what, in_quotes(s.name)), std::move(value), std::move(bound),
          std::move(advice)};
}

class Placer {
 public:
  Placer(const Survey& survey, const NotebookSetting& setting);
  std::vector<PlacedSighting> run();

 private:
  enum class State { waiting, at_work, done };

  void place(std::size_t index);
  Result<Point> found(const Sighting& s, PlacedSighting& into);
  Result<Point> by_two(const Sighting& s, PlacedSighting& into);
  Result<Point> by_offset(const Sighting& s, PlacedSighting& into);
  Result<Point> by_bearing(const Sighting& s, PlacedSighting& into);
  Result<Point> by_earth(const Sighting& s) const;
  Result<Point> by_grid(const Sighting& s) const;
  Result<Point> known(const Sighting& s, const std::string& name);
  Result<Segment> base(const Sighting& s, PlacedSighting& into);
  std::string shown(double metres) const {
    return print_quantity(Quantity::length, metres, setting_.units, Fineness::fine);
  }

  const Survey& survey_;
  const NotebookSetting& setting_;
  std::map<std::string, Point> known_;
  std::map<std::string, std::size_t> notes_;
  std::vector<State> state_;
  std::vector<PlacedSighting> placed_;
  Result<EarthFrame> earth_;
  int depth_ = 0;
};

constexpr int kDeepest = 400;  // points hanging on one another

Result<EarthFrame> frame_of(const NotebookSetting& s) {
  if (s.place) return EarthFrame::at(*s.place, s.north);
  return refuse({"no_map_place", say("the plan's place on the map"), say("not known"),
                 say_as("a place", "known"), say("Import points or place one first.")});
}

Placer::Placer(const Survey& survey, const NotebookSetting& setting)
    : survey_(survey), setting_(setting), earth_(frame_of(setting)) {
  for (const KnownPoint& k : setting.known) known_.emplace(folded_name(k.name), k.at);
  for (std::size_t i = 0; i < survey.notebook.size(); ++i) {
    notes_.emplace(folded_name(survey.notebook[i].name), i);
    placed_.push_back({survey.notebook[i].name, Point{}, std::nullopt, std::nullopt});
  }
  state_.assign(survey.notebook.size(), State::waiting);
}

std::vector<PlacedSighting> Placer::run() {
  for (std::size_t i = 0; i < state_.size(); ++i)
    if (state_[i] == State::waiting) place(i);
  return std::move(placed_);
}

void Placer::place(std::size_t index) {
  const Sighting& s = survey_.notebook[index];
  state_[index] = State::at_work;
  ++depth_;
  PlacedSighting into{s.name, Point{}, std::nullopt, std::nullopt};
  Result<Point> at = found(s, into);
  --depth_;
  const bool on_plan = at && std::abs(at->x) <= kLargestPlan && std::abs(at->y) <= kLargestPlan;
  if (at && !on_plan)
    at = refuse(about(s, "sighting_far", say("the place"), say("beyond the plan"),
                      say("within {} of its origin", shown(kLargestPlan)),
                      say("Check its numbers and their units.")));
  into.at = at;
  placed_[index] = std::move(into);
  state_[index] = State::done;
}

Result<Point> Placer::known(const Sighting& s, const std::string& name) {
  const std::string folded = folded_name(name);
  if (const auto k = known_.find(folded); k != known_.end()) return k->second;
  const auto n = notes_.find(folded);
  if (n == notes_.end())
    return refuse(about(s, "sighting_unknown", say("the known point"),
                        folded.empty() ? say("not named") : in_quotes(name),
                        say("the name of a lot corner, a house corner or another point"),
                        say("Write it like lot 1, house A or P1.")));
  const std::size_t i = n->second;
  if (state_[i] == State::at_work || depth_ > kDeepest)
    return refuse(about(s, "sighting_circle", say("the known point"), in_quotes(name),
                        say("one that does not hang on {} itself", in_quotes(s.name)),
                        say("Measure one of them from a corner.")));
  if (state_[i] == State::waiting) place(i);
  if (placed_[i].at) return *placed_[i].at;
  return refuse(about(s, "sighting_waits", say("the known point"),
                      say("{}, which has no place itself", in_quotes(name)), say("a point that has one"),
                      say("Mend {} first.", in_quotes(name))));
}

Result<Segment> Placer::base(const Sighting& s, PlacedSighting& into) {
  const auto from = known(s, s.from);
  if (!from) return refuse(from.error());
  const auto to = known(s, s.to);
  if (!to) return refuse(to.error());
  if (distance(*from, *to) <= kSamePlace)
    return refuse(about(s, "sighting_no_base", say("the way between the known points"),
                        shown(distance(*from, *to)), say("more than nothing"),
                        say("Choose two different points.")));
  into.base = Segment{*from, *to};
  return *into.base;
}

Result<Point> Placer::by_two(const Sighting& s, PlacedSighting& into) {
  const auto line = base(s, into);
  if (!line) return refuse(line.error());
  const double a = s.first, b = s.second, between = distance(line->a, line->b);
  if (!(a > 0) || !(b > 0))
    return refuse(about(s, "sighting_tape", say("a taped distance"), shown(std::min(a, b)),
                        say("more than nothing"), say("Enter both distances.")));
  const double missed = std::max(between - (a + b), std::abs(a - b) - between);
  if (missed > kTapesTouch)
    return refuse(about(
        s, "sighting_no_meeting", say("the sum or difference of the tapes"), say("off by {}", shown(missed)),
        between > a + b ? say("at least the way between the known points, {}", shown(between))
                        : say("such that neither reaches beyond the other"),
        say("The tapes do not meet: check both distances and the points they were held at.")));
  const double along = (a * a - b * b + between * between) / (2 * between);
  const double off = std::sqrt(std::max(0.0, a * a - along * along));
  const Point way = (1 / between) * (line->b - line->a);
  const double cosine = std::clamp((a * a + b * b - between * between) / (2 * a * b), -1.0, 1.0);
  const double angle = std::acos(cosine);
  into.cut = std::min(angle, pi - angle);
  return line->a + along * way + (s.left ? off : -off) * left_normal(way);
}

Result<Point> Placer::by_offset(const Sighting& s, PlacedSighting& into) {
  const auto line = base(s, into);
  if (!line) return refuse(line.error());
  const Point way = unit(line->b - line->a);
  return line->a + s.first * way - s.second * left_normal(way);
}

Result<Point> Placer::by_bearing(const Sighting& s, PlacedSighting& into) {
  const auto from = known(s, s.from);
  if (!from) return refuse(from.error());
  const Point to = *from + s.first * direction(setting_.north - s.bearing);
  into.base = Segment{*from, to};
  return to;
}

Result<Point> Placer::by_earth(const Sighting& s) const {
  if (!earth_)
    return refuse(about(s, "sighting_no_map_place", say("the place on the map"),
                        say("not known for the plan"), say_as("a place", "known"),
                        say("Import the points again, or pin one of them to a corner.")));
  auto at = earth_->to_plan(s.latitude, s.longitude);
  if (!at) at.error().thing = say("{} of {}", at.error().thing, in_quotes(s.name));
  return at;
}

Result<Point> Placer::by_grid(const Sighting& s) const {
  const GridTie tie = survey_.grid.value_or(GridTie{});
  const double turn = setting_.north - pi / 2;
  return tie.at + rotated({s.east - tie.east, s.north - tie.north}, turn);
}

Result<Point> Placer::found(const Sighting& s, PlacedSighting& into) {
  for (double v : {s.first, s.second, s.bearing, s.latitude, s.longitude, s.east, s.north})
    if (!std::isfinite(v))
      return refuse(about(s, "sighting_not_finite", say("a number"), say("not finite"), say("finite"),
                          say("Enter it again.")));
  switch (s.method) {
    case SightingMethod::two_distances:
      return by_two(s, into);
    case SightingMethod::station_offset:
      return by_offset(s, into);
    case SightingMethod::bearing_distance:
      return by_bearing(s, into);
    case SightingMethod::latitude_longitude:
      return by_earth(s);
    case SightingMethod::east_north:
      return by_grid(s);
  }
  return Point{};
}

bool taken(const std::vector<Sighting>& notebook, const std::string& name) {
  const std::string folded = folded_name(name);
  return std::any_of(notebook.begin(), notebook.end(),
                     [&](const Sighting& s) { return folded_name(s.name) == folded; });
}

}  // namespace

std::vector<PlacedSighting> place_notebook(const Survey& survey, const NotebookSetting& setting) {
  return Placer(survey, setting).run();
}

std::string free_name(const std::vector<Sighting>& notebook, const std::string& wanted) {
  if (!wanted.empty() && !taken(notebook, wanted)) return wanted;
  for (int n = 2;; ++n) {
    const std::string name = (wanted.empty() ? "P" : wanted + "-") + std::to_string(n);
    if (!taken(notebook, name)) return name;
  }
}

void name_freely(const std::vector<Sighting>& notebook, std::vector<Sighting>& points) {
  std::set<std::string> names;
  std::map<std::string, int> tried;  // the number behind a name that was given last
  for (const Sighting& s : notebook) names.insert(folded_name(s.name));
  for (Sighting& s : points) {
    const std::string wanted = s.name.empty() ? "P" : s.name;
    while (s.name.empty() || !names.insert(folded_name(s.name)).second) {
      int& number = tried.try_emplace(folded_name(wanted), 1).first->second;
      s.name = wanted + "-" + std::to_string(++number);
    }
  }
}

std::string next_name(const std::vector<Sighting>& notebook) {
  for (std::size_t n = notebook.size() + 1;; ++n)
    if (const std::string name = "P" + std::to_string(n); !taken(notebook, name)) return name;
}

}  // namespace underlawn
