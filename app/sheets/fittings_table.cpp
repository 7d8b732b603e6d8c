// SPDX-License-Identifier: GPL-3.0-or-later
#include <map>

#include "cost/bill.h"
#include "sheets/contents.h"
#include "sheets/crew_needs.h"

namespace underlawn::sheet {

namespace {

QString numbers(const std::vector<int>& trenches) {
  QStringList all;
  for (int n : trenches) all << QString::number(n);
  return all.join(" + ");
}

QString said(FittingPlace place) {
  switch (place) {
    case FittingPlace::house:
      return QObject::tr("at the house", "where a fitting comes");
    case FittingPlace::junction:
      return QObject::tr("where header pipes meet");
    case FittingPlace::run_bends:
      return QObject::tr("corners of the run");
    case FittingPlace::header_bends:
      return QObject::tr("corners of the header");
    case FittingPlace::heads:
      break;
  }
  return {};
}

// "head 5: 2; heads 1, 3: 1 each; corners of the run: 2"
QString places_of(const std::vector<FittingAt>& placed, const std::string& key) {
  std::map<int, QStringList, std::greater<>> heads;  // by how many come at each
  QStringList all, others;
  for (const FittingAt& f : placed) {
    if (f.key != key) continue;
    if (f.place == FittingPlace::heads)
      heads[f.count] << numbers(f.trenches);
    else
      others << QString("%1: %2").arg(said(f.place)).arg(f.count);
  }
  for (const auto& [count, at] : heads)
    all << (at.size() > 1 ? QObject::tr("heads %1: %2 each").arg(at.join(", ")).arg(count)
                          : QObject::tr("head %1: %2").arg(at.front()).arg(count));
  return (all + others).join("; ");
}

// Plugs are counted by the coils and the run, not by what the network meets.
QString plugged(const Plan& plan, const Outcome& outcome, const std::string& key) {
  QStringList all;
  const auto coil = find_pipe(plan.wishes.pipe);
  if (coil && key == fitting_key("cap", coil->nominal))
    all << QObject::tr("both ends of every coil until it is joined");
  if (key == fitting_key("cap", outcome.flow->sizes.run.nominal))
    all << QObject::tr("both pipes of the run for the test");
  return all.join("; ");
}

}  // namespace

BlockPtr fittings_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.bill == nullptr || outcome.flow == nullptr) return nullptr;
  const FittingCount count = count_fittings(outcome.flow->loop, outcome.layout, plan.flow.arrangement);
  std::vector<std::vector<Cell>> rows;
  for (const BillLine& line : outcome.bill->lines) {
    if (line.group != BillGroup::fittings) continue;
    QString where = places_of(count.placed, line.row);
    if (where.isEmpty()) where = plugged(plan, outcome, line.row);
    rows.push_back({{text_of(line.item)}, {QString::number(line.needed), std::nullopt, true}, {where}});
  }
  if (rows.empty()) return nullptr;
  QString note = QObject::tr("%1 joints to be fused in all.").arg(count.joints);
  if (const QString bends = bend_words(plan, outcome); !bends.isEmpty()) note += " " + bends;
  if (plan.pricing.counting.fitting_spare > 0)
    note += " " + QObject::tr("The number has the spare ones in it, the places have not.");
  return std::make_shared<Table>(QObject::tr("FITTINGS OF HEADER AND RUN"),
                                 std::vector<Column>{{QObject::tr("Fitting"), Align::left, true},
                                                     {QObject::tr("How many"), Align::right},
                                                     {QObject::tr("Where, both pipes"), Align::left, true}},
                                 std::move(rows), 10, note);
}

}  // namespace underlawn::sheet
