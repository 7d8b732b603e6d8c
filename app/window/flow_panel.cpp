// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/flow_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <cmath>

#include "flow/antifreeze.h"
#include "flow/flow_remarks.h"
#include "plan/coldest_fluid.h"
#include "window/flow_bounds.h"
#include "window/test_panel.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

QStringList fluid_names() {
  QStringList names;
  for (const Fluid fluid :
       {Fluid::water, Fluid::propylene_glycol, Fluid::ethanol, Fluid::methanol, Fluid::ethylene_glycol}) {
    names << capital(QString::fromUtf8(fluid_name(fluid)));
  }
  return names;
}

// The least that holds, up to the next tenth of a percent, which is as fine as it is shown.
double rounded_up(double mass_fraction) {
  return std::min(std::ceil(mass_fraction * 1000 - 1e-9) / 1000, kMostConcentration);
}

// For the coldest fluid typed or simulated.
FlowWishes at_coldest(FlowWishes wishes, const Outcome* outcome) {
  if (outcome != nullptr) wishes.coldest_temperature = coldest_fluid(wishes, outcome->temperatures.get());
  return wishes;
}

std::optional<double> recommended(const FlowWishes& wishes) {
  const auto antifreeze = antifreeze_for(wishes, 1);
  if (!antifreeze || !antifreeze->recommended) return std::nullopt;
  return rounded_up(*antifreeze->recommended);
}

// Water takes no antifreeze; from water to another fluid as much goes in as is needed.
void choose_fluid(Plan& plan, int index, const Outcome* outcome) {
  FlowWishes& w = plan.flow;
  const bool was_water = w.fluid == Fluid::water;
  w.fluid = static_cast<Fluid>(index);
  if (w.fluid == Fluid::water) w.mass_fraction = 0;
  if (was_water && w.fluid != Fluid::water)
    w.mass_fraction = recommended(at_coldest(w, outcome)).value_or(0.2);
}

}  // namespace

FlowPanel::FlowPanel(Document& document, QWidget* parent) : Form(document, parent), document_(document) {
  add_refusal();
  add_fluid();
  add_header();
  add_pipes();
  add_circulator();
  add_purge();
  wide(new TestPanel(document));
  end();
  follow_outcome();
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &Form::refresh_when_seen);
  refresh();
}

std::shared_ptr<const Flow> FlowPanel::flow() const {
  return document_.outcome() == nullptr ? nullptr : document_.outcome()->flow;
}

QString FlowPanel::say(Quantity quantity, double value) const {
  return printed(quantity, value, document_.plan());
}

Facts* FlowPanel::facts(const QString& name, std::function<std::vector<Fact>(const Flow&)> tell) {
  auto* label = new Facts;
  label->setAccessibleName(name);
  on_refresh([this, label, tell = std::move(tell)] {
    const auto solved = flow();
    label->show_facts(solved == nullptr ? std::vector<Fact>{} : tell(*solved));
  });
  wide(label);
  return label;
}

// What is not sound and what could not be solved stand on top, then what is worth knowing.
void FlowPanel::add_refusal() {
  auto* refusal = new QLabel;
  refusal->setObjectName("wrong");
  refusal->setAccessibleName(tr("Why there is no flow"));
  refusal->setWordWrap(true);
  wide(refusal);
  on_refresh([this, refusal] {
    QString why;
    if (const auto wrong = flow_troubles(document_.plan().flow, document_.plan().units); !wrong.empty())
      why = QString::fromStdString(wrong.front().message());
    else if (const Outcome* outcome = document_.outcome(); outcome != nullptr && outcome->flow_refusal)
      why = QString::fromStdString(outcome->flow_refusal->message());
    else if (outcome != nullptr && outcome->flow == nullptr)
      why = tr("No loop is laid out yet, so nothing flows.");
    refusal->setText(why);
    refusal->setVisible(!why.isEmpty());
  });
  facts(tr("Remarks on the flow"), [this](const Flow& f) {
    std::vector<Fact> remarks;
    const Plan& of = *document_.outcome_plan();
    for (const Trouble& t : flow_remarks(f, of.flow, document_.plan().units))
      remarks.push_back({QString::fromStdString(t.message()), {}});
    return remarks;
  });
}

void FlowPanel::add_fluid() {
  section(tr("Fluid"));
  choice(tr("Fluid"), fluid_names(),
         {[](const Plan& p) { return static_cast<int>(p.flow.fluid); },
          [this](Plan& p, int index) { choose_fluid(p, index, document_.outcome()); }, tr("Fluid")});
  note([](const Plan& p) { return QString::fromUtf8(fluid_caution(p.flow.fluid)); });
  number(tr("Antifreeze by mass"), Quantity::ratio,
         flow_wish(&FlowWishes::mass_fraction, tr("Concentration")));
  only_when([](const Plan& p) { return p.flow.fluid != Fluid::water; });
  number(tr("Margin to freezing"), Quantity::temperature_difference,
         flow_wish(&FlowWishes::freeze_margin, tr("Margin to freezing")));
  number(tr("Coldest fluid"), Quantity::temperature,
         flow_wish(&FlowWishes::coldest_temperature, tr("Coldest fluid")))
      ->edit()
      ->setToolTip(tr("As it leaves the heat pump at its coldest"));
  number(tr("Fluid over the season"), Quantity::temperature,
         flow_wish(&FlowWishes::design_temperature, tr("Design temperature")))
      ->edit()
      ->setToolTip(tr("Flows and heads at design are worked out at this temperature"));
  add_fluid_facts();
}

void FlowPanel::add_fluid_facts() {
  auto* label = new Facts;
  label->setAccessibleName(tr("What the fluid is good for"));
  wide(label);
  auto* take = new QPushButton;
  take->setObjectName("take_recommended");
  connect(take, &QPushButton::clicked, this, &FlowPanel::take_recommended);
  wide(take);
  on_refresh([this, label, take] {
    const FlowWishes w = at_coldest(document_.plan().flow, document_.outcome());
    const auto solved = flow();
    const auto a = antifreeze_for(w, solved != nullptr ? solved->volume : 1);
    std::vector<Fact> all;
    if (a) {
      if (w.fluid != Fluid::water) all.push_back({tr("By volume"), say(Quantity::ratio, a->volume_fraction)});
      all.push_back({tr("Freezing begins at"), say(Quantity::temperature, a->freezing_point)});
      if (w.coldest_temperature < document_.plan().flow.coldest_temperature)
        all.push_back(
            {tr("Coldest fluid in the years solved"), say(Quantity::temperature, w.coldest_temperature)});
      all.push_back({tr("It must not freeze above"), say(Quantity::temperature, a->wanted_freezing)});
      if (solved != nullptr) {
        all.push_back({tr("The loop holds"), say(Quantity::fluid_volume, a->volume)});
        if (w.fluid != Fluid::water)
          all.push_back({tr("Pure antifreeze to buy"), say(Quantity::fluid_volume, a->concentrate)});
      }
      all.push_back({QString::fromStdString(a->below_freezing), {}});
      if (!a->enough && !a->recommended && w.fluid != Fluid::water)
        all.push_back({tr("No concentration of this fluid is enough. Choose another fluid."), {}});
    }
    label->show_facts(all);
    const auto best = recommended(w);
    take->setVisible(best.has_value() && w.fluid != Fluid::water);
    if (!best) return;
    take->setText(tr("Take the %1 recommended").arg(say(Quantity::ratio, *best)));
    take->setEnabled(*best != w.mass_fraction);
  });
}

void FlowPanel::take_recommended() {
  Plan plan = document_.committed();
  const auto best = recommended(at_coldest(plan.flow, document_.outcome()));
  if (!best) return;
  plan.flow.mass_fraction = *best;
  document_.commit(std::move(plan), tr("Recommended concentration"));
}

}  // namespace underlawn
