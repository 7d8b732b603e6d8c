// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <cmath>

#include "base/say.h"
#include "exchange/export_plan.h"
#include "field/straight.h"

namespace underlawn {

namespace {

constexpr int kPointsPerLoop = 32;  // a chord lies 2 mm off a 0.9 m loop

std::string layer_of(const Feature& f) {
  static constexpr std::array<const char*, 6> kUtilities = {"V-POWR-UNDR", "V-NGAS-UNDR", "V-COMM-UNDR",
                                                            "V-WATR-UNDR", "V-SSWR-UNDR", "V-RECL-UNDR"};
  switch (f.kind) {
    case FeatureKind::house:
      return "V-BLDG-OTLN";
    case FeatureKind::drive:
      return "V-DRIV-OTLN";
    case FeatureKind::septic_tank:
      return "V-SSWR-SEPT";
    case FeatureKind::drain_field:
      return "V-SSWR-LEAC";
    case FeatureKind::reserve_field:
      return "V-SSWR-RESV";
    case FeatureKind::well:
      return "V-WATR-WELL";
    case FeatureKind::tree:
      return "V-SITE-VEGE";
    case FeatureKind::easement:
      return "V-PROP-ESMT";
    case FeatureKind::no_dig:
      return "V-SITE-NDIG";
    case FeatureKind::utility:
      return kUtilities[static_cast<std::size_t>(f.utility)];
  }
  return "V-SITE-OTHR";
}

ShapeKind shape_kind(const Feature& f) {
  const FeatureShape s = shape_of(f.kind);
  return s == FeatureShape::area   ? ShapeKind::area
         : s == FeatureShape::line ? ShapeKind::line
                                   : ShapeKind::point;
}

ExportPart part(std::string table, std::string layer, ShapeKind kind, std::vector<Point> points) {
  return {std::move(table), std::move(layer), kind, std::move(points), "", {}, 0};
}

ExportPart lot_part(const Site& site) {
  ExportPart p = part("lot", "V-PROP-LINE", ShapeKind::area, lot_ring(site));
  std::string setbacks;
  for (const LotCorner& c : site.lot) {
    char text[32];
    std::snprintf(text, sizeof text, "%.4g", c.setback);
    setbacks += (setbacks.empty() ? "" : " ") + std::string(text);
  }
  p.attributes = {{"setbacks_m", setbacks}};
  return p;
}

ExportPart feature_part(const Feature& f) {
  ExportPart p = part("features", layer_of(f), shape_kind(f), f.points);
  p.label = f.name;
  p.attributes = {{"id", f.id}, {"kind", std::string(kind_name(f.kind))}, {"name", f.name}};
  if (f.kind == FeatureKind::utility) {
    p.attributes.push_back({"utility", std::string(utility_name(f.utility))});
    p.attributes.push_back({"depth_m", f.depth});
  }
  if (f.kind == FeatureKind::tree) p.attributes.push_back({"trunk_diameter_m", f.trunk_diameter});
  if (!f.note.empty()) p.attributes.push_back({"note", f.note});
  return p;
}

Polyline pipe_of(const Trench& t) {
  const bool standing = t.coil.pattern == CoilPattern::upright_coil;
  const Polyline flat = standing                      ? Polyline{{0, 0}, {t.coil.trench_length, 0}}
                        : is_straight(t.coil.pattern) ? straight_path(t.coil)
                                                      : coil_path(t.coil, kPointsPerLoop);
  return on_lot(t, flat);
}

void add_trench(std::vector<ExportPart>& all, const Trench& t) {
  ExportPart floor = part("trenches", "M-LOOP-TRCH", ShapeKind::area, floor_of(t));
  floor.label = std::to_string(t.number);
  floor.attributes = {{"number", t.number},
                      {"width_m", t.width},
                      {"depth_m", t.depth},
                      {"length_m", length_of(t)},
                      {"role", std::string(t.role == TrenchRole::field ? "field" : "supply")}};
  all.push_back(std::move(floor));
  if (!t.coil.laid()) return;
  ExportPart pipe = part("coils", "M-LOOP-COIL", ShapeKind::line, pipe_of(t));
  pipe.attributes = {{"trench", t.number},
                     {"pattern", std::string(pattern_name(t.coil.pattern))},
                     {"pipe_m", t.coil.coil_length},
                     {"pitch_m", t.coil.pitch}};
  all.push_back(std::move(pipe));
}

void add_stakes(std::vector<ExportPart>& all, const StakeOut& stakes) {
  for (const Tie& tie : stakes.ties) {
    ExportPart p = part("stakes", "M-LOOP-STAK", ShapeKind::point, {tie.at});
    p.label = tie.point;
    p.attributes = {{"point", tie.point},
                    {"from", tie.first},
                    {"from_m", tie.first_distance},
                    {"and_from", tie.second},
                    {"and_from_m", tie.second_distance}};
    all.push_back(std::move(p));
  }
  for (const HouseCorner& c : stakes.corners) {
    ExportPart p = part("stakes", "M-LOOP-STAK", ShapeKind::point, {c.at});
    p.label = c.tag;
    p.attributes = {{"point", "house corner " + c.tag}};
    all.push_back(std::move(p));
  }
}

}  // namespace

std::vector<ExportPart> export_parts(const Plan& plan, const Layout& layout, const StakeOut& stakes) {
  std::vector<ExportPart> all;
  if (plan.site.lot.size() >= 3) all.push_back(lot_part(plan.site));
  for (const Feature& f : plan.site.features) all.push_back(feature_part(f));
  for (const SpotHeight& h : plan.site.heights) {
    ExportPart p = part("heights", "V-TOPO-SPOT", ShapeKind::point, {h.at});
    p.height = h.height;
    p.attributes = {{"height_m", h.height}};
    all.push_back(std::move(p));
  }
  for (const Trench& t : layout.trenches) add_trench(all, t);
  for (std::size_t i = 0; i < layout.header.legs.size(); ++i) {
    const Polyline& leg = layout.header.legs[i];
    if (leg.size() < 2) continue;
    all.push_back(part("header", "M-LOOP-HEAD", ShapeKind::line, leg));
    all.back().attributes = {{"length_m", length(leg)},
                             {"depth_m", depth_of_leg(layout.header, i, plan.wishes.run_depth)}};
  }
  if (layout.run.line.size() >= 2) {
    all.push_back(part("run", "M-LOOP-MAIN", ShapeKind::line, layout.run.line));
    all.back().attributes = {{"length_m", layout.run.length},
                             {"depth_m", layout.run.depth.value_or(plan.wishes.run_depth)}};
  }
  add_stakes(all, stakes);
  return all;
}

std::optional<ExportForm> export_form(std::string_view word) {
  if (word == "dxf") return ExportForm::dxf;
  if (word == "geojson") return ExportForm::geojson;
  if (word == "gpkg" || word == "geopackage") return ExportForm::geopackage;
  return std::nullopt;
}

std::string_view ending_of(ExportForm form) {
  return form == ExportForm::dxf ? ".dxf" : form == ExportForm::geojson ? ".geojson" : ".gpkg";
}

Result<std::string> exported(ExportForm form, const Plan& plan, const std::vector<ExportPart>& parts) {
  if (parts.empty())
    return refuse(
        {"nothing_to_export", say("the plan is empty"), "", "", say("Draw the lot, or bring a drawing in.")});
  return form == ExportForm::dxf ? to_dxf(parts, plan.units) : to_map_file(form, plan, parts);
}

}  // namespace underlawn
