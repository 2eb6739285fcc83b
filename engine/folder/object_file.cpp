// SPDX-License-Identifier: Apache-2.0
#include "engine/folder/object_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <filesystem>
#include <map>
#include <memory>
#include <system_error>
#include <utility>

#include "engine/folder/files.h"

namespace hingepin::folder {
namespace {

constexpr std::string_view kFormat = "hingepin-objects/1\n";
constexpr std::size_t kMostNameBytes = 512;

std::string entryOf(const std::string& name, const std::string& bytes) {
  return std::to_string(bytes.size()) + " " + name + "\n" + bytes + "\n";
}

bool isName(std::string_view text) {
  return !text.empty() && std::ranges::all_of(text, [](char byte) {
    return (byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9') || byte == '-' || byte == '/';
  });
}

class ObjectFile {
 public:
  ObjectFile(std::string path, int descriptor) : path_(std::move(path)), descriptor_(descriptor) {}
  ~ObjectFile() { ::close(descriptor_); }
  ObjectFile(const ObjectFile&) = delete;
  ObjectFile& operator=(const ObjectFile&) = delete;

  /// Finds all objects; of two with one name the later counts.
  Expected<void> scan() {
    const off_t size = ::lseek(descriptor_, 0, SEEK_END);
    if (size == 0) return append(std::string(kFormat));
    const auto begin = read(0, kFormat.size());
    if (!begin) return std::unexpected(begin.error());
    if (*begin != kFormat) {
      return fail(ErrorKind::InvalidInput, "object-file-malformed", {{"path", path_}}, {.file = path_});
    }
    end_ = static_cast<std::int64_t>(kFormat.size());
    while (end_ < size) {
      const auto head = read(end_, kMostNameBytes);
      if (!head) return std::unexpected(head.error());
      const std::size_t line = head->find('\n');
      const std::size_t blank = head->find(' ');
      std::int64_t bytes = -1;
      if (blank < line && line != std::string::npos) {
        std::from_chars(head->data(), head->data() + blank, bytes);
      }
      const std::int64_t at = end_ + static_cast<std::int64_t>(line) + 1;
      if (bytes < 0 || !isName(std::string_view(*head).substr(blank + 1, line - blank - 1)) ||
          bytes > size - at - 1) {
        break;
      }
      objects_[head->substr(blank + 1, line - blank - 1)] = {at, bytes};
      end_ = at + bytes + 1;
    }
    return {};
  }

  [[nodiscard]] Expected<std::vector<sync::Listed>> list(const std::string& folder) const {
    std::vector<sync::Listed> listed;
    for (auto object = objects_.lower_bound(folder + "/");
         object != objects_.end() && object->first.starts_with(folder + "/"); ++object) {
      const std::string rest = object->first.substr(folder.size() + 1);
      if (rest.find('/') == std::string::npos) listed.push_back({rest, object->second.size});
    }
    return listed;
  }

  [[nodiscard]] Expected<std::string> get(const std::string& name) const {
    const auto found = objects_.find(name);
    if (found == objects_.end()) return fail(ErrorKind::NotFound, "object-not-there", {{"name", name}});
    return read(found->second.at, static_cast<std::size_t>(found->second.size));
  }

  [[nodiscard]] Expected<std::optional<std::int64_t>> size(const std::string& name) const {
    const auto found = objects_.find(name);
    return found == objects_.end() ? std::nullopt : std::optional(found->second.size);
  }

  Expected<sync::Put> put(const sync::Upload& upload) {
    if (!upload.replace && objects_.contains(upload.name)) return sync::Put::ThereAlready;
    const std::string entry = entryOf(upload.name, upload.bytes);
    const std::int64_t at = end_ + std::ssize(entry) - std::ssize(upload.bytes) - 1;
    if (auto done = append(entry); !done) return std::unexpected(done.error());
    objects_[upload.name] = {at, std::ssize(upload.bytes)};
    return sync::Put::Done;
  }

  Expected<void> flush() { return ::fsync(descriptor_) == 0 ? Expected<void>() : failed(); }

  /// Writes the file anew without some objects, so that their bytes are not left in it.
  Expected<void> remove(std::span<const std::string> names) {
    bool any = false;
    for (const std::string& name : names) any |= objects_.erase(name) > 0;
    if (!any) return {};
    std::string all(kFormat);
    for (const auto& [name, extent] : objects_) {
      const auto bytes = read(extent.at, static_cast<std::size_t>(extent.size));
      if (!bytes) return std::unexpected(bytes.error());
      all += entryOf(name, *bytes);
    }
    if (auto written = writeFile(path_, all); !written) return written;
    const int descriptor = ::open(path_.c_str(), O_RDWR | O_CLOEXEC);
    if (descriptor < 0) return failed();
    ::close(std::exchange(descriptor_, descriptor));
    objects_.clear();
    return scan();
  }

 private:
  struct Extent {
    std::int64_t at = 0;
    std::int64_t size = 0;
  };

  [[nodiscard]] std::unexpected<Error> failed() const {
    return fail(ErrorKind::IoFailed, "file-write-failed",
                {{"path", path_}, {"reason", std::generic_category().message(errno)}}, {.file = path_});
  }

  /// Fewer where the file ends before.
  [[nodiscard]] Expected<std::string> read(std::int64_t at, std::size_t size) const {
    std::string bytes(size, '\0');
    std::size_t done = 0;
    while (done < size) {
      const ssize_t count =
          ::pread(descriptor_, bytes.data() + done, size - done, at + static_cast<off_t>(done));
      if (count < 0 && errno == EINTR) continue;
      if (count < 0) {
        return fail(ErrorKind::IoFailed, "file-read-failed",
                    {{"path", path_}, {"reason", std::generic_category().message(errno)}}, {.file = path_});
      }
      if (count == 0) break;
      done += static_cast<std::size_t>(count);
    }
    bytes.resize(done);
    return bytes;
  }

  Expected<void> append(const std::string& text) {
    if (::ftruncate(descriptor_, end_) != 0 || ::lseek(descriptor_, end_, SEEK_SET) < 0) return failed();
    if (const int problem = writeAll(descriptor_, text); problem != 0) {
      errno = problem;
      return failed();
    }
    end_ += std::ssize(text);
    return {};
  }

  std::string path_;
  int descriptor_;
  std::int64_t end_ = 0;  ///< of the last whole object
  std::map<std::string, Extent> objects_;
};

}  // namespace

Expected<sync::Remote> objectFile(const std::string& path) {
  const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  if (descriptor < 0) {
    return fail(ErrorKind::IoFailed, "file-open-failed",
                {{"path", path}, {"reason", std::generic_category().message(errno)}}, {.file = path});
  }
  const auto file = std::make_shared<ObjectFile>(path, descriptor);
  if (auto scanned = file->scan(); !scanned) return std::unexpected(scanned.error());
  return sync::Remote{.list = [file](const std::string& folder) { return file->list(folder); },
                      .get =
                          [file](std::span<const std::string> names) {
                            std::vector<Expected<std::string>> results;
                            for (const std::string& name : names) results.push_back(file->get(name));
                            return results;
                          },
                      .sizes =
                          [file](std::span<const std::string> names) {
                            std::vector<Expected<std::optional<std::int64_t>>> results;
                            for (const std::string& name : names) results.push_back(file->size(name));
                            return results;
                          },
                      .put =
                          [file](std::span<const sync::Upload> uploads) {
                            std::vector<Expected<sync::Put>> results;
                            for (const sync::Upload& upload : uploads) results.push_back(file->put(upload));
                            if (const auto flushed = file->flush(); !flushed) {
                              for (auto& result : results) result = std::unexpected(flushed.error());
                            }
                            return results;
                          },
                      .remove =
                          [file](std::span<const std::string> names) {
                            const Expected<void> removed = file->remove(names);
                            return std::vector<Expected<void>>(names.size(), removed);
                          }};
}

}  // namespace hingepin::folder
