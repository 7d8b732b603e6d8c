// SPDX-License-Identifier: GPL-3.0-or-later
#include "plan/record/taped_text.h"

#include <algorithm>
#include <cctype>

#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"

namespace underlawn {

namespace {

constexpr std::size_t kMostTapes = 8;

std::string example(UnitSystem units) {
  return units == UnitSystem::us ? say("Write it as A 45'-3\", B 31'-6\", left.")
                                 : say("Write it as A 13.79 m; B 9.60 m; left.");
}

std::string upper(std::string_view text) {
  std::string out;
  for (char c : text) out += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

std::string side_said(bool left) {
  return left ? say_as("of a line", "left") : say_as("of a line", "right");
}

// In English and in the language spoken.
bool is_side(std::string_view piece, bool left) {
  return upper(piece) == (left ? "LEFT" : "RIGHT") || upper(piece) == upper(side_said(left));
}

// Letters, then a distance.
Result<Tape> tape_from(std::string_view piece, UnitSystem units, const std::string& thing) {
  std::size_t letters = 0;
  while (letters < piece.size() && std::isalpha(static_cast<unsigned char>(piece[letters])) != 0) ++letters;
  const std::string_view rest = trimmed(piece.substr(letters));
  if (letters == 0 || letters > 3 || rest.empty())
    return refuse({"tape_not_read", thing, in_quotes(piece),
                   say("a corner's letter and a distance, left or right"), example(units)});
  const auto length = parse_quantity(Quantity::length, rest, units);
  if (!length) return refuse(length.error());
  return Tape{upper(piece.substr(0, letters)), *length};
}

// fields_of takes quotes for text; here they are inches.
std::vector<std::string_view> pieces_of(std::string_view text) {
  const char by = text.find(';') != std::string_view::npos ? ';' : ',';
  std::vector<std::string_view> pieces;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t to = std::min(text.find(by, from), text.size());
    const std::string_view piece = text.substr(from, to - from);
    const std::size_t first = piece.find_first_not_of(" \t");
    if (first != std::string_view::npos)
      pieces.push_back(piece.substr(first, piece.find_last_not_of(" \t") + 1 - first));
    from = to + 1;
  }
  return pieces;
}

}  // namespace

Result<BuiltPoint> taped_from_text(std::string_view text, UnitSystem units, const std::string& thing) {
  BuiltPoint point;
  for (std::string_view piece : pieces_of(text)) {
    if (is_side(piece, true) || is_side(piece, false)) {
      point.left = is_side(piece, true);
      continue;
    }
    const auto tape = tape_from(piece, units, thing);
    if (!tape) return refuse(tape.error());
    point.tapes.push_back(*tape);
    if (point.tapes.size() > kMostTapes)
      return refuse({"tapes_too_many", thing, say("more than {} tapes", std::to_string(kMostTapes)),
                     say("at most {}", std::to_string(kMostTapes)), say("Leave the worst out.")});
  }
  return point;
}

bool says_side(std::string_view text) {
  return std::ranges::any_of(pieces_of(text),
                             [](std::string_view p) { return is_side(p, true) || is_side(p, false); });
}

std::string print_taped(const BuiltPoint& point, UnitSystem units) {
  if (point.tapes.empty()) return "";
  const char* between = units == UnitSystem::us ? ", " : "; ";
  std::string out;
  for (const Tape& t : point.tapes)
    out += t.corner + " " + print_quantity(Quantity::length, t.length, units, Fineness::fine) + between;
  return out + side_said(point.left);
}

}  // namespace underlawn
