// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/size_panel.h"

#include <QComboBox>
#include <QGraphicsOpacityEffect>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

#include "plan/sizing/size_words.h"
#include "window/chance_bar.h"
#include "window/plain_words.h"
#include "window/same_loop.h"
#include "window/theme.h"
#include "window/work_box.h"

namespace underlawn {

namespace {

constexpr int kDraws[] = {0, 100, 300, 1000};

QLabel* wrapped_label(const QString& text, const char* style) {
  auto* label = plain_words(text, style);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  return label;
}

QLabel* wrapped_label(const std::string& text, const char* style) {
  return wrapped_label(QString::fromStdString(text), style);
}

QString two_digits(double value) {
  return QString::number(value, 'f', 2);
}

// Everything about one size, in two lines.
QString size_words(const FieldSize& f, UnitSystem units) {
  const auto shown = [&](Quantity q, double v) {
    return QString::fromStdString(print_quantity(q, v, units));
  };
  const QString circuits =
      f.circuits == 1 ? SizePanel::tr("1 circuit") : SizePanel::tr("%1 circuits").arg(f.circuits);
  QString text = SizePanel::tr("%1, %2 of coil in %3 of trench, %4 dug")
                     .arg(circuits, shown(Quantity::length, f.coil_pipe), shown(Quantity::length, f.trench),
                          shown(Quantity::volume, f.bank));
  if (f.coldest < 1e8)
    text += "\n" + SizePanel::tr("Water %1 to %2, seasonal performance %3")
                       .arg(shown(Quantity::temperature, f.coldest), shown(Quantity::temperature, f.warmest),
                            two_digits(f.seasonal));
  return text + "\n" +
         (f.placed ? SizePanel::tr("Fits on the lot") : SizePanel::tr("Does not fit on the lot"));
}

}  // namespace

SizePanel::SizePanel(Document& document, QWidget* parent)
    : Form(document, parent),
      document_(document),
      draws_(choice_box({})),
      work_(new WorkBox(service_, tr("Size the loop"))),
      home_(nullptr) {
  build();
  connect(&work_->begin(), &QPushButton::clicked, this, &SizePanel::start);
  connect(&service_, &SizeService::answered, this, &SizePanel::show_answer);
  on_refresh([this] { show_age(); });
  refresh();
}

void SizePanel::build() {
  section(tr("Size the loop"));
  wide(wrapped_label(
      tr("The smallest number of coils whose entering water stays within the limits, found hour by hour "
         "over the design life."),
      "faint"));
  for (int draws : kDraws) draws_->addItem(draws == 0 ? tr("None") : QString::number(draws), draws);
  draws_->setCurrentIndex(2);
  draws_->setToolTip(tr("How often soil and load are drawn anew, to say with what chance the limits hold"));
  row(tr("Draws for the chance"), draws_);
  wide(work_);
  auto* home = new QWidget;
  home_ = new QVBoxLayout(home);
  home_->setContentsMargins(0, 0, 0, 0);
  wide(home);
  end();
}

void SizePanel::start() {
  if (service_.busy()) return;
  work_->empty();
  service_.start(document_.plan(), draws_->currentData().toInt());
}

bool SizePanel::earlier() const {
  const auto answer = service_.newest();
  return answer != nullptr && !same_loop(answer->plan, document_.plan());
}

void SizePanel::show_age() {
  work_->set_earlier(earlier());
  for (QPushButton* taker : takers_) taker->setEnabled(!earlier());
  if (found_ == nullptr) return;
  auto* fade = new QGraphicsOpacityEffect(found_);
  fade->setOpacity(0.6);
  fade->setEnabled(earlier());
  found_->setGraphicsEffect(fade);
}

void SizePanel::show_answer() {
  takers_.clear();
  delete found_;
  found_ = new QWidget;
  auto* column = new QVBoxLayout(found_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2 * kGap);
  const SizeAnswer& answer = *service_.newest();
  if (answer.sizing)
    add_sizes(answer, *column);
  else
    column->addWidget(wrapped_label(answer.sizing.error().message(), "wrong"));
  home_->addWidget(found_);
  show_age();
}

void SizePanel::add_sizes(const SizeAnswer& answer, QVBoxLayout& into) {
  const LoopSizing& s = *answer.sizing;
  const UnitSystem units = answer.plan.units;
  into.addWidget(wrapped_label(needed_words(s), s.needed ? "big" : "wrong"));
  if (answer.chance) {
    into.addWidget(new ChanceBar(*answer.chance));
    into.addWidget(wrapped_label(chance_words(*answer.chance, units), "faint"));
  }
  if (s.drawn.circuits > 0) add_size(tr("As drawn"), s.drawn, nullptr, into);
  if (s.needed) {
    Wishes wishes = answer.plan.wishes;
    wishes.circuits = s.needed->circuits;
    add_size(tr("Needed of the same coil"), *s.needed, &wishes, into);
  }
  if (s.given) add_size(tr("What the lot gives"), *s.given, nullptr, into);
  into.addWidget(wrapped_label(least_coil_words(s, units), "faint"));
  into.addWidget(wrapped_label(tr("Another coil, depth or spacing, and how many it needs"), "section"));
  for (const Alternative& a : s.alternatives) {
    const QString name = QString::fromStdString(alternative_name(a, units));
    if (a.size)
      add_size(name, *a.size, &a.wishes, into);
    else
      into.addWidget(wrapped_label(name + ": " + QString::fromStdString(a.refusal->message()), "faint"));
  }
  const auto classic = classic_words(s, units);
  if (!classic.empty()) into.addWidget(wrapped_label(tr("Classic equations"), "section"));
  for (const std::string& line : classic) into.addWidget(wrapped_label(line, "faint"));
}

// Without wishes there is nothing to take.
void SizePanel::add_size(const QString& name, const FieldSize& size, const Wishes* wishes,
                         QVBoxLayout& into) {
  auto* head = new QHBoxLayout;
  head->addWidget(wrapped_label(name, "name"), 1);
  if (wishes != nullptr) {
    auto* taker = new QPushButton(tr("Take"));
    taker->setAccessibleName(tr("Take: %1").arg(name));
    connect(taker, &QPushButton::clicked, this, [this, w = *wishes] { take(w); });
    takers_.push_back(taker);
    head->addWidget(taker);
  }
  into.addLayout(head);
  into.addWidget(wrapped_label(size_words(size, service_.newest()->plan.units), "faint"));
}

void SizePanel::take(const Wishes& wishes) {
  Plan plan = document_.committed();
  plan.wishes = wishes;
  document_.commit(std::move(plan), tr("Size of the loop"));
}

}  // namespace underlawn
