// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/form.h"

class QLabel;

namespace underlawn {

class ChartView;
class PriceTable;

// What the loop costs, what it costs to run, and when it has paid for itself: price book, terms of the offer,
// other ways to heat and cool.
class PricePanel : public Form {
  Q_OBJECT

 public:
  explicit PricePanel(Document& document, QWidget* parent = nullptr);

  // Reads a price book and takes it over as one entry; what is wrong with it is told.
  void read_book(const QString& path);
  void write_book(const QString& path);
  PriceTable* table() const { return table_; }
  ChartView* chart() const { return chart_; }
  void add_system(int usual);  // of usual_systems()
  void choose_system(int system);

 signals:
  void told(const QString& words);  // of a file; empty when there is nothing more to say
  void trace_asked(const QString& key);

 private:
  void add_summary();
  void add_book();
  void add_counting();
  void add_terms();
  void add_extras();
  void add_incentives();
  void add_running_costs();
  void add_systems();
  void add_system_fields();
  void add_result();
  QWidget* book_buttons();
  QWidget* system_buttons();
  QLabel* linked();
  void remove_system();
  // Of the system chosen, which is there.
  Bound<double> of_system(double OtherSystem::*field, const QString& what);
  Bound<QString> text_of_system(std::string OtherSystem::*field, const QString& what);
  bool has_system(const Plan& plan) const;
  std::size_t chosen(const Plan& plan) const;

  Document& document_;
  PriceTable* table_ = nullptr;
  ChartView* chart_ = nullptr;
  int system_ = 0;
};

}  // namespace underlawn
