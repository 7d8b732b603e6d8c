// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "ground/probe.h"
#include "window/form.h"

namespace underlawn {

// What the temperatures follow from: soil, weather, house and heat pump.
class HeatPanel : public Form {
  Q_OBJECT

 public:
  explicit HeatPanel(Document& document, QWidget* parent = nullptr);

  // Reads the file and takes it over as one entry; what is wrong with it is told.
  void read_probe(const QString& path);
  void read_weather(const QString& path);
  void read_loads(const QString& path);
  void read_performance(const QString& path);

 signals:
  void told(const QString& words);  // of a file; empty when there is nothing more to say

 private:
  struct Probe {
    QString file;
    ProbeFit fit;
  };

  void add_soil();
  void add_matter();
  void add_typed_soil();
  void add_surface();
  void add_climate();
  void add_weather();
  void add_house();
  void add_design();
  void add_block();
  void add_block_air();
  void add_block_days();
  void add_hours();
  void add_unit();
  void add_limits();
  void add_outcome();

  // A button that asks for a file and gives it to `read`.
  void file_button(const QString& words, const QString& title, const QString& kinds,
                   void (HeatPanel::*read)(const QString&));
  // The file's text, or nothing and the reason told.
  std::optional<std::string> text_of(const QString& path);
  void tell_refused(const QString& path, const Trouble& trouble);
  void tell_remarks(const QString& path, const std::vector<Trouble>& remarks);
  // A note that is an error: the program cannot go on with what is asked.
  void wrong_note(std::function<QString(const Plan&)> words);
  // "Label: value" of a figure of the outcome; empty when it is not there.
  QString figure_line(const char* key) const;

  Document& document_;
  std::optional<Probe> probe_;  // the log read last
};

}  // namespace underlawn
