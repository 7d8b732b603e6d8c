// SPDX-License-Identifier: GPL-3.0-or-later
// The upper half of the survey panel: the deed's calls.
#include <QApplication>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTableWidget>

#include "base/say.h"
#include "base/typed_text.h"
#include "window/deed_editor.h"
#include "window/facts.h"
#include "window/plain_words.h"
#include "window/survey_panel.h"
#include "window/theme.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kMostCoursesShown = 300;
constexpr int kMostCoursesSeen = 8;
constexpr std::size_t kMostTold = 4;  // notes of one kind
constexpr int kRowHeight = 24;

QLabel* wrapped_label(const char* style) {
  auto* label = plain_words({}, style);
  label->hide();
  return label;
}

void say(QLabel* label, const std::vector<DeedNote>& notes) {
  QStringList lines;
  for (std::size_t i = 0; i < std::min(notes.size(), kMostTold); ++i)
    lines << QString::fromStdString(notes[i].trouble.message());
  if (notes.size() > kMostTold)
    lines << SurveyPanel::tr("And %n more.", "", static_cast<int>(notes.size() - kMostTold));
  label->setText(lines.join('\n'));
  label->setVisible(!lines.isEmpty());
}

QString curve_words(const Curve& c, UnitSystem units) {
  return (c.left ? SurveyPanel::tr("curves left, radius %1") : SurveyPanel::tr("curves right, radius %1"))
      .arg(surveyed_length(c.radius, units));
}

}  // namespace

QString surveyed_length(double metres, UnitSystem units) {
  return units == UnitSystem::us ? SurveyPanel::tr("%1 ft").arg(metres / 0.3048, 0, 'f', 2)
                                 : SurveyPanel::tr("%1 m").arg(metres, 0, 'f', 3);
}

void SurveyPanel::build_deed() {
  section(tr("Deed calls"));
  editor_->setPlaceholderText(
      tr("N 45°30'15\" E 120.50 ft\n"
         "curve right R=50 ft L=78.54 ft\n"
         "or prose: thence South 5° East …\n"
         "to the point of beginning"));
  editor_->setAccessibleName(tr("Deed calls"));
  editor_->setToolTip(
      tr("Type or paste the calls, one to a line or as the deed has them. Leaving the box or Ctrl+Enter "
         "keeps them, Esc takes back."));
  wide(editor_);
  wide(wrong_ = wrapped_label("wrong"));
  wide(passed_ = wrapped_label("source"));
  add_deed_fields();
  wide(facts_);
  how_->setTextFormat(Qt::RichText);
  how_->setTextInteractionFlags(Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard);
  how_->setWordWrap(true);
  how_->setAccessibleName(tr("How the numbers came about"));
  wide(how_);
  connect(how_, &QLabel::linkActivated, this, &SurveyPanel::trace_asked);
  courses_->setColumnCount(3);
  courses_->setHorizontalHeaderLabels({tr("Course"), tr("Bearing"), tr("Length")});
  courses_->setAccessibleName(tr("Courses"));
  courses_->setObjectName("boxed");
  courses_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  courses_->setSelectionBehavior(QAbstractItemView::SelectRows);
  courses_->setSelectionMode(QAbstractItemView::SingleSelection);
  courses_->setTabKeyNavigation(false);
  courses_->verticalHeader()->hide();
  courses_->verticalHeader()->setDefaultSectionSize(kRowHeight);
  courses_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  wide(courses_);
  make_lot_->setObjectName("main");
  wide(make_lot_);
  connect(editor_, &DeedEditor::textChanged, this, &SurveyPanel::read_deed_text);
  connect(editor_, &DeedEditor::entered, this, &SurveyPanel::enter_deed);
  connect(courses_, &QTableWidget::itemSelectionChanged, this, &SurveyPanel::show_deed);
  connect(make_lot_, &QPushButton::clicked, this, &SurveyPanel::make_lot_line);
  connect(&document_, &Document::outcome_changed, this, [this] {
    if (isVisible()) show_facts();
  });
  on_refresh([this] {
    editor_->show_text(QString::fromStdString(document_.plan().survey.deed.text));
    read_deed_text();
  });
}

void SurveyPanel::add_deed_fields() {
  auto* start = new TypedField;
  start->setToolTip(
      tr("A corner such as lot 1 or house A, a point of the notebook, or two lengths with a comma between"));
  start->set_taker([this](const QString& typed) { return take_start(typed); });
  on_refresh([this, start] {
    const Point p = document_.plan().survey.deed.start;
    const UnitSystem units = document_.plan().units;
    start->show_text(surveyed_length(p.x, units) + ", " + surveyed_length(p.y, units));
  });
  row(tr("Begins at"), start);
  number(tr("Deed's north, clockwise from the plan's"), Quantity::angle,
         bound_to(tr("North of the deed"), &Plan::survey, &Survey::deed, &Deed::turn));
  number(tr("Chords within"), Quantity::length,
         bound_to(tr("Tolerance of curves"), &Plan::survey, &Survey::deed, &Deed::chord_tolerance));
  choice(tr("Misclosure"), {tr("Left to the last course"), tr("Shared out: compass rule")},
         bound_to<int>(tr("Closure of the deed"), &Plan::survey, &Survey::deed, &Deed::closure));
}

QString SurveyPanel::take_start(const QString& typed) {
  Plan plan = document_.committed();
  const std::string name = typed.trimmed().toLower().toStdString();
  std::optional<Point> at;
  for (const KnownPoint& k : known_points(plan.site))
    if (QString::fromStdString(k.name).toLower().toStdString() == name) at = k.at;
  for (const PlacedSighting& s : placed_notebook(plan))
    if (!at && s.at && QString::fromStdString(s.name).toLower().toStdString() == name) at = *s.at;
  const QStringList parts = typed.split(typed.contains(';') ? ";" : ",");
  if (!at && parts.size() == 2) {
    const auto x = parse_quantity(Quantity::length, parts[0].trimmed().toStdString(), plan.units);
    const auto y = parse_quantity(Quantity::length, parts[1].trimmed().toStdString(), plan.units);
    if (x && y) at = Point{*x, *y};
    if (!x || !y) return QString::fromStdString((x ? y.error() : x.error()).message());
  }
  if (!at)
    return tr("Write a corner such as lot 1 or house A, a point's name, or two lengths such as 0 ft, 0 ft.");
  plan.survey.deed.start = *at;
  if (const QString wrong = new_trouble(document_.committed(), plan); !wrong.isEmpty()) return wrong;
  document_.commit(std::move(plan), tr("Beginning of the deed"));
  return {};
}

Deed SurveyPanel::typed_deed() const {
  Deed deed = document_.plan().survey.deed;
  deed.text = editor_->toPlainText().toStdString();
  return deed;
}

void SurveyPanel::read_deed_text() {
  deed_ = surveyed_deed(typed_deed(), document_.plan());
  show_courses();
  show_deed();
}

void SurveyPanel::show_courses() {
  const QSignalBlocker quiet(courses_);
  const auto& legs = deed_.traverse.legs;
  const int rows = std::min(static_cast<int>(legs.size()), kMostCoursesShown);
  courses_->setRowCount(rows);
  const UnitSystem units = document_.plan().units;
  for (int i = 0; i < rows; ++i) {
    const Course& c = legs[static_cast<std::size_t>(i)].course;
    const QString number = c.tie ? tr("%1 tie").arg(i + 1) : QString::number(i + 1);
    const QString cells[] = {c.curve ? tr("%1 curve").arg(number) : number,
                             QString::fromStdString(quadrant_bearing(c.azimuth)),
                             surveyed_length(c.length, units)};
    QString told = QString::fromStdString(c.words);
    if (c.curve) told += "\n" + curve_words(*c.curve, units);
    if (c.worked_out) told += "\n" + tr("worked out: the deed gives neither bearing nor distance");
    for (int k = 0; k < 3; ++k) {
      QTableWidgetItem* item = courses_->item(i, k);
      if (item == nullptr) courses_->setItem(i, k, item = new QTableWidgetItem);
      item->setText(cells[k]);
      item->setToolTip(told);
      item->setTextAlignment((k == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }
  }
  courses_->setVisible(rows > 0);
  courses_->setFixedHeight(courses_->horizontalHeader()->sizeHint().height() +
                           std::clamp(rows, 1, kMostCoursesSeen) * kRowHeight + 6);
}

void SurveyPanel::show_facts() {
  const Traverse& t = deed_.traverse;
  const UnitSystem units = document_.plan().units;
  std::vector<Fact> facts;
  const auto area = [&](double m2) { return printed(Quantity::area, m2, document_.plan()); };
  if (t.legs.size() > t.ties) {
    facts.push_back({tr("Boundary"), surveyed_length(t.perimeter, units)});
    if (t.worked_out)
      facts.push_back({tr("The last course is worked out, so nothing says how the deed closes."), {}});
    else if (t.comes_back)
      facts.push_back({tr("Misclosure"), surveyed_length(t.misclosure, units)});
    else
      facts.push_back({tr("Open: from its end back to its beginning"), surveyed_length(t.misclosure, units)});
    if (t.precision && !t.worked_out)
      facts.push_back({tr("Precision"), tr("one part in %L1").arg(std::round(*t.precision), 0, 'f', 0)});
    if (t.precision && !t.worked_out && *t.precision < kGoodPrecision)
      facts.push_back(
          {tr("A lot is surveyed to one part in %L1 or better (common practice, no source): look for a "
              "wrong call.")
               .arg(kGoodPrecision, 0, 'f', 0),
           {}});
    if (t.comes_back) facts.push_back({tr("Area"), area(t.area)});
    if (deed_.reading.stated_area)
      facts.push_back({tr("Area the deed states"), area(*deed_.reading.stated_area)});
  }
  facts_->show_facts(facts);
  // The figures are those of the plan: of the text that is kept, once it is solved.
  QStringList links;
  const auto link = [&](const char* key, const QString& name) {
    const Outcome* outcome = document_.outcome();
    if (outcome != nullptr && outcome->figures.find(key) != nullptr)
      links << QString("<a style='color:%1' href='%2'>%3</a>")
                   .arg(theme_now().grass.name(), key, name.toHtmlEscaped());
  };
  if (!editor_->typing()) {
    link("survey.misclosure", tr("misclosure"));
    link("survey.precision", tr("precision"));
    link("survey.area", tr("area"));
  }
  how_->setText(tr("How they came about: %1").arg(links.join(", ")));
  how_->setVisible(!links.isEmpty() && !facts.empty());
}

void SurveyPanel::show_deed() {
  const Traverse& t = deed_.traverse;
  say(wrong_, deed_.reading.refusals);
  say(passed_, deed_.reading.passed);
  std::vector<int> lines;
  for (const DeedNote& n : deed_.reading.refusals) lines.push_back(n.line);
  const int row = courses_->currentRow();
  const bool picked =
      row >= 0 && !courses_->selectedItems().isEmpty() && row < static_cast<int>(t.legs.size());
  editor_->mark_lines(lines, picked ? t.legs[static_cast<std::size_t>(row)].course.line : 0);
  show_facts();
  make_lot_->setEnabled(!deed_.no_lot);
  make_lot_->setToolTip(deed_.no_lot ? QString::fromStdString(deed_.no_lot->message()) : QString());
  emit shown_changed();
}

QString SurveyPanel::wrong() const {
  return wrong_->isHidden() ? QString() : wrong_->text();
}

void SurveyPanel::enter_deed(const QString& text) {
  Plan plan = document_.committed();
  plan.survey.deed.text = text.toStdString();
  document_.commit(std::move(plan), tr("Deed calls"));
  // Typed, and then straight to the button: both are one entry.
  entered_on_the_way_.reset();
  if (QApplication::focusWidget() == make_lot_) entered_on_the_way_ = document_.committed();
}

void SurveyPanel::make_lot_line() {
  if (deed_.no_lot) return;
  Plan plan = edit::with_lot_by_deed(document_.committed(), typed_deed());
  const QString text = editor_->toPlainText();
  if (entered_on_the_way_ && *entered_on_the_way_ == document_.committed() &&
      document_.undo_name() == tr("Deed calls"))
    document_.undo();
  entered_on_the_way_.reset();
  document_.commit(std::move(plan), tr("Lot line by the deed"));
  editor_->show_text(text);
}

}  // namespace underlawn
