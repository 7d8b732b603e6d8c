// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/deed_pieces.h"

namespace underlawn::deed {

namespace {

constexpr double kAcre = 43'560 * 0.3048 * 0.3048;

class Splitter {
 public:
  explicit Splitter(const Tokens& t) : t_(t) {}
  Pieces run();

 private:
  bool starts_line(std::size_t at) const { return at == 0 || t_[at].line != t_[at - 1].line; }
  bool is_number(std::size_t at) const { return at < t_.size() && t_[at].kind == Token::Kind::number; }
  bool sign(std::size_t at, char c) const { return at < t_.size() && is_sign(t_[at], c); }
  bool word(std::size_t at, std::initializer_list<std::string_view> words) const {
    return at < t_.size() && is_word(t_[at], words);
  }
  std::size_t behind_list_mark(std::size_t at) const;
  bool has_direction(std::size_t from, std::size_t to) const;
  bool directed(std::size_t at) const;
  bool starts_call(std::size_t at, std::size_t begun);
  bool goes_on(std::size_t at, std::size_t begun);
  void look_at_call(std::size_t begun, std::size_t to);
  void close(std::size_t to);
  void take_area(std::size_t at);
  bool take_unit(std::size_t at);

  const Tokens& t_;
  Pieces pieces_;
  bool prose_ = false;
  std::size_t begun_ = 0;
  // What was seen of the call in hand, so that a call of a thousand lines is looked at once.
  struct Seen {
    std::size_t begun = 0, to = 0;
    bool bearing = false, number_behind = false;
  } seen_;
};

// Behind "1.", "(2)", "3)", "L4", "Course 5:", a bullet; `at` itself where there is none.
std::size_t Splitter::behind_list_mark(std::size_t at) const {
  if (bearing_at(t_, at)) return at;
  if (sign(at, '*') || (sign(at, '-') && starts_line(at))) return at + 1;
  if (sign(at, '(') && is_number(at + 1) && sign(at + 2, ')')) return at + 3;
  if (word(at, {"course", "call", "line", "leg", "l", "c", "no"}) && is_number(at + 1) &&
      !t_[at + 1].decimals) {
    const bool closed = sign(at + 2, ':') || sign(at + 2, '.') || sign(at + 2, ')') || sign(at + 2, '-');
    return at + (closed ? 3 : 2);
  }
  if (!is_number(at) || t_[at].decimals || t_[at].value > 999) return at;
  const bool dot = sign(at + 1, '.') || sign(at + 1, ')') || sign(at + 1, ':');
  if (dot && !t_[at + 1].blank_before && !(sign(at + 1, ':') && is_number(at + 2))) return at + 2;
  if (sign(at + 1, '-') && bearing_at(t_, at + 2)) return at + 2;
  return bearing_at(t_, at + 1) ? at + 1 : at;
}

bool Splitter::directed(std::size_t at) const {
  if (bearing_at(t_, at)) return true;
  if (word(at, {"az", "azimuth", "azm", "due"})) return true;
  const auto angle = angle_at(t_, at);
  return angle && angle->marked;
}

bool Splitter::has_direction(std::size_t from, std::size_t to) const {
  for (std::size_t i = from; i < to; ++i)
    if (directed(i) || (due_at(t_, i) && is_number(i + 1)) || word(i, {"curve", "arc", "radius", "r"}))
      return true;
  return false;
}

// In prose a new line begins a call only where it reads like one and the call before has its direction.
bool Splitter::starts_call(std::size_t at, std::size_t begun) {
  if (word(at, {"thence"})) return !(at > 0 && word(at - 1, {"running"}) && at - 1 == begun);
  const bool listed = behind_list_mark(at) != at;
  const bool apart = at > 0 && (sign(at - 1, ';') || sign(at - 1, ':'));
  if (!starts_line(at) && !(apart && listed) && !sign(at == 0 ? 0 : at - 1, ';')) return false;
  const std::size_t first = behind_list_mark(at);
  const bool reads_so = directed(first) || word(first, {"thence"});
  if (starts_line(at) && !prose_) return !goes_on(at, begun);
  return reads_so && has_direction(begun, at);
}

void Splitter::look_at_call(std::size_t begun, std::size_t to) {
  if (seen_.begun != begun) seen_ = {begun, begun};
  while (seen_.to < to) {
    const auto b = bearing_at(t_, seen_.to);
    if (b) seen_.bearing = true;
    if (!b && seen_.bearing && is_number(seen_.to)) seen_.number_behind = true;
    seen_.to = b ? b->end : seen_.to + 1;
  }
}

// A line that only brings the distance to the bearing on the line before.
bool Splitter::goes_on(std::size_t at, std::size_t begun) {
  const std::size_t first = behind_list_mark(at);
  if (first != at || directed(at) || begun == at) return false;
  look_at_call(begun, at);
  return seen_.bearing && !seen_.number_behind &&
         (is_number(at) || word(at, {"a", "distance", "dist", "for"}));
}

void Splitter::close(std::size_t to) {
  if (to <= begun_) return;
  Piece p{begun_, to, false};
  const std::size_t first = behind_list_mark(begun_);
  p.preamble = word(first, {"beginning", "commencing", "commence", "begin", "starting", "start"}) ||
               (prose_ && pieces_.calls.empty() && !word(begun_, {"thence"}) && !has_direction(begun_, to));
  if (word(first, {"commencing", "commence"})) pieces_.commencing = true;
  if (!p.preamble && first < to) p.from = first;
  pieces_.calls.push_back(p);
  begun_ = to;
}

// "containing 0.50 acres": what comes behind it is not a call.
void Splitter::take_area(std::size_t at) {
  static constexpr std::pair<std::string_view, double> kAreas[] = {{"acre", kAcre},     {"acres", kAcre},
                                                                   {"ac", kAcre},       {"hectares", 10'000},
                                                                   {"hectare", 10'000}, {"ha", 10'000}};
  for (std::size_t i = at; i + 1 < t_.size() && i < at + 40; ++i) {
    if (!is_number(i) || t_[i].doubtful) continue;
    for (const auto& [name, m2] : kAreas)
      if (word(i + 1, {name})) pieces_.stated_area = t_[i].value * m2;
    const bool square = word(i + 1, {"square", "sq"});
    const std::size_t unit = sign(i + 2, '.') ? i + 3 : i + 2;
    if (const auto m = square && unit < t_.size() ? unit_of_length(t_[unit].text) : std::nullopt)
      pieces_.stated_area = t_[i].value * *m * *m;
    if (pieces_.stated_area) return;
  }
}

// "units: chains" on a line of its own.
bool Splitter::take_unit(std::size_t at) {
  if (!starts_line(at) || !word(at, {"unit", "units"})) return false;
  std::size_t i = at + 1;
  while (sign(i, ':') || sign(i, '=') || word(i, {"are", "in"})) ++i;
  const auto unit = i < t_.size() ? unit_of_length(t_[i].text) : std::nullopt;
  if (!unit) return false;
  pieces_.unit = unit;
  return true;
}

Pieces Splitter::run() {
  for (const Token& token : t_) prose_ = prose_ || is_word(token, {"thence"});
  for (std::size_t i = 0; i < t_.size(); ++i) {
    if (take_unit(i)) {
      close(i);
      while (i < t_.size() && t_[i].line == t_[begun_].line) ++i;
      begun_ = i--;
      continue;
    }
    if (word(i, {"containing"})) {
      close(i);
      take_area(i);
      begun_ = t_.size();
      break;
    }
    if (i > begun_ && starts_call(i, begun_)) close(i);
  }
  close(t_.size());
  return std::move(pieces_);
}

}  // namespace

Pieces pieces_of(const PlainDeed& deed) {
  return Splitter(deed.tokens).run();
}

}  // namespace underlawn::deed
