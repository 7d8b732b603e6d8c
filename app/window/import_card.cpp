// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/import_card.h"

#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <set>

#include "canvas/canvas.h"
#include "window/becomes_words.h"
#include "window/form.h"
#include "window/notice_bar.h"
#include "window/plain_words.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kWide = 400, kNameWide = 150;
constexpr int kMostRows = 200;
constexpr double kRoundLot =
    60;  // m, of a raster: twice what is kept round a lot, so that its edge has neighbours
constexpr const char* kSubject = QT_TR_NOOP("drawing file");

struct UnitRow {
  const char* name;
  double metres;
};
constexpr UnitRow kUnits[] = {
    {QT_TR_NOOP("feet"), 0.3048},      {QT_TR_NOOP("US survey feet"), 1200.0 / 3937},
    {QT_TR_NOOP("inches"), 0.0254},    {QT_TR_NOOP("yards"), 0.9144},
    {QT_TR_NOOP("metres"), 1},         {QT_TR_NOOP("centimetres"), 0.01},
    {QT_TR_NOOP("millimetres"), 0.001}};

}  // namespace

ImportCard::ImportCard(Document& document, Canvas& canvas, NoticeBar& bar)
    : CanvasCard(canvas, kWide),
      document_(document),
      bar_(bar),
      title_(plain_words({}, "section")),
      facts_(plain_words({}, "faint")),
      notes_(plain_words({}, "faint")),
      alarms_(plain_words({}, "wrong")),
      size_(plain_words({}, "faint")),
      result_(plain_words({}, "faint")),
      scale_says_(plain_words({}, "faint")),
      scroll_(new QScrollArea),
      unit_(choice_box({})),
      height_unit_(
          choice_box({tr("heights in the same unit"), tr("heights in feet"), tr("heights in metres")})),
      by_(choice_box({})),
      two_points_(new QPushButton(tr("By two points…"))),
      next_outline_(new QPushButton(tr("Take another outline for the lot"))),
      bring_(new QPushButton(tr("Bring in"))),
      cancel_(new QPushButton(tr("Cancel"))),
      distance_(new QuantityField(Quantity::length)),
      within_(new QuantityField(Quantity::length)) {
  build();
  connect(unit_, &QComboBox::activated, this, &ImportCard::choose_unit);
  connect(two_points_, &QPushButton::clicked, this, [this] {
    ask_points(2, tr("Click two places whose distance you know."),
               [this](const std::vector<Point>& p) { scale_by(p[0], p[1]); });
  });
  connect(distance_, &QuantityField::entered, this, &ImportCard::take_distance);
  connect(within_, &QuantityField::entered, this, [this](double metres) {
    how_.keep_within = metres;
    refresh();
  });
  connect(by_, &QComboBox::activated, this, [this] {
    fill_groups();
    place_anew();
  });
  connect(height_unit_, &QComboBox::activated, this, [this](int index) {
    how_.height_unit = index == 1 ? 0.3048 : index == 2 ? 1 : 0;
    refresh();
  });
  connect(bring_, &QPushButton::clicked, this, &ImportCard::bring);
  connect(cancel_, &QPushButton::clicked, this, [this] { close_card(); });
  connect(next_outline_, &QPushButton::clicked, this, [this] {
    how_.lot_at.reset();
    ++how_.lot_rank;
    refresh();
  });
  connect(this, &CanvasCard::asking_changed, this, [this] {
    show_brought();  // another tool in hand took it off the drawing
    tell_result();
  });
  connect(&document_, &Document::history_changed, this, [this] {
    if (isVisible() && !refreshing_) refresh();
  });
}

void ImportCard::build() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(4 * kGap, 3 * kGap, 4 * kGap, 3 * kGap);
  column->setSpacing(2 * kGap);
  for (QLabel* label : {title_, facts_, alarms_, notes_}) column->addWidget(label);
  scroll_->setFrameShape(QFrame::NoFrame);
  scroll_->setWidgetResizable(true);
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll_->setMinimumHeight(90);
  scroll_->setObjectName("clear");
  scroll_->setStyleSheet(QObject::tr("QScrollArea#clear, QWidget#clearpage { background: transparent; }"));
  column->addWidget(by_);
  column->addWidget(scroll_, 1);
  by_->setAccessibleName(tr("What splits a layer"));
  by_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  column->addWidget(make_scale());
  column->addWidget(result_);
  column->addWidget(next_outline_);
  auto* buttons = new QHBoxLayout;
  bring_->setObjectName("main");
  buttons->addWidget(bring_, 1);
  buttons->addWidget(cancel_);
  column->addLayout(buttons);
  within_->show_value(*how_.keep_within, document_.plan().units);
  within_->setToolTip(tr("What lies farther from the lot is left out."));
  within_->edit()->setAccessibleName(tr("Keep what lies within this of the lot"));
  unit_->setAccessibleName(tr("Unit of the drawing"));
  distance_->edit()->setAccessibleName(tr("Distance of the two points"));
}

QWidget* ImportCard::make_scale() {
  auto* box = new QWidget;
  auto* grid = new QGridLayout(box);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(2 * kGap);
  grid->setVerticalSpacing(kGap);
  grid->addWidget(new QLabel(tr("Unit")), 0, 0);
  grid->addWidget(unit_, 0, 1, 1, 2);
  grid->addWidget(scale_says_, 1, 0, 1, 3);
  grid->addWidget(distance_, 2, 0, 1, 3);
  grid->addWidget(size_, 3, 0, 1, 2);
  grid->addWidget(two_points_, 3, 2);
  auto* label = new QLabel(tr("Within"));
  label->setToolTip(tr("What lies farther from the lot is left out."));
  grid->addWidget(label, 4, 0);
  grid->addWidget(within_, 4, 1);
  grid->addWidget(new QLabel(tr("of the lot")), 4, 2);
  grid->addWidget(height_unit_, 5, 0, 1, 3);
  height_unit_->setAccessibleName(tr("Unit of heights"));
  grid->setColumnStretch(1, 1);
  return box;
}

void ImportCard::ask_file() {
  const QString filter =
      tr("Drawings and heights (*.dxf *.geojson *.json *.gpkg *.shp *.kml *.tif *.tiff *.asc *.img "
         "*.hgt *.dem *.dt2 *.bil *.flt *.grd *.xyz);;Drawings (*.dxf *.geojson *.json *.gpkg *.shp "
         "*.kml);;Heights (*.tif *.tiff *.asc *.img *.hgt *.dem *.dt2 *.bil *.flt *.grd *.xyz)"
         ";;All files (*)");
  const QString folder = document_.path().isEmpty() ? QString() : QFileInfo(document_.path()).absolutePath();
  const QString path = QFileDialog::getOpenFileName(window(), tr("Bring in a drawing"), folder, filter);
  if (!path.isEmpty()) read(path);
}

void ImportCard::read(const QString& path) {
  if (isVisible()) close_card();
  const QString name = QFileInfo(path).fileName();
  bar_.tell(kSubject, tr("Reading “%1”…").arg(name), {{tr("Stop"), [this] { reader_.stop(); }}});
  reader_.read(path, circle_round_lot(document_.committed(), kRoundLot),
               [this, name](Result<Drawing> drawing) { take(std::move(drawing), name); });
}

void ImportCard::take(Result<Drawing> drawing, const QString& name) {
  if (!drawing)
    return bar_.tell(
        kSubject, tr("“%1” was not read. %2").arg(name, QString::fromStdString(drawing.error().message())));
  bar_.withdraw(kSubject);
  drawing_ = std::move(*drawing);
  name_ = name;
  how_ = Bringing();
  if (document_.plan().units == UnitSystem::us) how_.keep_within = 30.48;  // 100 ft
  own_unit_ = 0;
  fill_height_units();
  measured_.reset();
  within_->show_value(*how_.keep_within, document_.plan().units);
  fill_attributes();
  fill_groups();
  fill_units();
  tell_drawing();
  show();
  place_anew();
  look_at_all();
  (unit_->isEnabled() && unit_->currentIndex() < 0 ? static_cast<QWidget*>(unit_) : bring_)
      ->setFocus(Qt::OtherFocusReason);
}

// By what a layer is split into what is decided about together.
void ImportCard::fill_attributes() {
  by_->clear();
  by_->addItem(tr("split by kind, where told"), QString());
  std::set<std::string> names;
  for (const DrawingLayer& layer : drawing_.layers)
    names.insert(layer.attributes.begin(), layer.attributes.end());
  for (const std::string& name : names)
    by_->addItem(tr("split by “%1”").arg(QString::fromStdString(name)), QString::fromStdString(name));
  by_->setVisible(!names.empty());
}

void ImportCard::fill_groups() {
  groups_ = groups_of(drawing_, attributes_called(drawing_, by_->currentData().toString().toStdString()));
  choices_.clear();
  pointed_ = -1;
  auto* page = new QWidget;
  page->setObjectName("clearpage");
  rows_ = new QGridLayout(page);
  rows_->setContentsMargins(0, 0, kGap, 0);
  rows_->setVerticalSpacing(kGap);
  rows_->setColumnStretch(2, 1);
  for (std::size_t i = 0; i < groups_.size(); ++i) {
    auto* choice = choice_box(becomes_names());
    choices_.push_back(choice);
    choice->setCurrentIndex(static_cast<int>(groups_[i].guess));
    if (static_cast<int>(i) >= kMostRows) {
      choice->setParent(page);
      choice->hide();
      continue;
    }
    const QString name = QString::fromStdString(group_label(drawing_, groups_[i]));
    auto* label = new QLabel;
    label->setText(label->fontMetrics().elidedText(name, Qt::ElideMiddle, kNameWide));
    label->setTextFormat(Qt::PlainText);
    label->setToolTip(tr("%1: %2 points, %3 lines, %4 areas, %5 texts")
                          .arg(name)
                          .arg(groups_[i].points)
                          .arg(groups_[i].lines)
                          .arg(groups_[i].areas)
                          .arg(groups_[i].texts));
    label->setProperty("group", static_cast<int>(i));
    label->installEventFilter(this);
    choice->setProperty("group", static_cast<int>(i));
    choice->installEventFilter(this);
    choice->setAccessibleName(name);
    auto* count = new QLabel(QString::number(groups_[i].shapes.size()));
    count->setObjectName("faint");
    const int row = static_cast<int>(i);
    rows_->addWidget(label, row, 0);
    rows_->addWidget(count, row, 1, Qt::AlignRight);
    rows_->addWidget(choice, row, 2);
    connect(choice, &QComboBox::activated, this, [this] { place_anew(); });
  }
  rows_->setRowStretch(static_cast<int>(groups_.size()), 1);
  scroll_->setWidget(page);
}

void ImportCard::fill_height_units() {
  const bool raster = drawing_.raster.has_value();
  const bool told = raster && drawing_.raster->height_unit > 0;
  height_unit_->setItemText(0, told ? tr("heights in %1, as the file says")
                                          .arg(QString::fromStdString(drawing_.raster->height_unit_name))
                               : raster ? tr("heights in metres: the file does not say")
                                        : tr("heights in the same unit"));
  height_unit_->setCurrentIndex(0);
}

void ImportCard::fill_units() {
  unit_->clear();
  int chosen = -1;
  for (const UnitRow& row : kUnits) {
    const bool said = drawing_.unit > 0 && std::abs(row.metres - drawing_.unit) < 1e-9 * row.metres;
    if (said && chosen < 0) chosen = unit_->count();
    unit_->addItem(said ? tr("%1, as the file says").arg(tr(row.name)) : tr(row.name), row.metres);
  }
  if (drawing_.unit > 0 && chosen < 0) {
    chosen = unit_->count();
    unit_->addItem(tr("%1, as the file says").arg(QString::fromStdString(drawing_.unit_name)), drawing_.unit);
  }
  unit_->setCurrentIndex(chosen);
  // On the Earth there is nothing to choose.
  unit_->setEnabled(!drawing_.place);
  two_points_->setEnabled(!drawing_.place);
  distance_->hide();
}

void ImportCard::tell_drawing() {
  title_->setText(fontMetrics().elidedText(name_, Qt::ElideMiddle, kWide - 8 * kGap));
  title_->setToolTip(name_);
  QString facts = tr("%1: %2 of %3 shapes arrived.")
                      .arg(QString::fromUtf8(kind_name(drawing_.kind)))
                      .arg(drawing_.arrived)
                      .arg(drawing_.expected);
  if (drawing_.raster) facts = raster_words(drawing_, document_.plan().units);
  if (!drawing_.system.empty()) facts += " " + QString::fromStdString(drawing_.system) + ".";
  if (drawing_.tolerance > 0) {
    const double metres = drawing_.tolerance * (drawing_.unit > 0 ? drawing_.unit : 0.3048);
    facts += " " + tr("Arcs as chords, off by %1 at most.")
                       .arg(QString::fromStdString(print_quantity(Quantity::diameter, metres,
                                                                  document_.plan().units, Fineness::fine)));
  }
  facts_->setText(facts);
  facts_->setToolTip(tr("Read by %1.").arg(QString::fromStdString(drawing_.reader)));
  QStringList notes, alarms;
  for (const Trouble& t : drawing_.remarks) {
    const bool harm = t.code == "dxf_damaged" || t.code == "dxf_cut_short" || t.code == "drawing_too_large" ||
                      t.code == "raster_damaged";
    (harm ? alarms : notes) << QString::fromStdString(t.message());
  }
  if (const QString astray = lies_astray(); !astray.isEmpty()) alarms << astray;
  notes_->setText(notes.mid(0, 2).join('\n'));
  notes_->setToolTip(notes.join('\n'));
  notes_->setVisible(!notes.isEmpty());
  alarms_->setText(alarms.join('\n'));
  alarms_->setVisible(!alarms.isEmpty());
}

QString ImportCard::alarms() const {
  return alarms_->isHidden() ? QString() : alarms_->text();
}

// A raster is no drawing with a corner to hold on to: where file or plan do not know their place on the Earth
// it lies where it has no business.
QString ImportCard::lies_astray() const {
  const Plan& plan = document_.committed();
  if (!drawing_.raster || plan.site.lot.empty() || (drawing_.place && plan.map_place)) return {};
  if (!drawing_.place)
    return tr("The file does not say where on the Earth it lies: its lower left corner is laid at 0,0.");
  return tr(
      "The plan does not know where its lot lies on the Earth, so these heights are not under it: their "
      "lower left corner is laid at 0,0. Bring in the parcel from a map first, or note a satellite "
      "point of a corner (Alt+5).");
}

std::vector<Becomes> ImportCard::chosen() const {
  std::vector<Becomes> all;
  for (const auto& choice : choices_)
    all.push_back(choice ? static_cast<Becomes>(std::max(0, choice->currentIndex())) : Becomes::left_out);
  return all;
}

std::vector<int> ImportCard::wanted_shapes() const {
  std::vector<int> wanted;
  const auto becomes = chosen();
  for (std::size_t i = 0; i < groups_.size(); ++i)
    if (becomes[i] != Becomes::left_out)
      wanted.insert(wanted.end(), groups_[i].shapes.begin(), groups_[i].shapes.end());
  return wanted;
}

void ImportCard::choose_unit(int index) {
  own_unit_ = 0;
  measured_.reset();
  distance_->hide();
  if (index >= 0) place_anew();
  look_at_all();
}

Point ImportCard::in_drawing(Point p) const {
  const Placement& t = how_.placement;
  return t.from + (1 / t.unit) * rotated(p - t.to, -t.turn);
}

void ImportCard::scale_by(Point a, Point b) {
  measured_ = {in_drawing(a), in_drawing(b)};
  distance_->show();
  distance_->show_value(distance(a, b), document_.plan().units);
  scale_says_->setText(tr("Type how far the two points are apart:"));
  scale_says_->show();
  distance_->edit()->setFocus(Qt::OtherFocusReason);
  distance_->edit()->selectAll();
}

void ImportCard::take_distance(double metres) {
  if (!measured_) return;
  const auto unit = unit_from(measured_->first, measured_->second, metres);
  if (!unit) {
    scale_says_->setText(tr("Two different points and a distance of more than nought are needed."));
    return;
  }
  own_unit_ = *unit;
  unit_->setCurrentIndex(-1);
  place_anew();
  look_at_all();
}

void ImportCard::look_at_all() {
  std::vector<underlawn::Shape> shown;
  for (int i : wanted_shapes()) shown.push_back(drawing_.shapes[static_cast<std::size_t>(i)]);
  const underlawn::Box box = extent(shown.empty() ? drawing_.shapes : shown);
  const Point a = how_.placement(box.low), b = how_.placement({box.high.x, box.low.y});
  const Point c = how_.placement(box.high), d = how_.placement({box.low.x, box.high.y});
  canvas().look_at({{std::min({a.x, b.x, c.x, d.x}), std::min({a.y, b.y, c.y, d.y})},
                    {std::max({a.x, b.x, c.x, d.x}), std::max({a.y, b.y, c.y, d.y})}},
                   kWide + 3 * kGap);
}

// Where it lies follows from its unit and from what of it is wanted.
void ImportCard::place_anew() {
  const double told = own_unit_ > 0                ? own_unit_
                      : unit_->currentIndex() >= 0 ? unit_->currentData().toDouble()
                                                   : 0;
  how_.placement =
      usual_placement(drawing_, document_.committed(), told > 0 ? told : 0.3048, wanted_shapes());
  make_lines();
  refresh();
}

void ImportCard::refresh() {
  refreshing_ = true;
  brought_ = bring_in(document_.committed(), drawing_, groups_, chosen(), how_);
  show_brought();
  refreshing_ = false;
  tell_result();
  canvas().update();
}

void ImportCard::show_brought() {
  if (!isVisible()) return;
  document_.preview(brought_.anything() ? std::optional(brought_.plan) : std::nullopt);
}

void ImportCard::tell_result() {
  const UnitSystem units = document_.plan().units;
  const auto shown = [&](double v) {
    return QString::fromStdString(print_quantity(Quantity::length, v, units));
  };
  const bool scaled = own_unit_ > 0 || unit_->currentIndex() >= 0;
  const underlawn::Box box = extent(drawing_.shapes);
  const double unit = how_.placement.unit;
  if (!measured_ || own_unit_ > 0) {
    scale_says_->setText(own_unit_ > 0 ? tr("Scaled by two points: a unit is %1.").arg(shown(own_unit_))
                         : scaled      ? tr("Files often state a wrong unit: check a length you know.")
                                  : tr("The file does not say its unit: choose it, or click two points."));
    scale_says_->setVisible(!drawing_.place);
  }
  size_->setText(tr("Over all %1 by %2.")
                     .arg(shown(unit * (box.high.x - box.low.x)), shown(unit * (box.high.y - box.low.y))));
  QStringList lines;
  if (asking()) lines << asked();
  if (!asking() && brought_.lots.size() > 1)
    lines << tr("%n outlines could be the lot: click inside the right one, or the button below.", "",
                static_cast<int>(brought_.lots.size()));
  lines << (brought_.anything() ? tr("Brings in %1.").arg(brought_words(brought_))
                                : tr("Nothing comes in yet: say what the layers are."));
  auto left_out = drawing_.left_out;
  left_out.insert(left_out.end(), brought_.left_out.begin(), brought_.left_out.end());
  if (!left_out.empty()) lines << tr("Left out:") << left_out_words(left_out, 4);
  result_->setText(lines.join('\n'));
  result_->setToolTip(left_out_words(left_out, 40));
  next_outline_->setVisible(brought_.lots.size() > 1);
  height_unit_->setVisible(brought_.counts.contains(Becomes::heights));
  bring_->setEnabled(scaled && brought_.anything());
  place();
}

void ImportCard::bring() {
  const Plan plan = brought_.plan;
  const QString what = tr("Bring in %1").arg(name_);
  close_card();
  document_.commit(plan, what);
  canvas().zoom_to_fit();
}

void ImportCard::close_card() {
  reader_.stop();
  stop_asking();
  document_.preview(std::nullopt);
  lines_.clear();
  CanvasCard::close_card();
}

}  // namespace underlawn
