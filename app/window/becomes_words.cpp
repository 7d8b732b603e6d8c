// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/becomes_words.h"

#include <QCoreApplication>

namespace underlawn {

namespace {}  // namespace

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

}  // namespace underlawn
