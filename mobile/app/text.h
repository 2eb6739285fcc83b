// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>
#include <string_view>

namespace hingepin::mobile {

[[nodiscard]] inline QString qt(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
[[nodiscard]] inline std::string plain(const QString& text) { return text.toStdString(); }

}  // namespace hingepin::mobile
