// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "base/say.h"
#include "cli/plan_in.h"
#include "cli/verbs.h"
#include "plan/solve.h"

namespace underlawn::cli {

namespace {

using Shown = std::vector<const Figure*>;

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(
      std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::string filled(std::string text, std::size_t width) {
  const std::size_t size = characters(text);
  return size < width ? text + std::string(width - size, ' ') : text;
}

std::string value_of(const Figure& f, UnitSystem units) {
  return print_quantity(f.quantity, f.value, units, Fineness::fine);
}

// Key, value, label, each in its column.
void list(const Shown& figures, UnitSystem units, std::ostream& out) {
  std::size_t key_width = 0, value_width = 0;
  for (const Figure* f : figures) {
    key_width = std::max(key_width, characters(f->key));
    value_width = std::max(value_width, characters(value_of(*f, units)));
  }
  for (const Figure* f : figures)
    out << filled(f->key, key_width) << "  " << filled(value_of(*f, units), value_width) << "  " << f->label
        << "\n";
}

void explain(const Shown& figures, UnitSystem units, std::ostream& out) {
  for (const Figure* f : figures) {
    out << f->key << " = " << value_of(*f, units) << "\n    " << f->label << "\n    "
        << say("how: {}", f->method) << "\n";
    if (!f->source.empty()) out << "    " << say("source: {}", f->source) << "\n";
    if (f->from.empty()) continue;
    std::string keys;
    for (const std::string& key : f->from) keys += (keys.empty() ? "" : " ") + key;
    out << "    " << say("from: {}", keys) << "\n";
  }
}

Shown group(const Figures& figures, const std::string& prefix) {
  Shown all;
  for (const Figure& f : figures.all())
    if (prefix.empty() || f.key.starts_with(prefix + ".")) all.push_back(&f);
  return all;
}

}  // namespace

Exit run_figures(const Arguments& arguments, const Console& console) {
  const auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  console.complain(arguments.places[0], outcome.troubles);
  const std::string key = arguments.places.size() > 1 ? arguments.places[1] : "";
  if (outcome.figures.find(key) != nullptr) {
    explain(outcome.figures.trace(key), plan->units, console.out);
    return Exit::ok;
  }
  const Shown figures = group(outcome.figures, key);
  list(figures, plan->units, console.out);
  if (!figures.empty() || key.empty()) return Exit::ok;
  console.complain(arguments.places[0],
                   say("There is no figure “{}”. Without a key, “underlawn figures” lists them.", key));
  return Exit::usage;
}

}  // namespace underlawn::cli
