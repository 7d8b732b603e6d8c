// SPDX-License-Identifier: GPL-3.0-or-later
// What a DXF file holds, counted in its own bytes, so that no reader can lose something unseen; and the file
// written out again in the one form that every reader takes: text, UTF-8, sections in the usual order, model
// space only.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "exchange/drawing.h"
#include "exchange/dxf_tags.h"

namespace underlawn {

struct DxfContents {
  std::string version;    // "AC1015"
  std::string code_page;  // "ANSI_1252" as the header says; empty where it does not
  int units = 0;          // $INSUNITS
  bool utf8 = true;       // texts are UTF-8 (or plain ASCII), whatever the header says
  bool lies_about_code_page = false;
  std::map<std::string, long> held;  // entities of model space, as they stand in the file
  std::vector<LeftOut> left_out;     // kinds that are no line work, paper space
  std::set<std::string> hidden;      // names of layers that are off or frozen
  std::vector<std::string> layers;   // named in the file's table
  double expected = 0;               // shapes with every block put in place; texts not counted
  double largest_radius = 0;         // of arcs and circles, in the drawing's unit
  bool blocks_in_themselves = false;
};

DxfContents dxf_contents(const DxfTags& tags);

// Makes UTF-8 of a text in a code page; implemented where a library knows code pages.
using Recode = std::string (*)(std::string_view text, const std::string& code_page);

std::string plain_dxf(const DxfTags& tags, const DxfContents& contents, Recode recode);

// Metres per drawing unit of $INSUNITS and its name; 0 and "" where it is unitless or no length of a lot's.
double dxf_unit(int insunits, std::string& name);

}  // namespace underlawn
