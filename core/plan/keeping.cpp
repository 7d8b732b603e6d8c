// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/keeping.h"

namespace underlawn {

bool rearranges(const Plan& before, const Plan& after) {
  const Wishes &b = before.wishes, &a = after.wishes;
  if (b.kept != a.kept || b.kept_run != a.kept_run) return false;
  return !(before.site == after.site) || b.locked != a.locked || b.header_on != a.header_on ||
         b.group_headers != a.group_headers || b.run_by != a.run_by;
}

void forget_shown(Wishes& w) {
  w.kept.clear();
  w.kept_run.clear();
}

Plan keeping(const Plan& before, Plan after, const Layout& shown) {
  if (shown.trenches.empty() || !rearranges(before, after)) return after;
  after.wishes.kept.clear();
  for (const Trench& t : shown.trenches)
    if (t.role == TrenchRole::field && !t.locked && t.bends.empty())
      after.wishes.kept.push_back({t.head, t.end});
  after.wishes.kept_run = shown.run.line;
  return after;
}

}  // namespace underlawn
