// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>

#include "engine/far_side/http.h"

namespace hingepin::far_side {

struct CurlOptions {
  std::string user{};  ///< for Basic authentication (RFC 7617); "" for none
  std::string secret{};
  std::string ca_file{};  ///< certificates to trust beside none but these; "": those of the system
  int most_connections = 8;
  std::int64_t connect_timeout_ms = 20'000;
  std::int64_t silence_timeout_s = 60;  ///< a line on which nothing moves for so long is cut
};

/// Speaks HTTP by libcurl, over connections that are kept. TLS certificates are always checked.
[[nodiscard]] HttpClient curlClient(const CurlOptions& options);

}  // namespace hingepin::far_side
