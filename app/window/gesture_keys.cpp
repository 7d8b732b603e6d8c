// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/gesture_keys.h"

#include <QtGlobal>

namespace underlawn {

std::span<const GestureKey> gesture_keys() {
  static constexpr GestureKey kKeys[] = {
      {"12' 6 Enter", QT_TR_NOOP("So far along the pointer")},
      {"31.5<90, 120 N45E", QT_TR_NOOP("Length with angle or bearing")},
      {"<30, N45E", QT_TR_NOOP("Hold that direction for the next point")},
      {"@10,5", QT_TR_NOOP("From the last point")},
      {"#10,5", QT_TR_NOOP("A place on the drawing")},
      {"18 x 40", QT_TR_NOOP("Size of a rectangle from its corner")},
      {QT_TR_NOOP("Shift"), QT_TR_NOOP("Steps of 15°; select one more")},
      {QT_TR_NOOP("Alt or Ctrl"), QT_TR_NOOP("Catches nothing")},
      {QT_TR_NOOP("Enter, double click"), QT_TR_NOOP("Ends a line; C closes an outline")},
      {"Ctrl+Enter", QT_TR_NOOP("The typed point is the last")},
      {QT_TR_NOOP("Backspace"), QT_TR_NOOP("Takes the last point back")},
      {"Esc", QT_TR_NOOP("Drops it without a trace")},
      {"R", QT_TR_NOOP("Rectangle or outline; way of a dimension")},
      {"K", QT_TR_NOOP("What a utility carries")},
      {QT_TR_NOOP("Arrows, Enter"), QT_TR_NOOP("Lead the pointer, click; Shift: ten times")},
      {QT_TR_NOOP("Arrows"), QT_TR_NOOP("Move what is selected, else the view")},
      {"Tab", QT_TR_NOOP("Walk through what is on the lot")},
      {QT_TR_NOOP("Wheel, Space+drag"), QT_TR_NOOP("Zoom, move the view")},
  };
  return kKeys;
}

}  // namespace underlawn
