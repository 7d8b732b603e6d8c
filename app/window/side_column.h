// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "window/document.h"
#include "window/selection.h"

class QSplitter;
class QTabWidget;
class QVBoxLayout;

namespace underlawn {

class Headline;
class ReportPanel;
class TracePane;
class SelectedPanel;
class LotList;
class SizePanel;
class WaysPanel;
class RecordPanel;
class AsBuiltPanel;
class SurveyPanel;

// Right of the drawing: the headline, always in sight; the panels as tabs; how a number came about. In a wide
// window the report has a column of its own.
class SideColumn : public QWidget {
  Q_OBJECT

 public:
  SideColumn(Document& document, Selection& selection, QWidget* parent = nullptr);

  enum class Tab {
    report,
    loop,
    selected,
    lot,
    ground,
    heat,
    temperatures,
    size,
    flow,
    title,
    ways,
    price,
    crew,
    record,
    as_built,
    survey
  };
  void show_tab(Tab tab, bool take_keyboard);
  Tab tab() const;
  void set_wide(bool wide);
  void show_trace(const QString& key);

  Headline* headline() const { return headline_; }
  ReportPanel* report() const { return report_; }
  TracePane* trace() const { return trace_; }
  SelectedPanel* selected() const { return selected_; }
  SizePanel* size_panel() const { return size_; }
  WaysPanel* ways_panel() const { return ways_; }
  RecordPanel* record_panel() const { return record_; }
  AsBuiltPanel* as_built_panel() const { return as_built_; }
  SurveyPanel* survey_panel() const { return survey_; }
  LotList* lot_list() const { return lot_list_; }
  QWidget* page(Tab tab) const { return pages_[static_cast<std::size_t>(tab)]; }

 signals:
  void told(const QString& words);  // of a file a panel read; empty when there is nothing more to say

 private:
  void build(Document& document, Selection& selection);
  void add_page(Tab tab, QWidget* page, const QString& title, const QString& help);
  void follow_selection(const Selection& selection);

  Headline* headline_;
  ReportPanel* report_;
  TracePane* trace_;
  SelectedPanel* selected_;
  LotList* lot_list_;
  SizePanel* size_;
  WaysPanel* ways_;
  RecordPanel* record_;
  AsBuiltPanel* as_built_;
  SurveyPanel* survey_;
  QTabWidget* tabs_;
  QWidget* report_column_;
  QVBoxLayout* report_home_;
  std::array<QWidget*, 16> pages_{};
  bool wide_ = false;
};

}  // namespace underlawn
