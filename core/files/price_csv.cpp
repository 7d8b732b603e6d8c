// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/price_csv.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "base/csv.h"
#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "cost/bill.h"
#include "cost/pricing_troubles.h"
#include "dig/dates.h"
#include "pipe/pipe_size.h"

namespace underlawn {

namespace {

constexpr double kMostPrice = 1e9;
const char* const kColumns[] = {"key", "item", "unit", "pack", "price", "date", "note", "pack_price"};
constexpr std::string_view kCut = "cut";  // among packs: cut to length

// A unit as written, with how many of the book's units it is.
struct Written {
  std::string_view word;
  PriceUnit unit;
  double of;
};
constexpr double kFoot = 0.3048;
constexpr Written kUnits[] = {
    {"each", PriceUnit::each, 1},
    {"ea", PriceUnit::each, 1},
    {"m", PriceUnit::metre, 1},
    {"ft", PriceUnit::metre, kFoot},
    {"foot", PriceUnit::metre, kFoot},
    {"m2", PriceUnit::square_metre, 1},
    {"m\u00b2", PriceUnit::square_metre, 1},
    {"ft2", PriceUnit::square_metre, kFoot* kFoot},
    {"sq_ft", PriceUnit::square_metre, kFoot* kFoot},
    {"ft\u00b2", PriceUnit::square_metre, kFoot* kFoot},
    {"m3", PriceUnit::cubic_metre, 1},
    {"m\u00b3", PriceUnit::cubic_metre, 1},
    {"yd3", PriceUnit::cubic_metre, 0.764554857984},
    {"cu_yd", PriceUnit::cubic_metre, 0.764554857984},
    {"yd\u00b3", PriceUnit::cubic_metre, 0.764554857984},
    {"l", PriceUnit::litre, 1},
    {"gal", PriceUnit::litre, 3.785411784},
    {"kg", PriceUnit::kilogram, 1},
    {"lb", PriceUnit::kilogram, 0.45359237},
    {"h", PriceUnit::hour, 1},
    {"hour", PriceUnit::hour, 1},
    {"day", PriceUnit::day, 1},
};

std::string_view plain_unit(PriceUnit unit, UnitSystem system) {
  const double factor = shown_unit_of(unit, system);
  for (const Written& w : kUnits)
    if (w.unit == unit && std::abs(w.of / factor - 1) < 1e-9) return w.word;
  return "each";
}

// Ten digits: what was typed as 0.67 a foot comes back as 0.67.
std::string short_number(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.10g", value);
  return text;
}

std::string packs_of(const PriceRow& row, double factor) {
  std::string text;
  for (double pack : row.packs)
    text += (text.empty() ? "" : "/") + (pack > 0 ? short_number(pack / factor) : std::string(kCut));
  return text;
}

std::string pack_prices_of(const PriceRow& row, double factor) {
  std::string text;
  for (double price : row.pack_prices) text += (text.empty() ? "" : "/") + short_number(price * factor);
  return text;
}

class CsvReader {
 public:
  CsvReader(const CsvTable& table, UnitSystem system) : table_(table), system_(system) {
    mark_ = table.separator == ';' ? ',' : '.';
  }

  Result<WithRemarks<PriceCsv>> read() {
    if (table_.rows.empty() || !find_columns())
      return refuse({"price_book_no_columns", say("the price book"), say("without them"),
                     say("with columns \"key\" and \"price\""),
                     say("Begin with a line key,item,unit,pack,price,date,note.")});
    if (table_.rows.size() < 2)
      return refuse({"price_book_empty", say("the price book"), say_as("a book", "empty"),
                     say("one row or more"), say("Put prices below the line of column names.")});
    for (std::size_t i = 1; i < table_.rows.size(); ++i) read_row(table_.rows[i]);
    return std::move(out_);
  }

 private:
  bool find_columns() {
    const auto& names = table_.rows.front().fields;
    for (std::size_t c = 0; c < std::size(kColumns); ++c)
      for (std::size_t i = 0; i < names.size(); ++i)
        if (folded(trimmed(names[i])) == kColumns[c]) at_[c] = static_cast<int>(i);
    return at_[0] >= 0 && at_[4] >= 0;
  }

  std::string field(const CsvRow& row, std::size_t column) const {
    const int at = at_[column];
    if (at < 0 || static_cast<std::size_t>(at) >= row.fields.size()) return "";
    return std::string(trimmed(row.fields[static_cast<std::size_t>(at)]));
  }

  void remark(const CsvRow& row, const std::string& what, const std::string& value,
              const std::string& bound) {
    remark("price_row_left_out", row, what, value, bound, say("This row was left out."));
  }
  void remark(const std::string& code, const CsvRow& row, const std::string& what, const std::string& value,
              const std::string& bound, const std::string& advice) {
    out_.remarks.push_back({code, say("{} in line {} of the price book", what, row.line),
                            value.empty() ? say_as("a cell", "empty") : in_quotes(value), bound, advice});
  }

  std::optional<double> number(const std::string& text) const {
    auto value = plain_number(text, mark_);
    if (!value && mark_ == ',') value = plain_number(text, '.');
    return value;
  }

  void read_row(const CsvRow& row) {
    PriceRow price;
    price.key = field(row, 0);
    if (price.key.empty() || price.key.size() > 100)
      return remark(row, say("the key"), price.key, say("a text of 1 to 100 bytes"));
    const auto usual = usual_row(price.key);
    double factor = 1;
    if (!read_unit(row, usual, price, factor)) return;
    if (!read_packs(row, factor, price) || !read_price(row, factor, price)) return;
    sort_packs(price);
    price.item = field(row, 1).substr(0, 200);
    if (price.item.empty()) price.item = usual ? usual->item : price.key;
    price.date = field(row, 5);
    if (!price.date.empty() && !day_number(price.date))
      return remark(row, say("the date"), price.date, say("a day as 2026-03-01"));
    price.note = field(row, 6).substr(0, 500);
    if (!usual && !price.key.starts_with("own"))
      remark("price_key_unknown", row, say("the key"), price.key,
             say("a key that something is counted under, or one that begins with own"),
             say("The row is kept and prices nothing: write the key as the exported book has it."));
    put(row, std::move(price));
  }

  bool read_unit(const CsvRow& row, const std::optional<PriceRow>& usual, PriceRow& price, double& factor) {
    const std::string word = folded(field(row, 2));
    if (word.empty()) {
      price.unit = usual ? usual->unit : PriceUnit::each;
      factor = shown_unit_of(price.unit, system_);
      return true;
    }
    for (const Written& w : kUnits)
      if (w.word == word) {
        price.unit = w.unit;
        factor = w.of;
        if (!usual || usual->unit == w.unit) return true;
        remark(row, say("the unit of {}", usual->item), word,
               say("\"{}\" or the like", std::string(plain_unit(usual->unit, system_))));
        return false;
      }
    remark(row, say("the unit"), word, say("one of each, ft, m, ft2, m2, yd3, m3, gal, l, lb, kg, h, day"));
    return false;
  }

  // Of a cell as 300/500.
  static std::vector<std::string> parts_of(const std::string& text) {
    std::vector<std::string> parts;
    for (std::size_t from = 0; from <= text.size() && !text.empty();) {
      const std::size_t to = std::min(text.find_first_of("/|", from), text.size());
      parts.emplace_back(trimmed(std::string_view(text).substr(from, to - from)));
      from = to + 1;
    }
    return parts;
  }

  bool read_packs(const CsvRow& row, double factor, PriceRow& price) {
    for (const std::string& part : parts_of(field(row, 3))) {
      const bool cut = folded(part) == kCut;
      const auto value = cut ? std::optional(0.0) : number(part);
      if (!value || (!cut && !(*value > 0)) || *value > 1e6 || price.packs.size() == 12) {
        remark(row, say("the pack"), field(row, 3),
               say("up to 12 numbers above 0 and at most 1000000, or cut, as cut/300/500"));
        return false;
      }
      price.packs.push_back(*value * factor);
    }
    return read_pack_prices(row, factor, price);
  }

  bool read_pack_prices(const CsvRow& row, double factor, PriceRow& price) {
    const std::string text = field(row, 7);
    for (const std::string& part : parts_of(text)) {
      const auto value = number(part);
      if (value && *value >= 0 && *value / factor <= kMostPrice) price.pack_prices.push_back(*value / factor);
    }
    if (text.empty() || price.pack_prices.size() == price.packs.size()) return true;
    remark(row, say("the price by the pack"), text, say("a number from 0 to 1000000000 for each pack"));
    return false;
  }

  static void sort_packs(PriceRow& row) {
    std::vector<std::pair<double, double>> all;
    for (std::size_t i = 0; i < row.packs.size(); ++i)
      all.emplace_back(row.packs[i], row.pack_prices.empty() ? 0 : row.pack_prices[i]);
    std::ranges::sort(all);
    for (std::size_t i = 0; i < all.size(); ++i) {
      row.packs[i] = all[i].first;
      if (!row.pack_prices.empty()) row.pack_prices[i] = all[i].second;
    }
  }

  bool read_price(const CsvRow& row, double factor, PriceRow& price) {
    const std::string text = field(row, 4);
    if (text.empty()) {
      say_no_price(row, price.key);
      return true;
    }
    const auto value = number(text);
    if (!value || *value < 0 || *value / factor > kMostPrice) {
      remark(row, say("the price"), text, say("a number from 0 to 1000000000"));
      return false;
    }
    price.price = *value / factor;
    return true;
  }

  void say_no_price(const CsvRow& row, const std::string& key) {
    remark("price_row_without_price", row, say("the price of {}", in_quotes(key)), "",
           say("a number from 0 to 1000000000"),
           weighed_by_layout(Wishes{}, key)
               ? say("The layout weighs this price: the one there was stays.")
               : say("The row was taken without a price, and what the bill takes of it counts for nothing: "
                     "enter a price, or 0 where it is free."));
  }

  void put(const CsvRow& row, PriceRow price) {
    auto& rows = out_.value.rows;
    const auto at = std::ranges::find(rows, price.key, &PriceRow::key);
    if (at == rows.end()) {
      lines_.push_back(row.line);
      rows.push_back(std::move(price));
      return;
    }
    const auto before = static_cast<std::size_t>(at - rows.begin());
    remark("price_key_twice", row, say("the key"), price.key,
           say("once in a price book, and line {} has it too", lines_[before]),
           say("The later line was taken: leave one of them out."));
    lines_[before] = row.line;
    *at = std::move(price);
  }

  const CsvTable& table_;
  UnitSystem system_;
  char mark_;
  int at_[std::size(kColumns)] = {-1, -1, -1, -1, -1, -1, -1, -1};
  WithRemarks<PriceCsv> out_;
  std::vector<decltype(CsvRow::line)> lines_;  // of each of its rows
};

// What is read in other units comes back a rounding away: near enough is the same.
bool near(double a, double b) {
  return std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b));
}

void keep_near(std::vector<double>& values, const std::vector<double>& now) {
  if (values.size() != now.size()) return;
  for (std::size_t i = 0; i < values.size(); ++i)
    if (near(values[i], now[i])) values[i] = now[i];
}

void keep_near(PriceRow& row, const PriceRow& now) {
  if (row.price && now.price && near(*row.price, *now.price)) row.price = now.price;
  keep_near(row.packs, now.packs);
  keep_near(row.pack_prices, now.pack_prices);
}

// Fittings get their rows by the size that is laid: all that a layout may ask for.
std::vector<PriceRow> fittings_of(const PriceBook& book, const Wishes& wishes) {
  std::vector<std::string> sizes;
  for (const PipeSize& size : pipe_sizes())
    if (std::ranges::find(sizes, size.nominal) == sizes.end()) sizes.emplace_back(size.nominal);
  std::vector<PriceRow> rows;
  const auto add = [&](std::string_view word, const std::string& nominal) {
    const std::string key = fitting_key(word, nominal);
    if (usual_row(key)) rows.push_back(row_of(book, wishes, key));
  };
  for (const char* word : {"tee", "elbow 90", "elbow 45", "coupling", "cap", "union"})
    for (const std::string& size : sizes) add(word, size);
  for (std::size_t large = 0; large < sizes.size(); ++large)
    for (std::size_t small = 0; small < large; ++small) add("reducer", sizes[large] + " x " + sizes[small]);
  return rows;
}

std::vector<PriceRow> whole_book(const PriceBook& book, const Wishes& wishes) {
  std::vector<PriceRow> rows = all_rows(book, wishes);
  for (PriceRow& row : fittings_of(book, wishes))
    if (std::ranges::find(rows, row.key, &PriceRow::key) == rows.end()) rows.push_back(std::move(row));
  return rows;
}

}  // namespace

std::string price_csv(const PriceBook& book, const Wishes& wishes, UnitSystem system) {
  std::string text = csv_line({std::begin(kColumns), std::end(kColumns)});
  for (const PriceRow& row : whole_book(book, wishes)) {
    const double factor = shown_unit_of(row.unit, system);
    text += csv_line({row.key, row.item, std::string(plain_unit(row.unit, system)), packs_of(row, factor),
                      row.price ? short_number(*row.price * factor) : "", row.date, row.note,
                      pack_prices_of(row, factor)});
  }
  return text;
}

Result<WithRemarks<PriceCsv>> prices_from_csv(std::string_view text, UnitSystem system) {
  if (text.size() > kMostPriceText)
    return refuse({"price_book_too_large", say("the price book"),
                   say("{} bytes", std::to_string(text.size())),
                   say("at most {} bytes", std::to_string(kMostPriceText)), say("Keep one row an item.")});
  const auto table = csv_from_text(text, "price_book_not_csv", say("the price book"), kMostPriceRows + 1);
  if (!table) return refuse(table.error());
  return CsvReader(*table, system).read();
}

void take_prices(PriceBook& book, Wishes& wishes, const PriceCsv& csv) {
  for (PriceRow row : csv.rows) {
    const auto usual = usual_row(row.key);
    if (usual) keep_near(row, *usual);
    keep_near(row, row_of(book, wishes, row.key));
    set_row(book, wishes, std::move(row));
  }
}

}  // namespace underlawn
