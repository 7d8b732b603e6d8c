// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "flow/loop_test.h"
#include "flow/test_verdict.h"
#include "plots/chart_view.h"
#include "plots/test_chart.h"
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
  ChartView* chart() const { return chart_; }
  bool at_work() const { return working_out_.busy(); }

 signals:
  void record_asked();  // dates, tester, witness and result

 private:
  struct Planned {
    PlannedTest test;
    TestBand band;
    double smallest = 0;  // m3/s
    TestCurve leak;       // of that leak
  };
  struct Judged {
    Result<Judgement> judgement;
    std::optional<TestCurve> leak;  // of the smallest visible leak, where the programme as run has one
  };
  struct Expected {
    std::shared_ptr<const Planned> planned;
    std::optional<Judged> judged;  // where there are readings
  };
  // What the curves follow from.
  struct Asked {
    LoopVolume loop;
    LoopTest test;
    UnitSystem units = UnitSystem::us;
    std::shared_ptr<const Planned> planned;  // where that is worked out already
  };
  static Result<std::shared_ptr<const Planned>> plan_test(const Asked& asked);
  static Judged judge(const Asked& asked, const Planned& planned);
  static Result<Expected> work_out(const Asked& asked);

  void add_wishes();
  void add_seasons();
  void ask_anew();
  void show_expected();
  void show_chart();
  void show_verdict();
  std::vector<Fact> season_facts() const;
  QString say(Quantity quantity, double value) const;
  std::shared_ptr<const Flow> flow() const;

  Document& document_;
  Facts *pressure_, *curves_, *verdict_, *cautions_;
  ChartView* chart_;
  ReadingsTable* readings_;
  std::shared_ptr<const Flow> asked_flow_;
  std::optional<LoopTest> asked_test_;
  UnitSystem asked_units_ = UnitSystem::us;
  std::optional<Result<Expected>> expected_;
  Background<Result<Expected>> working_out_;  // last: it ends before what it tells goes
};

}  // namespace underlawn
