// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/csv.h"

#include <algorithm>

#include "base/say.h"

namespace underlawn {

namespace {

char separator_of(std::string_view text) {
  const std::string_view first = text.substr(0, text.find_first_of("\r\n"));
  char best = ',';
  for (char c : {';', '\t'})
    if (std::ranges::count(first, c) > std::ranges::count(first, best)) best = c;
  return best;
}

// Length of the UTF-8 character at the front, 0 where there is none.
std::size_t character_size(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return 1;
  const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < size) return 0;
  for (std::size_t i = 1; i < size; ++i)
    if ((byte(i) & 0xC0) != 0x80) return 0;
  return size;
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t size = character_size(text);
    if (size == 0) return false;
    text.remove_prefix(size);
  }
  return true;
}

class Reader {
 public:
  Reader(std::string_view text, char separator) : text_(text), separator_(separator) {}

  // What is wrong, and where; empty when all was read.
  std::string read(std::vector<CsvRow>& rows, std::size_t most) {
    while (at_ < text_.size()) {
      CsvRow row;
      row.line = line_;
      if (std::string wrong = read_row(row); !wrong.empty()) return wrong;
      if (std::ranges::all_of(row.fields, [](const std::string& f) { return f.empty(); })) continue;
      if (rows.size() == most) return say("more than {} rows", std::to_string(most));
      rows.push_back(std::move(row));
    }
    return "";
  }
  int line() const { return line_; }

 private:
  bool at_end() const { return at_ >= text_.size() || text_[at_] == '\n' || text_[at_] == '\r'; }

  void skip_end() {
    if (at_ >= text_.size()) return;
    at_ += text_.substr(at_).starts_with("\r\n") ? 2 : 1;
    ++line_;
  }

  std::string read_row(CsvRow& row) {
    while (true) {
      std::string field;
      if (std::string wrong = read_field(field); !wrong.empty()) return wrong;
      row.fields.push_back(std::move(field));
      if (at_end()) break;
      ++at_;
    }
    skip_end();
    return "";
  }

  std::string read_field(std::string& field) {
    if (at_ < text_.size() && text_[at_] == '"') return read_quoted(field);
    while (!at_end() && text_[at_] != separator_) field += text_[at_++];
    return "";
  }

  std::string read_quoted(std::string& field) {
    for (++at_; at_ < text_.size(); ++at_) {
      if (text_[at_] == '"') {
        if (!text_.substr(at_ + 1).starts_with('"')) break;
        ++at_;
      }
      line_ += text_[at_] == '\n';
      field += text_[at_];
    }
    if (at_ >= text_.size()) return say("a quote that is never closed");
    ++at_;
    return at_end() || text_[at_] == separator_ ? "" : say("text behind a closing quote");
  }

  std::string_view text_;
  char separator_;
  std::size_t at_ = 0;
  int line_ = 1;
};

}  // namespace

Result<CsvTable> csv_from_text(std::string_view text, const std::string& code, const std::string& thing,
                               std::size_t most_rows) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.find('\0') != std::string_view::npos)
    return refuse({code, thing, say("with a NUL byte"), say_as("what a file is", "text"),
                   say("Save it as CSV, UTF-8.")});
  if (!is_utf8(text))
    return refuse({code, thing, say("in another encoding"), "UTF-8", say("Save it as CSV, UTF-8.")});
  CsvTable table;
  table.separator = separator_of(text);
  Reader reader(text, table.separator);
  if (const std::string wrong = reader.read(table.rows, most_rows); !wrong.empty())
    return refuse({code, say("{}, line {}", thing, std::to_string(reader.line())), wrong,
                   say("as RFC 4180 has it"), say("Quotes within a quoted field are doubled.")});
  return table;
}

std::string csv_field(std::string_view text, char separator) {
  const char special[] = {separator, '"', '\r', '\n', '\0'};
  const bool blank = !text.empty() && (text.front() == ' ' || text.back() == ' ');
  if (!blank && text.find_first_of(special) == std::string_view::npos) return std::string(text);
  std::string field = "\"";
  for (char c : text) {
    if (c == '"') field += '"';
    field += c;
  }
  return field + "\"";
}

std::string csv_line(const std::vector<std::string>& fields) {
  std::string line;
  for (std::size_t i = 0; i < fields.size(); ++i) line += (i == 0 ? "" : ",") + csv_field(fields[i]);
  return line + "\r\n";
}

}  // namespace underlawn
