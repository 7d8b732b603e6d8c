// SPDX-License-Identifier: GPL-3.0-or-later
// The lower half of the survey panel: the notebook's points and their fields.
#include <QComboBox>
#include <QCompleter>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QStringListModel>
#include <QToolButton>

#include "base/table_text.h"
#include "plane/thin_cut.h"
#include "survey/deed_words.h"
#include "survey/field_points.h"
#include "window/notebook_table.h"
#include "window/survey_panel.h"
#include "window/theme.h"

namespace underlawn {

namespace {

QToolButton* menu_button(const QString& text) {
  auto* button = new QToolButton;
  button->setObjectName("word");
  button->setText(text);
  button->setPopupMode(QToolButton::InstantPopup);
  button->setFocusPolicy(Qt::StrongFocus);
  button->setMenu(new QMenu(button));
  button->setAccessibleName(text);
  return button;
}

}  // namespace

QString sighting_method_name(SightingMethod method) {
  switch (method) {
    case SightingMethod::two_distances:
      return SurveyPanel::tr("two tapes");
    case SightingMethod::station_offset:
      return SurveyPanel::tr("off a line");
    case SightingMethod::bearing_distance:
      return SurveyPanel::tr("bearing");
    case SightingMethod::latitude_longitude:
      return SurveyPanel::tr("satellite");
    case SightingMethod::east_north:
      return SurveyPanel::tr("grid");
  }
  return {};
}

void SurveyPanel::build_notebook() {
  section(tr("Tape and notebook"));
  wide(table_);
  auto* buttons = new QWidget;
  auto* row_of_buttons = new QHBoxLayout(buttons);
  row_of_buttons->setContentsMargins(0, 0, 0, 0);
  row_of_buttons->setSpacing(kGap);
  auto* add = new QPushButton(tr("Add a point"));
  auto* remove = new QPushButton(tr("Remove"));
  auto* file = new QPushButton(tr("From file…"));
  file->setToolTip(tr("Points of a CSV table (latitude and longitude, or east and north), or of a GPX file"));
  for (QPushButton* button : {add, remove, file}) row_of_buttons->addWidget(button);
  row_of_buttons->addStretch(1);
  wide(buttons);
  placed_wrong_->setObjectName("wrong");
  placed_wrong_->setWordWrap(true);
  wide(placed_wrong_);
  add_sighting_fields();
  auto* makes = new QWidget;
  auto* row_of_makes = new QHBoxLayout(makes);
  row_of_makes->setContentsMargins(0, 0, 0, 0);
  row_of_makes->setSpacing(kGap);
  make_ = menu_button(tr("Make of them"));
  pin_ = menu_button(tr("Pin to"));
  pin_->setToolTip(tr("Moves all points of its kind so that this one lies there"));
  for (QToolButton* button : {make_, pin_}) row_of_makes->addWidget(button);
  row_of_makes->addStretch(1);
  wide(makes);
  connect(add, &QPushButton::clicked, this, &SurveyPanel::add_sighting);
  connect(remove, &QPushButton::clicked, this, &SurveyPanel::remove_sightings);
  connect(file, &QPushButton::clicked, this, &SurveyPanel::ask_file);
  connect(table_, &NotebookTable::picked_changed, this, [this] { refresh(); });
  connect(make_->menu(), &QMenu::aboutToShow, this, &SurveyPanel::fill_make_menu);
  connect(pin_->menu(), &QMenu::aboutToShow, this, &SurveyPanel::fill_pin_menu);
  on_refresh([this, remove] {
    show_notebook();
    remove->setEnabled(sighting() != nullptr);
  });
}

const Sighting* SurveyPanel::sighting() const {
  const auto index = table_->current();
  const auto& notebook = document_.plan().survey.notebook;
  return index && *index < notebook.size() ? &notebook[*index] : nullptr;
}

bool SurveyPanel::by(std::initializer_list<SightingMethod> methods) const {
  const Sighting* s = sighting();
  return s != nullptr && std::find(methods.begin(), methods.end(), s->method) != methods.end();
}

template <class T>
Form::Bound<T> SurveyPanel::of_sighting(const QString& what, T Sighting::*member) const {
  return {[this, member](const Plan&) {
            const Sighting* s = sighting();
            return s != nullptr ? s->*member : T{};
          },
          [this, member](Plan& plan, T value) {
            const auto index = table_->current();
            if (index && *index < plan.survey.notebook.size()) plan.survey.notebook[*index].*member = value;
          },
          what};
}

// A field that offers the names there are.
void SurveyPanel::known_field(const QString& label, std::string Sighting::*member) {
  const auto bound = of_sighting<std::string>(tr("Point measured from"), member);
  TypedField* field = text(
      label, {[bound](const Plan& p) { return QString::fromStdString(bound.get(p)); },
              [bound](Plan& p, const QString& v) { bound.set(p, v.trimmed().toStdString()); }, bound.what});
  auto* names = new QStringListModel(field);
  auto* completer = new QCompleter(names, field);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  field->edit()->setCompleter(completer);
  field->edit()->setPlaceholderText(tr("lot 1, house A, P1"));
  on_refresh([this, names] {
    QStringList all;
    for (const KnownPoint& k : known_points(document_.plan().site)) all << QString::fromStdString(k.name);
    const auto& notebook = document_.plan().survey.notebook;
    for (std::size_t i = 0; i < std::min<std::size_t>(notebook.size(), 500); ++i)
      all << QString::fromStdString(notebook[i].name);
    if (names->stringList() != all) names->setStringList(all);
  });
}

void SurveyPanel::bearing_field(const QString& label) {
  const auto bound = of_sighting<double>(label, &Sighting::bearing);
  const auto read = [](const QString& v) { return deed::bearing_in(v.trimmed().toStdString()); };
  auto* field = new TypedField;
  field->set_taker([this, bound, read](const QString& typed) -> QString {
    const auto bearing = read(typed);
    if (!bearing)
      return tr("“%1” is no bearing; write it like N 45°30'15\" E, or an azimuth like 135.5.").arg(typed);
    Plan plan = document_.committed();
    bound.set(plan, *bearing);
    document_.commit(std::move(plan), bound.what);
    return {};
  });
  on_refresh([this, field, bound] {
    field->show_text(QString::fromStdString(quadrant_bearing(bound.get(document_.plan()))));
  });
  row(label, field);
}

void SurveyPanel::degrees_field(const QString& label, double Sighting::*member) {
  const auto bound = of_sighting<double>(label, member);
  auto* field = new TypedField;
  field->set_taker([this, bound](const QString& typed) -> QString {
    const auto degrees = degrees_in_text(typed.trimmed().toStdString());
    if (!degrees) return tr("“%1” is no angle; write it like 45.5231 or 45°31'23.2\" N.").arg(typed);
    Plan plan = document_.committed();
    bound.set(plan, *degrees);
    if (const QString wrong = new_trouble(document_.committed(), plan); !wrong.isEmpty()) return wrong;
    document_.commit(std::move(plan), bound.what);
    return {};
  });
  on_refresh([this, field, bound] {
    field->show_text(QString::fromStdString(shortest(bound.get(document_.plan()))) + "°");
  });
  row(label, field);
}

void SurveyPanel::add_taped_fields() {
  using M = SightingMethod;
  const auto only = [this](std::initializer_list<M> methods) {
    only_when([this, all = std::vector<M>(methods)](const Plan&) {
      const Sighting* s = sighting();
      return s != nullptr && std::find(all.begin(), all.end(), s->method) != all.end();
    });
  };
  const Quantity m = Quantity::length;
  known_field(tr("From"), &Sighting::from);
  only({M::two_distances, M::station_offset, M::bearing_distance});
  number(tr("Distance from it"), m, of_sighting(tr("Taped distance"), &Sighting::first));
  only({M::two_distances});
  known_field(tr("And from"), &Sighting::to);
  only({M::two_distances});
  number(tr("Distance from that"), m, of_sighting(tr("Taped distance"), &Sighting::second));
  only({M::two_distances});
  const auto left = of_sighting(tr("Side of the point"), &Sighting::left);
  choice(tr("Seen along that way"), {tr("to the right"), tr("to the left")},
         {[left](const Plan& p) { return left.get(p) ? 1 : 0; },
          [left](Plan& p, int v) { left.set(p, v == 1); }, left.what});
  only({M::two_distances});
  known_field(tr("Towards"), &Sighting::to);
  only({M::station_offset});
  number(tr("Station along it"), m, of_sighting(tr("Station"), &Sighting::first));
  only({M::station_offset});
  number(tr("Offset to the right"), m, of_sighting(tr("Offset"), &Sighting::second));
  only({M::station_offset});
  bearing_field(tr("Bearing"));
  only({M::bearing_distance});
  number(tr("Distance"), m, of_sighting(tr("Distance"), &Sighting::first));
  only({M::bearing_distance});
}

void SurveyPanel::add_coordinate_fields() {
  const auto only = [this](SightingMethod method) {
    only_when([this, method](const Plan&) { return by({method}); });
  };
  degrees_field(tr("Latitude, north"), &Sighting::latitude);
  only(SightingMethod::latitude_longitude);
  degrees_field(tr("Longitude, east"), &Sighting::longitude);
  only(SightingMethod::latitude_longitude);
  number(tr("East"), Quantity::length, of_sighting(tr("East"), &Sighting::east));
  only(SightingMethod::east_north);
  number(tr("North"), Quantity::length, of_sighting(tr("North"), &Sighting::north));
  only(SightingMethod::east_north);
  note([this](const Plan&) {
    if (by({SightingMethod::latitude_longitude}))
      return tr(
          "Handheld receivers are off by some metres (common practice, no source): not for lot lines or "
          "set-outs.");
    if (by({SightingMethod::east_north})) return tr("The grid's north is taken for the plan's.");
    return QString();
  });
}

void SurveyPanel::add_sighting_fields() {
  QStringList methods;
  for (int i = 0; i < 5; ++i) methods << capital(sighting_method_name(static_cast<SightingMethod>(i)));
  const auto method = of_sighting(tr("How a point was measured"), &Sighting::method);
  choice(tr("Measured by"), methods,
         {[method](const Plan& p) { return static_cast<int>(method.get(p)); },
          [method](Plan& p, int v) { method.set(p, static_cast<SightingMethod>(v)); }, method.what});
  only_when([this](const Plan&) { return sighting() != nullptr; });
  add_taped_fields();
  add_coordinate_fields();
  const auto note = of_sighting(tr("Note of a point"), &Sighting::note);
  text(tr("Note"), {[note](const Plan& p) { return QString::fromStdString(note.get(p)); },
                    [note](Plan& p, const QString& v) { note.set(p, v.toStdString()); }, note.what});
  only_when([this](const Plan&) { return sighting() != nullptr; });
}

void SurveyPanel::show_notebook() {
  placed_ = placed_notebook(document_.plan());
  table_->refresh(placed_);
  QString said;
  const auto index = table_->current();
  if (index && *index < placed_.size()) {
    const PlacedSighting& p = placed_[*index];
    if (!p.at)
      said = QString::fromStdString(p.at.error().message());
    else if (p.cut && *p.cut < kThinCut)
      said = tr("The two tapes meet at %1 only: a small error of either moves the point far.")
                 .arg(printed(Quantity::angle, *p.cut, document_.plan()));
  }
  placed_wrong_->setText(said);
  placed_wrong_->setVisible(!said.isEmpty());
  const bool any = sighting() != nullptr;
  make_->setEnabled(any);
  pin_->setVisible(by({SightingMethod::latitude_longitude, SightingMethod::east_north}));
  make_->setVisible(!document_.plan().survey.notebook.empty());
  emit shown_changed();
}

// Like the one before it: a notebook is written from the same two corners for a while.
void SurveyPanel::add_sighting() {
  Sighting s;
  if (const Sighting* like = sighting()) s = *like;
  const auto known = known_points(document_.committed().site);
  if (s.from.empty() && !known.empty()) s.from = known.front().name;
  if (s.to.empty() && known.size() > 1) s.to = known[1].name;
  s.name = next_name(document_.committed().survey.notebook);
  s.note.clear();
  s.height.reset();
  const std::size_t row = document_.committed().survey.notebook.size();
  document_.commit(edit::with_sighting(document_.committed(), std::move(s)), tr("Add a point"));
  table_->pick(row, 1);
}

void SurveyPanel::remove_sightings() {
  auto rows = table_->picked();
  if (rows.empty()) return;
  Plan plan = document_.committed();
  for (auto row = rows.rbegin(); row != rows.rend(); ++row)
    plan = edit::without_sighting(std::move(plan), *row);
  document_.commit(std::move(plan), rows.size() == 1 ? tr("Remove a point") : tr("Remove points"));
}

}  // namespace underlawn
