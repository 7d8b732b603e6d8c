// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/form.h"

namespace underlawn {

class CrewChart;

// How it is dug and by whom: the calendar, what would save time, the order of digging, sides, spoil, machine,
// crew and rates.
class CrewPanel : public Form {
  Q_OBJECT

 public:
  explicit CrewPanel(Document& document, QWidget* parent = nullptr);
  CrewChart* chart() const { return chart_; }

 private:
  void add_calendar();
  void add_order();
  void add_sides();
  void add_spoil();
  void add_hours();
  void add_crew();
  void add_rates();
  void add_machine(const QString& title, Machine& (*of)(Plan&), bool digs);
  void fill_access();
  QString shown(Quantity quantity, double value) const;

  Document& document_;
  CrewChart* chart_;
  QLabel* told_;
  QComboBox* access_ = nullptr;
};

}  // namespace underlawn
