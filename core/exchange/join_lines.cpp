// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/join_lines.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace underlawn {

namespace {

struct Edge {
  int from, to;   // nodes
  Polyline line;  // from the one to the other
  bool live = true;
};

// Ends that are one place.
class Nodes {
 public:
  explicit Nodes(double reach) : reach_(std::max(reach, 1e-9)) {}
  int at(Point p) {
    const auto [x, y] = cell(p);
    for (long i = x - 1; i <= x + 1; ++i)
      for (long j = y - 1; j <= y + 1; ++j)
        if (const auto there = cells_.find({i, j}); there != cells_.end())
          for (int n : there->second)
            if (distance(points[static_cast<std::size_t>(n)], p) <= reach_) return n;
    points.push_back(p);
    cells_[{x, y}].push_back(static_cast<int>(points.size()) - 1);
    return static_cast<int>(points.size()) - 1;
  }
  std::vector<Point> points;

 private:
  std::pair<long, long> cell(Point p) const {
    return {std::lround(std::floor(p.x / reach_)), std::lround(std::floor(p.y / reach_))};
  }
  double reach_;
  std::map<std::pair<long, long>, std::vector<int>> cells_;
};

double signed_area(const Ring& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice += cross(ring[i] - ring[0], ring[(i + 1) % ring.size()] - ring[0]);
  return twice / 2;
}

// The lines as a net of edges between places; walks its faces and what hangs loose.
class Net {
 public:
  Net(const std::vector<Polyline>& lines, double reach) : nodes_(reach) {
    for (const Polyline& line : lines) add(line);
    at_.resize(nodes_.points.size());
    for (std::size_t e = 0; e < edges_.size(); ++e) {
      at_[static_cast<std::size_t>(edges_[e].from)].insert(static_cast<int>(e));
      at_[static_cast<std::size_t>(edges_[e].to)].insert(static_cast<int>(e));
    }
  }
  JoinedLines take() {
    prune();
    JoinedLines out;
    out.rings = faces();
    out.chains = chains();
    out.narrowest_gap = narrowest_gap(out.chains);
    return out;
  }

 private:
  void add(const Polyline& line) {
    if (line.size() < 2) return;
    Edge e{nodes_.at(line.front()), nodes_.at(line.back()), line};
    e.line.front() = nodes_.points[static_cast<std::size_t>(e.from)];
    e.line.back() = nodes_.points[static_cast<std::size_t>(e.to)];
    if (e.from == e.to && (e.line.size() < 4 || signed_area(e.line) == 0)) return;
    const Point middle = e.line[e.line.size() / 2];
    const auto key = std::tuple(std::min(e.from, e.to), std::max(e.from, e.to), e.line.size(),
                                std::lround(1000 * (e.line.size() > 2 ? middle.x : 0)),
                                std::lround(1000 * (e.line.size() > 2 ? middle.y : 0)));
    if (seen_.insert(key).second) edges_.push_back(std::move(e));  // drawn twice is drawn once
  }

  std::size_t degree(int node) const {
    std::size_t n = 0;
    for (int e : at_[static_cast<std::size_t>(node)]) {
      const Edge& edge = edges_[static_cast<std::size_t>(e)];
      if (edge.live) n += edge.from == edge.to ? 2 : 1;
    }
    return n;
  }

  // Takes out of the net what ends blind: it closes nothing.
  void prune() {
    std::vector<int> ends;
    for (int n = 0; n < static_cast<int>(nodes_.points.size()); ++n)
      if (degree(n) == 1) ends.push_back(n);
    while (!ends.empty()) {
      const int n = ends.back();
      ends.pop_back();
      for (int e : at_[static_cast<std::size_t>(n)]) {
        Edge& edge = edges_[static_cast<std::size_t>(e)];
        if (!edge.live || degree(n) != 1) continue;
        edge.live = false;
        loose_.insert(e);
        const int other = edge.from == n ? edge.to : edge.from;
        if (degree(other) == 1) ends.push_back(other);
      }
    }
  }

  // Half edge 2e goes along edge e, 2e + 1 against it.
  int start_of(int half) const {
    const Edge& e = edges_[static_cast<std::size_t>(half / 2)];
    return half % 2 == 0 ? e.from : e.to;
  }
  double angle_of(int half) const {
    const Polyline& line = edges_[static_cast<std::size_t>(half / 2)].line;
    const Point d = half % 2 == 0 ? line[1] - line[0] : line[line.size() - 2] - line.back();
    return std::atan2(d.y, d.x);
  }

  // Leaving a node, half edges in the order of their angle; a face turns as far left as it can.
  std::vector<Ring> faces() {
    std::map<int, std::vector<std::pair<double, int>>> out_of;
    for (int h = 0; h < static_cast<int>(2 * edges_.size()); ++h)
      if (edges_[static_cast<std::size_t>(h / 2)].live) out_of[start_of(h)].emplace_back(angle_of(h), h);
    for (auto& [node, halves] : out_of) std::ranges::sort(halves);
    std::vector<int> next(2 * edges_.size(), -1);
    for (const auto& [node, halves] : out_of)
      for (std::size_t i = 0; i < halves.size(); ++i)
        next[static_cast<std::size_t>(halves[i].second ^ 1)] =
            halves[(i + halves.size() - 1) % halves.size()].second;
    std::vector<Ring> rings;
    std::vector<bool> used(next.size(), false);
    for (std::size_t h = 0; h < next.size(); ++h)
      if (next[h] >= 0 && !used[h]) add_face(static_cast<int>(h), next, used, rings);
    return rings;
  }
  void add_face(int from, const std::vector<int>& next, std::vector<bool>& used,
                std::vector<Ring>& rings) const {
    Ring ring;
    for (int h = from; !used[static_cast<std::size_t>(h)]; h = next[static_cast<std::size_t>(h)]) {
      used[static_cast<std::size_t>(h)] = true;
      Polyline line = edges_[static_cast<std::size_t>(h / 2)].line;
      if (h % 2 == 1) std::ranges::reverse(line);
      ring.insert(ring.end(), line.begin(), line.end() - 1);
    }
    if (ring.size() >= 3 && signed_area(ring) > 0) rings.push_back(std::move(ring));
  }

  std::vector<Polyline> chains() {
    std::map<int, std::vector<int>> hung;  // loose edges at each node
    for (int e : loose_) {
      hung[edges_[static_cast<std::size_t>(e)].from].push_back(e);
      hung[edges_[static_cast<std::size_t>(e)].to].push_back(e);
    }
    std::vector<Polyline> out;
    std::set<int> left = loose_;
    const auto walk = [&](int e, int from) {
      Polyline chain = {nodes_.points[static_cast<std::size_t>(from)]};
      while (left.erase(e) == 1) {
        Polyline line = edges_[static_cast<std::size_t>(e)].line;
        const bool back = edges_[static_cast<std::size_t>(e)].from != from;
        from = back ? edges_[static_cast<std::size_t>(e)].from : edges_[static_cast<std::size_t>(e)].to;
        if (back) std::ranges::reverse(line);
        chain.insert(chain.end(), line.begin() + 1, line.end());
        const auto& here = hung[from];
        if (here.size() != 2) break;
        e = here[0] == e ? here[1] : here[0];
      }
      out.push_back(std::move(chain));
    };
    for (const auto& [node, edges] : hung)
      if (edges.size() != 2)
        for (int e : edges)
          if (left.contains(e)) walk(e, node);
    return out;
  }

  static double narrowest_gap(const std::vector<Polyline>& chains) {
    std::vector<Point> ends;
    for (const Polyline& c : chains) {
      ends.push_back(c.front());
      ends.push_back(c.back());
    }
    constexpr std::size_t kMost = 2000;
    double least = 0;
    for (std::size_t i = 0; i < std::min(ends.size(), kMost); ++i)
      for (std::size_t j = i + 1; j < std::min(ends.size(), kMost); ++j)
        if (const double d = distance(ends[i], ends[j]); d > 0 && (least == 0 || d < least)) least = d;
    return least;
  }

  Nodes nodes_;
  std::vector<Edge> edges_;
  std::vector<std::set<int>> at_;
  std::set<int> loose_;
  std::set<std::tuple<int, int, std::size_t, long, long>> seen_;
};

}  // namespace

JoinedLines join_lines(const std::vector<Polyline>& lines, double reach) {
  return Net(lines, reach).take();
}

}  // namespace underlawn
