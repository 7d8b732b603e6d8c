// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/price_table.h"

#include <QHeaderView>
#include <QTableWidget>
#include <algorithm>
#include <cmath>

#include "base/say.h"
#include "base/typed_text.h"
#include "cost/bill.h"
#include "dig/dates.h"
#include "plan/record/moment.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kMostShown = 10;  // rows; more are scrolled
constexpr int kRow = 38;        // two lines of words
constexpr int kSoldBy = 78, kPrice = 66, kDate = 76, kNoDate = 44,
              kCellEdges = 10;  // two rolls a line, "2026-03-01"
constexpr double kMostPrice = 1e9, kMostPack = 1e6;
constexpr std::size_t kMostPacks = 12;

// Among what pipe is sold by.
QString cut_word() {
  return QObject::tr("cut", "of pipe, to any length");
}

QString without_unit(const QString& typed) {
  return typed.section(QRegularExpression("[^0-9., ]"), 0, 0).trimmed();
}

QString number_text(double value) {
  return QString::number(value, 'g', 10);
}

}  // namespace

PriceTable::PriceTable(Document& document, QWidget* parent)
    : EditedTable(tr("Price book"), {tr("Item"), tr("Sold by"), tr("Price"), tr("Date")}, parent),
      document_(document) {
  auto* header = table_->horizontalHeader();
  header->setMinimumSectionSize(40);
  header->setSectionResizeMode(QHeaderView::Interactive);
  header->setSectionResizeMode(item, QHeaderView::Stretch);
  for (const auto& [column, width] :
       {std::pair{sold_by, kSoldBy}, std::pair{price, kPrice}, std::pair{date, kDate}})
    header->resizeSection(column, width);
  table_->verticalHeader()->setMinimumSectionSize(kRow);
  table_->verticalHeader()->setVisible(false);
  table_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table_->setWordWrap(true);
  table_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
}

bool PriceTable::wanted(const PriceRow& row) const {
  const Plan& plan = document_.plan();
  if (show_ == Show::all) return true;
  if (show_ == Show::changed) return !is_usual(plan.pricing.book, plan.wishes, row.key);
  const Outcome* outcome = document_.outcome();
  if (outcome == nullptr || outcome->bill == nullptr) return weighed_by_layout(plan.wishes, row.key);
  return std::ranges::any_of(outcome->bill->lines, [&](const BillLine& line) { return line.row == row.key; });
}

QString PriceTable::cell(const PriceRow& row, int column) const {
  const double shown = shown_unit_of(row.unit, units());
  const QString unit = QString::fromStdString(unit_text(row.unit, units()));
  switch (column) {
    case item:
      return QString::fromStdString(row.item);
    case sold_by: {
      QStringList packs;
      for (double pack : row.packs)
        packs << (pack > 0 ? number_text(std::round(100 * pack / shown) / 100) : cut_word());
      return packs.isEmpty() ? unit
                             : packs.join("/ ") + (row.unit == PriceUnit::each ? QString() : ' ' + unit);
    }
    case price:
      return row.price ? price_text(row, *row.price) : QString();
    default:
      return QString::fromStdString(row.date);
  }
}

QString PriceTable::price_text(const PriceRow& row, double each) const {
  const double shown = shown_unit_of(row.unit, units());
  const QString number =
      QString::fromStdString(print_quantity(Quantity::money, each * shown, units(), Fineness::fine));
  return row.unit == PriceUnit::each ? number
                                     : number + '/' + QString::fromStdString(unit_text(row.unit, units()));
}

QString PriceTable::roll_cell(const PriceRow& row, int roll, int column) const {
  const Pack pack = packs_of(row)[static_cast<std::size_t>(roll)];
  if (column == price) return row.price || !row.pack_prices.empty() ? price_text(row, pack.price) : QString();
  if (column != item) return {};
  if (!(pack.amount > 0)) return tr("cut to length");
  const QString amount = number_text(std::round(100 * pack.amount / shown_unit_of(row.unit, units())) / 100);
  return row.unit == PriceUnit::each
             ? tr("by %1").arg(amount)
             : tr("by %1").arg(amount + ' ' + QString::fromStdString(unit_text(row.unit, units())));
}

void PriceTable::add_lines(PriceRow row) {
  const bool open = !row.pack_prices.empty() || open_.contains(row.key);
  const int rolls = open && row.packs.size() > 1 ? static_cast<int>(row.packs.size()) : 0;
  for (int roll = -1; roll < rolls; ++roll) {
    rows_.push_back(row);
    rolls_.push_back(roll);
  }
}

void PriceTable::show_line(int line) {
  const PriceRow& row = rows_[static_cast<std::size_t>(line)];
  const int roll = roll_of(line);
  const Plan& plan = document_.plan();
  const bool usual = roll < 0 ? is_usual(plan.pricing.book, plan.wishes, row.key) : row.pack_prices.empty();
  for (int c = 0; c < columns; ++c) {
    const bool right = c == price || (roll >= 0 && c == item);
    set_cell(line, c, roll < 0 ? cell(row, c) : roll_cell(row, roll, c),
             right ? Qt::AlignRight : Qt::AlignLeft);
    QTableWidgetItem* at = table_->item(line, c);
    at->setForeground(usual && c == price ? theme_now().faint : theme_now().text);
    at->setFlags(roll < 0 || c == price ? at->flags() | Qt::ItemIsEditable
                                        : at->flags() & ~Qt::ItemIsEditable);
    QString tip = at->text();
    if (c == price && usual)
      tip = roll < 0 ? tr("A round figure of our own, no source") : tr("As the item's own price has it");
    if (roll < 0 && !row.note.empty()) tip += "\n" + QString::fromStdString(row.note);
    at->setToolTip(tip);
  }
}

// The table's own reckoning takes the cell for wider than its words are set in.
void PriceTable::show_whole_item(int line) {
  const int room = table_->columnWidth(item) - kCellEdges;
  const QRect words = table_->fontMetrics().boundingRect(QRect(0, 0, std::max(room, 20), 10000),
                                                         Qt::TextWordWrap, table_->item(line, item)->text());
  table_->setRowHeight(line, std::max(table_->rowHeight(line), words.height() + 6));
}

void PriceTable::refresh() {
  filling_ = true;
  const Plan& plan = document_.plan();
  rows_.clear();
  rolls_.clear();
  std::vector<PriceRow> all = all_rows(plan.pricing.book, plan.wishes);
  // Fittings come with the bill: the book makes their rows by size.
  if (const Outcome* outcome = document_.outcome(); outcome != nullptr && outcome->bill != nullptr)
    for (const BillLine& line : outcome->bill->lines)
      if (!line.row.empty() && std::ranges::find(all, line.row, &PriceRow::key) == all.end())
        all.push_back(row_of(plan.pricing.book, plan.wishes, line.row));
  for (PriceRow& row : all)
    if (wanted(row)) add_lines(std::move(row));
  table_->setRowCount(static_cast<int>(rows_.size()));
  for (int line = 0; line < table_->rowCount(); ++line) show_line(line);
  // Dates take no room from the items while there are none.
  const bool dated = std::ranges::any_of(rows_, [](const PriceRow& row) { return !row.date.empty(); });
  table_->horizontalHeader()->resizeSection(date, dated ? kDate : kNoDate);
  table_->resizeRowsToContents();  // all of a long text is seen
  for (int line = 0; line < table_->rowCount(); ++line) show_whole_item(line);
  int height = table_->horizontalHeader()->sizeHint().height() + 6;
  for (int r = 0; r < std::min(table_->rowCount(), kMostShown); ++r) height += table_->rowHeight(r);
  table_->setFixedHeight(std::max(height, kRow));
  say({});
  filling_ = false;
}

void PriceTable::show_only(Show show) {
  show_ = show;
  refresh();
}

QString PriceTable::enter(PriceRow& row, int column, const QString& typed) const {
  const double shown = shown_unit_of(row.unit, units());
  if (column == item) {
    row.item = typed.left(200).toStdString();
    return row.item.empty() ? tr("An item needs a name.") : QString();
  }
  if (column == date) {
    const auto day = moment_from_text(typed.toStdString(), "");  // 2026-3-1 is a day as well
    row.date = day && !day->timed ? print_moment(*day) : typed.toStdString();
    return row.date.empty() || day_number(row.date)
               ? QString()
               : tr("“%1” is no date; write it as 2026-03-01.").arg(typed);
  }
  if (column == sold_by) {
    std::vector<double> packs;
    for (const QString& part : typed.split(QRegularExpression("[/|]"), Qt::SkipEmptyParts)) {
      const bool cut = part.trimmed().startsWith(cut_word(), Qt::CaseInsensitive);
      const QString bare = without_unit(part);
      if (bare.isEmpty() && !cut) continue;  // a unit alone: any amount
      const Result<double> pack = cut ? 0.0 : parse_quantity(Quantity::count, bare.toStdString(), units());
      if (!pack) return QString::fromStdString(pack.error().message());
      if ((!cut && !(*pack > 0)) || *pack > kMostPack || packs.size() == kMostPacks)
        return tr("Sold by is %1; up to 12 numbers above 0 and at most 1000000 are wanted, or %2, as "
                  "%2/300/500.")
            .arg(typed, cut_word());
      packs.push_back(*pack * shown);
    }
    std::ranges::sort(packs);
    if (packs != row.packs) row.pack_prices.clear();
    row.packs = std::move(packs);
    return {};
  }
  if (typed.isEmpty()) {
    row.price.reset();
    return weighed_by_layout(document_.plan().wishes, row.key)
               ? tr("The layout weighs this price; enter 0 where it does not count.")
               : QString();
  }
  const auto value =
      parse_quantity(Quantity::money, typed.section('/', 0, 0).trimmed().toStdString(), units());
  if (!value) return QString::fromStdString(value.error().message());
  if (*value < 0 || *value / shown > kMostPrice)
    return tr("Price is %1; it must be from 0 to 1000000000.").arg(typed);
  row.price = *value / shown;
  return {};
}

QString PriceTable::enter_roll(PriceRow& row, int roll, const QString& typed) const {
  PriceRow plain = row;
  plain.pack_prices.clear();
  if (!row.price) return tr("Enter the price of the item first.");
  const std::vector<Pack> usual = packs_of(plain);
  std::vector<double> prices;
  for (const Pack& pack : packs_of(row)) prices.push_back(pack.price);
  double& own = prices[static_cast<std::size_t>(roll)];
  if (typed.isEmpty()) {
    own = usual[static_cast<std::size_t>(roll)].price;
  } else {
    if (const QString wrong = enter(plain, price, typed); !wrong.isEmpty()) return wrong;
    own = *plain.price;
  }
  const bool as_usual = std::ranges::equal(prices, usual, {}, {}, &Pack::price);
  row.pack_prices = as_usual ? std::vector<double>{} : prices;
  return {};
}

void PriceTable::commit(PriceRow row) {
  Plan plan = document_.committed();
  set_row(plan.pricing.book, plan.wishes, std::move(row));
  document_.commit(std::move(plan), tr("Price"));
  refresh();
}

void PriceTable::take(int row, int column) {
  if (static_cast<std::size_t>(row) >= rows_.size()) return;
  const QString typed = table_->item(row, column)->text().simplified();
  PriceRow changed = rows_[static_cast<std::size_t>(row)];
  const int roll = roll_of(row);
  if (typed == (roll < 0 ? cell(changed, column) : roll_cell(changed, roll, column))) return say({});
  const QString wrong = roll < 0 ? enter(changed, column, typed) : enter_roll(changed, roll, typed);
  if (wrong.isEmpty()) return commit(std::move(changed));
  say(wrong);
}

void PriceTable::show_rolls() {
  const int line = table_->currentRow();
  if (line < 0 || static_cast<std::size_t>(line) >= rows_.size())
    return say(tr("Go to the row of the item first."));
  const PriceRow row = rows_[static_cast<std::size_t>(line)];
  if (row.packs.size() < 2)
    return say(tr("%1 is sold in one way only.").arg(QString::fromStdString(row.item)));
  if (open_.erase(row.key) == 0) open_.insert(row.key);
  refresh();
}

void PriceTable::reset_current() {
  const int row = table_->currentRow();
  if (row < 0 || static_cast<std::size_t>(row) >= rows_.size()) return;
  Plan plan = document_.committed();
  reset_row(plan.pricing.book, plan.wishes, rows_[static_cast<std::size_t>(row)].key);
  document_.commit(std::move(plan), tr("Price as usual"));
  refresh();
}

void PriceTable::add_item() {
  Plan plan = document_.committed();
  int number = 1;
  const auto taken = [&] {
    return std::ranges::any_of(plan.pricing.book.rows,
                               [&](const PriceRow& r) { return r.key == "own " + std::to_string(number); });
  };
  while (taken()) ++number;
  PriceRow row;
  row.key = "own " + std::to_string(number);
  row.item = tr("Item %1").arg(number).toStdString();
  commit(std::move(row));
}

}  // namespace underlawn
