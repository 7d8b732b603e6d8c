// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/library_session.h"

#include <cpl_conv.h>
#include <cpl_error.h>
#include <cpl_string.h>
#include <cpl_vsi.h>
#include <gdal.h>
#include <gdal_frmts.h>
#include <ogr_srs_api.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <atomic>
#include <cstdint>

#include "base/utf8.h"

namespace underlawn {

namespace {

constexpr std::size_t kMostMessages = 5;
constexpr GIntBig kMostKept = 128'000'000;  // bytes of rasters, unpacked

bool start_library() {
  RegisterOGRDXF();
  RegisterOGRGeoJSON();
  RegisterOGRGeoPackage();
  RegisterOGRShape();
  RegisterOGRKML();
  for (const auto enlist :
       {GDALRegister_GTiff, GDALRegister_AAIGrid, GDALRegister_GRASSASCIIGrid, GDALRegister_HFA,
        GDALRegister_DTED, GDALRegister_SRTMHGT, GDALRegister_USGSDEM, GDALRegister_EHdr, GDALRegister_XYZ,
        GDALRegister_GSAG, GDALRegister_GSBG, GDALRegister_GS7BG, GDALRegister_BT})
    enlist();
  GDALSetCacheMax64(kMostKept);
  OSRSetPROJEnableNetwork(0);
  return true;
}

void collect(CPLErr level, CPLErrorNum, const char* message) {
  if (level < CE_Warning) return;
  static_cast<LibrarySession*>(CPLGetErrorHandlerUserData())->note(message);
}

}  // namespace

LibrarySession::LibrarySession() {
  static const bool started = start_library();
  static std::atomic<unsigned> sessions{0};
  (void)started;
  folder_ = "/vsimem/underlawn-" + std::to_string(++sessions) + "/";
  CPLPushErrorHandlerEx(collect, this);
  set("GDAL_HTTP_ENABLE", "NO");
  set("GDAL_DISABLE_READDIR_ON_OPEN", "FALSE");
  set("OGR_GEOJSON_MAX_OBJ_SIZE", "50");
}

LibrarySession::~LibrarySession() {
  for (const std::string& key : keys_) CPLSetThreadLocalConfigOption(key.c_str(), nullptr);
  VSIRmdirRecursive(folder_.substr(0, folder_.size() - 1).c_str());
  for (const std::string& path : lent_) VSIUnlink(path.c_str());
  CPLPopErrorHandler();
}

std::string LibrarySession::path_of(const std::string& name) const {
  return folder_ + name;
}

std::string LibrarySession::lend(const std::string& name, std::string_view bytes) {
  const std::string path = path_of(name);
  // Never written to: every file is opened for reading only.
  auto* data = const_cast<GByte*>(reinterpret_cast<const GByte*>(bytes.data()));
  VSILFILE* file = VSIFileFromMemBuffer(path.c_str(), data, bytes.size(), FALSE);
  if (file != nullptr) VSIFCloseL(file);
  lent_.push_back(path);
  return path;
}

std::string LibrarySession::take(const std::string& name) {
  vsi_l_offset size = 0;
  const GByte* data = VSIGetMemFileBuffer(path_of(name).c_str(), &size, FALSE);
  return data == nullptr ? std::string() : std::string(reinterpret_cast<const char*>(data), size);
}

void LibrarySession::set(const char* key, const std::string& value) {
  CPLSetThreadLocalConfigOption(key, value.c_str());
  keys_.emplace_back(key);
}

void LibrarySession::note(const char* message) {
  std::string text = valid_utf8(message);
  for (std::size_t at = 0; (at = text.find(folder_)) != std::string::npos;) text.erase(at, folder_.size());
  if (messages_.size() < kMostMessages && std::ranges::find(messages_, text) == messages_.end())
    messages_.push_back(std::move(text));
}

std::string library_version() {
  return std::string("GDAL ") + GDALVersionInfo("RELEASE_NAME");
}

std::string recoded(std::string_view text, const std::string& code_page) {
  std::string from = "CP1252";
  constexpr std::string_view kDigits = "0123456789";
  const auto digits = code_page.find_first_of(kDigits);
  if (digits != std::string::npos) {
    const std::string page = code_page.substr(digits);
    from = "CP" + page.substr(0, std::min<std::size_t>(5, page.find_first_not_of(kDigits)));
  }
  if (from == "CP932") from = "SHIFT_JIS";
  char* utf8 = CPLRecode(std::string(text).c_str(), from.c_str(), CPL_ENC_UTF8);
  std::string out = utf8 == nullptr ? std::string(text) : std::string(utf8);
  CPLFree(utf8);
  return valid_utf8(out);
}

}  // namespace underlawn
