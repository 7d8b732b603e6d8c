// SPDX-License-Identifier: GPL-3.0-or-later
// Names that must be known before anybody digs, and what to do where something goes wrong.
#include "cost/crew_calendar.h"
#include "layout/crossing_tags.h"
#include "sheets/contents.h"
#include "sheets/crew_needs.h"
#include "sheets/form_block.h"

namespace underlawn::sheet {

namespace {

QString days_to_tick(const CrewCalendar& calendar) {
  QStringList all;
  for (std::size_t i = 0; i < calendar.days.size(); ++i) all << QString("☐ %1").arg(i + 1);
  return all.join("  ");
}

QStringList owners(const Plan& plan, const Outcome& outcome) {
  QStringList all;
  for (const Crossing& x : outcome.layout.crossings) {
    const Feature* f = find_feature(plan.site, x.feature_id);
    if (f != nullptr && f->kind == FeatureKind::utility) all << text_of(display_name(*f));
  }
  all.removeDuplicates();
  return all;
}

}  // namespace

BlockPtr safety_form(const Plan& plan, const Outcome& outcome) {
  if (outcome.calendar == nullptr || outcome.calendar->tasks.empty()) return nullptr;
  const QStringList crossed = owners(plan, outcome);
  std::vector<FormRow> rows{
      {QObject::tr("Competent person, signs"), "", {""}},
      {QObject::tr("looked, day"), "", {days_to_tick(*outcome.calendar)}},
      {QObject::tr("Staked on, by"), "", {""}},
  };
  if (!crossed.isEmpty()) {
    rows.push_back({QObject::tr("By hand digs; watches"), "", {""}});
    for (const QString& line : crossed) rows.push_back({QObject::tr("Owner of %1").arg(line), "", {""}});
  }
  rows.push_back({QObject::tr("Guards open trenches at night"), "", {""}});
  rows.push_back({QObject::tr("Emergency 911, to"), "", {text_of(plan.title.address)}});
  // Common practice, no source.
  return std::make_shared<FormBlock>(
      QObject::tr("NAMES AND EMERGENCY"), "", QStringList{QObject::tr("Name, number")}, std::move(rows),
      QObject::tr(
          "A line hit, a smell of gas, a bare cable, a slide: stop, everybody out and away, upwind; no "
          "flame, no switch; call 911, then the owner. Nobody goes back in or after somebody. Rock or a "
          "pipe that nobody knows: stop, touch nothing, call its owner or the designer."));
}

}  // namespace underlawn::sheet
