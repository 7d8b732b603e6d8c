// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/map_name.h"

namespace underlawn {

QString map_name(const PaintContext& c, const Feature& f) {
  const QString whole = QString::fromStdString(display_name(f));
  if (!c.options.sheet || whole.size() <= kLongestOnPaper) return whole;
  // Between words, where that leaves most of it.
  const auto blank = whole.left(kLongestOnPaper).lastIndexOf(' ');
  return whole.left(blank > kLongestOnPaper / 2 ? blank : kLongestOnPaper - 1) + "…";
}

}  // namespace underlawn
