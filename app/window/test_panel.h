// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "flow/loop_test.h"
#include "flow/test_verdict.h"
#include "window/background.h"
#include "window/facts.h"
#include "window/form.h"

namespace underlawn {

class ReadingsTable;

// The loop's pressure test: how it is done, what a sound loop and a leak would show, and what was read.
class TestPanel : public Form {
  Q_OBJECT

 public:
  explicit TestPanel(Document& document, QWidget* parent = nullptr);

  ReadingsTable* readings() const { return readings_; }
  Facts* verdict() const { return verdict_; }
  bool at_work() const { return working_out_.busy(); }

 private:
  struct Expected {
    PlannedTest planned;
    TestBand band;
    double smallest = 0;                      // m3/s
    TestCurve leak;                           // of that leak
    std::optional<Result<Judgement>> judged;  // where there are readings
  };
  // What the curves follow from.
  struct Asked {
    LoopVolume loop;
    LoopTest test;
    UnitSystem units = UnitSystem::us;
  };
  static Result<Expected> work_out(const Asked& asked);

  void add_wishes();
  void add_seasons();
  void ask_anew();
  void show_expected();
  void show_verdict();
  std::vector<Fact> season_facts() const;
  QString say(Quantity quantity, double value) const;
  std::shared_ptr<const Flow> flow() const;

  Document& document_;
  Facts *pressure_, *curves_, *verdict_, *cautions_;
  ReadingsTable* readings_;
  std::shared_ptr<const Flow> asked_flow_;
  std::optional<LoopTest> asked_test_;
  UnitSystem asked_units_ = UnitSystem::us;
  std::optional<Result<Expected>> expected_;
  Background<Result<Expected>> working_out_;  // last: it ends before what it tells goes
};

}  // namespace underlawn
