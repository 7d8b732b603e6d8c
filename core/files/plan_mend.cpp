// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/plan_mend.h"

#include <algorithm>
#include <set>

#include "base/say.h"
#include "base/typed_text.h"
#include "cost/pricing_troubles.h"
#include "files/names.h"
#include "plane/region.h"

namespace underlawn {

namespace {

constexpr int kLargestId = 1'000'000'000;  // leaves room above for the next one
constexpr std::size_t kMostRemarks = 200;

// Above all that are taken, as ids are never used again; only where there is no room above, the lowest that
// is free.
int free_id(const std::set<int>& taken) {
  const int above = taken.empty() ? 1 : *taken.rbegin() + 1;
  if (above <= kLargestId) return above;
  int lowest = 1;
  for (int id : taken)
    if (id == lowest) ++lowest;
  return lowest;
}

// Ids are unique and positive: features with another one get their own. Features are sorted by id.
void mend_ids(std::vector<Feature>& features, std::vector<Trouble>& remarks) {
  std::set<int> taken;
  std::vector<std::pair<Feature*, std::string>> homeless;  // with what was found
  for (Feature& f : features) {
    if (f.id <= 0 || f.id > kLargestId)
      homeless.push_back({&f, std::to_string(f.id)});
    else if (!taken.insert(f.id).second)
      homeless.push_back({&f, say("{}, as that of another one", std::to_string(f.id))});
  }
  for (const auto& [f, found] : homeless) {
    f->id = free_id(taken);
    taken.insert(f->id);
    remarks.push_back({"plan_id_changed",
                       f->name.empty() ? say("the id of feature without a name")
                                       : say("the id of feature {}", in_quotes(f->name)),
                       found, say("from 1 to {} and its own", std::to_string(kLargestId)),
                       say("It got the id {}.", std::to_string(f->id))});
  }
  std::ranges::stable_sort(features, {}, &Feature::id);
}

void drop_second_rules(std::vector<ClearanceRule>& rules, std::vector<Trouble>& remarks) {
  std::set<FeatureKind> seen;
  std::erase_if(rules, [&](const ClearanceRule& rule) {
    if (seen.insert(rule.kind).second) return false;
    remarks.push_back({"plan_element_left_out",
                       say("the clearance rule for {}", std::string(name_of(kFeatureKindNames, rule.kind))),
                       say_as("a rule", "there twice"), say_as("a rule", "there once"),
                       say("The first one was taken.")});
    return true;
  });
}

void bound_lot(std::vector<LotCorner>& lot, std::vector<Trouble>& remarks) {
  if (lot.size() <= static_cast<std::size_t>(kMostRingPoints)) return;
  remarks.push_back({"plan_element_left_out", say("the number of lot corners"), std::to_string(lot.size()),
                     say("at most {}", std::to_string(kMostRingPoints)),
                     say("The lot line was left out; draw it again.")});
  lot.clear();
}

void bound_dimensions(std::vector<Dimension>& dimensions, std::vector<Trouble>& remarks) {
  if (dimensions.size() <= static_cast<std::size_t>(kMostDimensions)) return;
  remarks.push_back({"plan_element_left_out", say("the number of dimensions"),
                     std::to_string(dimensions.size()), say("at most {}", std::to_string(kMostDimensions)),
                     say("Those beyond were left out.")});
  dimensions.resize(static_cast<std::size_t>(kMostDimensions));
}

template <class T>
void bound_list(std::vector<T>& list, const std::string& what, std::size_t most,
                std::vector<Trouble>& remarks) {
  if (list.size() <= most) return;
  remarks.push_back({"plan_element_left_out", what, std::to_string(list.size()),
                     say("at most {}", std::to_string(most)), say("Those beyond were left out.")});
  list.resize(most);
}

// Rows of the price book by key, each once.
void mend_prices(Pricing& pricing, std::vector<Trouble>& remarks) {
  std::vector<PriceRow>& rows = pricing.book.rows;
  bound_list(rows, "prices", kMostPriceRows, remarks);
  std::ranges::stable_sort(rows, {}, &PriceRow::key);
  // Not of std::ranges: clang 14, which the fuzz targets need, cannot read that of this library.
  const auto twice = std::unique(rows.begin(), rows.end(),
                                 [](const PriceRow& a, const PriceRow& b) { return a.key == b.key; });
  if (twice != rows.end())
    remarks.push_back({"plan_element_left_out", say("a price of the book"), say_as("a price", "there twice"),
                       say_as("a price", "there once"), say("The first one was taken.")});
  rows.erase(twice, rows.end());
  bound_list(pricing.terms.extras, say("the number of lines of your own"), kMostOwnLines, remarks);
  bound_list(pricing.terms.incentives, say("the number of incentives"), kMostOwnLines, remarks);
  bound_list(pricing.running.others, say("the number of other ways to heat and cool"), kMostSystems, remarks);
}

void bound_pictures(std::vector<Picture>& pictures, std::vector<Trouble>& remarks) {
  if (pictures.size() <= static_cast<std::size_t>(kMostPictures)) return;
  remarks.push_back({"plan_element_left_out", say("the number of pictures"), std::to_string(pictures.size()),
                     say("at most {}", std::to_string(kMostPictures)), say("The first ones were kept.")});
  pictures.resize(static_cast<std::size_t>(kMostPictures));
}

void bound_remarks(std::vector<Trouble>& remarks) {
  if (remarks.size() <= kMostRemarks) return;
  const std::size_t more = remarks.size() - kMostRemarks;
  remarks.resize(kMostRemarks);
  remarks.push_back(
      {"more_remarks", say("there are {} more remarks of this kind", std::to_string(more)), "", "", ""});
}

}  // namespace

void mend(Plan& plan, std::vector<Trouble>& remarks) {
  mend_ids(plan.site.features, remarks);
  drop_second_rules(plan.site.rules, remarks);
  bound_lot(plan.site.lot, remarks);
  bound_dimensions(plan.dimensions, remarks);
  mend_prices(plan.pricing, remarks);
  std::ranges::stable_sort(plan.accepted, {}, &Acceptance::finding);
  bound_pictures(plan.pictures, remarks);
  bound_remarks(remarks);
}

}  // namespace underlawn
