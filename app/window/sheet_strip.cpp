// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/sheet_strip.h"

#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QScrollArea>
#include <QStandardPaths>
#include <QVBoxLayout>

#include "window/theme_now.h"

namespace underlawn {

namespace {

constexpr int kUsScales[] = {60, 120, 180, 240, 360, 480, 600};  // 1 in = 5, 10, 15, 20, 30, 40, 50 ft
constexpr int kMetricScales[] = {50, 100, 200, 250, 500};

QString scale_words(int scale, UnitSystem units) {
  return units == UnitSystem::us ? SheetStrip::tr("1 in = %1 ft").arg(scale / 12)
                                 : QString("1 : %1").arg(scale);
}

// The page as the printer would make it, on white paper in either theme.
QPixmap picture(const DigSheet& sheet, int page, int width, double density) {
  const double shrink = width * density / sheet.page_size().width();
  QPixmap map(QSize(qRound(width * density), qRound(sheet.page_size().height() * shrink)));
  map.fill(Qt::white);
  QPainter painter(&map);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter.scale(shrink, shrink);
  sheet.paint(painter, page);
  painter.end();
  map.setDevicePixelRatio(density);
  return map;
}

}  // namespace

SheetStrip::SheetStrip(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      paper_(new QComboBox),
      scale_(new QComboBox),
      said_(new QLabel),
      write_(new QPushButton(tr("Write PDF…"))),
      area_(new QScrollArea),
      pages_(nullptr) {
  setObjectName("page");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(make_bar());
  auto* inside = new QWidget;
  inside->setObjectName("page");
  pages_ = new QVBoxLayout(inside);
  pages_->setContentsMargins(6 * kGap, 6 * kGap, 6 * kGap, 6 * kGap);
  pages_->setSpacing(6 * kGap);
  area_->setFrameShape(QFrame::NoFrame);
  area_->setWidgetResizable(true);
  area_->setWidget(inside);
  area_->setAccessibleName(tr("Pages of the dig sheet"));
  column->addWidget(area_, 1);
  connect(&document, &Document::outcome_changed, this, [this] {
    if (isVisible() && !document_.stale()) lay_out();
  });
  hide();
}

QWidget* SheetStrip::make_bar() {
  auto* bar = new QFrame;
  bar->setObjectName("bar");
  auto* row = new QHBoxLayout(bar);
  row->setContentsMargins(4 * kGap, 2 * kGap, 3 * kGap, 2 * kGap);
  row->setSpacing(2 * kGap);
  auto* title = new QLabel(tr("Dig sheet"));
  title->setStyleSheet("font-weight: 600");
  auto* print = new QPushButton(tr("Print…"));
  auto* close = new QPushButton(tr("Back to the drawing"));
  paper_->addItems({tr("Letter"), tr("Tabloid"), "A4", "A3"});
  paper_->setAccessibleName(tr("Paper"));
  scale_->setAccessibleName(tr("Scale"));
  write_->setObjectName("main");
  said_->setWordWrap(true);
  row->addWidget(title);
  row->addWidget(paper_);
  row->addWidget(scale_);
  row->addWidget(said_, 1);
  for (QPushButton* button : {write_, print, close}) row->addWidget(button);
  connect(paper_, &QComboBox::activated, this, &SheetStrip::lay_out);
  connect(scale_, &QComboBox::activated, this, &SheetStrip::lay_out);
  connect(write_, &QPushButton::clicked, this, &SheetStrip::ask_and_write);
  connect(print, &QPushButton::clicked, this, &SheetStrip::print);
  connect(close, &QPushButton::clicked, this, &SheetStrip::close_strip);
  return bar;
}

void SheetStrip::open() {
  const UnitSystem units = document_.plan().units;
  const bool us = units == UnitSystem::us;
  if (scale_->count() == 0) paper_->setCurrentIndex(us ? 0 : 2);
  const QVariant before = scale_->currentData();
  scale_->clear();
  scale_->addItem(tr("Largest that fits"), 0);
  for (const int scale : us ? std::span<const int>(kUsScales) : std::span<const int>(kMetricScales))
    scale_->addItem(scale_words(scale, units), scale);
  scale_->setCurrentIndex(std::max(0, scale_->findData(before)));
  show();
  paper_->setFocus(Qt::ShortcutFocusReason);
  document_.when_current([this] { lay_out(); });
}

void SheetStrip::close_strip() {
  hide();
  emit closed();
}

SheetSetup SheetStrip::setup() const {
  SheetSetup setup;
  setup.paper = static_cast<Paper>(paper_->currentIndex());
  if (const int scale = scale_->currentData().toInt(); scale > 0) setup.scale = scale;
  return setup;
}

void SheetStrip::lay_out() {
  if (document_.stale() || document_.outcome() == nullptr) return;
  sheet_.emplace(document_.plan(), *document_.outcome(), setup());
  QStringList lines{
      tr("%n page(s), %1", "", sheet_->pages()).arg(scale_words(sheet_->scale(), document_.plan().units))};
  for (const Trouble& t : sheet_->remarks()) lines << QString::fromStdString(t.message());
  say(lines.join(". "), !sheet_->remarks().empty());
  show_pages();
}

void SheetStrip::show_pages() {
  while (QLayoutItem* item = pages_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  if (!sheet_) return;
  const int width = std::clamp(area_->viewport()->width() - 16 * kGap, 200, 1100);
  for (int page = 0; page < sheet_->pages(); ++page) {
    auto* shown = new QLabel;
    shown->setPixmap(picture(*sheet_, page, width, devicePixelRatioF()));
    shown->setAlignment(Qt::AlignHCenter);
    shown->setAccessibleName(tr("Page %1").arg(page + 1));
    pages_->addWidget(shown);
  }
  pages_->addStretch();
}

void SheetStrip::say(const QString& words, bool wrong) {
  said_->setText(words);
  said_->setStyleSheet("color: " + (wrong ? theme_now().error : theme_now().faint).name());
}

QString SheetStrip::said() const {
  return said_->text();
}

void SheetStrip::ask_and_write() {
  const QFileInfo plan(document_.path());
  const QString folder = document_.path().isEmpty()
                             ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                             : plan.absolutePath();
  const QString name = document_.path().isEmpty() ? document_.display_name() : plan.completeBaseName();
  const QString path = QFileDialog::getSaveFileName(
      this, tr("Write the dig sheet"), folder + "/" + name + " dig sheet.pdf", tr("PDF (*.pdf)"));
  if (!path.isEmpty()) write(path);
}

bool SheetStrip::write(const QString& path) {
  if (document_.stale() || document_.outcome() == nullptr) {
    say(tr("The plan is still being worked out; try again in a moment."), true);
    return false;
  }
  const auto written = write_dig_sheet(document_.plan(), *document_.outcome(), setup(), path);
  say(written ? tr("Written: %1").arg(path) : QString::fromStdString(written.error().message()), !written);
  return written.has_value();
}

void SheetStrip::print() {
  if (!sheet_) return;
  QPrinter printer(QPrinter::HighResolution);
  printer.setPageLayout(sheet_->page_layout());
  QPrintDialog dialog(&printer, this);
  if (dialog.exec() != QDialog::Accepted) return;
  const auto printed = print_dig_sheet(printer, *sheet_);
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
