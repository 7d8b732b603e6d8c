// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/joints.h"

#include "cost/packs.h"
#include "cost/price_book.h"
#include "layout/amounts.h"

namespace underlawn {

int count_joints(const JobDrawn& job, const Pricing& pricing) {
  int joints = job.solved != nullptr
                   ? count_fittings(job.solved->loop, job.layout, job.flow.arrangement).joints
                   : joints_of(job.layout);
  for (const Need& pipe : take_off_pipe(job, pricing))
    joints += 2 * bought_of(pipe, row_of(pricing.book, job.wishes, pipe.key)).joins;
  return joints;
}

}  // namespace underlawn
