// SPDX-License-Identifier: Apache-2.0
#include "engine/far_side/curl_client.h"

#include <curl/curl.h>

#include <algorithm>
#include <cctype>
#include <memory>
#include <utility>

namespace hingepin::far_side {
namespace {

constexpr std::size_t kMostAnswerBytes = 64U << 20U;

struct Transfer {
  CURL* easy = nullptr;
  curl_slist* headers = nullptr;
  HttpAnswer answer{};
  CURLcode result = CURLE_OK;
};

std::size_t takeBody(char* bytes, std::size_t, std::size_t count, void* self) {
  std::string& body = static_cast<Transfer*>(self)->answer.body;
  if (body.size() + count > kMostAnswerBytes) return 0;
  body.append(bytes, count);
  return count;
}

std::size_t takeHeader(char* bytes, std::size_t, std::size_t count, void* self) {
  auto& headers = static_cast<Transfer*>(self)->answer.headers;
  const std::string line(bytes, count);
  if (line.starts_with("HTTP/")) headers.clear();  // another answer begins, after one such as "100 Continue"
  const std::size_t colon = line.find(':');
  if (colon == std::string::npos) return count;
  std::string name = line.substr(0, colon);
  std::ranges::transform(name, name.begin(), [](unsigned char byte) { return std::tolower(byte); });
  const std::size_t first = line.find_first_not_of(" \t", colon + 1);
  const std::size_t last = line.find_last_not_of(" \t\r\n");
  headers[name] = first == std::string::npos || last < first ? "" : line.substr(first, last - first + 1);
  return count;
}

/// Without the URL: reasons are shown and kept.
std::unexpected<Error> errorOf(CURLcode code) {
  const char* meaning = "far-side-cut";
  switch (code) {
    case CURLE_COULDNT_RESOLVE_HOST:
    case CURLE_COULDNT_RESOLVE_PROXY:
    case CURLE_COULDNT_CONNECT:
    case CURLE_OPERATION_TIMEDOUT:
      meaning = "far-side-unreachable";
      break;
    case CURLE_PEER_FAILED_VERIFICATION:
    case CURLE_SSL_CACERT_BADFILE:
    case CURLE_SSL_ISSUER_ERROR:
    case CURLE_SSL_INVALIDCERTSTATUS:
      meaning = "far-side-not-trusted";
      break;
    case CURLE_URL_MALFORMAT:
    case CURLE_UNSUPPORTED_PROTOCOL:
      return fail(ErrorKind::InvalidInput, "far-side-url-malformed");
    case CURLE_WRITE_ERROR:
      return fail(ErrorKind::InvalidInput, "far-side-answer-malformed");
    default:
      break;
  }
  return fail(ErrorKind::IoFailed, meaning, {{"reason", curl_easy_strerror(code)}});
}

class Curl {
 public:
  explicit Curl(CurlOptions options) : options_(std::move(options)) {
    static const CURLcode prepared = curl_global_init(CURL_GLOBAL_DEFAULT);
    static_cast<void>(prepared);
    multi_ = curl_multi_init();
    curl_multi_setopt(multi_, CURLMOPT_MAX_HOST_CONNECTIONS, static_cast<long>(options_.most_connections));
    curl_multi_setopt(multi_, CURLMOPT_MAXCONNECTS, static_cast<long>(options_.most_connections));
  }
  ~Curl() {
    for (CURL* easy : idle_) curl_easy_cleanup(easy);
    curl_multi_cleanup(multi_);
  }
  Curl(const Curl&) = delete;
  Curl& operator=(const Curl&) = delete;

  std::vector<Expected<HttpAnswer>> perform(std::span<const HttpRequest> requests) {
    std::vector<Transfer> transfers(requests.size());
    for (std::size_t index = 0; index < requests.size(); ++index) begin(transfers[index], requests[index]);
    int running = 0;
    do {
      if (curl_multi_perform(multi_, &running) != CURLM_OK) break;
      int left = 0;
      while (const CURLMsg* message = curl_multi_info_read(multi_, &left)) {
        if (message->msg != CURLMSG_DONE) continue;
        void* transfer = nullptr;
        curl_easy_getinfo(message->easy_handle, CURLINFO_PRIVATE, &transfer);
        static_cast<Transfer*>(transfer)->result = message->data.result;
      }
      if (running > 0) curl_multi_poll(multi_, nullptr, 0, 1000, nullptr);
    } while (running > 0);
    std::vector<Expected<HttpAnswer>> answers;
    for (Transfer& transfer : transfers) answers.push_back(end(transfer));
    return answers;
  }

 private:
  void begin(Transfer& transfer, const HttpRequest& request) {
    if (idle_.empty()) {
      transfer.easy = curl_easy_init();
    } else {
      transfer.easy = idle_.back();
      idle_.pop_back();
      curl_easy_reset(transfer.easy);
    }
    CURL* const easy = transfer.easy;
    curl_easy_setopt(easy, CURLOPT_PRIVATE, &transfer);
    curl_easy_setopt(easy, CURLOPT_URL, request.url.c_str());
    curl_easy_setopt(easy, CURLOPT_PROTOCOLS_STR, "https,http");
    curl_easy_setopt(easy, CURLOPT_NOSIGNAL, 1L);
    curl_easy_setopt(easy, CURLOPT_FOLLOWLOCATION, 0L);
    curl_easy_setopt(easy, CURLOPT_SSL_VERIFYPEER, 1L);
    curl_easy_setopt(easy, CURLOPT_SSL_VERIFYHOST, 2L);
    if (!options_.ca_file.empty()) {
      curl_easy_setopt(easy, CURLOPT_CAINFO, options_.ca_file.c_str());
      curl_easy_setopt(easy, CURLOPT_CAPATH, nullptr);
    }
    if (!options_.user.empty()) {
      curl_easy_setopt(easy, CURLOPT_HTTPAUTH, CURLAUTH_BASIC);
      curl_easy_setopt(easy, CURLOPT_USERNAME, options_.user.c_str());
      curl_easy_setopt(easy, CURLOPT_PASSWORD, options_.secret.c_str());
    }
    curl_easy_setopt(easy, CURLOPT_CONNECTTIMEOUT_MS, static_cast<long>(options_.connect_timeout_ms));
    curl_easy_setopt(easy, CURLOPT_LOW_SPEED_LIMIT, 1L);
    curl_easy_setopt(easy, CURLOPT_LOW_SPEED_TIME, static_cast<long>(options_.silence_timeout_s));
    curl_easy_setopt(easy, CURLOPT_WRITEFUNCTION, takeBody);
    curl_easy_setopt(easy, CURLOPT_WRITEDATA, &transfer);
    curl_easy_setopt(easy, CURLOPT_HEADERFUNCTION, takeHeader);
    curl_easy_setopt(easy, CURLOPT_HEADERDATA, &transfer);
    curl_easy_setopt(easy, CURLOPT_CUSTOMREQUEST, request.method.c_str());
    if (request.method == "HEAD") curl_easy_setopt(easy, CURLOPT_NOBODY, 1L);
    if (request.method == "PUT" || !request.body.empty()) {
      // Not copied by curl. Of a body without bytes the pointer may be null, which would mean a read
      // function.
      curl_easy_setopt(easy, CURLOPT_POSTFIELDSIZE_LARGE, static_cast<curl_off_t>(request.body.size()));
      curl_easy_setopt(easy, CURLOPT_POSTFIELDS, request.body.empty() ? "" : request.body.data());
      // Waiting for "100 Continue" costs more than a piece that travels in vain.
      transfer.headers = curl_slist_append(transfer.headers, "Expect:");
    }
    for (const auto& [name, value] : request.headers) {
      std::string line = name;
      line += ": ";
      line += value;
      transfer.headers = curl_slist_append(transfer.headers, line.c_str());
    }
    curl_easy_setopt(easy, CURLOPT_HTTPHEADER, transfer.headers);
    curl_multi_add_handle(multi_, easy);
  }

  Expected<HttpAnswer> end(Transfer& transfer) {
    long status = 0;
    curl_easy_getinfo(transfer.easy, CURLINFO_RESPONSE_CODE, &status);
    curl_multi_remove_handle(multi_, transfer.easy);
    curl_slist_free_all(transfer.headers);
    idle_.push_back(transfer.easy);
    if (transfer.result != CURLE_OK) return errorOf(transfer.result);
    transfer.answer.status = static_cast<int>(status);
    return std::move(transfer.answer);
  }

  CurlOptions options_;
  CURLM* multi_ = nullptr;
  std::vector<CURL*> idle_;
};

}  // namespace

HttpClient curlClient(const CurlOptions& options) {
  const auto curl = std::make_shared<Curl>(options);
  return [curl](std::span<const HttpRequest> requests) { return curl->perform(requests); };
}

}  // namespace hingepin::far_side
