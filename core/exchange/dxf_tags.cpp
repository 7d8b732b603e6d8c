// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/dxf_tags.h"

#include <charconv>
#include <cstdint>
#include <cstring>

#include "base/say.h"

namespace underlawn {

namespace {

constexpr std::string_view kSentinel("AutoCAD Binary DXF\r\n\x1a\0", 22);
constexpr int kLowestCode = -5, kHighestCode = 1071;

Trouble no_dxf(std::string thing) {
  return {"not_a_dxf", std::move(thing), "", "", say("Save it as DXF from the program that drew it.")};
}

Trouble too_many() {
  return {"dxf_too_large", say("Number of values in the DXF file"), say("over {}", kMostDxfTags),
          say("at most {}", kMostDxfTags), say("Save only the part of the drawing that holds the lot.")};
}

std::string_view trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t") - from + 1);
}

// ---- text ----

class Lines {
 public:
  explicit Lines(std::string_view bytes) : rest_(bytes) {
    if (rest_.substr(0, 3) == "\xef\xbb\xbf") rest_.remove_prefix(3);
  }
  bool next(std::string_view& line) {
    if (rest_.empty()) return false;
    const std::size_t end = rest_.find_first_of("\r\n");
    line = rest_.substr(0, end);
    const std::size_t step = end == std::string_view::npos    ? rest_.size()
                             : rest_.substr(end, 2) == "\r\n" ? end + 2
                                                              : end + 1;
    rest_.remove_prefix(step);
    ++number;
    return true;
  }
  long number = 0;

 private:
  std::string_view rest_;
};

bool code_of(std::string_view line, int& code) {
  line = trimmed(line);
  const auto [end, error] = std::from_chars(line.data(), line.data() + line.size(), code);
  return error == std::errc() && end == line.data() + line.size() && code >= kLowestCode &&
         code <= kHighestCode;
}

Result<DxfTags> from_text(std::string_view bytes) {
  DxfTags out;
  Lines lines(bytes);
  std::string_view line, value;
  while (lines.next(line)) {
    int code = 0;
    if (!code_of(line, code)) {
      if (trimmed(line).empty() && out.ended) continue;
      if (out.tags.empty() && lines.number > 2)
        return refuse(no_dxf(say("the file is no DXF drawing: it does not begin with group codes")));
      if (out.damages++ == 0) out.first_damage = lines.number;
      continue;
    }
    if (!lines.next(value)) break;
    if (code == 0) value = trimmed(value);
    if (out.tags.size() >= kMostDxfTags) return refuse(too_many());
    out.tags.push_back({code, value});
    if (code == 0 && value == "EOF") {
      out.ended = true;
      break;
    }
  }
  return out;
}

// ---- binary ----

enum class Form { text, real, int16, int32, int64, byte, chunk };

Form form_of(int code) {
  if (code == 1004 || (code >= 310 && code <= 319)) return Form::chunk;
  if ((code >= 10 && code <= 59) || (code >= 110 && code <= 149) || (code >= 210 && code <= 239) ||
      (code >= 460 && code <= 469) || (code >= 1010 && code <= 1059))
    return Form::real;
  if ((code >= 60 && code <= 79) || (code >= 170 && code <= 179) || (code >= 270 && code <= 289) ||
      (code >= 370 && code <= 389) || (code >= 400 && code <= 409) || (code >= 1060 && code <= 1070))
    return Form::int16;
  if ((code >= 90 && code <= 99) || (code >= 420 && code <= 429) || (code >= 440 && code <= 459) ||
      code == 1071)
    return Form::int32;
  if (code >= 160 && code <= 169) return Form::int64;
  return code >= 290 && code <= 299 ? Form::byte : Form::text;
}

class Bytes {
 public:
  explicit Bytes(std::string_view all) : all_(all), at_(kSentinel.size()) {}
  std::size_t at() const { return at_; }
  bool done() const { return at_ >= all_.size(); }

  template <class T>
  bool number(T& value) {
    if (at_ + sizeof(T) > all_.size()) return false;
    std::memcpy(&value, all_.data() + at_, sizeof(T));
    at_ += sizeof(T);
    return true;
  }
  bool text(std::string_view& value) {
    const std::size_t end = all_.find('\0', at_);
    if (end == std::string_view::npos) return false;
    value = all_.substr(at_, end - at_);
    at_ = end + 1;
    return true;
  }
  bool skip(std::size_t n) {
    at_ += n;
    return at_ <= all_.size();
  }
  bool wide_codes() const { return all_.size() > at_ + 1 && all_[at_] == 0 && all_[at_ + 1] == 0; }

 private:
  std::string_view all_;
  std::size_t at_;
};

bool read_code(Bytes& in, bool wide, int& code) {
  std::uint8_t narrow = 255;
  if (!wide && !in.number(narrow)) return false;
  code = narrow;
  if (!wide && narrow != 255) return true;
  std::int16_t both = 0;
  if (!in.number(both)) return false;
  code = both;
  return code >= kLowestCode && code <= kHighestCode;
}

template <class T>
bool read_as(Bytes& in, std::string& text) {
  T value{};
  if (!in.number(value)) return false;
  char digits[40];
  text.assign(digits, std::to_chars(digits, digits + sizeof digits, value).ptr);
  return true;
}

bool read_value(Bytes& in, Form form, DxfTags& out, std::string_view& value) {
  if (form == Form::text) return in.text(value);
  std::string& made = out.made->emplace_back();
  std::uint8_t size = 0;
  const bool good = form == Form::real    ? read_as<double>(in, made)
                    : form == Form::int16 ? read_as<std::int16_t>(in, made)
                    : form == Form::int32 ? read_as<std::int32_t>(in, made)
                    : form == Form::int64 ? read_as<std::int64_t>(in, made)
                    : form == Form::byte  ? read_as<std::uint8_t>(in, made)
                                          : in.number(size) && in.skip(size);
  value = made;
  return good;
}

Result<DxfTags> from_binary(std::string_view bytes) {
  DxfTags out;
  out.binary = true;
  out.made = std::make_shared<std::deque<std::string>>();
  Bytes in(bytes);
  const bool wide = in.wide_codes();
  while (!in.done() && !out.ended) {
    const std::size_t from = in.at();
    int code = 0;
    std::string_view value;
    if (!read_code(in, wide, code) || !read_value(in, form_of(code), out, value)) {
      // Lengths are not told in binary files: behind damage nothing can be found again.
      out.damages = 1;
      out.first_damage = static_cast<long>(from);
      break;
    }
    if (out.tags.size() >= kMostDxfTags) return refuse(too_many());
    out.tags.push_back({code, value});
    out.ended = code == 0 && value == "EOF";
  }
  return out;
}

}  // namespace

Result<DxfTags> dxf_tags(std::string_view bytes) {
  auto out = bytes.substr(0, kSentinel.size()) == kSentinel ? from_binary(bytes) : from_text(bytes);
  if (!out) return out;
  for (const DxfTag& tag : out->tags)
    if (tag.code == 0 && tag.value == "SECTION") return out;
  return refuse(no_dxf(say("the file is no DXF drawing: it holds no section")));
}

}  // namespace underlawn
