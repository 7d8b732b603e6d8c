// SPDX-License-Identifier: GPL-3.0-or-later
// What the survey draws over the plan while one works on it: the deed's courses, and points of the notebook.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "canvas/look.h"
#include "canvas/view.h"
#include "plane/point.h"

class QPainter;

namespace underlawn {

struct SurveyMarks {
  struct Course {
    Polyline line;
    QString name;  // "3"
    bool tie = false;
  };
  std::vector<Course> courses;
  int picked_course = -1;
  std::optional<Point> begin;         // of the boundary
  std::optional<Segment> misclosure;  // from its end back to its beginning
  QString misclosure_words;

  struct Mark {
    QString name;
    Point at;
    bool picked = false;
    std::optional<Segment> base;  // the points it was measured from
  };
  std::vector<Mark> marks;

  bool empty() const { return courses.empty() && marks.empty(); }
};

void paint_survey(QPainter& painter, const SurveyMarks& survey, const View& view, const Look& look);

std::vector<Point> places_of(const SurveyMarks& survey);  // all that has to be in sight

}  // namespace underlawn
