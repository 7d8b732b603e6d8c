// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <stop_token>

namespace underlawn {

// A stage's last inputs and what it made of them. `serial` changes when the output does, so that later stages
// can name a large output by its serial.
template <class In, class Out>
struct Stage {
  std::optional<In> in;
  Out out{};
  int serial = 0;

  // Runs `make` unless the inputs are those of the last run. An output that was cut short is not kept.
  template <class Make>
  const Out& run(In now, int& count, const std::stop_token& stop, Make make) {
    if (in && *in == now) return out;
    ++count;
    Out made = make(now);
    in.reset();
    if (!stop.stop_requested()) in = std::move(now);
    if (!(made == out)) ++serial;
    out = std::move(made);
    return out;
  }
};

}  // namespace underlawn
