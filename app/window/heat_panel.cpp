// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/heat_panel.h"

#include <QLabel>
#include <QPushButton>

#include "window/heat_bound.h"

namespace underlawn {

HeatPanel::HeatPanel(Document& document, QWidget* parent) : Form(document, parent), document_(document) {
  add_soil();
  add_surface();
  add_weather();
  add_house();
  add_unit();
  add_outcome();
  end();
  follow_outcome();
  connect(&document, &Document::replaced, this, [this] {
    probe_.reset();
    emit told({});
  });
  refresh();
}

void HeatPanel::wrong_note(std::function<QString(const Plan&)> words) {
  note(std::move(words))->setObjectName("wrong");
}

QString HeatPanel::figure_line(const char* key) const {
  const Outcome* outcome = document_.outcome();
  const Figure* figure = outcome != nullptr ? outcome->figures.find(key) : nullptr;
  if (figure == nullptr) return {};
  return tr("%1: %2").arg(QString::fromStdString(figure->label),
                          printed(figure->quantity, figure->value, document_.plan()));
}

void HeatPanel::add_outcome() {
  section(tr("What comes of it"));
  note([this](const Plan&) {
    QStringList lines;
    for (const char* key :
         {"heat.last.coldest", "heat.last.warmest", "heat.seasonal", "heat.seasonal_heating",
          "heat.seasonal_cooling", "heat.backup", "heat.unmet_cooling"})
      if (const QString line = figure_line(key); !line.isEmpty()) lines << line;
    return lines.isEmpty() ? tr("No temperatures yet: they need trenches that are laid, and everything above "
                                "without an error.")
                           : lines.join('\n');
  });
}

}  // namespace underlawn
