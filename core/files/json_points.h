// SPDX-License-Identifier: GPL-3.0-or-later
// Points in files: [x, y], metres.
#pragma once

#include "files/json_text.h"
#include "plan/picture.h"
#include "plane/point.h"

namespace underlawn {

inline Json to_json(Point p) {
  return Json::array({p.x, p.y});
}

inline Json to_json(const SharedText& text) {
  return text.text();
}

template <class T>
Json to_json(const T& plain) {
  return plain;
}

// Points, lines of points, regions of rings.
template <class T>
Json to_json(const std::vector<T>& values) {
  Json list = Json::array();
  for (const T& value : values) list.push_back(to_json(value));
  return list;
}

}  // namespace underlawn
