// SPDX-License-Identifier: GPL-3.0-or-later
// Comma-separated values by RFC 4180: fields in double quotes may hold separators, line breaks and, doubled,
// quotes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace underlawn {

struct CsvRow {
  int line = 0;  // of the text, from 1, where it begins
  std::vector<std::string> fields;
};

struct CsvTable {
  char separator = ',';  // semicolon or tab where the first row has more of these
  std::vector<CsvRow> rows;
};

// A byte order mark is dropped, rows without any text are left out; lines end in LF, CR LF or CR. Refused, as
// `code` and naming `thing`: a quote that is never closed, text behind a closing quote, a NUL byte, text that
// is no UTF-8, more than `most_rows` rows.
Result<CsvTable> csv_from_text(std::string_view text, const std::string& code, const std::string& thing,
                               std::size_t most_rows = 100'000);

// A field as written: in quotes where it has to be.
std::string csv_field(std::string_view text, char separator = ',');
// Fields with commas between, ended by CR LF.
std::string csv_line(const std::vector<std::string>& fields);

}  // namespace underlawn
