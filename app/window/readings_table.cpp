// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/readings_table.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <cmath>

#include "files/atomic_file.h"
#include "window/form.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kMostRowsSeen = 10;
constexpr int kMostRows = 500;  // a longer log is read from its file only
enum Column { kTime, kPressure, kTemperature };
constexpr std::size_t kLargestFile = 4 << 20;  // bytes; 20 000 readings are a tenth of it

QString shown(const PressureReading& r, int column, UnitSystem units) {
  if (column == kTime) return ReadingsTable::tr("%1 min").arg(std::round(r.time / 6) / 10);
  if (column == kPressure)
    return QString::fromStdString(print_quantity(Quantity::pressure, r.pressure, units, Fineness::fine));
  return r.temperature ? QString::fromStdString(print_quantity(Quantity::temperature, *r.temperature, units))
                       : QString();
}

// A bare number of a time is minutes.
Result<PressureReading> with_cell(PressureReading r, int column, QString typed, UnitSystem units) {
  typed = typed.trimmed();
  if (column == kTemperature && typed.isEmpty()) {
    r.temperature.reset();
    return r;
  }
  if (column == kTime && std::none_of(typed.begin(), typed.end(), [](QChar c) { return c.isLetter(); }))
    typed += " min";
  const Quantity kinds[] = {Quantity::duration, Quantity::pressure, Quantity::temperature};
  const auto value = parse_quantity(kinds[column], typed.toStdString(), units);
  if (!value) return refuse(value.error());
  if (column == kTime) r.time = *value;
  if (column == kPressure) r.pressure = *value;
  if (column == kTemperature) r.temperature = *value;
  return r;
}

}  // namespace

ReadingsTable::ReadingsTable(Document& document, QWidget* parent)
    : EditedTable(tr("Readings"), {tr("Since shut"), tr("Pressure"), tr("Pipe")}, parent),
      document_(document),
      remove_(new QPushButton(tr("Remove"))) {
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(kGap);
  auto* add = new QPushButton(tr("Add a reading"));
  auto* file = new QPushButton(tr("From CSV…"));
  file->setToolTip(tr(
      "A table whose first line names its columns: time_s, time_min or time_h; pressure_psi, pressure_kpa or "
      "pressure_bar; and, where it was read, temperature_c or temperature_f of the pipe. As "
      "time_min,pressure_psi,temperature_f."));
  for (QPushButton* button : {add, remove_, file}) buttons->addWidget(button);
  buttons->addStretch(1);
  column_->addLayout(buttons);
  connect(add, &QPushButton::clicked, this, &ReadingsTable::add_reading);
  connect(remove_, &QPushButton::clicked, this, &ReadingsTable::remove_reading);
  connect(file, &QPushButton::clicked, this, &ReadingsTable::ask_file);
}

void ReadingsTable::refresh() {
  filling_ = true;
  const auto& readings = document_.plan().test.readings;
  table_->setRowCount(std::min<int>(static_cast<int>(readings.size()), kMostRows));
  for (int i = 0; i < table_->rowCount(); ++i)
    for (int c = 0; c < table_->columnCount(); ++c)
      set_cell(i, c, shown(readings[static_cast<std::size_t>(i)], c, document_.plan().units));
  table_->setVisible(!readings.empty());
  remove_->setEnabled(!readings.empty());
  fit_rows(kMostRowsSeen);
  filling_ = false;
}

void ReadingsTable::enter(std::vector<PressureReading> readings) {
  Plan plan = document_.committed();
  plan.test.readings = std::move(readings);
  const QString wrong = new_trouble(document_.committed(), plan);
  say(wrong);
  if (!wrong.isEmpty()) return;
  document_.commit(std::move(plan), tr("Readings of the test"));
  refresh();
}

void ReadingsTable::take(int row, int column) {
  auto readings = document_.committed().test.readings;
  auto& reading = readings[static_cast<std::size_t>(row)];
  const auto typed = with_cell(reading, column, table_->item(row, column)->text(), document_.plan().units);
  if (!typed) return say(QString::fromStdString(typed.error().message()));
  reading = *typed;
  enter(std::move(readings));
}

// Five minutes after the last, at its pressure: to be typed over.
void ReadingsTable::add_reading() {
  auto readings = document_.committed().test.readings;
  PressureReading next{0, document_.committed().test.working_pressure * kTestRatio, {}};
  if (!readings.empty()) next = {readings.back().time + 300, readings.back().pressure, {}};
  readings.push_back(next);
  enter(std::move(readings));
}

void ReadingsTable::remove_reading() {
  auto readings = document_.committed().test.readings;
  if (readings.empty()) return;
  const int row = table_->currentRow() < 0 ? static_cast<int>(readings.size()) - 1 : table_->currentRow();
  readings.erase(readings.begin() + row);
  enter(std::move(readings));
}

void ReadingsTable::ask_file() {
  const QString path = QFileDialog::getOpenFileName(this, tr("Readings of the test"), {},
                                                    tr("Tables (*.csv *.txt);;All files (*)"));
  if (path.isEmpty()) return;
  const auto text = read_file(path.toStdString(), kLargestFile);
  if (!text) return say(QString::fromStdString(text.error().message()));
  take_text(QByteArray::fromStdString(*text));
}

void ReadingsTable::take_text(const QByteArray& text) {
  auto readings = readings_from_text(std::string_view(text.data(), static_cast<std::size_t>(text.size())));
  if (!readings) return say(QString::fromStdString(readings.error().message()));
  enter(std::move(*readings));
}

}  // namespace underlawn
