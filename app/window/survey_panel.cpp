// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/survey_panel.h"

#include <QLabel>
#include <QPushButton>
#include <QTableWidget>

#include "window/deed_editor.h"
#include "window/facts.h"
#include "window/notebook_table.h"

namespace underlawn {

SurveyPanel::SurveyPanel(Document& document, QWidget* parent)
    : Form(document, parent),
      document_(document),
      editor_(new DeedEditor),
      wrong_(nullptr),
      passed_(nullptr),
      how_(new QLabel),
      facts_(new Facts),
      courses_(new QTableWidget),
      make_lot_(new QPushButton(tr("Make the lot line"))),
      table_(new NotebookTable(document)),
      placed_wrong_(new QLabel),
      make_(nullptr),
      pin_(nullptr) {
  build_deed();
  build_notebook();
  end();
  refresh();
}

void SurveyPanel::take_keyboard() {
  editor_->setFocus(Qt::ShortcutFocusReason);
}

SurveyMarks SurveyPanel::marks() const {
  SurveyMarks marks;
  if (!isVisible()) return marks;
  const Traverse& t = deed_.traverse;
  for (std::size_t i = 0; i < t.legs.size(); ++i)
    marks.courses.push_back({t.legs[i].line, QString::number(i + 1), i < t.ties});
  if (!courses_->selectedItems().isEmpty()) marks.picked_course = courses_->currentRow();
  if (t.legs.size() > t.ties) marks.begin = t.begin;
  const bool closing = deed_.no_lot == std::nullopt && !t.worked_out && t.precision;
  if (closing && document_.plan().survey.deed.closure == ClosureChoice::as_written) {
    marks.misclosure = Segment{t.end, t.begin};
    marks.misclosure_words = tr("misses by %1").arg(surveyed_length(t.misclosure, document_.plan().units));
  }
  add_marks(marks);
  return marks;
}

void SurveyPanel::showEvent(QShowEvent* event) {
  Form::showEvent(event);
  emit shown_changed();
}

void SurveyPanel::hideEvent(QHideEvent* event) {
  Form::hideEvent(event);
  emit shown_changed();
}

}  // namespace underlawn
