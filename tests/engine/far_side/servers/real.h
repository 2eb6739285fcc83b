// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <chrono>
#include <memory>
#include <string>
#include <thread>
#include <vector>

#include "engine/far_side/curl_client.h"
#include "engine/far_side/s3.h"
#include "engine/far_side/webdav.h"
#include "tests/engine/far_side/servers/server.h"

namespace hingepin::far_side::samples {

inline std::int64_t nowMs() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

/// A real server on this computer: Apache httpd with mod_dav over TLS, or OpenStack Swift with its s3api.
class RealServer {
 public:
  /// @param kind "webdav" or "s3"
  RealServer(std::string kind, const std::string& folder)
      : kind_(std::move(kind)),
        folder_(folder),
        server_(std::make_unique<sync::samples::Server>(isS3() ? "swift.sh" : "apache.sh", folder)) {
    if (isS3() && server_->runs()) has_bucket_ = makeBucket();
  }
  [[nodiscard]] bool isS3() const { return kind_ == "s3"; }
  [[nodiscard]] bool runs() const { return server_->runs() && has_bucket_; }
  [[nodiscard]] bool isMissing() const { return server_->isMissing(); }
  [[nodiscard]] const char* packages() const {
    return isS3() ? "Debian's swift-proxy, swift-account, swift-container and swift-object"
                  : "Debian's apache2-bin and openssl";
  }
  [[nodiscard]] std::string url() const {
    return isS3() ? "http://127.0.0.1:" + std::to_string(server_->port())
                  : "https://localhost:" + std::to_string(server_->port()) + "/share";
  }
  [[nodiscard]] int port() const { return server_->port(); }
  [[nodiscard]] std::string caFile() const { return isS3() ? "" : folder_ + "/ca.pem"; }
  [[nodiscard]] std::string secret() const { return isS3() ? "demo-secret" : "demo password"; }

  /// What speaks HTTP to it.
  [[nodiscard]] HttpClient client(const std::string& secret) const {
    return curlClient({.user = isS3() ? "" : "technician", .secret = secret, .ca_file = caFile()});
  }
  [[nodiscard]] HttpClient client() const { return client(secret()); }
  [[nodiscard]] sync::Remote remote(HttpClient client, const std::string& secret,
                                    std::function<std::int64_t()> now_utc_ms) const {
    if (!isS3()) return webdav(std::move(client), url());
    return s3(std::move(client),
              {.endpoint = url(),
               .bucket = "fleet",
               .prefix = "yard/",
               .key = {"yard:technician", secret, "us-east-1"}},
              std::move(now_utc_ms));
  }
  [[nodiscard]] sync::Remote remote() const { return remote(client(), secret(), nowMs); }

 private:
  /// The parts of Swift begin one after the other; until all are there it answers 503.
  [[nodiscard]] bool makeBucket() const {
    const sync::Remote bucket =
        s3(client(),
           {.endpoint = url(), .bucket = "fleet", .key = {"yard:technician", secret(), "us-east-1"}}, nowMs);
    const std::vector<sync::Upload> itself = {{.name = "", .bytes = "", .replace = true}};
    for (int tries = 0; tries < 1200; ++tries) {
      if (bucket.put(itself).front()) return true;
      std::this_thread::sleep_for(std::chrono::milliseconds(250));
    }
    return false;
  }

  std::string kind_;
  std::string folder_;
  std::unique_ptr<sync::samples::Server> server_;
  bool has_bucket_ = true;
};

}  // namespace hingepin::far_side::samples
