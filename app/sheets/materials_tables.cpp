// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/materials_tables.h"

#include "base/say.h"
#include "cost/bill_in_cents.h"
#include "plan/coil_ends.h"
#include "sheets/contents.h"

namespace underlawn::sheet {

namespace {

QString amount(const Plan& plan, double value) {
  return text_of(print_quantity(Quantity::money, value, plan.units));
}

QString group_words(BillGroup group) {
  switch (group) {
    case BillGroup::pipe:
      return QObject::tr("PIPE");
    case BillGroup::fittings:
      return QObject::tr("FITTINGS");
    case BillGroup::goods:
      return QObject::tr("GOODS");
    case BillGroup::work:
      return QObject::tr("WORK");
    case BillGroup::own:
      return QObject::tr("OWN ITEMS");
  }
  return "";
}

// What costs nothing says why where the price book knows: "in the price of the lawn".
QString price_words(const Plan& plan, const BillLine& line, double price, const QString& unit) {
  const std::string note = row_of(plan.pricing.book, plan.wishes, line.row).note;
  if (price == 0 && !note.empty()) return text_of(translated(note));
  return amount(plan, price) + " / " + unit;
}

std::vector<Cell> bill_row(const Plan& plan, const BillLine& line) {
  const double shown_unit = shown_unit_of(line.unit, plan.units);
  const bool own = !line.unit_text.empty();
  const QString unit = own ? text_of(line.unit_text) : text_of(unit_text(line.unit, plan.units));
  const QString packs = text_of(packs_text(line, plan.units));
  const QString needed =
      own ? QString::number(line.needed) : text_of(amount_text(line.unit, line.needed, plan.units));
  const double each = own ? 1 : shown_unit;
  return {{text_of(line.item)},
          {needed},
          {packs.isEmpty() ? (own ? QString::number(line.bought.amount)
                                  : text_of(amount_text(line.unit, line.bought.amount, plan.units)))
                           : packs},
          {line.price ? price_words(plan, line, *line.price * each, unit) : QObject::tr("no price yet")},
          {line.price ? amount(plan, line.sum) : QString("–"), std::nullopt, true}};
}

}  // namespace

namespace {

// "coil of trench 1, header and run (3)".
QString pieces_of(const BillLine& line, const Roll& roll) {
  std::vector<std::pair<std::string, int>> counts;
  for (int piece : roll.pieces) {
    const std::string& name = line.pieces[static_cast<std::size_t>(piece)];
    if (counts.empty() || counts.back().first != name) counts.emplace_back(name, 0);
    ++counts.back().second;
  }
  QStringList words;
  for (const auto& [name, count] : counts)
    words << (count > 1 ? QString("%1 (%2)").arg(text_of(name)).arg(count) : text_of(name));
  return words.join(", ");
}

}  // namespace

BlockPtr bill_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.bill == nullptr) return nullptr;
  const Bill bill = in_cents(*outcome.bill);
  std::vector<std::vector<Cell>> rows;
  std::optional<BillGroup> group;
  for (const BillLine& line : bill.lines) {
    if (group != line.group) rows.push_back({{group_words(line.group), std::nullopt, true}, {}, {}, {}, {}});
    group = line.group;
    rows.push_back(bill_row(plan, line));
  }
  const auto sum = [&](const QString& what, double value, bool always = false) {
    if (value != 0 || always)
      rows.push_back({{what, std::nullopt, true}, {}, {}, {}, {amount(plan, value), std::nullopt, true}});
  };
  sum(QObject::tr("Cost"), bill.cost, true);
  sum(QObject::tr("Overhead"), bill.overhead);
  sum(QObject::tr("Markup"), bill.markup);
  sum(QObject::tr("Tax"), bill.tax);
  sum(QObject::tr("Price, %1").arg(text_of(plan.wishes.prices.currency)), bill.price, true);
  for (const IncentivePaid& paid : bill.incentives)
    sum(QObject::tr("Less %1").arg(text_of(paid.name)), -paid.amount);
  if (!bill.incentives.empty()) sum(QObject::tr("To pay"), bill.net, true);
  QString note = QObject::tr(
      "Trench sides as the dig plan has them. Counted from the drawing and rounded up to "
      "what is sold.");
  if (const int without = bill.without_price(); without > 0)
    note += " " + QObject::tr("%1 lines have no price and are not in the sums.").arg(without);
  auto table = std::make_shared<Table>(QObject::tr("MATERIALS AND WORK"),
                                       std::vector<Column>{{"", Align::left, true},
                                                           {QObject::tr("Needed"), Align::right},
                                                           {QObject::tr("Bought"), Align::right},
                                                           {QObject::tr("Price"), Align::right},
                                                           {QObject::tr("Sum"), Align::right}},
                                       std::move(rows), 9.5, note);
  table->keep_on_a_page();  // sums under what they are of
  return table;
}

// Every roll with what is cut from it.
BlockPtr rolls_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.bill == nullptr) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (const BillLine& line : outcome.bill->lines)
    for (const Roll& roll : line.bought.rolls) {
      const auto length = [&](double units) { return text_of(amount_text(line.unit, units, plan.units)); };
      rows.push_back({{QString::number(rows.size() + 1), std::nullopt, true},
                      {text_of(line.item)},
                      {length(roll.length)},
                      {pieces_of(line, roll)},
                      {roll.to_length ? QObject::tr("cut to length") : length(roll.left)}});
    }
  if (rows.empty()) return nullptr;
  return std::make_shared<Table>(
      QObject::tr("ROLLS, AND WHAT IS CUT FROM EACH"),
      std::vector<Column>{{QObject::tr("Roll")},
                          {QObject::tr("Pipe"), Align::left},
                          {QObject::tr("Length"), Align::right},
                          {QObject::tr("Cut from it"), Align::left, true},
                          {QObject::tr("Left over"), Align::right}},
      std::move(rows), 10,
      QObject::tr("The cheapest set of what the price book sells that leaves no joint "
                  "in a coil. Header and run with their allowance for cuts."));
}

BlockPtr pieces_table(const Plan& plan, const Outcome& outcome) {
  if (outcome.layout.trenches.empty()) return nullptr;
  std::vector<std::vector<Cell>> rows;
  for (const Trench& t : outcome.layout.trenches)
    rows.push_back({{QString("%1-S, %1-R").arg(t.number), std::nullopt, true},
                    {text_of(plan.wishes.pipe)},
                    {shown_length(plan, coil_cut(plan, outcome, t.number))},
                    {QObject::tr("coil of trench %1, one piece").arg(t.number)}});
  return std::make_shared<Table>(QObject::tr("COILS, ONE PIECE EACH"),
                                 std::vector<Column>{{QObject::tr("Tag")},
                                                     {QObject::tr("Pipe"), Align::left},
                                                     {QObject::tr("Length"), Align::right},
                                                     {QObject::tr("For"), Align::left, true}},
                                 std::move(rows), 10.5);
}

}  // namespace underlawn::sheet
