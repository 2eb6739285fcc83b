// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/error.h"
#include "engine/sync/remote.h"

/// What WebDAV and S3 need of HTTP, without saying who speaks it.
namespace hingepin::far_side {

using HttpHeaders = std::vector<std::pair<std::string, std::string>>;

struct HttpRequest {
  std::string method;
  std::string url;
  HttpHeaders headers{};
  std::string_view body{};  ///< of whoever asks, who keeps it until the answer is there
};

struct HttpAnswer {
  int status = 0;
  std::map<std::string, std::string> headers{};  ///< names in lower case
  std::string body{};
};

/// Does all of them, in parallel where that helps, and answers in the same order. Redirections are not
/// followed: they could lead credentials astray. Errors: IoFailed "far-side-unreachable", "far-side-cut",
/// "far-side-not-trusted" (its certificate), with the reason.
using HttpClient = std::function<std::vector<Expected<HttpAnswer>>(std::span<const HttpRequest>)>;

/// What a status that was not hoped for means. Errors: NotFound "object-not-there"; IoFailed "far-side-busy"
/// (with "retry_after_s" where it says so), "far-side-refused", "far-side-full", "far-side-moved",
/// "far-side-unexpected".
[[nodiscard]] std::unexpected<Error> unhoped(const HttpAnswer& answer, const HttpRequest& request);

/// What the answers to GET, HEAD, PUT and DELETE mean for a Remote. Errors: those of unhoped().
[[nodiscard]] Expected<std::string> bytesIn(Expected<HttpAnswer> answer, const HttpRequest& request);
[[nodiscard]] Expected<std::optional<std::int64_t>> sizeIn(Expected<HttpAnswer> answer,
                                                           const HttpRequest& request);
[[nodiscard]] Expected<sync::Put> putIn(Expected<HttpAnswer> answer, const HttpRequest& request);
[[nodiscard]] Expected<void> removalIn(Expected<HttpAnswer> answer, const HttpRequest& request);

/// Sends requests and makes something of each answer.
template <class Result>
[[nodiscard]] std::vector<Expected<Result>> answersTo(const HttpClient& client,
                                                      const std::vector<HttpRequest>& requests,
                                                      Expected<Result> (*meaning)(Expected<HttpAnswer>,
                                                                                  const HttpRequest&)) {
  std::vector<Expected<HttpAnswer>> answers = client(requests);
  std::vector<Expected<Result>> results;
  for (std::size_t index = 0; index < answers.size(); ++index) {
    results.push_back(meaning(std::move(answers[index]), requests[index]));
  }
  return results;
}

/// A whole number in a text, 0 for none.
[[nodiscard]] std::int64_t numberIn(const std::string& text);

/// Whether credentials may travel to a URL: it is https, or http to this computer itself; it names a host,
/// and no user or password. Errors: InvalidInput "far-side-url-malformed", "far-side-url-with-secret",
/// "far-side-without-tls".
[[nodiscard]] Expected<void> checkUrl(const std::string& url);

/// The texts of some elements inside each element `row` of an XML document, by their names without namespace.
/// An element that is there and empty has the text "". Errors: InvalidInput "far-side-answer-malformed".
using XmlRow = std::map<std::string, std::string>;
[[nodiscard]] Expected<std::vector<XmlRow>> xmlRows(const std::string& xml, const std::string& row);

}  // namespace hingepin::far_side
