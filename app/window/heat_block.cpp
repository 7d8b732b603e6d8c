// SPDX-License-Identifier: GPL-3.0-or-later
// The house in one block, in the heat panel.
#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>

#include "base/say.h"
#include "window/cells_table.h"
#include "window/heat_bound.h"
#include "window/heat_panel.h"

namespace underlawn {

namespace {

constexpr double kLargestSurface = 100'000;  // m2
constexpr double kLargestU = 10;             // W/(m2 K)

bool by_block(const Plan& p) {
  return p.thermal.load_source == LoadSource::block;
}

bool cooled(const Plan& p) {
  return by_block(p) && p.thermal.block.cooled;
}

Form::Bound<double> block(double BlockHouse::*field, const QString& what) {
  return heat_number(&ThermalWishes::block, field, what);
}

// Floor area and height give the volume; one that a file had typed gives way to them.
Form::Bound<double> of_volume(double BlockHouse::*field, const QString& what) {
  return {[field](const Plan& p) { return p.thermal.block.*field; },
          [field](Plan& p, double v) {
            p.thermal.block.*field = v;
            p.thermal.block.volume = 0;
          },
          what};
}

Surface& surface(Plan& p, std::size_t i) {
  return p.thermal.block.surfaces[i];
}

CellsTable::Column surface_number(const QString& head, Quantity quantity, double Surface::*field,
                                  double high) {
  return {head,
          quantity,
          [field](const Plan& p, std::size_t i) { return p.thermal.block.surfaces[i].*field; },
          [field](Plan& p, std::size_t i, double v) { surface(p, i).*field = v; },
          0,
          high,
          true};
}

CellsTable::Of surfaces_table() {
  CellsTable::Column name;
  name.head = Form::tr("Surface");
  name.get_text = [](const Plan& p, std::size_t i) { return p.thermal.block.surfaces[i].name; };
  name.set_text = [](Plan& p, std::size_t i, std::string text) { surface(p, i).name = std::move(text); };
  return {Form::tr("Surfaces of the house"),
          {name, surface_number(Form::tr("Area"), Quantity::area, &Surface::area, kLargestSurface),
           surface_number(Form::tr("U"), Quantity::u_value, &Surface::u_value, kLargestU)},
          [](const Plan& p) { return p.thermal.block.surfaces.size(); },
          {},
          [](Plan& p) {
            p.thermal.block.surfaces.push_back({say("Surface"), 10, 0.3});
          },
          [](Plan& p, std::size_t i) {
            auto& all = p.thermal.block.surfaces;
            all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
          }};
}

QString result_words(const Plan& p) {
  const auto load = design_load_from_block(p.thermal.block);
  if (!by_block(p) || !load) return {};
  const auto power = [&](double v) { return printed(Quantity::power, v, p); };
  const auto air = [&](double v) { return printed(Quantity::temperature, v, p); };
  const QString loss = Form::tr("Design heat loss %1 at %2; no heat needed above %3.")
                           .arg(power(load->heat_loss), air(load->outdoor_cold), air(load->balance_heating));
  if (!p.thermal.block.cooled) return loss;
  return loss + '\n' +
         Form::tr("Design heat gain %1 at %2; no cooling needed below %3.")
             .arg(power(load->heat_gain), air(load->outdoor_warm), air(load->balance_cooling));
}

}  // namespace

void HeatPanel::add_block() {
  auto* table = new CellsTable(document_, surfaces_table());
  wide(table);
  only_when(by_block);
  on_refresh([table] { table->refresh(); });
  add_block_air();
  add_block_days();
  wrong_note([](const Plan& p) {
    const auto load = design_load_from_block(p.thermal.block);
    return load || !by_block(p) ? QString() : QString::fromStdString(load.error().message());
  });
  note(result_words);
}

void HeatPanel::add_block_air() {
  number(tr("Heated floor area"), Quantity::area,
         of_volume(&BlockHouse::floor_area, tr("Heated floor area")));
  only_when(by_block);
  number(tr("Ceiling height"), Quantity::length,
         of_volume(&BlockHouse::ceiling_height, tr("Ceiling height")));
  only_when(by_block);
  number(tr("Air changes an hour"), Quantity::count, block(&BlockHouse::air_change, tr("Air change")))
      ->edit()
      ->setToolTip(tr("With outdoor air, less what a heat recovery gives back"));
  only_when(by_block);
  number(tr("People and lamps"), Quantity::power, block(&BlockHouse::gains, tr("Gains of the house")))
      ->edit()
      ->setToolTip(tr("In the mean, appliances included"));
  only_when(by_block);
}

void HeatPanel::add_block_days() {
  const auto row = [this](const QString& label, Quantity q, double BlockHouse::*field, const QString& what,
                          bool (*when)(const Plan&)) {
    number(label, q, block(field, what));
    only_when(when);
  };
  const Quantity degrees = Quantity::temperature;
  row(tr("Indoors, heating"), degrees, &BlockHouse::indoor_heating, tr("Indoors, heating"), by_block);
  row(tr("Cold design day"), degrees, &BlockHouse::outdoor_cold, tr("Cold design day"), by_block);
  check(tr("The house is cooled"),
        {[](const Plan& p) { return p.thermal.block.cooled; },
         [](Plan& p, bool on) { p.thermal.block.cooled = on; }, tr("Cooling of the house")});
  only_when(by_block);
  row(tr("Indoors, cooling"), degrees, &BlockHouse::indoor_cooling, tr("Indoors, cooling"), cooled);
  row(tr("Warm design day"), degrees, &BlockHouse::outdoor_warm, tr("Warm design day"), cooled);
  row(tr("Sun through glass"), Quantity::power, &BlockHouse::solar_gains, tr("Sun through glass"), cooled);
  row(tr("Drying the air"), Quantity::power, &BlockHouse::moisture_gains, tr("Drying the air"), cooled);
}

}  // namespace underlawn
