// SPDX-License-Identifier: GPL-3.0-or-later
// Points of files come into the survey panel's notebook, and features are made of its points.
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QStandardPaths>
#include <QToolButton>

#include "files/atomic_file.h"
#include "plan/edits.h"
#include "survey/field_points.h"
#include "window/notebook_table.h"
#include "window/survey_panel.h"

namespace underlawn {

namespace {

constexpr int kMostPinPlaces = 40;

QString ask_remarks(const std::vector<Trouble>& remarks) {
  constexpr std::size_t kTold = 3;
  QStringList lines;
  for (std::size_t i = 0; i < std::min(remarks.size(), kTold); ++i)
    lines << QString::fromStdString(remarks[i].message());
  if (remarks.size() > kTold)
    lines << SurveyPanel::tr("And %n more.", "", static_cast<int>(remarks.size() - kTold));
  return lines.join(' ');
}

}  // namespace

void SurveyPanel::ask_file() {
  const QString folder = document_.path().isEmpty()
                             ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                             : QFileInfo(document_.path()).absolutePath();
  const QString path = QFileDialog::getOpenFileName(window(), tr("Points of the field"), folder,
                                                    tr("Points (*.csv *.txt *.gpx);;All files (*)"));
  if (!path.isEmpty()) import_points(path);
}

void SurveyPanel::import_points(const QString& path) {
  const QString name = QFileInfo(path).fileName();
  const auto text = read_file(path.toStdString(), kMostPointFile);
  const auto refused = [&](const Trouble& t) {
    emit told(tr("%1 was not taken. %2").arg(name, QString::fromStdString(t.message())));
  };
  if (!text) return refused(text.error());
  const std::size_t first_mark = text->find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  const bool xml = first_mark != std::string::npos && (*text)[first_mark] == '<';
  auto points = xml ? points_from_gpx(*text) : points_from_csv(*text, document_.committed().units);
  if (!points) return refused(points.error());
  const Plan& before = document_.committed();
  const std::size_t row = before.survey.notebook.size(), count = points->value.size();
  const bool earth = points->value.front().method == SightingMethod::latitude_longitude;
  QString said =
      (count == 1 ? tr("One point of %1 taken.") : tr("%n points of %1 taken.", "", static_cast<int>(count)))
          .arg(name);
  if (earth ? !before.map_place.has_value() : !before.survey.grid.has_value())
    said += ' ' + tr("Nothing said yet where they lie on the plan: their middle was put at the middle of the "
                     "lot. Pin one "
                     "of them to a corner to set them right.");
  if (!points->remarks.empty()) said += ' ' + ask_remarks(points->remarks);
  document_.commit(edit::with_field_points(before, std::move(points->value)), tr("Points of a file"));
  table_->pick(row, document_.committed().survey.notebook.size() - row);
  emit told(said);
}

void SurveyPanel::make(Feature feature, bool each, const QString& what) {
  const auto rows = table_->picked();
  Plan plan = document_.committed();
  const auto named = [&](std::size_t row) {
    Feature f = feature;
    f.name = plan.survey.notebook[row].name;
    f.note = plan.survey.notebook[row].note;
    return f;
  };
  if (each)
    for (std::size_t row : rows) plan = edit::with_feature_of(std::move(plan), {row}, named(row));
  else
    plan = edit::with_feature_of(std::move(plan), rows, feature);
  document_.commit(std::move(plan), what);
}

void SurveyPanel::make_spot_heights() {
  Plan plan = document_.committed();
  for (std::size_t row : table_->picked()) {
    const Sighting& s = plan.survey.notebook[row];
    if (s.height && placed_[row].at) plan = edit::with_height(std::move(plan), {*placed_[row].at, *s.height});
  }
  document_.commit(std::move(plan), tr("Spot heights of points"));
}

void SurveyPanel::fill_make_menu() {
  QMenu* menu = make_->menu();
  menu->clear();
  const auto rows = table_->picked();
  bool placed = !rows.empty(), heights = false;
  for (std::size_t row : rows) {
    placed = placed && row < placed_.size() && placed_[row].at;
    heights = heights || document_.plan().survey.notebook[row].height;
  }
  if (!placed) return menu->addAction(tr("These points have no place yet"))->setEnabled(false);
  const auto kind = [](FeatureKind k) {
    Feature f;
    f.kind = k;
    return f;
  };
  const int n = static_cast<int>(rows.size());
  for (FeatureKind k : {FeatureKind::tree, FeatureKind::well}) {
    const QString name = QString::fromUtf8(kind_name(k).data());
    menu->addAction(n == 1 ? tr("A %1").arg(name) : tr("A %1 of each").arg(name), this,
                    [this, f = kind(k), name] { make(f, true, tr("%1 of a point").arg(capital(name))); });
  }
  if (n == 1 && !document_.plan().site.lot.empty())
    menu->addAction(tr("The nearest lot corner"), this, [this, row = rows[0]] {
      Plan plan = document_.committed();
      const Point at = *placed_[row].at;
      const auto& lot = plan.site.lot;
      const auto nearest = std::min_element(
          lot.begin(), lot.end(),
          [at](const LotCorner& a, const LotCorner& b) { return distance(a.at, at) < distance(b.at, at); });
      const int corner = static_cast<int>(nearest - lot.begin());
      document_.commit(edit::moved_handle(std::move(plan), {edit::Handle::Kind::lot_corner, 0, corner}, at),
                       tr("Lot corner at a point"));
    });
  if (n >= 2)
    menu->addAction(tr("A utility through them"), this,
                    [this, f = kind(FeatureKind::utility)] { make(f, false, tr("Utility through points")); });
  if (n >= 3) {
    menu->addAction(tr("The lot line round them"), this, [this, rows] {
      document_.commit(edit::with_lot_of(document_.committed(), rows), tr("Lot line round points"));
    });
    for (FeatureKind k :
         {FeatureKind::house, FeatureKind::drive, FeatureKind::septic_tank, FeatureKind::drain_field,
          FeatureKind::reserve_field, FeatureKind::easement, FeatureKind::no_dig}) {
      const QString name = QString::fromUtf8(kind_name(k).data());
      menu->addAction(tr("%1 with these corners").arg(capital(name)), this,
                      [this, f = kind(k), name] { make(f, false, tr("%1 of points").arg(capital(name))); });
    }
  }
  if (heights) menu->addAction(tr("Spot heights"), this, &SurveyPanel::make_spot_heights);
}

void SurveyPanel::fill_pin_menu() {
  QMenu* menu = pin_->menu();
  menu->clear();
  const auto index = table_->current();
  if (!index) return;
  auto known = known_points(document_.plan().site);
  for (std::size_t i = 0; i < placed_.size(); ++i)
    if (placed_[i].at && placed_[i].base) known.push_back({placed_[i].name, *placed_[i].at});
  if (known.size() > kMostPinPlaces) known.resize(kMostPinPlaces);
  for (const KnownPoint& k : known)
    menu->addAction(QString::fromStdString(k.name), this, [this, index, at = k.at] {
      document_.commit(edit::with_pinned(document_.committed(), *index, at), tr("Pin points"));
    });
  if (known.empty()) menu->addAction(tr("Nothing is drawn yet to pin it to"))->setEnabled(false);
}

void SurveyPanel::add_marks(SurveyMarks& marks) const {
  const auto rows = table_->picked();
  for (std::size_t i = 0; i < placed_.size(); ++i)
    if (placed_[i].at)
      marks.marks.push_back({QString::fromStdString(placed_[i].name), *placed_[i].at,
                             std::find(rows.begin(), rows.end(), i) != rows.end(), placed_[i].base});
}

}  // namespace underlawn
