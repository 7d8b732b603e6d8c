// SPDX-License-Identifier: GPL-3.0-or-later
#include "files/atomic_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "base/say.h"
#include "base/typed_text.h"

namespace fs = std::filesystem;

namespace underlawn {

namespace {

// A file descriptor that is closed when it goes out of scope.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  bool open() const { return fd_ >= 0; }
  int get() const { return fd_; }
  bool close() {
    const int result = ::close(fd_);
    fd_ = -1;
    return result == 0;
  }

 private:
  int fd_;
};

// What the system says of the usual errors.
[[maybe_unused]] constexpr const char* kReasons[] = {
    mark("No such file or directory"), mark("Permission denied"),       mark("Is a directory"),
    mark("Not a directory"),           mark("No space left on device"), mark("Read-only file system"),
    mark("File name too long"),        mark("Input/output error"),      mark("File exists"),
    mark("Operation not permitted"),   mark("Disk quota exceeded"),     mark("File too large")};

std::string reason_of(int error) {
  return translated(std::generic_category().message(error));
}

std::string name_of(const fs::path& path) {
  return say("the file {}", in_quotes(path.string(), 400));
}

Trouble not_read(const fs::path& path, const std::string& reason) {
  return {"file_not_read", name_of(path), say("not read ({})", reason), "",
          say("Check the name and whether you may read it.")};
}

Trouble not_written(const fs::path& path, const std::string& reason) {
  return {"file_not_written", name_of(path), say("not written ({})", reason), "",
          say("What was there before is unchanged. Choose another folder or name.")};
}

bool write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(fd, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

// The name of a file beside `target` that is made for this write only; -1 with errno when there can be none.
int open_beside(const fs::path& target, fs::path& made) {
  for (int attempt = 0; attempt < 100; ++attempt) {
    const std::string ending = "." + std::to_string(::getpid()) + "-" + std::to_string(attempt) + ".part";
    made = target.parent_path() / ("." + target.filename().string().substr(0, 200) + ending);
    const int fd = ::open(made.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (fd >= 0 || errno != EEXIST) return fd;
  }
  return -1;
}

// Where the bytes really go: behind links, as an absolute path.
fs::path real_target(const fs::path& path) {
  std::error_code error;
  const fs::path target = fs::weakly_canonical(fs::absolute(path, error), error);
  return error ? path : target;
}

int fill(int fd, const fs::path& target, std::string_view bytes) {
  struct stat old {};
  if (::stat(target.c_str(), &old) == 0 && ::fchmod(fd, old.st_mode & 07777) != 0) return errno;
  if (!write_all(fd, bytes) || ::fsync(fd) != 0) return errno;
  return 0;
}

// So that the new name, too, survives a power cut. Not every file system can; then there is nothing to be
// done.
void flush_folder(const fs::path& folder) {
  const Descriptor fd(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (fd.open()) (void)::fsync(fd.get());
}

}  // namespace

Result<std::string> read_file(const fs::path& path, std::size_t most) {
  const Descriptor fd(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!fd.open()) return refuse(not_read(path, reason_of(errno)));
  std::string bytes;
  std::string chunk(1 << 16, '\0');
  for (;;) {
    const ssize_t got = ::read(fd.get(), chunk.data(), chunk.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return refuse(not_read(path, reason_of(errno)));
    if (got == 0) return bytes;
    bytes.append(chunk, 0, static_cast<std::size_t>(got));
    if (bytes.size() > most)
      return refuse({"file_too_large", say("the file {}", in_quotes(path.string(), 400)),
                     say("larger than {} MiB", std::to_string(most >> 20)), say("at most that large"),
                     say("It is no plan, or one traced with far too many points.")});
  }
}

Result<void> write_file(const fs::path& path, std::string_view bytes) {
  const fs::path target = real_target(path);
  if (fs::is_directory(target)) return refuse(not_written(path, say("it is a folder")));
  fs::path made;
  Descriptor fd(open_beside(target, made));
  if (!fd.open()) return refuse(not_written(path, reason_of(errno)));
  int error = fill(fd.get(), target, bytes);
  if (!fd.close() && error == 0) error = errno;
  if (error == 0 && ::rename(made.c_str(), target.c_str()) != 0) error = errno;
  if (error != 0) {
    ::unlink(made.c_str());
    return refuse(not_written(path, reason_of(error)));
  }
  flush_folder(target.parent_path());
  return {};
}

}  // namespace underlawn
