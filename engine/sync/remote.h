// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "engine/base/error.h"

namespace hingepin::sync {

/// An object that lies directly in a folder of the far side.
struct Listed {
  std::string name;  ///< its last part
  std::int64_t size = 0;
};

struct Upload {
  std::string name;
  std::string bytes;
  bool replace = false;  ///< also where an object of that name is there already
};

enum class Put { Done, ThereAlready };

/// A far side: objects by name ("parcels/..."), made of lower-case letters, digits, '-', '.' and '/'. Each
/// function takes many names at once, so that what lies behind may work in parallel, and answers each by
/// itself and in the same order. Errors: those of http.h or of the file; NotFound "object-not-there".
struct Remote {
  /// What lies directly in a folder; nothing where there is no such folder.
  std::function<Expected<std::vector<Listed>>(const std::string& folder)> list{};
  std::function<std::vector<Expected<std::string>>(std::span<const std::string> names)> get{};
  /// The sizes in bytes; nothing for what is not there.
  std::function<std::vector<Expected<std::optional<std::int64_t>>>(std::span<const std::string> names)>
      sizes{};
  std::function<std::vector<Expected<Put>>(std::span<const Upload> uploads)> put{};
  /// What is not there counts as removed.
  std::function<std::vector<Expected<void>>(std::span<const std::string> names)> remove{};
};

/// How often and how long to wait before something is tried again.
struct Backoff {
  int most_tries = 5;
  std::int64_t first_ms = 500;    ///< longest wait before the second try; doubled for each after it
  std::int64_t most_ms = 60'000;  ///< no wait is longer
  /// In [0, 1): where in the time each wait ends, so that many phones don't come back at one moment.
  std::function<double()> jitter{};
  /// Waits; false when there is no going on.
  std::function<bool(std::int64_t ms)> wait{};
};

/// Whether trying again later may help: the far side can't be reached, is busy, or the line broke.
[[nodiscard]] bool mayPass(const Error& error);

/// The same far side, where what may pass is tried again, and only that. A far side that answers an error
/// with "retry_after_s" among its values is given that time.
[[nodiscard]] Remote patient(Remote remote, Backoff backoff);

}  // namespace hingepin::sync
