// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/picture_file.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "canvas/pictures.h"
#include "files/atomic_file.h"

namespace underlawn {

namespace {

tl::unexpected<Trouble> refused(const QString& what, const QString& advice) {
  return refuse({"picture_not_taken", what.toStdString(), "", "", advice.toStdString()});
}

Result<QByteArray> bytes_of(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly))
    return refused(QObject::tr("“%1” cannot be read").arg(path), QObject::tr("%1.").arg(file.errorString()));
  if (file.size() > kMostPictureBytes)
    return refused(
        QObject::tr("“%1” is %2 MB large").arg(QFileInfo(path).fileName()).arg(file.size() >> 20),
        QObject::tr("At most %1 MB can be shown: save it smaller, or only the page that is needed.")
            .arg(kMostPictureBytes >> 20));
  return file.readAll();
}

bool fits(const Plan& plan, qsizetype more) {
  std::size_t all = static_cast<std::size_t>(more) * 4 / 3;
  for (const Picture& p : plan.pictures) all += p.data.text().size();
  return more <= kMostStoredBytes && all <= kMostPictureText;
}

std::string path_from(const QString& plan_path, const QString& path) {
  const QString whole = QFileInfo(path).absoluteFilePath();
  return (plan_path.isEmpty() ? whole : QDir(picture_folder(plan_path)).relativeFilePath(whole))
      .toStdString();
}

}  // namespace

Result<Picture> picture_from_file(const QString& path, const Plan& plan, const QString& plan_path,
                                  Point middle, double width) {
  const auto bytes = bytes_of(path);
  if (!bytes) return refuse(bytes.error());
  const DecodedPicture decoded = decode_picture(*bytes, 1);
  if (!decoded.shown())
    return refused(QObject::tr("“%1” cannot be shown").arg(QFileInfo(path).fileName()),
                   QObject::tr("%1 PNG, JPEG and PDF can.").arg(decoded.trouble));
  Picture p;
  p.name = QFileInfo(path).fileName().toStdString();
  p.width = width;
  p.height = width * decoded.size().height() / decoded.size().width();
  p.at = middle - Point{p.width / 2, p.height / 2};
  if (fits(plan, bytes->size()))
    p.data = SharedText(bytes->toBase64().toStdString());
  else
    p.file = path_from(plan_path, path);
  return p;
}

Result<Picture> stored_with(const Picture& picture, const Plan& plan, const QString& plan_path) {
  const QString path = QDir(picture_folder(plan_path)).absoluteFilePath(QString::fromStdString(picture.file));
  const auto bytes = bytes_of(path);
  if (!bytes) return refuse(bytes.error());
  if (!fits(plan, bytes->size()))
    return refused(QObject::tr("The picture is too large to be stored with the plan"),
                   QObject::tr("Leave it beside the plan and send both files."));
  Picture p = picture;
  p.data = SharedText(bytes->toBase64().toStdString());
  p.file.clear();
  return p;
}

Result<Picture> stored_beside(const Picture& picture, const QString& plan_path) {
  if (plan_path.isEmpty())
    return refused(QObject::tr("The plan has no file yet"),
                   QObject::tr("Save it first; the picture is then put beside it."));
  const QByteArray bytes = QByteArray::fromBase64(QByteArray::fromStdString(picture.data.text()));
  const QString name = QFileInfo(QString::fromStdString(picture.name)).fileName();
  const QString path = QDir(picture_folder(plan_path)).absoluteFilePath(name.isEmpty() ? "picture" : name);
  QFile there(path);
  const bool same =
      there.open(QIODevice::ReadOnly) && there.size() == bytes.size() && there.readAll() == bytes;
  if (!same && there.exists())
    return refused(QObject::tr("There is another file called “%1” beside the plan").arg(name),
                   QObject::tr("Move it away first."));
  if (!same) {
    const auto written =
        write_file(path.toStdString(), {bytes.constData(), static_cast<std::size_t>(bytes.size())});
    if (!written) return refuse(written.error());
  }
  Picture p = picture;
  p.file = path_from(plan_path, path);
  p.data = SharedText();
  return p;
}

}  // namespace underlawn
