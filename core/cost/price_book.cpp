// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/price_book.h"

#include <algorithm>

#include "dig/dates.h"

namespace underlawn {

namespace {

const PriceRow* kept(const PriceBook& book, std::string_view key) {
  const auto at = std::ranges::find(book.rows, key, &PriceRow::key);
  return at == book.rows.end() ? nullptr : &*at;
}

// The price of the layout that a row stands for.
double Prices::*weighed(const Wishes& wishes, std::string_view key) {
  struct Pair {
    std::string_view key;
    double Prices::*price;
  };
  static constexpr Pair kPairs[] = {
      {"digging", &Prices::digging},   {"hand_crossing", &Prices::hand_crossing},
      {"pavement", &Prices::pavement}, {"lawn", &Prices::lawn},
      {"bedding", &Prices::bedding},   {"joint", &Prices::joint},
      {"crew_day", &Prices::crew_day},
  };
  for (const Pair& p : kPairs)
    if (p.key == key) return p.price;
  if (key == pipe_key(wishes.pipe)) return &Prices::coil_pipe;
  if (key == pipe_key(wishes.header_pipe)) return &Prices::header_pipe;
  return nullptr;
}

PriceRow without_price(PriceRow row) {
  row.price.reset();
  return row;
}

void keep(PriceBook& book, PriceRow row) {
  const auto at = std::ranges::lower_bound(book.rows, row.key, {}, &PriceRow::key);
  if (at != book.rows.end() && at->key == row.key)
    *at = std::move(row);
  else
    book.rows.insert(at, std::move(row));
}

void drop(PriceBook& book, std::string_view key) {
  std::erase_if(book.rows, [&](const PriceRow& r) { return r.key == key; });
}

// "" for the usual name.
PriceRow as_kept(PriceRow row) {
  const auto usual = usual_row(row.key);
  if (usual && usual->item == row.item) row.item.clear();
  return row;
}

void set_pipe(PriceBook& book, Wishes& wishes, std::string Wishes::*which, double Prices::*price,
              const std::string& size) {
  if (size == wishes.*which) return;
  const double now = wishes.prices.*price;
  PriceRow old = row_of(book, wishes, pipe_key(wishes.*which));
  const PriceRow next = row_of(book, wishes, pipe_key(size));
  wishes.*which = size;
  if (next.price) wishes.prices.*price = *next.price;
  old.price = now;
  if (weighed(wishes, old.key) == nullptr) set_row(book, wishes, std::move(old));
}

}  // namespace

std::vector<Pack> packs_of(const PriceRow& row) {
  const double price = row.price.value_or(1);
  std::vector<Pack> packs;
  for (std::size_t i = 0; i < row.packs.size(); ++i)
    packs.push_back({row.packs[i], i < row.pack_prices.size() ? row.pack_prices[i]
                                   : row.packs[i] > 0         ? price
                                                              : kCutDearer * price});
  return packs;
}

PriceRow row_of(const PriceBook& book, const Wishes& wishes, std::string_view key) {
  const auto usual = usual_row(key);
  PriceRow row = usual ? *usual : PriceRow{std::string(key), std::string(key), {}, {}, {}, "", ""};
  if (const PriceRow* own = kept(book, key); own != nullptr && (!usual || own->unit == usual->unit)) {
    const std::string item = own->item.empty() ? row.item : own->item;
    row = *own;
    row.item = item;
  }
  if (double Prices::*price = weighed(wishes, key)) row.price = wishes.prices.*price;
  return row;
}

std::vector<PriceRow> all_rows(const PriceBook& book, const Wishes& wishes) {
  std::vector<PriceRow> rows;
  for (const std::string& key : usual_keys()) rows.push_back(row_of(book, wishes, key));
  for (const PriceRow& own : book.rows)
    if (std::ranges::find(usual_keys(), own.key) == usual_keys().end())
      rows.push_back(row_of(book, wishes, own.key));
  return rows;
}

bool is_usual(const PriceBook& book, const Wishes& wishes, std::string_view key) {
  const auto usual = usual_row(key);
  return usual && row_of(book, wishes, key) == *usual;
}

bool weighed_by_layout(const Wishes& wishes, std::string_view key) {
  return weighed(wishes, key) != nullptr;
}

void set_row(PriceBook& book, Wishes& wishes, PriceRow row) {
  const auto usual = usual_row(row.key);
  double Prices::*price = weighed(wishes, row.key);
  if (price != nullptr) {
    if (row.price) wishes.prices.*price = *row.price;
    // Coils and header of one size have one price.
    if (wishes.pipe == wishes.header_pipe && price == &Prices::coil_pipe)
      wishes.prices.header_pipe = wishes.prices.coil_pipe;
  }
  const bool as_usual =
      usual && (price != nullptr ? without_price(row) == without_price(*usual) : row == *usual);
  if (as_usual) return drop(book, row.key);
  keep(book, as_kept(price != nullptr ? without_price(std::move(row)) : std::move(row)));
}

void reset_row(PriceBook& book, Wishes& wishes, std::string_view key) {
  if (const auto usual = usual_row(key))
    set_row(book, wishes, *usual);
  else
    drop(book, key);
}

void set_coil_pipe(PriceBook& book, Wishes& wishes, const std::string& size) {
  set_pipe(book, wishes, &Wishes::pipe, &Prices::coil_pipe, size);
}

void set_header_pipe(PriceBook& book, Wishes& wishes, const std::string& size) {
  set_pipe(book, wishes, &Wishes::header_pipe, &Prices::header_pipe, size);
}

std::optional<int> day_of_prices(const PriceBook& book) {
  if (const auto offer = day_number(book.date)) return offer;
  std::optional<int> newest;
  for (const PriceRow& row : book.rows)
    if (const auto day = day_number(row.date); day && (!newest || *day > *newest)) newest = day;
  return newest;
}

bool is_old(const PriceBook& book, const PriceRow& row) {
  const auto day = day_number(row.date), now = day_of_prices(book);
  return day && now && *now - *day > book.oldest;
}

}  // namespace underlawn
