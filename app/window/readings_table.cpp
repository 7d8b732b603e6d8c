// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/readings_table.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <cmath>
#include <utility>

#include "files/atomic_file.h"
#include "window/form.h"
#include "window/theme.h"

namespace underlawn {

namespace {

constexpr int kMostRowsSeen = 10;
constexpr int kMostRows = 500;  // a longer log is read from its file only
enum Column { kTime, kPressure, kTemperature };
constexpr std::size_t kLargestFile = 4 << 20;  // bytes; 20 000 readings are a tenth of it

QString shown(const std::optional<double>& value, int column, UnitSystem units) {
  if (!value) return {};
  if (column == kTime) return ReadingsTable::tr("%1 min").arg(std::round(*value / 6) / 10);
  if (column == kPressure)
    return QString::fromStdString(print_quantity(Quantity::pressure, *value, units, Fineness::fine));
  return QString::fromStdString(print_quantity(Quantity::temperature, *value, units));
}

QString shown(const PressureReading& r, int column, UnitSystem units) {
  return shown(column == kTime ? r.time : column == kPressure ? r.pressure : r.temperature, column, units);
}

// A bare number of a time is minutes.
Result<double> value_of(int column, QString typed, UnitSystem units) {
  if (column == kTime && std::none_of(typed.begin(), typed.end(), [](QChar c) { return c.isLetter(); }))
    typed += " min";
  const Quantity kinds[] = {Quantity::duration, Quantity::pressure, Quantity::temperature};
  return parse_quantity(kinds[column], typed.toStdString(), units);
}

Result<PressureReading> with_cell(PressureReading r, int column, const QString& typed, UnitSystem units) {
  if (column == kTemperature && typed.isEmpty()) {
    r.temperature.reset();
    return r;
  }
  const auto value = value_of(column, typed, units);
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
      add_(new QPushButton(tr("Add a reading"))),
      remove_(new QPushButton(tr("Remove"))) {
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(kGap);
  auto* file = new QPushButton(tr("From CSV…"));
  file->setToolTip(tr(
      "A table whose first line names its columns: time_s, time_min or time_h; pressure_psi, pressure_kpa or "
      "pressure_bar; and, where it was read, temperature_c or temperature_f of the pipe. As "
      "time_min,pressure_psi,temperature_f."));
  for (QPushButton* button : {add_, remove_, file}) buttons->addWidget(button);
  buttons->addStretch(1);
  column_->addLayout(buttons);
  connect(add_, &QPushButton::clicked, this, &ReadingsTable::add_reading);
  connect(remove_, &QPushButton::clicked, this, &ReadingsTable::remove_reading);
  connect(file, &QPushButton::clicked, this, &ReadingsTable::ask_file);
  connect(&document, &Document::replaced, this, [this] { blank_.reset(); });
}

bool ReadingsTable::is_blank(int row) const {
  return blank_ && row == table_->rowCount() - 1;
}

void ReadingsTable::refresh() {
  filling_ = true;
  const auto& readings = document_.plan().test.readings;
  const UnitSystem units = document_.plan().units;
  const int rows = std::min<int>(static_cast<int>(readings.size()), kMostRows);
  table_->setRowCount(rows + (blank_ ? 1 : 0));
  for (int i = 0; i < rows; ++i)
    for (int c = 0; c < table_->columnCount(); ++c)
      set_cell(i, c, shown(readings[static_cast<std::size_t>(i)], c, units));
  if (blank_) {
    const std::optional<double> cells[] = {blank_->time, blank_->pressure, blank_->temperature};
    for (int c = 0; c < table_->columnCount(); ++c) set_cell(rows, c, shown(cells[c], c, units));
  }
  table_->setVisible(table_->rowCount() > 0);
  remove_->setEnabled(table_->rowCount() > 0);
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
  if (is_blank(row)) return take_blank(column);
  auto readings = document_.committed().test.readings;
  auto& reading = readings[static_cast<std::size_t>(row)];
  const QString text = table_->item(row, column)->text().trimmed();
  const auto typed = with_cell(reading, column, text, document_.plan().units);
  if (!typed) return say(QString::fromStdString(typed.error().message()));
  reading = *typed;
  enter(std::move(readings));
}

// In any order; it is a reading once time and pressure are there.
void ReadingsTable::take_blank(int column) {
  const QString text = table_->item(table_->rowCount() - 1, column)->text().trimmed();
  std::optional<double>& cell = column == kTime       ? blank_->time
                                : column == kPressure ? blank_->pressure
                                                      : blank_->temperature;
  if (text.isEmpty()) {
    cell.reset();
  } else {
    const auto value = value_of(column, text, document_.plan().units);
    if (!value) return say(QString::fromStdString(value.error().message()));
    cell = *value;
  }
  if (!blank_->time || !blank_->pressure)
    return say(blank_->pressure ? tr("It counts once its time is typed: minutes since the valve was shut.")
                                : tr("It counts once its pressure is typed, as the gauge shows it."));
  auto readings = document_.committed().test.readings;
  readings.push_back({*blank_->time, *blank_->pressure, blank_->temperature});
  const std::optional<Blank> kept = std::exchange(blank_, std::nullopt);
  enter(std::move(readings));
  if (!wrong().isEmpty()) blank_ = kept;  // nothing typed is lost
}

// Blank: what was not read off the gauge is no reading.
void ReadingsTable::add_reading() {
  if (!blank_) blank_ = Blank{};
  refresh();
  say(tr("It counts once its time and its pressure are typed."));
  table_->setFocus();
  table_->setCurrentCell(table_->rowCount() - 1, kTime);
}

void ReadingsTable::remove_reading() {
  auto readings = document_.committed().test.readings;
  const int row = table_->currentRow() < 0 ? table_->rowCount() - 1 : table_->currentRow();
  if (is_blank(row)) {
    blank_.reset();
    say({});
    return refresh();
  }
  if (readings.empty()) return;
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
