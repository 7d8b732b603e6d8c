// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/as_built_words.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "plan/record/built_findings.h"
#include "plan/record/taped_text.h"
#include "plan/record/taping.h"

namespace underlawn {

namespace {

std::string holds_said(const Hold& h, const Plan& plan) {
  const auto shown = [&](double v) { return print_quantity(h.quantity, v, plan.units); };
  if (h.holds) return say("{}: {}", h.what, shown(h.built));
  return h.at_least ? say("{}: {}, less than {}", h.what, shown(h.built), shown(h.limit))
                    : say("{}: {}, more than {}", h.what, shown(h.built), shown(h.limit));
}

}  // namespace

const BuiltTrench* find_said(const Plan& plan, int number) {
  for (const BuiltTrench& t : plan.as_built.trenches)
    if (t.number == number) return &t;
  return nullptr;
}

BuiltTrench& said_of(Plan& plan, int number) {
  auto& all = plan.as_built.trenches;
  const auto at = std::ranges::lower_bound(all, number, {}, &BuiltTrench::number);
  if (at != all.end() && at->number == number) return *at;
  BuiltTrench next;
  next.number = number;
  return *all.insert(at, std::move(next));
}

std::vector<int> trench_numbers(const Plan& plan, const Outcome* outcome) {
  std::vector<int> numbers;
  if (outcome != nullptr)
    for (const Trench& t : outcome->layout.trenches) numbers.push_back(t.number);
  for (const BuiltTrench& t : plan.as_built.trenches) numbers.push_back(t.number);
  std::ranges::sort(numbers);
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  return numbers;
}

int next_trench(const Plan& plan, const Outcome* outcome) {
  const std::vector<int> numbers = trench_numbers(plan, outcome);
  return numbers.empty() ? 1 : numbers.back() + 1;
}

std::string name_of(const Plan& plan, const BuiltCrossing& crossing) {
  if (crossing.feature_id == 0) return crossing.name;
  const Feature* f = find_feature(plan.site, crossing.feature_id);
  return f == nullptr ? say("a thing no longer on the plan") : display_name(*f);
}

void add_place_facts(std::vector<Fact>& facts, const BuiltPlace& place, const Plan& plan) {
  const auto say = [&](double m) { return printed(Quantity::length, m, plan); };
  const QString name = QString::fromStdString(place.name);
  if (place.planned)
    facts.push_back({QObject::tr("%1, from where it was planned").arg(name),
                     say(distance(*place.planned, place.found.at))});
  if (!place.found.taped) return;
  facts.push_back({QObject::tr("Tapes cut at"), printed(Quantity::angle, place.found.cut, plan)});
  facts.push_back({QObject::tr("Expected error"), say(place.found.error)});
  for (const TapeCheck& c : place.found.checks)
    facts.push_back({QObject::tr("Check tape from %1").arg(QString::fromStdString(c.corner)),
                     c.residual >= 0 ? QObject::tr("%1 too long").arg(say(c.residual))
                                     : QObject::tr("%1 too short").arg(say(-c.residual))});
}

std::vector<QStringList> hold_rows(const std::vector<Hold>& holds, const Plan& plan) {
  std::vector<QStringList> rows = {
      {"", QObject::tr("Planned"), QObject::tr("As built"), QObject::tr("Limit"), ""}};
  for (const Hold& h : holds) {
    const auto say = [&](double v) { return printed(h.quantity, v, plan); };
    rows.push_back({QString::fromStdString(h.what), say(h.planned), say(h.built),
                    (h.at_least ? "≥ " : "≤ ") + say(h.limit),
                    h.holds  ? "✓"
                    : h.held ? "✗"
                             : "✗*"});
  }
  if (std::ranges::any_of(holds, [](const Hold& h) { return !h.holds && !h.held; }))
    rows.push_back({QObject::tr("* did not hold by plan either"), "", "", "", ""});
  return rows;
}

std::vector<QStringList> change_rows(const std::vector<Change>& changes, const Plan& plan) {
  std::vector<QStringList> rows = {{"", QObject::tr("Planned"), QObject::tr("As built")}};
  for (const Change& c : changes)
    if (std::abs(c.built - c.planned) > 1e-9 * std::abs(c.planned))
      rows.push_back({QString::fromStdString(c.label), printed(c.quantity, c.planned, plan),
                      printed(c.quantity, c.built, plan)});
  if (rows.size() == 1) return {};
  return rows;
}

std::vector<RecordLine> finding_rows(const std::vector<Finding>& findings, const Plan& plan) {
  std::vector<RecordLine> lines;
  for (const Finding& f : findings)
    lines.push_back({f.key, f.severity == Severity::error ? Tone::bad : Tone::doubt, f.title,
                     built_finding_words(f, plan.units), f.source});
  return lines;
}

std::vector<RecordLine> mend_rows(const Mends& mends, const Plan& plan) {
  std::vector<RecordLine> lines;
  for (const Mend& m : mends.all) {
    std::string words;
    for (const Hold& h : m.holds)
      if (!h.holds || h.key == "coldest" || h.key == "balance")
        words += say("{}.", holds_said(h, plan)) + " ";
    lines.push_back({"mend", m.enough ? Tone::good : Tone::doubt,
                     m.enough ? m.what : say("Not enough alone: {}", m.what),
                     m.by_hand.empty() ? words + m.caution : words + say("{} {}", m.caution, m.by_hand), ""});
  }
  for (const std::string& none : mends.not_found)
    lines.push_back({"mend.none", Tone::open, say("Does not help"), none, ""});
  return lines;
}

void drop_idle_legs(AsBuilt& built) {
  while (!built.header.empty() && built.header.back() == BuiltLine{}) built.header.pop_back();
}

namespace {

// Run and legs of the plan, one after the other: near them a taped point of either is looked for.
Polyline planned_lines(const Outcome* outcome) {
  if (outcome == nullptr) return {};
  Polyline all = outcome->layout.run.line;
  for (const Polyline& leg : outcome->layout.header.legs) all.insert(all.end(), leg.begin(), leg.end());
  return all;
}

}  // namespace

void add_taped_line(Form& form, Document& document, const QString& label, const QString& hint,
                    std::function<std::vector<BuiltPoint>*(Plan&)> where) {
  TypedField* field = form.text(label, {[where](const Plan& p) {
                                          Plan copy = p;
                                          QStringList all;
                                          for (const BuiltPoint& point : *where(copy))
                                            all << QString::fromStdString(print_taped(point, p.units));
                                          return all.join(" | ");
                                        },
                                        [](Plan&, const QString&) {}, label});
  field->edit()->setPlaceholderText(hint);
  field->set_taker([&document, where, label](const QString& typed) {
    Plan plan = document.committed();
    std::vector<BuiltPoint> points;
    for (const QString& piece : typed.split('|', Qt::SkipEmptyParts)) {
      auto point = taped_from_text(piece.toStdString(), plan.units, label.toStdString());
      if (!point) return QString::fromStdString(point.error().message());
      if (!says_side(piece.toStdString()))
        point = on_likely_side(house_corners(plan.site), *point, planned_lines(document.outcome()));
      const auto found =
          place_of(house_corners(plan.site), *point, say("point {}", points.size() + 1), plan.units);
      if (!found) return QString::fromStdString(found.error().message());
      points.push_back(*point);
    }
    *where(plan) = std::move(points);
    drop_idle_legs(plan.as_built);
    document.commit(std::move(plan), QObject::tr("As built: %1").arg(label));
    return QString();
  });
}

}  // namespace underlawn
