// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/call_items.h"

#include <algorithm>
#include <numbers>

namespace underlawn::deed {

namespace {

constexpr std::size_t kWindow = 24;  // tokens before a number that may speak of it
constexpr double kDegree = std::numbers::pi / 180;

// What a word says of the number behind it. The nearest one counts, but a plain word for a length gives way
// to any other.
enum class Key { none, plain, radius, chord, arc, delta, curve_degree, tangent, centre, azimuth };

class ItemReader {
 public:
  ItemReader(const Tokens& t, std::size_t from, std::size_t to, double bare)
      : t_(t), from_(from), to_(to), bare_(bare) {
    keys_.reserve(to - from);
    for (std::size_t i = from; i < to; ++i) keys_.push_back(key_at(i));
  }
  CallItems run();

 private:
  bool word(std::size_t at, std::initializer_list<std::string_view> words) const {
    return at < to_ && is_word(t_[at], words);
  }
  bool sign(std::size_t at, char c) const { return at < to_ && is_sign(t_[at], c); }
  bool number(std::size_t at) const { return at < to_ && t_[at].kind == Token::Kind::number; }
  bool valued(std::size_t at) const { return sign(at + 1, '=') || sign(at + 1, ':') || number(at + 1); }

  void note_words(std::size_t at);
  void note_beginning(std::size_t at);
  void note_hollow(std::size_t at);
  Key key_at(std::size_t at) const;
  Key key_before(std::size_t at) const;
  Key key_behind(std::size_t at) const;
  bool is_area_of_lot(std::size_t end) const { return word(end, {"of"}); }

  std::optional<Item> item_at(std::size_t at);
  std::optional<Item> bearing_item(std::size_t at, Key key) const;
  std::optional<Item> angle_item(std::size_t at, Key key) const;
  std::optional<Item> length_item(std::size_t at, Key key) const;
  Meaning length_meaning(Key key, std::size_t end) const;

  const Tokens& t_;
  std::size_t from_, to_;
  double bare_;
  std::vector<Key> keys_;   // of each token
  std::size_t window_ = 0;  // words from here on speak of the next number
  CallItems call_;
};

Key ItemReader::key_at(std::size_t at) const {
  if (t_[at].kind != Token::Kind::word) return Key::none;
  if (word(at, {"radius", "radii"})) return Key::radius;
  if (word(at, {"r", "rad"}) && valued(at)) return Key::radius;
  if (word(at, {"chord", "lc", "lch", "chd", "cb", "cd", "chb"})) return Key::chord;
  if (word(at, {"ch", "c"}) && (valued(at) || word(at + 1, {"bears", "bearing", "brg"}))) return Key::chord;
  if (word(at, {"arc"})) return Key::arc;
  if (word(at, {"l", "al", "a"}) && (sign(at + 1, '=') || sign(at + 1, ':'))) return Key::arc;
  if (word(at, {"delta", "central", "interior"})) return Key::delta;
  if (word(at, {"angle"})) return Key::delta;
  if (word(at, {"ca"}) && valued(at)) return Key::delta;
  if (word(at, {"degree"}) && word(at + 1, {"of"}) && word(at + 2, {"curve", "curvature"}))
    return Key::curve_degree;
  if (word(at, {"center", "centre"}) || (word(at, {"radius"}) && word(at + 1, {"point"}))) return Key::centre;
  if (word(at, {"tangent"}) && (word(at + 1, {"bears", "bearing", "azimuth"}) || valued(at)))
    return Key::tangent;
  if (word(at, {"az", "azimuth", "azm"})) return Key::azimuth;
  if (word(at, {"distance", "length", "dist", "along", "curve", "line"})) return Key::plain;
  return Key::none;
}

Key ItemReader::key_before(std::size_t at) const {
  Key plain = Key::none;
  const std::size_t first = std::max(window_, at > kWindow ? at - kWindow : 0);
  for (std::size_t i = at; i > first; --i) {
    const Key key = keys_[i - 1 - from_];
    if (key == Key::radius && word(i, {"point"})) return Key::centre;
    if (key == Key::plain) plain = Key::plain;
    if (key != Key::none && key != Key::plain) return key;
  }
  return plain;
}

// "50 foot radius", "856.76 feet on the arc of".
Key ItemReader::key_behind(std::size_t at) const {
  if (!word(at, {"on", "along", "of", "around", "arc", "upon", "radius"})) return Key::none;
  for (std::size_t i = at; i < at + 4 && i < to_ && !number(i) && !sign(i, ',') && !sign(i, ';'); ++i) {
    if (word(i, {"radius"}) && i <= at + 1) return Key::radius;
    if (word(i, {"arc", "curve"})) return Key::arc;
  }
  return Key::none;
}

Meaning ItemReader::length_meaning(Key key, std::size_t end) const {
  const Key behind = key_behind(end);
  if (key == Key::radius) return Meaning::radius;
  if (behind == Key::radius) return Meaning::radius;
  if (key == Key::chord) return Meaning::chord;
  const Meaning before = call_.items.empty() ? Meaning::unknown : call_.items.back().meaning;
  if (before == Meaning::centre_way && key != Key::arc)
    return Meaning::radius;  // "whose centre bears N 5 E 50 feet"
  if (key == Key::arc || behind == Key::arc) return Meaning::arc;
  if (before == Meaning::chord_way) return Meaning::chord;
  if (key == Key::tangent) return Meaning::unknown;
  return Meaning::distance;
}

std::optional<Item> ItemReader::bearing_item(std::size_t at, Key key) const {
  auto bearing = bearing_at(t_, at);
  if (!bearing || bearing->end > to_) {
    bearing = due_at(t_, at);
    if (!bearing) return std::nullopt;
    std::size_t next = bearing->end;
    while (sign(next, ',') || word(next, {"a", "distance", "of", "for"})) ++next;
    const auto length = length_at(t_, next, bare_);
    const bool follows =
        length && length->end <= to_ && (length->unit > 0 || bearing->due) && !is_area_of_lot(length->end);
    if (!follows) return std::nullopt;
    // "S 7930' E 100": a bearing that lost its degree sign, not 7,930 feet due south.
    if (!bearing->due && sign(length->end - 1, '\'') && word(length->end, {"e", "east", "w", "west"}))
      return std::nullopt;
    bearing->due = true;
  }
  Item item;
  item.kind = Item::Kind::bearing;
  item.value = bearing->azimuth;
  item.due = bearing->due;
  item.wrong = bearing->wrong;
  item.from = at;
  item.to = bearing->end;
  item.meaning = key == Key::chord     ? Meaning::chord_way
                 : key == Key::tangent ? Meaning::tangent_way
                 : key == Key::centre  ? Meaning::centre_way
                                       : Meaning::way;
  return item;
}

std::optional<Item> ItemReader::angle_item(std::size_t at, Key key) const {
  const auto angle = angle_at(t_, at);
  if (!angle || angle->end > to_) return std::nullopt;
  const bool wanted = key == Key::delta || key == Key::curve_degree || key == Key::azimuth;
  if (!angle->marked && !wanted) return std::nullopt;
  Item item;
  item.kind = Item::Kind::angle;
  item.value = angle->radians;
  item.wrong = angle->wrong;
  item.from = at;
  item.to = angle->end;
  if (key == Key::delta || key == Key::curve_degree) {
    item.meaning = key == Key::delta ? Meaning::delta : Meaning::curve_degree;
    return item;
  }
  item.kind = Item::Kind::bearing;  // an azimuth
  if (item.wrong.empty() && angle->radians > 360 * kDegree + 1e-12) item.wrong = "azimuth";
  item.meaning = key == Key::chord     ? Meaning::chord_way
                 : key == Key::tangent ? Meaning::tangent_way
                 : key == Key::centre  ? Meaning::centre_way
                                       : Meaning::way;
  return item;
}

std::optional<Item> ItemReader::length_item(std::size_t at, Key key) const {
  const auto length = length_at(t_, at, bare_);
  if (!length || length->end > to_) return std::nullopt;
  Item item;
  item.kind = Item::Kind::length;
  item.value = length->metres;
  item.unit = length->unit > 0;
  item.unit_metres = length->unit;
  item.doubtful = length->doubtful;
  item.from = at;
  item.to = length->end;
  item.meaning = length_meaning(key, length->end);
  return item;
}

std::optional<Item> ItemReader::item_at(std::size_t at) {
  const bool may_be =
      number(at) || word(at, {"n", "no", "north", "s", "so", "south", "e", "east", "w", "west", "due"});
  if (!may_be) return std::nullopt;
  const Key key = key_before(at);
  if (auto bearing = bearing_item(at, key)) return bearing;
  if (!number(at)) return std::nullopt;
  if (auto angle = angle_item(at, key)) return angle;
  return length_item(at, key);
}

void ItemReader::note_hollow(std::size_t at) {
  for (std::size_t i = at + 1; i < at + 5 && i < to_; ++i)
    if (t_[i].kind == Token::Kind::word)
      if (const auto way = rough_direction(t_[i].text)) call_.hollow_side = way;
}

void ItemReader::note_beginning(std::size_t at) {
  const bool abbreviated =
      word(at, {"pob"}) || (word(at, {"p"}) && sign(at + 1, '.') && word(at + 2, {"o"}) &&
                            sign(at + 3, '.') && word(at + 4, {"b"}));
  const bool spelled =
      word(at, {"point", "place", "corner"}) && word(at + 1, {"of"}) &&
      (word(at + 2, {"beginning"}) || (word(at + 2, {"the"}) && word(at + 3, {"beginning"})));
  const bool to_it = at > from_ && (word(at - 1, {"to"}) ||
                                    (word(at - 1, {"the"}) && at > from_ + 1 && word(at - 2, {"to"})));
  const bool short_of = word(at, {"beginning"}) && to_it && !word(at + 1, {"of"});
  if (!abbreviated && !spelled && !short_of) return;
  if (spelled && word(at + 3, {"of"})) return;  // of a curve
  for (std::size_t i = at; i > from_ && i + 4 > at; --i)
    if (word(i - 1, {"from"})) return;
  call_.to_beginning = true;
}

void ItemReader::note_words(std::size_t at) {
  if (t_[at].kind != Token::Kind::word) return;
  const bool curved = word(at, {"curve", "curving", "arc", "radius", "chord", "delta"}) ||
                      (word(at, {"r", "l", "ch", "cb"}) && sign(at + 1, '='));
  if (curved && !call_.curve_words) call_.first_curve_word = at;
  call_.curve_words = call_.curve_words || curved;
  const bool counter = at > from_ && (word(at - 1, {"counter"}) ||
                                      (sign(at - 1, '-') && at > from_ + 1 && word(at - 2, {"counter"})));
  if (word(at, {"left", "lt", "ccw", "counterclockwise", "leftward"})) call_.left = true;
  if (word(at, {"right", "rt", "cw", "rightward"}) && !word(at + 1, {"of", "angle"})) call_.left = false;
  if (word(at, {"clockwise"})) call_.left = counter;
  if (word(at, {"concave"})) note_hollow(at);
  const bool tangent = word(at, {"tangent", "tangentially", "nontangent", "nontangential", "tangential"});
  const bool negated =
      t_[at].text.starts_with("non") || (at > from_ && word(at - 1, {"non", "not"})) ||
      (at > from_ + 1 && (sign(at - 1, '-') || word(at - 1, {"being", "a"})) && word(at - 2, {"non", "not"}));
  if (tangent && negated) call_.not_tangent = true;
  if (tangent && !negated && word(at + 1, {"curve", "to", "with"})) call_.tangent = true;
  note_beginning(at);
}

CallItems ItemReader::run() {
  window_ = from_;
  for (std::size_t i = from_; i < to_;) {
    auto item = item_at(i);
    if (!item) {
      note_words(i++);
      continue;
    }
    i = window_ = item->to;
    call_.items.push_back(std::move(*item));
  }
  return std::move(call_);
}

}  // namespace

CallItems items_of(const Tokens& tokens, std::size_t from, std::size_t to, double bare) {
  return ItemReader(tokens, from, to, bare).run();
}

std::size_t next_curve_at(const Tokens& t, std::size_t from, std::size_t to) {
  bool number = false;
  for (std::size_t i = from; i < to; ++i) {
    number = number || t[i].kind == Token::Kind::number;
    if (!number || !is_word(t[i], {"to"})) continue;
    bool beginning = false;
    for (std::size_t k = i + 1; k < to && k < i + 14; ++k) {
      if (is_word(t[k], {"to", "thence"}) || is_sign(t[k], ';')) break;
      beginning =
          beginning || is_word(t[k], {"pc", "beginning", "point", "start", "pcc", "prc", "commencement"});
      if (beginning && is_word(t[k], {"curve"})) return i;
    }
  }
  return to;
}

}  // namespace underlawn::deed
