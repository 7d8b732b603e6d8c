// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/file_flow.h"

#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLocale>
#include <QStandardPaths>

#include "files/plan_file.h"

namespace underlawn {

namespace {

constexpr const char* kAsk = "unsaved";
constexpr const char* kFile = "file";
constexpr const char* kChanged = "changed on disk";
constexpr const char* kElsewhere = "open elsewhere";

QString filter() {
  return FileFlow::tr("Underlawn plans (*%1);;All files (*)").arg(QString::fromUtf8(kPlanSuffix));
}

QString remarks_words(const std::vector<Trouble>& remarks) {
  QStringList lines;
  for (std::size_t i = 0; i < std::min<std::size_t>(remarks.size(), 3); ++i)
    lines << QString::fromStdString(remarks[i].message());
  if (remarks.size() > 3) lines << FileFlow::tr("And %n more.", "", static_cast<int>(remarks.size() - 3));
  return FileFlow::tr("Not everything in the file could be taken. %1").arg(lines.join(' '));
}

QString when(const QDateTime& time) {
  return QLocale().toString(time, QLocale::ShortFormat);
}

QString offer_words(const LeftBehind& left) {
  const QString kept = when(left.kept);
  if (!left.saved.isValid())
    return FileFlow::tr("Unsaved work of “%1” was kept aside %2; it has no file of its own.")
        .arg(left.name, kept);
  return (left.saved > left.kept
              ? FileFlow::tr("Unsaved work of “%1” was kept aside %2; its file was saved later, %3.")
              : FileFlow::tr("Unsaved work of “%1” was kept aside %2; its file is older, saved %3."))
      .arg(left.name, kept, when(left.saved));
}

}  // namespace

FileFlow::FileFlow(Document& document, KeptAside& kept, FileWatch& watch, NoticeBar& bar, QWidget* window)
    : QObject(window), document_(document), kept_(kept), watch_(watch), bar_(bar), window_(window) {
  connect(&watch, &FileWatch::changed, this, &FileFlow::tell_changed);
  connect(&watch, &FileWatch::open_elsewhere, this, &FileFlow::tell_elsewhere);
  connect(&document, &Document::replaced, this, [this] {
    bar_.withdraw(kChanged);
    if (!watch_.elsewhere()) bar_.withdraw(kElsewhere);
  });
  connect(&kept, &KeptAside::failed, this, [this](const QString& why) {
    bar_.tell("kept", tr("Unsaved work cannot be kept aside: %1").arg(why));
  });
}

void FileFlow::unless_unsaved(const QString& going_to, std::function<void()> go) {
  if (!document_.modified()) return go();
  kept_.keep_now();
  bar_.ask(kAsk, tr("“%1” has changes that are not saved. %2").arg(document_.display_name(), going_to),
           {{tr("Save"),
             [this, go] {
               if (save()) go();
             }},
            {tr("Drop the changes"),
             [this, go] {
               kept_.drop();
               go();
             }},
            {tr("Stay here"), {}}});
}

void FileFlow::start_new() {
  unless_unsaved(tr("Save them before a new plan?"), [this] { document_.start_new(); });
}

void FileFlow::ask_open() {
  const QString path = QFileDialog::getOpenFileName(window_, tr("Open a plan"), folder(), filter());
  if (!path.isEmpty()) open(path);
}

void FileFlow::open(const QString& path) {
  unless_unsaved(tr("Save them before another plan is opened?"), [this, path] { open_now(path); });
}

void FileFlow::open_now(const QString& path) {
  const auto opened = document_.open(path);
  if (!opened)
    bar_.tell(kFile, tr("%1 was not opened. %2")
                         .arg(QFileInfo(path).fileName(), QString::fromStdString(opened.error().message())));
  else if (!opened->empty())
    bar_.tell(kFile, remarks_words(*opened));
  else
    bar_.withdraw(kFile);
}

bool FileFlow::tell_saved(const Result<void>& saved, const QString& path) {
  if (saved) {
    bar_.withdraw(kFile);
    return true;
  }
  bar_.tell(kFile, tr("%1 was not saved. %2")
                       .arg(QFileInfo(path).fileName(), QString::fromStdString(saved.error().message())));
  return false;
}

bool FileFlow::save() {
  if (document_.path().isEmpty()) return save_as();
  if (const auto when = watch_.changed_since()) {
    ask_save_over(*when);
    return false;
  }
  return tell_saved(document_.save(), document_.path());
}

// Nothing is written over that this window has not seen.
void FileFlow::ask_save_over(const QDateTime& when_changed) {
  const QString name = QFileInfo(document_.path()).fileName();
  bar_.ask(kChanged,
           tr("%1 was saved by somebody else %2, after you opened it. It was not written over.")
               .arg(name, when(when_changed)),
           {{tr("Save mine as another file…"), [this] { save_as(); }},
            {tr("Save mine over it"),
             [this] {
               watch_.take_as_known();
               tell_saved(document_.save(), document_.path());
             }},
            {tr("Stay here"), {}}});
}

void FileFlow::tell_changed(const QDateTime& when_changed) {
  const QString path = document_.path();
  bar_.tell(kChanged,
            tr("%1 was saved by somebody else %2. What you see is what you opened, with your changes.")
                .arg(QFileInfo(path).fileName(), when(when_changed)),
            {{tr("Open theirs"), [this, path] { open(path); }}, {tr("Keep mine"), {}}});
}

void FileFlow::tell_elsewhere() {
  bar_.tell(
      kElsewhere,
      tr("%1 is open in another window too. Both can be worked on; before one writes over what the other "
         "has saved, it asks.")
          .arg(QFileInfo(document_.path()).fileName()));
}

bool FileFlow::save_as() {
  const QString suffix = QString::fromUtf8(kPlanSuffix);
  const QString suggested =
      document_.path().isEmpty() ? folder() + "/" + document_.display_name() + suffix : document_.path();
  QString path = QFileDialog::getSaveFileName(window_, tr("Save the plan"), suggested, filter());
  if (path.isEmpty()) return false;
  if (QFileInfo(path).suffix().isEmpty()) path += suffix;
  return tell_saved(document_.save_as(path), path);
}

bool FileFlow::may_close(std::function<void()> close) {
  if (!document_.modified()) return true;
  unless_unsaved(tr("Save them before closing?"), std::move(close));
  return false;
}

void FileFlow::offer_left_behind() {
  const auto all = kept_.left_behind();
  if (all.empty()) return;
  const LeftBehind left = all.front();  // the newest; the others are offered in turn
  bar_.ask("left", offer_words(left),
           {{tr("Recover it"),
             [this, left] {
               unless_unsaved(tr("Save them before the other is recovered?"), [this, left] {
                 if (const auto done = kept_.recover(left); !done)
                   bar_.tell(kFile, QString::fromStdString(done.error().message()));
               });
             }},
            {tr("Discard it"),
             [this, left] {
               KeptAside::discard(left);
               offer_left_behind();
             }},
            {tr("Later"), {}}});
}

QString FileFlow::folder() const {
  if (!document_.path().isEmpty()) return QFileInfo(document_.path()).absolutePath();
  return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

}  // namespace underlawn
