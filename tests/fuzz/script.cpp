// SPDX-License-Identifier: Apache-2.0
#include "tests/fuzz/script.h"

#include <array>
#include <optional>

#include "engine/base/random.h"
#include "engine/records/encoding.h"
#include "engine/records/seal.h"

namespace hingepin::fuzz {
namespace {

using namespace records;

constexpr std::size_t kMostLines = 32;

std::optional<std::size_t> digit(std::string_view text, std::size_t at) {
  if (at >= text.size() || text[at] < '0' || text[at] > '9') return std::nullopt;
  return static_cast<std::size_t>(text[at] - '0');
}

/// A number from 0 to 99 at the front, taken off.
std::optional<std::size_t> takeNumber(std::string_view& text) {
  std::optional<std::size_t> number = digit(text, 0);
  if (!number) return std::nullopt;
  text.remove_prefix(1);
  if (const std::optional<std::size_t> second = digit(text, 0)) {
    number = 10 * *number + *second;
    text.remove_prefix(1);
  }
  return number;
}

void fillFrom(std::uint64_t seed, std::span<std::uint8_t> bytes) {
  Random random(seed);
  for (std::uint8_t& byte : bytes) byte = static_cast<std::uint8_t>(random.bits() >> 56U);
}

Salt saltOf(std::size_t number) {
  Salt salt{};
  fillFrom(2000 + number, salt);
  return salt;
}

class Reader {
 public:
  Script read(std::string_view text) {
    for (std::size_t lines = 0; !text.empty() && lines < kMostLines; ++lines) {
      const std::string_view row = text.substr(0, text.find('\n'));
      text.remove_prefix(std::min(row.size() + 1, text.size()));
      names_.emplace_back();
      made_.payloads.emplace_back();
      rows_.emplace_back();
      if (!row.empty()) line(row.front(), row.substr(1));
    }
    return std::move(made_);
  }

 private:
  enum class Where { Nowhere, Statements, Lists };
  struct Row {
    Where where = Where::Nowhere;
    std::string text{};
  };

  void line(char kind, std::string_view rest) {
    switch (kind) {
      case 'R':
        return sealed(rest, kRecordType, Where::Statements);
      case 'G':
        return sealed(rest, kSignatureType, Where::Statements);
      case 'L':
        return sealed(rest, kSignersType, Where::Lists);
      case 'T':
        return put(Where::Statements, filled(rest), std::nullopt);
      case 'U':
        return put(Where::Lists, filled(rest), std::nullopt);
      case 'A':
        if (const auto number = takeNumber(rest)) made_.evidence.accepted_roots.push_back(name(*number));
        return;
      case 'H':
        if (const auto number = takeNumber(rest)) head(*number);
        return;
      case 'N':
        if (const auto number = takeNumber(rest); number && *number < rows_.size()) {
          put(rows_[*number].where, rows_[*number].text, filled(rest.substr(rest.empty() ? 0 : 1)));
        }
        return;
      case 'P':
      case 'Q':
      case 'E':
        if (const auto salt = digit(rest, 0)) personal(kind, *salt, filled(rest.substr(1)));
        return;
      default:
        return;
    }
  }

  void sealed(std::string_view rest, std::string_view type, Where where) {
    const std::optional<std::size_t> first = digit(rest, 0);
    if (!first) return;
    const std::optional<std::size_t> second = where == Where::Lists ? digit(rest, 1) : std::nullopt;
    const std::string payload = filled(rest.substr(second ? 2 : 1));
    const SecretKey* const keys[] = {&scriptKey(*first), &scriptKey(second.value_or(0))};
    made_.payloads.back() = payload;
    names_.back() = hashName(payload);
    put(where, seal(payload, type, std::span(keys).first(second && *second != *first ? 2 : 1)), std::nullopt);
  }

  void put(Where where, std::string text, std::optional<std::string> name) {
    rows_.back() = {where, text};
    if (where == Where::Statements) made_.evidence.statements.push_back({std::move(text), std::move(name)});
    if (where == Where::Lists) made_.evidence.signers_lists.push_back({std::move(text), std::move(name)});
  }

  void head(std::size_t number) {
    if (number >= made_.payloads.size()) return;
    Expected<Statement> read = readPayload(made_.payloads[number], kRecordType);
    if (!read) read = readPayload(made_.payloads[number], kSignatureType);
    if (read) made_.evidence.known_heads.push_back(headAfter(envelopeOf(*read).place, name(number)));
  }

  void personal(char kind, std::size_t number, std::string bytes) {
    const Salt salt = saltOf(number);
    names_.back() = personalName(salt, bytes);
    if (kind == 'E') {
      made_.evidence.erased.push_back(names_.back());
      return;
    }
    if (kind == 'Q') bytes += '~';
    made_.evidence.personal.push_back({names_.back(), salt, std::move(bytes)});
  }

  [[nodiscard]] std::string name(std::size_t number) const {
    return number < names_.size() ? names_[number] : std::string();
  }

  /// A text with its <...> replaced.
  [[nodiscard]] std::string filled(std::string_view text) const {
    std::string made;
    while (!text.empty()) {
      const std::size_t bracket = std::min(text.find('<'), text.size());
      made += text.substr(0, bracket);
      text.remove_prefix(bracket);
      if (text.size() < 4) {
        made += text;
        break;
      }
      const char kind = text[1];
      std::string_view rest = text.substr(2);
      const std::optional<std::size_t> number = takeNumber(rest);
      if (!number || !rest.starts_with('>') ||
          std::string_view("kxen").find(kind) == std::string_view::npos) {
        made += '<';
        text.remove_prefix(1);
        continue;
      }
      made += kind == 'k'   ? scriptKey(*number).id()
              : kind == 'x' ? publicKeyText(scriptKey(*number).publicKey())
              : kind == 'e' ? scriptEpoch(*number)
                            : name(*number);
      text = rest.substr(1);
    }
    return made;
  }

  Script made_;
  std::vector<std::string> names_;
  std::vector<Row> rows_;
};

}  // namespace

const SecretKey& scriptKey(std::size_t number) {
  static const std::vector<SecretKey> keys = [] {
    std::vector<SecretKey> made;
    for (std::uint64_t seed = 0; seed < 10; ++seed) {
      made.push_back(newSecretKey([&](std::span<std::uint8_t> bytes) { fillFrom(1000 + seed, bytes); }));
    }
    return made;
  }();
  return keys[number % keys.size()];
}

std::string scriptEpoch(std::size_t number) {
  std::array<std::uint8_t, 16> bytes{};
  fillFrom(3000 + number, bytes);
  return epochName(bytes);
}

Script readScript(std::string_view text) { return Reader().read(text); }

}  // namespace hingepin::fuzz
