// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/ground_panel.h"

#include <QComboBox>
#include <QPushButton>

#include "base/say.h"
#include "dig/dig.h"
#include "plan/usual_terms.h"
#include "site/clearances.h"

namespace underlawn {

namespace {

Form::Bound<double> ground(double Ground::*field, const QString& what) {
  return bound_to(what, &Plan::ground, field);
}

QString said(std::string_view english) {
  return QString::fromStdString(translated(english));
}

QStringList soil_choices() {
  QStringList names;
  for (const SoilType soil : {SoilType::stable_rock, SoilType::type_a, SoilType::type_b, SoilType::type_c}) {
    const double slope = slope_for(soil);
    const QString name = QString::fromUtf8(soil_name(soil));
    names << (slope == 0 ? Form::tr("%1, vertical sides").arg(name)
                         : Form::tr("%1, slope %2 : 1").arg(name).arg(slope));
  }
  return names;
}

// The preset that the plan's three numbers are, -1 when they are the designer's own.
int preset_of(const Plan& plan) {
  const auto& all = earth_presets();
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i].swell == plan.ground.swell && all[i].shrinkage == plan.ground.shrinkage &&
        all[i].repose == plan.ground.repose)
      return static_cast<int>(i);
  return -1;
}

void set_preset(Plan& plan, int i) {
  const EarthPreset& preset = earth_presets()[static_cast<std::size_t>(i)];
  plan.ground.swell = preset.swell;
  plan.ground.shrinkage = preset.shrinkage;
  plan.ground.repose = preset.repose;
}

Form::Bound<QString> title(std::string TitleBlock::*field, const QString& what) {
  return {[field](const Plan& p) { return QString::fromStdString(p.title.*field); },
          [field](Plan& p, const QString& v) { p.title.*field = v.simplified().toStdString(); }, what};
}

// A usual term that is kept untouched is shown in the language of the window.
Form::Bound<QString> proposal(std::string ProposalWords::*field, const QString& what) {
  return {[field](const Plan& p) { return QString::fromStdString(translated(p.proposal.*field)); },
          [field](Plan& p, const QString& v) { p.proposal.*field = kept_term(v.simplified().toStdString()); },
          what};
}

// Where nothing is said yet.
void take_usual_terms(Plan& plan) {
  const auto take = [](std::string& term, const char* usual) {
    if (term.empty()) term = usual;
  };
  take(plan.proposal.guarantee, kUsualGuarantee);
  take(plan.proposal.payment, kUsualPayment);
  take(plan.proposal.validity, kUsualValidity);
}

}  // namespace

GroundPanel::GroundPanel(Document& document, QWidget* parent) : Form(document, parent) {
  section(tr("Soil and the sides of a trench"));
  choice(tr("Soil type"), soil_choices(), bound_to<int>(tr("Soil type"), &Plan::ground, &Ground::soil));
  note([](const Plan&) {
    return tr(
        "Types and slopes: 29 CFR 1926 Subpart P, Appendix A and Table B-1, for trenches under 20 ft. A "
        "competent "
        "person classes the soil on site; until then it counts as Type C. Local codes govern.");
  });
  section(tr("Earth that is moved"));
  QStringList presets;
  for (const EarthPreset& preset : earth_presets()) presets << said(preset.name);
  auto* box = choice(tr("Kind of earth"), presets, {preset_of, set_preset, tr("Kind of earth")});
  box->setPlaceholderText(tr("numbers of your own"));
  number(tr("Swell"), Quantity::ratio, ground(&Ground::swell, tr("Swell")))
      ->edit()
      ->setToolTip(tr("How much more room loose soil takes than soil in place"));
  number(tr("Shrinkage"), Quantity::ratio, ground(&Ground::shrinkage, tr("Shrinkage")))
      ->edit()
      ->setToolTip(tr("How much less room compacted soil takes than soil in place"));
  number(tr("Angle of repose"), Quantity::angle, ground(&Ground::repose, tr("Angle of repose")));
  note([](const Plan& p) {
    const int i = preset_of(p);
    return i < 0 ? tr("Numbers of your own.") : said(earth_presets()[static_cast<std::size_t>(i)].source);
  });
  section(tr("Frost and roots"));
  number(tr("Frost depth"), Quantity::length, ground(&Ground::frost_depth, tr("Frost depth")));
  QStringList rules;
  for (const RootZoneRule& rule : root_zone_rules()) rules << said(rule.source);
  choice(tr("Root zone of trees"), rules,
         {[](const Plan& p) {
            const auto& all = root_zone_rules();
            for (std::size_t i = 0; i < all.size(); ++i)
              if (all[i].factor == p.site.root_zone_factor) return static_cast<int>(i);
            return -1;
          },
          [](Plan& p, int i) {
            p.site.root_zone_factor = root_zone_rules()[static_cast<std::size_t>(i)].factor;
          },
          tr("Root zone rule")});
  number(tr("Radius per trunk diameter"), Quantity::count,
         {[](const Plan& p) { return p.site.root_zone_factor; },
          [](Plan& p, double v) { p.site.root_zone_factor = v; }, tr("Root zone factor")});
  number(
      tr("North, from the page's right"), Quantity::angle,
      {[](const Plan& p) { return p.site.north; }, [](Plan& p, double v) { p.site.north = v; }, tr("North")});
  end();
  refresh();
}

TitlePanel::TitlePanel(Document& document, QWidget* parent) : Form(document, parent) {
  section(tr("Title block"));
  text(tr("Project"), title(&TitleBlock::project, tr("Project")));
  text(tr("Address"), title(&TitleBlock::address, tr("Address")));
  text(tr("Owner"), title(&TitleBlock::owner, tr("Owner")));
  text(tr("Designer"), title(&TitleBlock::designer, tr("Designer")));
  text(tr("Phone"), title(&TitleBlock::phone, tr("Phone")));
  text(tr("Note"), title(&TitleBlock::note, tr("Note")));
  note([](const Plan&) { return tr("Printed at the foot of every sheet."); });
  section(tr("Words of the proposal"));
  text(tr("Opening"), proposal(&ProposalWords::opening, tr("Opening of the proposal")));
  text(tr("Begins"), proposal(&ProposalWords::start, tr("Begin of the work")));
  text(tr("Guarantee"), proposal(&ProposalWords::guarantee, tr("Guarantee")));
  text(tr("Payment"), proposal(&ProposalWords::payment, tr("Payment")));
  text(tr("Stands for"), proposal(&ProposalWords::validity, tr("How long the offer stands")));
  note([](const Plan&) {
    return tr(
        "Who answers for what, and for how long, belongs under Guarantee: without it the proposal says that "
        "it is still to be agreed.");
  });
  auto* usual = new QPushButton(tr("Usual words"));
  usual->setObjectName("plain");
  usual->setToolTip(tr(
      "Fills what is empty of guarantee, payment and how long the offer stands: common practice, no source. "
      "Read it and make it yours: it is what you promise."));
  connect(usual, &QPushButton::clicked, this, [&document] {
    Plan plan = document.committed();
    take_usual_terms(plan);
    if (plan != document.committed()) document.commit(std::move(plan), tr("Usual words of the proposal"));
  });
  wide(usual);
  note([](const Plan& p) {
    QStringList typed;
    for (const std::string& name : typed_terms(p.proposal)) typed << QString::fromStdString(name);
    const QString rule =
        tr("Usual words, and a day as 2027-05-17, are said in the language of the sheet; other words are "
           "printed "
           "as you type them, on a proposal in any language.");
    return typed.isEmpty() ? rule : rule + " " + tr("Printed as typed: %1.").arg(typed.join(", "));
  });
  end();
  refresh();
}

}  // namespace underlawn
