// SPDX-License-Identifier: GPL-3.0-or-later
// Fifty broken pictures of each kind and some that are enormous when unpacked: shown, or a reason, never
// harm, inside bounded time and memory.
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <ctime>
#include <random>

#include "canvas/pictures.h"

using namespace underlawn;

namespace {

constexpr double kMostSeconds = 10;   // of the processor, for one picture
constexpr long kMostMegabytes = 600;  // of memory, over what was in use before

QImage drawn() {
  QImage image(300, 200, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  for (int i = 0; i < 40; ++i) painter.drawLine(7 * i, 3 * i, 300 - 5 * i, 200);
  return image;
}

QByteArray saved(const char* form) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  EXPECT_TRUE(drawn().save(&buffer, form));
  return bytes;
}

QByteArray pdf() {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  QPainter painter(&writer);
  painter.drawText(500, 500, "Plat");
  painter.drawImage(QRect(800, 800, 3000, 2000), drawn());
  painter.end();
  return bytes;
}

long most_megabytes() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  return used.ru_maxrss / 1024;
}

void judge(const QByteArray& bytes, const std::string& what) {
  const std::clock_t from = std::clock();
  for (int page : {1, 2}) {
    const DecodedPicture picture = decode_picture(bytes, page);
    EXPECT_NE(picture.shown(), !picture.trouble.isEmpty()) << what;
    EXPECT_LE(std::max(picture.size().width(), picture.size().height()), kMostPicturePixels + 1) << what;
  }
  EXPECT_LT(static_cast<double>(std::clock() - from) / CLOCKS_PER_SEC, kMostSeconds) << what;
}

// Cut short, with bytes changed, with pieces doubled or taken out.
QByteArray spoiled(QByteArray bad, std::mt19937& random, int round) {
  const auto at = [&] { return static_cast<qsizetype>(random() % static_cast<unsigned>(bad.size())); };
  if (round % 4 == 0) return bad.left(at());
  if (round % 4 == 1)
    for (int i = 0; i < 20; ++i) bad[at()] = static_cast<char>(random());
  if (round % 4 == 2) bad.insert(at(), bad.mid(at(), 400));
  if (round % 4 == 3) bad.remove(at(), 1 + at() % 300);
  return bad;
}

void spoil(const QByteArray& good, const std::string& kind, unsigned seed) {
  ASSERT_TRUE(decode_picture(good, 1).shown()) << kind;
  std::mt19937 random(seed);
  for (int round = 0; round < 50; ++round)
    judge(spoiled(good, random, round), kind + " " + std::to_string(round));
}

QByteArray big_endian(quint32 v) {
  return {QByteArray(1, static_cast<char>(v >> 24)) + static_cast<char>(v >> 16) + static_cast<char>(v >> 8) +
          static_cast<char>(v)};
}

quint32 crc(const QByteArray& bytes) {
  quint32 c = 0xffffffffU;
  for (char byte : bytes) {
    c ^= static_cast<unsigned char>(byte);
    for (int k = 0; k < 8; ++k) c = (c & 1) ? 0xedb88320U ^ (c >> 1) : c >> 1;
  }
  return ~c;
}

QByteArray chunk(const QByteArray& kind, const QByteArray& data) {
  return big_endian(static_cast<quint32>(data.size())) + kind + data + big_endian(crc(kind + data));
}

// A grey PNG of nothing but zeros: a thousandth of what it unpacks to.
QByteArray blank_png(quint32 width, quint32 height) {
  const QByteArray rows(static_cast<qsizetype>(height) * (width + 1), '\0');
  const QByteArray head = big_endian(width) + big_endian(height) + QByteArray("\x08\0\0\0\0", 5);
  return QByteArray("\x89PNG\r\n\x1a\n", 8) + chunk("IHDR", head) + chunk("IDAT", qCompress(rows, 9).mid(4)) +
         chunk("IEND", {});
}

QByteArray pdf_of(const QByteArray& box, const QByteArray& content) {
  return "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n2 0 obj<</Type/Pages/Kids[3 0 R]/Count "
         "1>>endobj\n"
         "3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[" +
         box + "]/Contents 4 0 R/Resources<</XObject<</F 5 0 R>>>>>>endobj\n4 0 obj<</Length " +
         QByteArray::number(content.size()) + ">>stream\n" + content +
         "\nendstream endobj\n5 0 obj<</Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources<</XObject<</F 5 0 "
         "R>>>>"
         "/Length 5>>stream\n/F Do\nendstream endobj\ntrailer<</Root 1 0 R>>\n";
}

}  // namespace

TEST(HostilePictures, Png) {
  spoil(saved("PNG"), "png", 1);
}

TEST(HostilePictures, Jpeg) {
  spoil(saved("JPEG"), "jpeg", 2);
}

TEST(HostilePictures, Pdf) {
  spoil(pdf(), "pdf", 3);
}

TEST(HostilePictures, ThoseThatAreEnormousWhenUnpacked) {
  const long before = most_megabytes();
  judge(blank_png(20000, 20000), "png of 400 million");
  judge(blank_png(6000, 6000), "png of 36 million");
  judge(blank_png(60000, 1), "png of one row");
  judge(blank_png(1, 60000), "png of one column");
  QByteArray promised = blank_png(9, 9);
  promised.replace(16, 8, "\x7f\xff\xff\xff\x7f\xff\xff\xff");
  judge(promised, "png of two thousand million by as many");
  EXPECT_LT(most_megabytes() - before, kMostMegabytes);
}

TEST(HostilePictures, PagesOfNoSizeOfAnySizeAndInThemselves) {
  const long before = most_megabytes();
  for (const char* box : {"0 0 1e300 1e300", "0 0 1e9 1", "0 0 1 1e9", "0 0 0 0", "0 0 -5 -5", "0 0 nan inf",
                          "0 0 14400 14400", ""})
    judge(pdf_of(box, "0 0 m 9 9 l S"), std::string("page of ") + box);
  judge(pdf_of("0 0 612 792", "/F Do"), "a form in itself");
  // The library keeps 5 kB a state without a bound of its own: 1.1 GB for 200,000 of them.
  judge(pdf_of("0 0 612 792", QByteArray("q ").repeated(20000)), "20,000 states kept");
  judge(pdf_of("0 0 612 792", QByteArray("[").repeated(200000)), "nested 200,000 deep");
  EXPECT_LT(most_megabytes() - before, kMostMegabytes);
}
