// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/trench.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

void add_place(Figures& all, const Trench& t, const std::string& key, const std::string& name) {
  const How how{"placed by the layout", {"layout.circuits_placed"}, ""};
  derived(all, key + ".head_x", name + ", head x", t.head.x, Q::length, how);
  derived(all, key + ".head_y", name + ", head y", t.head.y, Q::length, how);
  std::vector<std::string> points = {key + ".head_x", key + ".head_y", key + ".end_x", key + ".end_y"};
  for (std::size_t i = 0; i < t.bends.size(); ++i) {
    const std::string bend = std::to_string(i + 1);
    for (const char* part : {"_x", "_y"}) points.push_back(key + ".bend_" + bend + part);
    const How drawn{"drawn", {"layout.circuits_placed"}, ""};
    derived(all, key + ".bend_" + bend + "_x", name + ", bend " + bend + " x", t.bends[i].x, Q::length,
            drawn);
    derived(all, key + ".bend_" + bend + "_y", name + ", bend " + bend + " y", t.bends[i].y, Q::length,
            drawn);
  }
  derived(all, key + ".end_x", name + ", end x", t.end.x, Q::length, how);
  derived(all, key + ".end_y", name + ", end y", t.end.y, Q::length, how);
  derived(all, key + ".length", name + ", length", length_of(t), Q::length,
          {t.bends.empty() ? "distance from head to end" : "from head to end along its bends", points, ""});
  derived(all, key + ".width", name + ", width at the floor", t.width, Q::length,
          {"as asked", {"dig.trench_width"}, ""});
  derived(all, key + ".depth", name + ", depth", t.depth, Q::length, {"as asked", {"dig.trench_depth"}, ""});
}

struct CoilPart {
  const char* part;
  const char* of_coil;  // the figure of the coil that every trench gets
  const char* label;
  double Coil::*value;
  Q quantity;
};

constexpr CoilPart kParts[] = {
    {".pitch", "coil.pitch", ", pitch", &Coil::pitch, Q::length},
    {".loops", "coil.loops", ", loops", &Coil::loops, Q::count},
    {".coil_length", "coil.length", ", coil length", &Coil::coil_length, Q::length},
    {".loop_pipe", "coil.loop_pipe", ", pipe in the loops", &Coil::loop_pipe, Q::length},
    {".return_pipe", "coil.return_pipe", ", return pipe", &Coil::return_pipe, Q::length},
};

void add_coil_of(Figures& all, const Trench& t, const Coil& usual, const std::string& key,
                 const std::string& name) {
  for (const CoilPart& part : kParts) {
    if (is_straight(t.coil.pattern) && part.value != &Coil::coil_length) continue;
    const bool same = t.coil.*part.value == usual.*part.value;
    How how = same ? How{"the coil of every trench", {part.of_coil}, ""}
                   : How{"the coil laid to this trench's own length", {part.of_coil, key + ".length"}, ""};
    derived(all, key + part.part, name + part.label, t.coil.*part.value, part.quantity, std::move(how));
  }
}

}  // namespace

void add_trenches(Figures& all, const Outcome& outcome) {
  for (const Trench& t : outcome.layout.trenches) {
    const std::string key = trench_key(t.number);
    const std::string name = "Trench " + std::to_string(t.number);
    add_place(all, t, key, name);
    add_coil_of(all, t, outcome.coil, key, name);
  }
}

}  // namespace underlawn::figures
