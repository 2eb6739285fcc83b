// SPDX-License-Identifier: Apache-2.0
#include "engine/sync/intake.h"

#include <algorithm>
#include <utility>

#include "engine/base/strict_json.h"
#include "engine/records/canonical_json.h"
#include "engine/records/encoding.h"

namespace hingepin::sync {
namespace {

using store::WaitingKind;

// A name without a record that names it is taken from the yard's own devices only, and short.
constexpr std::int64_t kMostUnnamedBytes = 64 << 10;

Message because(const char* code, const std::string& name, std::string key, std::string role) {
  return {code, {{"record", name}, {"key", std::move(key)}, {"role", std::move(role)}}};
}

/// The id of the machine that a record is about; "" for none.
std::string unitOf(const JsonValue& content) {
  const auto member = [](const JsonValue& object, std::string_view key) -> const JsonValue* {
    for (std::size_t index = 0; index < object.keys.size(); ++index) {
      if (object.keys[index] == key) return &object.items[index];
    }
    return nullptr;
  };
  const JsonValue* const unit = member(content, "unit");
  const JsonValue* const id = unit != nullptr ? member(*unit, "id") : nullptr;
  return id != nullptr && id->kind == JsonKind::String ? id->text : "";
}

void collectHashNames(const JsonValue& value, std::set<std::string>& names) {
  if (value.kind == JsonKind::String && records::isHashName(value.text)) names.insert(value.text);
  for (const JsonValue& item : value.items) collectHashNames(item, names);
}

}  // namespace

std::string textOf(const Message& message) {
  std::vector<std::pair<std::string, JsonValue>> values;
  for (const auto& [name, value] : message.values) {
    const auto* text = std::get_if<std::string>(&value);
    const auto* amount = std::get_if<Amount>(&value);
    values.emplace_back(
        name, records::jsonString(
                  text != nullptr ? *text : std::to_string(static_cast<std::int64_t>(amount->value))));
  }
  return records::canonicalJson(records::jsonObject({{"code", records::jsonString(message.code)},
                                                     {"values", records::jsonObject(std::move(values))}}))
      .value_or("");
}

Message messageOf(const std::string& text) {
  const auto document = readJson(text, "");
  if (!document || document->root.kind != JsonKind::Object) return {text, {}};
  const JsonNode root(*document);
  const auto code = root.at("code");
  const auto values = root.at("values");
  Message message{code ? code->string().value_or("") : "", {}};
  if (!values) return message;
  const auto members = values->members();
  if (!members) return message;
  for (const auto& [name, node] : *members) message.values.emplace_back(name, node.string().value_or(""));
  return message;
}

Expected<Intake> Intake::over(store::Store& store, std::int64_t now_utc_ms) {
  Intake intake(store, now_utc_ms);
  if (auto read = intake.readSignersLists(); !read) return std::unexpected(read.error());
  return intake;
}

Expected<void> Intake::readSignersLists() {
  const auto lists = store_->signersLists();
  if (!lists) return std::unexpected(lists.error());
  const auto roots = store_->acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  std::vector<records::StoredText> texts;
  for (const records::SealedSigners& each : *lists) texts.push_back({each.text, each.name});
  list_ = records::newestSigners(texts, *roots).list;
  keys_ = records::ListedKeys(list_);
  return {};
}

Expected<const char*> Intake::faultByRevocation(const std::string& name,
                                                const records::ChainPlace& place) const {
  const auto revoked = std::ranges::find(list_->revocations, place.key, &records::Revocation::key);
  if (revoked == list_->revocations.end()) return nullptr;
  for (const records::TrustedUntil& until : revoked->trusted) {
    if (until.epoch != place.epoch || until.sequence < place.sequence) continue;
    // Trust runs backwards from the last trusted link, over those that are here.
    std::optional<std::string> link = until.name;
    for (std::int64_t sequence = until.sequence; link && sequence > place.sequence; --sequence) {
      const auto stored = store_->statement(*link);
      if (!stored) return std::unexpected(stored.error());
      if (!*stored) return "record-revocation-unproved";
      const records::Judgement judged = records::judge((*stored)->text, keys_);
      if (!judged.statement) return "record-revocation-unproved";
      link = records::envelopeOf(*judged.statement).place.previous;
    }
    return link == name ? nullptr : "record-after-revocation";
  }
  return "record-after-revocation";
}

Expected<void> Intake::awaitEvidence(const records::Record& record) {
  std::set<std::string> names;
  collectHashNames(record.content, names);
  for (const std::string& name : names) {
    const auto here = store_->hasBlob(name);
    if (!here) return std::unexpected(here.error());
    if (*here) continue;
    if (auto put = store_->putAwaited({.kind = WaitingKind::Blob, .name = name, .named = true}); !put)
      return put;
  }
  for (const auto& [label, name] : record.personal) {
    named_.insert(name);
    const auto here = store_->personal(name);
    if (!here) return std::unexpected(here.error());
    if (*here) continue;
    if (auto put = store_->putAwaited({.kind = WaitingKind::Personal, .name = name, .named = true}); !put)
      return put;
  }
  return {};
}

Expected<Intake::Fate> Intake::takeStatement(const std::string& line) {
  records::Judgement judged = records::judge(line, keys_);
  Fate fate;
  const auto refuse = [&](const char* code) {
    fate.why = because(code, judged.name, judged.key,
                       judged.statement ? records::envelopeOf(*judged.statement).role : "");
    return fate;
  };
  if (judged.fault != nullptr) {
    return refuse(list_ ? judged.fault : "signers-none");
  }
  const records::Envelope& envelope = records::envelopeOf(*judged.statement);
  const auto revoked = faultByRevocation(judged.name, envelope.place);
  if (!revoked) return std::unexpected(revoked.error());
  if (*revoked != nullptr) return refuse(*revoked);
  const auto here = store_->statement(judged.name);
  if (!here) return std::unexpected(here.error());
  if (*here) {
    fate.item = (*here)->text == line ? "statement " + judged.name : line;
    return fate;
  }
  std::string unit;
  if (const auto* record = std::get_if<records::Record>(&*judged.statement)) {
    unit = unitOf(record->content);
    if (auto awaits = awaitEvidence(*record); !awaits) return std::unexpected(awaits.error());
  } else {
    const auto signed_here = store_->statement(std::get<records::Signature>(*judged.statement).record);
    if (!signed_here) return std::unexpected(signed_here.error());
    if (*signed_here) unit = (*signed_here)->unit;
  }
  if (auto put = store_->putVerified({.name = judged.name, .text = line, .unit = unit}, *judged.statement);
      !put) {
    return std::unexpected(put.error());
  }
  fate.item = "statement " + judged.name;
  fate.is_new = true;
  return fate;
}

Expected<Intake::Fate> Intake::takeSealed(const std::string& line) {
  const auto list = records::readSigners(line);
  const bool other_type = !list && list.error().message.code == "seal-header-unexpected";
  if (other_type) return takeStatement(line);
  Fate fate;
  if (!list) {
    const bool altered = list.error().message.code == "signers-altered";
    fate.why = Message{altered ? "signers-altered" : "record-malformed",
                       {{"list", records::hashName(line)}, {"record", records::hashName(line)}}};
    return fate;
  }
  if (auto put = store_->putSigners({list->name, line}, now_utc_ms_, false); !put)
    return std::unexpected(put.error());
  new_signers_ = true;
  if (auto read = readSignersLists(); !read) return std::unexpected(read.error());
  fate.item = "signers " + list->name;
  return fate;
}

Expected<void> Intake::quarantine(const std::string& line, const std::string& source, Message why) {
  return store_->putQuarantined({.name = records::hashName(line),
                                 .source = source,
                                 .reason = textOf(why),
                                 .since_utc_ms = now_utc_ms_,
                                 .bytes = line});
}

Expected<void> Intake::expectBlob(const Item& item, const std::string& line) {
  const auto here = store_->hasBlob(item.name);
  if (!here) return std::unexpected(here.error());
  if (*here) return {};
  return store_->putAwaited({.kind = WaitingKind::Blob, .name = item.name, .offer = line});
}

Expected<void> Intake::expectPersonal(const Item& item, const std::string& line, bool trusted) {
  const auto here = store_->personal(item.name);
  if (!here) return std::unexpected(here.error());
  if (*here) return {};
  return store_->putAwaited({.kind = WaitingKind::Personal,
                             .name = item.name,
                             .named = trusted && item.size <= kMostUnnamedBytes,
                             .offer = line});
}

Expected<Intake::Taken> Intake::take(const OpenedParcel& parcel) {
  const ParcelPlace& place = parcel.manifest.place;
  // Erasing empties the store's log, which can't be done within a commit; done before it, nothing is lost.
  std::vector<std::optional<Item>> items;
  for (const std::string& line : parcel.lines) items.push_back(readItem(line));
  const bool trusted = isVouchedFor(parcel.manifest, keys_, list_);
  for (const auto& item : items) {
    if (!trusted || !item || item->kind != Item::Kind::Erased) continue;
    if (auto erased = store_->erasePersonal(item->name, now_utc_ms_, false); !erased)
      return std::unexpected(erased.error());
    if (auto gone = store_->arrived(WaitingKind::Personal, item->name); !gone)
      return std::unexpected(gone.error());
  }

  auto batch = store_->beginBatch();
  if (!batch) return std::unexpected(batch.error());
  Taken taken;
  store::Parcel row{.place = place, .manifest = parcel.sealed, .items = parcel.lines};
  const auto hold = [&](const std::string& line, Message why) {
    ++taken.quarantined;
    return quarantine(line, place.source, std::move(why));
  };
  named_.clear();
  for (std::size_t index = 0; index < items.size(); ++index) {
    if (!items[index] || items[index]->kind != Item::Kind::Sealed) continue;
    Expected<Fate> fate = takeSealed(parcel.lines[index]);
    if (!fate) return std::unexpected(fate.error());
    if (!fate->item.empty()) row.items[index] = fate->item;
    taken.statements += fate->is_new ? 1 : 0;
    if (!fate->why) continue;
    if (auto held = hold(parcel.lines[index], *std::move(fate->why)); !held)
      return std::unexpected(held.error());
  }
  for (std::size_t index = 0; index < items.size(); ++index) {
    const std::string& line = parcel.lines[index];
    Expected<void> done;
    if (!items[index]) {
      done = hold(line, {"parcel-line-unknown", {{"source", shortName(place.source)}}});
    } else if (items[index]->kind == Item::Kind::Blob) {
      done = expectBlob(*items[index], line);
    } else if (items[index]->kind != Item::Kind::Sealed) {
      const bool stands = trusted || named_.contains(items[index]->name);
      if (items[index]->kind == Item::Kind::Personal) done = expectPersonal(*items[index], line, trusted);
      if (done && !stands)
        done = hold(line, {"parcel-not-vouched-for", {{"source", shortName(place.source)}}});
    }
    if (!done) return std::unexpected(done.error());
  }

  const auto around = store_->parcelsAfter(place.source, std::max<std::int64_t>(0, place.sequence - 2), 16);
  if (!around) return std::unexpected(around.error());
  bool before_is_here = false;
  bool before_is_named = false;
  bool forked = false;
  for (const ParcelPlace& other : *around) {
    if (other.sequence == place.sequence) forked |= other.name != place.name;
    if (other.sequence != place.sequence - 1) continue;
    before_is_here = true;
    before_is_named |= other.name == parcel.manifest.previous;
  }
  if (forked || (before_is_here && !before_is_named)) {
    taken.findings.push_back({"parcel-fork",
                              {{"source", shortName(place.source)},
                               {"sequence", Amount{static_cast<double>(place.sequence), "1", 0}}}});
  }
  if (trusted) {
    for (const ParcelPlace& head : parcel.manifest.seen) {
      if (auto seen = store_->putSeenParcel({head, place.source}); !seen)
        return std::unexpected(seen.error());
    }
  }
  if (auto put = store_->putParcel(row); !put) return std::unexpected(put.error());
  if (auto released = store_->releaseQuarantined(place.name); !released)
    return std::unexpected(released.error());
  if (auto committed = batch->commit(); !committed) return std::unexpected(committed.error());
  return taken;
}

Expected<bool> Intake::isTrusted(const std::string& source) const {
  const auto sources = store_->parcelSources();
  if (!sources) return std::unexpected(sources.error());
  for (const store::ParcelSource& each : *sources) {
    if (each.head.source != source) continue;
    const auto newest = store_->parcel(each.head);
    if (!newest) return std::unexpected(newest.error());
    const auto manifest = readManifest((*newest)->manifest);
    return manifest && isVouchedFor(*manifest, keys_, list_);
  }
  return false;
}

Expected<Intake::Fate> Intake::takeAgain(const store::Quarantined& object) {
  const auto item = readItem(object.bytes);
  if (item && item->kind == Item::Kind::Sealed) return takeSealed(object.bytes);
  Fate fate;
  fate.why = messageOf(object.reason);
  if (!item || item->kind == Item::Kind::Blob) return fate;
  const auto trusted = isTrusted(object.source);
  if (!trusted) return std::unexpected(trusted.error());
  if (!*trusted) return fate;
  if (item->kind == Item::Kind::Personal) {
    if (auto put = expectPersonal(*item, object.bytes, true); !put) return std::unexpected(put.error());
  } else {
    if (auto erased = store_->erasePersonal(item->name, now_utc_ms_, false); !erased)
      return std::unexpected(erased.error());
  }
  fate.why.reset();
  return fate;
}

Expected<Intake::Taken> Intake::lookAgain() {
  Taken taken;
  new_signers_ = false;
  if (!list_) return taken;
  // A link of a revoked key may let out the one before it, so until nothing more comes out.
  while (true) {
    const auto held = store_->quarantine();
    if (!held) return std::unexpected(held.error());
    bool let_out = false;
    for (auto object = held->rbegin(); object != held->rend(); ++object) {
      if (records::hashName(object->bytes) != object->name) continue;  // what lies altered on the far side
      const Expected<Fate> fate = takeAgain(*object);
      if (!fate) return std::unexpected(fate.error());
      Expected<void> done;
      if (!fate->why) {
        let_out = true;
        taken.statements += fate->is_new ? 1 : 0;
        done = store_->releaseQuarantined(object->name);
      } else if (textOf(*fate->why) != object->reason) {
        done = quarantine(object->bytes, object->source, *fate->why);
      }
      if (!done) return std::unexpected(done.error());
    }
    if (!let_out) return taken;
  }
}

}  // namespace hingepin::sync
