// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <pugixml.hpp>

#include "base/say.h"
#include "base/table_text.h"
#include "base/typed_text.h"
#include "survey/field_points.h"
#include "survey/survey_troubles.h"

namespace underlawn {

namespace {

constexpr std::size_t kLongestName = 60;

Trouble trouble(std::string thing, std::string value, std::string bound, std::string advice) {
  return {"points_gpx", std::move(thing), std::move(value), std::move(bound), std::move(advice)};
}

std::string clean(const char* text) {
  std::string out = in_quotes(trimmed(text), kLongestName);
  return out.substr(3, out.size() - 6);
}

// A tag may carry a prefix: gpx:wpt.
bool is_called(const pugi::xml_node& node, std::string_view name) {
  std::string_view tag = node.name();
  if (const auto colon = tag.rfind(':'); colon != std::string_view::npos) tag.remove_prefix(colon + 1);
  return tag == name;
}

std::string text_of(const pugi::xml_node& node, std::string_view name) {
  for (const pugi::xml_node& child : node.children())
    if (is_called(child, name)) return clean(child.text().get());
  return "";
}

class GpxReader {
 public:
  Result<WithRemarks<std::vector<Sighting>>> run(const pugi::xml_node& gpx);

 private:
  void point(const pugi::xml_node& node, const std::string& name);
  void points(const pugi::xml_node& line, std::string_view tag, const std::string& name, int& count);
  void lines(const pugi::xml_node& gpx);

  WithRemarks<std::vector<Sighting>> out_;
  std::size_t bad_ = 0, left_ = 0;
};

void GpxReader::point(const pugi::xml_node& node, const std::string& name) {
  if (out_.value.size() >= kMostSightings) {
    ++left_;
    return;
  }
  const auto latitude = plain_number(trimmed(node.attribute("lat").value()));
  const auto longitude = plain_number(trimmed(node.attribute("lon").value()));
  if (!latitude || !longitude || std::abs(*latitude) > 90 || std::abs(*longitude) > 180) {
    ++bad_;
    return;
  }
  Sighting s;
  s.method = SightingMethod::latitude_longitude;
  s.latitude = *latitude;
  s.longitude = *longitude;
  s.name = name.empty() ? "P" + std::to_string(out_.value.size() + 1) : name;
  s.note = text_of(node, "desc");
  const auto height = plain_number(text_of(node, "ele"));
  if (height && std::abs(*height) <= kMostSighted) s.height = *height;
  out_.value.push_back(std::move(s));
}

void GpxReader::points(const pugi::xml_node& line, std::string_view tag, const std::string& name,
                       int& count) {
  for (const pugi::xml_node& node : line.children())
    if (is_called(node, tag)) point(node, name + " " + std::to_string(++count));
}

void GpxReader::lines(const pugi::xml_node& gpx) {
  int track = 0;
  for (const pugi::xml_node& line : gpx.children()) {
    const bool route = is_called(line, "rte");
    if (!route && !is_called(line, "trk")) continue;
    std::string name = text_of(line, "name");
    ++track;
    if (name.empty()) name = (route ? "Route " : "Track ") + std::to_string(track);
    int count = 0;
    if (route) points(line, "rtept", name, count);
    for (const pugi::xml_node& segment : line.children())
      if (is_called(segment, "trkseg")) points(segment, "trkpt", name, count);
  }
}

Result<WithRemarks<std::vector<Sighting>>> GpxReader::run(const pugi::xml_node& gpx) {
  for (const pugi::xml_node& node : gpx.children())
    if (is_called(node, "wpt")) point(node, text_of(node, "name"));
  lines(gpx);
  if (bad_ > 0)
    out_.remarks.push_back(
        trouble(say("{} points had no usable latitude and longitude", std::to_string(bad_)), "", "",
                say("They were left out.")));
  if (left_ > 0)
    out_.remarks.push_back(trouble(say("the number of points"), std::to_string(out_.value.size() + left_),
                                   say("at most {}", std::to_string(kMostSightings)),
                                   say("The first were taken.")));
  if (out_.value.empty())
    return refuse(trouble(say("the GPX file"), say("without a point"),
                          say("a file with waypoints, routes or tracks"), say("Export it again.")));
  return std::move(out_);
}

}  // namespace

Result<WithRemarks<std::vector<Sighting>>> points_from_gpx(std::string_view text) {
  if (text.size() > kMostPointFile)
    return refuse(trouble(say("the GPX file"), say("{} MB", std::to_string(text.size() >> 20)),
                          say("at most 32 MB"), say("Export the points of this lot alone.")));
  pugi::xml_document document;
  const auto parsed = document.load_buffer(text.data(), text.size());
  if (!parsed)
    return refuse(trouble(say("the GPX file"),
                          say("not XML: {} at byte {}", parsed.description(), std::to_string(parsed.offset)),
                          say("XML throughout"), say("Export it again.")));
  for (const pugi::xml_node& node : document.children())
    if (is_called(node, "gpx")) return GpxReader().run(node);
  return refuse(trouble(say("the GPX file"), say("without a gpx element"), say("one that begins with <gpx>"),
                        say("Export it again.")));
}

}  // namespace underlawn
