// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/selected_panel.h"

#include <QApplication>
#include <QLabel>
#include <QVBoxLayout>

#include "report/figure_table.h"
#include "window/form.h"
#include "window/several_page.h"
#include "window/theme.h"

namespace underlawn {

namespace {

QWidget* hint_page() {
  auto* page = new QWidget;
  page->setObjectName("page");
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(4 * kGap, 4 * kGap, 4 * kGap, 4 * kGap);
  auto* label = new QLabel(
      SelectedPanel::tr("Nothing is selected.\n\nClick something on the drawing, pick it in the lot "
                        "list, or press Ctrl+Down to walk through everything on the lot."));
  label->setObjectName("faint");
  label->setWordWrap(true);
  column->addWidget(label);
  column->addStretch();
  return page;
}

}  // namespace

SelectedPanel::SelectedPanel(Document& document, Selection& selection, QWidget* parent)
    : QScrollArea(parent), document_(document), selection_(selection) {
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  connect(&selection, &Selection::changed, this, &SelectedPanel::refresh);
  connect(&document, &Document::plan_changed, this, &SelectedPanel::refresh);
  rebuild();
}

SelectedPanel::Shown SelectedPanel::wanted() const {
  Shown now;
  for (const Selected& s : selection_.all()) {
    if (!is_there(document_.plan(), s)) continue;
    now.what.push_back(s);
    if (s.kind == Selected::Kind::feature)
      now.kinds.push_back(find_feature(document_.plan().site, s.id)->kind);
  }
  return now;
}

void SelectedPanel::refresh() {
  if (wanted() != shown_) rebuild();
}

QWidget* SelectedPanel::make_page() {
  using Kind = Selected::Kind;
  if (shown_.what.empty()) return hint_page();
  if (shown_.what.size() > 1) return several_page(document_, selection_, shown_.what);
  const Selected& one = shown_.what.front();
  switch (one.kind) {
    case Kind::feature:
      return feature_page(document_, one.id);
    case Kind::lot:
      return lot_page(document_, selection_);
    case Kind::lot_edge:
      return edge_page(document_, selection_, one.index);
    case Kind::entry:
      return entry_page(document_);
    case Kind::locked:
      return locked_page(document_, one.id);
    case Kind::dimension:
      return dimension_page(document_, one.id);
    case Kind::trench:
    case Kind::header:
    case Kind::run: {
      auto* table = new FigureTable(document_, one);
      connect(table, &FigureTable::trace_asked, this, &SelectedPanel::trace_asked);
      return table;
    }
    case Kind::height:
      return height_page(document_, one.id);
    case Kind::nothing:
      break;
  }
  return hint_page();
}

void SelectedPanel::rebuild() {
  shown_ = wanted();
  // A field whose entry brought us here had the keyboard: it goes to the new page, not out of the panel.
  const bool had_keyboard = widget() != nullptr && widget()->isAncestorOf(QApplication::focusWidget());
  QWidget* old = takeWidget();
  setWidget(make_page());
  if (had_keyboard) focus_first_field();
  if (old != nullptr) old->deleteLater();  // it may be the one whose signal brought us here
}

// A field that got the keyboard as its tab came to the front marks nothing by itself.
void SelectedPanel::focus_first_field() {
  auto* form = qobject_cast<Form*>(widget());
  QWidget* first = form != nullptr ? form->first_field() : widget();
  if (first == nullptr) return;
  first->setFocus(Qt::ShortcutFocusReason);
  if (auto* line = qobject_cast<QLineEdit*>(first->focusProxy())) line->selectAll();
}

}  // namespace underlawn
