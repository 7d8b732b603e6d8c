// SPDX-License-Identifier: GPL-3.0-or-later
#include "cost/bill.h"

#include <algorithm>
#include <cmath>

#include "base/say.h"

namespace underlawn {

namespace {

std::string key_of(std::string_view words) {
  std::string key;
  for (char c : words) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (plain)
      key += c;
    else if (c >= 'A' && c <= 'Z')
      key += static_cast<char>(c - 'A' + 'a');
    else if (!key.empty() && key.back() != '_')
      key += '_';
  }
  while (!key.empty() && key.back() == '_') key.pop_back();
  return key;
}

bool is_material(BillGroup group) {
  return group == BillGroup::pipe || group == BillGroup::fittings || group == BillGroup::goods;
}

// Rolls of one row may have prices of their own.
void set_price(BillLine& line, const PriceRow& row) {
  line.price = row.price;
  line.sum = row.price.value_or(0) * line.bought.amount;
  const bool known = row.price || !row.pack_prices.empty();
  if (!known || !(line.bought.amount > 0) || std::abs(line.bought.paid - line.sum) <= 1e-9 * line.sum) return;
  line.sum = line.bought.paid;
  line.price = line.sum / line.bought.amount;
}

BillLine line_of(const Need& need, const Pricing& pricing, const Wishes& wishes) {
  const PriceRow row = row_of(pricing.book, wishes, need.key);
  BillLine line;
  line.row = need.key;
  line.key = key_of(need.key) + (need.for_coils ? "_coils" : "");
  line.item = row.item;
  line.group = need.group;
  line.unit = row.unit;
  line.needed = need.amount;
  line.bought = bought_of(need, row);
  line.pieces = need.names;
  set_price(line, row);
  line.how = need.how;
  line.from = need.from;
  line.note = row.note;
  line.material = is_material(need.group);
  line.old = is_old(pricing.book, row);
  return line;
}

// Pipe in pieces longer than what is sold is joined.
void add_couplings(std::vector<BillLine>& lines, const BillLine& pipe, const Pricing& pricing,
                   const Wishes& wishes) {
  if (pipe.bought.joins == 0) return;
  const std::string size = pipe.row.substr(pipe_key("").size());
  const std::string nominal = size.substr(0, size.find(" DR"));
  Need need;
  need.key = fitting_key("coupling", nominal);
  need.group = BillGroup::fittings;
  need.amount = pipe.bought.joins;
  need.how = say("in pipe longer than the longest that is sold");
  need.from = {"need." + pipe.key};
  lines.push_back(line_of(need, pricing, wishes));
}

BillLine own_line(const ExtraLine& extra, std::size_t number) {
  BillLine line;
  line.key = "own_" + std::to_string(number);
  line.item = extra.item;
  line.group = BillGroup::own;
  line.unit_text = extra.unit;
  line.needed = extra.amount;
  line.bought = buy(extra.amount, {});
  line.price = extra.price;
  line.sum = extra.price * extra.amount;
  line.how = "typed";  // as Figure::method
  line.material = extra.material;
  return line;
}

void add_up(Bill& bill, const OfferTerms& terms) {
  double taxed = 0;
  for (const BillLine& line : bill.lines) {
    (line.group == BillGroup::own ? bill.own
     : is_material(line.group)    ? bill.materials
                                  : bill.work) += line.sum;
    if (line.material) taxed += line.sum;
  }
  bill.cost = bill.materials + bill.work + bill.own;
  bill.overhead = terms.overhead * bill.cost;
  bill.markup = terms.markup * (bill.cost + bill.overhead);
  const double before = bill.cost + bill.overhead + bill.markup;
  bill.tax = terms.tax * (terms.tax_on == TaxOn::materials ? taxed : before);
  bill.price = before + bill.tax;
}

void take_incentives(Bill& bill, const OfferTerms& terms) {
  double left = bill.price;
  for (const Incentive& i : terms.incentives) {
    double amount = i.kind == IncentiveKind::fixed ? i.amount : i.amount * bill.price;
    if (i.cap) amount = std::min(amount, *i.cap);
    amount = std::clamp(amount, 0.0, std::max(0.0, left));
    bill.incentives.push_back({i.name, amount});
    left -= amount;
  }
  bill.net = left;
}

}  // namespace

double Bill::sum_of(BillGroup group) const {
  double sum = 0;
  for (const BillLine& line : lines)
    if (line.group == group) sum += line.sum;
  return sum;
}

int Bill::without_price() const {
  return static_cast<int>(std::ranges::count_if(lines, [](const BillLine& l) { return !l.price; }));
}

Bill make_bill(const std::vector<Need>& needs, const Pricing& pricing, const Wishes& wishes) {
  Bill bill;
  for (const Need& need : needs) {
    bill.lines.push_back(line_of(need, pricing, wishes));
    const BillLine line = bill.lines.back();
    add_couplings(bill.lines, line, pricing, wishes);
  }
  for (std::size_t i = 0; i < pricing.terms.extras.size(); ++i)
    bill.lines.push_back(own_line(pricing.terms.extras[i], i + 1));
  std::stable_sort(bill.lines.begin(), bill.lines.end(),
                   [](const BillLine& a, const BillLine& b) { return a.group < b.group; });
  add_up(bill, pricing.terms);
  take_incentives(bill, pricing.terms);
  return bill;
}

}  // namespace underlawn
