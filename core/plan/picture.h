// SPDX-License-Identifier: GPL-3.0-or-later
// A picture under the drawing: a scanned plat, an aerial photograph, a page of a PDF. It is looked at and
// traced; nothing is computed from it.
#pragma once

#include <memory>
#include <string>

#include "plane/point.h"

namespace underlawn {

// A long text that copies share, so that a plan and its whole history hold a picture once.
class SharedText {
 public:
  SharedText() = default;
  explicit SharedText(std::string text) {
    if (!text.empty()) text_ = std::make_shared<const std::string>(std::move(text));
  }
  const std::string& text() const {
    static const std::string none;
    return text_ ? *text_ : none;
  }
  bool empty() const { return !text_; }
  bool operator==(const SharedText& other) const { return text_ == other.text_ || text() == other.text(); }

 private:
  std::shared_ptr<const std::string> text_;
};

struct Picture {
  std::string name;       // as the designer calls it: "plat, sheet 2"
  std::string file;       // path beside the plan file, with '/'; of use where `data` is empty
  SharedText data;        // the file itself in base64 (RFC 4648), where it is stored with the plan
  int page = 1;           // of a PDF
  Point at;               // m, where its lower left corner lies
  double width = 50;      // m on the ground
  double height = 50;     // m on the ground
  double turn = 0;        // rad counter-clockwise, about the lower left corner
  double strength = 0.5;  // 0 not to be seen .. 1 as it is
  bool locked = false;    // pointer and keys leave it alone
  bool hidden = false;
  bool on_sheets = false;  // printed under the site plan
  bool operator==(const Picture&) const = default;
};

inline constexpr int kMostPictures = 20;
inline constexpr std::size_t kMostPictureText = 40'000'000;  // base64 of all pictures of a plan together

}  // namespace underlawn
