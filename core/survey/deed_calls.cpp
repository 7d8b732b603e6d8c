// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/deed_calls.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/say.h"
#include "survey/call_items.h"
#include "survey/survey.h"

namespace underlawn {

namespace {

using namespace deed;

constexpr double kFoot = 0.3048;
constexpr int kMostPassedShown = 5;
constexpr std::size_t kWordsOfAHeading = 3;
constexpr std::size_t kMostFillers = 24;  // between a bearing and its distance
constexpr double kCurveDegreeRadius =
    18000 / std::numbers::pi * kFoot;  // 100 ft of arc a degree: 5729.578 ft

// Reads a deed call by call.
class DeedReader {
 public:
  DeedReader(std::string_view text, UnitSystem units)
      : deed_(plain_deed(text)), t_(deed_.tokens), units_(units) {}
  DeedReading run();

 private:
  struct Call {
    Piece piece;
    CallItems items;
    std::size_t end = 0;  // before the description of a curve to come
  };

  void read(const Piece& piece);
  void read_straight(const Call& call);
  void read_curve(const Call& call);
  void close_by_words(const Call& call);
  bool is_curve(const Call& call) const;
  bool is_heading(const Piece& piece) const;
  const Item* straight_way(const Call& call) const;
  const Item* straight_distance(const Call& call, const Item* way) const;
  bool directly_behind(const Item& way, const Item& length) const;
  bool after_distance_of(const Item& length) const;
  bool agrees_in_brackets(const Call& call, const Item& distance);
  std::optional<Trouble> wrong_with(const Item& item) const;
  std::optional<CurveGiven> given_by(const Call& call, std::vector<const Item*>& used);
  void take_pending(const Call& call);
  void add_pending_to(CurveGiven& given);

  void refuse_at(std::size_t token, Trouble t) {
    reading_.refusals.push_back({t_[std::min(token, t_.size() - 1)].line, std::move(t)});
  }
  void pass_over(const Call& call, const std::vector<const Item*>& used);
  void keep(const Call& call, Course course);
  std::string of(std::size_t from, std::size_t to) const { return quoted(deed_, from, to); }
  std::string of(const Item& i) const { return of(i.from, i.to); }
  std::string in_line(const std::string& thing, std::size_t token) const {
    return say("{} in line {}", thing, t_[token].line);
  }

  PlainDeed deed_;
  const Tokens& t_;
  UnitSystem units_;
  double bare_ = 1;  // m
  DeedReading reading_;
  bool on_tie_ = false;
  std::optional<double> before_;  // azimuth in which the course before ends
  CurveGiven pending_;            // described at the end of the call before
  bool has_pending_ = false;
};

bool is_number(const Token& t) {
  return t.kind == Token::Kind::number;
}

bool is_filler(const Token& t) {
  if (t.kind == Token::Kind::sign)
    return std::string_view(",:-(=.\"").find(t.text[0]) != std::string_view::npos;
  return is_word(t, {"a", "distance", "dist", "d", "of", "for", "is", "az", "length"});
}

// What is out of bounds in an angle, and the bound, by the word that bearings_in leaves.
std::pair<std::string, std::string> angle_asked(std::string_view wrong) {
  if (wrong == "minutes") return {say("the minutes"), say("below 60")};
  if (wrong == "seconds") return {say("the seconds"), say("below 60")};
  if (wrong == "azimuth") return {say("the azimuth"), say("from 0° to 360°")};
  return {say("the angle"), say("from 0° to 90° between north or south and east or west")};
}

std::optional<Trouble> DeedReader::wrong_with(const Item& item) const {
  if (item.doubtful)
    return Trouble{
        "deed_comma", in_line(say("the number"), item.from), of(item), say("one that means one thing only"),
        say("A comma before three digits can mean thousands or thousandths: write it with a point.")};
  if (item.wrong.empty() && (item.kind != Item::Kind::length || item.value <= kLongestCourse))
    return std::nullopt;
  if (item.kind == Item::Kind::length)
    return Trouble{"deed_length", in_line(say("the length"), item.from), of(item), say("at most 20 km"),
                   say("Check its unit.")};
  const auto [thing, bound] = angle_asked(item.wrong);
  return Trouble{"deed_angle", in_line(thing, item.from), of(item), bound,
                 say("Write it like N 45°30'15\" E.")};
}

const Item* DeedReader::straight_way(const Call& call) const {
  for (bool due : {false, true})
    for (const Item& i : call.items.items)
      if (i.meaning == Meaning::way && i.due == due) return &i;
  return nullptr;
}

bool DeedReader::directly_behind(const Item& way, const Item& length) const {
  if (length.from < way.to || length.from > way.to + kMostFillers) return false;
  for (std::size_t i = way.to; i < length.from; ++i)
    if (!is_filler(t_[i])) return false;
  return true;
}

bool DeedReader::after_distance_of(const Item& length) const {
  for (std::size_t i = length.from; i > 0 && i + 4 > length.from; --i)
    if (is_word(t_[i - 1], {"distance", "dist", "length"})) return true;
  return false;
}

const Item* DeedReader::straight_distance(const Call& call, const Item* way) const {
  const Item* best = nullptr;
  int rank = 0;  // the higher the surer
  for (const Item& i : call.items.items) {
    if (i.kind != Item::Kind::length || (i.meaning != Meaning::distance && i.meaning != Meaning::arc))
      continue;
    const bool direct = way != nullptr && directly_behind(*way, i);
    if (!i.unit && !direct && !after_distance_of(i)) continue;
    const bool behind = way != nullptr && i.from >= way->to;
    const int sure = direct ? 4 : after_distance_of(i) ? 3 : behind ? 2 : 1;
    if (sure <= rank) continue;
    best = &i;
    rank = sure;
  }
  return best;
}

// A call is straight when bearing and distance come before it speaks of a curve.
bool DeedReader::is_curve(const Call& call) const {
  const auto& all = call.items.items;
  const bool of_curve = std::any_of(all.begin(), all.end(), [](const Item& i) {
    return i.meaning != Meaning::way && i.meaning != Meaning::distance && i.meaning != Meaning::unknown;
  });
  const Item* way = straight_way(call);
  const Item* distance = straight_distance(call, way);
  const bool straight_first =
      way != nullptr && distance != nullptr && distance->meaning == Meaning::distance &&
      (!call.items.curve_words || std::max(way->to, distance->to) <= call.items.first_curve_word);
  if (straight_first) return false;
  return of_curve || (call.items.curve_words && way == nullptr);
}

void DeedReader::keep(const Call& call, Course course) {
  course.line = t_[call.piece.from].line;
  course.words = of(call.piece.from, call.end);
  course.tie = on_tie_;
  course.to_beginning = call.items.to_beginning;
  if (course.to_beginning) on_tie_ = false;
  if (course.tie) course.to_beginning = false;
  before_ = course.curve ? course.curve->azimuth_out : course.azimuth;
  if (course.worked_out) before_.reset();
  if (reading_.refusals.empty()) reading_.courses.push_back(std::move(course));
}

void DeedReader::pass_over(const Call& call, const std::vector<const Item*>& used) {
  const auto covered = [&](std::size_t token) {
    return std::any_of(used.begin(), used.end(),
                       [token](const Item* i) { return token >= i->from && token < i->to; });
  };
  std::string words;
  int count = 0;
  for (std::size_t i = call.piece.from; i < call.end; ++i) {
    if (!is_number(t_[i]) || covered(i)) continue;
    std::size_t from = i, to = i + 1;
    while (from > call.piece.from && from + 3 > i && !covered(from - 1)) --from;
    while (to < call.end && to < i + 4 && !covered(to)) ++to;
    if (++count <= kMostPassedShown) words += (words.empty() ? "" : ", ") + of(from, to);
    i = to - 1;
  }
  if (count == 0) return;
  if (count > kMostPassedShown) words = say("{} and {} more", words, count - kMostPassedShown);
  const int line = t_[call.piece.from].line;
  reading_.passed.push_back(
      {line, {"deed_passed", say("read past in line {}: {}", std::to_string(line), words), "", "", ""}});
}

// "120.50 feet (36.73 m)": the second has to be the first over again.
bool DeedReader::agrees_in_brackets(const Call& call, const Item& distance) {
  for (const Item& i : call.items.items) {
    const bool bracket = i.from > 0 && i.from == distance.to + 1 && is_sign(t_[i.from - 1], '(');
    if (!bracket || !i.unit || !distance.unit) continue;
    const double slack = std::max(0.006, distance.value / 2000) + i.unit_metres * 0.006;
    if (std::abs(i.value - distance.value) <= slack) continue;
    refuse_at(i.from,
              {"deed_two_distances", in_line(say("the distance"), i.from), of(distance),
               say("what stands in brackets behind it, {}", of(i)), say("Compare both with the deed.")});
    return false;
  }
  return true;
}

void DeedReader::read_straight(const Call& call) {
  const Item* way = straight_way(call);
  const Item* distance = straight_distance(call, way);
  const std::size_t first = call.piece.from;
  const std::string words = of(first, call.end);
  for (const Item* item : {way, distance})
    if (item != nullptr)
      if (auto wrong = wrong_with(*item)) return refuse_at(item->from, *wrong);
  if (way == nullptr)
    return refuse_at(
        first,
        {"deed_no_bearing",
         say("line {}, {}, has no bearing that can be read", std::to_string(t_[first].line), words), "", "",
         say("Expected a bearing such as N 45°30'15\" E, due north, or an azimuth such as AZ 45°30'15\".")});
  if (distance == nullptr)
    return refuse_at(
        way->to,
        {"deed_no_distance",
         say("line {}, {}, has no distance that can be read", std::to_string(t_[first].line), words), "", "",
         say("Expected a distance behind the bearing, such as 120.50 ft, 36.73 m or 10 chains 25 links.")});
  if (!distance->unit && distance->to < call.end && is_number(t_[distance->to]))
    return refuse_at(distance->from,
                     {"deed_two_numbers",
                      say("line {}, {}, has two numbers where one distance is expected",
                          std::to_string(t_[first].line), words),
                      "", "", say("Write the unit behind the distance, and the angle with ° ' \".")});
  if (!(distance->value > 0))
    return refuse_at(distance->from, {"deed_length", in_line(say("the distance"), distance->from),
                                      of(*distance), say("more than 0"), say("Check it with the deed.")});
  if (!agrees_in_brackets(call, *distance)) return;
  for (const Item& i : call.items.items)
    if (&i != way && i.meaning == Meaning::way && i.from >= distance->to && directly_behind(*distance, i))
      return refuse_at(i.from, {"deed_two_calls",
                                say("line {}, {}, goes on with another bearing, {}",
                                    std::to_string(t_[first].line), words, of(i)),
                                "", "", say("Put each course on a line of its own, or a ; between them.")});
  Course course;
  course.azimuth = in_turn(way->value);
  course.length = distance->value;
  pass_over(call, {way, distance});
  keep(call, course);
}

void DeedReader::close_by_words(const Call& call) {
  Course course;
  course.worked_out = true;
  keep(call, course);
}

std::optional<CurveGiven> DeedReader::given_by(const Call& call, std::vector<const Item*>& used) {
  CurveGiven g;
  const bool arc_named = std::any_of(call.items.items.begin(), call.items.items.end(),
                                     [](const Item& i) { return i.meaning == Meaning::arc; });
  for (const Item& i : call.items.items) {
    if (auto wrong = wrong_with(i)) {
      refuse_at(i.from, *wrong);
      return std::nullopt;
    }
    std::optional<double>* into = nullptr;
    double value = i.value;
    switch (i.meaning) {
      case Meaning::radius:
        into = &g.radius;
        break;
      case Meaning::arc:
        into = &g.arc;
        break;
      case Meaning::chord:
        into = &g.chord;
        break;
      case Meaning::delta:
        into = &g.delta;
        break;
      case Meaning::chord_way:
        into = &g.chord_azimuth;
        break;
      case Meaning::tangent_way:
        into = &g.azimuth_in;
        break;
      case Meaning::centre_way:
        into = &g.to_centre;
        break;
      case Meaning::curve_degree:
        into = &g.radius;
        value = i.value > 0 ? kCurveDegreeRadius / (i.value * 180 / std::numbers::pi) : 0;
        break;
      case Meaning::distance:
        if (!arc_named && (i.unit || after_distance_of(i))) into = &g.arc;
        break;
      case Meaning::way:
        refuse_at(i.from, {"deed_curve_bearing",
                           say("the bearing {} in line {} can be that of the chord or of the tangent", of(i),
                               t_[i.from].line),
                           "", "", say("Write chord or tangent before it.")});
        return std::nullopt;
      case Meaning::unknown:
        break;
    }
    if (into == nullptr || into->has_value()) continue;
    *into = value;
    used.push_back(&i);
  }
  g.left = call.items.left;
  g.hollow_side = call.items.hollow_side;
  g.not_tangent = call.items.not_tangent;
  return g;
}

void DeedReader::add_pending_to(CurveGiven& g) {
  if (!has_pending_) return;
  const auto fill = [](auto& into, const auto& from) {
    if (!into) into = from;
  };
  fill(g.radius, pending_.radius);
  fill(g.delta, pending_.delta);
  fill(g.arc, pending_.arc);
  fill(g.chord, pending_.chord);
  fill(g.chord_azimuth, pending_.chord_azimuth);
  fill(g.azimuth_in, pending_.azimuth_in);
  fill(g.to_centre, pending_.to_centre);
  fill(g.left, pending_.left);
  fill(g.hollow_side, pending_.hollow_side);
  g.not_tangent = g.not_tangent || pending_.not_tangent;
}

void DeedReader::read_curve(const Call& call) {
  std::vector<const Item*> used;
  auto given = given_by(call, used);
  if (!given) return;
  add_pending_to(*given);
  auto curve = curve_from(*given, before_, units_);
  if (!curve) {
    Trouble t = curve.error();
    t.thing = in_line(t.thing, call.piece.from);
    return refuse_at(call.piece.from, std::move(t));
  }
  Course course;
  course.azimuth = curve->chord_azimuth;
  course.length = curve->arc;
  course.curve = *curve;
  pass_over(call, used);
  keep(call, std::move(course));
}

void DeedReader::take_pending(const Call& call) {
  has_pending_ = false;
  if (call.end >= call.piece.to) return;
  Call tail{{call.end, call.piece.to, false}, items_of(t_, call.end, call.piece.to, bare_), call.piece.to};
  std::vector<const Item*> used;
  if (auto given = given_by(tail, used)) {
    pending_ = *given;
    has_pending_ = true;
    pass_over(tail, used);
  }
}

// Words above the first call that cannot be meant as one: "Lot 7, Block 3 of Sunny Acres".
bool DeedReader::is_heading(const Piece& piece) const {
  if (!reading_.courses.empty() || !reading_.refusals.empty() || is_number(t_[piece.from])) return false;
  std::size_t words = 0;
  for (std::size_t i = piece.from; i < piece.to; ++i) {
    if (is_word(t_[i], {"e", "w", "east", "west", "north", "south", "n", "s", "thence", "curve"}))
      return false;
    if (t_[i].kind == Token::Kind::word && t_[i].text.size() > 1) ++words;
  }
  return words >= kWordsOfAHeading;
}

void DeedReader::read(const Piece& piece) {
  Call call{piece, {}, next_curve_at(t_, piece.from, piece.to)};
  call.items = items_of(t_, piece.from, call.end, bare_);
  const auto& all = call.items.items;
  const bool numbers = std::any_of(t_.begin() + static_cast<std::ptrdiff_t>(piece.from),
                                   t_.begin() + static_cast<std::ptrdiff_t>(piece.to), is_number);
  const bool named = std::any_of(all.begin(), all.end(),
                                 [](const Item& i) { return i.kind != Item::Kind::length || i.unit; });
  if (piece.preamble || (!named && is_heading(piece))) return pass_over(call, {});
  if (!named && call.items.to_beginning) {
    const bool done = !reading_.courses.empty() && reading_.courses.back().to_beginning;
    if (!done && !reading_.courses.empty() && !on_tie_) close_by_words(call);
    on_tie_ = false;
    return;
  }
  const bool thence = is_word(t_[piece.from], {"thence"});
  bool announces = false;  // "thence the following three courses:"
  for (std::size_t i = piece.from; i < piece.to; ++i)
    announces = announces || is_word(t_[i], {"courses", "calls"});
  if (!named && (announces || (!numbers && !thence && !call.items.curve_words))) return pass_over(call, {});
  if (is_curve(call))
    read_curve(call);
  else
    read_straight(call);
  take_pending(call);
}

DeedReading DeedReader::run() {
  bare_ = units_ == UnitSystem::us ? kFoot : 1;
  const Pieces pieces = pieces_of(deed_);
  if (pieces.unit) bare_ = *pieces.unit;
  on_tie_ = pieces.commencing;
  reading_.stated_area = pieces.stated_area;
  for (const Piece& piece : pieces.calls) {
    if (reading_.courses.size() >= kMostCourses || reading_.refusals.size() >= 100) {
      refuse_at(
          piece.from,
          {"deed_too_long", say("the number of calls"), say("more than {}", std::to_string(kMostCourses)),
           say("at most {}", std::to_string(kMostCourses)), say("Give the lot line alone.")});
      break;
    }
    read(piece);
  }
  std::ranges::stable_sort(reading_.passed, {}, &DeedNote::line);
  return std::move(reading_);
}

}  // namespace

DeedReading read_deed(std::string_view text, UnitSystem units) {
  if (text.size() <= kMostDeedText) return DeedReader(text, units).run();
  DeedReading reading;
  reading.refusals.push_back(
      {1,
       {"deed_too_long", say("the deed"), say("{} bytes long", std::to_string(text.size())),
        say("at most {}", std::to_string(kMostDeedText)), say("Give the calls of the lot line alone.")}});
  return reading;
}

}  // namespace underlawn
