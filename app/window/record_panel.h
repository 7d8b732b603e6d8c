// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "plan/record/record_judge.h"
#include "window/facts.h"
#include "window/form.h"

class QComboBox;
class QPushButton;

namespace underlawn {

class CellsTable;
class RecordLines;

// What is written down on the job: pressure test, flushing, fill, who signs; and what that tells.
class RecordPanel : public Form {
  Q_OBJECT

 public:
  explicit RecordPanel(Document& document, QWidget* parent = nullptr);

  RecordLines* test_lines() const { return test_; }
  RecordLines* flush_lines() const { return flush_; }
  RecordLines* fill_lines() const { return fill_; }
  void add_flushing();  // one entry of the history; the fields are those of the new one
  void remove_flushing();
  std::size_t flushing() const { return at_; }

 signals:
  void readings_asked();  // the gauge's, on the flow page

 private:
  void add_test();
  void add_flush();
  void add_flush_fields();
  void add_fill();
  void add_signatures();
  void choose_flushing(std::size_t at);
  void show_choices();
  void judge();
  void show_asked(const RecordJudgement& judged);

  template <class T>
  Bound<T> of_flush(T FlushReading::*field, const QString& what) const;
  std::function<std::string*(Plan&)> flush_text(std::string FlushReading::*field) const;

  Document& document_;
  RecordLines *test_, *flush_, *fill_;
  Facts *flush_asked_, *fill_asked_;
  QComboBox* which_ = nullptr;
  QPushButton* remove_ = nullptr;
  TypedField* circuits_ = nullptr;
  std::size_t at_ = 0;
};

}  // namespace underlawn
