// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/way_difference.h"

#include <QFrame>
#include <QGridLayout>
#include <QLabel>
#include <QLocale>
#include <cmath>

#include "window/theme.h"
#include "window/way_card.h"

namespace underlawn {

namespace {

struct Row {
  QString name;
  std::optional<double> a, b;
  Quantity quantity, difference;
  Fineness fineness = Fineness::coarse;
};

QString shown(Quantity q, double value, const Plan& plan, Fineness fineness) {
  if (q != Quantity::money) return QString::fromStdString(print_quantity(q, value, plan.units, fineness));
  QLocale locale = QLocale::c();
  locale.setNumberOptions(QLocale::DefaultNumberOptions);
  return locale.toString(value, 'f', 0);
}

// As far as it is shown, so that the differences agree with the figures beside them.
double as_shown(const Row& r, double value, const Plan& plan) {
  if (r.quantity == Quantity::money) return std::round(value);
  const std::string text = print_quantity(r.quantity, value, plan.units, r.fineness);
  return parse_quantity(r.quantity, text, plan.units).value_or(value);
}

QString changed(const Row& r, const Plan& plan) {
  if (!r.a || !r.b) return QStringLiteral("–");
  const QString none = shown(r.difference, 0, plan, r.fineness);
  const double more = as_shown(r, *r.b, plan) - as_shown(r, *r.a, plan);
  const QString by = shown(r.difference, std::abs(more), plan, r.fineness);
  if (by == none) return WayCard::tr("same");
  return (more > 0 ? QStringLiteral("+") : QStringLiteral("−")) + by;
}

std::vector<Row> rows_of(const Way& a, const Way& b, const Plan& plan) {
  const auto same = [](Quantity q) { return std::pair(q, q); };
  const auto row = [&](const QString& name, std::optional<double> l, std::optional<double> r,
                       std::pair<Quantity, Quantity> q,
                       Fineness f = Fineness::coarse) { return Row{name, l, r, q.first, q.second, f}; };
  const std::pair water(Quantity::temperature, Quantity::temperature_difference);
  return {row(WayCard::tr("Circuits"), a.circuits, b.circuits, same(Quantity::count)),
          row(WayCard::tr("Trench"), a.trench, b.trench, same(Quantity::length)),
          row(QString::fromStdString(plan.wishes.prices.currency), a.cost, b.cost, same(Quantity::money)),
          row(WayCard::tr("Dug"), a.bank, b.bank, same(Quantity::volume)),
          row(WayCard::tr("Days open"), a.days, b.days, same(Quantity::count), Fineness::normal),
          row(WayCard::tr("Lawn"), a.lawn, b.lawn, same(Quantity::area)),
          row(WayCard::tr("Coldest water"), a.coldest, b.coldest, water, Fineness::normal),
          row(WayCard::tr("Warmest water"), a.warmest, b.warmest, water, Fineness::normal)};
}

void put(QGridLayout& grid, const QString& text, int row, int column, const char* style) {
  auto* label = new QLabel(text);
  label->setObjectName(style);
  label->setTextFormat(Qt::PlainText);
  label->setAlignment(column == 0 ? Qt::AlignLeft : Qt::AlignRight);
  grid.addWidget(label, row, column);
}

}  // namespace

QWidget* way_difference(const Way& a, const Way& b, const Plan& plan) {
  auto* made = new QFrame;
  made->setObjectName("way");
  made->setAccessibleName(WayCard::tr("The two ways compared"));
  auto* grid = new QGridLayout(made);
  grid->setContentsMargins(3 * kGap, 2 * kGap, 3 * kGap, 2 * kGap);
  grid->setHorizontalSpacing(2 * kGap);
  grid->setVerticalSpacing(kGap / 2);
  grid->setColumnStretch(0, 1);
  const QString heads[] = {QString(), QStringLiteral("A"), QStringLiteral("B"), WayCard::tr("B less A")};
  for (int i = 0; i < 4; ++i) put(*grid, heads[i], 0, i, "name");
  int at = 1;
  for (const Row& r : rows_of(a, b, plan)) {
    put(*grid, r.name, at, 0, "faint");
    put(*grid, r.a ? shown(r.quantity, *r.a, plan, r.fineness) : QStringLiteral("–"), at, 1, "plainer");
    put(*grid, r.b ? shown(r.quantity, *r.b, plan, r.fineness) : QStringLiteral("–"), at, 2, "plainer");
    put(*grid, changed(r, plan), at++, 3, "plainer");
  }
  return made;
}

}  // namespace underlawn
