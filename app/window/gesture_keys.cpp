// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/gesture_keys.h"

#include <QtGlobal>

namespace underlawn {

std::span<const GestureKey> gesture_keys() {
  static constexpr GestureKey kKeys[] = {
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "12' 6 Enter"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("So far along the pointer"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "31.5<90, 120 N45E"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Length with angle or bearing"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "<30, N45E"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Hold that direction for the next point"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "@10,5"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("From the last point"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "#10,5"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("A place on the drawing"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "18 x 40"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Size of a rectangle from its corner"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Shift")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Steps of 15°; select one more"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Alt or Ctrl")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Catches nothing"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Enter, double click")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Ends a line; C closes an outline"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "Ctrl+Enter"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("The typed point is the last"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Backspace")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Takes the last point back"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Esc")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Drops it without a trace"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "R"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Rectangle or outline; way of a dimension"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), "K"),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("What a utility carries"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Arrows, Enter")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Lead the pointer, click; Shift: ten times"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Arrows")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Move what is selected, else the view"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Tab")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Walk through what is on the lot"))},
      {QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Wheel, Space+drag")),
       QT_TRANSLATE_NOOP(QT_TR_NOOP("Gestures"), QT_TR_NOOP("Zoom, move the view"))},
  };
  return kKeys;
}

}  // namespace underlawn
