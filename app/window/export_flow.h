// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "base/result.h"

class QWidget;

namespace underlawn {

class Document;
class NoticeBar;

// Asks where to, waits for the layout of the plan as it stands, and writes it. What came of it is said in the
// bar.
void ask_and_export(Document& document, NoticeBar& bar, QWidget* window);

// The form follows from the path's ending (.dxf, .geojson, .gpkg; .csv: the stake-out list).
Result<void> export_to(const Document& document, const QString& path);

}  // namespace underlawn
