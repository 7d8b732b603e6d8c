// SPDX-License-Identifier: GPL-3.0-or-later
// The languages the program speaks. English is in the code; each other one is a catalogue in
// resources/language, one for core/, window, command line and sheets alike: tr() and say() read the same.
#pragma once

#include <QLocale>
#include <QString>
#include <string>
#include <string_view>
#include <vector>

#include "base/say.h"

namespace underlawn {

struct Language {
  std::string_view code;  // ISO 639: "es"
  std::string_view name;  // in itself: "Español"
};

// English first.
const std::vector<Language>& languages();
const Language* find_language(std::string_view code);

// nullptr for English. `code` is one of languages().
const Catalogue* catalogue_of(std::string_view code);

// The code of the language the system is set to, "en" where it is none of ours. `wanted` as in LANGUAGE or
// LANG: "es_MX.UTF-8:en".
std::string language_of_system(std::string_view wanted);

// Makes tr() read the catalogue of the thread it is called on. Once, when the application object is there.
void let_qt_speak();

// Everything said from now on, on every thread, is in this language.
void speak(std::string_view code);

// The code of the language spoken on this thread.
std::string_view language_spoken();

// Names of months and days in the language of this thread. Numbers are not written with it: they are those of
// the United States in every language.
QLocale locale_spoken();

}  // namespace underlawn
