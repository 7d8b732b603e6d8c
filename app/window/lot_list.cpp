// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/lot_list.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QListWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "base/quantity.h"
#include "plan/dimensions.h"
#include "window/theme.h"

namespace underlawn {

namespace {

using Kind = Selected::Kind;

void add_features(std::vector<LotEntry>& all, const Plan& plan) {
  for (int kind = 0; kind < kFeatureKinds; ++kind)
    for (const Feature& f : plan.site.features) {
      if (static_cast<int>(f.kind) != kind) continue;
      QString detail = QString::fromUtf8(kind_name(f.kind));
      if (f.kind == FeatureKind::utility)
        detail = LotList::tr("%1 %2", "utility: what it carries, what it is")
                     .arg(QString::fromUtf8(utility_name(f.utility)), detail);
      all.push_back({{Kind::feature, f.id, -1}, QString::fromStdString(display_name(f)), detail});
    }
}

void add_loop(std::vector<LotEntry>& all, const Outcome& outcome) {
  if (outcome.layout.run.line.size() >= 2)
    all.push_back({{Kind::run, 0, -1}, LotList::tr("Supply run"), LotList::tr("laid out")});
  if (!outcome.layout.header.legs.empty())
    all.push_back({{Kind::header, 0, -1}, LotList::tr("Header"), LotList::tr("laid out")});
  for (const Trench& t : outcome.layout.trenches)
    all.push_back({{Kind::trench, t.number, -1},
                   LotList::tr("Trench %1").arg(t.number),
                   t.role == TrenchRole::supply ? LotList::tr("coil in the supply trench")
                                                : LotList::tr("coil trench")});
}

bool matches(const LotEntry& entry, const QString& typed) {
  return (entry.name + ' ' + entry.detail).contains(typed, Qt::CaseInsensitive);
}

}  // namespace

std::vector<LotEntry> lot_entries(const Plan& plan, const Outcome* outcome) {
  std::vector<LotEntry> all;
  if (!plan.site.lot.empty())
    all.push_back(
        {{Kind::lot, 0, -1}, LotList::tr("Lot line"), LotList::tr("%1 corners").arg(plan.site.lot.size())});
  add_features(all, plan);
  if (plan.site.entry)
    all.push_back({{Kind::entry, 0, -1}, LotList::tr("Entry point"), LotList::tr("in the house wall")});
  for (std::size_t i = 0; i < plan.wishes.locked.size(); ++i)
    all.push_back({{Kind::locked, static_cast<int>(i), -1},
                   LotList::tr("Drawn trench %1").arg(i + 1),
                   LotList::tr("stays where it is")});
  for (std::size_t i = 0; i < plan.site.heights.size(); ++i)
    all.push_back(
        {{Kind::height, static_cast<int>(i), -1},
         LotList::tr("Spot height %1").arg(i + 1),
         QString::fromStdString(print_quantity(Quantity::length, plan.site.heights[i].height, plan.units))});
  for (std::size_t i = 0; i < plan.dimensions.size(); ++i)
    all.push_back(
        {{Kind::dimension, static_cast<int>(i), -1},
         LotList::tr("Dimension %1").arg(i + 1),
         QString::fromStdString(print_quantity(Quantity::length, measured(plan.dimensions[i]), plan.units))});
  if (outcome != nullptr) add_loop(all, *outcome);
  return all;
}

LotList::LotList(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent),
      document_(document),
      selection_(selection),
      find_(new QLineEdit),
      list_(new QListWidget) {
  setObjectName("page");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3 * kGap, 3 * kGap, 3 * kGap, 3 * kGap);
  column->setSpacing(2 * kGap);
  find_->setPlaceholderText(tr("Find on the lot"));
  find_->setAccessibleName(tr("Find on the lot"));
  find_->setClearButtonEnabled(true);
  list_->setObjectName("boxed");
  list_->setAccessibleName(tr("Everything on the lot"));
  column->addWidget(find_);
  column->addWidget(list_);
  setFocusProxy(find_);
  connect(find_, &QLineEdit::textChanged, this, &LotList::refresh);
  connect(find_, &QLineEdit::returnPressed, list_, [this] {
    list_->setFocus();
    if (list_->currentRow() < 0) list_->setCurrentRow(0);
  });
  list_->setSelectionMode(QAbstractItemView::ExtendedSelection);
  list_->installEventFilter(this);
  connect(list_, &QListWidget::itemSelectionChanged, this, &LotList::take_picked);
  connect(list_, &QListWidget::itemActivated, this, &LotList::edit_asked);
  connect(&document, &Document::plan_changed, this, &LotList::refresh);
  connect(&document, &Document::outcome_changed, this, &LotList::refresh);
  connect(&selection, &Selection::changed, this, &LotList::show_selected);
  refresh();
}

void LotList::refresh() {
  std::vector<LotEntry> now;
  for (LotEntry& entry : lot_entries(document_.plan(), document_.outcome()))
    if (matches(entry, find_->text().simplified())) now.push_back(std::move(entry));
  if (now == entries_) return;
  filling_ = true;
  entries_ = std::move(now);
  list_->clear();
  for (const LotEntry& entry : entries_)
    list_->addItem(entry.name.compare(entry.detail, Qt::CaseInsensitive) == 0
                       ? entry.name
                       : entry.name + "  ·  " + entry.detail);
  filling_ = false;
  show_selected();
}

// The row that the keyboard is on comes last: it is the one that the pages of one thing show.
void LotList::take_picked() {
  if (filling_) return;
  std::vector<Selected> picked;
  for (int row = 0; row < list_->count(); ++row)
    if (list_->item(row)->isSelected() && row != list_->currentRow())
      picked.push_back(entries_[static_cast<std::size_t>(row)].what);
  if (const auto* now = list_->currentItem(); now != nullptr && now->isSelected())
    picked.push_back(entries_[static_cast<std::size_t>(list_->currentRow())].what);
  selection_.select_several(std::move(picked));
}

void LotList::show_selected() {
  filling_ = true;
  int last = -1;
  list_->clearSelection();
  for (std::size_t i = 0; i < entries_.size(); ++i) {
    if (!holds_thing(selection_.all(), entries_[i].what)) continue;
    list_->item(static_cast<int>(i))->setSelected(true);
    if (last < 0 || same_thing(entries_[i].what, selection_.now())) last = static_cast<int>(i);
  }
  const bool here = list_->hasFocus() && !selection_.all().empty();
  if (!here || list_->currentRow() < 0 || !list_->currentItem()->isSelected())
    list_->setCurrentRow(last, QItemSelectionModel::NoUpdate);
  filling_ = false;
}

// Keys of the window that mean something else in a list: walking without picking, and all that is shown.
bool LotList::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride) {
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool of_lists = key->key() == Qt::Key_A || key->key() == Qt::Key_Up || key->key() == Qt::Key_Down;
    if (of_lists && key->modifiers() == Qt::ControlModifier) event->accept();
  }
  return QWidget::eventFilter(watched, event);
}

void LotList::put_on_top(QWidget* widget) {
  static_cast<QVBoxLayout*>(layout())->insertWidget(1, widget);
}

void LotList::focus_find() {
  find_->setFocus(Qt::ShortcutFocusReason);
  find_->selectAll();
}

void LotList::step(int by, bool too) {
  const auto all = lot_entries(document_.plan(), document_.outcome());
  if (all.empty()) return;
  const auto at = std::find_if(all.begin(), all.end(),
                               [&](const LotEntry& e) { return same_thing(e.what, selection_.now()); });
  const int count = static_cast<int>(all.size());
  const int now = at == all.end() ? (by > 0 ? -1 : 0) : static_cast<int>(at - all.begin());
  const Selected& next = all[static_cast<std::size_t>((now + by + count) % count)].what;
  std::vector<Selected> picked;
  if (too) picked = selection_.all();
  std::erase_if(picked, [&](const Selected& s) { return same_thing(s, next); });
  picked.push_back(next);
  selection_.select_several(std::move(picked));
}

}  // namespace underlawn
