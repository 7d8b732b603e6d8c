// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/becomes_words.h"

#include <QCoreApplication>

namespace underlawn {

QStringList becomes_names() {
  return {QObject::tr("leave out"),     QObject::tr("lot line"),    QObject::tr("house"),
          QObject::tr("drive"),         QObject::tr("septic tank"), QObject::tr("drain field"),
          QObject::tr("reserve field"), QObject::tr("well"),        QObject::tr("tree"),
          QObject::tr("electric line"), QObject::tr("gas line"),    QObject::tr("communication line"),
          QObject::tr("water line"),    QObject::tr("sewer line"),  QObject::tr("reclaimed water line"),
          QObject::tr("easement"),      QObject::tr("no-dig area"), QObject::tr("spot heights")};
}

QString brought_words(const Brought& brought) {
  QStringList parts;
  const QStringList names = becomes_names();
  for (const auto& [becomes, count] : brought.counts) {
    const QString name = names[static_cast<int>(becomes)];
    parts << (becomes == Becomes::lot_line ? name : QString("%1 × %2").arg(count).arg(name));
  }
  return parts.join(", ");
}

QString left_out_words(const std::vector<LeftOut>& all, int most) {
  QStringList lines;
  for (const LeftOut& l : all) {
    if (lines.size() == most) {
      lines << QObject::tr("and more");
      break;
    }
    lines << QString("%1 × %2: %3")
                 .arg(l.count)
                 .arg(QString::fromStdString(l.what), QString::fromStdString(l.why));
  }
  return lines.join('\n');
}

QString raster_words(const Drawing& drawing, UnitSystem units) {
  const RasterTaken& r = *drawing.raster;
  const auto length = [&](double v) {
    return drawing.unit > 0
               ? QString::fromStdString(print_quantity(Quantity::length, drawing.unit * v, units))
               : QObject::tr("%1 units").arg(v, 0, 'g', 4);
  };
  QStringList all;
  all << QObject::tr("Raster of %1 by %2 cells, %3 heights taken.")
             .arg(r.columns)
             .arg(r.rows)
             .arg(drawing.arrived);
  if (r.reach > 0)
    all << QObject::tr("Only what lies within %1 of the middle of the lot was looked at.")
               .arg(QString::fromStdString(print_quantity(Quantity::length, r.reach, units)));
  all << (r.step == 1
              ? QObject::tr("Every cell, a height every %1.").arg(length(r.spacing))
              : QObject::tr(
                    "One cell in %1 along rows and columns, a height every %2: as many as a plan holds.")
                    .arg(r.step)
                    .arg(length(r.spacing)));
  return all.join(' ');
}

}  // namespace underlawn
