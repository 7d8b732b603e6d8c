// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/lot_list.h"

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

bool same_thing(const Selected& a, const Selected& b) {
  const bool lot_a = a.kind == Kind::lot || a.kind == Kind::lot_edge;
  const bool lot_b = b.kind == Kind::lot || b.kind == Kind::lot_edge;
  return (lot_a && lot_b) || (a.kind == b.kind && a.id == b.id);
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
  connect(list_, &QListWidget::currentRowChanged, this, [this](int row) {
    if (!filling_ && row >= 0) selection_.select(entries_[static_cast<std::size_t>(row)].what);
  });
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

void LotList::show_selected() {
  const auto at = std::find_if(entries_.begin(), entries_.end(),
                               [&](const LotEntry& e) { return same_thing(e.what, selection_.now()); });
  filling_ = true;
  list_->setCurrentRow(at == entries_.end() ? -1 : static_cast<int>(at - entries_.begin()));
  filling_ = false;
}

void LotList::put_on_top(QWidget* widget) {
  static_cast<QVBoxLayout*>(layout())->insertWidget(1, widget);
}

void LotList::focus_find() {
  find_->setFocus(Qt::ShortcutFocusReason);
  find_->selectAll();
}

void LotList::step(int by) {
  const auto all = lot_entries(document_.plan(), document_.outcome());
  if (all.empty()) return;
  const auto at = std::find_if(all.begin(), all.end(),
                               [&](const LotEntry& e) { return same_thing(e.what, selection_.now()); });
  const int count = static_cast<int>(all.size());
  const int now = at == all.end() ? (by > 0 ? -1 : 0) : static_cast<int>(at - all.begin());
  selection_.select(all[static_cast<std::size_t>((now + by + count) % count)].what);
}

}  // namespace underlawn
