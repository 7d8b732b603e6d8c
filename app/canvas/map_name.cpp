// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/map_name.h"

namespace underlawn {

QString map_name(const PaintContext& c, const Feature& f) {
  const QString whole = QString::fromStdString(display_name(f));
  if (!c.options.sheet || whole.size() <= kLongestOnPaper) return whole;
  QString begins = whole.left(kLongestOnPaper - 1);
  // Between words, where that leaves most of it.
  if (const auto blank = begins.lastIndexOf(' '); blank > kLongestOnPaper / 2) begins.truncate(blank);
  return begins + "…";
}

}  // namespace underlawn
