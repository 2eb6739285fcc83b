// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/versions.h"

#include <curl/curl.h>
#include <expat.h>
#include <fmt/format.h>
#include <openssl/crypto.h>
#include <sodium.h>
#include <sqlite3.h>
#include <zlib.h>

#include <Eigen/src/Core/util/Macros.h>
#include <CLI/Version.hpp>
#include <boost/version.hpp>
#include <nlohmann/detail/abi_macros.hpp>

namespace hingepin::cli {

std::string versions(bool verbose) {
  std::string text = "hingepin " HINGEPIN_VERSION "\n";
  if (!verbose) return text;
  const auto line = [&](std::string_view name, std::string_view built, std::string_view loaded) {
    text += fmt::format("{:<14} {}", name, built);
    text += built == loaded ? "\n" : fmt::format(", loaded: {}\n", loaded);
  };
  const auto header = [&](std::string_view name, std::string_view built) { line(name, built, built); };
  header("compiler", __VERSION__);
  header("Boost",
         fmt::format("{}.{}.{}", BOOST_VERSION / 100000, BOOST_VERSION / 100 % 1000, BOOST_VERSION % 100));
  header("CLI11", CLI11_VERSION);
  line("curl", LIBCURL_VERSION, curl_version_info(CURLVERSION_NOW)->version);
  header("Eigen", fmt::format("{}.{}.{}", EIGEN_WORLD_VERSION, EIGEN_MAJOR_VERSION, EIGEN_MINOR_VERSION));
  line("expat", fmt::format("{}.{}.{}", XML_MAJOR_VERSION, XML_MINOR_VERSION, XML_MICRO_VERSION),
       std::string_view(XML_ExpatVersion()).substr(std::string_view("expat_").size()));
  header("fmt", fmt::format("{}.{}.{}", FMT_VERSION / 10000, FMT_VERSION / 100 % 100, FMT_VERSION % 100));
  header("nlohmann-json", fmt::format("{}.{}.{}", NLOHMANN_JSON_VERSION_MAJOR, NLOHMANN_JSON_VERSION_MINOR,
                                      NLOHMANN_JSON_VERSION_PATCH));
  line("libsodium", SODIUM_VERSION_STRING, sodium_version_string());
  line("OpenSSL", OPENSSL_VERSION_STR, OpenSSL_version(OPENSSL_VERSION_STRING));
  line("SQLite", SQLITE_VERSION, sqlite3_libversion());
  line("zlib", ZLIB_VERSION, zlibVersion());
  return text;
}

}  // namespace hingepin::cli
