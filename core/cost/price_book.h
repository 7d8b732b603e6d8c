// SPDX-License-Identifier: GPL-3.0-or-later
// The price book: round figures of our own to begin with, and what the designer made of them.
//
// One truth: what the layout weighs (Prices) are rows of this book, kept with the wishes and nowhere else. A
// pipe's row is that of its size; the price of the size that is laid in coils, or as header, is the one in
// Prices.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/say.h"
#include "cost/packs.h"
#include "cost/pricing.h"
#include "layout/wishes.h"

namespace underlawn {

inline constexpr const char* kOwnFigure = mark("round figure of our own, no source");

std::string pipe_key(std::string_view size);  // "pipe 3/4 in DR 11"
// "tee 3/4 in", "reducer 2 in x 1 in": by nominal sizes. Words: tee, elbow 45, elbow 90, reducer, coupling,
// cap, union.
std::string fitting_key(std::string_view word, std::string_view nominal);

// What is cut off a roll for the buyer costs so many times what a whole roll does, where the book says
// nothing else. A round figure of our own, no source.
inline constexpr double kCutDearer = 1.25;
// The packs of a row with their prices; of a row without a price as if it were 1.
std::vector<Pack> packs_of(const PriceRow& row);

// The row of a key in the usual book; none for a key it does not know.
std::optional<PriceRow> usual_row(std::string_view key);
// All that do not depend on a size, then every pipe size.
const std::vector<std::string>& usual_keys();

// The row as it counts for this plan: the designer's where he changed it, with the price that the layout
// weighs where that is in Prices. A key nobody knows: a row without a price.
PriceRow row_of(const PriceBook& book, const Wishes& wishes, std::string_view key);
// As above, for all that is in the book: usual keys in their order, fittings and items of the designer's own.
std::vector<PriceRow> all_rows(const PriceBook& book, const Wishes& wishes);
bool is_usual(const PriceBook& book, const Wishes& wishes, std::string_view key);
// Whether the layout weighs this price, so that a change may move trenches.
bool weighed_by_layout(const Wishes& wishes, std::string_view key);

// The row goes into book and wishes; what is as usual is not kept.
void set_row(PriceBook& book, Wishes& wishes, PriceRow row);
// As the usual book has it; an item of the designer's own goes.
void reset_row(PriceBook& book, Wishes& wishes, std::string_view key);

// The size of coil or header pipe changes: its price follows from the book, and the one there was is kept in
// the row of the old size.
void set_coil_pipe(PriceBook& book, Wishes& wishes, const std::string& size);
void set_header_pipe(PriceBook& book, Wishes& wishes, const std::string& size);

// The day that prices are told old by: of the offer, or the newest in the book; none: no date anywhere.
std::optional<int> day_of_prices(const PriceBook& book);
bool is_old(const PriceBook& book, const PriceRow& row);

}  // namespace underlawn
