// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "canvas/survey_marks.h"
#include "plan/surveyed.h"
#include "window/form.h"

class QPushButton;
class QTableWidget;
class QToolButton;

namespace underlawn {

class DeedEditor;
class Facts;
class NotebookTable;

// The lot as the deed tells it, and points as they stand in the notebook. Both are drawn over the plan while
// this panel is in sight, the deed as it is typed, and made into lot line and features from here.
class SurveyPanel : public Form {
  Q_OBJECT

 public:
  explicit SurveyPanel(Document& document, QWidget* parent = nullptr);

  SurveyMarks marks() const;  // nothing while it is hidden
  void take_keyboard();
  void make_lot_line();
  void import_points(const QString& path);

  DeedEditor* editor() const { return editor_; }
  QTableWidget* courses() const { return courses_; }
  NotebookTable* notebook() const { return table_; }
  Facts* facts() const { return facts_; }
  QString wrong() const;  // what is said of the deed's text

 signals:
  void shown_changed();
  void trace_asked(const QString& key);
  void told(const QString& words);  // of a file; empty when there is nothing more to say

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  void build_deed();
  void add_deed_fields();
  Deed typed_deed() const;
  void read_deed_text();
  void show_deed();
  void show_courses();
  void show_facts();
  void enter_deed(const QString& text);
  QString take_start(const QString& typed);

  void build_notebook();
  void add_sighting_fields();
  void add_taped_fields();
  void add_coordinate_fields();
  template <class T>
  Bound<T> of_sighting(const QString& what, T Sighting::*member) const;
  const Sighting* sighting() const;  // the one that is edited; null: none
  bool by(std::initializer_list<SightingMethod> methods) const;
  void known_field(const QString& label, std::string Sighting::*member);
  void bearing_field(const QString& label);
  void degrees_field(const QString& label, double Sighting::*member);
  void show_notebook();
  void add_sighting();
  void remove_sightings();
  void ask_file();
  void fill_make_menu();
  void fill_pin_menu();
  void make(Feature feature, bool each, const QString& what);
  void make_spot_heights();
  void add_marks(SurveyMarks& marks) const;

  Document& document_;
  DeedEditor* editor_;
  QLabel *wrong_, *passed_, *how_;
  Facts* facts_;
  QTableWidget* courses_;
  QPushButton* make_lot_;
  std::optional<Plan> entered_on_the_way_;  // as the deed was entered by going to the button
  SurveyedDeed deed_;                       // of the text as it stands in the editor
  NotebookTable* table_;
  QLabel* placed_wrong_;
  QToolButton *make_, *pin_;
  std::vector<PlacedSighting> placed_;
};

// In hundredths of a foot or millimetres, as surveyors write lengths.
QString surveyed_length(double metres, UnitSystem units);
QString sighting_method_name(SightingMethod method);

}  // namespace underlawn
