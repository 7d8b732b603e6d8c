// SPDX-License-Identifier: GPL-3.0-or-later
// What lies in the ground already, in the colours that the locator paints.
#include "canvas/look.h"
#include "canvas/utility_tags.h"
#include "layout/crossing_tags.h"
#include "plan/checks/measure.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

// The name a locator gives the colour; crews say it on the radio.
QString colour_name(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::electric:
      return QObject::tr("red", "paint on the ground");
    case UtilityKind::gas:
      return QObject::tr("yellow", "paint on the ground");
    case UtilityKind::communication:
      return QObject::tr("orange", "paint on the ground");
    case UtilityKind::water:
      return QObject::tr("blue", "paint on the ground");
    case UtilityKind::sewer:
      return QObject::tr("green", "paint on the ground");
    case UtilityKind::reclaimed:
      return QObject::tr("purple", "paint on the ground");
  }
  return "";
}

QString crossings_of(const Plan& plan, const Outcome& outcome, int id) {
  QStringList names;
  for (std::size_t i = 0; i < outcome.layout.crossings.size(); ++i)
    if (outcome.layout.crossings[i].feature_id == id)
      names << text_of(crossing_tag(plan.site, outcome.layout, i));
  return names.isEmpty() ? "–" : names.join(", ");
}

QString nearest_trench(const Plan& plan, const Outcome& outcome, const Feature& f) {
  const Trench* nearest = nullptr;
  double least = 0;
  for (const Trench& t : outcome.layout.trenches) {
    const double away = area_to_feature(outline(t), f);
    if (nearest != nullptr && away >= least) continue;
    nearest = &t;
    least = away;
  }
  if (nearest == nullptr) return "–";
  return QObject::tr("%1 from trench %2").arg(shown_length(plan, least)).arg(nearest->number);
}

}  // namespace

BlockPtr utility_table(const Plan& plan, const Outcome& outcome) {
  const Look look = Look::paper();
  std::vector<std::vector<Cell>> rows;
  for (const Feature& f : plan.site.features)
    if (f.kind == FeatureKind::utility)
      rows.push_back({{utility_tag(plan.site, f), std::nullopt, true},
                      {text_of(display_name(f)), apwa_colour(f.utility, look)},
                      {text_of(std::string(utility_name(f.utility))) + ", " + colour_name(f.utility)},
                      {shown_length(plan, f.depth), std::nullopt, true},
                      {nearest_trench(plan, outcome, f)},
                      {crossings_of(plan, outcome, f.id)}});
  if (rows.empty()) return nullptr;
  return std::make_shared<Table>(
      QObject::tr("UTILITIES ON THE LOT"),
      std::vector<Column>{{"", Align::left},
                          {QObject::tr("Line"), Align::left, true},
                          {QObject::tr("Kind, paint"), Align::left},
                          {QObject::tr("Depth to top"), Align::right},
                          {QObject::tr("Nearest coil trench"), Align::right},
                          {QObject::tr("Crossed at"), Align::left}},
      std::move(rows), 10,
      QObject::tr("Colours of the APWA code; the letter stands in the line on the plan. Depths "
                  "are as told to the designer and are not proof: the marks on the ground "
                  "govern, and the line itself laid bare by hand."));
}

}  // namespace underlawn::sheet
