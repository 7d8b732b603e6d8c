// SPDX-License-Identifier: GPL-3.0-or-later
// Running costs on the Price page: what the loop is compared with.
#include <QComboBox>
#include <QHBoxLayout>
#include <QPushButton>
#include <cmath>

#include "base/say.h"
#include "cost/comparison.h"
#include "cost/fuels.h"
#include "window/price_panel.h"

namespace underlawn {

namespace {

Form::Bound<double> run(double Running::*field, const QString& what) {
  return bound_to(what, &Plan::pricing, &Pricing::running, field);
}

Form::Bound<double> in_grams(Form::Bound<double> of) {
  constexpr double kGrams = 1000;
  return {[of](const Plan& p) { return kGrams * of.get(p); },
          [of](Plan& p, double v) { of.set(p, v / kGrams); }, of.what};
}

// The usual names are kept in English and said as they are read; one's own stay as they were typed.
QString said(std::string_view name) {
  return QString::fromStdString(translated(name));
}

int whole(double v) {
  return static_cast<int>(std::lround(std::clamp(v, -1e6, 1e6)));
}

std::vector<OtherSystem>& others(Plan& p) {
  return p.pricing.running.others;
}
const std::vector<OtherSystem>& others(const Plan& p) {
  return p.pricing.running.others;
}

}  // namespace

bool PricePanel::has_system(const Plan& plan) const {
  return !others(plan).empty();
}

std::size_t PricePanel::chosen(const Plan& plan) const {
  const auto count = static_cast<int>(others(plan).size());
  return static_cast<std::size_t>(std::clamp(system_, 0, std::max(0, count - 1)));
}

Form::Bound<double> PricePanel::of_system(double OtherSystem::*field, const QString& what) {
  return {[=, this](const Plan& p) { return has_system(p) ? others(p)[chosen(p)].*field : 0; },
          [=, this](Plan& p, double v) {
            if (has_system(p)) others(p)[chosen(p)].*field = v;
          },
          what};
}

Form::Bound<QString> PricePanel::text_of_system(std::string OtherSystem::*field, const QString& what) {
  return {[=, this](const Plan& p) { return has_system(p) ? said(others(p)[chosen(p)].*field) : QString(); },
          [=, this](Plan& p, const QString& t) {
            if (has_system(p)) others(p)[chosen(p)].*field = t.simplified().toStdString();
          },
          what};
}

void PricePanel::add_running_costs() {
  section(tr("Running cost"));
  number(tr("Electricity, per kWh"), Quantity::money, run(&Running::electricity, tr("Price of electricity")));
  number(tr("rises a year by"), Quantity::ratio,
         run(&Running::electricity_escalation, tr("Rise of the price of electricity")));
  number(tr("CO₂ of a kWh, g"), Quantity::count,
         in_grams(run(&Running::electricity_emission, tr("Emission of electricity"))))
      ->edit()
      ->setToolTip(tr("Usual: %1").arg(said(kGridSource)));
  number(tr("Discount rate a year"), Quantity::ratio, run(&Running::discount, tr("Discount rate")));
  number(tr("Inflation a year"), Quantity::ratio, run(&Running::inflation, tr("Inflation")))
      ->edit()
      ->setToolTip(
          tr("Of maintenance and of what is bought again; all rates with inflation, or all without"));
  number(tr("Years looked at"), Quantity::count,
         {[](const Plan& p) { return p.pricing.running.years.value_or(p.thermal.years); },
          [](Plan& p, double v) {
            p.pricing.running.years = whole(v);
            if (*p.pricing.running.years == p.thermal.years) p.pricing.running.years.reset();
          },
          tr("Years looked at")});
  number(tr("Heat pump indoors"), Quantity::money, run(&Running::unit_cost, tr("Price of the heat pump")))
      ->edit()
      ->setToolTip(tr("With its fitting; not where it is a line of your own above"));
  note([](const Plan&) {
    return tr("Not entered: without it no payback is told, in the report and in the proposal.");
  });
  only_when([](const Plan& p) { return !heat_pump_priced(p.pricing) && !p.pricing.running.others.empty(); });
  number(tr("bought again after, years"), Quantity::count,
         {[](const Plan& p) { return p.pricing.running.unit_life; },
          [](Plan& p, double v) { p.pricing.running.unit_life = whole(v); }, tr("Life of the heat pump")});
  number(tr("Its maintenance a year"), Quantity::money, run(&Running::maintenance, tr("Maintenance")));
}

void PricePanel::add_systems() {
  section(tr("Other ways to heat and cool"));
  wide(system_buttons());
  auto* which = choice_box({});
  row(tr("System"), which);
  on_refresh([this, which] {
    const Plan& plan = document_.plan();
    which->clear();
    for (const OtherSystem& o : others(plan)) which->addItem(said(o.name));
    which->setCurrentIndex(has_system(plan) ? static_cast<int>(chosen(plan)) : -1);
  });
  connect(which, &QComboBox::activated, this, &PricePanel::choose_system);
  only_when([this](const Plan& p) { return has_system(p); });
  add_system_fields();
  note([this](const Plan& p) {
    return has_system(p)
               ? tr("Heat contents: %1. Emissions: %2. Prices, efficiencies and first costs of the list "
                    "are round figures of our own: enter yours.")
                     .arg(said(kHeatContentSource), said(kEmissionSource))
               : tr("Add what the house would be heated and cooled with otherwise, or is now.");
  });
}

void PricePanel::add_system_fields() {
  const auto there = [this](const Plan& p) { return has_system(p); };
  const auto field = [&](const QString& label, Quantity quantity, double OtherSystem::*which) {
    QuantityField* made = number(label, quantity, of_system(which, label));
    only_when(there);
    return made;
  };
  const auto words = [&](const QString& label, std::string OtherSystem::*which) {
    QLineEdit* edit = text(label, text_of_system(which, label))->edit();
    only_when(there);
    // A long name is told whole to who points at it.
    on_refresh([edit] {
      edit->setToolTip(edit->text());
      if (!edit->hasFocus()) edit->setCursorPosition(0);
    });
  };
  words(tr("Name"), &OtherSystem::name);
  words(tr("Fuel"), &OtherSystem::fuel);
  words(tr("Sold by the"), &OtherSystem::unit);
  field(tr("Price of one unit"), Quantity::money, &OtherSystem::price);
  field(tr("rises by, a year"), Quantity::ratio, &OtherSystem::escalation);
  field(tr("Heat in one unit"), Quantity::energy, &OtherSystem::heat_content);
  number(tr("CO₂ of one unit, g"), Quantity::count,
         in_grams(of_system(&OtherSystem::emission, tr("CO₂ of one unit"))));
  only_when(there);
  field(tr("Heating efficiency"), Quantity::ratio, &OtherSystem::efficiency)
      ->edit()
      ->setToolTip(tr("Heat given over heat in the fuel, of the season: 92 %; a heat pump's is above 100 %"));
  field(tr("Cooling efficiency"), Quantity::count, &OtherSystem::cooling)
      ->edit()
      ->setToolTip(tr("Cooling over electricity, of the season (SEER/3.412); 0 where it does not cool"));
  field(tr("Electricity for fans, of the heat"), Quantity::ratio, &OtherSystem::auxiliary);
  field(tr("First cost"), Quantity::money, &OtherSystem::first_cost);
  field(tr("Maintenance, a year"), Quantity::money, &OtherSystem::maintenance);
  number(tr("Bought again after, years"), Quantity::count,
         {[this](const Plan& p) { return has_system(p) ? others(p)[chosen(p)].life : 0; },
          [this](Plan& p, double v) {
            if (has_system(p)) others(p)[chosen(p)].life = whole(v);
          },
          tr("Life of the other system")});
  only_when(there);
}

QWidget* PricePanel::system_buttons() {
  auto* buttons = new QWidget;
  auto* row = new QHBoxLayout(buttons);
  row->setContentsMargins(0, 0, 0, 0);
  QStringList names;
  for (const OtherSystem& o : usual_systems()) names << said(o.name);
  auto* add = choice_box(names);
  add->setPlaceholderText(tr("Add…"));
  add->setCurrentIndex(-1);
  add->setAccessibleName(tr("Add another way to heat and cool"));
  auto* remove = new QPushButton(tr("Remove"));
  remove->setObjectName("plain");
  remove->setAccessibleName(tr("Remove the system shown"));
  row->addWidget(add, 1);
  row->addWidget(remove);
  connect(add, &QComboBox::activated, this, [this, add](int which) {
    add->setCurrentIndex(-1);
    add_system(which);
  });
  connect(remove, &QPushButton::clicked, this, &PricePanel::remove_system);
  on_refresh([this, remove] { remove->setEnabled(has_system(document_.plan())); });
  return buttons;
}

void PricePanel::add_system(int usual) {
  Plan plan = document_.committed();
  OtherSystem o = usual_systems()[static_cast<std::size_t>(usual)];
  // Electricity costs and rises what the loop's does, until another is typed.
  if (o.fuel == fuels().back().name) {
    o.price = plan.pricing.running.electricity;
    o.escalation = plan.pricing.running.electricity_escalation;
    o.emission = plan.pricing.running.electricity_emission;
  }
  others(plan).push_back(std::move(o));
  if (!new_trouble(document_.committed(), plan).isEmpty()) return;
  system_ = static_cast<int>(others(plan).size()) - 1;
  document_.commit(std::move(plan), tr("Another way to heat and cool"));
  refresh();
}

void PricePanel::remove_system() {
  Plan plan = document_.committed();
  if (!has_system(plan)) return;
  others(plan).erase(others(plan).begin() + static_cast<std::ptrdiff_t>(chosen(plan)));
  document_.commit(std::move(plan), tr("Remove a way to heat and cool"));
  refresh();
}

void PricePanel::choose_system(int system) {
  system_ = system;
  refresh();
}

}  // namespace underlawn
