// SPDX-License-Identifier: GPL-3.0-or-later
// The loop as it was dug, solved again: does it hold, and what would mend it.

#include "base/say.h"
#include "cli/for_programs.h"
#include "cli/plan_in.h"
#include "cli/table.h"
#include "cli/verbs.h"
#include "exchange/export_as_built.h"
#include "files/atomic_file.h"
#include "files/json_text.h"
#include "plan/record/as_built_csv.h"
#include "plan/record/as_built_mends.h"
#include "plan/record/built_findings.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

std::string_view kind_of(MendKind kind) {
  switch (kind) {
    case MendKind::more_circuit:
      return "more_circuit";
    case MendKind::run_coil:
      return "run_coil";
    case MendKind::full_coils:
      return "full_coils";
    case MendKind::throttle:
      return "throttle";
    case MendKind::antifreeze:
      return "antifreeze";
    case MendKind::together:
      return "together";
  }
  return "unknown";
}

struct Told {
  Plan plan;
  Outcome planned;
  AsBuiltAnswer built;
  Mends mends;
};

Told told_of(const Plan& plan) {
  LaidSolver solver;
  Told told{plan, solve(plan), {}, {}};
  if (told.planned.layout.trenches.empty()) return told;
  told.built = solve_as_built(told.plan, told.planned, solver);
  told.mends = find_mends(told.plan, told.planned, told.built, solver);
  return told;
}

std::string told_quantity(const Plan& plan, Quantity q, double value) {
  return print_quantity(q, value, plan.units);
}

void tell_places(const Told& told, std::ostream& out) {
  if (told.built.loop.places.empty()) return;
  std::vector<std::vector<std::string>> rows = {
      {say("point"), say("moved"), say("tapes cut at"), say("expected error"), say("check")}};
  for (const BuiltPlace& p : told.built.loop.places) {
    std::string checks;
    for (const TapeCheck& c : p.found.checks)
      checks += (checks.empty() ? "" : ", ") + c.corner + " " +
                told_quantity(told.plan, Quantity::length, c.residual);
    rows.push_back(
        {p.name,
         p.planned ? told_quantity(told.plan, Quantity::length, distance(*p.planned, p.found.at)) : "-",
         p.found.taped ? told_quantity(told.plan, Quantity::angle, p.found.cut) : say("marked"),
         p.found.taped ? told_quantity(told.plan, Quantity::length, p.found.error) : "-",
         checks.empty() ? "-" : checks});
  }
  tell_table(rows, out);
  out << "\n";
}

std::string verdict(const Hold& h) {
  return h.holds ? say("holds") : h.held ? say("no longer holds") : say("did not hold by plan either");
}

std::string limit_of(const Hold& h, const Plan& plan) {
  const std::string limit = told_quantity(plan, h.quantity, h.limit);
  return h.at_least ? say("at least {}", limit) : say("at most {}", limit);
}

void tell_holds(const Told& told, std::ostream& out) {
  std::vector<std::vector<std::string>> rows = {{"", say("planned"), say("as built"), say("limit"), ""}};
  for (const Hold& h : told.built.holds)
    rows.push_back({h.what, told_quantity(told.plan, h.quantity, h.planned),
                    told_quantity(told.plan, h.quantity, h.built), limit_of(h, told.plan), verdict(h)});
  tell_table(rows, out);
}

void tell_findings(const Told& told, std::ostream& out) {
  for (const Finding& f : told.built.findings)
    out << "\n" << f.title << ": " << built_finding_words(f, told.plan.units) << "\n";
}

void tell_mends(const Told& told, std::ostream& out) {
  for (const Mend& m : told.mends.all) {
    out << "\n" << (m.enough ? say("Mends all: {}", m.what) : say("Not enough alone: {}", m.what)) << "\n";
    for (const Hold& h : m.holds)
      out << "  " << h.what << ": " << told_quantity(told.plan, h.quantity, h.built) << ", " << verdict(h)
          << "\n";
    for (const std::string& words : {m.caution, m.by_hand})
      if (!words.empty()) out << "  " << words << "\n";
  }
  for (const std::string& words : told.mends.not_found) out << "\n" << words << "\n";
}

Json holds_json(const std::vector<Hold>& holds) {
  Json all = Json::array();
  for (const Hold& h : holds) {
    const std::string suffix(key_suffix(h.quantity));
    all.push_back({{"key", h.key},
                   {"what", h.what},
                   {"planned" + suffix, h.planned},
                   {"built" + suffix, h.built},
                   {(h.at_least ? "at_least" : "at_most") + suffix, h.limit},
                   {"held", h.held},
                   {"holds", h.holds}});
  }
  return all;
}

Json as_json(const Told& told) {
  Json j{{"plan", told.planned.fingerprint},
         {"as_built", told.built.outcome->fingerprint},
         {"holds", all_hold(told.built.holds)},
         {"limits", holds_json(told.built.holds)}};
  j["changes"] = Json::array();
  for (const Change& c : told.built.changes) {
    const std::string suffix(key_suffix(c.quantity));
    j["changes"].push_back({{"key", c.key}, {"planned" + suffix, c.planned}, {"built" + suffix, c.built}});
  }
  j["points"] = Json::array();
  for (const BuiltRow& r : built_rows(told.plan, told.planned, told.built)) {
    Json row{{"point", r.point}, {"at_m", Json::array({r.at.x, r.at.y})}};
    if (r.planned) row["moved_m"] = distance(*r.planned, r.at);
    if (r.depth) row["depth_m"] = *r.depth;
    if (r.pipe) row["pipe_m"] = *r.pipe;
    if (r.tie)
      row["tie"] = {{"first", r.tie->first},
                    {"first_m", r.tie->first_distance},
                    {"second", r.tie->second},
                    {"second_m", r.tie->second_distance}};
    j["points"].push_back(std::move(row));
  }
  j["remarks"] = Json::array();
  for (const Trouble& t : told.built.loop.remarks) j["remarks"].push_back(t.message());
  j["findings"] = Json::array();
  for (const Finding& f : told.built.findings) {
    const std::string suffix(key_suffix(f.quantity));
    j["findings"].push_back({{"key", f.key},
                             {"rule", f.rule},
                             {"title", f.title},
                             {"measured" + suffix, f.measured},
                             {"required" + suffix, f.required},
                             {"advice", f.advice}});
  }
  j["mends"] = Json::array();
  for (const Mend& m : told.mends.all)
    j["mends"].push_back({{"kind", kind_of(m.kind)},
                          {"what", m.what},
                          {"enough", m.enough},
                          {"caution", m.caution},
                          {"by_hand", m.by_hand},
                          {"limits", holds_json(m.holds)}});
  j["not_found"] = told.mends.not_found;
  return j;
}

Exit write_files(const Told& told, const Arguments& arguments, const Console& console) {
  std::vector<std::pair<std::string, std::string>> files;
  for (const char* word : {"csv", "dxf", "geojson", "gpkg"}) {
    const auto file = arguments.value(std::string("--") + word);
    if (!file) continue;
    const auto bytes = as_built_file(word, told.plan, told.planned, told.built);
    if (!bytes) {
      console.complain(*file, bytes.error().message());
      return Exit::errors_remain;
    }
    files.push_back({*file, *bytes});
  }
  for (const auto& [file, bytes] : files)
    if (const auto done = write_file(file, bytes); !done) {
      console.complain(file, done.error().message());
      return Exit::not_written;
    }
  return Exit::ok;
}

}  // namespace

Exit run_as_built(const Arguments& arguments, const Console& console) {
  const std::string& path = arguments.places[0];
  const auto plan = plan_in(path, console);
  if (!plan) return Exit::not_read;
  const Told told = told_of(*plan);
  console.complain(path, told.planned.troubles);
  if (told.planned.layout.trenches.empty()) {
    console.complain(path, say("Nothing is laid by the plan, so nothing can be as built."));
    return Exit::errors_remain;
  }
  console.complain(path, told.built.loop.remarks);
  if (const Exit written = write_files(told, arguments, console); written != Exit::ok) return written;
  if (arguments.has("--json")) {
    console.out << (spoken_here() == nullptr ? json_to_text(as_json(told)) : in_english([&] {
      return json_to_text(as_json(told_of(*plan)));
    }));
  } else {
    if (!told.built.loop.changed) console.out << say("As built is as planned: nothing differs.") << "\n\n";
    tell_places(told, console.out);
    tell_holds(told, console.out);
    tell_findings(told, console.out);
    tell_mends(told, console.out);
  }
  return all_hold(told.built.holds) && told.built.loop.remarks.empty() && told.built.findings.empty()
             ? Exit::ok
             : Exit::errors_remain;
}

}  // namespace underlawn::cli
