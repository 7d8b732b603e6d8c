// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/main_window.h"

#include <QAction>
#include <QCloseEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "canvas/canvas.h"
#include "canvas/pictures.h"
#include "canvas/typed_scale.h"
#include "window/as_built_panel.h"
#include "window/layer_boxes.h"
#include "window/lot_list.h"
#include "window/notice_bar.h"
#include "window/sheet_strip.h"
#include "window/side_column.h"
#include "window/survey_panel.h"
#include "window/theme_now.h"
#include "window/typed_field.h"
#include "window/ways_panel.h"

namespace underlawn {

namespace {

constexpr int kKeepEvery = 3000;      // ms
constexpr int kLookEvery = 2000;      // ms: whether the file was changed by somebody else
constexpr int kWideFrom = 1900;       // px: the report gets a column of its own
constexpr QSize kSmallest{760, 460};  // 1280 by 800 at half as large again, less the frame

QString hint_words() {
  return MainWindow::tr(
      "<p style='font-size:17px; font-weight:600'>An empty lot</p>"
      "<p><b>L</b> &nbsp; draw the lot line: click a corner, aim, type a length like <b>120</b> or "
      "<b>120 N45E</b>, Enter</p>"
      "<p><b>H</b> &nbsp; the house, then <b>E</b> &nbsp; where the supply run enters it</p>"
      "<p><b>T</b> trees, <b>U</b> utilities, <b>S</b> septic tank, <b>W</b> well, <b>N</b> what is to be "
      "left alone</p>"
      "<p><b>Alt+5</b> &nbsp; reads deed calls, <b>Ctrl+I</b> brings in a surveyor's drawing or a parcel "
      "file, <b>Ctrl+Shift+I</b> lays a "
      "plat "
      "under the drawing</p>"
      "<p>The loop follows by itself. <b>Ctrl+O</b> opens a plan, <b>Ctrl+K</b> finds any command.</p>");
}

}  // namespace

MainWindow::MainWindow(QString kept_folder)
    : kept_(document_, kept_folder, kKeepEvery),
      watch_(document_, kept_folder, kLookEvery),
      actions_(new Actions(this)),
      bar_(new NoticeBar),
      files_(new FileFlow(document_, kept_, watch_, *bar_, this)),
      canvas_(new Canvas(document_, selection_)),
      side_(new SideColumn(document_, selection_)),
      sheet_strip_(new SheetStrip(document_)),
      middle_(new QStackedWidget),
      hint_(new QLabel(canvas_)),
      says_(new QLabel),
      where_(new QLabel),
      scale_(new TypedField) {
  build();
  bind_file();
  bind_exchange();
  bind_edit();
  bind_tools();
  bind_view();
  bind_panels();
  bind_help();
  connect_canvas();
  follow_theme();
  follow_document();
  canvas_->setFocus();
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &MainWindow::follow_theme);
  connect(&document_, &Document::plan_changed, this, &MainWindow::follow_document);
  connect(side_, &SideColumn::told, this, [this](const QString& words) {
    if (words.isEmpty()) return bar_->withdraw("panel file");
    bar_->tell("panel file", words);
  });
  connect(bar_, &NoticeBar::answered, this, [this] { canvas_->setFocus(Qt::OtherFocusReason); });
  connect(&document_, &Document::history_changed, this, &MainWindow::follow_document);
  connect(&document_, &Document::path_changed, this, &MainWindow::follow_document);
  connect(&document_, &Document::replaced, this, [this] {
    selection_.clear();
    canvas_->zoom_to_fit();
  });
}

MainWindow::~MainWindow() = default;

void MainWindow::build() {
  setMinimumSize(kSmallest);
  actions_->fill_menus(menuBar());
  auto* all = new QWidget;
  auto* row = new QHBoxLayout(all);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(actions_->make_tool_strip());
  row->addWidget(make_middle(), 1);
  row->addWidget(side_);
  setCentralWidget(all);
}

QWidget* MainWindow::make_middle() {
  auto* drawing = new QWidget;
  auto* under = new QVBoxLayout(drawing);
  under->setContentsMargins(0, 0, 0, 0);
  under->setSpacing(0);
  under->addWidget(canvas_, 1);
  under->addWidget(make_foot());
  middle_->addWidget(drawing);
  middle_->addWidget(sheet_strip_);
  connect(sheet_strip_, &SheetStrip::closed, this, [this] {
    middle_->setCurrentIndex(0);
    canvas_->setFocus();
  });
  canvas_->setAccessibleName(tr("Drawing"));

  hint_->setObjectName("card");
  hint_->setTextFormat(Qt::RichText);
  hint_->setText(hint_words());
  hint_->setMargin(6 * kGap);
  hint_->setWordWrap(true);
  hint_->setAttribute(Qt::WA_TransparentForMouseEvents);

  auto* column = new QVBoxLayout;
  auto* middle = new QWidget;
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(bar_);
  column->addWidget(middle_, 1);
  middle->setLayout(column);
  return middle;
}

QWidget* MainWindow::make_foot() {
  auto* foot = new QFrame;
  foot->setObjectName("foot");
  auto* row = new QHBoxLayout(foot);
  row->setContentsMargins(4 * kGap, kGap, 4 * kGap, kGap);
  says_->setObjectName("faint");
  where_->setObjectName("faint");
  says_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  row->addWidget(says_, 1);
  row->addWidget(where_);
  row->addWidget(scale_);
  set_up_scale();
  return foot;
}

// The scale of the view, to be read and typed.
void MainWindow::set_up_scale() {
  scale_->setFixedWidth(92);
  scale_->edit()->setAlignment(Qt::AlignRight);
  scale_->edit()->setAccessibleName(tr("Scale of the drawing"));
  scale_->setToolTip(tr("Scale of the drawing on the screen. Type one like 1:200 or 1 in = 20 ft (Ctrl+G)."));
  scale_->set_taker([this](const QString& typed) {
    const auto scale = typed_scale(typed.toStdString(), document_.plan().units);
    if (!scale) {
      canvas_->say_for_now(QString::fromStdString(scale.error().message()));
      return tr("Not a scale");
    }
    canvas_->set_paper_scale(*scale);
    canvas_->setFocus(Qt::OtherFocusReason);
    return QString();
  });
  const auto follow = [this] { scale_->show_text(scale_text(canvas_->paper_scale())); };
  connect(canvas_, &Canvas::view_changed, this, follow);
  follow();
}

void MainWindow::connect_canvas() {
  connect(canvas_, &Canvas::status_text, this, [this](const QString& words) {
    says_->setText(words);
    says_->setToolTip(words);  // a narrow window cuts it off
  });
  connect(canvas_, &Canvas::tool_changed, this, [this](ToolId id) {
    const std::string name = std::string(kToolPrefix) + std::string(tool_name(id));
    if (find_command(name) != nullptr) actions_->action(name)->setChecked(true);
    show_hint();
  });
  connect(canvas_, &Canvas::pointer_at, this, [this](Point p) {
    const auto print = [&](double v) {
      return QString::fromStdString(print_quantity(Quantity::length, v, document_.plan().units));
    };
    where_->setText(print(p.x) + "   " + print(p.y));
  });
  connect(canvas_, &Canvas::pointer_left, where_, &QLabel::clear);
  says_->setText(canvas_->status());
  side_->lot_list()->put_on_top(new LayerBoxes(document_, *canvas_));
  SurveyPanel* survey = side_->survey_panel();
  connect(survey, &SurveyPanel::shown_changed, this, [this, survey] {
    canvas_->set_survey(survey->marks());
    show_hint();
  });
  WaysPanel* ways = side_->ways_panel();
  connect(ways, &WaysPanel::shown_changed, this, [this, ways] {
    std::vector<Ghost> ghosts;
    for (const Way* way : ways->shown())
      ghosts.push_back({way->layout, way->wishes.run_width, QString::fromStdString(way->sentence)});
    canvas_->set_ghosts(std::move(ghosts));
  });
  AsBuiltPanel* built = side_->as_built_panel();
  connect(built, &AsBuiltPanel::shown_changed, this, [this, built] {
    const auto shown = built->shown();
    canvas_->set_drawn(shown);
    PaintOptions options = canvas_->paint_options();
    options.corner_tags = built->isVisible();  // what is taped from
    canvas_->set_paint_options(options);
    const Outcome* planned = document_.outcome();
    if (shown == nullptr || planned == nullptr) return canvas_->set_ghosts({});
    canvas_->set_ghosts({{differing(planned->layout, shown->layout), document_.plan().wishes.run_width,
                          tr("As planned"), tr("As built")}});
  });
}

void MainWindow::follow_theme() {
  Look look = theme_now().dark ? Look::night() : Look::light();
  if (theme_now().dark) {  // as warm as the panels beside it
    look.background = QColor("#14120d");
    look.ground = QColor("#1f1d17");
  }
  canvas_->set_look(look);
}

void MainWindow::follow_document() {
  const auto name = [](const QString& verb, const QString& what) {
    return what.isEmpty() ? verb : tr("%1: %2").arg(verb, what);
  };
  QAction* undo = actions_->action("edit.undo");
  QAction* redo = actions_->action("edit.redo");
  undo->setEnabled(document_.can_undo());
  undo->setText(!document_.can_undo() && document_.has_forgotten()
                    ? tr("Undo: older changes are no longer kept")
                    : name(tr("Undo"), document_.undo_name()));
  redo->setEnabled(document_.can_redo());
  redo->setText(name(tr("Redo"), document_.redo_name()));
  const bool us = document_.plan().units == UnitSystem::us;
  actions_->action(us ? "view.us" : "view.metric")->setChecked(true);
  update_title();
  show_hint();
}

void MainWindow::update_title() {
  set_usual_picture_folder(picture_folder(document_.path()));
  setWindowTitle(QString("%1[*] · Underlawn").arg(document_.display_name()));
  setWindowModified(document_.modified());
  setWindowFilePath({});
}

// Until something is drawn the drawing says what to do first.
void MainWindow::show_hint() {
  const Site& site = document_.plan().site;
  const bool bare = site.lot.empty() && site.features.empty() && document_.plan().pictures.empty() &&
                    canvas_->survey().empty();
  hint_->setVisible(bare && canvas_->tool() == ToolId::select);
  if (!hint_->isVisible()) return;
  hint_->setFixedWidth(std::min(480, canvas_->width() - 40));
  hint_->adjustSize();
  hint_->move((canvas_->width() - hint_->width()) / 2, (canvas_->height() - hint_->height()) / 2);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  side_->set_wide(event->size().width() >= kWideFrom);
  QMetaObject::invokeMethod(this, &MainWindow::show_hint, Qt::QueuedConnection);
}

void MainWindow::close_to_start_again() {
  const auto leave = [this] {
    start_again_ = may_close_ = true;
    close();
  };
  if (files_->may_close(leave)) leave();
}

void MainWindow::closeEvent(QCloseEvent* event) {
  const bool may = may_close_ || files_->may_close([this] {
    may_close_ = true;
    close();
  });
  event->setAccepted(may);
  if (may) kept_.drop();
}

}  // namespace underlawn
