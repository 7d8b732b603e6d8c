// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/built_layout.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "layout/crossings.h"
#include "layout/given.h"
#include "plan/record/built_header.h"
#include "plane/strip.h"

namespace underlawn {

namespace {

constexpr double kLengthAgrees = 0.3;  // m: a length beside a taped end may differ by so much

class Builder {
 public:
  Builder(const Plan& plan, const Layout& planned)
      : plan_(plan), planned_(planned), corners_(house_corners(plan.site)) {
    made_.layout = planned;
  }

  BuiltLoop build() {
    made_.layout.trenches.clear();
    for (const Trench& t : planned_.trenches) take_planned(t);
    for (const BuiltTrench& b : plan_.as_built.trenches)
      if (b.fate == TrenchFate::added || planned_trench(b.number) == nullptr) take_added(b);
    std::ranges::stable_sort(made_.layout.trenches, {}, &Trench::number);
    take_lines();
    if (made_.changed || !plan_.as_built.crossings.empty())
      made_.layout.crossings =
          crossings_of(measured_site(plan_), plan_.wishes, made_.layout.header, made_.layout.run);
    return std::move(made_);
  }

 private:
  const Trench* planned_trench(int number) const {
    for (const Trench& t : planned_.trenches)
      if (t.number == number) return &t;
    return nullptr;
  }
  const BuiltTrench* built_trench(int number) const {
    for (const BuiltTrench& b : plan_.as_built.trenches)
      if (b.number == number) return &b;
    return nullptr;
  }

  void take_planned(const Trench& planned) {
    const BuiltTrench* b = built_trench(planned.number);
    if (b == nullptr) return made_.layout.trenches.push_back(planned);
    if (b->fate == TrenchFate::left_out) {
      made_.changed = true;
      return;
    }
    Trench built = as_dug(*b, planned);
    if (built != planned) made_.changed = true;
    if (distance(built.head, planned.head) > 0) moved_.push_back({planned.head, built.head});
    made_.layout.trenches.push_back(std::move(built));
  }

  void take_added(const BuiltTrench& b) {
    if (b.fate == TrenchFate::left_out) return;
    const std::string name = say("added trench {}", std::to_string(b.number));
    if (!b.head || (!b.end && !b.length) || planned_.trenches.empty()) {
      made_.remarks.push_back({"built_trench_no_place", name, say("head or end missing"),
                               say("both taped or marked"), say("Tape its head and its end.")});
      return;
    }
    Trench usual = planned_.trenches.front();
    usual.number = b.number;
    usual.role = TrenchRole::field;
    usual.locked = false;
    usual.bends.clear();
    const std::size_t before = made_.remarks.size();
    const Point along = unit(usual.end - usual.head);
    const auto head = found(b.head, std::nullopt, say("{} head", b.number), b.number);
    if (!head) return;
    usual.head = *head;
    usual.end = *head + b.length.value_or(usual.coil.trench_length) * along;
    if (b.end) {
      const auto end = found(b.end, std::nullopt, say("{} end", b.number), b.number);
      if (!end) return;
      usual.end = *end;
    }
    BuiltTrench rest = b;
    rest.head.reset();
    rest.end.reset();
    rest.length.reset();
    Trench built = as_dug(rest, usual, true);
    if (made_.remarks.size() > before) return;
    made_.changed = true;
    made_.layout.trenches.push_back(std::move(built));
  }

  // A place that was said; nothing where it was not or cannot be.
  std::optional<Point> found(const std::optional<BuiltPoint>& point, std::optional<Point> planned,
                             const std::string& name, int trench = 0) {
    if (!point) return std::nullopt;
    auto place = place_of(corners_, *point, say("stake “{}”", name), plan_.units);
    if (!place) {
      made_.remarks.push_back(place.error());
      return std::nullopt;
    }
    made_.places.push_back({name, planned, *place, trench});
    return place->at;
  }

  // The middle line as dug.
  Polyline line_as_dug(const BuiltTrench& b, const Trench& planned) {
    const std::string number = std::to_string(b.number);
    Polyline line = middle_line(planned);
    const auto head = found(b.head, planned.head, say("{} head", number), b.number);
    const auto end = found(b.end, planned.end, say("{} end", number), b.number);
    Polyline bends;
    for (std::size_t i = 0; i < b.bends.size(); ++i)
      if (const auto at = found(b.bends[i], std::nullopt, say("{} bend {}", number, i + 1), b.number))
        bends.push_back(*at);
    if ((head || end) && !bends.empty()) {
      line = {line.front(), line.back()};
      line.insert(line.begin() + 1, bends.begin(), bends.end());
    }
    // A trench of which the head alone was measured lies where it did from there on.
    if (head && !end && line.size() == 2 && b.length) line.back() = line.back() + (*head - line.front());
    if (head) line.front() = *head;
    if (end) line.back() = *end;
    return b.length ? of_length(std::move(line), *b.length, end.has_value(), number) : line;
  }

  Polyline of_length(Polyline line, double wanted, bool end_known, const std::string& number) {
    const double drawn = underlawn::length(line);
    if (end_known) {
      if (std::abs(drawn - wanted) > kLengthAgrees)
        made_.remarks.push_back({"built_length_off", say("Length of trench {} as dug", number), shown(wanted),
                                 say("within {} of {} between its ends", shown(kLengthAgrees), shown(drawn)),
                                 say("Measure the length or tape the ends again; the ends were taken.")});
      return line;
    }
    return trimmed(line, 0, drawn - wanted);
  }

  std::string shown(double m) const {
    return print_quantity(Quantity::length, m, plan_.units, Fineness::fine);
  }

  Trench as_dug(const BuiltTrench& b, const Trench& planned, bool anew = false) {
    const Polyline line = line_as_dug(b, planned);
    Trench t = planned;
    t.head = line.front();
    t.end = line.back();
    t.bends.assign(line.begin() + 1, line.end() - 1);
    if (b.depth || b.end_depth) {
      const double head = b.depth.value_or(planned.depth), end = b.end_depth.value_or(head);
      t.depth = (head + end) / 2;
      t.fall = end - head;
    }
    const bool longer = std::abs(length_of(t) - length_of(planned)) > kSamePlace;
    if (longer || b.pipe || b.pitch || anew) lay_coil(b, planned, t);
    return t;
  }

  // Through given_trenches, so that one judge says what can be laid.
  void lay_coil(const BuiltTrench& b, const Trench& planned, Trench& t) {
    Wishes w = plan_.wishes;
    w.given = {{t.head, t.end, t.depth, b.pipe.value_or(0), t.bends}};
    w.level_distance = planned.coil.level_distance > 0 ? planned.coil.level_distance : w.level_distance;
    w.side_distance = planned.coil.side_distance > 0 ? planned.coil.side_distance : w.side_distance;
    Coil usual = planned.coil;
    if (b.pitch && !b.pipe) usual.pitch = *b.pitch;
    usual.trench_length = -1;  // so that the coil is worked out
    const auto made = given_trenches(w, usual);
    if (made) {
      t.coil = made->front().coil;
      return;
    }
    Trouble refused = made.error();
    refused.thing = say("trench {} as dug: {}", std::to_string(b.number), refused.thing);
    refused.advice = say("{} The planned trench was taken.", refused.advice);
    made_.remarks.push_back(std::move(refused));
    t = planned;
  }

  Polyline line_of_points(const std::vector<BuiltPoint>& points, bool header, int& number) {
    Polyline line;
    for (const BuiltPoint& p : points) {
      ++number;
      if (const auto at = found(p, std::nullopt, header ? say("header {}", number) : say("run {}", number)))
        line.push_back(*at);
    }
    return line;
  }

  void take_lines() {
    BuiltLines lines{planned_.run.line, planned_.header.legs, {}};
    for (const BuiltLine& l : plan_.as_built.header) lines.depths.push_back(l.depth);
    const bool own_run = take_run(lines), own_header = take_header(lines);
    if (made_.changed) {
      make_lines_meet(lines, moved_, made_.layout.trenches, own_run, own_header);
      made_.layout.run.line = lines.run;
      made_.layout.run.length = lines.run.size() > 1 ? underlawn::length(lines.run) : 0;
      made_.layout.header.legs = lines.legs;
      made_.layout.header.length = 0;
      for (const Polyline& leg : lines.legs) made_.layout.header.length += underlawn::length(leg);
    }
    take_depths(lines.depths);
  }

  // A leg's own, else the header's, else as planned. Where one depth was measured every one is written down:
  // what is solved again has their mean for a wish.
  void take_depths(const std::vector<std::optional<double>>& depths) {
    const auto &all = plan_.as_built.header_depth, &run = plan_.as_built.run_depth;
    if (!all && !run && std::ranges::none_of(depths, [](const auto& d) { return d.has_value(); })) return;
    made_.changed = true;
    made_.layout.run.depth = run.value_or(plan_.wishes.run_depth);
    for (std::size_t l = 0; l < made_.layout.header.legs.size(); ++l)
      made_.layout.header.depths.push_back(
          l < depths.size() && depths[l] ? *depths[l] : all.value_or(plan_.wishes.run_depth));
  }

  bool take_run(BuiltLines& lines) {
    if (plan_.as_built.run.empty() || lines.run.empty()) return false;
    int number = 0;
    Polyline run = line_of_points(plan_.as_built.run, false, number);
    if (run.size() < plan_.as_built.run.size()) return false;
    run.insert(run.begin(), lines.run.front());
    lines.run = std::move(run);
    made_.changed = true;
    return true;
  }

  bool take_header(BuiltLines& lines) {
    std::vector<Polyline> legs;
    int number = 0;
    bool measured = false;
    for (const BuiltLine& l : plan_.as_built.header) {
      const std::size_t at = legs.size();
      if (l.points.empty() && at < lines.legs.size()) {
        legs.push_back(lines.legs[at]);
        continue;
      }
      legs.push_back(line_of_points(l.points, true, number));
      if (legs.back().size() < std::max<std::size_t>(2, l.points.size())) return false;
      measured = true;
    }
    if (!measured) return false;
    lines.legs = std::move(legs);
    made_.changed = true;
    return true;
  }

  const Plan& plan_;
  const Layout& planned_;
  std::vector<HouseCorner> corners_;
  std::vector<MovedHead> moved_;
  BuiltLoop made_;
};

}  // namespace

Site measured_site(const Plan& plan) {
  Site site = plan.site;
  for (const BuiltCrossing& c : plan.as_built.crossings)
    for (Feature& f : site.features)
      if (c.depth && f.id == c.feature_id && f.kind == FeatureKind::utility) f.depth = *c.depth;
  return site;
}

BuiltLoop built_loop(const Plan& plan, const Layout& planned) {
  return Builder(plan, planned).build();
}

Layout differing(const Layout& planned, const Layout& built) {
  Layout out;
  for (const Trench& t : planned.trenches)
    if (std::none_of(built.trenches.begin(), built.trenches.end(), [&](const Trench& b) {
          return b.head == t.head && b.end == t.end && b.bends == t.bends;
        }))
      out.trenches.push_back(t);
  if (planned.header.legs != built.header.legs) out.header = planned.header;
  if (planned.run.line != built.run.line) out.run = planned.run;
  return out;
}

}  // namespace underlawn
