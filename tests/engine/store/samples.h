// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>

#include "engine/records/encoding.h"
#include "engine/store/store.h"
#include "tests/engine/records/people.h"

// Invented machines, jobs and people for tests, and folders to keep stores in.
namespace hingepin::store::samples {

using records::kNow;

/// A folder that goes with its object.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "hingepin-store-XXXXXX").string();
    path_ = ::mkdtemp(name.data());
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] std::string file(const std::string& name = "demo.hingepin") const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

inline std::string bytesOfFile(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

template <class T>
std::string codeOf(const Expected<T>& result) {
  return result ? "" : result.error().message.code;
}

/// REQUIRES: success.
template <class T>
T the(Expected<T> result) {
  if (!result) throw std::runtime_error(result.error().message.code);
  return *std::move(result);
}

inline Store opened(const std::string& path, const std::string& vfs = "") {
  return the(Store::open(path, vfs));
}

inline StoredStatement stored(const records::SealedStatement& sealed, std::string job = "",
                              std::string unit = "") {
  return {.name = sealed.name, .text = sealed.text, .job = std::move(job), .unit = std::move(unit)};
}

inline const Unit kUnit{.id = "loader-7", .profile = R"({"demo":true})"};
inline const Attachment kBucket{.id = "bucket-3", .profile = R"({"demo":true,"width_mm":2700})"};

/// A store with a unit, an attachment and the blobs that a job needs.
struct Yard {
  Store store;
  std::string procedure;
  std::string words;

  explicit Yard(const std::string& path, const std::string& vfs = "") : store(opened(path, vfs)) {
    the(store.putUnit(kUnit));
    the(store.putAttachment(kBucket));
    procedure = the(store.putBlob("{\"demo\":\"procedure\"}", "application/json"));
    words = the(store.putBlob("{\"demo\":\"words\"}", "application/json"));
  }
  [[nodiscard]] Job job(std::string id = "job-1") const {
    return {.id = std::move(id),
            .unit = kUnit.id,
            .attachment = kBucket.id,
            .procedure_id = "demo",
            .procedure = procedure,
            .words = words,
            .language = "en",
            .begun_utc_ms = kNow};
  }
};

}  // namespace hingepin::store::samples
