// SPDX-License-Identifier: GPL-3.0-or-later
// Corner by corner what makes the turn of run and header: the elbow, and what the pipe itself bends.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "pipe/pipe_size.h"
#include "plan/header_words.h"
#include "sheets/contents.h"
#include "sheets/crew_needs.h"

namespace underlawn::sheet {

namespace {

constexpr double kSamePoint = 0.05;  // m
constexpr double kStraight = 1;      // degrees: no corner

double turn_at(const Polyline& line, std::size_t i) {
  const Point in = unit(line[i] - line[i - 1]), on = unit(line[i + 1] - line[i]);
  return std::acos(std::clamp(dot(in, on), -1.0, 1.0)) * 180 / std::numbers::pi;
}

// The elbows are those that are counted: header_tree.h.
QString made_by(double turn) {
  if (turn <= 22.5) return QObject::tr("the pipe's own bend");
  const int elbow = turn > 67.5 ? 90 : 45;
  const long rest = std::lround(turn - elbow);
  if (rest == 0) return QObject::tr("elbow %1°").arg(elbow);
  return rest > 0 ? QObject::tr("elbow %1°, the pipe bends %2° more").arg(elbow).arg(rest)
                  : QObject::tr("elbow %1°, the pipe bends %2° back").arg(elbow).arg(-rest);
}

QString stake_at(const Outcome& outcome, Point p) {
  for (const Tie& tie : outcome.stake_out.ties)
    if (distance(tie.at, p) <= kSamePoint) return point_name(tie);
  return {};
}

void add_bends(QStringList& words, const Outcome& outcome, const Polyline& line) {
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    if (distance(line[i - 1], line[i]) < kSamePoint || distance(line[i], line[i + 1]) < kSamePoint) continue;
    const double turn = turn_at(line, i);
    const QString stake = stake_at(outcome, line[i]);
    if (turn < kStraight || stake.isEmpty()) continue;
    words << QString("%1, %2°: %3").arg(stake).arg(std::lround(turn)).arg(made_by(turn));
  }
}

}  // namespace

// 100 diameters where a fitting is in the bend: makers' tables of polyethylene pipe beside the 25 of DR 11.
QString bend_words(const Plan& plan, const Outcome& outcome) {
  QStringList words;
  add_bends(words, outcome, outcome.layout.run.line);
  for (const Polyline& leg : outcome.layout.header.legs) add_bends(words, outcome, leg);
  const auto size = find_pipe(run_size(plan, outcome));
  if (words.isEmpty() || !size) return {};
  return QObject::tr(
             "Corners, both pipes: %1. Bend the run no tighter than %2 of radius, beside an elbow %3.")
      .arg(words.join("; "), shown_length(plan, size->least_bend_radius()),
           shown_length(plan, 100 * size->outside_diameter));
}

}  // namespace underlawn::sheet
