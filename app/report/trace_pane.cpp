// SPDX-License-Identifier: GPL-3.0-or-later
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "report/figure_table.h"
#include "report/report_html.h"
#include "report/report_panel.h"
#include "window/theme_now.h"

namespace underlawn {

TracePane::TracePane(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), browser_(new QTextBrowser), back_(new QPushButton(tr("Back"))) {
  setObjectName("page");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  auto* head = new QFrame;
  head->setObjectName("foot");
  auto* row = new QHBoxLayout(head);
  row->setContentsMargins(4 * kGap, 2 * kGap, 2 * kGap, 2 * kGap);
  auto* title = new QLabel(tr("How this number came about"));
  title->setStyleSheet("font-weight: 600");
  auto* close = new QPushButton(tr("Close"));
  for (QWidget* button : {back_, static_cast<QWidget*>(close)}) button->setObjectName("plain");
  row->addWidget(title, 1);
  row->addWidget(back_);
  row->addWidget(close);
  column->addWidget(head);
  column->addWidget(browser_);
  browser_->setOpenLinks(false);
  browser_->setFrameShape(QFrame::NoFrame);
  browser_->document()->setDocumentMargin(14);
  browser_->setAccessibleName(title->text());
  setFocusProxy(browser_);
  connect(close, &QPushButton::clicked, this, &QWidget::hide);
  connect(static_cast<QPushButton*>(back_), &QPushButton::clicked, this, &TracePane::back);
  connect(browser_, &QTextBrowser::anchorClicked, this, [this](const QUrl& link) {
    if (const QString key = target_of(link, kFigureLink); !key.isEmpty()) show_figure(key);
  });
  connect(&document, &Document::outcome_changed, this, &TracePane::refresh);
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &TracePane::refresh);
  hide();
}

void TracePane::show_figure(const QString& key) {
  if (isHidden()) keys_.clear();
  if (keys_.isEmpty() || keys_.back() != key) keys_ << key;
  show();
  refresh();
}

void TracePane::back() {
  if (keys_.size() > 1) keys_.removeLast();
  refresh();
}

void TracePane::refresh() {
  back_->setEnabled(keys_.size() > 1);
  if (isHidden() || keys_.isEmpty() || document_.outcome() == nullptr) return;
  browser_->setHtml(trace_html(document_.outcome()->figures, keys_.back().toStdString(),
                               document_.plan().units, theme_now()));
}

void TracePane::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
  hide();
}

}  // namespace underlawn
