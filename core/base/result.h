// SPDX-License-Identifier: GPL-3.0-or-later
// What can go wrong, said so that the reader can act on it.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace underlawn {

// A refusal. It names the thing, the value found, the bound it broke and what to do about it.
//   thing  "trench width"             value "-0.30 m"
//   bound  "more than 0 m"            advice "Enter the width of the bucket."
struct Trouble {
  std::string code;  // stable, snake_case: "trench_width_not_positive"
  std::string thing;
  std::string value;
  std::string bound;
  std::string advice;

  // One or two sentences: "Trench width is -0.30 m; it must be more than 0 m. Enter the width of the bucket."
  std::string message() const;
  bool operator==(const Trouble&) const = default;
};

template <class T>
using Result = tl::expected<T, Trouble>;

inline tl::unexpected<Trouble> refuse(Trouble t) {
  return tl::unexpected<Trouble>(std::move(t));
}

// A value that could be had only in part, with what had to be left out or changed.
template <class T>
struct WithRemarks {
  T value;
  std::vector<Trouble> remarks;
};

}  // namespace underlawn
