// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <charconv>
#include <sstream>

#include "base/say.h"
#include "cli/plan_in.h"
#include "cli/sheet_out.h"
#include "cli/verbs.h"
#include "language/language.h"
#include "plan/solve.h"
#include "sheets/setup_for.h"
#include "sheets/sheets_out.h"

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

// The date as YYYY-MM-DD.
Result<QDate> date_named(const std::string& text) {
  const QDate date = QDate::fromString(QString::fromStdString(text), Qt::ISODate);
  if (date.isValid()) return date;
  return refuse({"usage", say("the date"), "“" + text + "”", say("a day as 2026-05-04"), ""});
}

Result<std::vector<const SheetKind*>> kinds_named(const std::string& text) {
  std::vector<const SheetKind*> kinds;
  std::string names;
  for (const SheetKind& kind : sheet_kinds()) {
    names += (names.empty() ? "" : ", ") + std::string(kind.name);
    if (text == "all") kinds.push_back(&kind);
  }
  if (text == "all") return kinds;
  std::istringstream words(text);
  for (std::string word; std::getline(words, word, ',');) {
    const SheetKind* kind = find_sheet_kind(word);
    if (kind == nullptr)
      return refuse({"usage", say("the kind of sheet"), "“" + word + "”", say("{}, or all", names), ""});
    if (std::ranges::find(kinds, kind) == kinds.end()) kinds.push_back(kind);
  }
  if (kinds.empty())
    return refuse(
        {"usage", say("the kind of sheet"), say_as("a kind", "not given"), say("{}, or all", names), ""});
  return kinds;
}

Result<SheetSetup> setup_of(const Arguments& arguments, const Plan& plan) {
  SheetSetup setup = setup_for(plan, QString::fromStdString(arguments.places[0]));
  if (arguments.has("--page-a-trench")) setup.page_a_trench = true;
  if (const auto name = arguments.value("--paper")) {
    const auto paper = paper_named(*name);
    if (!paper)
      return refuse({"usage", say("the paper"), "“" + *name + "”",
                     say("{}, {}, {} or {}", "letter", "tabloid", "a4", "a3"), ""});
    setup.paper = *paper;
  }
  if (const auto text = arguments.value("--scale")) {
    setup.scale = scale_named(*text);
    if (!setup.scale)
      return refuse({"usage", say("the scale"), "“" + *text + "”",
                     say("a whole number from 1 to 100000, for 1:N"), ""});
  }
  if (const auto code = arguments.value("--language")) {
    if (find_language(*code) == nullptr)
      return refuse({"usage", say("the language"), "“" + *code + "”", say("en or es"), ""});
    setup.language = *code;
  }
  if (const auto word = arguments.value("--units")) {
    if (*word != "us" && *word != "metric")
      return refuse({"usage", say("the system of units"), "“" + *word + "”", say("us or metric"), ""});
    setup.units = *word == "us" ? SheetUnits::us : SheetUnits::metric;
  }
  if (const auto text = arguments.value("--date")) {
    const auto date = date_named(*text);
    if (!date) return refuse(date.error());
    setup.date = *date;
  }
  return setup;
}

Result<SheetOrder> order_of(const Arguments& arguments, const Plan& plan) {
  SheetOrder order;
  const auto kinds = kinds_named(arguments.value("--kind").value_or("dig"));
  const auto setup = setup_of(arguments, plan);
  if (!kinds) return refuse(kinds.error());
  if (!setup) return refuse(setup.error());
  order.kinds = *kinds;
  order.setup = *setup;
  order.each = arguments.has("--each");
  const std::filesystem::path place = base_name(arguments.places[0]);
  order.name = place.filename().string();
  const QString title = order.kinds.size() > 1 ? QString("sheets") : QString::fromUtf8(order.kinds[0]->title);
  const std::string file = file_name_of(QString::fromStdString(place.string()), title).toStdString();
  order.path = arguments.value("--out").value_or(order.each ? place.string() + "-sheets" : file);
  return order;
}

}  // namespace

Exit run_sheet(const Arguments& arguments, const Console& console) {
  // What is typed wrong is said before anything is read or solved.
  if (const auto order = order_of(arguments, Plan{}); !order) {
    console.complain("", order.error().message());
    return Exit::usage;
  }
  const auto plan = plan_in(arguments.places[0], console);
  if (!plan) return Exit::not_read;
  const Outcome outcome = solve(*plan);
  console.complain(arguments.places[0], outcome.troubles);
  const auto order = order_of(arguments, *plan);
  const auto written = sheets_out(*plan, outcome, *order);
  if (!written) {
    console.complain(order->path, written.error().message());
    return Exit::not_written;
  }
  for (const std::string& path : *written) console.out << path << "\n";
  return Exit::ok;
}

}  // namespace underlawn::cli
