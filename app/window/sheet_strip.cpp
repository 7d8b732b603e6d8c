// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/sheet_strip.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QScrollArea>
#include <QStandardPaths>
#include <QVBoxLayout>
#include <numeric>
#include <span>

#include "language/language.h"
#include "sheets/said_sheet.h"
#include "sheets/setup_for.h"
#include "sheets/sheets_out.h"
#include "window/page_picture.h"
#include "window/settings.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kUsScales[] = {60, 120, 180, 240, 360, 480, 600, 720, 960, 1200};  // 1 in = 5 to 100 ft
constexpr int kMetricScales[] = {50, 100, 200, 250, 300, 400, 500, 750, 1000};
constexpr int kColumn = 230;
constexpr int kWidestPage = 1100;

QString scale_words(int scale, UnitSystem units) {
  return units == UnitSystem::us && scale % 12 == 0 ? SheetStrip::tr("1 in = %1 ft").arg(scale / 12)
                                                    : QString("1 : %1").arg(scale);
}

// The sheets' own, which may not be the plan's.
UnitSystem units_of_sheets(const Plan& plan) {
  switch (plan.sheets.units) {
    case SheetUnits::as_plan:
      break;
    case SheetUnits::metric:
      return UnitSystem::metric;
    case SheetUnits::us:
      return UnitSystem::us;
  }
  return plan.units;
}

}  // namespace

SheetStrip::SheetStrip(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      kinds_(new QListWidget),
      paper_(new QComboBox),
      scale_(new QComboBox),
      language_(new QComboBox),
      units_(new QComboBox),
      files_(new QComboBox),
      kept_language_(new QCheckBox(tr("Always for this plan"))),
      each_trench_(new QCheckBox(tr("A page for each trench"))),
      said_(new QLabel),
      write_(new QPushButton(tr("Write PDF…"))),
      area_(new QScrollArea),
      pages_(nullptr) {
  setObjectName("page");
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(make_column());
  row->addWidget(make_area(), 1);
  pick({"dig"});
  connect_all();
  hide();
}

QWidget* SheetStrip::make_column() {
  auto* bar = new QFrame;
  bar->setObjectName("bar");
  bar->setFixedWidth(kColumn);
  auto* column = new QVBoxLayout(bar);
  column->setContentsMargins(3 * kGap, 3 * kGap, 3 * kGap, 3 * kGap);
  column->setSpacing(2 * kGap);
  auto* title = new QLabel(tr("Sheets"));
  title->setStyleSheet("font-weight: 600");
  for (const SheetKind& kind : sheet_kinds()) {
    auto* item = new QListWidgetItem(tr(kind.title.data()), kinds_);
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsUserCheckable | Qt::ItemIsSelectable);
    item->setCheckState(Qt::Unchecked);
    item->setToolTip(tr(kind.help.data()));
  }
  kinds_->setAccessibleName(tr("Sheets to write"));
  kinds_->setFixedHeight(kinds_->sizeHintForRow(0) * kinds_->count() + 3 * kGap);
  kinds_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  paper_->addItems({tr("Letter"), tr("Tabloid"), "A4", "A3"});
  paper_->setAccessibleName(tr("Paper"));
  scale_->setAccessibleName(tr("Scale"));
  files_->addItems({tr("One PDF"), tr("A PDF for each sheet")});
  files_->setAccessibleName(tr("Files"));
  write_->setObjectName("main");
  said_->setWordWrap(true);
  auto* print = new QPushButton(tr("Print…"));
  auto* close = new QPushButton(tr("Back to the drawing"));
  connect(print, &QPushButton::clicked, this, &SheetStrip::print);
  connect(close, &QPushButton::clicked, this, &SheetStrip::close_strip);
  for (const Language& l : languages())
    language_->addItem(QString::fromUtf8(l.name.data(), static_cast<qsizetype>(l.name.size())),
                       QByteArray(l.code.data(), static_cast<qsizetype>(l.code.size())));
  language_->setAccessibleName(tr("Language of the sheets"));
  kept_language_->setToolTip(tr(
      "Kept with the plan: every sheet of it is in this language, from the command line too. Without it the "
      "language is for the sheets that are written now."));
  units_->addItems({tr("Units of the plan"), tr("Metres"), tr("Feet and inches")});
  units_->setAccessibleName(tr("Units of the sheets"));
  for (QWidget* part : std::initializer_list<QWidget*>{title, kinds_, language_, kept_language_, units_,
                                                       paper_, scale_, each_trench_, files_})
    column->addWidget(part);
  auto* out = new QHBoxLayout;  // side by side: the column fits a small screen
  out->addWidget(write_, 3);
  out->addWidget(print, 2);
  column->addLayout(out);
  for (QWidget* part : std::initializer_list<QWidget*>{close, said_}) column->addWidget(part);
  column->addStretch();
  return bar;
}

QWidget* SheetStrip::make_area() {
  auto* inside = new QWidget;
  inside->setObjectName("page");
  pages_ = new QVBoxLayout(inside);
  pages_->setContentsMargins(6 * kGap, 6 * kGap, 6 * kGap, 6 * kGap);
  pages_->setSpacing(6 * kGap);
  area_->setFrameShape(QFrame::NoFrame);
  area_->setWidgetResizable(true);
  area_->setWidget(inside);
  area_->setAccessibleName(tr("Pages of the sheets"));
  return area_;
}

void SheetStrip::connect_all() {
  connect(kinds_, &QListWidget::itemChanged, this, &SheetStrip::lay_out);
  connect(paper_, &QComboBox::activated, this, [this](int paper) {
    settings::keep_sheet_paper(paper);
    lay_out();
  });
  connect(files_, &QComboBox::activated, this, [](int i) { settings::keep_a_file_each_sheet(i == 1); });
  connect(scale_, &QComboBox::activated, this, [this] { take_wishes(tr("Scale of the sheets")); });
  // The crew's sheets in its language are no wish for the family's: kept only where that is asked.
  connect(language_, &QComboBox::activated, this, [this] {
    chosen_language_ = language_->currentData().toByteArray().toStdString();
    if (kept_language_->isChecked()) return keep_language();
    lay_out();
  });
  connect(kept_language_, &QCheckBox::clicked, this, &SheetStrip::keep_language);
  connect(units_, &QComboBox::activated, this, [this] { take_wishes(tr("Units of the sheets")); });
  connect(each_trench_, &QCheckBox::clicked, this, [this] { take_wishes(tr("A page for each trench")); });
  connect(write_, &QPushButton::clicked, this, &SheetStrip::ask_and_write);
  connect(&document_, &Document::replaced, this, [this] { chosen_language_.clear(); });
  connect(&document_, &Document::outcome_changed, this, [this] {
    if (isVisible() && !document_.stale()) lay_out();
  });
}

void SheetStrip::show_wishes() {
  const SheetWishes& wishes = document_.plan().sheets;
  const UnitSystem units = units_of_sheets(document_.plan());
  scale_->clear();
  scale_->addItem(tr("Largest that fits"), 0);
  for (const int scale :
       units == UnitSystem::us ? std::span<const int>(kUsScales) : std::span<const int>(kMetricScales))
    scale_->addItem(scale_words(scale, units), scale);
  const int asked = wishes.scale.value_or(0);
  if (scale_->findData(asked) < 0) scale_->addItem(scale_words(asked, units), asked);
  scale_->setCurrentIndex(scale_->findData(asked));
  const bool kept = find_language(wishes.language) != nullptr;
  const std::string code = !chosen_language_.empty() ? chosen_language_
                           : kept                    ? wishes.language
                                                     : std::string(language_spoken());
  language_->setCurrentIndex(std::max(0, language_->findData(QByteArray::fromStdString(code))));
  kept_language_->setChecked(kept && wishes.language == code);
  units_->setCurrentIndex(static_cast<int>(wishes.units));
  each_trench_->setChecked(wishes.page_a_trench);
}

void SheetStrip::take_wishes(const QString& what) {
  Plan plan = document_.committed();
  SheetWishes& wishes = plan.sheets;
  const int scale = scale_->currentData().toInt();
  wishes.scale = scale > 0 ? std::optional<int>(scale) : std::nullopt;
  wishes.units = static_cast<SheetUnits>(units_->currentIndex());
  wishes.page_a_trench = each_trench_->isChecked();
  if (wishes != document_.committed().sheets) document_.commit(std::move(plan), what);
}

void SheetStrip::keep_language() {
  Plan plan = document_.committed();
  chosen_language_ = language_->currentData().toByteArray().toStdString();
  plan.sheets.language = kept_language_->isChecked() ? chosen_language_ : std::string();
  if (plan.sheets != document_.committed().sheets)
    document_.commit(std::move(plan), tr("Language of the sheets"));
  else
    lay_out();
}

void SheetStrip::open() {
  const int paper = settings::sheet_paper();
  paper_->setCurrentIndex(
      paper >= 0 && paper < paper_->count() ? paper : static_cast<int>(usual_paper(document_.plan())));
  files_->setCurrentIndex(settings::a_file_each_sheet() ? 1 : 0);
  show_wishes();
  show();
  kinds_->setFocus(Qt::ShortcutFocusReason);
  document_.when_current([this] { lay_out(); });
}

void SheetStrip::close_strip() {
  hide();
  emit closed();
}

SheetSetup SheetStrip::setup() const {
  SheetSetup setup = setup_for(document_.plan(), document_.path());
  setup.paper = static_cast<Paper>(paper_->currentIndex());
  if (!chosen_language_.empty()) setup.language = chosen_language_;
  return setup;
}

void SheetStrip::pick(const QStringList& names) {
  const QSignalBlocker quiet(kinds_);
  for (int i = 0; i < kinds_->count(); ++i) {
    const std::string_view name = sheet_kinds()[static_cast<std::size_t>(i)].name;
    const bool on = names.contains(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())));
    kinds_->item(i)->setCheckState(on ? Qt::Checked : Qt::Unchecked);
  }
  if (isVisible()) lay_out();
}

QStringList SheetStrip::picked() const {
  QStringList names;
  for (int i = 0; i < kinds_->count(); ++i) {
    const std::string_view name = sheet_kinds()[static_cast<std::size_t>(i)].name;
    if (kinds_->item(i)->checkState() == Qt::Checked)
      names << QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
  }
  return names;
}

std::vector<const Sheet*> SheetStrip::sheets() const {
  std::vector<const Sheet*> all;
  for (const SheetPtr& sheet : made_) all.push_back(sheet.get());
  return all;
}

int SheetStrip::pages() const {
  return std::accumulate(made_.begin(), made_.end(), 0,
                         [](int sum, const SheetPtr& sheet) { return sum + sheet->pages(); });
}

void SheetStrip::lay_out() {
  if (document_.stale() || document_.outcome() == nullptr) return;
  show_wishes();
  std::vector<const SheetKind*> kinds;
  for (const QString& name : picked()) kinds.push_back(find_sheet_kind(name.toStdString()));
  std::vector<SheetPtr> made = make_sheets(kinds, document_.plan(), *document_.outcome(), setup());
  made_.swap(made);
  show_pages();  // while the old sheets still live
  say_pages();
}

void SheetStrip::say_pages() {
  QStringList lines;
  if (made_.empty()) return say(tr("Tick the sheets to look at."), false);
  bool wrong = false;
  for (const SheetPtr& sheet : made_) {
    const QString pages = sheet->pages() == 1 ? tr("1 page") : tr("%1 pages").arg(sheet->pages());
    lines << (sheet->scale() > 0 ? tr("%1: %2, %3")
                                       .arg(sheet->title(), pages,
                                            scale_words(sheet->scale(), units_of_sheets(document_.plan())))
                                 : tr("%1: %2").arg(sheet->title(), pages));
    for (const Trouble& t : sheet->remarks()) lines << QString::fromStdString(t.message());
    wrong = wrong || !sheet->remarks().empty();
  }
  say(lines.join("\n"), wrong);
}

void SheetStrip::show_pages() {
  while (QLayoutItem* item = pages_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  const int width = std::clamp(area_->viewport()->width() - 16 * kGap, 200, kWidestPage);
  for (const SheetPtr& sheet : made_)
    for (int page = 0; page < sheet->pages(); ++page)
      pages_->addWidget(new PagePicture(*sheet, page, width), 0, Qt::AlignHCenter);
  pages_->addStretch();
}

void SheetStrip::say(const QString& words, bool wrong) {
  said_->setText(words);
  said_->setStyleSheet(QString("color: %1").arg((wrong ? theme_now().error : theme_now().faint).name()));
}

QString SheetStrip::said() const {
  return said_->text();
}

QString SheetStrip::plan_name() const {
  return document_.path().isEmpty() ? document_.display_name()
                                    : QFileInfo(document_.path()).completeBaseName();
}

QString SheetStrip::title_of_all() const {
  return made_.size() == 1 ? made_[0]->title() : tr("Sheets");
}

void SheetStrip::ask_and_write() {
  const QString folder = document_.path().isEmpty()
                             ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                             : QFileInfo(document_.path()).absolutePath();
  if (files_->currentIndex() == 1) {
    const QString into = QFileDialog::getExistingDirectory(this, tr("Folder for the sheets"), folder);
    if (!into.isEmpty()) write_each(into);
    return;
  }
  const QString path = QFileDialog::getSaveFileName(this, tr("Write the sheets"),
                                                    folder + "/" + file_name_of(plan_name(), title_of_all()),
                                                    tr("PDF (*.pdf)"));
  if (!path.isEmpty()) write(path);
}

bool SheetStrip::ready() {
  if (document_.stale() || document_.outcome() == nullptr) {
    say(tr("The plan is still being worked out; try again in a moment."), true);
    return false;
  }
  lay_out();
  return !made_.empty();
}

bool SheetStrip::write(const QString& path) {
  if (!ready()) return false;
  const auto written = write_pdf(sheets(), document_title(document_.plan(), title_of_all()), path);
  say(written ? tr("Written: %1").arg(path) : QString::fromStdString(written.error().message()), !written);
  return written.has_value();
}

bool SheetStrip::write_each(const QString& folder) {
  if (!ready()) return false;
  QStringList written;
  for (const SheetPtr& sheet : made_) {
    written << folder + "/" + file_name_of(plan_name(), sheet->title());
    const auto done =
        write_pdf({sheet.get()}, document_title(document_.plan(), sheet->title()), written.last());
    if (done) continue;
    say(QString::fromStdString(done.error().message()), true);
    return false;
  }
  say(tr("Written: %1").arg(written.join("\n")), false);
  return true;
}

void SheetStrip::print() {
  if (made_.empty()) return;
  QPrinter printer(QPrinter::HighResolution);
  printer.setPageLayout(made_[0]->page_layout());
  QPrintDialog dialog(&printer, this);
  if (dialog.exec() != QDialog::Accepted) return;
  const auto printed = print_sheets(printer, sheets());
  say(printed ? tr("Sent to the printer.") : QString::fromStdString(printed.error().message()), !printed);
}

void SheetStrip::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
  close_strip();
}

void SheetStrip::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (isVisible() && event->size().width() != event->oldSize().width()) show_pages();
}

}  // namespace underlawn
