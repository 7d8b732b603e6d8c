// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/notebook_table.h"

#include <QHeaderView>
#include <QTableWidget>

#include "window/survey_panel.h"

namespace underlawn {

namespace {

constexpr int kMostRowsSeen = 7;
enum Column { kName, kMethod, kPlace };

QString place_words(Point at, UnitSystem units) {
  const double unit = units == UnitSystem::us ? 0.3048 : 1;
  return QString("%1, %2").arg(at.x / unit, 0, 'f', 2).arg(at.y / unit, 0, 'f', 2);
}

}  // namespace

NotebookTable::NotebookTable(Document& document, QWidget* parent)
    : EditedTable(tr("Notebook"), {tr("Point"), tr("Measured"), tr("x, y")}, parent), document_(document) {
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::ExtendedSelection);
  table_->verticalHeader()->hide();
  connect(table_, &QTableWidget::itemSelectionChanged, this, [this] {
    if (!filling_) emit picked_changed();
  });
}

void NotebookTable::refresh(const std::vector<PlacedSighting>& placed) {
  filling_ = true;
  const auto& notebook = document_.plan().survey.notebook;
  table_->horizontalHeaderItem(kPlace)->setText(document_.plan().units == UnitSystem::us ? tr("x, y (ft)")
                                                                                         : tr("x, y (m)"));
  table_->setRowCount(static_cast<int>(notebook.size()));
  for (std::size_t i = 0; i < notebook.size(); ++i) {
    const int row = static_cast<int>(i);
    const auto& at = placed[i].at;
    set_cell(row, kName, QString::fromStdString(notebook[i].name), Qt::AlignLeft);
    set_cell(row, kMethod, sighting_method_name(notebook[i].method), Qt::AlignLeft);
    const UnitSystem units = document_.plan().units;
    set_cell(row, kPlace, at ? place_words(*at, units) : tr("no place"));
    for (int column : {kMethod, kPlace}) {
      QTableWidgetItem* item = table_->item(row, column);
      item->setFlags(item->flags() & ~Qt::ItemIsEditable);
    }
    table_->item(row, kPlace)->setToolTip(at ? QString() : QString::fromStdString(at.error().message()));
  }
  table_->setVisible(!notebook.empty());
  fit_rows(kMostRowsSeen);
  filling_ = false;
}

std::vector<std::size_t> NotebookTable::picked() const {
  std::vector<std::size_t> rows;
  const QModelIndexList selected = table_->selectionModel()->selectedRows();
  for (const QModelIndex& index : selected) rows.push_back(static_cast<std::size_t>(index.row()));
  std::ranges::sort(rows);
  return rows;
}

std::optional<std::size_t> NotebookTable::current() const {
  const auto rows = picked();
  const int row = table_->currentRow();
  for (std::size_t r : rows)
    if (static_cast<int>(r) == row) return r;
  if (rows.empty()) return std::nullopt;
  return rows.front();
}

void NotebookTable::pick(std::size_t first, std::size_t count) {
  filling_ = true;
  table_->clearSelection();
  if (count > 0 && static_cast<int>(first + count) <= table_->rowCount()) {
    table_->setCurrentCell(static_cast<int>(first), kName);
    table_->setRangeSelected({static_cast<int>(first), 0, static_cast<int>(first + count) - 1, kPlace}, true);
  }
  filling_ = false;
  emit picked_changed();
}

void NotebookTable::take(int row, int column) {
  if (column != kName) return;
  const auto index = static_cast<std::size_t>(row);
  if (index >= document_.committed().survey.notebook.size()) return;
  Sighting s = document_.committed().survey.notebook[index];
  s.name = table_->item(row, column)->text().trimmed().toStdString();
  document_.commit(edit::with_sighting_at(document_.committed(), index, std::move(s)), tr("Name of a point"));
}

}  // namespace underlawn
