// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/way_card.h"

#include <QGraphicsOpacityEffect>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStyle>
#include <cmath>

#include "window/theme.h"

namespace underlawn {

namespace {

QLabel* label(const QString& text, const char* style) {
  auto* made = new QLabel(text);
  made->setObjectName(style);
  made->setTextFormat(Qt::PlainText);
  return made;
}

QString shown(Quantity q, double value, UnitSystem units, Fineness fineness = Fineness::coarse) {
  return QString::fromStdString(print_quantity(q, value, units, fineness));
}

QString in_thousands(double value) {
  QLocale locale = QLocale::c();
  locale.setNumberOptions(QLocale::DefaultNumberOptions);
  return locale.toString(value, 'f', 0);
}

QString money(double value, const Plan& plan) {
  return in_thousands(value) + " " + QString::fromStdString(plan.wishes.prices.currency);
}

// "+1,200" beside the plan's own.
QString more_or_less(const Way& way, const Way& own) {
  const double more = std::round(way.cost) - std::round(own.cost);
  if (&way == &own || more == 0) return {};
  return QString(" (%1%2)").arg(more > 0 ? "+" : "−", in_thousands(std::abs(more)));
}

QString water_words(const Way& way, UnitSystem units) {
  if (!way.coldest) return WayCard::tr("Water: not known");
  return WayCard::tr("Water %1 to %2")
      .arg(shown(Quantity::temperature, *way.coldest, units, Fineness::normal),
           shown(Quantity::temperature, *way.warmest, units, Fineness::normal));
}

QString limit_words(const Way& way, UnitSystem units) {
  if (!way.coldest) return {};
  if (way.holds) return WayCard::tr("✓ holds the limits");
  return WayCard::tr("✗ beyond the limits by %1")
      .arg(shown(Quantity::temperature_difference, way.short_by, units, Fineness::normal));
}

void add_figures(QGridLayout& grid, const Way& way, const Way& own, const Plan& plan) {
  const UnitSystem units = plan.units;
  const QString circuits =
      way.circuits == 1 ? WayCard::tr("1 circuit") : WayCard::tr("%1 circuits").arg(way.circuits);
  grid.addWidget(
      label(WayCard::tr("%1, %2").arg(circuits, shown(Quantity::length, way.trench, units)), "plainer"), 0,
      0);
  grid.addWidget(label(money(way.cost, plan) + more_or_less(way, own), "plainer"), 0, 1);
  grid.addWidget(label(WayCard::tr("%1 dug").arg(shown(Quantity::volume, way.bank, units)), "faint"), 1, 0);
  grid.addWidget(
      label(WayCard::tr("%1 days open").arg(shown(Quantity::count, way.days, units, Fineness::normal)),
            "faint"),
      1, 1);
  grid.addWidget(label(WayCard::tr("%1 of lawn").arg(shown(Quantity::area, way.lawn, units)), "faint"), 2, 0);
  grid.addWidget(label(water_words(way, units), "faint"), 2, 1);
}

}  // namespace

WayCard::WayCard(const Way& way, const Way& own, const Plan& plan, QWidget* parent)
    : QFrame(parent), take_(new QPushButton(tr("Take"))), compare_(new QPushButton(tr("Compare"))) {
  const QString sentence = QString::fromStdString(way.sentence);
  setObjectName("way");
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  setAccessibleName(sentence);
  take_->setAccessibleName(tr("Take: %1").arg(sentence));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(3 * kGap, 2 * kGap, 3 * kGap, 2 * kGap);
  column->setSpacing(kGap);
  auto* name = label(sentence, "name");
  name->setWordWrap(true);
  column->addWidget(name);
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(2 * kGap);
  grid->setVerticalSpacing(0);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(1, 1);
  add_figures(*grid, way, own, plan);
  column->addLayout(grid);
  auto* foot = new QHBoxLayout;
  auto* limits = label(limit_words(way, plan.units), way.holds ? "right" : "wrong");
  limits->setWordWrap(true);
  foot->addWidget(limits, 1);
  foot->addWidget(take_);
  column->addLayout(foot);
  compare_->setCheckable(true);
  compare_->setAccessibleName(tr("Compare: %1").arg(sentence));
  foot->insertWidget(1, compare_);
  connect(compare_, &QPushButton::toggled, this, &WayCard::compared);
  connect(take_, &QPushButton::clicked, this, &WayCard::taken);
}

void WayCard::set_state(State state) {
  take_->setEnabled(state == State::open);
  take_->setText(state == State::drawn ? tr("On the drawing") : tr("Take"));
  auto* fade = new QGraphicsOpacityEffect(this);
  fade->setOpacity(0.6);
  fade->setEnabled(state == State::old);
  setGraphicsEffect(fade);
}

void WayCard::set_chosen(bool chosen) {
  setProperty("chosen", chosen);
  style()->unpolish(this);
  style()->polish(this);
}

void WayCard::set_letter(const QString& letter) {
  const QSignalBlocker quiet(compare_);
  compare_->setChecked(!letter.isEmpty());
  compare_->setText(letter.isEmpty() ? tr("Compare") : tr("Compare: %1").arg(letter));
}

void WayCard::enterEvent(QEnterEvent*) {
  emit looked_at(true);
}

void WayCard::leaveEvent(QEvent*) {
  emit looked_at(false);
}

void WayCard::mousePressEvent(QMouseEvent*) {
  emit chosen();
}

void WayCard::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space || event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    return take_->isEnabled() ? emit taken() : void();
  QFrame::keyPressEvent(event);
}

void WayCard::focusInEvent(QFocusEvent* event) {
  QFrame::focusInEvent(event);
  emit chosen();
}

}  // namespace underlawn
