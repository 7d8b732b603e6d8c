// SPDX-License-Identifier: GPL-3.0-or-later
// The laid loop as a network of pipes: heat pump, run, header, circuits.
#pragma once

#include <string>
#include <vector>

#include "flow/flow_wishes.h"
#include "flow/header_tree.h"
#include "flow/loop_volume.h"
#include "flow/network.h"
#include "layout/layout.h"
#include "pipe/pipe_size.h"

namespace underlawn {

// header_back: what a reverse return lays beside the header to come back from the far end. lead: a circuit's
// own pipe to the manifold in the house.
enum class LoopPart {
  heat_pump,
  run_supply,
  run_return,
  header_supply,
  header_return,
  header_back,
  lead,
  circuit
};
std::string loop_part_name(LoopPart part);

struct LoopPipe {
  LoopPart part = LoopPart::circuit;
  int trench = 0;   // number of the trench whose circuit or lead it is, else 0
  int carries = 1;  // circuits whose flow goes through it
  int step = -1;    // header only: 0 for the pieces that carry most circuits
  PipeSize size;
};

struct LoopNetwork {
  Network network;
  std::vector<LoopPipe> pipes;  // as network.pipes; the heat pump first
  std::vector<int> circuits;  // the pipe of each circuit with most of its length, in order of trench numbers
  std::vector<int> steps;     // circuits carried by the pieces of each step of the header, falling
};

// A last size in `steps` serves all that follow; with home runs the first is that of the leads.
struct HeaderSizes {
  PipeSize run;
  std::vector<PipeSize> steps;  // one or more
};

// As typed, wishes.header_pipe where nothing is typed; leads then of the coils' pipe. Refuses unknown names.
Result<HeaderSizes> typed_sizes(const Wishes& wishes, const FlowWishes& flow);

// Lengths are those of the drawing plus the tails. Bores are average bores. A circuit is its loops, coiled on
// the loop's diameter, and the return and tails, straight; the heat pump with hose kit and valves is a
// decimetre of pipe with a K. Tees and elbows by fittings.h. Refuses what header_tree refuses and a coil
// without pipe.
Result<LoopNetwork> loop_network(const Layout& layout, const Wishes& wishes, const FlowWishes& flow,
                                 const HeaderSizes& sizes);
Result<LoopNetwork> loop_network(const HeaderTree& tree, const Layout& layout, const Wishes& wishes,
                                 const FlowWishes& flow, const HeaderSizes& sizes);

// All pipes but the heat pump.
LoopVolume volume_of(const LoopNetwork& loop);

}  // namespace underlawn
