// SPDX-License-Identifier: Apache-2.0
#include "engine/session/certificate.h"

#include "engine/session/catalogue.h"

namespace hingepin::session {

certificate::Voice voiceOf(const Reader& reader) {
  const Locale& locale = localeOf(reader.language);
  return {.language = locale.language,
          .right_to_left = locale.right_to_left,
          .system = reader.system,
          .say = [reader](const Message& message) { return session::say(message, reader); },
          .show = [reader,
                   &locale](const Amount& amount) { return session::show(amount, reader.system, locale); },
          .asTyped = [&locale](const std::string& quantity) { return session::asTyped(quantity, locale); },
          .time = [reader](std::int64_t utc_ms) { return dateTimeText(utc_ms, reader); }};
}

}  // namespace hingepin::session
