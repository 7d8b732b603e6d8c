// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/help.h"
#include "cli/help_words.h"

namespace underlawn::cli {

namespace {

// Text as troff takes it: a hyphen that can be typed back, no accidental requests.
std::string troff(std::string_view text) {
  std::string out;
  for (char c : text) {
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else
      out += c;
  }
  if (out.starts_with('.') || out.starts_with('\'')) out.insert(0, "\\&");
  return out;
}

std::string section(std::string_view name) {
  return ".SH " + std::string(name) + "\n";
}

std::string paragraph(std::string_view text) {
  return ".PP\n" + troff(text) + "\n";
}

std::string item(std::string_view name, std::string_view text) {
  return ".TP\n.B " + troff(name) + "\n" + troff(text) + "\n";
}

std::string verb_section(const Verb& verb) {
  std::string out = ".SS " + troff(usage_of(verb)) + "\n" + troff(verb.details) + "\n";
  for (const Option& option : verb.options)
    out += item(option.name + (option.value.empty() ? "" : " " + option.value), option.help);
  return out;
}

std::string example(std::string_view command, std::string_view text) {
  return ".PP\n" + troff(text) + "\n.PP\n.RS 4\n.EX\n" + troff(command) + "\n.EE\n.RE\n";
}

}  // namespace

std::string man_page() {
  std::string out =
      ".\\\" Written by “underlawn --man”.\n.TH UNDERLAWN 1 \"\" \"Underlawn " UNDERLAWN_VERSION "\"\n";
  out += section("NAME") + "underlawn \\- " + troff(kPurpose) + "\n";
  out += section("SYNOPSIS") + ".B underlawn\n.RI [ PLAN ]\n";
  for (const Verb& verb : verbs()) out += ".br\n.B underlawn\n" + troff(usage_of(verb)) + "\n";
  out += section("DESCRIPTION") + troff(kWindow) + "\n";
  out += paragraph("Results go to standard output, trouble to standard error.");
  out += section("VERBS");
  for (const Verb& verb : verbs()) out += verb_section(verb);
  out += section("OPTIONS");
  for (const auto& [name, text] : kGeneral) out += item(name, text);
  out += section("EXIT STATUS");
  for (const auto& [code, text] : kExits) out += item(code, text);
  out += section("ENVIRONMENT");
  out += item("DISPLAY, WAYLAND_DISPLAY, QT_QPA_PLATFORM",
              "There is a display when one of these is set. Verbs need none.");
  out += section("FILES");
  out += item("*.underlawn", "Plans: UTF-8 JSON, in SI units, described by resources/plan.schema.json.");
  out += item("results.json", "Results, described by resources/results.schema.json.");
  out += section("EXAMPLES");
  out += example("underlawn check lane.underlawn && underlawn solve lane.underlawn --out lane",
                 "Write results and sheet once no unaccepted error remains:");
  out +=
      example("underlawn sheet lane.underlawn --paper tabloid --scale 240", "A dig sheet at 1 in to 20 ft:");
  return out + section("CAUTION") + troff(kCaution) + "\n";
}

}  // namespace underlawn::cli
