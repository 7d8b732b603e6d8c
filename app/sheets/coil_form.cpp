// SPDX-License-Identifier: GPL-3.0-or-later
// Boxes for the coils that are covered before the loop is tested: each is proved alone first, and watched
// until it is covered.
#include "plan/coil_watch.h"
#include "sheets/contents.h"
#include "sheets/form_block.h"
#include "sheets/record_blocks.h"

namespace underlawn::sheet {

BlockPtr coil_form(const RecordFacts& f) {
  const std::vector<CoilWatch> coils = coil_watches(f.plan, f.outcome);
  if (coils.empty()) return nullptr;
  const auto pressure = [&](double pascal) {
    return text_of(print_quantity(Quantity::pressure, pascal, f.plan.units));
  };
  std::vector<FormRow> rows;
  for (const CoilWatch& coil : coils)
    rows.push_back({QObject::tr("Coil %1").arg(coil.trench),
                    QObject::tr("covered: at least %1").arg(pressure(coil.hold.least)),
                    {"", "", "", ""}});
  const CoilHold& first = coils.front().hold;
  return std::make_shared<FormBlock>(
      QObject::tr("COILS PROVED BEFORE THEY ARE COVERED"), QObject::tr("Asked"),
      QStringList{QObject::tr("Held from, to"), QObject::tr("Pressure then"), QObject::tr("When covered"),
                  QObject::tr("Seen by")},
      std::move(rows),
      QObject::tr("Each coil alone and with water, %1 at %2, the gauge up at the edge; let down to %3 before "
                  "any earth comes on it. The other coils are tested with the whole loop. No source gives "
                  "these pressures: they are those of the loop's own test.")
          .arg(lasting(kCoilProved), pressure(first.proved), pressure(first.kept)));
}

}  // namespace underlawn::sheet
