// SPDX-License-Identifier: GPL-3.0-or-later
// Text in lines and fields, as spreadsheets, loggers and weather services write it. Nothing here knows a
// locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

// What all of these return points into the text they were given.

struct TextLine {
  int number = 0;  // in the text, from 1
  std::string_view text;
};

// Lines ended by LF, CR or CR LF; blank ones left out but counted, a byte order mark dropped.
std::vector<TextLine> text_lines(std::string_view text);

// Without blanks and tabs at both ends, then without one pair of double quotes around it.
std::string_view trimmed(std::string_view text);

// Trimmed fields; a separator within double quotes separates nothing.
std::vector<std::string_view> fields_of(std::string_view line, char separator);

// The whole of `text` as a finite number with `mark` for the decimal point; a sign and an exponent may be
// there, separators of thousands may not.
std::optional<double> plain_number(std::string_view text, char mark = '.');

// A-Z as a-z, blanks as _: how names of columns are compared.
std::string folded(std::string_view text);

// A table with a line of column names on top, as read. Lines that start with # and lines of the form
// "name = value" above the table are its settings ("# power_w_m = 5.2" is one too).
struct TextTable {
  struct Setting {
    std::string name;  // folded
    std::string_view value;
    int line = 0;
  };
  std::vector<Setting> settings;
  std::vector<std::string> columns;  // folded
  std::vector<TextLine> rows;
  int header_line = 0;
  char separator = ',';  // of the column names: semicolon, tab or comma, the first of these that is there
  char mark = '.';       // comma where the separator is a semicolon and the first broken number has one
};

// Refuses, as `code` and naming `thing` ("the load file"): no line of column names, text that holds a NUL
// byte, no rows below the names.
Result<TextTable> table_from_text(std::string_view text, const std::string& code, const std::string& thing);

// The place of the column called `name`, or nothing.
std::optional<std::size_t> column_of(const TextTable& table, std::string_view name);

// The fewest digits that read back to the same number.
std::string shortest(double value);

}  // namespace underlawn
