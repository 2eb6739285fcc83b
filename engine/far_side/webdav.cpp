// SPDX-License-Identifier: Apache-2.0
#include "engine/far_side/webdav.h"

#include <memory>
#include <set>
#include <utility>

namespace hingepin::far_side {
namespace {

constexpr const char* kPropfind =
    R"(<?xml version="1.0" encoding="UTF-8"?><D:propfind xmlns:D="DAV:"><D:prop><D:getcontentlength/><D:resourcetype/></D:prop></D:propfind>)";
constexpr int kMultiStatus = 207;

struct Share {
  HttpClient client;
  std::string url;
  std::set<std::string> folders{};  ///< that were seen to be there

  [[nodiscard]] std::string urlOf(const std::string& name) const { return url + "/" + name; }

  Expected<HttpAnswer> one(const HttpRequest& request) {
    return std::move(client(std::span(&request, 1)).front());
  }

  Expected<std::vector<sync::Listed>> list(const std::string& folder) {
    const HttpRequest request{.method = "PROPFIND",
                              .url = urlOf(folder) + "/",
                              .headers = {{"Depth", "1"}, {"Content-Type", "application/xml"}},
                              .body = kPropfind};
    const Expected<HttpAnswer> answer = one(request);
    if (!answer) return std::unexpected(answer.error());
    if (answer->status == 404) return std::vector<sync::Listed>{};
    if (answer->status != kMultiStatus) return unhoped(*answer, request);
    const auto rows = xmlRows(answer->body, "response");
    if (!rows) return std::unexpected(rows.error());
    std::vector<sync::Listed> listed;
    for (const XmlRow& row : *rows) {
      const auto href = row.find("href");
      if (href == row.end() || row.contains("collection") || href->second.ends_with('/')) continue;
      const auto size = row.find("getcontentlength");
      listed.push_back({.name = href->second.substr(href->second.rfind('/') + 1),
                        .size = size == row.end() ? 0 : numberIn(size->second)});
    }
    return listed;
  }

  /// Makes a folder and those above it, up to the share's own. One that is there already is fine.
  Expected<void> makeFolder(const std::string& folder) {
    for (std::size_t end = folder.find('/');; end = folder.find('/', end + 1)) {
      const std::string part = folder.substr(0, end);
      if (!folders.contains(part)) {
        const HttpRequest request{.method = "MKCOL", .url = urlOf(part) + "/"};
        const Expected<HttpAnswer> answer = one(request);
        if (!answer) return std::unexpected(answer.error());
        const bool there = answer->status == 201 || answer->status == 405;  // RFC 4918 section 9.3.1
        if (!there) return unhoped(*answer, request);
        folders.insert(part);
      }
      if (end == std::string::npos) return {};
    }
  }

  static std::string folderOf(const std::string& name) { return name.substr(0, name.rfind('/')); }

  HttpRequest requestOf(const sync::Upload& upload) const {
    HttpRequest request{.method = "PUT",
                        .url = urlOf(upload.name),
                        .headers = {{"Content-Type", "application/octet-stream"}},
                        .body = upload.bytes};
    if (!upload.replace) request.headers.emplace_back("If-None-Match", "*");
    return request;
  }

  /// The first object of a folder that was not seen yet goes ahead: it tells whether the folder is there.
  Expected<sync::Put> scout(const sync::Upload& upload) {
    const std::string folder = folderOf(upload.name);
    const HttpRequest request = requestOf(upload);
    Expected<HttpAnswer> answer = one(request);
    if (answer && (answer->status == 409 || answer->status == 404)) {
      if (auto made = makeFolder(folder); !made) return std::unexpected(made.error());
      answer = one(request);
    }
    Expected<sync::Put> put = putIn(std::move(answer), request);
    if (put) folders.insert(folder);
    return put;
  }

  std::vector<Expected<sync::Put>> put(std::span<const sync::Upload> uploads) {
    std::vector<Expected<sync::Put>> results(uploads.size(), sync::Put::Done);
    std::vector<std::size_t> open;
    std::vector<HttpRequest> requests;
    for (std::size_t index = 0; index < uploads.size(); ++index) {
      if (!folders.contains(folderOf(uploads[index].name))) {
        results[index] = scout(uploads[index]);
      } else {
        open.push_back(index);
        requests.push_back(requestOf(uploads[index]));
      }
    }
    std::vector<Expected<sync::Put>> answers = answersTo(client, requests, putIn);
    for (std::size_t index = 0; index < open.size(); ++index)
      results[open[index]] = std::move(answers[index]);
    return results;
  }

  std::vector<HttpRequest> requestsFor(const char* method, std::span<const std::string> names) const {
    std::vector<HttpRequest> requests;
    for (const std::string& name : names) requests.push_back({.method = method, .url = urlOf(name)});
    return requests;
  }
};

}  // namespace

sync::Remote webdav(HttpClient client, std::string url) {
  const auto share = std::make_shared<Share>(Share{.client = std::move(client), .url = std::move(url)});
  return {.list = [share](const std::string& folder) { return share->list(folder); },
          .get =
              [share](std::span<const std::string> names) {
                return answersTo(share->client, share->requestsFor("GET", names), bytesIn);
              },
          .sizes =
              [share](std::span<const std::string> names) {
                return answersTo(share->client, share->requestsFor("HEAD", names), sizeIn);
              },
          .put = [share](std::span<const sync::Upload> uploads) { return share->put(uploads); },
          .remove =
              [share](std::span<const std::string> names) {
                return answersTo(share->client, share->requestsFor("DELETE", names), removalIn);
              }};
}

}  // namespace hingepin::far_side
