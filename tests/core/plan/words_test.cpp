// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever core tells of a plan is handed to the translator: in a language that puts every translated text
// into brackets, nothing but names of the plan, units and symbols stands outside them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "cost/bill.h"
#include "cost/crew_calendar.h"
#include "cost/fuels.h"
#include "cost/pricing_troubles.h"
#include "dig/dig_words.h"
#include "dig/protection.h"
#include "files/plan_file.h"
#include "plan/assumptions.h"
#include "plan/checks/check.h"
#include "plan/clearings.h"
#include "plan/plan_troubles.h"
#include "plan/record/as_built_csv.h"
#include "plan/record/as_built_mends.h"
#include "plan/record/record_judge.h"
#include "plan/record/record_troubles.h"
#include "plan/sizing/size_words.h"
#include "plan/solve.h"
#include "plan/ways.h"
#include "support/bad_plans.h"
#include "support/catalogues.h"
#include "support/sample_plans.h"

namespace underlawn {
namespace {

// Units and symbols of formulas; names of people and standards stand in texts that are said.
const std::vector<std::string> kAllowed = {"ft",    "in",   "sq",  "cu",   "yd",  "gal", "gpm", "psi", "Btu",
                                           "kWh",   "kW",   "min", "DR",   "pH",  "lb",  "fps", "hp",  "ac",
                                           "USD",   "kPa",  "MJ",  "mm",   "cm",  "kg",  "deg", "CFR", "rho",
                                           "therm", "UFGS", "NTU", "acre", "day", "ASTM"};

// Papers, as their authors are cited.
const std::vector<std::string> kCitations = {"Johansen 1975, thesis, Trondheim (CRREL translation 637)",
                                             "Lu, Ren, Gong, Horton 2007, Soil Sci. Soc. Am. J. 71:8-14",
                                             "Côté and Konrad 2005, Can. Geotech. J. 42:443-458",
                                             "Côté and Konrad",
                                             "Lu et al.",
                                             "Johansen"};

class Shown {
 public:
  explicit Shown(const Plan& plan) : names_(kCitations) {
    for (const Feature& f : plan.site.features) names_.push_back(f.name);
    for (const ExtraLine& e : plan.pricing.terms.extras) names_.push_back(e.item);
    for (const Incentive& i : plan.pricing.terms.incentives) names_.push_back(i.name);
    names_.push_back(plan.thermal.normals.name);
    names_.push_back(plan.thermal.unit.name);
    std::ranges::stable_sort(names_, std::ranges::greater{}, &std::string::size);
  }

  void text(const std::string& said) {
    test::Unsaid unsaid;
    unsaid.read(without_names(said));
    for (const std::string& word : unsaid.words())
      if (std::ranges::find(kAllowed, word) == kAllowed.end()) unsaid_.insert(word + " in: " + said);
  }
  void trouble(const Trouble& t) {
    for (const std::string& part : {t.thing, t.value, t.bound, t.advice, t.message()}) text(part);
  }
  void troubles(const std::vector<Trouble>& all) {
    for (const Trouble& t : all) trouble(t);
  }

  // Words outside all brackets that are no names of the plan, with the text they stand in.
  std::string words() const {
    std::string all;
    for (const std::string& each : unsaid_) all += each + "\n";
    return all;
  }

 private:
  std::string without_names(std::string text) const {
    for (const std::string& name : names_)
      for (std::size_t at = 0; !name.empty() && (at = text.find(name, at)) != std::string::npos;)
        text.replace(at, name.size(), "-");
    return text;
  }
  std::set<std::string> unsaid_;
  std::vector<std::string> names_;
};

SpeakHere marking() {
  return SpeakHere(&test::marking_around_holes(UNDERLAWN_SPANISH));
}

Plan sample_plan(const std::string& name) {
  auto plan = load_plan(std::string(UNDERLAWN_SOURCE_DIR) + "/samples/" + name);
  if (!plan) throw std::runtime_error(plan.error().message());
  plan->value.thermal.years = 2;
  return plan->value;
}

const std::vector<std::string> kSamples = {"alder-lane.underlawn", "kestrel-bend.underlawn"};

void show_findings(Shown& shown, const std::vector<Finding>& findings) {
  for (const Finding& f : findings)
    for (const std::string& part : {f.title, f.advice, f.source}) shown.text(part);
}

// "typed" is a key: whoever shows a figure says it.
void show_figures(Shown& shown, const Figures& figures) {
  for (const Figure& f : figures.all()) {
    shown.text(f.label);
    if (f.method != "typed") shown.text(f.method);
    shown.text(f.source);
  }
}

void show_bill(Shown& shown, const Bill& bill) {
  for (const BillLine& line : bill.lines) {
    for (const std::string& part : {line.item, line.note, packs_text(line, UnitSystem::us)}) shown.text(part);
    if (line.how != "typed") shown.text(line.how);
    if (line.group != BillGroup::own) shown.text(unit_text(line.unit, UnitSystem::us));
  }
}

void show_order(Shown& shown, const Plan& plan, const DigOrder& order) {
  for (const DigStep& step : order.steps)
    for (const std::string& part :
         {step_name(step), way_of_digging(step), spoil_words(step, plan.site, plan.units), step.no_room,
          sides_name(step.sides), trenches_named(step.into)})
      shown.text(part);
}

void show_calendar(Shown& shown, const CrewCalendar& calendar, const DigOrder& order) {
  for (const CrewTask& t : calendar.tasks)
    for (const std::string& part : {task_words(t, order), wait_words(t.waited_for), station_name(t.station)})
      shown.text(part);
  for (const CrewSaving& s : calendar.savings) shown.text(s.what);
}

void show_places(Shown& shown, const Plan& plan, const Outcome& o) {
  for (const Tie& tie : o.stake_out.ties) shown.text(tie.point);
  for (const Clearing& c : clearings(plan, o))
    for (const std::string& part : {c.dug, c.thing, c.source}) shown.text(part);
}

void show(Shown& shown, const Plan& plan, const Outcome& o) {
  show_findings(shown, o.findings);
  show_figures(shown, o.figures);
  shown.troubles(o.troubles);
  if (o.bill) show_bill(shown, *o.bill);
  if (o.order) show_order(shown, plan, *o.order);
  if (o.order && o.calendar) show_calendar(shown, *o.calendar, *o.order);
  show_places(shown, plan, o);
  for (const RecordLine& line : judge_record(plan, o.flow.get(), o.temperatures.get()).lines())
    for (const std::string& part : {line.title, line.words, line.source}) shown.text(part);
}

}  // namespace

TEST(Words, AllThatSamplesTellIsSaid) {
  const SpeakHere here = marking();
  for (const std::string& name : kSamples) {
    for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      Plan plan = sample_plan(name);
      plan.units = units;
      plan.pricing.running.others = usual_systems();
      Shown shown(plan);
      const Outcome outcome = solve(plan);
      show(shown, plan, outcome);
      for (const std::string& line : assumptions(plan, outcome)) shown.text(line);
      EXPECT_EQ(shown.words(), "") << name;
    }
  }
}

TEST(Words, AllThatBadPlansTellIsSaid) {
  const SpeakHere here = marking();
  for (const bad::Case& bad : bad::cases()) {
    Shown shown(bad.plan);
    show(shown, bad.plan, bad.outcome);
    show_findings(shown, run_checks(bad.plan, bad.outcome));
    EXPECT_EQ(shown.words(), "") << bad.name;
  }
}

// Every rule speaks of one of the bad plans, so none of their texts goes unread above.
TEST(Words, BadPlansFailEveryCheck) {
  std::vector<std::string> silent;
  std::vector<Finding> all;
  for (const bad::Case& bad : bad::cases())
    for (Finding& f : run_checks(bad.plan, bad.outcome)) all.push_back(std::move(f));
  for (const CheckEntry& check : all_checks())
    if (std::ranges::find(all, check.rule, &Finding::rule) == all.end()) silent.emplace_back(check.rule);
  EXPECT_THAT(silent, testing::IsEmpty());
}

TEST(Words, RefusalsOfPlansAreSaid) {
  const SpeakHere here = marking();
  for (double value : {std::nan(""), -1e12, 1e12})
    for (UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      Plan plan = bad::out_of_bounds(value);
      plan.units = units;
      Shown shown(plan);
      shown.troubles(plan_troubles(plan));
      shown.troubles(pricing_troubles(plan.pricing, units));
      shown.troubles(record_troubles(plan.record, units));
      shown.troubles(as_built_troubles(plan.as_built, units));
      EXPECT_GT(plan_troubles(plan).size(), 40u);
      EXPECT_EQ(shown.words(), "") << value;
    }
}

TEST(Words, WaysAreSaid) {
  const SpeakHere here = marking();
  for (const std::string& name : kSamples) {
    const Plan plan = sample_plan(name);
    Shown shown(plan);
    std::size_t ways = 0;
    for (const Way& way : ways_of(plan, [&](double, const std::string& what) { shown.text(what); })) {
      shown.text(way.sentence);
      ++ways;
    }
    EXPECT_GT(ways, 1u);
    EXPECT_EQ(shown.words(), "") << name;
  }
}

TEST(Words, TheAsBuiltAndItsMendsAreSaid) {
  const SpeakHere here = marking();
  const Plan plan = bad::built_short();
  const Outcome planned = solve(plan);
  LaidSolver solver;
  const AsBuiltAnswer built = solve_as_built(plan, planned, solver);
  Shown shown(plan);
  for (const Hold& h : built.holds) shown.text(h.what);
  for (const Change& c : built.changes) shown.text(c.label);
  for (const BuiltRow& row : built_rows(plan, planned, built)) shown.text(row.point);
  shown.troubles(built.loop.remarks);
  EXPECT_FALSE(built.loop.remarks.empty());
  const Mends mends =
      find_mends(plan, planned, built, solver, [&](double, const std::string& what) { shown.text(what); });
  for (const Mend& m : mends.all)
    for (const std::string& part : {m.what, m.caution}) shown.text(part);
  for (const std::string& line : mends.not_found) shown.text(line);
  EXPECT_GT(mends.all.size() + mends.not_found.size(), 2u);
  EXPECT_EQ(shown.words(), "");
}

TEST(Words, TheSizingIsSaid) {
  const SpeakHere here = marking();
  const Plan plan = sample_plan(kSamples[0]);
  Shown shown(plan);
  const auto s = size_loop(plan, [&](double, const std::string& what) { shown.text(what); });
  ASSERT_TRUE(s);
  shown.text(needed_words(*s));
  shown.text(least_coil_words(*s, plan.units));
  for (const std::string& line : classic_words(*s, plan.units)) shown.text(line);
  for (const Alternative& a : s->alternatives) shown.text(alternative_name(a, plan.units));
  Chance chance;
  chance.draws = 100;
  shown.text(chance_words(chance, plan.units));
  EXPECT_EQ(shown.words(), "");
}

// Numbers, keys and codes are the same in every language.
TEST(Words, NoNumberOrKeyChangesWithTheLanguage) {
  for (const std::string& name : kSamples) {
    const Plan plan = sample_plan(name);
    const Outcome english = solve(plan);
    const SpeakHere here = marking();
    const Outcome marked = solve(plan);
    EXPECT_EQ(english.layout, marked.layout);
    EXPECT_EQ(english.fingerprint, marked.fingerprint);
    ASSERT_EQ(english.figures.all().size(), marked.figures.all().size());
    for (std::size_t i = 0; i < english.figures.all().size(); ++i) {
      const Figure &a = english.figures.all()[i], &b = marked.figures.all()[i];
      EXPECT_EQ(a.key, b.key);
      EXPECT_EQ(a.value, b.value) << a.key;
      EXPECT_EQ(a.from, b.from) << a.key;
    }
    ASSERT_EQ(english.findings.size(), marked.findings.size());
    for (std::size_t i = 0; i < english.findings.size(); ++i) {
      EXPECT_EQ(english.findings[i].key, marked.findings[i].key);
      EXPECT_EQ(english.findings[i].measured, marked.findings[i].measured);
    }
    for (std::size_t i = 0; i < english.stake_out.ties.size(); ++i)
      EXPECT_EQ(english.stake_out.ties[i].key, marked.stake_out.ties[i].key);
  }
}

TEST(Words, CodesOfRefusalsDoNotChangeWithTheLanguage) {
  const auto codes = [] {
    std::vector<std::string> all;
    const Plan plan = bad::out_of_bounds(std::nan(""));
    for (const auto& troubles : {plan_troubles(plan), pricing_troubles(plan.pricing, plan.units),
                                 record_troubles(plan.record), as_built_troubles(plan.as_built)})
      for (const Trouble& t : troubles) all.push_back(t.code);
    return all;
  };
  const std::vector<std::string> english = codes();
  const SpeakHere here = marking();
  EXPECT_EQ(english, codes());
}

}  // namespace underlawn
