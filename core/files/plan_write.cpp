// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "files/json_points.h"
#include "files/plan_file.h"
#include "files/plan_keys.h"

namespace underlawn {

namespace {

// Puts what it is shown into an object, in the order it is shown.
class Writer {
 public:
  explicit Writer(Json& object) : object_(object) {}

  template <class T>
  void key(const char* name, const T& value) {
    object_[name] = to_json(value);
  }
  template <class T>
  void key(const char* name, const std::optional<T>& value) {
    if (value) key(name, *value);
  }
  template <class T>
  void key_if(bool applies, const char* name, const T& value) {
    if (applies) key(name, value);
  }
  template <class E, std::size_t N>
  void choice(const char* name, E value, const Names<E, N>& names) {
    object_[name] = name_of(names, value);
  }
  template <class E, std::size_t N>
  void choice_if(bool applies, const char* name, E value, const Names<E, N>& names) {
    if (applies) choice(name, value, names);
  }
  template <class T>
  void part(const char* name, T& value) {
    object_[name] = written(value);
  }
  template <class T>
  void part(const char* name, std::optional<T>& value) {
    if (value) part(name, *value);
  }
  template <class T>
  void part_if(bool applies, const char* name, T& value) {
    if (applies) part(name, value);
  }
  template <class T>
  void list_if(bool applies, const char* name, std::vector<T>& values) {
    if (applies) list(name, values);
  }
  template <class T>
  void list(const char* name, std::vector<T>& values) {
    Json all = Json::array();
    for (T& value : values) all.push_back(written(value));
    object_[name] = std::move(all);
  }

 private:
  template <class T>
  static Json written(T& value) {
    Json object = Json::object();
    Writer writer(object);
    walk_keys(writer, value);
    return object;
  }

  Json& object_;
};

}  // namespace

std::string plan_to_text(const Plan& plan) {
  Plan sorted = plan;
  std::ranges::stable_sort(sorted.site.features, {}, &Feature::id);
  std::ranges::stable_sort(sorted.accepted, {}, &Acceptance::finding);
  Json tree = Json::object();
  tree["format_version"] = kPlanFormat;
  Writer writer(tree);
  walk_keys(writer, sorted);
  return json_to_text(tree);
}

}  // namespace underlawn
