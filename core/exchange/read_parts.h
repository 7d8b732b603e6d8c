// SPDX-License-Identifier: GPL-3.0-or-later
// The steps of read_drawing, each in its own file.
#pragma once

#include <string>
#include <vector>

#include "exchange/dxf_contents.h"
#include "exchange/read_drawing.h"

namespace underlawn {

class LibrarySession;

// Adds shapes while there is room for them.
class ShapeSink {
 public:
  explicit ShapeSink(Drawing& drawing) : drawing_(drawing) {}
  bool add(Shape shape);  // false when the drawing is full
  bool full() const { return full_; }
  int layer(const std::string& name);  // its index; made when it is not there

 private:
  Drawing& drawing_;
  std::map<std::string, int> layers_;
  long points_ = 0;
  bool full_ = false;
};

// Opens the file called `path` with the driver called so and fills in layers, shapes, `arrived`, and for
// other kinds than DXF `held`, `expected`, place and unit. False where the library refuses it.
bool read_by_library(LibrarySession& session, const std::string& path, const char* driver,
                     double chord_degrees, Drawing& out);

// The second reader of DXF (dxflib), for what the first refuses or loses. `plain` as plain_dxf gives it.
void read_by_dxflib(const std::string& plain, double tolerance, Drawing& out);

Result<Drawing> read_dxf(std::string_view bytes);

Trouble nothing_in_it(DrawingKind kind, const LibrarySession& session);
void take_messages(const LibrarySession& session, Drawing& out);  // into its remarks

// What the bytes themselves say there is, so that no reader loses something unseen; -1 where they do not say.
long counted_in(const DrawingFile& file, DrawingKind kind);

// Drawings without a place: coordinates far from (0, 0) are shifted near it.
void bring_near(Drawing& drawing);

}  // namespace underlawn
