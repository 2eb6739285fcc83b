// SPDX-License-Identifier: Apache-2.0
// What sync keeps here: parcels, what others told of them, what was not taken, and what has not come yet.
#include <utility>

#include "engine/store/database.h"
#include "engine/store/rows.h"
#include "engine/store/store.h"

namespace hingepin::store {
namespace {

ParcelPlace placeOf(const Query& row) { return {row.text(0), row.integer(1), row.text(2)}; }

std::vector<std::string> linesOf(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end + 1);
  }
  return lines;
}

}  // namespace

Expected<void> Store::putParcel(const Parcel& parcel, WaitingRange holds) {
  auto transaction = Transaction::beginWriting(*database_);
  if (!transaction) return std::unexpected(transaction.error());
  std::string items;
  for (const std::string& item : parcel.items) items += item + '\n';
  const ParcelPlace& place = parcel.place;
  const auto written =
      run(*database_,
          "INSERT INTO parcel (source, sequence, name, manifest, items) VALUES (?, ?, ?, ?, ?) "
          "ON CONFLICT DO NOTHING",
          place.source, place.sequence, place.name, parcel.manifest, items);
  if (!written) return std::unexpected(written.error());
  const auto number = firstRow(
      *database_, [](const Query& row) { return row.integer(0); },
      "SELECT number FROM parcel WHERE source = ? AND sequence = ? AND name = ?", place.source,
      place.sequence, place.name);
  if (!number) return std::unexpected(number.error());
  const auto packed =
      run(*database_, "UPDATE waiting SET parcel = ? WHERE parcel IS NULL AND number BETWEEN ? AND ?",
          *number, holds.first, holds.last);
  if (!packed) return std::unexpected(packed.error());
  const auto known =
      run(*database_, "INSERT INTO parcel_source (source, whole) VALUES (?, 0) ON CONFLICT DO NOTHING",
          place.source);
  if (!known) return std::unexpected(known.error());
  // Mostly one step; after a gap was filled, as many as were waiting behind it.
  while (true) {
    const auto grown =
        run(*database_,
            "UPDATE parcel_source SET whole = whole + 1 WHERE source = ?1 AND EXISTS (SELECT 1 FROM "
            "parcel WHERE source = ?1 AND sequence = parcel_source.whole + 1)",
            place.source);
    if (!grown) return std::unexpected(grown.error());
    if (*grown == 0) break;
  }
  return transaction->commit();
}

Expected<std::optional<Parcel>> Store::parcel(const ParcelPlace& place) const {
  return firstRow(
      *database_,
      [&](const Query& row) {
        return Parcel{.place = place, .manifest = row.text(0), .items = linesOf(row.text(1))};
      },
      "SELECT manifest, items FROM parcel WHERE source = ? AND sequence = ? AND name = ?", place.source,
      place.sequence, place.name);
}

Expected<bool> Store::hasParcel(const ParcelPlace& place) const {
  const auto found = firstRow(
      *database_, [](const Query&) { return true; },
      "SELECT 1 FROM parcel WHERE source = ? AND sequence = ? AND name = ?", place.source, place.sequence,
      place.name);
  if (!found) return std::unexpected(found.error());
  return found->has_value();
}

Expected<std::vector<ParcelPlace>> Store::parcelsAfter(std::string_view source, std::int64_t sequence,
                                                       std::int64_t most) const {
  return allRows(*database_, placeOf,
                 "SELECT source, sequence, name FROM parcel WHERE source = ? AND sequence > ? "
                 "ORDER BY sequence, name LIMIT ?",
                 source, sequence, most);
}

Expected<std::vector<ParcelSource>> Store::parcelSources() const {
  return allRows(
      *database_,
      [](const Query& row) { return ParcelSource{.head = placeOf(row), .whole = row.integer(3)}; },
      "SELECT s.source, p.sequence, p.name, s.whole FROM parcel_source AS s JOIN parcel AS p ON p.number = "
      "(SELECT number FROM parcel WHERE source = s.source ORDER BY sequence DESC, name LIMIT 1) "
      "ORDER BY s.source");
}

Expected<std::int64_t> Store::parcelsSent(std::string_view source, std::int64_t sequence) {
  return run(*database_,
             "DELETE FROM waiting WHERE parcel IN (SELECT number FROM parcel WHERE source = ? AND "
             "sequence <= ? AND number IN (SELECT parcel FROM waiting WHERE parcel IS NOT NULL))",
             source, sequence);
}

Expected<void> Store::putSeenParcel(const SeenParcel& seen) {
  return done(run(*database_,
                  "INSERT INTO seen_parcel (source, witness, sequence, name) VALUES (?, ?, ?, ?) ON CONFLICT "
                  "DO UPDATE SET sequence = excluded.sequence, name = excluded.name "
                  "WHERE excluded.sequence > sequence",
                  seen.place.source, seen.witness, seen.place.sequence, seen.place.name));
}

Expected<std::vector<SeenParcel>> Store::seenParcels() const {
  return allRows(
      *database_, [](const Query& row) { return SeenParcel{placeOf(row), row.text(3)}; },
      "SELECT source, sequence, name, witness FROM seen_parcel");
}

Expected<void> Store::putQuarantined(const Quarantined& object) {
  return done(run(*database_,
                  "INSERT INTO quarantine (name, source, reason, since_utc_ms, bytes) VALUES (?, ?, ?, ?, ?) "
                  "ON CONFLICT DO UPDATE SET reason = excluded.reason, bytes = excluded.bytes",
                  object.name, object.source, object.reason, object.since_utc_ms, Blob{object.bytes}));
}

Expected<std::vector<Quarantined>> Store::quarantine() const {
  return allRows(
      *database_,
      [](const Query& row) {
        return Quarantined{row.text(0), row.text(1), row.text(2), row.integer(3), row.text(4)};
      },
      "SELECT name, source, reason, since_utc_ms, bytes FROM quarantine ORDER BY number");
}

Expected<void> Store::releaseQuarantined(std::string_view name) {
  return done(run(*database_, "DELETE FROM quarantine WHERE name = ?", name));
}

Expected<void> Store::putAwaited(const Awaited& awaited) {
  return done(run(*database_,
                  "INSERT INTO awaited (kind, name, named, offer) VALUES (?, ?, ?, ?) ON CONFLICT DO UPDATE "
                  "SET named = max(named, excluded.named), offer = coalesce(offer, excluded.offer)",
                  textOf(awaited.kind), awaited.name, std::int64_t{awaited.named},
                  TextOrNull{awaited.offer}));
}

Expected<std::vector<Awaited>> Store::awaitedOnOffer() const {
  return allRows(
      *database_,
      [](const Query& row) {
        return Awaited{.kind = waitingKindOf(row.text(0)).value_or(WaitingKind::Blob),
                       .name = row.text(1),
                       .named = row.integer(2) == 1,
                       .offer = row.text(3)};
      },
      "SELECT kind, name, named, offer FROM awaited WHERE named = 1 AND offer IS NOT NULL ORDER BY kind, "
      "name");
}

Expected<void> Store::arrived(WaitingKind kind, std::string_view name) {
  return done(run(*database_, "DELETE FROM awaited WHERE kind = ? AND name = ?", textOf(kind), name));
}

Expected<void> Store::putPiece(std::string_view name, std::string_view bytes) {
  return done(run(*database_, "INSERT INTO piece (name, bytes) VALUES (?, ?) ON CONFLICT DO NOTHING", name,
                  Blob{bytes}));
}

Expected<std::optional<std::string>> Store::piece(std::string_view name) const {
  return firstRow(
      *database_, [](const Query& row) { return row.text(0); }, "SELECT bytes FROM piece WHERE name = ?",
      name);
}

Expected<void> Store::dropPiece(std::string_view name) {
  return done(run(*database_, "DELETE FROM piece WHERE name = ?", name));
}

}  // namespace hingepin::store
