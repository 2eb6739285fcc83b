// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <expected>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace hingepin {

/// A number in a message, with the UCUM code of its unit ("1" for none) and the decimals worth showing.
/// Whoever puts the message into words may convert it (metric or US customary).
struct Amount {
  double value;
  std::string ucum;
  int decimals = 0;
};

using MessageValue = std::variant<std::string, Amount>;

/// Something the engine has to say: a code whose sentence stands in translations/, and the values that fill
/// its placeholders, by name.
struct Message {
  std::string code;
  std::vector<std::pair<std::string, MessageValue>> values;
};

/// What a caller does about an error differs by kind.
enum class ErrorKind {
  InvalidInput,   ///< malformed, out of range, of the wrong dimension
  NotFound,       ///< a file or entry that is simply not there
  IoFailed,       ///< there, but it could not be read or written
  Insufficient,   ///< well formed, but it cannot support a result
  RankDeficient,  ///< a fit whose unknowns the data do not tell apart
};

/// Where in the input. Lines and columns count from 1; 0 and "" mean "does not apply".
struct Place {
  std::string file = {};
  std::size_t line = 0;
  std::size_t column = 0;
  std::string pointer = {};  ///< JSON Pointer (RFC 6901)
};

struct Error {
  ErrorKind kind;
  Message message;
  Place place;
};

template <class T>
using Expected = std::expected<T, Error>;

/// Shorthand for `return fail(ErrorKind::..., "code", {{"name", value}}, place);`.
[[nodiscard]] inline std::unexpected<Error> fail(
    ErrorKind kind, std::string code, std::vector<std::pair<std::string, MessageValue>> values = {},
    Place place = {}) {
  return std::unexpected(Error{kind, {std::move(code), std::move(values)}, std::move(place)});
}

}  // namespace hingepin
