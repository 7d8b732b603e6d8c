// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/map_plane.h"

#include <cpl_conv.h>
#include <ogr_spatialref.h>

#include <cmath>
#include <limits>
#include <memory>
#include <numbers>

#include "exchange/library_session.h"
#include "exchange/plane_system.h"

namespace underlawn {

namespace {

constexpr double kNowhere = std::numeric_limits<double>::quiet_NaN();

std::vector<Point> transformed(const OGRSpatialReference& from, const OGRSpatialReference& to,
                               const std::vector<Point>& points) {
  const std::unique_ptr<OGRCoordinateTransformation> change(OGRCreateCoordinateTransformation(&from, &to));
  std::vector<Point> out(points.size(), Point{kNowhere, kNowhere});
  if (!change) return out;
  std::vector<double> x, y;
  for (Point p : points) {
    x.push_back(p.x);
    y.push_back(p.y);
  }
  std::vector<int> good(points.size(), 0);
  if (!points.empty())
    change->Transform(static_cast<int>(points.size()), x.data(), y.data(), nullptr, good.data());
  for (std::size_t i = 0; i < points.size(); ++i)
    if (good[i] != 0 && std::isfinite(x[i]) && std::isfinite(y[i])) out[i] = {x[i], y[i]};
  return out;
}

double turn_of(double north) {
  return north - std::numbers::pi / 2;
}

}  // namespace

OGRSpatialReference world_system() {
  OGRSpatialReference world;
  world.SetWellKnownGeogCS("WGS84");
  world.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  return world;
}

OGRSpatialReference plane_system(const LatLon& about) {
  OGRSpatialReference plane;
  plane.SetProjCS("Local plane of the lot");
  plane.SetWellKnownGeogCS("WGS84");
  plane.SetTM(about.latitude, about.longitude, 1, 0, 0);
  plane.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  return plane;
}

std::vector<Point> to_plane(const LatLon& about, const std::vector<LatLon>& places) {
  const LibrarySession session;
  std::vector<Point> degrees;
  degrees.reserve(places.size());
  for (const LatLon& p : places) degrees.push_back({p.longitude, p.latitude});
  return transformed(world_system(), plane_system(about), degrees);
}

std::vector<LatLon> from_plane(const LatLon& about, const std::vector<Point>& points) {
  const LibrarySession session;
  std::vector<LatLon> out;
  for (Point p : transformed(plane_system(about), world_system(), points)) out.push_back({p.y, p.x});
  return out;
}

std::vector<Point> to_plan(const MapPlace& place, double north, const std::vector<LatLon>& places) {
  auto points = to_plane({place.latitude, place.longitude}, places);
  for (Point& p : points) p = place.at + rotated(p, turn_of(north));
  return points;
}

std::vector<LatLon> from_plan(const MapPlace& place, double north, const std::vector<Point>& points) {
  std::vector<Point> plane;
  plane.reserve(points.size());
  for (Point p : points) plane.push_back(rotated(p - place.at, -turn_of(north)));
  return from_plane({place.latitude, place.longitude}, plane);
}

std::string plane_wkt(const LatLon& about) {
  char* text = nullptr;
  plane_system(about).exportToWkt(&text);
  const std::string wkt = text == nullptr ? "" : text;
  CPLFree(text);
  return wkt;
}

}  // namespace underlawn
