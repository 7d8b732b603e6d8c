// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "base/result.h"
#include "plan/plan.h"

namespace underlawn {

inline constexpr qint64 kMostStoredBytes = 8 << 20;  // a larger file stays beside the plan

// The picture in a file, `width` metres wide with its middle at `middle`. Stored with the plan where it is
// small enough for that, else by its path from the plan's folder. Refuses what cannot be read or shown.
Result<Picture> picture_from_file(const QString& path, const Plan& plan, const QString& plan_path,
                                  Point middle, double width);

// The same picture stored with the plan, or beside it: then its bytes are written next to the plan file
// unless they are there already.
Result<Picture> stored_with(const Picture& picture, const Plan& plan, const QString& plan_path);
Result<Picture> stored_beside(const Picture& picture, const QString& plan_path);

}  // namespace underlawn
