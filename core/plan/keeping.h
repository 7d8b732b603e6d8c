// SPDX-License-Identifier: GPL-3.0-or-later
// A drawing that is calm while something is dragged: trenches stay near where they were last shown.
#pragma once

#include "layout/layout.h"
#include "plan/plan.h"

namespace underlawn {

// Whether an edit moved something on the lot or something held, so that trenches are arranged anew round it.
// An edit that says itself what is kept is none.
bool rearranges(const Plan& before, const Plan& after);

// Nothing is kept any more of what was shown.
void forget_shown(Wishes& wishes);

// `after`, keeping the field trenches of `shown` in Wishes::kept and its run in Wishes::kept_run where
// rearranges(before, after); locked trenches need no keeping. An empty layout keeps what `after` keeps
// already.
Plan keeping(const Plan& before, Plan after, const Layout& shown);

}  // namespace underlawn
