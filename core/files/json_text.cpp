// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/json_text.h"

#include <algorithm>
#include <set>

#include "base/say.h"
#include "base/typed_text.h"
#include "base/utf8.h"

namespace underlawn {

namespace {

std::string leaf(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// A name of a key as JSON text.
std::string key_text(const std::string& key) {
  return leaf(Json(key)) + ": ";
}

void write_on_one_line(std::string& out, const Json& json) {
  if (!json.is_structured()) {
    out += leaf(json);
    return;
  }
  out += json.is_object() ? '{' : '[';
  bool first = true;
  for (const auto& [key, value] : json.items()) {
    if (!first) out += ", ";
    first = false;
    if (json.is_object()) out += key_text(key);
    write_on_one_line(out, value);
  }
  out += json.is_object() ? '}' : ']';
}

bool has_only_plain_values(const Json& json) {
  return std::none_of(json.begin(), json.end(), [](const Json& value) { return value.is_structured(); });
}

void write_over_lines(std::string& out, const Json& json, std::size_t indent) {
  if (!json.is_structured() || json.empty() || (json.is_array() && has_only_plain_values(json))) {
    write_on_one_line(out, json);
    return;
  }
  const std::string margin(indent + 2, ' ');
  out += json.is_object() ? "{" : "[";
  const char* comma = "\n";
  for (const auto& [key, value] : json.items()) {
    out += comma + margin;
    comma = ",\n";
    if (json.is_object()) {
      out += key_text(key);
      write_over_lines(out, value, indent + 2);
    } else {
      write_on_one_line(out, value);
    }
  }
  out += "\n" + std::string(indent, ' ') + (json.is_object() ? "}" : "]");
}

struct Place {
  std::size_t line = 1, column = 1;  // column in characters
};

Place place_of(std::string_view text, std::size_t byte) {
  Place place;
  for (char c : text.substr(0, byte)) {
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) {
      ++place.column;
    }
  }
  return place;
}

// Reads the text once without keeping it: finds the first error, and what is beyond the bounds, before memory
// is spent.
class Inspector final : public nlohmann::json_sax<Json> {
 public:
  bool null() override { return counted(); }
  bool boolean(bool) override { return counted(); }
  bool number_integer(number_integer_t) override { return counted(); }
  bool number_unsigned(number_unsigned_t) override { return counted(); }
  bool number_float(number_float_t, const string_t&) override { return counted(); }
  bool string(string_t&) override { return counted(); }
  bool binary(binary_t&) override { return counted(); }
  bool start_object(std::size_t) override { return entered(); }
  bool start_array(std::size_t) override { return entered(); }
  bool end_object() override { return left(); }
  bool end_array() override { return left(); }
  bool key(string_t& name) override {
    if (!keys_.back().insert(name).second) twice.insert(name);
    too_many_keys = keys_.back().size() > kMostKeys;
    return !too_many_keys;
  }
  bool parse_error(std::size_t position, const std::string& last,
                   const nlohmann::json::exception& e) override {
    failed_at = position;
    token = last;
    overflow = e.id == 406;
    return false;
  }

  std::size_t failed_at = 0;  // byte, from 1; 0 when nothing failed
  std::string token;
  bool overflow = false;
  bool too_deep = false;
  bool too_many = false;
  bool too_many_keys = false;
  std::set<std::string> twice;

 private:
  bool counted() {
    too_many = ++values_ > kMostValues;
    return !too_many;
  }
  bool entered() {
    keys_.emplace_back();
    too_deep = keys_.size() > static_cast<std::size_t>(kDeepestNesting);
    return !too_deep && counted();
  }
  bool left() {
    keys_.pop_back();
    return true;
  }

  std::size_t values_ = 0;
  std::vector<std::set<std::string>> keys_;
};

Trouble bounds_trouble(const Inspector& found, std::string_view thing) {
  std::string what = say("{} has more than {} values", thing, kMostValues);
  if (found.too_deep) what = say("{} is nested deeper than {} levels", thing, kDeepestNesting);
  if (found.too_many_keys) what = say("{} has an object with more than {} keys", thing, kMostKeys);
  return {"file_beyond_bounds", what, "", "", say("It is no plan, or one traced with far too many points.")};
}

Trouble syntax_trouble(const Inspector& found, std::string_view text, std::string_view thing) {
  const std::size_t before = found.failed_at > 0 ? found.failed_at - 1 : 0;
  const Place at = place_of(text, before);
  std::string what;
  if (found.overflow)
    what = say("{} has a number too large to hold in line {}, column {}", thing, at.line, at.column);
  else if (before >= text.size())
    what = say("{} ends too early, in line {}, column {}", thing, at.line, at.column);
  else if (found.token.empty())
    what = say("{} is not JSON from line {}, column {}", thing, at.line, at.column);
  else
    what = say("{} is not JSON from line {}, column {} on, at {}", thing, at.line, at.column,
               in_quotes(found.token));
  return {"not_json", what, "", "", say("Take it from a backup, or mend it there with a text editor.")};
}

std::vector<Trouble> remarks_on(const Inspector& found, std::size_t bad_bytes, std::string_view thing) {
  std::vector<Trouble> remarks;
  if (bad_bytes > 0)
    remarks.push_back(
        {"not_utf8", say("{} has {} bytes that are not UTF-8", std::string(thing), std::to_string(bad_bytes)),
         "", "", say("Each is shown as \uFFFD.")});
  for (const std::string& key : found.twice)
    remarks.push_back({"key_twice", say("the key {}", in_quotes(key)), say_as("a key", "there twice"),
                       say_as("a key", "there once"), say("The last one was taken.")});
  return remarks;
}

}  // namespace

std::string json_to_text(const Json& json) {
  std::string out;
  write_over_lines(out, json, 0);
  return out + "\n";
}

Result<WithRemarks<Json>> json_from_text(std::string_view text, std::string_view thing) {
  if (text.size() > kLargestFile)
    return refuse({"file_too_large", std::string(thing), say("{} bytes long", std::to_string(text.size())),
                   say("at most {}", std::to_string(kLargestFile)),
                   say("It is no plan, or one traced with far too many points.")});
  std::size_t bad_bytes = 0;
  const std::string valid = valid_utf8(text, &bad_bytes);
  Inspector found;
  if (!Json::sax_parse(valid, &found)) {
    const bool bounds = found.too_deep || found.too_many || found.too_many_keys;
    if (bounds) return refuse(bounds_trouble(found, thing));
    return refuse(syntax_trouble(found, valid, thing));
  }
  return WithRemarks<Json>{Json::parse(valid), remarks_on(found, bad_bytes, thing)};
}

}  // namespace underlawn
