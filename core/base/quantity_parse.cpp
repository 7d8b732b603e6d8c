// SPDX-License-Identifier: GPL-3.0-or-later
// Reading what a person typed, by recursive descent:
//   sum     = product { ("+" | "-") product }
//   product = factor { ("*" | "/") factor }
//   factor  = { "+" | "-" } ( "(" sum ")" [unit] | term )
//   term    = number [ unit { ["-"] number [smaller unit] } ]        6'-3 1/2"   1 h 30 min
//   number  = decimal | whole "/" whole | whole (" " | "-") whole "/" whole
#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "base/quantity.h"
#include "base/say.h"
#include "base/typed_text.h"
#include "base/units.h"

namespace underlawn {

namespace {

constexpr std::size_t kLongestText = 200;  // bytes
constexpr int kDeepest = 20;               // parentheses within parentheses
constexpr double kFoot = 0.3048;
constexpr double kInch = 0.0254;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// How many bytes of `text` the symbol takes, 0 when it is not there. A blank in the symbol matches any
// blanks.
std::size_t match(std::string_view symbol, std::string_view text) {
  std::size_t at = 0;
  for (char c : symbol) {
    if (c == ' ') {
      while (at < text.size() && text[at] == ' ') ++at;
      continue;
    }
    if (at >= text.size() || lower(text[at]) != lower(c)) return 0;
    ++at;
  }
  const bool cut_word = at < text.size() && is_letter(symbol.back()) && is_letter(text[at]);
  return cut_word ? 0 : at;
}

// A number, in SI when it has a unit. `power` says what it is: 0 a plain number, 1 the quantity asked for,
// or, where that is an area or a volume, the power of a length.
struct Value {
  double v = 0;
  int power = 0;
};

class Reader {
 public:
  Reader(Quantity q, std::string_view text, UnitSystem system)
      : quantity_(q), original_(text), typed_(typed_text(text)), text_(typed_.plain), system_(system) {}

  Result<double> read();

 private:
  struct Number {
    double v = 0;
    bool whole = false;
  };
  struct Found {
    double factor = 1;
    double offset = 0;
    int power = 1;
    std::size_t size = 0;
  };

  Value sum(int depth);
  Value product(int depth);
  Value factor(int depth, bool fraction_allowed);
  Value term(double sign, bool fraction_allowed);
  Value added(Value a, Value b, double sign, std::size_t at);
  Value multiplied(Value a, Value b, std::size_t at);
  Value divided(Value a, Value b, std::size_t at);
  double number(bool fraction_allowed);
  Number decimal();
  std::optional<double> fraction_at(std::size_t at, std::size_t& end) const;
  void fraction_behind(Number& n, bool fraction_allowed);
  void smaller_units(Value& value, Found unit);
  bool take_joining_hyphen();
  std::optional<Found> unit_here() const;
  Value with_bare_unit(Value value) const;

  int target_power() const;
  int power_of(Quantity q) const;
  bool is_lengthy() const { return quantity_ == Quantity::length || quantity_ == Quantity::diameter; }
  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  std::size_t whole_number_end(std::size_t at) const;
  void skip_blanks();
  bool take(char c);
  void fail(std::size_t at, std::string why);
  Trouble trouble() const;

  Quantity quantity_;
  std::string_view original_;
  TypedText typed_;
  std::string_view text_;
  UnitSystem system_;
  std::size_t at_ = 0;
  std::optional<std::pair<std::size_t, std::string>> failed_;  // where, why; the first one counts
};

void Reader::fail(std::size_t at, std::string why) {
  if (!failed_) failed_ = {at, std::move(why)};
  at_ = text_.size();  // nothing more is read
}

void Reader::skip_blanks() {
  while (peek() == ' ') ++at_;
}

bool Reader::take(char c) {
  skip_blanks();
  if (peek() != c) return false;
  ++at_;
  return true;
}

// What a unit of q counts for here; 0: not at all. Areas may be typed as products of lengths, volumes of
// both.
int Reader::power_of(Quantity q) const {
  if (q == quantity_) return target_power();
  const bool volume = quantity_ == Quantity::volume;
  if (q == Quantity::length) return volume || is_lengthy() || quantity_ == Quantity::area ? 1 : 0;
  return q == Quantity::area && volume ? 2 : 0;
}

int Reader::target_power() const {
  return quantity_ == Quantity::area ? 2 : quantity_ == Quantity::volume ? 3 : 1;
}

std::optional<Reader::Found> Reader::unit_here() const {
  std::size_t at = at_;
  while (at < text_.size() && text_[at] == ' ') ++at;
  Found best;
  for (const Unit& u : units()) {
    const int power = power_of(u.quantity);
    if (power == 0) continue;
    const std::size_t size = match(u.symbol, text_.substr(at));
    if (size == 0 || at - at_ + size <= best.size) continue;
    best = {u.factor, u.offset, power, at - at_ + size};
  }
  if (best.size == 0) return std::nullopt;
  return best;
}

std::size_t Reader::whole_number_end(std::size_t at) const {
  while (at < text_.size() && is_digit(text_[at])) ++at;
  return at;
}

// "1234", "12.5", "12,5", ".5", "1e-3".
Reader::Number Reader::decimal() {
  const std::size_t start = at_;
  std::string digits;
  at_ = whole_number_end(at_);
  digits.append(text_.substr(start, at_ - start));
  Number n{0, true};
  if (peek() == '.' || peek() == ',') {
    const std::size_t mark = at_++;
    const std::size_t end = whole_number_end(at_);
    const bool thousands = text_[mark] == ',' && system_ == UnitSystem::us && end - at_ == 3 &&
                           digits.size() <= 3 && !digits.empty() && digits[0] != '0';
    if (thousands) fail(mark, say("a comma before three digits can mean thousands or thousandths"));
    digits.append(".").append(text_.substr(mark + 1, end - mark - 1));
    at_ = failed_ ? at_ : end;
    n.whole = false;
  }
  const std::size_t sign = peek() == 'e' && (peek(1) == '+' || peek(1) == '-') ? 1 : 0;
  if ((peek() == 'e' || peek() == 'E') && is_digit(peek(1 + sign))) {
    const std::size_t end = whole_number_end(at_ + 1 + sign);
    digits.append(text_.substr(at_, end - at_));
    at_ = end;
    n.whole = false;
  }
  const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), n.v);
  if (read.ec == std::errc::result_out_of_range)
    fail(start, say("a number too large or too small to hold"));
  else if (read.ec != std::errc())
    fail(start, say("not a number"));
  return n;
}

// "1/2" with nothing between: only then it is a fraction and not a quotient.
std::optional<double> Reader::fraction_at(std::size_t at, std::size_t& end) const {
  const std::size_t slash = whole_number_end(at);
  if (slash == at || slash >= text_.size() || text_[slash] != '/') return std::nullopt;
  end = whole_number_end(slash + 1);
  if (end == slash + 1 || slash - at > 4 || end - slash > 5) return std::nullopt;
  double top = 0, bottom = 0;
  std::from_chars(text_.data() + at, text_.data() + slash, top);
  std::from_chars(text_.data() + slash + 1, text_.data() + end, bottom);
  if (bottom <= top) return std::nullopt;
  return top / bottom;
}

// The "1/2" of "3 1/2" or, in a length, "3-1/2".
void Reader::fraction_behind(Number& n, bool fraction_allowed) {
  if (!fraction_allowed || !n.whole) return;
  std::size_t at = at_;
  while (at < text_.size() && text_[at] == ' ') ++at;
  if (at == at_ && is_lengthy() && peek() == '-') ++at;
  std::size_t end = 0;
  if (at == at_) return;
  if (const auto part = fraction_at(at, end)) {
    n.v += *part;
    at_ = end;
  }
}

double Reader::number(bool fraction_allowed) {
  skip_blanks();
  if (!is_digit(peek()) && !((peek() == '.' || peek() == ',') && is_digit(peek(1)))) {
    fail(at_, at_ < text_.size() ? say("not a number") : say("a number is missing"));
    return 0;
  }
  std::size_t end = 0;
  if (fraction_allowed)
    if (const auto part = fraction_at(at_, end)) {
      at_ = end;
      return *part;
    }
  Number n = decimal();
  fraction_behind(n, fraction_allowed);
  return n.v;
}

// The hyphen of 6'-3". With blanks on both sides it is a minus.
bool Reader::take_joining_hyphen() {
  const bool blank_before = peek() == ' ';
  skip_blanks();
  const bool joins = peek() == '-' && !(blank_before && peek(1) == ' ');
  if (joins) ++at_;
  return joins;
}

// Further numbers of one term: the inches of 6'-3", the minutes of 1 h 30 min.
void Reader::smaller_units(Value& value, Found unit) {
  while (!failed_) {
    const std::size_t before = at_;
    const bool feet = unit.factor == kFoot && unit.power == 1;
    const bool hyphen = feet && take_joining_hyphen();
    skip_blanks();
    const std::size_t start = at_;
    if (!is_digit(peek()) && !(peek() == '.' && is_digit(peek(1)))) {
      at_ = before;
      return;
    }
    const double n = number(true);
    std::optional<Found> next = unit_here();
    if (!next && feet) next = Found{kInch, 0, 1, 0};
    // Only inches below twelve are joined by a hyphen: 12'-6' and 12'-18" are differences.
    if (hyphen && !(next && next->factor == kInch && n < 12)) {
      at_ = failed_ ? text_.size() : before;
      return;
    }
    if (!next || next->factor >= unit.factor || next->power != unit.power) {
      fail(start, say("not a number with a smaller unit than that before it"));
      return;
    }
    value.v += n * next->factor;
    at_ += next->size;
    unit = *next;
  }
}

Value Reader::term(double sign, bool fraction_allowed) {
  Value value{number(fraction_allowed), 0};
  if (failed_) return value;
  const auto unit = unit_here();
  if (!unit) return {sign * value.v, 0};
  at_ += unit->size;
  if (unit->offset != 0) return {sign * value.v * unit->factor + unit->offset, unit->power};
  value = {value.v * unit->factor, unit->power};
  smaller_units(value, *unit);
  return {sign * value.v, value.power};
}

Value Reader::factor(int depth, bool fraction_allowed) {
  double sign = 1;
  for (skip_blanks(); peek() == '-' || peek() == '+'; skip_blanks()) {
    if (peek() == '-') sign = -sign;
    ++at_;
  }
  const std::size_t start = at_;
  if (!take('(')) return term(sign, fraction_allowed);
  if (depth >= kDeepest) {
    fail(start, say("nested too deep"));
    return {};
  }
  Value value = sum(depth + 1);
  if (!failed_ && !take(')')) fail(at_, say("where a ) is missing"));
  if (failed_) return value;
  value.v *= sign;
  const auto unit = value.power == 0 ? unit_here() : std::nullopt;
  if (!unit) return value;
  at_ += unit->size;
  return {value.v * unit->factor + unit->offset, unit->power};
}

Value Reader::multiplied(Value a, Value b, std::size_t at) {
  const Value value{a.v * b.v, a.power + b.power};
  const bool absolute = quantity_ == Quantity::temperature && value.power > 0;
  if (value.power > target_power() || absolute) fail(at, say("a product that makes no sense here"));
  return value;
}

Value Reader::divided(Value a, Value b, std::size_t at) {
  const bool plain = b.power == 0;
  const bool absolute = quantity_ == Quantity::temperature && a.power > 0;
  if (b.v == 0)
    fail(at, say("a division by zero"));
  else if (absolute || (!plain && a.power <= b.power))
    fail(at, say("a quotient that makes no sense here"));
  if (failed_) return {};
  return {a.v / b.v, a.power - b.power};
}

Value Reader::with_bare_unit(Value value) const {
  const ShownUnit& unit = bare_unit(quantity_, system_);
  return {value.v * unit.factor + unit.offset, target_power()};
}

Value Reader::added(Value a, Value b, double sign, std::size_t at) {
  if (a.power == 0 && b.power != 0) a = with_bare_unit(a);
  if (b.power == 0 && a.power != 0) b = with_bare_unit(b);
  const bool absolute = quantity_ == Quantity::temperature && a.power > 0;
  if (a.power != b.power || absolute) fail(at, say("a sum of things that cannot be added"));
  return {a.v + sign * b.v, a.power};
}

Value Reader::product(int depth) {
  Value value = factor(depth, true);
  while (!failed_) {
    skip_blanks();
    const std::size_t at = at_;
    if (take('*'))
      value = multiplied(value, factor(depth, true), at);
    else if (take('/'))
      value = divided(value, factor(depth, false), at);
    else
      break;
  }
  return value;
}

Value Reader::sum(int depth) {
  Value value = product(depth);
  while (!failed_) {
    skip_blanks();
    const std::size_t at = at_;
    if (take('+'))
      value = added(value, product(depth), 1, at);
    else if (take('-'))
      value = added(value, product(depth), -1, at);
    else
      break;
  }
  return value;
}

Trouble Reader::trouble() const {
  const auto& [at, why] = *failed_;
  const int place = typed_.place[std::min(at, typed_.place.size() - 1)];
  std::string rest(text_.substr(std::min(at, text_.size())));
  std::string bound =
      say("readable as {} throughout, and character {} {} is {}", std::string(quantity_name(quantity_)),
          std::to_string(place), (rest.empty() ? say("(the end)") : in_quotes(rest)), why);
  return {"not_readable", say("{} as typed", std::string(quantity_name(quantity_))), in_quotes(original_),
          std::move(bound), say("Write it like {}.", std::string(quantity_example(quantity_)))};
}

Result<double> Reader::read() {
  Value value = sum(0);
  skip_blanks();
  if (!failed_ && at_ < text_.size())
    fail(at_, is_letter(peek()) ? say("not a unit of this") : say("not understood"));
  if (!failed_ && value.power == 0) value = with_bare_unit(value);
  if (!failed_ && value.power != target_power()) fail(0, say("not of this kind"));
  if (!failed_ && !std::isfinite(value.v)) fail(0, say("a number too large to hold"));
  if (failed_) return refuse(trouble());
  return value.v;
}

}  // namespace

Result<double> parse_quantity(Quantity q, std::string_view text, UnitSystem system) {
  if (text.size() > kLongestText)
    return refuse({"not_readable", say("{} as typed", std::string(quantity_name(q))), in_quotes(text),
                   say("at most {} characters", std::to_string(kLongestText)),
                   say("Write it like {}.", std::string(quantity_example(q)))});
  return Reader(q, text, system).read();
}

}  // namespace underlawn
