// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/test_panel.h"

#include <QLayout>
#include <QPushButton>
#include <cmath>

#include "flow/charge.h"
#include "flow/test_safety.h"
#include "plan/coldest_fluid.h"
#include "window/readings_table.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

Form::Bound<double> test_wish(double LoopTest::*field, const QString& what) {
  return bound_to(what, &Plan::test, field);
}

QStringList procedure_names() {
  QStringList names;
  for (const TestProcedure p : {TestProcedure::pump_then_shut_in, TestProcedure::hold_then_shut_in,
                                TestProcedure::long_hold_then_shut_in, TestProcedure::rebound}) {
    names << capital(QString::fromUtf8(test_procedure_name(p)));
  }
  return names;
}

QString word_for(Verdict verdict) {
  switch (verdict) {
    case Verdict::sound:
      return TestPanel::tr("The loop is sound");
    case Verdict::leak_suspected:
      return TestPanel::tr("A leak is suspected");
    case Verdict::cannot_tell:
      break;
  }
  return TestPanel::tr("The readings do not tell");
}

QString text_of(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

TestPanel::TestPanel(Document& document, QWidget* parent)
    : Form(document, parent),
      document_(document),
      pressure_(new Facts),
      curves_(new Facts),
      verdict_(new Facts),
      cautions_(new Facts),
      chart_(new ChartView(280)),
      readings_(new ReadingsTable(document)) {
  layout()->setContentsMargins(0, 0, 0, 0);
  section(tr("Pressure test"));
  wide(cautions_);
  add_wishes();
  pressure_->setAccessibleName(tr("Test pressure"));
  wide(pressure_);
  wide(chart_);
  curves_->setAccessibleName(tr("What the gauge will show"));
  wide(curves_);
  wide(readings_);
  verdict_->setAccessibleName(tr("Verdict"));
  wide(verdict_);
  auto* record = new QPushButton(tr("Dates and witness: Record page"));
  record->setObjectName("plain");
  wide(record);
  connect(record, &QPushButton::clicked, this, &TestPanel::record_asked);
  add_seasons();
  on_refresh([this] {
    readings_->refresh();
    ask_anew();
    show_expected();
    show_verdict();
  });
  follow_outcome();
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &Form::refresh_when_seen);
  refresh();
}

std::shared_ptr<const Flow> TestPanel::flow() const {
  return document_.outcome() == nullptr ? nullptr : document_.outcome()->flow;
}

QString TestPanel::say(Quantity quantity, double value) const {
  return printed(quantity, value, document_.plan());
}

void TestPanel::add_wishes() {
  choice(tr("Procedure"), procedure_names(),
         bound_to<int>(tr("Procedure of the test"), &Plan::test, &LoopTest::procedure));
  note([](const Plan& p) {
    return p.test.procedure == TestProcedure::pump_then_shut_in
               ? tr("A sound loop loses a fifth in half an hour, for the pipe creeps: not to be recommended.")
               : QString();
  });
  number(tr("Working pressure"), Quantity::pressure,
         test_wish(&LoopTest::working_pressure, tr("Working pressure")))
      ->edit()
      ->setToolTip(tr("At the loop's lowest point"));
  number(tr("Gauge above the loop"), Quantity::length,
         test_wish(&LoopTest::gauge_height, tr("Height of the gauge")))
      ->edit()
      ->setToolTip(tr("Above the loop's lowest point"));
  number(tr("Pipe temperature"), Quantity::temperature,
         test_wish(&LoopTest::temperature, tr("Temperature of the test")));
  text(tr("Weakest fitting"),
       {[](const Plan& p) { return text_of(p.test.fitting_name); },
        [](Plan& p, const QString& v) { p.test.fitting_name = v.simplified().toStdString(); },
        tr("Weakest fitting")});
  number(tr("It bears (0: as the pipe)"), Quantity::pressure,
         test_wish(&LoopTest::weakest_fitting, tr("Pressure of the weakest fitting")));
  number(tr("Water pumped in (0: not measured)"), Quantity::fluid_volume,
         {[](const Plan& p) { return p.test.pumped.value_or(0); },
          [](Plan& p, double v) {
            p.test.pumped.reset();
            if (v != 0) p.test.pumped = v;
          },
          tr("Water pumped in")})
      ->edit()
      ->setToolTip(tr("From full, without pressure, to the test pressure"));
}

Result<std::shared_ptr<const TestPanel::Planned>> TestPanel::plan_test(const Asked& asked) {
  const auto test = planned_test(asked.test, asked.loop);
  if (!test) return refuse(test.error());
  const TestBounds bounds;
  const auto prepared = prepare_band(test->programme, test->state, bounds);
  if (!prepared) return refuse(prepared.error());
  auto band = test_band(*prepared, asked.loop, test->state, bounds);
  if (!band) return refuse(band.error());
  const auto smallest = smallest_visible_leak(*prepared, *band, asked.loop, test->state);
  if (!smallest) return refuse(smallest.error());
  auto leak = leak_curve(*prepared, asked.loop, test->state, *smallest);
  if (!leak) return refuse(leak.error());
  return std::make_shared<Planned>(Planned{*test, std::move(*band), *smallest, std::move(*leak)});
}

TestPanel::Judged TestPanel::judge(const Asked& asked, const Planned& planned) {
  const LoopState& state = planned.test.state;
  Judged made{judge_test(planned.test.programme, asked.loop, state, {}, asked.test.readings,
                         asked.test.pumped, asked.units),
              {}};
  if (!made.judgement || !(made.judgement->smallest_visible > 0)) return made;
  const auto prepared = prepare_band(made.judgement->programme, state, {});
  if (!prepared) return made;
  auto leak = leak_curve(*prepared, asked.loop, state, made.judgement->smallest_visible);
  if (leak) made.leak = std::move(*leak);
  return made;
}

Result<TestPanel::Expected> TestPanel::work_out(const Asked& asked) {
  Expected made{asked.planned, {}};
  if (made.planned == nullptr) {
    auto planned = plan_test(asked);
    if (!planned) return refuse(planned.error());
    made.planned = std::move(*planned);
  }
  if (!asked.test.readings.empty()) made.judged = judge(asked, *made.planned);
  return made;
}

// Only where the loop, the test or the units are others than asked last; what is read changes the verdict
// alone.
void TestPanel::ask_anew() {
  const auto solved = flow();
  const Plan& plan = document_.plan();
  if (solved == nullptr || !loop_test_troubles(plan.test).empty()) {
    asked_test_.reset();
    expected_.reset();
    return;
  }
  if (asked_test_ == plan.test && asked_flow_ == solved && asked_units_ == plan.units) return;
  Asked asked{volume_of(solved->loop), plan.test, plan.units, nullptr};
  if (asked_test_ && asked_flow_ == solved && expected_ && *expected_) {
    LoopTest before = *asked_test_;
    before.readings = plan.test.readings;
    before.pumped = plan.test.pumped;
    if (before == plan.test && !working_out_.busy()) asked.planned = (*expected_)->planned;
  }
  asked_test_ = plan.test;
  asked_flow_ = solved;
  asked_units_ = plan.units;
  working_out_.start([asked = std::move(asked)] { return work_out(asked); },
                     [this](Result<Expected> made) {
                       if (!asked_test_) return;
                       expected_ = std::move(made);
                       show_expected();
                       show_verdict();
                     });
}

// As it was run where readings were judged, else as planned.
void TestPanel::show_chart() {
  Chart chart = no_test_chart();
  if (expected_ && *expected_) {
    const Planned& planned = *(*expected_)->planned;
    TestPicture picture{planned.test.programme, asked_test_->procedure, planned.band,
                        planned.leak,           planned.smallest,       asked_test_->readings};
    if (const auto& judged = (*expected_)->judged; judged && judged->leak) {
      picture.programme = judged->judgement->programme;
      picture.band = judged->judgement->band;
      picture.leak = *judged->leak;
      picture.leak_size = judged->judgement->smallest_visible;
    }
    chart = test_chart(picture, document_.plan().units);
  }
  chart.stale = document_.stale() && chart.has_data();
  chart_->set_chart(std::move(chart));
}

void TestPanel::show_expected() {
  show_chart();
  if (!expected_ || !*expected_) {
    const bool refused = expected_ && !*expected_;
    pressure_->show_facts(refused       ? std::vector<Fact>{{text_of(expected_->error().message()), {}}}
                          : asked_test_ ? std::vector<Fact>{{tr("Working out the curves …"), {}}}
                                        : std::vector<Fact>{});
    curves_->show_facts({});
    std::vector<Fact> safety;
    for (const std::string& words : test_cautions({}, 0)) safety.push_back({text_of(words), {}});
    return cautions_->show_facts(safety);
  }
  const Planned& e = *(*expected_)->planned;
  std::vector<Fact> safety;
  for (const std::string& words :
       test_cautions(volume_of(asked_flow_->loop), e.test.pressure.at_lowest, document_.plan().units))
    safety.push_back({text_of(words), {}});
  cautions_->show_facts(safety);
  pressure_->show_facts(
      {{tr("Test pressure at the gauge"), say(Quantity::pressure, e.test.pressure.at_gauge)},
       {tr("at the lowest point"), say(Quantity::pressure, e.test.pressure.at_lowest)},
       {text_of(e.test.pressure.why), {}},
       {tr("Smallest leak it shows"), tr("%1, %2").arg(text_of(leak_text(e.smallest, UnitSystem::metric)),
                                                       text_of(leak_text(e.smallest, UnitSystem::us)))},
       {text_of(band_words({}, document_.plan().units)), {}}});
  std::vector<QStringList> rows = {{tr("Since shut"), tr("Sound loop"), tr("from – to"), tr("That leak")}};
  const double start = shut_in_start(e.test.programme), end = programme_end(e.test.programme);
  for (int i = 0; i <= 4; ++i) {
    const double t = start + (end - start) * i / 4;
    rows.push_back(
        {tr("%1 min").arg(std::round((t - start) / 6) / 10),
         say(Quantity::pressure, e.band.expected.pressure_at(t)),
         say(Quantity::pressure, e.band.low_at(t)) + " – " + say(Quantity::pressure, e.band.high_at(t)),
         say(Quantity::pressure, e.leak.pressure_at(t))});
  }
  curves_->show_table(rows);
}

void TestPanel::show_verdict() {
  if (!expected_ || !*expected_ || !(*expected_)->judged) return verdict_->show_facts({});
  const Result<Judgement>& judged = (*expected_)->judged->judgement;
  if (!judged) return verdict_->show_facts({{text_of(judged.error().message()), {}}});
  std::vector<Fact> all = {{tr("Verdict"), word_for(judged->verdict)}, {text_of(judged->reason), {}}};
  if (!judged->next.empty()) all.push_back({text_of(judged->next), {}});
  if (judged->leak_most > 0)
    all.push_back({tr("Leak that fits best"), text_of(leak_text(judged->leak, document_.plan().units))});
  if (judged->air)
    all.push_back(
        {tr("Air, by the water pumped in"), tr("%1 % of the loop").arg(100 * *judged->air, 0, 'f', 2)});
  if (asked_test_->procedure == TestProcedure::rebound)
    all.push_back({tr("ASTM F2164, all within 5 % of the first"),
                   within_rebound_tolerance(asked_test_->readings) ? tr("yes") : tr("no")});
  verdict_->show_facts(all);
}

void TestPanel::add_seasons() {
  section(tr("Seasons"));
  auto* seasons = new Facts;
  seasons->setAccessibleName(tr("Charge by season"));
  wide(seasons);
  on_refresh([this, seasons] { seasons->show_facts(season_facts()); });
  note([](const Plan&) {
    return tr(
        "Filled at the pipe temperature of the test; winter at the coldest fluid, summer at the warmest "
        "allowed. At least 70 kPa (10 psi) at the top: common practice, no source. Nothing is made up "
        "after the charge.");
  });
}

std::vector<Fact> TestPanel::season_facts() const {
  const auto solved = flow();
  if (solved == nullptr) return {};
  const Plan& plan = document_.plan();
  const ExpansionLoop loop{
      volume_of(solved->loop), plan.flow.fluid, plan.flow.mass_fraction, PipeHold::held, {}};
  const double coldest = coldest_fluid(plan.flow, document_.outcome()->temperatures.get());
  const Seasons seasons{coldest, plan.test.temperature, plan.thermal.warmest_allowed};
  ChargeWishes wishes;
  wishes.bottom_below_gauge = std::clamp(plan.test.gauge_height, 0.0, 300.0);
  const auto charge = least_charge(loop, seasons, wishes);
  if (!charge) return {{text_of(charge.error().message()), {}}};
  std::vector<Fact> all = {{tr("Charge at the fill"), say(Quantity::pressure, charge->at_fill)},
                           {tr("then in winter"), say(Quantity::pressure, charge->winter)},
                           {tr("in summer"), say(Quantity::pressure, charge->summer)},
                           {tr("At most"), say(Quantity::pressure, charge->highest)}};
  if (charge->tank_needed)
    all.push_back({tr("Expansion tank needed"), say(Quantity::fluid_volume, charge->tank)});
  else
    all.push_back({tr("No expansion tank is needed."), {}});
  if (charge->vacuum) all.push_back({tr("In some season the loop stands at a vacuum."), {}});
  return all;
}

}  // namespace underlawn
