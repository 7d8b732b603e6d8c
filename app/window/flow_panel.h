// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "window/background.h"
#include "window/facts.h"
#include "window/form.h"

class QGridLayout;
class QPushButton;
class QTableWidget;

namespace underlawn {

// The fluid and the pipes that carry it: what is asked for and what follows.
class FlowPanel : public Form {
  Q_OBJECT

 public:
  explicit FlowPanel(Document& document, QWidget* parent = nullptr);

  QTableWidget* pipes() const { return pipes_; }

 private:
  using Alternatives = Result<std::vector<HeaderChoice>>;

  void add_refusal();
  void add_fluid();
  void add_fluid_facts();
  void take_recommended();
  void add_header();
  void add_steps();
  void show_steps();
  void choose_step(int step, const QString& name);
  void add_alternatives();
  void compare();
  void show_alternatives();
  void take_alternative(HeaderArrangement arrangement);
  void add_pipes();
  void fill_pipes();
  void add_circulator();
  void add_losses();
  void add_purge();

  // The newest flow there is, null where there is none; of document_.outcome_plan().
  std::shared_ptr<const Flow> flow() const;
  QString say(Quantity quantity, double value) const;
  // Facts that follow from the flow; nothing is said where there is none.
  Facts* facts(const QString& name, std::function<std::vector<Fact>(const Flow&)> tell);

  Document& document_;
  QWidget* steps_ = nullptr;
  QGridLayout* step_rows_ = nullptr;
  QPushButton* compare_ = nullptr;
  Facts* compared_ = nullptr;
  QWidget* takers_ = nullptr;
  std::optional<Plan> compared_plan_;  // whose alternatives are shown, its arrangement left open
  std::optional<Alternatives> alternatives_;
  QTableWidget* pipes_ = nullptr;
  bool coldest_ = false;  // the table shows the loop at its coldest
  std::shared_ptr<const Flow> filled_;
  std::pair<UnitSystem, bool> filled_as_{};
  Background<Alternatives> comparing_;  // last: it ends before what it tells goes
};

}  // namespace underlawn
