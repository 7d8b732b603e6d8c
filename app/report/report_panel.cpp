// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/report_panel.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QTextBrowser>
#include <QVBoxLayout>
#include <algorithm>

#include "plan/edits.h"
#include "report/figure_table.h"
#include "report/report_html.h"
#include "window/same_loop.h"
#include "window/theme_now.h"

namespace underlawn {

namespace {

// ms: a drag makes outcomes faster than a page of text can be set, and faster than it can be read; the
// headline follows at once.
constexpr int kRefreshEvery = 40, kInADrag = 250;

const Finding* find_finding(const Outcome* outcome, const QString& key) {
  if (outcome == nullptr) return nullptr;
  const auto at = std::find_if(outcome->findings.begin(), outcome->findings.end(),
                               [&](const Finding& f) { return QString::fromStdString(f.key) == key; });
  return at == outcome->findings.end() ? nullptr : &*at;
}

}  // namespace

ReportPanel::ReportPanel(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent),
      document_(document),
      selection_(selection),
      browser_(new QTextBrowser),
      strip_(new QFrame),
      accepting_(new QLabel),
      reason_(new QLineEdit) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(browser_);
  column->addWidget(strip_);
  browser_->setOpenLinks(false);
  browser_->setFrameShape(QFrame::NoFrame);
  browser_->document()->setDocumentMargin(14);
  browser_->setAccessibleName(tr("Report"));
  setFocusProxy(browser_);
  build_reason_strip();
  soon_.setSingleShot(true);
  connect(&soon_, &QTimer::timeout, this, &ReportPanel::refresh);
  // Tables of full width count as a little wider than the page; nothing of them is cut off.
  browser_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  connect(browser_, &QTextBrowser::anchorClicked, this, &ReportPanel::follow);
  connect(&document, &Document::outcome_changed, this, &ReportPanel::refresh_soon);
  connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, &ReportPanel::refresh_soon);
  connect(&remedies_, &RemedyService::progressed, this, [this](double share, const QString&) {
    share_ = share;
    refresh_soon();
  });
  connect(&remedies_, &RemedyService::busy_changed, this, [this] {
    share_ = remedies_.busy() ? std::optional(0.0) : std::nullopt;
    refresh_soon();
  });
}

void ReportPanel::build_reason_strip() {
  auto* column = new QVBoxLayout(strip_);
  column->setContentsMargins(4 * kGap, 3 * kGap, 4 * kGap, 3 * kGap);
  accepting_->setWordWrap(true);
  reason_->setPlaceholderText(tr("Why it may stay; printed on the sheet"));
  reason_->setAccessibleName(tr("Reason for accepting"));
  auto* accept = new QPushButton(tr("Accept"));
  accept->setObjectName("main");
  auto* leave = new QPushButton(tr("Leave it"));
  auto* row = new QHBoxLayout;
  row->addStretch();
  row->addWidget(leave);
  row->addWidget(accept);
  column->addWidget(accepting_);
  column->addWidget(reason_);
  column->addLayout(row);
  strip_->setObjectName("foot");
  strip_->hide();
  reason_->installEventFilter(this);
  connect(reason_, &QLineEdit::returnPressed, this, &ReportPanel::accept);
  connect(accept, &QPushButton::clicked, this, &ReportPanel::accept);
  connect(leave, &QPushButton::clicked, strip_, &QWidget::hide);
}

bool ReportPanel::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    strip_->hide();
    browser_->setFocus();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

void ReportPanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  refresh();
}

void ReportPanel::refresh_soon() {
  if (isVisible() && !soon_.isActive()) soon_.start(document_.previewing() ? kInADrag : kRefreshEvery);
}

// An outcome of an earlier plan is never set as if it were current: the page keeps what it had until the new
// one is there.
void ReportPanel::refresh() {
  const Outcome* outcome = document_.outcome();
  if (outcome == nullptr) return;
  const QString html =
      report_html(*document_.outcome_plan(), *outcome, theme_now(), {share_, remedies_.newest()});
  if (html == shown_) return;
  shown_ = html;
  const int at = browser_->verticalScrollBar()->value();
  browser_->setHtml(html);
  browser_->verticalScrollBar()->setValue(at);
}

void ReportPanel::follow(const QUrl& link) {
  if (const QString key = target_of(link, kFigureLink); !key.isEmpty()) return emit trace_asked(key);
  if (const QString panel = target_of(link, kPanelLink); !panel.isEmpty()) return emit panel_asked(panel);
  if (const QString key = target_of(link, kPlaceLink); !key.isEmpty()) return point_out(key);
  if (const QString key = target_of(link, kAcceptLink); !key.isEmpty()) return ask_reason(key);
  if (link.toString() == kFindRemediesLink) return find_remedies();
  if (link.toString() == kStopRemediesLink) return remedies_.stop();
  if (const QString which = target_of(link, kTakeLink); !which.isEmpty()) return take(which.toUInt());
  if (const QString key = target_of(link, kWithdrawLink); !key.isEmpty())
    document_.commit(edit::without_acceptance(document_.committed(), key.toStdString()),
                     tr("Acceptance taken back"));
}

void ReportPanel::find_remedies() {
  if (document_.outcome() != nullptr) remedies_.start(document_.committed());
}

// Of the plan that the page shows; a plan that has gone on shows the link to find them again.
void ReportPanel::take(std::size_t which) {
  const auto answer = remedies_.newest();
  if (answer == nullptr || which >= answer->remedies.size() ||
      !same_loop(answer->plan, document_.committed()))
    return;
  const Plan& with = answer->remedies[which].plan;
  Plan plan = document_.committed();
  plan.site = with.site;
  plan.wishes = with.wishes;
  document_.commit(std::move(plan), tr("Room made for another circuit"));
}

void ReportPanel::show_findings() {
  const Outcome* outcome = document_.outcome();
  const bool at_the_top =
      outcome != nullptr && (!outcome->troubles.empty() || has_unaccepted_errors(*outcome));
  if (at_the_top)
    browser_->verticalScrollBar()->setValue(0);
  else
    browser_->scrollToAnchor(kFindingsAnchor);
}

void ReportPanel::point_out(const QString& finding) {
  if (const Finding* f = find_finding(document_.outcome(), finding)) selection_.point_out(f->places);
}

void ReportPanel::ask_reason(const QString& finding) {
  const Finding* f = find_finding(document_.outcome(), finding);
  if (f == nullptr) return;
  finding_ = finding;
  accepting_->setText(tr("Accept “%1”?").arg(QString::fromStdString(f->title)));
  reason_->clear();
  strip_->show();
  reason_->setFocus();
}

void ReportPanel::accept() {
  const QString reason = reason_->text().simplified();
  if (reason.isEmpty()) {
    reason_->setPlaceholderText(tr("A reason is needed: it is printed on the sheet"));
    return reason_->setFocus();
  }
  strip_->hide();
  browser_->setFocus();
  document_.commit(
      edit::with_acceptance(document_.committed(), {finding_.toStdString(), reason.toStdString()}),
      tr("Finding accepted"));
}

}  // namespace underlawn
