// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <numbers>
#include <set>

#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "base/utf8.h"
#include "survey/deed_words.h"
#include "survey/field_points.h"
#include "survey/notebook.h"
#include "survey/survey_troubles.h"

namespace underlawn {

namespace {

constexpr double kFoot = 0.3048;
constexpr double kDegree = std::numbers::pi / 180;
constexpr std::size_t kMostRemarks = 20;
constexpr std::size_t kLongestName = 60;

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"points_csv", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

// A column, with the unit in its name.
struct Column {
  std::size_t place = 0;
  std::optional<double> unit;  // m
};

// "easting_(ft)" as "easting" and "ft".
std::pair<std::string, std::string> name_and_unit(const std::string& column) {
  std::string plain;
  for (char c : column) {
    const bool part =
        c == '_' || c == '(' || c == '[' || c == ')' || c == ']' || c == '-' || c == '.' || c == '/';
    if (!part)
      plain += c;
    else if (!plain.empty() && plain.back() != '_')
      plain += '_';
  }
  while (!plain.empty() && plain.back() == '_') plain.pop_back();
  const std::size_t at = plain.rfind('_');
  if (at == std::string::npos) return {plain, ""};
  return {plain.substr(0, at), plain.substr(at + 1)};
}

std::optional<Column> column_called(const TextTable& table, std::initializer_list<std::string_view> names) {
  for (std::string_view name : names)
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      const auto [stem, tail] = name_and_unit(table.columns[i]);
      const std::string whole = tail.empty() ? stem : stem + "_" + tail;
      if (whole == name) return Column{i, std::nullopt};
      const auto unit = deed::unit_of_length(tail);
      const bool degrees = tail == "deg" || tail == "degrees" || tail == "wgs84" || tail == "dd";
      if (stem == name && (unit || degrees)) return Column{i, unit};
    }
  return std::nullopt;
}

struct Columns {
  std::optional<Column> name, latitude, longitude, east, north, height, note;
  bool earth() const { return latitude && longitude; }
  bool grid() const { return east && north; }
};

Columns columns_of(const TextTable& t) {
  Columns c;
  c.latitude = column_called(t, {"latitude", "lat"});
  c.longitude = column_called(t, {"longitude", "lon", "long", "lng"});
  c.east = column_called(t, {"easting", "east", "e", "x"});
  c.north = column_called(t, {"northing", "north", "n", "y"});
  c.height = column_called(t, {"elevation", "elev", "height", "altitude", "alt", "ele", "z"});
  c.name = column_called(t, {"name", "point", "point_name", "point_id", "point_number", "id", "label", "pt",
                             "no", "number", "p"});
  c.note = column_called(t, {"note", "notes", "description", "desc", "code", "comment", "d"});
  return c;
}

// A quotation mark opens a field only where it begins: seconds are written with one too.
std::vector<std::string> split_row(std::string_view row, char separator) {
  std::vector<std::string> fields(1);
  bool quoted = false, begun = false;
  for (std::size_t i = 0; i < row.size(); ++i) {
    const char c = row[i];
    if (c == separator && !quoted) {
      fields.emplace_back();
      begun = false;
    } else if (c == '"' && (quoted || !begun)) {
      const bool doubled = quoted && i + 1 < row.size() && row[i + 1] == '"';
      if (doubled) fields.back() += row[i++];
      quoted = doubled || !quoted;
      begun = true;
    } else {
      begun = begun || c != ' ';
      fields.back() += c;
    }
  }
  return fields;
}

std::string field(const TextTable& t, const TextLine& row, const Column& column) {
  auto fields = split_row(row.text, t.separator);
  return column.place < fields.size() ? std::string(trimmed(fields[column.place])) : std::string();
}

class TableReader {
 public:
  TableReader(const TextTable& table, const Columns& columns, UnitSystem units)
      : table_(table), columns_(columns), bare_(units == UnitSystem::us ? kFoot : 1) {}
  WithRemarks<std::vector<Sighting>> run();

 private:
  bool read(const TextLine& row, Sighting& s);
  bool degrees(const TextLine& row, const Column& column, double most, double& into);
  bool metres(const TextLine& row, const Column& column, double& into);
  void left_out(const TextLine& row, const Column& column, const std::string& bound);
  std::string text_in(const TextLine& row, const std::optional<Column>& column) const;

  const TextTable& table_;
  const Columns& columns_;
  double bare_;
  WithRemarks<std::vector<Sighting>> out_;
  std::set<std::string> names_;
  std::size_t out_rows_ = 0;
};

void TableReader::left_out(const TextLine& row, const Column& column, const std::string& bound) {
  if (++out_rows_ > kMostRemarks) return;
  out_.remarks.push_back(
      trouble(say("{} in line {}", table_.columns[column.place], std::to_string(row.number)),
              in_quotes(field(table_, row, column)), bound, say("The line was left out.")));
}

std::string TableReader::text_in(const TextLine& row, const std::optional<Column>& column) const {
  if (!column) return "";
  std::string clean = in_quotes(field(table_, row, *column), kLongestName);
  return clean.substr(3, clean.size() - 6);  // without the quotation marks, three bytes each
}

bool TableReader::degrees(const TextLine& row, const Column& column, double most, double& into) {
  const auto value = degrees_in_text(field(table_, row, column), table_.mark);
  if (value && std::abs(*value) <= most) {
    into = *value;
    return true;
  }
  left_out(row, column, say("degrees from -{} to {}", shortest(most), shortest(most)));
  return false;
}

bool TableReader::metres(const TextLine& row, const Column& column, double& into) {
  const auto value = plain_number(field(table_, row, column), table_.mark);
  if (value && std::abs(*value * column.unit.value_or(bare_)) <= kMostSighted) {
    into = *value * column.unit.value_or(bare_);
    return true;
  }
  left_out(row, column, say("a number of up to {} m", shortest(kMostSighted)));
  return false;
}

bool TableReader::read(const TextLine& row, Sighting& s) {
  if (columns_.earth()) {
    s.method = SightingMethod::latitude_longitude;
    if (!degrees(row, *columns_.latitude, 90, s.latitude)) return false;
    if (!degrees(row, *columns_.longitude, 180, s.longitude)) return false;
  } else {
    s.method = SightingMethod::east_north;
    if (!metres(row, *columns_.east, s.east) || !metres(row, *columns_.north, s.north)) return false;
  }
  double height = 0;
  const bool has_height = columns_.height && !field(table_, row, *columns_.height).empty();
  if (has_height && metres(row, *columns_.height, height)) s.height = height;
  s.name = text_in(row, columns_.name);
  s.note = text_in(row, columns_.note);
  return true;
}

WithRemarks<std::vector<Sighting>> TableReader::run() {
  for (const TextLine& row : table_.rows) {
    if (out_.value.size() >= kMostSightings) {
      out_.remarks.push_back(
          trouble(say("the number of points"), say("more than {}", std::to_string(kMostSightings)),
                  say("at most {}", std::to_string(kMostSightings)), say("The first were taken.")));
      break;
    }
    Sighting s;
    if (row.text.empty() || row.text.front() == '#' || !read(row, s)) continue;
    if (s.name.empty()) s.name = "P" + std::to_string(out_.value.size() + 1);
    out_.value.push_back(std::move(s));
  }
  if (out_rows_ > kMostRemarks)
    out_.remarks.push_back(
        trouble(say("{} more lines were left out", std::to_string(out_rows_ - kMostRemarks)), "", "", ""));
  const bool no_unit = !columns_.earth() && !columns_.east->unit;
  if (no_unit)
    out_.remarks.push_back(
        trouble(say("the columns of east and north name no unit"), "", "",
                bare_ == 1 ? say("They were taken as metres.") : say("They were taken as feet.")));
  return std::move(out_);
}

}  // namespace

std::optional<double> degrees_in_text(std::string_view text, char mark) {
  if (const auto plain = plain_number(text, mark)) return plain;
  if (text.empty() || text.size() > 60) return std::nullopt;
  const deed::PlainDeed words = deed::plain_deed(text);
  const auto& t = words.tokens;
  std::size_t at = 0;
  bool minus = false;
  const auto take_hemisphere = [&] {
    if (at >= t.size() || !deed::is_word(t[at], {"n", "s", "e", "w"})) return;
    minus = minus || deed::is_word(t[at], {"s", "w"});
    ++at;
  };
  if (at < t.size() && deed::is_sign(t[at], '-')) {
    minus = true;
    ++at;
  }
  take_hemisphere();
  const auto angle = deed::angle_at(t, at);
  if (!angle || !angle->wrong.empty()) return std::nullopt;
  at = angle->end;
  take_hemisphere();
  if (at != t.size()) return std::nullopt;
  return (minus ? -1 : 1) * angle->radians / kDegree;
}

Result<WithRemarks<std::vector<Sighting>>> points_from_csv(std::string_view text, UnitSystem units) {
  if (text.size() > kMostPointFile)
    return refuse(trouble(say("the table of points"), say("{} MB", std::to_string(text.size() >> 20)),
                          say("at most 32 MB"), say("Export the points of this lot alone.")));
  const auto table = table_from_text(text, "points_csv", say("the table of points"));
  if (!table) return refuse(table.error());
  const Columns columns = columns_of(*table);
  if (!columns.earth() && !columns.grid())
    return refuse(trouble(say("the line of column names of the table of points"),
                          say("without latitude and longitude or east and north"),
                          say("one that names either pair"),
                          say("Write name,latitude,longitude or name,east_ft,north_ft above the rows.")));
  auto read = TableReader(*table, columns, units).run();
  if (read.value.empty())
    return refuse(trouble(say("the table of points"), say("without a row that can be read"),
                          say("rows of numbers below the names"),
                          read.remarks.empty() ? "" : read.remarks.front().message()));
  return read;
}

}  // namespace underlawn
