// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTimer>
#include <QWidget>

#include "window/document.h"
#include "window/remedy_service.h"
#include "window/selection.h"

class QFrame;
class QLabel;
class QLineEdit;
class QTextBrowser;
class QUrl;

namespace underlawn {

// The report beside the drawing, always current, with a strip to accept a finding.
class ReportPanel : public QWidget {
  Q_OBJECT

 public:
  ReportPanel(Document& document, Selection& selection, QWidget* parent = nullptr);
  QTextBrowser* browser() const { return browser_; }
  QLineEdit* reason() const { return reason_; }
  void ask_reason(const QString& finding);
  RemedyService& remedies() { return remedies_; }
  void find_remedies();  // what makes room for missing circuits, as a part of the report
  void show_findings();  // from the first that is to be put right, or to be looked at

 signals:
  void trace_asked(const QString& key);
  void panel_asked(const QString& panel);  // "ways" or "size"

 protected:
  void showEvent(QShowEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh_soon();
  void refresh();
  void follow(const QUrl& link);
  void take(std::size_t remedy);
  void point_out(const QString& finding);
  void accept();
  void build_reason_strip();

  Document& document_;
  Selection& selection_;
  RemedyService remedies_;
  std::optional<double> share_;  // of the search for them
  QTextBrowser* browser_;
  QFrame* strip_;
  QLabel* accepting_;
  QLineEdit* reason_;
  QString finding_;
  QString shown_;
  QTimer soon_;
};

// How a number came about, under the report until it is closed. Follows the number as the plan changes.
class TracePane : public QWidget {
  Q_OBJECT

 public:
  explicit TracePane(Document& document, QWidget* parent = nullptr);
  void show_figure(const QString& key);
  QTextBrowser* browser() const { return browser_; }
  QString key() const { return keys_.isEmpty() ? QString() : keys_.back(); }

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void refresh();
  void back();

  Document& document_;
  QTextBrowser* browser_;
  QWidget* back_;
  QStringList keys_;  // the way here
};

}  // namespace underlawn
