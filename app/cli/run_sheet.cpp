// SPDX-License-Identifier: GPL-3.0-or-later
#include <charconv>

#include "cli/plan_in.h"
#include "cli/sheet_out.h"
#include "cli/verbs.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

std::optional<Paper> paper_named(const std::string& name) {
  constexpr std::pair<std::string_view, Paper> kPapers[] = {
      {"letter", Paper::letter}, {"tabloid", Paper::tabloid}, {"a4", Paper::a4}, {"a3", Paper::a3}};
  for (const auto& [word, paper] : kPapers)
    if (word == name) return paper;
  return std::nullopt;
}

// "240" or "1:240".
std::optional<int> scale_named(std::string_view text) {
  if (text.starts_with("1:")) text.remove_prefix(2);
  int scale = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), scale);
  if (error != std::errc() || end != text.data() + text.size() || scale < 1 || scale > 100'000)
    return std::nullopt;
  return scale;
}

Result<SheetSetup> setup_of(const Arguments& arguments, const Plan& plan) {
  SheetSetup setup{usual_paper(plan), std::nullopt};
  if (const auto name = arguments.value("--paper")) {
    const auto paper = paper_named(*name);
    if (!paper) return refuse({"usage", "the paper", "“" + *name + "”", "letter, tabloid, a4 or a3", ""});
    setup.paper = *paper;
  }
  if (const auto text = arguments.value("--scale")) {
    setup.scale = scale_named(*text);
    if (!setup.scale)
      return refuse(
          {"usage", "the scale", "“" + *text + "”", "a whole number from 1 to 100000, for 1:N", ""});
  }
  return setup;
}

}  // namespace

Exit run_sheet(const Arguments& arguments, const Console& console) {
  // What is typed wrong is said before anything is read or solved.
  if (const auto setup = setup_of(arguments, Plan{}); !setup) {
    console.complain("", setup.error().message());
    return Exit::usage;
  }
  const auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  console.complain(arguments.places[0], outcome.troubles);
  const std::string path =
      arguments.value("--out").value_or(base_name(arguments.places[0]) + "-dig-sheet.pdf");
  const auto written = sheet_out(*plan, outcome, *setup_of(arguments, *plan), path);
  if (written)
    console.out << path << "\n";
  else
    console.complain(path, written.error().message());
  return written ? Exit::ok : Exit::not_written;
}

}  // namespace underlawn::cli
