// SPDX-License-Identifier: GPL-3.0-or-later
#include "tools/course.h"

#include <array>
#include <charconv>
#include <cmath>
#include <string>
#include <vector>

#include "base/say.h"
#include "base/typed_text.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr std::string_view kBlanks = " \t";
constexpr double kDegree = M_PI / 180;

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(kBlanks);
  if (first == text.npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

Trouble unread(std::string_view thing, std::string_view text, std::string_view bound,
               std::string_view advice) {
  return {"typed_course_unread", std::string(thing), in_quotes(text), std::string(bound),
          std::string(advice)};
}

// Degrees, minutes and seconds behind one another, whatever parts them: "45", "45.5", "45 30 15",
// "45deg30'15\"".
std::optional<double> read_degrees(std::string_view text) {
  std::array<double, 3> part{};
  std::size_t parts = 0;
  text = trimmed(text);
  while (!text.empty()) {
    if (parts == part.size()) return std::nullopt;
    const auto [end, error] =
        std::from_chars(text.data(), text.data() + text.size(), part[parts], std::chars_format::fixed);
    if (error != std::errc{} || part[parts] < 0) return std::nullopt;
    if (parts > 0 && (part[parts] >= 60 || part[parts - 1] != std::floor(part[parts - 1])))
      return std::nullopt;
    ++parts;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    if (trimmed(text).starts_with("deg")) text = trimmed(text).substr(3);
    const auto next = text.find_first_not_of(" \t'\"-");
    text = next == text.npos ? std::string_view{} : text.substr(next);
  }
  if (parts == 0) return std::nullopt;
  return part[0] + part[1] / 60 + part[2] / 3600;
}

char upper(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

// Clockwise from north, degrees, of "N45E"; the whole text must be one bearing.
std::optional<double> read_bearing(std::string_view text) {
  text = trimmed(text);
  if (text.empty()) return std::nullopt;
  const char first = upper(text.front()), last = upper(text.back());
  if (text.size() == 1) {
    const auto at = std::string_view("NESW").find(first);
    if (at == std::string_view::npos) return std::nullopt;
    return 90.0 * static_cast<double>(at);
  }
  if ((first != 'N' && first != 'S') || (last != 'E' && last != 'W')) return std::nullopt;
  const auto angle = read_degrees(text.substr(1, text.size() - 2));
  if (!angle || *angle > 90) return std::nullopt;
  if (first == 'N') return last == 'E' ? *angle : 360 - *angle;
  return last == 'E' ? 180 - *angle : 180 + *angle;
}

struct Split {
  std::string_view length;
  double bearing = 0;
};

// A length and a bearing in either order. Units hold letters too ("30 in N45E"), so every split is tried,
// whole bearings before a lone N, E, S or W, which wants a blank beside it.
std::optional<Split> split_bearing(std::string_view text) {
  for (const bool lone : {false, true})
    for (std::size_t i = 1; i < text.size(); ++i) {
      const std::string_view before = text.substr(0, i), behind = text.substr(i);
      const bool apart = kBlanks.find(text[i - 1]) != kBlanks.npos || kBlanks.find(text[i]) != kBlanks.npos;
      if (lone && !apart) continue;
      if ((trimmed(behind).size() == 1) == lone)
        if (const auto bearing = read_bearing(behind)) return Split{before, *bearing};
      if ((trimmed(before).size() == 1) == lone)
        if (const auto bearing = read_bearing(before)) return Split{behind, *bearing};
    }
  return std::nullopt;
}

Result<Point> within_plan(Point p, std::string_view text) {
  if (std::isfinite(p.x) && std::isfinite(p.y) && std::abs(p.x) <= kLargestPlan &&
      std::abs(p.y) <= kLargestPlan)
    return p;
  return refuse(unread(say("this point"), text, say("within 10 km of the drawing's origin"),
                       say("Type a shorter length.")));
}

Result<Point> read_pair(std::string_view text, UnitSystem units, Point from) {
  const char mark = text.find(';') != text.npos ? ';' : ',';
  const auto at = text.find(mark);
  if (at == text.npos || text.find(mark, at + 1) != text.npos)
    return refuse(unread(say("this place"), text, say("two lengths with a comma between them"),
                         say("Type it like 10,5; with decimal commas like 10,5 ; 3,2.")));
  const auto x = parse_quantity(Quantity::length, trimmed(text.substr(0, at)), units);
  if (!x) return refuse(x.error());
  const auto y = parse_quantity(Quantity::length, trimmed(text.substr(at + 1)), units);
  if (!y) return refuse(y.error());
  return within_plan(from + Point{*x, *y}, text);
}

Result<Point> step(std::string_view length, std::string_view text, const CourseFrame& frame, Point way) {
  const auto metres = parse_quantity(Quantity::length, trimmed(length), frame.units);
  if (!metres) return refuse(metres.error());
  return within_plan(*frame.from + *metres * way, text);
}

// Exact along the axes, where sine and cosine would leave a crumb of 1e-16.
Point exact_direction(double degrees) {
  const double turn = std::fmod(std::fmod(degrees, 360) + 360, 360);
  if (turn == 0) return {1, 0};
  if (turn == 90) return {0, 1};
  if (turn == 180) return {-1, 0};
  if (turn == 270) return {0, -1};
  return direction(turn * kDegree);
}

Result<Point> read_polar(std::string_view text, std::size_t mark, const CourseFrame& frame) {
  std::string_view angle = trimmed(text.substr(mark + 1));
  const bool clockwise = angle.starts_with('-');
  const auto degrees = read_degrees(clockwise ? angle.substr(1) : angle);
  if (!degrees) return refuse(unread(say("this angle"), angle, say("degrees"), say("Type it like 31.5<90.")));
  return step(text.substr(0, mark), text, frame, exact_direction(clockwise ? -*degrees : *degrees));
}

Result<Point> read_bare(std::string_view text, const CourseFrame& frame) {
  const Point along = frame.toward ? *frame.toward - *frame.from : Point{};
  if (norm(along) < kSamePlace)
    return refuse(
        unread(say("this length"), text, say("given with a direction"),
               say("Point the way it goes, or type it like 31.5<90 or 120 N45E; a place like #10,5.")));
  // The length is exact to the last bit where the pointer goes along an axis.
  return step(text, text, frame,
              along.y == 0   ? Point{along.x > 0 ? 1.0 : -1.0, 0}
              : along.x == 0 ? Point{0, along.y > 0 ? 1.0 : -1.0}
                             : unit(along));
}

}  // namespace

Result<Point> typed_place(std::string_view original, const CourseFrame& frame) {
  const std::string plain = typed_text(original).plain;
  const std::string_view text = trimmed(plain);
  if (text.empty())
    return refuse(unread(say("the typed place"), text, say("not empty"),
                         say("Type a length like 31.5, or @10,5, or 31.5<90.")));
  if (text.front() == '#') return read_pair(text.substr(1), frame.units, {});
  if (!frame.from) return read_pair(text.front() == '@' ? text.substr(1) : text, frame.units, {});
  if (text.front() == '@') {
    const std::string_view behind = trimmed(text.substr(1));
    const bool pair = behind.find(',') != behind.npos || behind.find(';') != behind.npos;
    const bool way = behind.find('<') != behind.npos || split_bearing(behind).has_value();
    if (pair && !way) return read_pair(behind, frame.units, *frame.from);
    if (behind.empty() || !way) return read_pair(behind, frame.units, *frame.from);
    return typed_place(behind, frame);
  }
  if (const auto mark = text.find('<'); mark != text.npos) return read_polar(text, mark, frame);
  if (const auto split = split_bearing(text)) {
    if (frame.north == M_PI / 2)
      return step(split->length, text, frame, exact_direction(90 - split->bearing));
    return step(split->length, text, frame, direction(frame.north - split->bearing * kDegree));
  }
  return read_bare(text, frame);
}

std::optional<Point> typed_direction(std::string_view original, double north) {
  const std::string plain = typed_text(original).plain;
  const std::string_view text = trimmed(plain);
  if (text.starts_with('<')) {
    std::string_view angle = trimmed(text.substr(1));
    const bool clockwise = angle.starts_with('-');
    const auto degrees = read_degrees(clockwise ? angle.substr(1) : angle);
    if (!degrees) return std::nullopt;
    return exact_direction(clockwise ? -*degrees : *degrees);
  }
  const auto bearing = read_bearing(text);
  if (!bearing) return std::nullopt;
  return north == M_PI / 2 ? exact_direction(90 - *bearing) : direction(north - *bearing * kDegree);
}

QString bearing_text(Point along, double north) {
  const double turn = std::fmod(north - std::atan2(along.y, along.x) + 4 * M_PI, 2 * M_PI) / kDegree;
  const bool to_north = turn <= 90 || turn >= 270, to_east = turn <= 180;
  const double quadrant = to_north ? (to_east ? turn : 360 - turn) : std::abs(180 - turn);
  const long seconds = std::lround(quadrant * 3600);
  return QStringLiteral("%1 %2°%3'%4\" %5")
      .arg(to_north ? 'N' : 'S')
      .arg(seconds / 3600)
      .arg(seconds / 60 % 60, 2, 10, QLatin1Char('0'))
      .arg(seconds % 60, 2, 10, QLatin1Char('0'))
      .arg(to_east ? 'E' : 'W');
}

}  // namespace underlawn
