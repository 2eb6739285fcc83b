// SPDX-License-Identifier: Apache-2.0
#include "engine/base/strict_json.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>
#include <nlohmann/json.hpp>
#include <unordered_set>

#include "engine/base/text.h"

namespace hingepin {
namespace {

Place placeOfOffset(const JsonDocument& document, std::size_t offset) {
  std::string_view before = std::string_view(document.text).substr(0, offset);
  if (before.starts_with(kByteOrderMark)) before.remove_prefix(kByteOrderMark.size());
  const std::size_t line_break = before.rfind('\n');
  return {.file = document.file,
          .line = 1 + static_cast<std::size_t>(std::ranges::count(before, '\n')),
          .column = 1 + countCharacters(line_break == std::string_view::npos ? before
                                                                             : before.substr(line_break + 1)),
          .pointer = ""};
}

std::string escapedToken(std::string_view key) {
  std::string escaped;
  for (const char character : key) {
    if (character == '~') {
      escaped += "~0";
    } else if (character == '/') {
      escaped += "~1";
    } else {
      escaped += character;
    }
  }
  return escaped;
}

/// Walks over the text and tells, through `read`, how far the parser has come: its events carry no place.
struct TrackingIterator {
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  const char* at;
  std::size_t* read;

  reference operator*() const { return *at; }
  TrackingIterator& operator++() {
    ++at;
    ++*read;
    return *this;
  }
  TrackingIterator operator++(int) {
    const TrackingIterator old = *this;
    ++*this;
    return old;
  }
  bool operator==(const TrackingIterator& other) const { return at == other.at; }
};

/// Builds the tree from the parser's events; the first fault ends the parse.
class TreeBuilder {
 public:
  TreeBuilder(JsonDocument& document, const std::size_t& read) : document_(document), read_(read) {}

  std::optional<Error> takeError() { return std::move(error_); }

  bool null() { return add({.kind = JsonKind::Null, .offset = wordStart()}); }
  bool boolean(bool value) {
    return add({.kind = JsonKind::Boolean, .boolean = value, .offset = wordStart()});
  }
  bool number_integer(std::int64_t value) { return number(static_cast<double>(value)); }
  bool number_unsigned(std::uint64_t value) { return number(static_cast<double>(value)); }
  bool number_float(double value, const std::string& /*text*/) { return number(value); }
  bool string(std::string& value) {
    return add({.kind = JsonKind::String, .text = std::move(value), .offset = stringStart()});
  }
  bool binary(std::vector<std::uint8_t>& /*value*/) { return false; }  // no such thing in a text
  bool start_object(std::size_t /*size*/) { return open(JsonKind::Object); }
  bool end_object() { return close(); }
  bool start_array(std::size_t /*size*/) { return open(JsonKind::Array); }
  bool end_array() { return close(); }
  bool key(std::string& key) {
    Level& level = levels_.back();
    if (!level.keys_seen.insert(key).second) {
      Place place = placeOfOffset(document_, stringStart());
      for (const Level& outer : levels_) place.pointer += outer.token;
      place.pointer += "/" + escapedToken(key);
      error_ =
          Error{ErrorKind::InvalidInput, {"json-duplicate-key", {{"key", excerpt(key)}}}, std::move(place)};
      return false;
    }
    level.value.keys.push_back(std::move(key));
    return true;
  }
  template <class Exception>
  bool parse_error(std::size_t position, const std::string& /*token*/, const Exception& exception) {
    if (error_) return false;
    // The library's sentence is "... syntax error while parsing X - what; expected Y"; its place is left to
    // ours.
    const std::string_view sentence = exception.what();
    const std::size_t dash = sentence.find(" - ");
    const std::size_t bracket = sentence.find("] ");
    const std::string_view detail = dash != std::string_view::npos      ? sentence.substr(dash + 3)
                                    : bracket != std::string_view::npos ? sentence.substr(bracket + 2)
                                                                        : sentence;
    error_ = Error{
        ErrorKind::InvalidInput,
        {"json-syntax", {{"detail", std::string(detail)}}},
        placeOfOffset(document_, position == 0 ? 0 : std::min(position, document_.text.size() + 1) - 1)};
    return false;
  }

 private:
  struct Level {
    JsonValue value;
    std::unordered_set<std::string> keys_seen;
    std::string token;  ///< of this level in the JSON Pointer, with its slash; empty for the root
  };

  bool number(double value) {
    return add({.kind = JsonKind::Number, .number = value, .offset = wordStart()});
  }
  bool open(JsonKind kind) {
    if (levels_.size() == kMostJsonDepth) {
      error_ = Error{ErrorKind::InvalidInput,
                     {"json-too-deep", {{"most", Amount{static_cast<double>(kMostJsonDepth), "1", 0}}}},
                     placeOfOffset(document_, read_ - 1)};
      return false;
    }
    std::string token;
    if (!levels_.empty()) {
      const JsonValue& parent = levels_.back().value;
      token = "/" + (parent.kind == JsonKind::Object ? escapedToken(parent.keys.back())
                                                     : std::to_string(parent.items.size()));
    }
    levels_.push_back({{.kind = kind, .offset = read_ - 1}, {}, std::move(token)});
    return true;
  }
  bool close() {
    JsonValue value = std::move(levels_.back().value);
    levels_.pop_back();
    return add(std::move(value));
  }
  bool add(JsonValue value) {
    (levels_.empty() ? document_.root : levels_.back().value.items.emplace_back()) = std::move(value);
    return true;
  }
  /// The opening quote of the string whose closing quote was just read.
  [[nodiscard]] std::size_t stringStart() const {
    const std::string& text = document_.text;
    std::size_t quote = read_ - 1;
    while (true) {
      quote = text.rfind('"', quote - 1);
      std::size_t backslashes = 0;
      while (backslashes < quote && text[quote - 1 - backslashes] == '\\') ++backslashes;
      if (backslashes % 2 == 0) return quote;
    }
  }
  /// The first byte of the number or literal just read, one more byte at most having been read behind it.
  [[nodiscard]] std::size_t wordStart() const {
    const auto in_word = [this](std::size_t at) {
      const char byte = document_.text[at];
      return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') || byte == 'E' || byte == '.' ||
             byte == '-' || byte == '+';
    };
    std::size_t end = read_;
    if (end > 0 && !in_word(end - 1)) --end;
    while (end > 0 && in_word(end - 1)) --end;
    return end;
  }

  JsonDocument& document_;
  const std::size_t& read_;
  std::vector<Level> levels_;
  std::optional<Error> error_;
};

std::string_view nameOf(JsonKind kind) {
  switch (kind) {
    case JsonKind::Null:
      return "null";
    case JsonKind::Boolean:
      return "true or false";
    case JsonKind::Number:
      return "a number";
    case JsonKind::String:
      return "a string";
    case JsonKind::Array:
      return "an array";
    case JsonKind::Object:
      return "an object";
  }
  return "";
}

}  // namespace

Place JsonDocument::place(std::string_view pointer) const {
  const JsonValue* value = &root;
  std::string_view rest = pointer;
  while (rest.starts_with('/')) {
    rest.remove_prefix(1);
    const std::string_view token = rest.substr(0, rest.find('/'));
    rest.remove_prefix(token.size());
    if (value->kind == JsonKind::Object) {
      const auto key = std::ranges::find_if(
          value->keys, [token](const std::string& name) { return escapedToken(name) == token; });
      if (key == value->keys.end()) break;
      value = &value->items[static_cast<std::size_t>(key - value->keys.begin())];
    } else if (value->kind == JsonKind::Array) {
      std::size_t index = value->items.size();
      std::from_chars(token.data(), token.data() + token.size(), index);
      if (index >= value->items.size()) break;
      value = &value->items[index];
    } else {
      break;
    }
  }
  Place place = placeOfOffset(*this, value->offset);
  place.pointer = pointer;
  return place;
}

Place JsonNode::place() const {
  Place place = placeOfOffset(*document_, value_->offset);
  place.pointer = pointer_;
  return place;
}

std::unexpected<Error> JsonNode::error(std::string code,
                                       std::vector<std::pair<std::string, MessageValue>> values,
                                       ErrorKind kind) const {
  return fail(kind, std::move(code), std::move(values), place());
}

std::unexpected<Error> JsonNode::wrongKind(std::string_view expected) const {
  return error("json-wrong-kind",
               {{"found", std::string(nameOf(value_->kind))}, {"expected", std::string(expected)}});
}

JsonNode JsonNode::child(std::string_view token, const JsonValue& value) const {
  JsonNode node = *this;
  node.value_ = &value;
  node.pointer_ += '/';
  node.pointer_ += token;
  return node;
}

Expected<void> JsonNode::expectObject(std::span<const std::string_view> known) const {
  if (value_->kind != JsonKind::Object) return wrongKind(nameOf(JsonKind::Object));
  for (std::size_t index = 0; index < value_->keys.size(); ++index) {
    const std::string& key = value_->keys[index];
    if (std::ranges::find(known, key) != known.end()) continue;
    std::string names;
    for (const std::string_view name : known) names += (names.empty() ? "" : ", ") + std::string(name);
    return child(escapedToken(key), value_->items[index])
        .error("json-unknown-key", {{"key", excerpt(key)}, {"known", names}});
  }
  return {};
}

std::optional<JsonNode> JsonNode::find(std::string_view key) const {
  const auto found = std::ranges::find(value_->keys, key);
  if (found == value_->keys.end()) return std::nullopt;
  return child(escapedToken(key), value_->items[static_cast<std::size_t>(found - value_->keys.begin())]);
}

Expected<JsonNode> JsonNode::at(std::string_view key) const {
  if (const std::optional<JsonNode> found = find(key)) return *found;
  return error("json-missing-key", {{"key", std::string(key)}});
}

Expected<std::vector<JsonNode>> JsonNode::elements() const {
  if (value_->kind != JsonKind::Array) return wrongKind(nameOf(JsonKind::Array));
  std::vector<JsonNode> nodes;
  for (std::size_t index = 0; index < value_->items.size(); ++index) {
    nodes.push_back(child(std::to_string(index), value_->items[index]));
  }
  return nodes;
}

Expected<std::vector<std::pair<std::string, JsonNode>>> JsonNode::members() const {
  if (value_->kind != JsonKind::Object) return wrongKind(nameOf(JsonKind::Object));
  std::vector<std::pair<std::string, JsonNode>> members;
  for (std::size_t index = 0; index < value_->items.size(); ++index) {
    const std::string& key = value_->keys[index];
    members.emplace_back(key, child(escapedToken(key), value_->items[index]));
  }
  return members;
}

Expected<std::string> JsonNode::string() const {
  if (value_->kind != JsonKind::String) return wrongKind(nameOf(JsonKind::String));
  return value_->text;
}

Expected<double> JsonNode::number() const {
  if (value_->kind != JsonKind::Number) return wrongKind(nameOf(JsonKind::Number));
  return value_->number;
}

Expected<std::string> JsonNode::name() const {
  Expected<std::string> text = string();
  if (text && text->empty()) return error("text-empty");
  return text;
}

Expected<JsonDocument> readJson(std::string text, std::string file) {
  JsonDocument document{.file = std::move(file), .text = std::move(text), .root = {}};
  const std::size_t bad = firstBadUtf8(document.text);
  if (bad != std::string::npos) {
    return fail(ErrorKind::InvalidInput, "not-utf8", {}, placeOfOffset(document, bad));
  }
  // The library takes a zero byte for the end of the text.
  const std::size_t zero = document.text.find('\0');
  if (zero != std::string::npos) {
    return fail(ErrorKind::InvalidInput, "json-syntax", {{"detail", "a zero byte"}},
                placeOfOffset(document, zero));
  }
  std::size_t read = 0;
  TreeBuilder builder(document, read);
  const char* const begin = document.text.data();
  const bool whole = nlohmann::json::sax_parse(
      TrackingIterator{begin, &read}, TrackingIterator{begin + document.text.size(), &read}, &builder);
  if (std::optional<Error> error = builder.takeError()) return std::unexpected(*std::move(error));
  if (!whole) return fail(ErrorKind::InvalidInput, "json-syntax", {{"detail", ""}}, {.file = document.file});
  return document;
}

}  // namespace hingepin
