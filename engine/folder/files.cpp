// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <memory>
#include <system_error>
#include <utility>

#include "engine/base/strict_json.h"

namespace hingepin::folder {
namespace {

/// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { static_cast<void>(close()); }
  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] bool close() { return number_ < 0 || ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
};

std::string reasonOf(int code) { return std::generic_category().message(code); }

std::unexpected<Error> failFile(const std::string& path, std::string code, int error_number) {
  return fail(ErrorKind::IoFailed, std::move(code), {{"path", path}, {"reason", reasonOf(error_number)}},
              {.file = path});
}

std::unexpected<Error> failFolder(const std::string& path) {
  return fail(ErrorKind::IoFailed, "file-is-folder", {{"path", path}}, {.file = path});
}

mode_t creationMask() {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return mask;
}

}  // namespace

int writeAll(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t count = ::write(descriptor, text.data(), text.size());
    if (count < 0 && errno == EINTR) continue;
    if (count <= 0) return count < 0 ? errno : EIO;
    text.remove_prefix(static_cast<std::size_t>(count));
  }
  return 0;
}

Expected<formats::ByteSource> openFile(const std::string& path) {
  const auto file = std::make_shared<Descriptor>(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file->number() < 0) {
    if (errno == ENOENT || errno == ENOTDIR) {
      return fail(ErrorKind::NotFound, "file-not-found", {{"path", path}}, {.file = path});
    }
    return failFile(path, "file-open-failed", errno);
  }
  struct stat state{};
  if (::fstat(file->number(), &state) == 0 && S_ISDIR(state.st_mode)) return failFolder(path);
  return [file, path](std::span<char> buffer) -> Expected<std::size_t> {
    while (true) {
      const ssize_t count = ::read(file->number(), buffer.data(), buffer.size());
      if (count >= 0) return static_cast<std::size_t>(count);
      if (errno != EINTR) return failFile(path, "file-read-failed", errno);
    }
  };
}

Expected<std::string> readFile(const std::string& path) {
  const Expected<formats::ByteSource> source = openFile(path);
  if (!source) return std::unexpected(source.error());
  return formats::readAll(*source, path, kMostJsonBytes);
}

Expected<void> writeFile(const std::string& path, std::string_view content, Readers readers) {
  std::error_code ignored;
  const std::filesystem::file_status status = std::filesystem::status(path, ignored);
  if (std::filesystem::is_directory(status)) return failFolder(path);
  if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) {
    Descriptor device(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
    if (device.number() < 0) return failFile(path, "file-write-failed", errno);
    const int problem = writeAll(device.number(), content);
    return problem == 0 ? Expected<void>() : failFile(path, "file-write-failed", problem);
  }
  // A symbolic link stays one; what it leads to is replaced.
  std::string target_path = path;
  if (std::filesystem::exists(status)) {
    const std::filesystem::path target = std::filesystem::canonical(path, ignored);
    if (!target.empty()) target_path = target.string();
  }
  std::string temporary = target_path + ".XXXXXX";
  Descriptor file(::mkstemp(temporary.data()));
  if (file.number() < 0) return failFile(path, "file-write-failed", errno);
  const mode_t mode = readers == Readers::OwnerOnly ? 0600 : 0666 & ~creationMask();
  int problem = ::fchmod(file.number(), mode) == 0 ? 0 : errno;
  if (problem == 0) problem = writeAll(file.number(), content);
  if (problem == 0 && ::fsync(file.number()) != 0) problem = errno;
  if (!file.close() && problem == 0) problem = errno;
  if (problem == 0 && ::rename(temporary.c_str(), target_path.c_str()) != 0) problem = errno;
  if (problem != 0) {
    ::unlink(temporary.c_str());
    return failFile(path, "file-write-failed", problem);
  }
  // The rename itself is on the disk only once its folder is.
  const std::string folder = std::filesystem::path(target_path).parent_path().string();
  Descriptor parent(::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (parent.number() >= 0) static_cast<void>(::fsync(parent.number()));
  return {};
}

Expected<void> makeFolder(const std::string& path) {
  std::error_code code;
  std::filesystem::create_directories(path, code);
  if (!code && !std::filesystem::is_directory(path, code) && !code)
    code = std::make_error_code(std::errc::not_a_directory);
  if (code) return failFile(path, "file-write-failed", code.value());
  return {};
}

bool isSameFile(const std::string& first, const std::string& second) {
  std::error_code code;
  return std::filesystem::equivalent(first, second, code) && !code;
}

}  // namespace hingepin::folder
