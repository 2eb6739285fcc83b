// SPDX-License-Identifier: Apache-2.0
#include "engine/far_side/s3.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>
#include <memory>
#include <string_view>
#include <utility>

#include "engine/records/encoding.h"

namespace hingepin::far_side {
namespace {

// S3 takes signatures whose time is within 15 minutes of its own; less than this is no reason for a refusal.
constexpr std::int64_t kSoundClock_ms = 300'000;
constexpr int kMostPages = 10'000;

using Query = std::vector<std::pair<std::string, std::string>>;

struct Bucket {
  HttpClient client;
  S3Place place;
  std::function<std::int64_t()> now_utc_ms;
  std::int64_t ahead_ms = 0;  ///< how far the far side's clock is before the one here
  bool honours_none_match = true;

  [[nodiscard]] std::string pathOf(const std::string& name) const {
    return "/" + uriEncoded(place.bucket, false) +
           (name.empty() ? "" : "/" + uriEncoded(place.prefix + name, true));
  }

  [[nodiscard]] HttpRequest signedRequest(const HttpRequest& request, const std::string& path,
                                          const Query& query) const {
    HttpRequest sent = request;
    const std::string time = awsTime(now_utc_ms() + ahead_ms);
    const std::string hash = records::hashName(request.body);
    sent.headers.emplace_back("x-amz-content-sha256", hash);
    sent.headers.emplace_back("x-amz-date", time);
    HttpHeaders to_sign = sent.headers;
    to_sign.emplace_back("host", place.endpoint.substr(place.endpoint.find("://") + 3));
    sent.headers.emplace_back("Authorization",
                              awsAuthorization(place.key, request.method, path, query, to_sign, hash, time));
    sent.url = place.endpoint + path;
    for (const auto& [name, value] : query) {
      sent.url += (&name == &query.front().first ? "?" : "&") + uriEncoded(name, false) + "=" +
                  uriEncoded(value, false);
    }
    return sent;
  }

  /// Whether a refusal may be for the clock here; then the far side's is taken from now on.
  bool takesTheirClock(const std::vector<Expected<HttpAnswer>>& answers) {
    for (const auto& answer : answers) {
      if (!answer || answer->status != 403) continue;
      const auto date = answer->headers.find("date");
      const auto theirs = date == answer->headers.end() ? std::nullopt : httpDate_ms(date->second);
      if (!theirs) continue;
      const std::int64_t ahead = *theirs - now_utc_ms();
      if (std::abs(ahead - ahead_ms) < kSoundClock_ms) continue;
      ahead_ms = ahead;
      return true;
    }
    return false;
  }

  std::vector<Expected<HttpAnswer>> send(std::span<const HttpRequest> requests, const Query& query = {}) {
    const auto signedOnes = [&] {
      std::vector<HttpRequest> sent;
      for (const HttpRequest& each : requests) sent.push_back(signedRequest(each, pathOf(each.url), query));
      return sent;
    };
    std::vector<Expected<HttpAnswer>> answers = client(signedOnes());
    return takesTheirClock(answers) ? client(signedOnes()) : std::move(answers);
  }

  Expected<std::vector<sync::Listed>> list(const std::string& folder) {
    const std::string prefix = place.prefix + folder + "/";
    std::vector<sync::Listed> listed;
    Query query = {{"delimiter", "/"}, {"list-type", "2"}, {"prefix", prefix}};
    for (int page = 0; page < kMostPages; ++page) {
      const HttpRequest request{.method = "GET", .url = ""};
      const Expected<HttpAnswer> answer = std::move(send(std::span(&request, 1), query).front());
      if (!answer) return std::unexpected(answer.error());
      if (answer->status != 200) return unhoped(*answer, request);
      const auto rows = xmlRows(answer->body, "Contents");
      if (!rows) return std::unexpected(rows.error());
      for (const XmlRow& row : *rows) {
        const auto key = row.find("Key");
        const auto size = row.find("Size");
        if (key == row.end() || size == row.end() || !key->second.starts_with(prefix)) continue;
        listed.push_back({.name = key->second.substr(prefix.size()), .size = numberIn(size->second)});
      }
      const auto result = xmlRows(answer->body, "ListBucketResult");
      if (!result || result->empty()) return fail(ErrorKind::InvalidInput, "far-side-answer-malformed");
      const auto next = result->front().find("NextContinuationToken");
      if (next == result->front().end() || next->second.empty()) break;
      query = {
          {"continuation-token", next->second}, {"delimiter", "/"}, {"list-type", "2"}, {"prefix", prefix}};
    }
    return listed;
  }

  /// What is in `url` of these is the object's name.
  static std::vector<HttpRequest> requestsFor(const char* method, std::span<const std::string> names) {
    std::vector<HttpRequest> requests;
    for (const std::string& name : names) requests.push_back({.method = method, .url = name});
    return requests;
  }

  std::vector<Expected<sync::Put>> put(std::span<const sync::Upload> uploads) {
    const auto requestsOf = [&] {
      std::vector<HttpRequest> requests;
      for (const sync::Upload& each : uploads) {
        HttpRequest request{.method = "PUT",
                            .url = each.name,
                            .headers = {{"content-type", "application/octet-stream"}},
                            .body = each.bytes};
        if (!each.replace && honours_none_match) request.headers.emplace_back("if-none-match", "*");
        requests.push_back(std::move(request));
      }
      return requests;
    };
    std::vector<HttpRequest> requests = requestsOf();
    std::vector<Expected<HttpAnswer>> answers = send(requests);
    const bool refused =
        std::ranges::any_of(answers, [](const auto& answer) { return answer && answer->status == 501; });
    if (refused && honours_none_match) {
      // Not every storage knows the condition; without it the same bytes are put twice at worst.
      honours_none_match = false;
      requests = requestsOf();
      answers = send(requests);
    }
    std::vector<Expected<sync::Put>> results;
    for (std::size_t index = 0; index < answers.size(); ++index) {
      results.push_back(putIn(std::move(answers[index]), requests[index]));
    }
    return results;
  }
};

}  // namespace

std::optional<std::int64_t> httpDate_ms(const std::string& text) {
  constexpr std::array<std::string_view, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                        "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  if (text.size() != 29 || !text.ends_with(" GMT")) return std::nullopt;
  const auto* month = std::ranges::find(kMonths, text.substr(8, 3));
  if (month == kMonths.end()) return std::nullopt;
  const auto number = [&](std::size_t at, std::size_t size) {
    return static_cast<int>(numberIn(text.substr(at, size)));
  };
  const std::chrono::year_month_day date{
      std::chrono::year(number(12, 4)),
      std::chrono::month(static_cast<unsigned>(month - kMonths.begin()) + 1),
      std::chrono::day(static_cast<unsigned>(number(5, 2)))};
  if (!date.ok()) return std::nullopt;
  const auto time = std::chrono::sys_days(date) + std::chrono::hours(number(17, 2)) +
                    std::chrono::minutes(number(20, 2)) + std::chrono::seconds(number(23, 2));
  return std::chrono::duration_cast<std::chrono::milliseconds>(time.time_since_epoch()).count();
}

sync::Remote s3(HttpClient client, S3Place place, std::function<std::int64_t()> now_utc_ms) {
  const auto bucket = std::make_shared<Bucket>(
      Bucket{.client = std::move(client), .place = std::move(place), .now_utc_ms = std::move(now_utc_ms)});
  const HttpClient send = [bucket](std::span<const HttpRequest> requests) { return bucket->send(requests); };
  return {.list = [bucket](const std::string& folder) { return bucket->list(folder); },
          .get =
              [send](std::span<const std::string> names) {
                return answersTo(send, Bucket::requestsFor("GET", names), bytesIn);
              },
          .sizes =
              [send](std::span<const std::string> names) {
                return answersTo(send, Bucket::requestsFor("HEAD", names), sizeIn);
              },
          .put = [bucket](std::span<const sync::Upload> uploads) { return bucket->put(uploads); },
          .remove =
              [send](std::span<const std::string> names) {
                return answersTo(send, Bucket::requestsFor("DELETE", names), removalIn);
              }};
}

}  // namespace hingepin::far_side
