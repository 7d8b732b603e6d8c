// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <numbers>

#include "survey/deed_words.h"

namespace underlawn::deed {

namespace {

using std::numbers::pi;

constexpr double kDegree = pi / 180;

// How an angle's numbers are marked. Letters may be glued to the quadrant behind them: 45d30m15se.
enum class Mark { none, degrees, minutes, seconds, dash };

struct Marked {
  Mark mark = Mark::none;
  std::string glued;  // what is left of the word: "e", "w"
};

Marked word_mark(const std::string& word) {
  static constexpr std::pair<std::string_view, Mark> kMarks[] = {
      {"degrees", Mark::degrees}, {"degree", Mark::degrees},  {"degs", Mark::degrees},
      {"deg", Mark::degrees},     {"d", Mark::degrees},       {"minutes", Mark::minutes},
      {"minute", Mark::minutes},  {"mins", Mark::minutes},    {"min", Mark::minutes},
      {"m", Mark::minutes},       {"seconds", Mark::seconds}, {"second", Mark::seconds},
      {"secs", Mark::seconds},    {"sec", Mark::seconds},     {"s", Mark::seconds}};
  for (const auto& [name, mark] : kMarks) {
    if (!word.starts_with(name)) continue;
    const std::string rest = word.substr(name.size());
    if (rest.empty() || rest == "e" || rest == "w" || rest == "east" || rest == "west") return {mark, rest};
  }
  return {};
}

Marked mark_at(const Tokens& t, std::size_t at) {
  if (at >= t.size()) return {};
  if (is_sign(t[at], '^')) return {Mark::degrees, ""};
  if (is_sign(t[at], '\'')) return {Mark::minutes, ""};
  if (is_sign(t[at], '"')) return {Mark::seconds, ""};
  const bool dashes = is_sign(t[at], '-') || is_sign(t[at], ':');
  if (dashes && at + 1 < t.size() && t[at + 1].kind == Token::Kind::number) return {Mark::dash, ""};
  return t[at].kind == Token::Kind::word ? word_mark(t[at].text) : Marked{};
}

// The numbers of an angle, read as far as they go. Between the letters of a quadrant every number belongs to
// the angle; without them a number does only where nothing else can be meant.
class AngleReader {
 public:
  AngleReader(const Tokens& t, std::size_t at, bool in_quadrant) : t_(t), at_(at), quadrant_(in_quadrant) {}

  std::optional<Angle> read();
  const std::string& glued() const { return glued_; }

 private:
  bool take_first();
  bool take_next(int part);
  bool belongs(int part, std::size_t at, const Marked& marked) const;
  void keep(int part, std::size_t at, const Marked& marked);

  const Tokens& t_;
  std::size_t at_;
  bool quadrant_;
  double value_[3] = {0, 0, 0};
  Mark last_ = Mark::none;
  bool marked_ = false, more_ = true;
  int dashes_ = 0;
  std::string glued_;
};

std::optional<Angle> AngleReader::read() {
  if (!take_first()) return std::nullopt;
  for (int part = 1; part < 3 && more_ && take_next(part); ++part) {
  }
  Angle angle;
  angle.radians = (value_[0] + value_[1] / 60 + value_[2] / 3600) * kDegree;
  angle.marked = marked_ || dashes_ >= 2;
  angle.wrong = value_[1] >= 60 ? "minutes" : value_[2] >= 60 ? "seconds" : "";
  angle.end = at_;
  return angle;
}

void AngleReader::keep(int part, std::size_t at, const Marked& marked) {
  value_[part] = t_[at].value;
  last_ = marked.mark;
  glued_ = marked.glued;
  at_ = at + 1;
  if (last_ == Mark::dash) ++dashes_;
  if (last_ == Mark::degrees) marked_ = true;
  if (last_ != Mark::none && last_ != Mark::dash) ++at_;
  more_ = glued_.empty() && !t_[at].decimals;
}

bool AngleReader::take_first() {
  if (at_ >= t_.size() || t_[at_].kind != Token::Kind::number || t_[at_].doubtful) return false;
  Marked marked = mark_at(t_, at_ + 1);
  const bool degrees = marked.mark == Mark::degrees || marked.mark == Mark::dash;
  if (!degrees) marked = {};
  keep(0, at_, marked);
  return true;
}

bool AngleReader::belongs(int part, std::size_t at, const Marked& marked) const {
  const Token& number = t_[at];
  const Mark own = part == 1 ? Mark::minutes : Mark::seconds,
             other = part == 1 ? Mark::seconds : Mark::minutes;
  if (number.doubtful || marked.mark == Mark::degrees || marked.mark == other) return false;
  if (quadrant_ || last_ == Mark::dash) return true;
  if (marked.mark == own) return number.value < 60;
  const bool length = at + 1 < t_.size() && t_[at + 1].kind == Token::Kind::word &&
                      unit_of_length(t_[at + 1].text).has_value();
  if (length || number.value >= 60 || marked.mark == Mark::dash) return false;
  return last_ == Mark::none ? at == at_ : !number.blank_before;
}

bool AngleReader::take_next(int part) {
  std::size_t at = at_;
  while (at < t_.size() && (is_word(t_[at], {"and"}) || is_sign(t_[at], ',') || is_sign(t_[at], '-') ||
                            is_sign(t_[at], ':') || is_sign(t_[at], '.')))
    ++at;
  if (at >= t_.size() || t_[at].kind != Token::Kind::number) return false;
  const Marked marked = mark_at(t_, at + 1);
  if (!belongs(part, at, marked)) return false;
  keep(part, at, marked);
  return true;
}

bool is_north_south(const Token& t) {
  return is_word(t, {"n", "no", "north", "s", "so", "south"});
}

std::size_t over_dots(const Tokens& t, std::size_t at) {
  while (at < t.size() &&
         (is_sign(t[at], '.') || is_sign(t[at], ',') || is_sign(t[at], '-') || is_sign(t[at], '"')))
    ++at;
  return at;
}

double in_quadrant(bool south, bool west, double angle) {
  if (!south) return west && angle > 0 ? 2 * pi - angle : angle;
  return west ? pi + angle : pi - angle;
}

}  // namespace

std::optional<Angle> angle_at(const Tokens& t, std::size_t at) {
  AngleReader reader(t, at, false);
  auto angle = reader.read();
  if (angle && !reader.glued().empty()) return std::nullopt;
  return angle;
}

std::optional<Bearing> bearing_at(const Tokens& t, std::size_t at) {
  if (at >= t.size() || !is_north_south(t[at])) return std::nullopt;
  const bool south = t[at].text[0] == 's';
  AngleReader reader(t, over_dots(t, at + 1), true);
  const auto angle = reader.read();
  if (!angle) return std::nullopt;
  std::size_t end = angle->end;
  std::string side = reader.glued();
  if (side.empty()) {
    end = over_dots(t, end);
    if (end >= t.size() || !is_word(t[end], {"e", "east", "w", "west"})) return std::nullopt;
    side = t[end].text;
    ++end;
    if (end < t.size() && is_sign(t[end], '.') && t[end - 1].text.size() == 1) ++end;
  }
  Bearing bearing;
  bearing.azimuth = in_quadrant(south, side[0] == 'w', angle->radians);
  bearing.wrong = angle->wrong;
  if (bearing.wrong.empty() && angle->radians > pi / 2 + 1e-12) bearing.wrong = "angle";
  bearing.end = end;
  return bearing;
}

std::optional<Bearing> due_at(const Tokens& t, std::size_t at) {
  const bool said = at < t.size() && is_word(t[at], {"due"});
  const std::size_t i = said ? at + 1 : at;
  if (i >= t.size() || t[i].kind != Token::Kind::word) return std::nullopt;
  static constexpr std::pair<std::string_view, double> kDue[] = {
      {"n", 0}, {"north", 0}, {"e", 90}, {"east", 90}, {"s", 180}, {"south", 180}, {"w", 270}, {"west", 270}};
  for (const auto& [word, degrees] : kDue)
    if (t[i].text == word) {
      const bool dot = word.size() == 1 && i + 1 < t.size() && is_sign(t[i + 1], '.');
      return Bearing{degrees * kDegree, said, "", i + (dot ? 2u : 1u)};
    }
  return std::nullopt;
}

std::optional<double> bearing_in(std::string_view text) {
  if (text.size() > 80) return std::nullopt;
  const PlainDeed deed = plain_deed(text);
  const Tokens& t = deed.tokens;
  auto bearing = bearing_at(t, 0);
  if (!bearing) bearing = due_at(t, 0);
  if (bearing && bearing->end == t.size() && bearing->wrong.empty()) return bearing->azimuth;
  const std::size_t first = !t.empty() && is_word(t[0], {"az", "azimuth", "azm"}) ? over_dots(t, 1) : 0;
  const auto angle = angle_at(t, first);
  const bool whole =
      angle && angle->end == t.size() && angle->wrong.empty() && angle->radians <= 2 * pi + 1e-12;
  return whole ? std::optional(angle->radians) : std::nullopt;
}

std::optional<double> rough_direction(std::string_view word) {
  for (std::string_view tail : {"erly", "ern", "wardly", "ward"})
    if (word.size() > tail.size() + 1 && word.ends_with(tail)) {
      word.remove_suffix(tail.size());
      break;
    }
  static constexpr std::pair<std::string_view, double> kWays[] = {
      {"n", 0},    {"north", 0},       {"ne", 45},  {"northeast", 45}, {"e", 90},   {"east", 90},
      {"se", 135}, {"southeast", 135}, {"s", 180},  {"south", 180},    {"sw", 225}, {"southwest", 225},
      {"w", 270},  {"west", 270},      {"nw", 315}, {"northwest", 315}};
  for (const auto& [name, degrees] : kWays)
    if (name == word) return degrees * kDegree;
  return std::nullopt;
}

}  // namespace underlawn::deed
