// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "engine/far_side/http.h"

namespace hingepin::far_side {

struct AwsKey {
  std::string id;
  std::string secret;
  std::string region;
};

/// "20130524T000000Z"
[[nodiscard]] std::string awsTime(std::int64_t utc_ms);

/// Unreserved characters as they are, all others in percent notation; '/' only where `keep_slash`.
[[nodiscard]] std::string uriEncoded(std::string_view text, bool keep_slash);

/// The value of the header Authorization of AWS Signature Version 4 for the service s3.
/// @param path encoded, as in the URL; for S3 it is encoded once
/// @param query names and values, not encoded
/// @param headers all that are signed: host, x-amz-content-sha256, x-amz-date and whatever else
/// Source: "Signature Calculations for the Authorization Header", Amazon S3 API reference.
[[nodiscard]] std::string awsAuthorization(const AwsKey& key, const std::string& method,
                                           const std::string& path,
                                           std::vector<std::pair<std::string, std::string>> query,
                                           const HttpHeaders& headers, const std::string& payload_hash,
                                           const std::string& time);

}  // namespace hingepin::far_side
