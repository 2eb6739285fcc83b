// SPDX-License-Identifier: Apache-2.0
#include "engine/survey/target.h"

#include "engine/linkage/numbers.h"

namespace hingepin::survey {
namespace {

std::array<Named<std::size_t>, linkage::kLinkageNumbers> numberNames() {
  std::array<Named<std::size_t>, linkage::kLinkageNumbers> names;
  for (std::size_t i = 0; i < names.size(); ++i) names[i] = {linkage::linkageNumbers()[i].name, i};
  return names;
}

}  // namespace

std::vector<std::string_view> keysOf(Kind kind) {
  if (takesTwoPins(kind)) return {"kind", "from", "to"};
  if (takesOnePin(kind)) return {"kind", "pin"};
  if (kind == Kind::DataSheet) return {"kind", "number"};
  return {"kind"};
}

std::vector<std::pair<std::string_view, std::string_view>> wordsOf(const Target& target) {
  std::vector<std::pair<std::string_view, std::string_view>> words;
  for (const std::string_view key : keysOf(target.kind)) {
    words.emplace_back(key, key == "kind"     ? nameIn(kKindNames, target.kind)
                            : key == "to"     ? nameIn(kPinNames, target.to)
                            : key == "number" ? linkage::linkageNumbers()[target.number].name
                                              : nameIn(kPinNames, target.from));
  }
  return words;
}

Target readTarget(JsonWalk& walk, const JsonNode& node) {
  Target target{.kind = walk.requiredNamed(node, "kind", kKindNames)};
  if (walk.isRefused()) return target;
  if (takesTwoPins(target.kind)) {
    target.from = walk.requiredNamed(node, "from", kPinNames);
    target.to = walk.requiredNamed(node, "to", kPinNames);
    if (target.from == target.to) walk.keep(node.error("survey-same-pin"));
  }
  if (takesOnePin(target.kind)) target.from = walk.requiredNamed(node, "pin", kPinNames);
  if (target.kind == Kind::BoomPlateOffset && !isOnBoom(target.from))
    walk.keep(node.error("survey-pin-off-boom"));
  if (target.kind == Kind::DataSheet) target.number = walk.requiredNamed(node, "number", numberNames());
  return target;
}

}  // namespace hingepin::survey
