// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTextBrowser>

#include "window/document.h"
#include "window/selection.h"

namespace underlawn {

// All figures of one thing of the loop: a trench, the header or the run.
class FigureTable : public QTextBrowser {
  Q_OBJECT

 public:
  FigureTable(Document& document, Selected what, QWidget* parent = nullptr);

 signals:
  void trace_asked(const QString& key);

 private:
  void refresh();

  Document& document_;
  Selected what_;
};

// "figure:<key>" in a link that a browser hands out; empty when it is another kind of link.
QString target_of(const QUrl& link, const char* kind);

}  // namespace underlawn
