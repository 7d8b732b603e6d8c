// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheets/typed_words.h"

#include <QRegularExpression>
#include <QString>
#include <QStringList>

#include "base/say.h"
#include "plan/usual_terms.h"
#include "site/names.h"
#include "site/site.h"

namespace underlawn {

namespace {

// Words that no text of some length in their language goes without, and that the other has not.
const QStringList kEnglish{"the",  "and", "of",  "is",  "we", "you", "for", "with",
                           "that", "or",  "not", "are", "it", "our", "on",  "new"};
const QStringList kSpanish{"el",  "la",  "los", "las", "de",  "del", "y",  "en",
                           "que", "con", "por", "un",  "una", "se",  "al", "su"};

std::string text_of(const std::vector<std::string>& parts) {
  std::string all;
  for (const std::string& part : parts) all += part + ". ";
  return all;
}

bool reads_as_other(const std::string& text, const std::string& language) {
  static const QRegularExpression between("[^\\p{L}]+");
  int english = 0, spanish = 0;
  for (const QString& word : QString::fromStdString(text).toLower().split(between, Qt::SkipEmptyParts)) {
    english += kEnglish.contains(word);
    spanish += kSpanish.contains(word);
  }
  return language == "es" ? english > spanish : spanish > english;
}

// Only what kind of thing it is, "House" of a house: known in every language.
bool is_plain_name(const Feature& f) {
  Feature unnamed = f;
  unnamed.name.clear();
  const std::string with_id = display_name(unnamed);  // "Tree 7"
  return f.name == kept_name(f, with_id.substr(0, with_id.size() - std::to_string(f.id).size() - 1));
}

std::vector<std::string> own_names(const Site& site) {
  std::vector<std::string> names;
  for (const Feature& f : site.features)
    if (!f.name.empty() && !is_plain_name(f)) names.push_back(f.name);
  return names;
}

struct Typed {
  std::string name, text;
};

std::vector<Typed> all_typed(const Plan& plan) {
  std::vector<Typed> all;
  const ProposalWords& words = plan.proposal;
  const auto term = [&](const std::string& text, std::string name) {
    ProposalWords one;
    one.guarantee = text;
    if (!typed_terms(one).empty()) all.push_back({std::move(name), text});
  };
  term(words.opening, say("Opening"));
  term(words.start, say("Begins"));
  term(words.guarantee, say("Guarantee"));
  term(words.payment, say("Payment"));
  term(words.validity, say("Stands for"));
  std::vector<std::string> ways;
  for (const OtherSystem& o : plan.pricing.running.others) ways.push_back(o.name);
  if (!ways.empty()) all.push_back({say("names of other ways to heat and cool"), text_of(ways)});
  std::vector<std::string> lines;
  for (const ExtraLine& line : plan.pricing.terms.extras) lines.push_back(line.item);
  if (!lines.empty()) all.push_back({say("your own lines of the price"), text_of(lines)});
  if (const auto names = own_names(plan.site); !names.empty())
    all.push_back({say("names on the lot"), text_of(names)});
  return all;
}

}  // namespace

std::vector<std::string> typed_in_proposal(const Plan& plan) {
  std::vector<std::string> names;
  for (const Typed& one : all_typed(plan)) names.push_back(one.name);
  return names;
}

std::vector<std::string> typed_in_another_language(const Plan& plan, const std::string& language) {
  std::vector<std::string> names;
  for (const Typed& one : all_typed(plan))
    if (reads_as_other(one.text, language)) names.push_back(one.name);
  return names;
}

}  // namespace underlawn
