// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "engine/far_side/aws_signature.h"
#include "engine/far_side/http.h"
#include "engine/sync/remote.h"

namespace hingepin::far_side {

struct S3Place {
  std::string endpoint;  ///< "https://host", without '/' at its end; the bucket stands in the path
  std::string bucket;
  std::string prefix{};  ///< before all names, such as "yard/"; "" for none
  AwsKey key;
};

/// A bucket of S3-compatible object storage as far side, requests signed with Signature Version 4. Where the
/// clock here is wrong, the date that the far side answers with a refusal is signed instead.
[[nodiscard]] sync::Remote s3(HttpClient client, S3Place place, std::function<std::int64_t()> now_utc_ms);

/// The time of an HTTP date ("Sun, 06 Nov 1994 08:49:37 GMT", RFC 9110 section 5.6.7), nothing if it is none.
[[nodiscard]] std::optional<std::int64_t> httpDate_ms(const std::string& text);

}  // namespace hingepin::far_side
