// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/clipboard.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QMimeData>

#include "files/plan_file.h"

namespace underlawn {

namespace {

constexpr const char* kFormat = "application/x-underlawn-things";

}  // namespace

void put_on_clipboard(const Plan& things) {
  auto* data = new QMimeData;  // the clipboard's own from here on
  const QByteArray text = QByteArray::fromStdString(plan_to_text(things));
  data->setData(kFormat, text);
  QGuiApplication::clipboard()->setMimeData(data);
}

std::optional<Plan> things_on_clipboard() {
  const QMimeData* data = QGuiApplication::clipboard()->mimeData();
  if (data == nullptr || !data->hasFormat(kFormat)) return std::nullopt;
  auto plan = plan_from_text(data->data(kFormat).toStdString());
  if (!plan) return std::nullopt;
  const Plan& p = plan->value;
  if (p.site.features.empty() && p.wishes.locked.empty() && p.dimensions.empty() && p.site.heights.empty())
    return std::nullopt;
  return std::move(plan->value);
}

}  // namespace underlawn
