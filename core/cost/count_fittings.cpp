// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <set>

#include "base/say.h"
#include "cost/price_book.h"
#include "cost/take_off.h"
#include "flow/header_tree.h"

namespace underlawn {

namespace {

class Counter {
 public:
  Counter(const LoopNetwork& loop, const Layout& layout, HeaderArrangement arrangement)
      : loop_(loop), layout_(layout), arrangement_(arrangement) {}

  FittingCount count() {
    here_ = {FittingPlace::house, {}};
    add("union", heat_pump(), 2);
    std::vector<std::vector<const LoopPipe*>> met(static_cast<std::size_t>(loop_.network.nodes));
    for (std::size_t i = 0; i < loop_.pipes.size(); ++i) {
      met[static_cast<std::size_t>(loop_.network.pipes[i].from)].push_back(&loop_.pipes[i]);
      met[static_cast<std::size_t>(loop_.network.pipes[i].to)].push_back(&loop_.pipes[i]);
    }
    // The heat pump stands between inlet and outlet: what comes back meets its other end.
    met[static_cast<std::size_t>(loop_.network.outlet)].push_back(&loop_.pipes[0]);
    for (const auto& pipes : met) {
      here_ = place_of(pipes);
      meet(pipes);
    }
    bends();
    FittingCount all{{counts_.begin(), counts_.end()}, joints_, {}};
    for (const auto& [at, n] : placed_)
      all.placed.push_back({at.first, at.second.first, at.second.second, n});
    return all;
  }

 private:
  const PipeSize& heat_pump() const { return loop_.pipes[0].size; }

  using Place = std::pair<FittingPlace, std::vector<int>>;

  static Place place_of(const std::vector<const LoopPipe*>& pipes) {
    std::set<int> heads;
    for (const LoopPipe* pipe : pipes) {
      if (pipe->part == LoopPart::heat_pump) return {FittingPlace::house, {}};
      if (pipe->trench > 0) heads.insert(pipe->trench);
    }
    if (heads.empty()) return {FittingPlace::junction, {}};
    return {FittingPlace::heads, {heads.begin(), heads.end()}};
  }

  void put(const std::string& key, int n) {
    counts_[key] += n;
    placed_[{key, here_}] += n;
  }

  // How many were added.
  int add(const std::string& word, const PipeSize& size, int n) {
    if (n > 0) put(fitting_key(word, size.nominal), n);
    return n;
  }

  int reduce(const PipeSize& large, const PipeSize& small) {
    if (large.nominal == small.nominal) return 0;
    put(fitting_key("reducer", large.nominal + " x " + small.nominal), 1);
    return 1;
  }

  // The union is one end of the heat pump's pipe, so that pipe counts as any other.
  void meet(const std::vector<const LoopPipe*>& pipes) {
    const int fittings = fittings_at(pipes);
    const bool at_union =
        std::ranges::any_of(pipes, [](const LoopPipe* pipe) { return pipe->part == LoopPart::heat_pump; });
    if (fittings > 0 || (at_union && pipes.size() > 1))
      joints_ += static_cast<int>(pipes.size()) + fittings - 1;
  }

  int fittings_at(std::vector<const LoopPipe*> pipes) {
    std::stable_sort(pipes.begin(), pipes.end(), [](const LoopPipe* a, const LoopPipe* b) {
      return a->size.outside_diameter > b->size.outside_diameter;
    });
    if (pipes.size() < 2) return 0;
    const PipeSize& large = pipes.front()->size;
    const auto is = [&](std::size_t i, LoopPart part) { return pipes[i]->part == part; };
    if (pipes.size() == 2) {
      const bool first = is(0, LoopPart::circuit), second = is(1, LoopPart::circuit);
      if (first && second) return 0;  // one pipe: loops, then the way back
      const int elbows = first || second ? add("elbow 90", pipes[first ? 0 : 1]->size, 1) : 0;
      return elbows + reduce(large, pipes[1]->size);
    }
    int fittings = add("tee", large, static_cast<int>(pipes.size()) - 2);
    for (const LoopPipe* pipe : pipes) fittings += reduce(large, pipe->size);
    return fittings;
  }

  const PipeSize* header_size(int feeds, LoopPart part) const {
    for (const LoopPipe& pipe : loop_.pipes)
      if (pipe.part == part && pipe.carries == feeds) return &pipe.size;
    return nullptr;
  }

  void elbows(const Tee& way, const PipeSize* size, int pipes) {
    if (size == nullptr) return;
    joints_ += 2 * add("elbow 45", *size, pipes * way.bends_45);
    joints_ += 2 * add("elbow 90", *size, pipes * way.bends_90);
  }

  void bends() {
    const auto tree = header_tree(layout_);
    if (!tree) return;
    for (std::size_t i = 0; i < tree->size(); ++i) {
      const Tee& way = (*tree)[i];
      here_ = {i == 0 ? FittingPlace::run_bends : FittingPlace::header_bends, {}};
      if (arrangement_ == HeaderArrangement::home_runs)
        elbows(way, header_size(1, LoopPart::lead), 2 * way.feeds);
      else if (i == 0)
        elbows(way, &heat_pump(), 2);
      else
        elbows(way, header_size(way.feeds, LoopPart::header_supply),
               arrangement_ == HeaderArrangement::reverse_return ? 3 : 2);
    }
    here_ = {FittingPlace::header_bends, {}};
    for (const LoopPipe& pipe : loop_.pipes)
      if (pipe.part == LoopPart::header_back) joints_ += 2 * add("elbow 90", pipe.size, 1);
  }

  const LoopNetwork& loop_;
  const Layout& layout_;
  HeaderArrangement arrangement_;
  std::map<std::string, int> counts_;
  std::map<std::pair<std::string, Place>, int> placed_;
  Place here_;
  int joints_ = 0;
};

}  // namespace

FittingCount count_fittings(const LoopNetwork& loop, const Layout& layout, HeaderArrangement arrangement) {
  if (loop.pipes.empty()) return {};
  return Counter(loop, layout, arrangement).count();
}

}  // namespace underlawn
