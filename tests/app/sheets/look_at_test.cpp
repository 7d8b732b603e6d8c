// SPDX-License-Identifier: GPL-3.0-or-later
// With UNDERLAWN_LOOK_AT set to a folder, leaves there the sheets that a person should look at.
#include <gtest/gtest.h>

#include <QFile>

#include "app/support/laid_out.h"
#include "sheets/dig_sheet.h"
#include "sheets/sheets_out.h"

using namespace underlawn;

TEST(DigSheet, OfEverySampleIsAPdfOnEveryPaper) {
  const QString folder = qEnvironmentVariable("UNDERLAWN_LOOK_AT");
  for (Paper paper : {Paper::letter, Paper::tabloid, Paper::a4, Paper::a3})
    for (laid_out::Sample sample : {laid_out::alder(3), laid_out::half_acre(14)}) {
      if (paper == Paper::a4 || paper == Paper::a3) sample.plan.units = UnitSystem::metric;
      const QByteArray pdf =
          pdf_of(DigSheet(sample.plan, sample.outcome, {paper, std::nullopt, QDate(2026, 5, 4)}));
      EXPECT_TRUE(pdf.startsWith("%PDF-1."));
      if (folder.isEmpty()) continue;
      QFile file(QString("%1/sheet-%2-%3.pdf")
                     .arg(folder, QString::fromStdString(sample.plan.title.project).left(5))
                     .arg(static_cast<int>(paper)));
      ASSERT_TRUE(file.open(QIODevice::WriteOnly));
      file.write(pdf);
    }
}
