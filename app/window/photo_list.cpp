// SPDX-License-Identifier: GPL-3.0-or-later
#include "window/photo_list.h"

#include <QDesktopServices>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPushButton>
#include <QUrl>
#include <QVBoxLayout>

#include "sheets/photo_picture.h"
#include "window/theme.h"
#include "window/typed_field.h"

namespace underlawn {

namespace {

constexpr int kSide = 88;
constexpr std::size_t kMostPhotos = 500;

QString name_of(const Photo& photo) {
  const QString caption = QString::fromStdString(photo.caption);
  const QString file = QFileInfo(QString::fromStdString(photo.file)).fileName();
  const QString words = caption.isEmpty() ? file : caption;
  return photo.trench > 0 ? PhotoList::tr("Trench %1: %2").arg(photo.trench).arg(words) : words;
}

}  // namespace

PhotoList::PhotoList(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      list_(new QListWidget),
      caption_(new TypedField),
      of_trench_(new QPushButton),
      open_(new QPushButton(tr("Open"))),
      remove_(new QPushButton(tr("Remove"))) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(kGap);
  list_->setViewMode(QListView::IconMode);
  list_->setIconSize({kSide, kSide});
  list_->setGridSize({kSide + 20, kSide + 34});
  list_->setResizeMode(QListView::Adjust);
  list_->setMovement(QListView::Static);
  list_->setWordWrap(true);
  list_->setAccessibleName(tr("Photos"));
  list_->setFixedHeight(kSide + 60);
  column->addWidget(list_);
  caption_->edit()->setPlaceholderText(tr("What the photo shows"));
  caption_->edit()->setAccessibleName(tr("Caption"));
  column->addWidget(caption_);
  auto* of_none = new QPushButton(tr("Add photos of no one trench…"));
  for (const QList<QPushButton*>& line : {QList{of_trench_}, QList{of_none}, QList{open_, remove_}}) {
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : line) buttons->addWidget(button);
    buttons->addStretch(1);
    column->addLayout(buttons);
  }
  set_trench(0);
  connect(of_trench_, &QPushButton::clicked, this, [this] { ask_files(trench_); });
  connect(of_none, &QPushButton::clicked, this, [this] { ask_files(0); });
  connect(open_, &QPushButton::clicked, this, &PhotoList::open_file);
  connect(remove_, &QPushButton::clicked, this, &PhotoList::remove_file);
  connect(list_, &QListWidget::itemActivated, this, &PhotoList::open_file);
  connect(list_, &QListWidget::currentRowChanged, this, &PhotoList::show_caption);
  caption_->set_taker([this](const QString& typed) {
    Plan plan = document_.committed();
    const auto row = static_cast<std::size_t>(list_->currentRow());
    if (list_->currentRow() < 0 || row >= plan.as_built.photos.size()) return QString();
    plan.as_built.photos[row].caption = typed.simplified().toStdString();
    document_.commit(std::move(plan), tr("Caption"));
    return QString();
  });
}

// Beside the plan where it can be, so that both move together.
QString PhotoList::kept_path(const QString& path) const {
  if (document_.path().isEmpty()) return path;
  const QString relative = QFileInfo(document_.path()).dir().relativeFilePath(path);
  return relative.startsWith("..") ? path : relative;
}

QString PhotoList::full_path(const std::string& file) const {
  return photo_path(file, document_.path().isEmpty() ? QString() : QFileInfo(document_.path()).path());
}

void PhotoList::refresh() {
  const auto& photos = document_.plan().as_built.photos;
  const int row = list_->currentRow();
  if (list_->count() != static_cast<int>(photos.size())) list_->clear();
  for (std::size_t i = 0; i < photos.size(); ++i) {
    const int at = static_cast<int>(i);
    const QString path = full_path(photos[i].file);
    if (at >= list_->count()) list_->addItem(new QListWidgetItem);
    QListWidgetItem* item = list_->item(at);
    if (item->data(Qt::UserRole).toString() != path || item->icon().isNull()) {
      const QImage image = small_picture(path, kSide);
      item->setIcon(image.isNull() ? QIcon() : QIcon(QPixmap::fromImage(image)));
      item->setData(Qt::UserRole, path);
      item->setToolTip(image.isNull() ? no_picture(path).words + "\n" + path : path);
    }
    item->setText(item->icon().isNull() ? QString("%1 (%2)").arg(name_of(photos[i]), no_picture(path).brief)
                                        : name_of(photos[i]));
  }
  if (row >= 0) list_->setCurrentRow(std::min(row, list_->count() - 1));
  list_->setVisible(!photos.empty());
  show_caption();
}

void PhotoList::show_caption() {
  const auto& photos = document_.plan().as_built.photos;
  const int row = list_->currentRow();
  const bool any = row >= 0 && row < static_cast<int>(photos.size());
  caption_->setVisible(any);
  open_->setEnabled(any);
  remove_->setEnabled(any);
  if (any) caption_->show_text(QString::fromStdString(photos[static_cast<std::size_t>(row)].caption));
}

// The button says which trench they will be of.
void PhotoList::set_trench(int number) {
  trench_ = number;
  of_trench_->setText(tr("Add photos of trench %1…").arg(number));
  of_trench_->setVisible(number > 0);
}

void PhotoList::ask_files(int trench) {
  const QString title = trench > 0 ? tr("Photos of trench %1").arg(trench) : tr("Photos of no one trench");
  const QStringList paths = QFileDialog::getOpenFileNames(
      this, title, {}, tr("Pictures (*.jpg *.jpeg *.png *.webp *.tif *.tiff *.bmp);;All files (*)"));
  if (!paths.isEmpty()) add_files(paths, trench);
}

void PhotoList::add_files(const QStringList& paths, int trench) {
  Plan plan = document_.committed();
  for (const QString& path : paths) {
    if (plan.as_built.photos.size() >= kMostPhotos) break;
    Photo photo;
    photo.file = kept_path(path).toStdString();
    photo.trench = trench;
    plan.as_built.photos.push_back(std::move(photo));
  }
  document_.commit(std::move(plan), tr("Photos"));
  refresh();
  list_->setCurrentRow(list_->count() - 1);
}

void PhotoList::open_file() {
  const QListWidgetItem* item = list_->currentItem();
  if (item != nullptr) QDesktopServices::openUrl(QUrl::fromLocalFile(item->data(Qt::UserRole).toString()));
}

void PhotoList::remove_file() {
  Plan plan = document_.committed();
  const int row = list_->currentRow();
  if (row < 0 || row >= static_cast<int>(plan.as_built.photos.size())) return;
  plan.as_built.photos.erase(plan.as_built.photos.begin() + row);
  document_.commit(std::move(plan), tr("A photo removed"));
  refresh();
}

}  // namespace underlawn
