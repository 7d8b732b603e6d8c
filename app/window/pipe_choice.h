// SPDX-License-Identifier: GPL-3.0-or-later
// The pipe sizes there are, as a form offers them.
#pragma once

#include <QStringList>
#include <string>

#include "pipe/pipe_size.h"

namespace underlawn {

inline QStringList pipe_names() {
  QStringList names;
  for (const PipeSize& size : pipe_sizes()) names << QString::fromStdString(size.name);
  return names;
}

// Place in pipe_names(); -1 for a name that is none.
inline int index_of_pipe(const std::string& name) {
  return static_cast<int>(pipe_names().indexOf(QString::fromStdString(name)));
}

}  // namespace underlawn
