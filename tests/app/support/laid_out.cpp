// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/support/laid_out.h"

#include "files/plan_file.h"
#include "plan/checks/check.h"
#include "plan/figures/figures.h"
#include "plan/fingerprint.h"
#include "support/sample_plans.h"

namespace underlawn::laid_out {

namespace {

Trench trench(const Plan& plan, int number, Point head, Point end) {
  Trench t;
  t.number = number;
  t.head = head;
  t.end = end;
  t.width = plan.wishes.trench_width;
  t.depth = plan.wishes.trench_depth;
  CoilRequest request;
  request.loop_diameter = plan.wishes.loop_diameter;
  request.coil_length = plan.wishes.coil_length;
  request.trench_length = distance(head, end);
  t.coil = solve_coil(request).value();
  return t;
}

void add_crossings(const Plan& plan, Layout& layout) {
  for (const Feature& f : plan.site.features) {
    if (f.kind != FeatureKind::utility || layout.run.line.size() < 2) continue;
    const Point a = layout.run.line[0], b = layout.run.line[1], c = f.points[0], d = f.points[1];
    const double whole = cross(b - a, d - c);
    if (whole == 0) continue;
    const double s = cross(c - a, d - c) / whole, u = cross(c - a, b - a) / whole;
    if (s <= 0 || s >= 1 || u <= 0 || u >= 1) continue;
    layout.crossings.push_back(
        {f.id, Conduit::run, a + s * (b - a), 1.4, f.depth, plan.wishes.run_depth, 0.52});
  }
}

}  // namespace

Sample of(Plan plan, std::vector<Trench> trenches) {
  Sample sample{std::move(plan), {}};
  Outcome& o = sample.outcome;
  o.coil = trenches.front().coil;
  o.layout.trenches = std::move(trenches);
  o.layout.wanted = o.layout.fits = static_cast<int>(o.layout.trenches.size());
  o.layout.run.line = {sample.plan.site.entry->at, o.layout.trenches.front().head};
  o.layout.run.length = length(o.layout.run.line);
  Polyline heads;
  for (const Trench& t : o.layout.trenches) heads.push_back(t.head);
  if (heads.size() > 1) o.layout.header = {{heads}, length(heads)};
  add_crossings(sample.plan, o.layout);
  if (const auto buildable = buildable_region(sample.plan.site)) o.layout.buildable = *buildable;
  o.dig = make_dig(o.layout, sample.plan.wishes, sample.plan.ground);
  o.stake_out = make_stake_out(sample.plan.site, o.layout);
  o.figures = make_figures(sample.plan, o);
  o.findings = run_checks(sample.plan, o);
  o.fingerprint = fingerprint(sample.plan);
  return sample;
}

Sample half_acre(int count) {
  Plan plan = sample::half_acre();
  plan.title = {"Half acre", "9 Quarry Road, Millbrook", "Ada Lindqvist", "Hollis Ground Works", "555-0117",
                ""};
  plan.wishes.circuits = count;
  std::vector<Trench> trenches;
  const double step = count > 5 ? 5 : 12;
  for (int i = 0; i < count; ++i)
    trenches.push_back(
        trench(plan, i + 1, sample::feet(22, 80 + step * i), sample::feet(122, 80 + step * i)));
  return of(std::move(plan), std::move(trenches));
}

Sample alder(int count) {
  Plan plan = load_plan(UNDERLAWN_SOURCE_DIR "/samples/alder-lane.underlawn")->value;
  std::vector<Trench> trenches;
  for (int i = 0; i < count; ++i)
    trenches.push_back(trench(plan, i + 1, sample::feet(60 + 12 * i, 80), sample::feet(60.5 + 12 * i, 180)));
  return of(std::move(plan), std::move(trenches));
}

}  // namespace underlawn::laid_out
