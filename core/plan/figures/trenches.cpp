// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "field/trench.h"
#include "plan/figures/groups.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

void add_place(Figures& all, const Trench& t, const std::string& key, const std::string& name) {
  const How how{say("placed by the layout"), {"layout.circuits_placed"}, ""};
  derived(all, key + ".head_x", say("{}, head x", name), t.head.x, Q::length, how);
  derived(all, key + ".head_y", say("{}, head y", name), t.head.y, Q::length, how);
  std::vector<std::string> points = {key + ".head_x", key + ".head_y", key + ".end_x", key + ".end_y"};
  for (std::size_t i = 0; i < t.bends.size(); ++i) {
    const std::string bend = std::to_string(i + 1);
    for (const char* part : {"_x", "_y"}) points.push_back(key + ".bend_" + bend + part);
    const How drawn{say_as("of a bend", "drawn"), {"layout.circuits_placed"}, ""};
    derived(all, key + ".bend_" + bend + "_x", say("{}, bend {} x", name, bend), t.bends[i].x, Q::length,
            drawn);
    derived(all, key + ".bend_" + bend + "_y", say("{}, bend {} y", name, bend), t.bends[i].y, Q::length,
            drawn);
  }
  derived(all, key + ".end_x", say("{}, end x", name), t.end.x, Q::length, how);
  derived(all, key + ".end_y", say("{}, end y", name), t.end.y, Q::length, how);
  derived(all, key + ".length", say("{}, length", name), length_of(t), Q::length,
          {t.bends.empty() ? say("distance from head to end") : say("from head to end along its bends"),
           points, ""});
  derived(all, key + ".width", say("{}, width at the floor", name), t.width, Q::length,
          {say("as asked"), {"dig.trench_width"}, ""});
  derived(all, key + ".depth", say("{}, depth", name), t.depth, Q::length,
          {say("as asked"), {"dig.trench_depth"}, ""});
}

struct CoilPart {
  const char* part;
  const char* of_coil;  // the figure of the coil that every trench gets
  const char* label;    // of the trench named
  double Coil::*value;
  Q quantity;
};

constexpr CoilPart kParts[] = {
    {".pitch", "coil.pitch", mark("{}, pitch"), &Coil::pitch, Q::length},
    {".loops", "coil.loops", mark("{}, loops"), &Coil::loops, Q::count},
    {".coil_length", "coil.length", mark("{}, coil length"), &Coil::coil_length, Q::length},
    {".loop_pipe", "coil.loop_pipe", mark("{}, pipe in the loops"), &Coil::loop_pipe, Q::length},
    {".return_pipe", "coil.return_pipe", mark("{}, return pipe"), &Coil::return_pipe, Q::length},
};

void add_coil_of(Figures& all, const Trench& t, const Coil& usual, const std::string& key,
                 const std::string& name) {
  for (const CoilPart& part : kParts) {
    if (is_straight(t.coil.pattern) && part.value != &Coil::coil_length) continue;
    const bool same = t.coil.*part.value == usual.*part.value;
    How how =
        same ? How{say("the coil of every trench"), {part.of_coil}, ""}
             : How{say("the coil laid to this trench's own length"), {part.of_coil, key + ".length"}, ""};
    derived(all, key + part.part, words::filled(translated(part.label), &name, 1), t.coil.*part.value,
            part.quantity, std::move(how));
  }
}

}  // namespace

void add_trenches(Figures& all, const Outcome& outcome) {
  for (const Trench& t : outcome.layout.trenches) {
    const std::string key = trench_key(t.number);
    const std::string name = say("Trench {}", std::to_string(t.number));
    add_place(all, t, key, name);
    add_coil_of(all, t, outcome.coil, key, name);
  }
}

}  // namespace underlawn::figures
