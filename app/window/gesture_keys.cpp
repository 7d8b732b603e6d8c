// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/gesture_keys.h"

#include <QtGlobal>

namespace underlawn {

std::span<const GestureKey> gesture_keys() {
  static constexpr GestureKey kKeys[] = {
      {QT_TRANSLATE_NOOP("Gestures", "12' 6 Enter"),
       QT_TRANSLATE_NOOP("Gestures", "So far along the pointer")},
      {QT_TRANSLATE_NOOP("Gestures", "31.5<90, 120 N45E"),
       QT_TRANSLATE_NOOP("Gestures", "Length with angle or bearing")},
      {QT_TRANSLATE_NOOP("Gestures", "<30, N45E"),
       QT_TRANSLATE_NOOP("Gestures", "Hold that direction for the next point")},
      {QT_TRANSLATE_NOOP("Gestures", "@10,5"), QT_TRANSLATE_NOOP("Gestures", "From the last point")},
      {QT_TRANSLATE_NOOP("Gestures", "#10,5"), QT_TRANSLATE_NOOP("Gestures", "A place on the drawing")},
      {QT_TRANSLATE_NOOP("Gestures", "18 x 40"),
       QT_TRANSLATE_NOOP("Gestures", "Size of a rectangle from its corner")},
      {QT_TRANSLATE_NOOP("Gestures", "Shift"),
       QT_TRANSLATE_NOOP("Gestures", "Steps of 15°; select one more")},
      {QT_TRANSLATE_NOOP("Gestures", "Alt or Ctrl"), QT_TRANSLATE_NOOP("Gestures", "Catches nothing")},
      {QT_TRANSLATE_NOOP("Gestures", "Enter, double click"),
       QT_TRANSLATE_NOOP("Gestures", "Ends a line; C closes an outline")},
      {QT_TRANSLATE_NOOP("Gestures", "Ctrl+Enter"),
       QT_TRANSLATE_NOOP("Gestures", "The typed point is the last")},
      {QT_TRANSLATE_NOOP("Gestures", "Backspace"),
       QT_TRANSLATE_NOOP("Gestures", "Takes the last point back")},
      {QT_TRANSLATE_NOOP("Gestures", "Esc"), QT_TRANSLATE_NOOP("Gestures", "Drops it without a trace")},
      {QT_TRANSLATE_NOOP("Gestures", "R"),
       QT_TRANSLATE_NOOP("Gestures", "Rectangle or outline; way of a dimension")},
      {QT_TRANSLATE_NOOP("Gestures", "K"), QT_TRANSLATE_NOOP("Gestures", "What a utility carries")},
      {QT_TRANSLATE_NOOP("Gestures", "Arrows, Enter"),
       QT_TRANSLATE_NOOP("Gestures", "Lead the pointer, click; Shift: ten times")},
      {QT_TRANSLATE_NOOP("Gestures", "Arrows"),
       QT_TRANSLATE_NOOP("Gestures", "Move what is selected, else the view")},
      {QT_TRANSLATE_NOOP("Gestures", "Tab"),
       QT_TRANSLATE_NOOP("Gestures", "Walk through what is on the lot")},
      {QT_TRANSLATE_NOOP("Gestures", "Wheel, Space+drag"),
       QT_TRANSLATE_NOOP("Gestures", "Zoom, move the view")},
  };
  return kKeys;
}

}  // namespace underlawn
