// SPDX-License-Identifier: GPL-3.0-or-later
#include "language/language.h"

#include <QCoreApplication>
#include <QFile>
#include <QLibraryInfo>
#include <QTranslator>
#include <algorithm>
#include <map>

static void init_catalogues() {
  Q_INIT_RESOURCE(language);  // must be called outside a namespace, since this library is linked statically
}

namespace underlawn {

namespace {

const Catalogue* read_catalogue(std::string_view code) {
  init_catalogues();
  QFile file(QString(":/language/%1.mo").arg(QString::fromUtf8(code.data(), static_cast<int>(code.size()))));
  if (!file.open(QIODevice::ReadOnly)) return nullptr;
  auto catalogue = Catalogue::read(file.readAll().toStdString());
  return catalogue ? new Catalogue(std::move(*catalogue)) : nullptr;  // read once, kept for good
}

QString text_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<int>(text.size()));
}

// tr() in the language of the thread. Contexts of tr() are classes, which say nothing to a translator: only
// what was given as the second argument counts.
class Speaker : public QTranslator {
 public:
  using QTranslator::QTranslator;
  bool isEmpty() const override { return false; }
  QString translate(const char*, const char* english, const char* where, int) const override {
    const Catalogue* catalogue = spoken_here();
    if (catalogue == nullptr) return {};
    auto found = where != nullptr ? catalogue->find(where, english) : std::nullopt;
    if (!found) found = catalogue->find(english);
    return found ? text_of(*found) : QString();
  }
};

}  // namespace

const std::vector<Language>& languages() {
  static const std::vector<Language> all{{"en", "English"}, {"es", "Español"}};
  return all;
}

const Language* find_language(std::string_view code) {
  const auto at = std::ranges::find(languages(), code, &Language::code);
  return at == languages().end() ? nullptr : &*at;
}

const Catalogue* catalogue_of(std::string_view code) {
  if (code == "en") return nullptr;
  static const std::map<std::string_view, const Catalogue*> read = [] {
    std::map<std::string_view, const Catalogue*> all;
    for (const Language& l : languages())
      if (l.code != "en") all[l.code] = read_catalogue(l.code);
    return all;
  }();
  const auto at = read.find(code);
  return at == read.end() ? nullptr : at->second;
}

std::string language_of_system(std::string_view wanted) {
  while (!wanted.empty()) {
    const std::string_view first = wanted.substr(0, wanted.find(':'));
    if (const Language* l = find_language(first.substr(0, first.find_first_of("_.@"))))
      return std::string(l->code);
    wanted.remove_prefix(std::min(wanted.size(), first.size() + 1));
  }
  return "en";
}

void let_qt_speak() {
  if (QCoreApplication::instance() == nullptr) return;
  QCoreApplication* application = QCoreApplication::instance();
  // Qt's own words (Cancel, Open) are a package of the system. The last installed is asked first.
  auto* qt = new QTranslator(application);
  if (language_spoken() != "en" && qt->load(QString("qtbase_%1").arg(text_of(language_spoken())),
                                            QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
    QCoreApplication::installTranslator(qt);
  QCoreApplication::installTranslator(new Speaker(application));
}

void speak(std::string_view code) {
  speak_everywhere(catalogue_of(code));
}

std::string_view language_spoken() {
  const Catalogue* spoken = spoken_here();
  for (const Language& l : languages())
    if (spoken != nullptr && catalogue_of(l.code) == spoken) return l.code;
  return "en";
}

QLocale locale_spoken() {
  return language_spoken() == "es" ? QLocale(QLocale::Spanish, QLocale::Mexico)
                                   : QLocale(QLocale::English, QLocale::UnitedStates);
}

}  // namespace underlawn
