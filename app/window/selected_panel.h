// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

#include "window/document.h"
#include "window/selection.h"

namespace underlawn {

class Form;

// Everything about what is selected, edited in place; of several things what they share. The form is made
// anew when something else is selected.
class SelectedPanel : public QScrollArea {
  Q_OBJECT

 public:
  SelectedPanel(Document& document, Selection& selection, QWidget* parent = nullptr);
  void focus_first_field();

 signals:
  void trace_asked(const QString& key);

 private:
  void rebuild();
  void refresh();
  QWidget* make_page();

  Document& document_;
  Selection& selection_;
  struct Shown {
    std::vector<Selected> what;
    std::vector<FeatureKind> kinds;  // of the features among them
    bool operator==(const Shown&) const = default;
  };
  Shown wanted() const;
  Shown shown_;
};

// The pages, one a kind of selected thing.
Form* feature_page(Document& document, int id);
Form* lot_page(Document& document, Selection& selection);
Form* edge_page(Document& document, Selection& selection, int edge);
Form* entry_page(Document& document);
Form* locked_page(Document& document, int index);
Form* height_page(Document& document, int index);
Form* dimension_page(Document& document, int index);

}  // namespace underlawn
