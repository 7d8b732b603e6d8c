// SPDX-License-Identifier: GPL-3.0-or-later
// Files that the heat panel takes over, and what is told of them.
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QPushButton>
#include <QStandardPaths>

#include "files/atomic_file.h"
#include "house/heat_pump_file.h"
#include "house/weather_file.h"
#include "window/heat_panel.h"

namespace underlawn {

namespace {

constexpr std::size_t kLargest = std::size_t{32} << 20;  // bytes; an hourly weather file has two million
constexpr std::size_t kRemarksTold = 3;

}  // namespace

void HeatPanel::file_button(const QString& words, const QString& title, const QString& kinds,
                            void (HeatPanel::*read)(const QString&)) {
  auto* button = new QPushButton(words);
  connect(button, &QPushButton::clicked, this, [this, title, kinds, read] {
    const QString folder = document_.path().isEmpty()
                               ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                               : QFileInfo(document_.path()).absolutePath();
    const QString path =
        QFileDialog::getOpenFileName(window(), title, folder, kinds + ";;" + tr("All files (*)"));
    if (!path.isEmpty()) (this->*read)(path);
  });
  wide(button);
}

std::optional<std::string> HeatPanel::text_of(const QString& path) {
  auto text = read_file(path.toStdString(), kLargest);
  if (text) return std::move(*text);
  tell_refused(path, text.error());
  return std::nullopt;
}

void HeatPanel::tell_refused(const QString& path, const Trouble& trouble) {
  emit told(
      tr("%1 was not taken. %2").arg(QFileInfo(path).fileName(), QString::fromStdString(trouble.message())));
}

void HeatPanel::tell_remarks(const QString& path, const std::vector<Trouble>& remarks) {
  if (remarks.empty()) return emit told({});
  QStringList lines;
  for (std::size_t i = 0; i < std::min(remarks.size(), kRemarksTold); ++i)
    lines << QString::fromStdString(remarks[i].message());
  if (remarks.size() > kRemarksTold)
    lines << tr("And %n more.", "", static_cast<int>(remarks.size() - kRemarksTold));
  emit told(tr("%1 was taken, with remarks. %2").arg(QFileInfo(path).fileName(), lines.join(' ')));
}

// The log gives no heat capacity: that of the soil's make-up goes with it until another is typed.
void HeatPanel::read_probe(const QString& path) {
  const auto text = text_of(path);
  if (!text) return;
  const auto fit = probe_log_from_csv(*text).and_then([](const ProbeLog& log) { return fit_probe(log); });
  if (!fit) return tell_refused(path, fit.error());
  probe_ = Probe{QFileInfo(path).fileName(), *fit};
  Plan plan = document_.committed();
  SoilWishes& soil = plan.thermal.soil;
  if (soil.source == SoilSource::matter) soil.typed.heat_capacity = heat_capacity(soil.matter);
  soil.source = SoilSource::typed;
  soil.typed.conductivity = fit->conductivity;
  document_.commit(std::move(plan), tr("Needle-probe log"));
  refresh();
  emit told({});
}

void HeatPanel::read_weather(const QString& path) {
  const auto text = text_of(path);
  if (!text) return;
  auto weather = weather_from_epw(*text);
  if (!weather) return tell_refused(path, weather.error());
  Plan plan = document_.committed();
  plan.thermal.weather_source = WeatherSource::file;
  plan.thermal.weather_file = std::move(weather->value);
  document_.commit(std::move(plan), tr("Weather file"));
  tell_remarks(path, weather->remarks);
}

void HeatPanel::read_loads(const QString& path) {
  const auto text = text_of(path);
  if (!text) return;
  auto loads = loads_from_csv(*text, QFileInfo(path).completeBaseName().toStdString());
  if (!loads) return tell_refused(path, loads.error());
  Plan plan = document_.committed();
  plan.thermal.load_source = LoadSource::hours;
  plan.thermal.hours = std::move(loads->value);
  document_.commit(std::move(plan), tr("Hourly loads"));
  tell_remarks(path, loads->remarks);
}

void HeatPanel::read_performance(const QString& path) {
  const auto text = text_of(path);
  if (!text) return;
  auto unit = heat_pump_from_csv(*text);
  if (!unit) return tell_refused(path, unit.error());
  Plan plan = document_.committed();
  plan.thermal.unit = std::move(*unit);
  if (plan.thermal.unit.name.empty())
    plan.thermal.unit.name = QFileInfo(path).completeBaseName().toStdString();
  document_.commit(std::move(plan), tr("Performance table"));
  emit told({});
}

}  // namespace underlawn
