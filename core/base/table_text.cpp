// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/table_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/say.h"

namespace underlawn {
namespace {

constexpr std::string_view kBlanks = " \t";

std::string_view without_blanks(std::string_view text) {
  const std::size_t first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

// "# name = value" or "name = value".
std::optional<TextTable::Setting> setting_of(const TextLine& line) {
  std::string_view text = without_blanks(line.text);
  while (!text.empty() && text.front() == '#') text = without_blanks(text.substr(1));
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos) return {};
  return TextTable::Setting{folded(text.substr(0, equals)), trimmed(text.substr(equals + 1)), line.number};
}

char separator_of(std::string_view line) {
  for (char c : {';', '\t'})
    if (line.find(c) != std::string_view::npos) return c;
  return ',';
}

// Which decimal mark the rows use: that of the first field that is a number with one.
char mark_of(const TextTable& table) {
  if (table.separator != ';') return '.';
  for (const TextLine& row : table.rows)
    for (std::string_view field : fields_of(row.text, ';')) {
      if (field.find('.') != std::string_view::npos && plain_number(field, '.')) return '.';
      if (field.find(',') != std::string_view::npos && plain_number(field, ',')) return ',';
    }
  return ',';
}

}  // namespace

std::vector<TextLine> text_lines(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  std::vector<TextLine> lines;
  for (int number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    const std::string_view line = text.substr(0, end);
    if (line.find_first_not_of(kBlanks) != std::string_view::npos) lines.push_back({number, line});
    const bool both = text.substr(end, 2) == "\r\n";
    text.remove_prefix(std::min(text.size(), end + (both ? 2 : 1)));
  }
  return lines;
}

std::string_view trimmed(std::string_view text) {
  text = without_blanks(text);
  if (text.size() >= 2 && text.front() == '"' && text.back() == '"')
    return without_blanks(text.substr(1, text.size() - 2));
  return text;
}

std::vector<std::string_view> fields_of(std::string_view line, char separator) {
  std::vector<std::string_view> fields;
  bool quoted = false;
  std::size_t start = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] == '"') quoted = !quoted;
    if (line[i] != separator || quoted) continue;
    fields.push_back(trimmed(line.substr(start, i - start)));
    start = i + 1;
  }
  fields.push_back(trimmed(line.substr(start)));
  return fields;
}

std::optional<double> plain_number(std::string_view text, char mark) {
  constexpr std::size_t kLongest = 64;
  if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
  if (text.empty() || text.size() > kLongest) return {};
  char digits[kLongest];
  std::size_t size = 0;
  for (char c : text) {
    if (c == '.' && mark != '.') return {};
    digits[size++] = c == mark ? '.' : c;
  }
  double value = 0;
  const auto [end, error] = std::from_chars(digits, digits + size, value);
  if (error != std::errc() || end != digits + size || !std::isfinite(value)) return {};
  return value;
}

std::string folded(std::string_view text) {
  std::string out(trimmed(text));
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == ' ') c = '_';
  }
  return out;
}

Result<TextTable> table_from_text(std::string_view text, const std::string& code, const std::string& thing) {
  if (text.find('\0') != std::string_view::npos)
    return refuse(
        {code, thing, say("not text"), say("lines of text"), say("Save the table as CSV and read that.")});
  TextTable table;
  for (const TextLine& line : text_lines(text)) {
    if (!table.columns.empty()) {
      table.rows.push_back(line);
    } else if (auto setting = setting_of(line)) {
      table.settings.push_back(*setting);
    } else if (without_blanks(line.text).front() != '#') {
      table.separator = separator_of(line.text);
      for (std::string_view name : fields_of(line.text, table.separator))
        table.columns.push_back(folded(name));
      table.header_line = line.number;
    }
  }
  if (table.rows.empty())
    return refuse({code, thing, table.columns.empty() ? say("empty") : say("without rows"),
                   say("a line of column names and rows below it"), say("Export the table again.")});
  table.mark = mark_of(table);
  return table;
}

std::optional<std::size_t> column_of(const TextTable& table, std::string_view name) {
  const auto found = std::find(table.columns.begin(), table.columns.end(), name);
  if (found == table.columns.end()) return {};
  return static_cast<std::size_t>(found - table.columns.begin());
}

std::string shortest(double value) {
  char text[40];
  return {text, std::to_chars(text, text + sizeof text, value).ptr};
}

}  // namespace underlawn
