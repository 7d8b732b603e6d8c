// SPDX-License-Identifier: GPL-3.0-or-later
#include "survey/earth.h"

#include <proj.h>

#include <cmath>
#include <numbers>

#include "base/say.h"
#include "base/table_text.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr double kDegree = std::numbers::pi / 180;
constexpr double kMostLatitude = 89.9;

// PROJ needs no files for these projections and is kept from looking for any.
struct Projection {
  PJ_CONTEXT* context = proj_context_create();
  PJ* projection = nullptr;

  explicit Projection(const char* text) {
    proj_log_level(context, PJ_LOG_NONE);
    proj_context_set_enable_network(context, 0);
    projection = proj_create(context, text);
  }
  Projection(const Projection&) = delete;
  Projection& operator=(const Projection&) = delete;
  ~Projection() {
    proj_destroy(projection);
    proj_context_destroy(context);
  }
};

Result<Point> run(const Projection& p, PJ_DIRECTION way, double a, double b) {
  if (p.projection == nullptr)
    return refuse({"projection_not_there", say("the projection"), say("not made"), say("known to PROJ"),
                   say("Report this.")});
  proj_errno_reset(p.projection);
  const PJ_COORD out = proj_trans(p.projection, way, proj_coord(a, b, 0, 0));
  const bool sound = proj_errno(p.projection) == 0 && std::isfinite(out.xy.x) && std::isfinite(out.xy.y);
  if (!sound)
    return refuse({"not_projected", say("the place on the map"), shortest(a) + ", " + shortest(b),
                   say("within the projection"), say("Check latitude and longitude.")});
  return Point{out.xy.x, out.xy.y};
}

Result<void> on_earth(double latitude, double longitude) {
  if (!(std::abs(latitude) <= kMostLatitude))
    return refuse({"latitude_out_of_bounds", say("the latitude"), shortest(latitude) + "°",
                   say("from -89.9° to 89.9°"), say("North of the equator it is more than 0.")});
  if (!(std::abs(longitude) <= 360))
    return refuse({"longitude_out_of_bounds", say("the longitude"), shortest(longitude) + "°",
                   say("from -180° to 180°"), say("West of Greenwich it is less than 0.")});
  return {};
}

}  // namespace

struct EarthFrame::Library : Projection {
  using Projection::Projection;
};

Result<EarthFrame> EarthFrame::at(const MapPlace& place, double north) {
  if (const auto ok = on_earth(place.latitude, place.longitude); !ok) return refuse(ok.error());
  EarthFrame frame;
  const std::string text = "+proj=tmerc +ellps=WGS84 +k=1 +lat_0=" + shortest(place.latitude) +
                           " +lon_0=" + shortest(place.longitude);
  frame.library_ = std::make_shared<Library>(text.c_str());
  frame.place_ = place;
  frame.north_ = north;
  return frame;
}

Result<Point> EarthFrame::to_plan(double latitude, double longitude) const {
  if (const auto ok = on_earth(latitude, longitude); !ok) return refuse(ok.error());
  const auto there = run(*library_, PJ_FWD, longitude * kDegree, latitude * kDegree);
  if (!there) return refuse(there.error());
  const double far = norm(*there);
  if (far > 2 * kLargestPlan)
    return refuse({"place_too_far", say("the distance from the plan's place on the map"),
                   say("{} km", shortest(std::round(far / 1000))),
                   say("at most {} km", shortest(2 * kLargestPlan / 1000)),
                   say("It is of another lot, or the place is wrong.")});
  return place_.at + rotated(*there, north_ - std::numbers::pi / 2);
}

Result<std::pair<double, double>> EarthFrame::to_earth(Point at) const {
  const Point there = rotated(at - place_.at, std::numbers::pi / 2 - north_);
  const auto back = run(*library_, PJ_INV, there.x, there.y);
  if (!back) return refuse(back.error());
  return std::pair{back->y / kDegree, back->x / kDegree};
}

Result<Point> projected(const char* projection, double latitude, double longitude) {
  if (const auto ok = on_earth(latitude, longitude); !ok) return refuse(ok.error());
  return run(Projection(projection), PJ_FWD, longitude * kDegree, latitude * kDegree);
}

}  // namespace underlawn
