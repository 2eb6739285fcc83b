// SPDX-License-Identifier: Apache-2.0
#include "engine/session/profile.h"

#include <algorithm>
#include <initializer_list>
#include <optional>
#include <utility>

#include "engine/base/json_walk.h"
#include "engine/base/text.h"
#include "engine/records/canonical_json.h"
#include "engine/units/ucum.h"

namespace hingepin::session {
namespace {

class ProfileReader : public JsonWalk {
 public:
  ProfileReader(const JsonDocument& document, const Edge& edge)
      : document_(document), edge_(edge), root_(document) {}

  UnitProfile unit();
  AttachmentProfile attachment();
  YardProfile yard();

 private:
  void format(std::string_view expected) {
    const std::string text = needed(root_, "format");
    if (error() || text == expected) return;
    keep(root_.find("format")->error("format-unsupported",
                                     {{"text", excerpt(text)}, {"expected", std::string(expected)}}));
  }
  std::string needed(const JsonNode& parent, std::string_view key) {
    return required(parent, key, [this](const JsonNode& node) { return taken(node.name()); });
  }
  /// A quantity as it stands there. Errors: those of readAnyQuantity.
  std::string quantity(const JsonNode& node, std::optional<Dimension> dimension = std::nullopt) {
    std::string text = taken(node.string());
    if (error()) return text;
    std::optional<Error> wrong;
    if (dimension) {
      if (const Expected<double> read = readSi(text, *dimension); !read) wrong = read.error();
    } else if (const Expected<ReadQuantity> read = readAnyQuantity(text); !read) {
      wrong = read.error();
    }
    if (wrong) {
      wrong->place = node.place();
      keep(*std::move(wrong));
    }
    return text;
  }
  Entries entries() {
    Entries read;
    const std::optional<JsonNode> node = root_.find("entries");
    if (!node) return read;
    if (node->value().kind != JsonKind::Object) {
      keep(node->wrongKind("an object").error());
      return read;
    }
    for (const std::string& id : node->value().keys) read[id] = quantity(*node->find(id));
    return read;
  }
  /// The block as it is in a job, canonical. @param check what reads it there
  std::string block(std::string_view key, const auto& check, std::string& id) {
    const Expected<JsonNode> node = root_.at(key);
    if (!node) {
      keep(node.error());
      return "";
    }
    if (const Expected<void> checked = check(document_, *node); !checked) keep(checked.error());
    if (error()) return "";
    id = needed(*node, "id");
    return taken(records::canonicalJson(node->value()));
  }
  Shown shown(const JsonNode& node);
  proof::Terms terms() {
    const std::optional<JsonNode> node = root_.find("proof");
    if (!node || error()) return {};
    return taken(edge_.read_terms(*node));
  }
  void addEntriesOfBlock(Entries& entries) const;

  const JsonDocument& document_;
  const Edge& edge_;
  JsonNode root_;
};

Shown ProfileReader::shown(const JsonNode& node) {
  object(node, {"quantity", "unit", "step"});
  if (error()) return {};
  Shown read{.quantity = needed(node, "quantity"), .unit = needed(node, "unit")};
  if (error()) return read;
  const auto dimensions = procedures::dimensionsOf(read.quantity);
  if (dimensions.empty()) {
    keep(node.find("quantity")->error("quantity-unknown", {{"quantity", excerpt(read.quantity)}}).error());
    return read;
  }
  // "1 kg" is read for its unit.
  const std::string one = "1 " + read.unit;
  const Expected<ReadQuantity> unit = readAnyQuantity(one);
  const bool fits = unit && std::ranges::find(dimensions, unit->unit.dimension) != dimensions.end();
  if (!fits) {
    Error error = unit ? readSi(one, dimensions.front()).error() : unit.error();
    error.place = node.find("unit")->place();
    keep(std::move(error));
    return read;
  }
  if (const std::optional<JsonNode> step = node.find("step"))
    read.step = quantity(*step, unit->unit.dimension);
  return read;
}

/// What the block says already need not be said again as an entry.
void ProfileReader::addEntriesOfBlock(Entries& entries) const {
  if (error()) return;
  const JsonNode block = *root_.find("unit");
  entries.emplace("rated-payload", block.find("rated_payload")->value().text);
  const std::optional<JsonNode> window = block.find("weigh_window");
  if (!window) return;
  entries.emplace("window-low", window->value().items.front().text);
  entries.emplace("window-high", window->value().items.back().text);
}

UnitProfile ProfileReader::unit() {
  object(root_, {"format", "unit", "gravity", "site", "monitor", "teaching", "entries", "recheck_after",
                 "recheck_after_use", "proof", "practice"});
  UnitProfile profile;
  if (error()) return profile;
  format("hingepin-unit/1");
  profile.block = block("unit", edge_.check_unit, profile.id);
  for (const char* key : {"gravity", "site"}) {
    if (const std::optional<JsonNode> node = root_.find(key)) {
      profile.place += ",\"" + std::string(key) + "\":" + taken(records::canonicalJson(node->value()));
    }
  }
  if (const std::optional<JsonNode> monitor = root_.find("monitor")) {
    for (const JsonNode& each : taken(monitor->elements())) profile.monitor.push_back(shown(each));
  }
  if (const std::optional<JsonNode> teaching = root_.find("teaching")) {
    for (const JsonNode& each : taken(teaching->elements())) profile.teaching.push_back(taken(each.name()));
  }
  profile.entries = entries();
  addEntriesOfBlock(profile.entries);
  if (const std::optional<JsonNode> after = root_.find("recheck_after")) {
    profile.recheck_after = quantity(*after, Dimension::Time);
  }
  if (const std::optional<JsonNode> after = root_.find("recheck_after_use")) {
    profile.recheck_after_use = quantity(*after, Dimension::Time);
  }
  profile.terms = terms();
  profile.practice = flag(root_, "practice");
  return profile;
}

AttachmentProfile ProfileReader::attachment() {
  object(root_, {"format", "attachment", "entries"});
  AttachmentProfile profile;
  if (error()) return profile;
  format("hingepin-attachment/1");
  profile.block = block("attachment", edge_.check_attachment, profile.id);
  profile.entries = entries();
  return profile;
}

YardProfile ProfileReader::yard() {
  object(root_, {"format", "proof"});
  if (error()) return {};
  format("hingepin-yard/1");
  return {terms()};
}

}  // namespace

Expected<UnitProfile> readUnitProfile(std::string text, const std::string& file, const Edge& edge) {
  const Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(document.error());
  ProfileReader reader(*document, edge);
  UnitProfile profile = reader.unit();
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return profile;
}

Expected<AttachmentProfile> readAttachmentProfile(std::string text, const std::string& file,
                                                  const Edge& edge) {
  const Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(document.error());
  ProfileReader reader(*document, edge);
  AttachmentProfile profile = reader.attachment();
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return profile;
}

Expected<YardProfile> readYardProfile(std::string text, const std::string& file, const Edge& edge) {
  const Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(document.error());
  ProfileReader reader(*document, edge);
  YardProfile profile = reader.yard();
  if (std::optional<Error> error = reader.error()) return std::unexpected(*std::move(error));
  return profile;
}

bool hasLinkage(const UnitProfile& unit) {
  const Expected<JsonDocument> block = readJson(unit.block, "unit");
  return block && std::ranges::find(block->root.keys, "linkage") != block->root.keys.end();
}

Expected<std::string> withYard(const std::string& unit, const std::string& yard) {
  if (yard.empty()) return unit;
  Expected<JsonDocument> own = readJson(unit, "unit");
  if (!own) return std::unexpected(std::move(own.error()));
  const Expected<JsonDocument> common = readJson(yard, "yard");
  if (!common) return std::unexpected(common.error());
  const auto placeOf = [](const JsonValue& object, std::string_view key) {
    return static_cast<std::size_t>(std::ranges::find(object.keys, key) - object.keys.begin());
  };
  const std::size_t said = placeOf(common->root, "proof");
  if (own->root.kind != JsonKind::Object || said == common->root.keys.size()) return unit;
  const std::size_t place = placeOf(own->root, "proof");
  if (place == own->root.keys.size()) {
    own->root.keys.emplace_back("proof");
    own->root.items.push_back({.kind = JsonKind::Object});
  }
  JsonValue& terms = own->root.items[place];
  const JsonValue& standing_in = common->root.items[said];
  bool changed = false;
  for (std::size_t index = 0; index < standing_in.keys.size(); ++index) {
    if (placeOf(terms, standing_in.keys[index]) < terms.keys.size()) continue;
    terms.keys.push_back(standing_in.keys[index]);
    terms.items.push_back(standing_in.items[index]);
    changed = true;
  }
  return changed ? records::canonicalJson(own->root) : Expected<std::string>(unit);
}

Entries entriesFor(const procedures::Procedure& procedure, const UnitProfile& unit,
                   const AttachmentProfile* attachment, const Entries& given) {
  Entries entries = given;
  const auto add = [&](const Entries& more) {
    for (const auto& [id, text] : more) {
      if (std::ranges::find(procedure.entries, id, &procedures::Entry::id) != procedure.entries.end()) {
        entries.emplace(id, text);  // what is there already comes first
      }
    }
  };
  if (attachment != nullptr) add(attachment->entries);
  add(unit.entries);
  return entries;
}

}  // namespace hingepin::session
