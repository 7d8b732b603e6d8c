// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/picture_card.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QSlider>
#include <QSpinBox>

#include "canvas/canvas.h"
#include "canvas/pictures.h"
#include "plan/picture_edits.h"
#include "window/form.h"
#include "window/notice_bar.h"
#include "window/picture_file.h"
#include "window/plain_words.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kWide = 340;
constexpr const char* kSubject = "picture";

}  // namespace

PictureCard::PictureCard(Document& document, Canvas& canvas, NoticeBar& bar)
    : CanvasCard(canvas, kWide),
      document_(document),
      bar_(bar),
      title_(plain_words({}, "section")),
      says_(plain_words({}, "faint")),
      which_(choice_box({})),
      page_(new QSpinBox),
      scale_(new QPushButton(tr("Scale…"))),
      turn_(new QPushButton(tr("Turn…"))),
      move_(new QPushButton(tr("Move…"))),
      another_(new QPushButton(tr("Add another…"))),
      remove_(new QPushButton(tr("Remove"))),
      done_(new QPushButton(tr("Done"))),
      distance_(new QuantityField(Quantity::length)),
      bearing_(new QuantityField(Quantity::angle)),
      strength_(new QSlider(Qt::Horizontal)),
      locked_(new QCheckBox(tr("Locked"))),
      hidden_(new QCheckBox(tr("Hidden"))),
      on_sheets_(new QCheckBox(tr("Printed under the site plan"))),
      beside_(new QCheckBox(tr("Kept as a file beside the plan"))) {
  build();
  connect_fields();
  connect(&document_, &Document::plan_changed, this, [this] {
    if (isVisible()) refresh();
  });
  connect(&document_, &Document::replaced, this, [this] {
    if (isVisible()) close_card();
    say_missing();
  });
  connect(this, &CanvasCard::asking_changed, this, &PictureCard::refresh);
}

void PictureCard::build() {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(4 * kGap, 3 * kGap, 4 * kGap, 3 * kGap);
  grid->setHorizontalSpacing(2 * kGap);
  grid->setVerticalSpacing(2 * kGap);
  title_->setText(tr("Picture under the drawing"));
  int row = 0;
  grid->addWidget(title_, row++, 0, 1, 3);
  grid->addWidget(which_, row, 0, 1, 2);
  grid->addWidget(page_, row++, 2);
  grid->addWidget(scale_, row, 0);
  grid->addWidget(turn_, row, 1);
  grid->addWidget(move_, row++, 2);
  grid->addWidget(says_, row++, 0, 1, 3);
  grid->addWidget(distance_, row++, 0, 1, 3);
  grid->addWidget(bearing_, row++, 0, 1, 3);
  grid->addWidget(new QLabel(tr("Strength")), row, 0);
  grid->addWidget(strength_, row++, 1, 1, 2);
  grid->addWidget(locked_, row, 0);
  grid->addWidget(hidden_, row++, 1, 1, 2);
  grid->addWidget(on_sheets_, row++, 0, 1, 3);
  grid->addWidget(beside_, row++, 0, 1, 3);
  grid->addWidget(another_, row, 0);
  grid->addWidget(remove_, row, 1);
  grid->addWidget(done_, row, 2);
  done_->setObjectName("main");
  page_->setPrefix(tr("page") + ' ');
  strength_->setRange(5, 100);
  strength_->setAccessibleName(tr("Strength"));
  which_->setAccessibleName(tr("Picture"));
  which_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  distance_->edit()->setAccessibleName(tr("Distance of the two places"));
  bearing_->edit()->setAccessibleName(tr("Bearing from the first place to the second, clockwise from north"));
}

void PictureCard::connect_fields() {
  connect(which_, &QComboBox::activated, this, &PictureCard::refresh);
  connect(scale_, &QPushButton::clicked, this, &PictureCard::ask_scale);
  connect(turn_, &QPushButton::clicked, this, &PictureCard::ask_turn);
  connect(move_, &QPushButton::clicked, this, &PictureCard::ask_move);
  connect(another_, &QPushButton::clicked, this, &PictureCard::ask_file);
  connect(done_, &QPushButton::clicked, this, [this] { close_card(); });
  connect(remove_, &QPushButton::clicked, this, [this] {
    document_.commit(edit::without_picture(document_.committed(), index()), tr("Remove picture"));
    if (document_.plan().pictures.empty()) close_card();
  });
  const auto flag = [this](QCheckBox* box, bool Picture::*member, const QString& what) {
    connect(box, &QCheckBox::clicked, this, [this, member, what](bool on) {
      if (now() == nullptr) return;
      Picture p = *now();
      p.*member = on;
      change(p, what);
    });
  };
  flag(locked_, &Picture::locked, tr("Lock picture"));
  flag(hidden_, &Picture::hidden, tr("Hide picture"));
  flag(on_sheets_, &Picture::on_sheets, tr("Print picture"));
  connect(beside_, &QCheckBox::clicked, this, &PictureCard::store_beside);
  connect(page_, &QSpinBox::valueChanged, this, [this](int page) {
    if (now() == nullptr) return;
    Picture p = *now();
    p.page = page;
    change(p, tr("Page of picture"));
  });
  const auto dim = [this](bool keep) {
    if (now() == nullptr) return;
    Picture p = document_.committed().pictures[static_cast<std::size_t>(index())];
    p.strength = strength_->value() / 100.0;
    if (keep) return change(p, tr("Dim picture"));
    document_.preview(edit::with_picture(document_.committed(), index(), p));
  };
  connect(strength_, &QSlider::sliderMoved, this, [dim] { dim(false); });
  connect(strength_, &QSlider::sliderReleased, this, [dim] { dim(true); });
  connect(strength_, &QSlider::actionTriggered, this, [this, dim] {
    if (!strength_->isSliderDown())
      QMetaObject::invokeMethod(
          this, [dim] { dim(true); }, Qt::QueuedConnection);
  });
  connect(distance_, &QuantityField::entered, this, [this](double metres) {
    if (now() == nullptr || !clicked_two_) return;
    const auto p = scaled(*now(), clicked_two_->first, clicked_two_->second, metres);
    clicked_two_.reset();
    if (p) return change(*p, tr("Scale picture"));
    bar_.tell(kSubject, tr("The picture cannot be scaled so: two different places and a distance of a lot's "
                           "size are needed."));
    refresh();
  });
  connect(bearing_, &QuantityField::entered, this, [this](double bearing) {
    if (now() == nullptr || !clicked_two_) return;
    const auto p =
        aligned(*now(), clicked_two_->first, clicked_two_->second, bearing, document_.plan().site.north);
    clicked_two_.reset();
    if (p) return change(*p, tr("Turn picture"));
    refresh();
  });
}

int PictureCard::index() const {
  return which_->currentIndex();
}

const Picture* PictureCard::now() const {
  const auto& all = document_.plan().pictures;
  return index() >= 0 && index() < static_cast<int>(all.size()) ? &all[static_cast<std::size_t>(index())]
                                                                : nullptr;
}

void PictureCard::open() {
  if (document_.plan().pictures.empty()) return ask_file();
  show();
  refresh();
  scale_->setFocus(Qt::OtherFocusReason);
}

void PictureCard::ask_file() {
  const QString path = QFileDialog::getOpenFileName(window(), tr("Put a picture under the drawing"),
                                                    picture_folder(document_.path()),
                                                    tr("Pictures (*.png *.jpg *.jpeg *.pdf);;All files (*)"));
  if (!path.isEmpty()) add(path);
}

void PictureCard::add(const QString& path) {
  const View& view = canvas().view();
  const double room = std::max(view.size.width() / 2, view.size.width() - kWide);  // left of this card
  const Point middle = view.to_lot(QPointF(room / 2, view.size.height() / 2));
  const double width = 0.8 * room / view.scale;
  const auto picture = picture_from_file(path, document_.committed(), document_.path(), middle, width);
  if (!picture) return bar_.tell(kSubject, QString::fromStdString(picture.error().message()));
  const Plan after = edit::with_new_picture(document_.committed(), *picture);
  if (after == document_.committed())
    return bar_.tell(
        kSubject,
        tr("The plan holds %1 pictures, or as much as it can store: remove one first.").arg(kMostPictures));
  bar_.withdraw(kSubject);
  document_.commit(after, tr("Add picture"));
  show();
  refresh();
  which_->setCurrentIndex(which_->count() - 1);
  refresh();
  ask_scale();
}

void PictureCard::change(const Picture& to, const QString& what) {
  document_.commit(edit::with_picture(document_.committed(), index(), to), what);
  refresh();
}

void PictureCard::store_beside(bool beside) {
  if (now() == nullptr) return;
  const auto stored = beside ? stored_beside(*now(), document_.path())
                             : stored_with(*now(), document_.committed(), document_.path());
  if (stored)
    change(*stored, beside ? tr("Keep picture beside the plan") : tr("Store picture with the plan"));
  else
    bar_.tell(kSubject, QString::fromStdString(stored.error().message()));
  refresh();
}

void PictureCard::ask_scale() {
  snaps_ = false;
  ask_points(2, tr("Click two places on the picture whose distance you know."),
             [this](const std::vector<Point>& p) {
               clicked_two_ = {p[0], p[1]};
               refresh();
               says_->setText(tr("Type how far they are apart:"));
               distance_->show();
               distance_->show_value(distance(p[0], p[1]), document_.plan().units);
               distance_->edit()->setFocus(Qt::OtherFocusReason);
               distance_->edit()->selectAll();
               place();
             });
}

void PictureCard::ask_turn() {
  snaps_ = false;
  ask_points(2, tr("Click two places along a line whose bearing you know."),
             [this](const std::vector<Point>& p) {
               clicked_two_ = {p[0], p[1]};
               refresh();
               says_->setText(tr("Type its bearing, clockwise from north (0 deg for a north arrow):"));
               bearing_->show();
               bearing_->show_value(0, document_.plan().units);
               bearing_->edit()->setFocus(Qt::OtherFocusReason);
               bearing_->edit()->selectAll();
               place();
             });
}

void PictureCard::ask_move() {
  snaps_ = true;
  ask_points(2, tr("Click a place on the picture, then where it has to lie."),
             [this](const std::vector<Point>& p) {
               if (now() != nullptr) change(moved(*now(), p[1] - p[0]), tr("Move picture"));
             });
}

// What the picture is moved to is mostly a corner that is drawn already.
Point PictureCard::caught(Point p, double reach) const {
  if (!snaps_ || clicked().empty()) return p;
  Point best = p;
  const auto near = [&](Point q) {
    if (const double d = distance(p, q); d < reach) {
      reach = d;
      best = q;
    }
  };
  for (const LotCorner& c : document_.plan().site.lot) near(c.at);
  for (const Feature& f : document_.plan().site.features)
    for (Point q : f.points) near(q);
  return best;
}

void PictureCard::paint_guest(QPainter& painter, const View& view) const {
  if (now() == nullptr || now()->hidden) return;
  QPolygonF frame;
  for (Point corner : corners_of(*now())) frame << view.to_device(corner);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(canvas().look().selection, 1.2, Qt::DashLine));
  painter.drawPolygon(frame);
}

void PictureCard::refresh() {
  const auto& all = document_.plan().pictures;
  const int before =
      std::clamp(which_->currentIndex(), all.empty() ? -1 : 0, static_cast<int>(all.size()) - 1);
  which_->clear();
  for (const Picture& p : all) which_->addItem(QString::fromStdString(p.name.empty() ? p.file : p.name));
  which_->setCurrentIndex(before);
  const Picture* p = now();
  const auto shown = p == nullptr ? nullptr : decoded(*p, picture_folder(document_.path()));
  for (QPushButton* button : {scale_, turn_, move_}) button->setEnabled(p != nullptr && !p->locked);
  for (QWidget* w :
       std::initializer_list<QWidget*>{strength_, locked_, hidden_, on_sheets_, beside_, remove_})
    w->setEnabled(p != nullptr);
  distance_->setVisible(false);
  bearing_->setVisible(false);
  if (p == nullptr) return says_->setText({});
  const QSignalBlocker still(page_);
  page_->setRange(1, std::max(1, shown->pages));
  page_->setValue(p->page);
  page_->setVisible(shown->pages > 1);
  page_->setEnabled(!p->locked);
  if (!strength_->isSliderDown()) strength_->setValue(static_cast<int>(std::lround(100 * p->strength)));
  locked_->setChecked(p->locked);
  hidden_->setChecked(p->hidden);
  on_sheets_->setChecked(p->on_sheets);
  beside_->setChecked(p->data.empty());
  const auto length = [&](double v) {
    return QString::fromStdString(print_quantity(Quantity::length, v, document_.plan().units));
  };
  says_->setText(asking()          ? asked()
                 : !shown->shown() ? shown->trouble
                                   : tr("%1 by %2 on the ground.").arg(length(p->width), length(p->height)));
  says_->setObjectName(shown->shown() ? "faint" : "wrong");
  place();
}

void PictureCard::say_missing() {
  QStringList missing;
  for (const Picture& p : document_.plan().pictures)
    if (const auto there = decoded(p, picture_folder(document_.path())); !there->shown())
      missing << there->trouble;
  if (missing.isEmpty()) return bar_.withdraw(kSubject);
  bar_.tell(kSubject, tr("A picture under the drawing cannot be shown. %1").arg(missing.join(' ')));
}

}  // namespace underlawn
