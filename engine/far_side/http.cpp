// SPDX-License-Identifier: Apache-2.0
#include "engine/far_side/http.h"

#include <expat.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <memory>
#include <string_view>

namespace hingepin::far_side {
namespace {

constexpr std::array kPassingStatuses = {408, 425, 429, 500, 502, 503, 504};

Amount statusOf(const HttpAnswer& answer) { return {static_cast<double>(answer.status), "1", 0}; }

struct RowReader {
  std::string row;
  std::vector<XmlRow> rows{};
  std::string text{};
  bool inside = false;

  static std::string localName(const XML_Char* name) {
    const std::string_view full(name);
    return std::string(full.substr(full.rfind('|') + 1));  // npos + 1 is 0
  }
  static void begin(void* self, const XML_Char* name, const XML_Char**) {
    auto& reader = *static_cast<RowReader*>(self);
    reader.text.clear();
    if (localName(name) != reader.row) return;
    reader.rows.emplace_back();
    reader.inside = true;
  }
  static void end(void* self, const XML_Char* name) {
    auto& reader = *static_cast<RowReader*>(self);
    const std::string local = localName(name);
    if (local == reader.row) {
      reader.inside = false;
    } else if (reader.inside) {
      reader.rows.back()[local] = reader.text;
    }
    reader.text.clear();
  }
  static void characters(void* self, const XML_Char* text, int length) {
    static_cast<RowReader*>(self)->text.append(text, static_cast<std::size_t>(length));
  }
};

}  // namespace

std::unexpected<Error> unhoped(const HttpAnswer& answer, const HttpRequest& request) {
  if (answer.status == 404 || answer.status == 410) {
    return fail(ErrorKind::NotFound, "object-not-there",
                {{"name", request.url.substr(request.url.rfind('/') + 1)}});
  }
  if (std::ranges::find(kPassingStatuses, answer.status) != kPassingStatuses.end()) {
    auto error = fail(ErrorKind::IoFailed, "far-side-busy", {{"status", statusOf(answer)}});
    if (const auto after = answer.headers.find("retry-after"); after != answer.headers.end()) {
      error.error().message.values.emplace_back("retry_after_s",
                                                Amount{static_cast<double>(numberIn(after->second)), "s", 0});
    }
    return error;
  }
  if (answer.status == 401 || answer.status == 403) {
    return fail(ErrorKind::IoFailed, "far-side-refused", {{"status", statusOf(answer)}});
  }
  if (answer.status == 507 || answer.status == 413) {
    return fail(ErrorKind::IoFailed, "far-side-full", {{"status", statusOf(answer)}});
  }
  if (answer.status >= 300 && answer.status < 400) {
    return fail(ErrorKind::IoFailed, "far-side-moved", {{"status", statusOf(answer)}});
  }
  return fail(ErrorKind::IoFailed, "far-side-unexpected",
              {{"status", statusOf(answer)}, {"method", request.method}});
}

Expected<std::string> bytesIn(Expected<HttpAnswer> answer, const HttpRequest& request) {
  if (!answer) return std::unexpected(answer.error());
  if (answer->status != 200) return unhoped(*answer, request);
  return std::move(answer->body);
}

Expected<std::optional<std::int64_t>> sizeIn(Expected<HttpAnswer> answer, const HttpRequest& request) {
  if (!answer) return std::unexpected(answer.error());
  if (answer->status == 404) return std::nullopt;
  if (answer->status != 200) return unhoped(*answer, request);
  // Apache leaves the length out where it is 0.
  const auto size = answer->headers.find("content-length");
  return size == answer->headers.end() ? 0 : numberIn(size->second);
}

Expected<sync::Put> putIn(Expected<HttpAnswer> answer, const HttpRequest& request) {
  if (!answer) return std::unexpected(answer.error());
  if (answer->status == 412) return sync::Put::ThereAlready;
  if (answer->status < 200 || answer->status > 299) return unhoped(*answer, request);
  return sync::Put::Done;
}

Expected<void> removalIn(Expected<HttpAnswer> answer, const HttpRequest& request) {
  if (!answer) return std::unexpected(answer.error());
  const bool gone = answer->status == 404 || (answer->status >= 200 && answer->status < 300);
  return gone ? Expected<void>() : unhoped(*answer, request);
}

std::int64_t numberIn(const std::string& text) {
  std::int64_t number = 0;
  std::from_chars(text.data(), text.data() + text.size(), number);
  return number;
}

Expected<void> checkUrl(const std::string& url) {
  const std::size_t scheme_end = url.find("://");
  const std::string scheme = url.substr(0, scheme_end);
  if (scheme_end == std::string::npos || (scheme != "https" && scheme != "http")) {
    return fail(ErrorKind::InvalidInput, "far-side-url-malformed");
  }
  const std::string rest = url.substr(scheme_end + 3);
  const std::string authority = rest.substr(0, rest.find_first_of("/?#"));
  if (authority.find('@') != std::string::npos) {
    return fail(ErrorKind::InvalidInput, "far-side-url-with-secret");
  }
  const bool plain = std::ranges::all_of(url, [](char byte) { return byte > ' ' && byte < 0x7F; });
  if (authority.empty() || authority.starts_with(':') || !plain ||
      rest.find_first_of("?#") != std::string::npos) {
    return fail(ErrorKind::InvalidInput, "far-side-url-malformed");
  }
  const std::string host = authority.starts_with('[') ? authority.substr(0, authority.find(']') + 1)
                                                      : authority.substr(0, authority.find(':'));
  const bool here = host == "127.0.0.1" || host == "[::1]" || host == "localhost";
  if (scheme == "http" && !here) return fail(ErrorKind::InvalidInput, "far-side-without-tls");
  return {};
}

Expected<std::vector<XmlRow>> xmlRows(const std::string& xml, const std::string& row) {
  const std::unique_ptr<XML_ParserStruct, void (*)(XML_Parser)> parser(XML_ParserCreateNS(nullptr, '|'),
                                                                       XML_ParserFree);
  RowReader reader{.row = row};
  XML_SetUserData(parser.get(), &reader);
  XML_SetElementHandler(parser.get(), RowReader::begin, RowReader::end);
  XML_SetCharacterDataHandler(parser.get(), RowReader::characters);
  if (XML_Parse(parser.get(), xml.data(), static_cast<int>(xml.size()), 1) != XML_STATUS_OK) {
    return fail(ErrorKind::InvalidInput, "far-side-answer-malformed");
  }
  return std::move(reader.rows);
}

}  // namespace hingepin::far_side
