// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/side_column.h"

#include <QFrame>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QSplitter>
#include <QTabBar>
#include <QTabWidget>
#include <QTimer>
#include <QVBoxLayout>

#include "plots/crew_chart.h"
#include "plots/temperatures_panel.h"
#include "report/headline.h"
#include "report/report_panel.h"
#include "window/as_built_panel.h"
#include "window/column_grip.h"
#include "window/crew_panel.h"
#include "window/flow_panel.h"
#include "window/ground_panel.h"
#include "window/heat_panel.h"
#include "window/loop_panel.h"
#include "window/lot_list.h"
#include "window/price_panel.h"
#include "window/readings_table.h"
#include "window/record_panel.h"
#include "window/selected_panel.h"
#include "window/size_panel.h"
#include "window/stays_put.h"
#include "window/survey_panel.h"
#include "window/test_panel.h"
#include "window/ways_panel.h"

namespace underlawn {

namespace {

constexpr int kColumn = 364, kWidest = 720;  // the panels, until dragged wider
constexpr int kReportColumn = 430;           // the report, where it has room of its own

QScrollArea* scrolled(QWidget* page) {
  auto* area = new QScrollArea;
  area->setFrameShape(QFrame::NoFrame);
  area->setWidgetResizable(true);
  area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  area->setWidget(page);
  area->setFocusPolicy(Qt::NoFocus);
  new StaysPut(area);
  return area;
}

QWidget* column_of(int width) {
  auto* column = new QWidget;
  column->setObjectName("column");
  column->setAttribute(Qt::WA_StyledBackground);
  column->setFixedWidth(width);
  auto* layout = new QVBoxLayout(column);
  layout->setContentsMargins(1, 0, 0, 0);
  layout->setSpacing(0);
  return column;
}

QFrame* line_under() {
  auto* line = new QFrame;
  line->setObjectName("foot");
  line->setFixedHeight(1);
  return line;
}

}  // namespace

SideColumn::SideColumn(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent),
      headline_(new Headline(document)),
      report_(new ReportPanel(document, selection)),
      trace_(new TracePane(document)),
      selected_(new SelectedPanel(document, selection)),
      lot_list_(new LotList(document, selection)),
      size_(new SizePanel(document)),
      ways_(new WaysPanel(document)),
      record_(new RecordPanel(document)),
      as_built_(new AsBuiltPanel(document)),
      survey_(new SurveyPanel(document)),
      tabs_(new QTabWidget) {
  build(document, selection);
  connect(headline_, &Headline::trace_asked, this, &SideColumn::show_trace);
  connect(headline_, &Headline::findings_asked, this, [this] {
    show_tab(Tab::report, true);
    report_->show_findings();
  });
  connect(report_, &ReportPanel::trace_asked, this, &SideColumn::show_trace);
  connect(report_, &ReportPanel::panel_asked, this,
          [this](const QString& panel) { show_tab(panel == "size" ? Tab::size : Tab::ways, true); });
  connect(headline_, &Headline::as_built_asked, this, [this] { show_tab(Tab::as_built, true); });
  connect(as_built_, &AsBuiltPanel::answer_changed, this, [this] {
    const AsBuiltAnswer* answer = as_built_->answer();
    headline_->show_as_built(answer == nullptr || !worse_than_planned(answer->holds));
  });
  connect(selected_, &SelectedPanel::trace_asked, this, &SideColumn::show_trace);
  connect(lot_list_, &LotList::edit_asked, this, [this] {
    show_tab(Tab::selected, false);
    selected_->focus_first_field();
  });
  connect(&selection, &Selection::changed, this, [this, &selection] { follow_selection(selection); });
}

void SideColumn::build(Document& document, Selection&) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  auto* panels = column_of(kColumn);
  report_column_ = column_of(kReportColumn);
  row->addWidget(new ColumnGrip(*panels, kColumn, kWidest));
  row->addWidget(panels);
  row->addWidget(report_column_);
  report_column_->hide();

  auto* split = new QSplitter(Qt::Vertical);
  split->setChildrenCollapsible(false);
  split->addWidget(tabs_);
  split->addWidget(trace_);
  split->setSizes({600, 320});
  auto* column = static_cast<QVBoxLayout*>(panels->layout());
  column->addWidget(headline_);
  column->addWidget(line_under());
  column->addWidget(split, 1);
  report_home_ = static_cast<QVBoxLayout*>(report_column_->layout());

  tabs_->setDocumentMode(true);
  tabs_->tabBar()->setExpanding(false);
  tabs_->tabBar()->setUsesScrollButtons(true);
  tabs_->tabBar()->setFocusPolicy(Qt::TabFocus);
  add_page(Tab::report, report_, tr("Report"), tr("What the loop takes, and what the checks say (Alt+1)"));
  add_page(Tab::loop, scrolled(new LoopPanel(document)), tr("Loop"), tr("What is asked for (Alt+2)"));
  add_page(Tab::selected, selected_, tr("Selected"), tr("What is selected, to be edited (Alt+3)"));
  add_page(Tab::lot, lot_list_, tr("Lot"), tr("Everything on the lot (Alt+4)"));
  connect(survey_, &SurveyPanel::trace_asked, this, &SideColumn::show_trace);
  connect(survey_, &SurveyPanel::told, this, &SideColumn::told);
  add_page(Tab::survey, scrolled(survey_), tr("Survey"), tr("Deed calls, tape and notebook (Alt+5)"));
  add_page(Tab::ground, scrolled(new GroundPanel(document)), tr("Ground"),
           tr("Soil, slopes, swell and frost (Alt+6)"));
  auto* heat = new HeatPanel(document);
  connect(heat, &HeatPanel::told, this, &SideColumn::told);
  add_page(Tab::heat, scrolled(heat), tr("Heat"), tr("Soil, weather, house and heat pump (Alt+7)"));
  auto* flow = new FlowPanel(document);
  auto* test = flow->findChild<TestPanel*>();
  connect(test, &TestPanel::record_asked, this, [this] { show_tab(Tab::record, true); });
  connect(record_, &RecordPanel::readings_asked, this, [this, test] {
    show_tab(Tab::flow, false);
    auto* area = static_cast<QScrollArea*>(pages_[static_cast<std::size_t>(Tab::flow)]);
    QWidget* adding = test->readings()->adding();
    QTimer::singleShot(0, area, [area, adding] {  // once the page is laid out
      area->ensureWidgetVisible(adding, 0, area->height() / 2);
      adding->setFocus(Qt::ShortcutFocusReason);
    });
  });
  add_page(Tab::flow, scrolled(flow), tr("Flow"),
           tr("Fluid, pumps, header, purge and pressure test (Alt+8)"));
  add_page(Tab::temperatures, scrolled(new TemperaturesPanel(document)), tr("Charts"),
           tr("Water, ground and load through the year (Alt+9)"));
  add_page(Tab::size, scrolled(size_), tr("Size"), tr("How large the loop has to be (Alt+0)"));
  add_page(Tab::ways, scrolled(ways_), tr("Ways"), tr("Other ways to lay the loop, compared (Alt+W)"));
  auto* price = new PricePanel(document);
  connect(price, &PricePanel::told, this, &SideColumn::told);
  connect(price, &PricePanel::trace_asked, this, &SideColumn::show_trace);
  add_page(Tab::price, scrolled(price), tr("Price"),
           tr("Price book, offer, running cost and payback (Alt+M)"));
  add_page(Tab::crew, scrolled(new CrewPanel(document)), tr("Crew"),
           tr("Order of digging, crew calendar, machine and rates (Alt+C)"));
  add_page(Tab::record, scrolled(record_), tr("Record"),
           tr("Pressure test, flushing and fill as they were done (Alt+R)"));
  add_page(Tab::as_built, scrolled(as_built_), tr("As-built"),
           tr("What was really dug, and whether it still holds (Alt+B)"));
  add_page(Tab::title, scrolled(new TitlePanel(document)), tr("Title"),
           tr("What is printed at the foot of every sheet (Alt+T)"));
}

void SideColumn::add_page(Tab tab, QWidget* page, const QString& title, const QString& help) {
  pages_[static_cast<std::size_t>(tab)] = page;
  tabs_->setTabToolTip(tabs_->addTab(page, title), help);
}

void SideColumn::show_tab(Tab tab, bool take_keyboard) {
  QWidget* page = pages_[static_cast<std::size_t>(tab)];
  if (tabs_->indexOf(page) >= 0) tabs_->setCurrentWidget(page);
  if (!take_keyboard) return;
  if (tab == Tab::selected) return selected_->focus_first_field();
  if (tab == Tab::lot) return lot_list_->focus_find();
  if (tab == Tab::report) return report_->setFocus(Qt::ShortcutFocusReason);
  if (tab == Tab::ways) return ways_->take_keyboard();
  if (tab == Tab::survey) return survey_->take_keyboard();
  auto* area = static_cast<QScrollArea*>(page);
  if (tab == Tab::temperatures) return area->widget()->setFocus(Qt::ShortcutFocusReason);
  if (tab == Tab::crew)
    return static_cast<CrewPanel*>(area->widget())->chart()->setFocus(Qt::ShortcutFocusReason);
  static_cast<Form*>(area->widget())->first_field()->setFocus(Qt::ShortcutFocusReason);
}

SideColumn::Tab SideColumn::tab() const {
  for (std::size_t i = 0; i < pages_.size(); ++i)
    if (pages_[i] == tabs_->currentWidget()) return static_cast<Tab>(i);
  return Tab::report;
}

// Picking something on the drawing shows its fields; the other panels are left alone only by the lot list, in
// which one walks through everything.
void SideColumn::follow_selection(const Selection& selection) {
  if (selection.now().kind == Selected::Kind::nothing || tab() == Tab::lot) return;
  // What was dug is looked at there; the selected page would show the planned trench.
  if (tab() == Tab::as_built) {
    if (selection.now().kind == Selected::Kind::trench) as_built_->choose_trench(selection.now().id);
    return;
  }
  show_tab(Tab::selected, false);
}

void SideColumn::set_wide(bool wide) {
  if (wide == wide_) return;
  wide_ = wide;
  if (wide) {
    tabs_->removeTab(tabs_->indexOf(report_));
    report_home_->addWidget(report_);
    report_->show();
  } else {
    tabs_->insertTab(0, report_, tr("Report"));
  }
  report_column_->setVisible(wide);
}

void SideColumn::show_trace(const QString& key) {
  trace_->show_figure(key);
}

}  // namespace underlawn
