// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "engine/base/error.h"

namespace hingepin::records {

/// One thing that verification has to say about a named object.
struct Finding {
  Message message;
  std::string subject{};         ///< the name of the record, signature, list or personal object; "" for none
  std::optional<Error> cause{};  ///< what its reader said, where it could not be read
};

[[nodiscard]] inline Amount countOf(auto number) { return {static_cast<double>(number), "1", 0}; }

}  // namespace hingepin::records
