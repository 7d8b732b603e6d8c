// SPDX-License-Identifier: GPL-3.0-or-later
#include "flow/header_tree.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/quantity.h"
#include "base/say.h"

namespace underlawn {
namespace {

constexpr double kSameTee = 0.01;  // m

// A place on one of the lines, by metres from its start.
struct Place {
  int line = -1;
  double along = 0;
  double off = 0;  // m from the line
};

Place nearest_place(const std::vector<Polyline>& lines, int count, Point p) {
  Place best{-1, 0, 1e300};
  for (int l = 0; l < count; ++l) {
    double before = 0;
    for (std::size_t i = 1; i < lines[l].size(); ++i) {
      const Segment s{lines[l][i - 1], lines[l][i]};
      const Point at = nearest_on(s, p);
      // Where lines meet, the earlier one has it.
      if (distance(at, p) < best.off - 1e-6) best = {l, before + distance(s.a, at), distance(at, p)};
      before += distance(s.a, s.b);
    }
  }
  return best;
}

std::string metres(double m) {
  return print_quantity(Quantity::length, m, UnitSystem::metric);
}

// Every mark on every line becomes a tee; those without a use are taken out afterwards.
class Grower {
 public:
  explicit Grower(const Layout& layout) : layout_(layout) {
    lines_.push_back(layout.run.line);
    for (const Polyline& leg : layout.header.legs)
      if (leg.size() > 1) lines_.push_back(leg);
  }

  Result<HeaderTree> tree() {
    if (layout_.trenches.empty())
      return refuse(
          {"flow_no_circuits", say("circuits"), "0", say("at least 1"), say("Place a trench first.")});
    if (lines_[0].size() < 2)
      return refuse({"flow_no_run", say("supply run"), say_as("a run", "not drawn"),
                     say("a way from the entry point to the header"),
                     say("Set the entry point and leave the run a way.")});
    if (auto ok = place_all(); !ok) return refuse(ok.error());
    cut_lines();
    count(0);
    const int first = skip(0);
    emit(first, -1, {});
    return std::move(out_);
  }

 private:
  struct Mark {
    double along;
    int leg = -1, trench = -1;  // what leaves here; neither: the line's own end
  };
  struct Raw {
    std::vector<int> trenches, onward;
    int line = 0;
    double from = 0, to = 0;  // on its line
    int feeds = 0;
  };
  struct Way {
    double length = 0;
    int bends_45 = 0, bends_90 = 0;
  };

  Result<void> place_all() {
    marks_.resize(lines_.size());
    const int lines = static_cast<int>(lines_.size());
    for (int l = 1; l < lines; ++l) {
      const Place p = nearest_place(lines_, l, lines_[l].front());
      if (p.off > kHeadReach)
        return refuse({"flow_disconnected", say("start of header leg {}", std::to_string(l)),
                       say("{} from the header", metres(p.off)), say("at most {}", metres(kHeadReach)),
                       say("Draw the leg from the run or an earlier leg.")});
      marks_[p.line].push_back({p.along, l, -1});
    }
    for (std::size_t t = 0; t < layout_.trenches.size(); ++t) {
      const Place p = nearest_place(lines_, lines, layout_.trenches[t].head);
      if (p.off > kHeadReach)
        return refuse({"flow_disconnected",
                       say("head of trench {}", std::to_string(layout_.trenches[t].number)),
                       say("{} from the header", metres(p.off)), say("at most {}", metres(kHeadReach)),
                       say("Lead the header past the trench's head.")});
      marks_[p.line].push_back({p.along, -1, static_cast<int>(t)});
    }
    return {};
  }

  void cut_lines() {
    raw_.push_back({});  // the entry
    start_.assign(lines_.size(), 0);
    for (std::size_t l = 0; l < lines_.size(); ++l) cut(static_cast<int>(l));
  }

  void cut(int l) {
    std::stable_sort(marks_[l].begin(), marks_[l].end(),
                     [](const Mark& a, const Mark& b) { return a.along < b.along; });
    int at = start_[l];
    double along = 0;
    for (const Mark& m : marks_[l]) {
      if (m.along > along + kSameTee) {
        const int next = static_cast<int>(raw_.size());
        raw_.push_back({{}, {}, l, along, m.along, 0});
        raw_[at].onward.push_back(next);
        at = next;
        along = m.along;
      }
      if (m.leg >= 0) start_[m.leg] = at;
      if (m.trench >= 0) raw_[at].trenches.push_back(m.trench);
    }
  }

  int count(int at) {
    Raw& r = raw_[at];
    r.feeds = static_cast<int>(r.trenches.size());
    for (int next : r.onward) r.feeds += count(next);
    std::erase_if(r.onward, [this](int next) { return raw_[next].feeds == 0; });
    std::stable_sort(r.onward.begin(), r.onward.end(),
                     [this](int a, int b) { return raw_[a].feeds > raw_[b].feeds; });
    return r.feeds;
  }

  Way way_of(const Raw& r) const {
    Way way{r.to - r.from, 0, 0};
    const Polyline& line = lines_[r.line];
    double along = 0;
    for (std::size_t i = 1; i + 1 < line.size(); ++i) {
      along += distance(line[i - 1], line[i]);
      if (along <= r.from || along >= r.to) continue;
      if (distance(line[i - 1], line[i]) < kSamePlace || distance(line[i], line[i + 1]) < kSamePlace)
        continue;
      const Point in = unit(line[i] - line[i - 1]), on = unit(line[i + 1] - line[i]);
      const double turn = std::acos(std::clamp(dot(in, on), -1.0, 1.0)) * 180 / std::numbers::pi;
      way.bends_90 += turn > 67.5;
      way.bends_45 += turn > 22.5 && turn <= 67.5;
    }
    return way;
  }

  // Past places where nothing leaves and one way goes on.
  int skip(int at) const {
    while (raw_[at].trenches.empty() && raw_[at].onward.size() == 1) at = raw_[at].onward[0];
    return at;
  }

  void add_ways(int from, int to, Way& way) const {
    for (int at = from;;) {
      const Way w = way_of(raw_[at]);
      way = {way.length + w.length, way.bends_45 + w.bends_45, way.bends_90 + w.bends_90};
      if (at == to) return;
      at = raw_[at].onward[0];
    }
  }

  int emit(int at, int parent, Way way) {
    if (parent < 0) add_ways(0, at, way);
    const int index = static_cast<int>(out_.size());
    out_.push_back({parent, way.length, way.bends_45, way.bends_90, raw_[at].trenches, {}, raw_[at].feeds});
    for (int next : raw_[at].onward) {
      const int end = skip(next);
      Way onward;
      add_ways(next, end, onward);
      const int made = emit(end, index, onward);
      out_[index].onward.push_back(made);
    }
    return index;
  }

  const Layout& layout_;
  std::vector<Polyline> lines_;  // the run, then the legs
  std::vector<std::vector<Mark>> marks_;
  std::vector<int> start_;  // tee that each line starts at
  std::vector<Raw> raw_;
  HeaderTree out_;
};

}  // namespace

Result<HeaderTree> header_tree(const Layout& layout) {
  return Grower(layout).tree();
}

}  // namespace underlawn
