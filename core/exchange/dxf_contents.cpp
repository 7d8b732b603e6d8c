// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/dxf_contents.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "base/say.h"
#include "base/utf8.h"

namespace underlawn {

namespace {

// What is read as line work or text; the rest of the kinds is counted and left out.
const std::set<std::string_view> kShapes = {"LINE",   "LWPOLYLINE", "POLYLINE", "ARC",   "CIRCLE", "ELLIPSE",
                                            "SPLINE", "POINT",      "SOLID",    "TRACE", "3DFACE", "HATCH"};
const std::set<std::string_view> kTexts = {"TEXT", "MTEXT", "ATTRIB"};
const std::set<std::string_view> kParts = {"VERTEX", "SEQEND"};  // of the entity before
constexpr int kDeepestBlock = 32;

double number(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '+')) text.remove_prefix(1);
  double value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

// A run of tags from one with code 0 up to the next.
struct Entity {
  std::string_view kind;
  std::size_t from, to;
};

struct Section {
  std::string_view name;
  std::size_t from, to;  // of what is between its name and its end
};

std::vector<Section> sections_of(const std::vector<DxfTag>& tags) {
  std::vector<Section> all;
  for (std::size_t i = 0; i + 1 < tags.size(); ++i) {
    if (tags[i].code != 0 || tags[i].value != "SECTION" || tags[i + 1].code != 2) continue;
    std::size_t end = i + 2;
    while (end < tags.size() &&
           !(tags[end].code == 0 &&
             (tags[end].value == "ENDSEC" || tags[end].value == "SECTION" || tags[end].value == "EOF")))
      ++end;
    all.push_back({tags[i + 1].value, i + 2, end});
    i = end - 1;
  }
  return all;
}

std::vector<Entity> entities_in(const std::vector<DxfTag>& tags, std::size_t from, std::size_t to) {
  std::vector<Entity> all;
  for (std::size_t i = from; i < to; ++i) {
    if (tags[i].code != 0) continue;
    if (!all.empty()) all.back().to = i;
    all.push_back({tags[i].value, i, to});
  }
  return all;
}

std::string_view value_of(const std::vector<DxfTag>& tags, const Entity& e, int code) {
  for (std::size_t i = e.from + 1; i < e.to; ++i)
    if (tags[i].code == code) return tags[i].value;
  return {};
}

bool in_paper_space(const std::vector<DxfTag>& tags, const Entity& e) {
  return number(value_of(tags, e, 67)) == 1;
}

// A mesh of faces, not a line: POLYLINE flags 16 (mesh) and 64 (faces).
bool is_mesh(const std::vector<DxfTag>& tags, const Entity& e) {
  if (e.kind != "POLYLINE") return false;
  const int flags = static_cast<int>(std::clamp(number(value_of(tags, e, 70)), 0.0, 1e6));
  return (flags & (16 | 64)) != 0;
}

struct Block {
  double shapes = 0;                                    // of its own
  std::vector<std::pair<std::string, double>> inserts;  // block, times
};

class Counter {
 public:
  Counter(const std::vector<DxfTag>& tags, DxfContents& out) : tags_(tags), out_(out) {}

  void header(const Section& s) {
    for (std::size_t i = s.from; i + 1 < s.to; ++i) {
      if (tags_[i].code != 9) continue;
      const std::string_view value = tags_[i + 1].value;
      if (tags_[i].value == "$ACADVER") out_.version = value;
      if (tags_[i].value == "$DWGCODEPAGE") out_.code_page = value;
      if (tags_[i].value == "$INSUNITS") out_.units = static_cast<int>(std::clamp(number(value), -1.0, 99.0));
    }
  }
  void tables(const Section& s) {
    for (const Entity& e : entities_in(tags_, s.from, s.to)) {
      if (e.kind != "LAYER") continue;
      const std::string name(value_of(tags_, e, 2));
      out_.layers.push_back(name);
      const int flags = static_cast<int>(std::clamp(number(value_of(tags_, e, 70)), 0.0, 1e6));
      if ((flags & 1) != 0 || number(value_of(tags_, e, 62)) < 0) out_.hidden.insert(name);
    }
  }
  void blocks(const Section& s) {
    Block* now = nullptr;
    for (const Entity& e : entities_in(tags_, s.from, s.to)) {
      if (e.kind == "BLOCK") now = &blocks_[std::string(value_of(tags_, e, 2))];
      if (e.kind == "ENDBLK") now = nullptr;
      if (now != nullptr) add(*now, e);
    }
  }
  void entities(const Section& s) {
    std::map<std::string, long> other;
    long paper = 0;
    for (const Entity& e : entities_in(tags_, s.from, s.to)) {
      if (e.kind == "VERTEX") add_bulges(e);
      if (kParts.contains(e.kind) || e.kind == "ATTRIB") continue;
      if (in_paper_space(tags_, e)) {
        ++paper;
        continue;
      }
      ++out_.held[std::string(e.kind)];
      if (is_mesh(tags_, e)) ++other[say("POLYLINE that is a mesh")];
      if (!kShapes.contains(e.kind) && !kTexts.contains(e.kind) && e.kind != "INSERT")
        ++other[std::string(e.kind)];
      add(drawn_, e);
    }
    for (const auto& [kind, count] : other)
      out_.left_out.push_back({kind, count, say("is no line work of a lot, or cannot be drawn")});
    if (paper > 0)
      out_.left_out.push_back({say("in paper space"), paper, say("belongs to the sheet, not to the lot")});
  }
  void finish() {
    out_.expected = shapes_of(drawn_, 0);
    out_.largest_radius *= largest_scale_;
  }

 private:
  void add(Block& block, const Entity& e) {
    if (e.kind == "ARC" || e.kind == "CIRCLE") widen(number(value_of(tags_, e, 40)));
    if (e.kind == "ELLIPSE")
      widen(std::hypot(number(value_of(tags_, e, 11)), number(value_of(tags_, e, 21))));
    if (e.kind == "LWPOLYLINE" || e.kind == "POLYLINE" || e.kind == "VERTEX") add_bulges(e);
    if (kShapes.contains(e.kind) && !is_mesh(tags_, e)) ++block.shapes;
    if (e.kind != "INSERT") return;
    for (int scale : {41, 42})
      if (const double by = std::abs(number(value_of(tags_, e, scale))); by < 1e6)
        largest_scale_ = std::max(largest_scale_, by);
    const auto times = [&](int code) { return std::max(1.0, number(value_of(tags_, e, code))); };
    block.inserts.emplace_back(std::string(value_of(tags_, e, 2)), times(70) * times(71));
  }
  void widen(double radius) {
    if (std::abs(radius) < 1e12) out_.largest_radius = std::max(out_.largest_radius, std::abs(radius));
  }
  // Of the arc from one vertex to the next: chord (1 + b^2) / 4b. The way back to the first one is not looked
  // at: it is no longer than the others together.
  void add_bulges(const Entity& e) {
    if (e.kind != "VERTEX") bulge_ = 0;
    for (std::size_t i = e.from + 1; i < e.to; ++i) {
      const double v = number(tags_[i].value);
      if (tags_[i].code == 10) x_ = v;
      if (tags_[i].code == 20) {
        const double chord = std::hypot(x_ - before_x_, v - before_y_);
        if (std::abs(bulge_) > 1e-6) widen(chord * (1 + bulge_ * bulge_) / (4 * std::abs(bulge_)));
        before_x_ = x_;
        before_y_ = v;
        bulge_ = 0;
      }
      if (tags_[i].code == 42) bulge_ = v;
    }
  }
  double shapes_of(const Block& block, int depth) {
    double all = block.shapes;
    for (const auto& [name, times] : block.inserts) all += times * shapes_of(name, depth + 1);
    return all;
  }
  double shapes_of(const std::string& name, int depth) {
    if (depth > kDeepestBlock) {
      out_.blocks_in_themselves = true;
      return 0;
    }
    const auto at = blocks_.find(name);
    if (at == blocks_.end()) return 0;
    const auto known = known_.find(name);
    if (known != known_.end()) return known->second;
    if (!open_.insert(name).second) {
      out_.blocks_in_themselves = true;
      return 0;
    }
    const double all = shapes_of(at->second, depth);
    open_.erase(name);
    return known_[name] = all;
  }

  const std::vector<DxfTag>& tags_;
  DxfContents& out_;
  std::map<std::string, Block> blocks_;
  std::map<std::string, double> known_;
  std::set<std::string> open_;
  Block drawn_;
  double largest_scale_ = 1;
  double x_ = 0, before_x_ = 0, before_y_ = 0, bulge_ = 0;  // of the polyline that is being read
};

// Codes whose values are names and texts of people (DXF Reference, group code value types).
bool is_text(int code) {
  return (code >= 1 && code <= 9) || (code >= 300 && code <= 309) || code == 1000 || code == 1003;
}

void judge_texts(const std::vector<DxfTag>& tags, DxfContents& out) {
  bool ascii = true;
  for (const DxfTag& tag : tags) {
    if (!is_text(tag.code)) continue;
    bool high = false;
    for (char c : tag.value) high = high || static_cast<unsigned char>(c) > 127;
    if (!high) continue;
    ascii = false;
    std::size_t bad = 0;
    valid_utf8(tag.value, &bad);
    if (bad > 0) out.utf8 = false;
  }
  out.lies_about_code_page =
      !ascii && out.utf8 && out.version < "AC1021" && !out.code_page.empty() && out.code_page != "UTF-8";
}

// "\U+00DF" of older versions.
std::string without_escapes(std::string text) {
  for (std::size_t at = 0; (at = text.find("\\U+", at)) != std::string::npos;) {
    unsigned code = 0;
    const char* from = text.data() + at + 3;
    const char* most = text.data() + std::min(text.size(), at + 7);
    const auto [end, error] = std::from_chars(from, most, code, 16);
    if (error != std::errc() || end != from + 4 || code < 32 || (code >= 0xD800 && code < 0xE000)) {
      at += 3;
      continue;
    }
    std::string utf8;
    if (code < 0x80) {
      utf8 += static_cast<char>(code);
    } else if (code < 0x800) {
      utf8 += static_cast<char>(0xC0 | (code >> 6));
      utf8 += static_cast<char>(0x80 | (code & 63));
    } else {
      utf8 += static_cast<char>(0xE0 | (code >> 12));
      utf8 += static_cast<char>(0x80 | ((code >> 6) & 63));
      utf8 += static_cast<char>(0x80 | (code & 63));
    }
    text.replace(at, 7, utf8);
    at += utf8.size();
  }
  return text;
}

class Writer {
 public:
  Writer(const std::vector<DxfTag>& tags, const DxfContents& contents, Recode recode)
      : tags_(tags), contents_(contents), recode_(recode) {}

  void header() {
    text_ +=
        "  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\nAC1015\n  9\n$DWGCODEPAGE\n  3\nUTF-8\n  0\nENDSEC\n";
  }
  void section(const Section& s) {
    text_ += "  0\nSECTION\n  2\n" + std::string(s.name) + "\n";
    if (s.name == "TABLES")
      for (std::size_t i = s.from; i < s.to; ++i) tag(tags_[i]);
    else
      for (const Entity& e : entities_in(tags_, s.from, s.to)) entity(e);
    text_ += "  0\nENDSEC\n";
  }
  std::string take() {
    text_ += "  0\nEOF\n";
    return std::move(text_);
  }

 private:
  void tag(const DxfTag& t) {
    text_ += std::to_string(t.code) + "\n";
    if (is_text(t.code))
      text_ += one_line(t.value);
    else
      text_ += t.value;
    text_ += "\n";
  }
  std::string one_line(std::string_view value) const {
    std::string text = contents_.utf8 ? std::string(value) : recode_(value, contents_.code_page);
    for (char& c : text)
      if (c == '\n' || c == '\r' || c == '\0') c = ' ';
    return without_escapes(std::move(text));
  }
  // Drops what is left out together with the parts that follow it.
  void entity(const Entity& e) {
    const bool frame = e.kind == "BLOCK" || e.kind == "ENDBLK";
    const bool part = kParts.contains(e.kind);
    if (!part) dropping_ = false;
    if (dropping_) return;
    const bool wanted =
        frame || part || kShapes.contains(e.kind) || kTexts.contains(e.kind) || e.kind == "INSERT";
    if (!wanted || is_mesh(tags_, e) || (!part && in_paper_space(tags_, e))) {
      dropping_ = true;
      return;
    }
    for (std::size_t i = e.from; i < e.to; ++i) tag(tags_[i]);
  }

  const std::vector<DxfTag>& tags_;
  const DxfContents& contents_;
  Recode recode_;
  std::string text_;
  bool dropping_ = false;
};

}  // namespace

DxfContents dxf_contents(const DxfTags& dxf) {
  DxfContents out;
  Counter counter(dxf.tags, out);
  const auto sections = sections_of(dxf.tags);
  for (const Section& s : sections) {
    if (s.name == "HEADER") counter.header(s);
    if (s.name == "TABLES") counter.tables(s);
    if (s.name == "BLOCKS") counter.blocks(s);
  }
  for (const Section& s : sections)
    if (s.name == "ENTITIES") counter.entities(s);
  counter.finish();
  judge_texts(dxf.tags, out);
  return out;
}

std::string plain_dxf(const DxfTags& dxf, const DxfContents& contents, Recode recode) {
  Writer writer(dxf.tags, contents, recode);
  writer.header();
  const auto sections = sections_of(dxf.tags);
  for (std::string_view name : {"TABLES", "BLOCKS", "ENTITIES"})
    for (const Section& s : sections)
      if (s.name == name) writer.section(s);
  return writer.take();
}

// DXF Reference, header variable $INSUNITS. US survey foot: NIST SP 811, 1200/3937 m.
double dxf_unit(int insunits, std::string& name) {
  struct Row {
    int code;
    double metres;
    const char* name;
  };
  static constexpr std::array<Row, 10> kRows = {{{1, 0.0254, mark("inches")},
                                                 {2, 0.3048, mark("feet")},
                                                 {3, 1609.344, mark("miles")},
                                                 {4, 0.001, mark("millimetres")},
                                                 {5, 0.01, mark("centimetres")},
                                                 {6, 1, mark("metres")},
                                                 {7, 1000, mark("kilometres")},
                                                 {10, 0.9144, mark("yards")},
                                                 {14, 0.1, mark("decimetres")},
                                                 {21, 1200.0 / 3937.0, mark("US survey feet")}}};
  for (const Row& row : kRows)
    if (row.code == insunits) {
      name = row.name;
      return row.metres;
    }
  name.clear();
  return 0;
}

}  // namespace underlawn
