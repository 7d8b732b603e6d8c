// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/as_built_blocks.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "plan/fingerprint.h"
#include "plan/record/built_findings.h"
#include "sheets/contents.h"
#include "sheets/form_block.h"
#include "sheets/photo_block.h"
#include "sheets/tapes.h"

namespace underlawn::sheet {

namespace {

constexpr double kPoints = 9.5;

QString say(const BuiltFacts& f, Quantity q, double value) {
  return q == Quantity::length ? shown_length(f.plan, value)
                               : text_of(print_quantity(q, value, f.plan.units));
}
QString say(const BuiltFacts& f, const std::optional<double>& metres) {
  return metres ? shown_length(f.plan, *metres) : QString("–");
}

const BuiltTrench* said_of(const BuiltFacts& f, int number) {
  for (const BuiltTrench& t : f.plan.as_built.trenches)
    if (t.number == number) return &t;
  return nullptr;
}
const Trench* planned_of(const BuiltFacts& f, int number) {
  for (const Trench& t : f.planned.layout.trenches)
    if (t.number == number) return &t;
  return nullptr;
}

QString stop_words(StopCause cause) {
  switch (cause) {
    case StopCause::none:
      break;
    case StopCause::rock:
      return QObject::tr("stopped by rock");
    case StopCause::water:
      return QObject::tr("stopped by water");
    case StopCause::roots:
      return QObject::tr("stopped by roots");
    case StopCause::utility:
      return QObject::tr("stopped by a utility");
    case StopCause::caving:
      return QObject::tr("stopped by caving sides");
    case StopCause::other:
      return QObject::tr("stopped, see the note");
  }
  return {};
}

QString note_of(const BuiltFacts& f, const Trench& t) {
  QStringList all;
  const BuiltTrench* said = said_of(f, t.number);
  const Trench* planned = planned_of(f, t.number);
  if (planned == nullptr) all << QObject::tr("not planned");
  if (planned != nullptr && std::abs(length_of(*planned) - length_of(t)) > 0.05)
    all << QObject::tr("planned %1").arg(shown_length(f.plan, length_of(*planned)));
  if (said != nullptr && said->stopped_by != StopCause::none) all << stop_words(said->stopped_by);
  if (t.role == TrenchRole::supply) all << QObject::tr("in the supply run's trench");
  if (said != nullptr && !said->note.empty()) all << text_of(said->note);
  return all.join("; ");
}

BlockPtr trenches(const BuiltFacts& f) {
  std::vector<std::vector<Cell>> rows;
  for (const Trench& t : f.built.loop.layout.trenches) {
    const BuiltTrench* said = said_of(f, t.number);
    const double head = said != nullptr && said->depth ? *said->depth : t.depth;
    const double end = said != nullptr && said->end_depth ? *said->end_depth : head;
    rows.push_back({{QString::number(t.number), std::nullopt, true},
                    {shown_length(f.plan, length_of(t)), std::nullopt, true},
                    {shown_length(f.plan, head) + (end != head ? " – " + shown_length(f.plan, end) : "")},
                    {shown_length(f.plan, t.coil.coil_length)},
                    {t.coil.loops > 0 ? shown_pitch(f.plan, t.coil.pitch) : QString("–")},
                    {said == nullptr ? "" : text_of(said->dug_on)},
                    {said == nullptr ? "" : text_of(said->filled_on)},
                    {note_of(f, t)}});
  }
  for (const BuiltTrench& b : f.plan.as_built.trenches)
    if (b.fate == TrenchFate::left_out)
      rows.push_back({{QString::number(b.number), std::nullopt, true},
                      {QObject::tr("not dug")},
                      {},
                      {},
                      {},
                      {},
                      {},
                      {text_of(b.note)}});
  return std::make_shared<Table>(
      QObject::tr("COIL TRENCHES AS DUG"),
      std::vector<Column>{{QObject::tr("No.")},
                          {QObject::tr("Length"), Align::right},
                          {QObject::tr("Floor below ground"), Align::right},
                          {QObject::tr("Pipe"), Align::right},
                          {QObject::tr("Pitch"), Align::right},
                          {QObject::tr("Dug")},
                          {QObject::tr("Filled in")},
                          {"", Align::left, true}},
      std::move(rows), kPoints,
      QObject::tr(
          "The pipe lies on the floor of the trench, in its bedding. Depths are to the floor, head to end."));
}

const BuiltCrossing* measured(const BuiltFacts& f, int feature_id) {
  for (const BuiltCrossing& c : f.plan.as_built.crossings)
    if (c.feature_id == feature_id) return &c;
  return nullptr;
}

BlockPtr crossings(const BuiltFacts& f) {
  std::vector<std::vector<Cell>> rows;
  const auto row = [&](const QString& name, const std::optional<double>& planned, const BuiltCrossing* c) {
    rows.push_back(
        {{name, std::nullopt, true},
         {say(f, planned)},
         {c == nullptr ? (planned ? QObject::tr("not measured") : QString("–")) : say(f, c->depth)},
         {c == nullptr ? QString("–") : say(f, c->pipe_depth)},
         {c == nullptr ? QString() : text_of(c->note)}});
  };
  std::set<int> told;  // an easement is met where it is entered and where it is left
  for (const Crossing& c : f.built.loop.layout.crossings) {
    const Feature* feature = find_feature(f.plan.site, c.feature_id);
    if (feature == nullptr) continue;
    if (feature->kind == FeatureKind::easement && !told.insert(c.feature_id).second) continue;
    const bool utility = feature->kind == FeatureKind::utility;
    row(text_of(display_name(*feature)), utility ? std::optional<double>(feature->depth) : std::nullopt,
        measured(f, c.feature_id));
  }
  for (const BuiltCrossing& c : f.plan.as_built.crossings)
    if (c.feature_id == 0) row(QObject::tr("%1 (not on the plan)").arg(text_of(c.name)), std::nullopt, &c);
  if (rows.empty()) return nullptr;
  return std::make_shared<Table>(
      QObject::tr("UTILITIES AND OTHER THINGS CROSSED"),
      std::vector<Column>{{QObject::tr("What")},
                          {QObject::tr("Depth by plan"), Align::right},
                          {QObject::tr("Measured"), Align::right},
                          {QObject::tr("Our pipe"), Align::right},
                          {"", Align::left, true}},
      std::move(rows), kPoints,
      QObject::tr("Call for utility locating before anyone digs here again: this sheet shows "
                  "what was met on the day, no more."));
}

BlockPtr holds(const BuiltFacts& f) {
  if (f.built.holds.empty() || !anything_built(f.plan)) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (const Hold& h : f.built.holds)
    rows.push_back({{text_of(h.what)},
                    {say(f, h.quantity, h.planned)},
                    {say(f, h.quantity, h.built), std::nullopt, true},
                    {(h.at_least ? QObject::tr("at least %1") : QObject::tr("at most %1"))
                         .arg(say(f, h.quantity, h.limit))},
                    {h.holds  ? QObject::tr("holds")
                     : h.held ? QObject::tr("DOES NOT HOLD")
                              : QObject::tr("does not hold, nor by plan"),
                     std::nullopt, !h.holds}});
  return std::make_shared<Table>(QObject::tr("SOLVED AGAIN AS DUG"),
                                 std::vector<Column>{{""},
                                                     {QObject::tr("Planned"), Align::right},
                                                     {QObject::tr("As built"), Align::right},
                                                     {QObject::tr("Limit"), Align::right},
                                                     {"", Align::left, true}},
                                 std::move(rows), kPoints);
}

BlockPtr findings(const BuiltFacts& f) {
  std::vector<Item> items;
  for (const Finding& found : f.built.findings)
    items.push_back({"!", text_of(found.title) + ":", text_of(built_finding_words(found, f.plan.units))});
  return items.empty()
             ? nullptr
             : std::make_shared<Items>(QObject::tr("NOT AS THE PLAN ASKS"), std::move(items), kPoints);
}

BlockPtr checks(const BuiltFacts& f) {
  std::vector<std::vector<Cell>> rows;
  for (const BuiltPlace& p : f.built.loop.places) {
    QStringList residuals;
    for (const TapeCheck& c : p.found.checks)
      residuals << QObject::tr("%1 off by %2")
                       .arg(text_of(c.corner), say(f, Quantity::length, std::abs(c.residual)));
    rows.push_back({{text_of(p.name), std::nullopt, true},
                    {p.planned ? say(f, Quantity::length, distance(*p.planned, p.found.at)) : QString("–")},
                    {p.found.taped ? say(f, Quantity::angle, p.found.cut) : QObject::tr("marked")},
                    {p.found.taped ? say(f, Quantity::length, p.found.error) : QString("–")},
                    {residuals.join(", ")}});
  }
  if (rows.empty()) return nullptr;
  return std::make_shared<Table>(QObject::tr("POINTS AS THEY WERE TAPED"),
                                 std::vector<Column>{{QObject::tr("Point")},
                                                     {QObject::tr("From the plan"), Align::right},
                                                     {QObject::tr("Tapes cut at"), Align::right},
                                                     {QObject::tr("Expected error"), Align::right},
                                                     {QObject::tr("Check tape"), Align::left, true}},
                                 std::move(rows), kPoints);
}

QString fluid_words(const BuiltFacts& f) {
  const QString fluid = text_of(std::string(fluid_name(f.plan.flow.fluid)));
  const QString caution = text_of(std::string(fluid_caution(f.plan.flow.fluid)));
  if (f.plan.flow.fluid == Fluid::water) return QObject::tr("The fluid: %1. %2").arg(fluid, caution);
  return QObject::tr("The fluid: %1, %2 by mass by plan. %3")
      .arg(fluid, say(f, Quantity::ratio, f.plan.flow.mass_fraction), caution);
}

BlockPtr words(const BuiltFacts& f) {
  std::vector<Item> items;
  const AsBuilt& b = f.plan.as_built;
  if (!b.measured_by.empty() || !b.measured_on.empty())
    items.push_back({"•", QObject::tr("Measured"),
                     b.measured_on.empty() ? QObject::tr("by %1").arg(text_of(b.measured_by))
                     : b.measured_by.empty()
                         ? QObject::tr("on %1").arg(text_of(b.measured_on))
                         : QObject::tr("by %1 on %2").arg(text_of(b.measured_by), text_of(b.measured_on))});
  items.push_back({"•", "",
                   QObject::tr("Mark of this as-built: %1. Mark of the plan it was dug from: %2.")
                       .arg(text_of(f.built.outcome->fingerprint), text_of(f.planned.fingerprint))});
  items.push_back({"•", "", fluid_words(f)});
  for (const Trouble& t : f.built.loop.remarks)
    items.push_back({"!", QObject::tr("Not used:"), text_of(t.message())});
  if (!b.note.empty()) items.push_back({"•", "", text_of(b.note)});
  items.push_back(
      {"•", "",
       QObject::tr(
           "Keep this sheet with the house. Solid lines: as built. Dashed: as planned, where it differs.")});
  return std::make_shared<Items>(QObject::tr("TO KEEP"), std::move(items), kPoints);
}

BlockPtr photos(const BuiltFacts& f) {
  if (f.plan.as_built.photos.empty()) return nullptr;
  return std::make_shared<PhotoBlock>(f.plan.as_built.photos, f.folder);
}

// To be filled in on the lot: planned tapes beside empty boxes. Header and run are measured once they are
// dug.
BlockPtr form(const BuiltFacts& f) {
  std::vector<FormRow> rows;
  for (const Tie& tie : f.planned.stake_out.ties)
    if (!tie.key.starts_with("header") && !tie.key.starts_with("run")) {
      const PrintedTapes tapes = printed_tapes(f.plan, f.planned.stake_out, tie);
      rows.push_back(
          {point_name(tie),
           QString("%1 %2,  %3 %4").arg(text_of(tie.first), tapes.first, text_of(tie.second), tapes.second),
           {"", "", "", ""}});
    }
  if (rows.empty()) return nullptr;
  return std::make_shared<FormBlock>(
      QObject::tr("TO RECORD AS DUG, BEFORE FILLING IN"), QObject::tr("Planned tapes"),
      QStringList{QObject::tr("Tape"), QObject::tr("Tape"), QObject::tr("Check tape"), QObject::tr("Depth")},
      std::move(rows),
      QObject::tr(
          "Write the corner's letter with each tape. Where a trench stopped short, write why, and its length "
          "from the head. Photograph each trench open."));
}

}  // namespace

std::vector<BlockPtr> as_built_blocks(const BuiltFacts& f) {
  const bool recorded = f.plan.as_built != AsBuilt{};
  std::vector<BlockPtr> all;
  if (!recorded) all.push_back(form(f));
  for (auto* make : {trenches, built_lines, crossings, holds, findings, checks, words, photos})
    all.push_back(make(f));
  std::erase(all, nullptr);
  return all;
}

}  // namespace underlawn::sheet
