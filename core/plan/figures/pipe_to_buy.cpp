// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/say.h"
#include "cost/crew.h"
#include "plan/figures/groups.h"
#include "plan/header_words.h"

namespace underlawn::figures {

namespace {

using Q = Quantity;

void add_header_pipe(Figures& all, const Plan& plan, const Outcome& outcome) {
  double pipe = 0;
  std::vector<std::string> from;
  for (const char* key : {"header.pipe", "run.pipe"}) {
    const Figure* f = all.find(key);
    if (f == nullptr) continue;
    pipe += f->value;
    from.emplace_back(key);
  }
  if (from.empty()) return;
  from.emplace_back("buy.allowance");
  derived(all, "buy.allowance", say("Allowance on header and run pipe"), kPipeAllowance, Q::ratio,
          {say("fixed, for cuts, joints and snaking"), {}, say("common practice, no source")});
  derived(all, "buy.header_pipe",
          say("Pipe to buy for header and run, {}", header_and_run_sizes(plan, outcome)),
          pipe * (1 + kPipeAllowance), Q::length,
          {say("(header pipe + run pipe) x (1 + allowance)"), std::move(from), ""});
}

}  // namespace

void add_pipe_to_buy(Figures& all, const Plan& plan, const Outcome& outcome) {
  const auto coils = static_cast<double>(outcome.layout.trenches.size());
  derived(all, "buy.coils", say("Coils to buy, {}", plan.wishes.pipe), coils, Q::count,
          {say("one for each circuit placed"), {"layout.circuits_placed"}, ""});
  derived(all, "buy.coil_length", say("Length of each coil"), outcome.coil.coil_length, Q::length,
          {say("coil length, return pipe included; bought whole, so no allowance"), {"coil.length"}, ""});
  derived(all, "buy.coil_pipe", say("Pipe to buy in coils, {}", plan.wishes.pipe),
          coils * outcome.coil.coil_length, Q::length,
          {say("coils x length of each"), {"buy.coils", "buy.coil_length"}, ""});
  add_header_pipe(all, plan, outcome);
  std::vector<std::string> from = {"buy.coil_pipe"};
  double pipe = all.at("buy.coil_pipe").value;
  if (const Figure* header = all.find("buy.header_pipe")) {
    pipe += header->value;
    from.emplace_back(header->key);
  }
  derived(all, "buy.pipe", say("Pipe to buy in all"), pipe, Q::length,
          {say("coils + header and run"), std::move(from), ""});
}

}  // namespace underlawn::figures
