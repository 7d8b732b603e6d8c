// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/becomes_words.h"

#include <QCoreApplication>

namespace underlawn {

namespace {

QString tr(const char* words) {
  return QCoreApplication::translate("ImportCard", words);
}

}  // namespace

QStringList becomes_names() {
  return {tr("leave out"),     tr("lot line"),    tr("house"),
          tr("drive"),         tr("septic tank"), tr("drain field"),
          tr("reserve field"), tr("well"),        tr("tree"),
          tr("electric line"), tr("gas line"),    tr("communication line"),
          tr("water line"),    tr("sewer line"),  tr("reclaimed water line"),
          tr("easement"),      tr("no-dig area"), tr("spot heights")};
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
      lines << tr("and more");
      break;
    }
    lines << QString("%1 × %2: %3")
                 .arg(l.count)
                 .arg(QString::fromStdString(l.what), QString::fromStdString(l.why));
  }
  return lines.join('\n');
}

}  // namespace underlawn
