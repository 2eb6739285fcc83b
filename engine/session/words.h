// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string_view>

/// translations/, built in, so that the program needs no file beside it.
namespace hingepin::session {

struct LanguageFile {
  std::string_view language;
  std::string_view json;
};

/// translations/engine/<tag>.json, English first.
[[nodiscard]] std::span<const LanguageFile> engineFiles();
/// translations/procedures/<tag>/*.json
[[nodiscard]] std::span<const LanguageFile> procedureFiles();

}  // namespace hingepin::session
