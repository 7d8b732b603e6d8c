// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/ways_panel.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "window/plain_words.h"
#include "window/same_loop.h"
#include "window/theme.h"
#include "window/way_card.h"
#include "window/way_difference.h"
#include "window/work_box.h"

namespace underlawn {

WaysPanel::WaysPanel(Document& document, QWidget* parent)
    : Form(document, parent),
      document_(document),
      work_(new WorkBox(service_, tr("Find other ways"))),
      home_(nullptr) {
  build();
  connect(&work_->begin(), &QPushButton::clicked, this, &WaysPanel::start);
  connect(&service_, &WaysService::answered, this, &WaysPanel::show_answer);
  connect(&service_, &WaysService::busy_changed, this, &WaysPanel::hand_on_keyboard);
  on_refresh([this] { show_age(); });
  refresh();
}

void WaysPanel::build() {
  section(tr("Other ways"));
  wide(plain_words(
      tr("Ways to lay the loop that differ in kind, each worked out in full. Point at one to see it "
         "over the drawing; pick two to compare them."),
      "faint"));
  wide(work_);
  auto* home = new QWidget;
  home_ = new QVBoxLayout(home);
  home_->setContentsMargins(0, 0, 0, 0);
  wide(home);
  end();
}

void WaysPanel::start() {
  if (service_.busy()) return;
  work_->empty();
  service_.start(document_.plan());
}

void WaysPanel::take_keyboard() {
  (service_.busy() ? work_->stop() : work_->begin()).setFocus(Qt::ShortcutFocusReason);
}

// From the button that is pressed again to the first way that was found.
void WaysPanel::hand_on_keyboard() {
  if (!service_.busy() && work_->begin().hasFocus() && cards_.size() > 1)
    cards_[1]->setFocus(Qt::OtherFocusReason);
}

int WaysPanel::drawn() const {
  const auto answer = service_.newest();
  if (answer == nullptr) return -1;
  for (std::size_t i = 0; i < answer->ways.size(); ++i)
    if (answer->ways[i].wishes == document_.plan().wishes) return static_cast<int>(i);
  return -1;
}

bool WaysPanel::earlier() const {
  const auto answer = service_.newest();
  if (answer == nullptr) return false;
  Plan plan = document_.plan();
  if (drawn() >= 0) plan.wishes = answer->plan.wishes;
  return !same_loop(answer->plan, plan);
}

std::vector<const Way*> WaysPanel::shown() const {
  const auto answer = service_.newest();
  if (isVisible() && answer != nullptr && compared_.size() == 2) {
    std::vector<const Way*> both;
    for (int way : compared_) both.push_back(&answer->ways[static_cast<std::size_t>(way)]);
    return both;
  }
  const Way* one = looked_at();
  return one == nullptr ? std::vector<const Way*>{} : std::vector{one};
}

const Way* WaysPanel::looked_at() const {
  const auto answer = service_.newest();
  const int way = looked_at_ >= 0 ? looked_at_ : chosen_;
  if (!isVisible() || answer == nullptr || way < 0 || way >= static_cast<int>(answer->ways.size()))
    return nullptr;
  return way == drawn() && !earlier() ? nullptr : &answer->ways[static_cast<std::size_t>(way)];
}

void WaysPanel::show_age() {
  const bool old = earlier();
  work_->set_earlier(old);
  const int present = drawn();
  for (std::size_t i = 0; i < cards_.size(); ++i)
    cards_[i]->set_state(old                              ? WayCard::State::old
                         : static_cast<int>(i) == present ? WayCard::State::drawn
                                                          : WayCard::State::open);
  emit shown_changed();
}

void WaysPanel::show_answer() {
  cards_.clear();
  chosen_ = looked_at_ = -1;
  compared_.clear();
  show_difference();
  delete found_;
  found_ = new QWidget;
  auto* column = new QVBoxLayout(found_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2 * kGap);
  const WaysAnswer& answer = *service_.newest();
  if (answer.refusal)
    column->addWidget(plain_words(QString::fromStdString(answer.refusal->message()), "wrong"));
  else if (answer.ways.empty())
    column->addWidget(
        plain_words(tr("Nothing can be laid out yet: see the report for what is in the way."), "wrong"));
  for (std::size_t i = 0; i < answer.ways.size(); ++i) add_card(i, *column);
  if (answer.ways.size() == 1)
    column->addWidget(plain_words(tr("No other way was found that differs and lays a circuit."), "faint"));
  home_->addWidget(found_);
  show_age();
}

void WaysPanel::add_card(std::size_t way, QVBoxLayout& into) {
  const WaysAnswer& answer = *service_.newest();
  auto* card = new WayCard(answer.ways[way], answer.ways.front(), answer.plan);
  const int index = static_cast<int>(way);
  connect(card, &WayCard::looked_at, this, [this, index](bool now) {
    looked_at_ = now ? index : -1;
    emit shown_changed();
  });
  connect(card, &WayCard::chosen, this, [this, index] { choose(index); });
  connect(card, &WayCard::compared, this, [this, index](bool on) { compare(index, on); });
  connect(card, &WayCard::taken, this, [this, way] { take(way); });
  cards_.push_back(card);
  into.addWidget(card);
}

void WaysPanel::choose(int way) {
  chosen_ = way;
  for (std::size_t i = 0; i < cards_.size(); ++i) cards_[i]->set_chosen(static_cast<int>(i) == way);
  emit shown_changed();
}

// A third takes the place of the one picked first.
void WaysPanel::compare(int way, bool on) {
  std::erase(compared_, way);
  if (on) compared_.push_back(way);
  if (compared_.size() > 2) compared_.erase(compared_.begin());
  for (std::size_t i = 0; i < cards_.size(); ++i) {
    const auto at = std::find(compared_.begin(), compared_.end(), static_cast<int>(i));
    cards_[i]->set_letter(at == compared_.end() ? QString()
                                                : QString(QChar(at == compared_.begin() ? u'A' : u'B')));
  }
  show_difference();
  emit shown_changed();
}

void WaysPanel::show_difference() {
  delete difference_;
  difference_ = nullptr;
  if (compared_.size() != 2) return;
  const WaysAnswer& answer = *service_.newest();
  difference_ = way_difference(answer.ways[static_cast<std::size_t>(compared_[0])],
                               answer.ways[static_cast<std::size_t>(compared_[1])], answer.plan);
  home_->insertWidget(0, difference_);
}

void WaysPanel::take(std::size_t way) {
  Plan plan = document_.committed();
  plan.wishes = service_.newest()->ways[way].wishes;
  document_.commit(std::move(plan), tr("Another way"));
}

void WaysPanel::hideEvent(QHideEvent* event) {
  Form::hideEvent(event);
  looked_at_ = -1;
  emit shown_changed();
}

void WaysPanel::showEvent(QShowEvent* event) {
  Form::showEvent(event);
  emit shown_changed();
}

}  // namespace underlawn
