// SPDX-License-Identifier: Apache-2.0
#include "engine/sync/exchange.h"

#include <algorithm>
#include <array>
#include <functional>
#include <future>
#include <map>
#include <set>
#include <utility>

#include "engine/records/encoding.h"
#include "engine/records/personal.h"
#include "engine/sync/intake.h"

namespace hingepin::sync {
namespace {

using store::WaitingKind;

constexpr std::size_t kAtOnce = 16;                         // objects in one go
constexpr std::size_t kBytesAtOnce = 4U << 20U;             // of uploads in one go, above one object
constexpr std::size_t kMostItems = 1000;                    // of a parcel
constexpr std::size_t kRoom = kParcelBytes + (64U << 10U);  // that a parcel takes, mostly
constexpr std::int64_t kFew = 4;                            // parcels, for which no folder is listed
constexpr int kMostProofs = 3;                              // of what was put, until it is given up
constexpr std::size_t kMostAsideBytes = 64U << 10U;  // kept of an object that is not sound, to be looked at
constexpr std::size_t kMostWanted = 64;              // that one exchange provides or asks for

Message aboutPlace(const char* code, const ParcelPlace& place) {
  return {code,
          {{"source", shortName(place.source)},
           {"sequence", Amount{static_cast<double>(place.sequence), "1", 0}}}};
}

template <class T>
std::vector<std::span<const T>> chunks(const std::vector<T>& all, std::size_t most) {
  std::vector<std::span<const T>> parts;
  for (std::size_t at = 0; at < all.size(); at += most) {
    parts.push_back(std::span(all).subspan(at, std::min(most, all.size() - at)));
  }
  return parts;
}

/// Errors of the store end an exchange; those of the far side are kept, and what does not need it goes on.
class Exchange {
 public:
  Exchange(store::Store& store, const Remote& remote, const Device& device, const Options& options,
           Intake intake)
      : store_(store),
        remote_(remote),
        device_(device),
        options_(options),
        intake_(std::move(intake)),
        own_(sourceOf(device.key.publicKey(), device.epoch)),
        witness_("far-side:" + options.far_side) {}

  Expected<Outcome> run() {
    if (auto done = lookAgain(); !done) return std::unexpected(done.error());
    if (!readHeads()) return std::move(outcome_);
    if (auto sources = readSources(); !sources) return std::unexpected(sources.error());
    const auto doubled = isDoubled();
    if (!doubled) return std::unexpected(doubled.error());
    if (*doubled) {
      outcome_.is_doubled = true;
      may_send_ = false;
      stop(fail(ErrorKind::InvalidInput, "device-doubled").error());
    }
    for (const auto step : {&Exchange::pull, &Exchange::compare, &Exchange::push, &Exchange::provide,
                            &Exchange::fetchEvidence, &Exchange::askFor}) {
      if (step == &Exchange::push && !may_send_) continue;
      if (!goesOn()) break;
      if (auto done = (this->*step)(); !done) return std::unexpected(done.error());
    }
    return std::move(outcome_);
  }

 private:
  void stop(Error error) {
    if (!outcome_.stopped) outcome_.stopped = std::move(error);
  }
  void find(Message message) { outcome_.findings.push_back(std::move(message)); }
  bool goesOn() {
    if (options_.progress) options_.progress(outcome_.progress);
    if (!options_.goes_on || options_.goes_on()) return true;
    stop(fail(ErrorKind::Insufficient, "exchange-interrupted").error());
    return false;
  }
  [[nodiscard]] bool remembers() const { return !options_.far_side.empty(); }
  void want(Wanted wanted) {
    if (asked_.size() < kMostWanted) asked_.push_back(std::move(wanted));
  }

  Expected<void> add(const Expected<Intake::Taken>& taken) {
    if (!taken) return std::unexpected(taken.error());
    outcome_.progress.statements_received += taken->statements;
    outcome_.progress.quarantined += taken->quarantined;
    for (const Message& finding : taken->findings) find(finding);
    return {};
  }

  Expected<void> lookAgain() { return add(intake_.lookAgain()); }

  /// One request tells what every device has there, and what somebody looks for.
  bool readHeads() {
    const auto listed = remote_.list(kHeadsFolder);
    if (!listed) {
      stop(listed.error());
      return false;
    }
    shown_.clear();
    wanted_.clear();
    for (const Listed& each : *listed) {
      if (auto head = headOfFile(each.name)) shown_[head->source].push_back(*std::move(head));
      if (auto wanted = wantedOfFile(each.name)) wanted_.push_back(*std::move(wanted));
    }
    for (auto& [source, heads] : shown_) {
      std::ranges::sort(heads, std::ranges::greater(), &ParcelPlace::sequence);
    }
    return true;
  }

  Expected<void> readSources() {
    auto sources = store_.parcelSources();
    if (!sources) return std::unexpected(sources.error());
    here_.clear();
    for (store::ParcelSource& each : *sources) here_.emplace(each.head.source, std::move(each));
    return {};
  }

  [[nodiscard]] std::int64_t headHere(const std::string& source) const {
    const auto found = here_.find(source);
    return found == here_.end() ? 0 : found->second.head.sequence;
  }

  /// Whether the far side has a parcel that this device's key sealed and that was not made here.
  Expected<bool> isDoubled() {
    const auto found = shown_.find(own_);
    if (found == shown_.end()) return false;
    for (const ParcelPlace& head : found->second) {
      const auto here = store_.hasParcel(head);
      if (!here) return std::unexpected(here.error());
      if (*here) continue;
      const std::array name{parcelObject(head)};
      const auto bytes = std::move(remote_.get(name).front());
      if (bytes && openParcel(*bytes, head)) return true;
      if (bytes || bytes.error().kind == ErrorKind::NotFound) continue;
      // Until that is known nothing is sent: two installations must not number their parcels alike.
      stop(bytes.error());
      may_send_ = false;
    }
    return false;
  }

  // What waits becomes parcels.

  Expected<std::optional<std::string>> lineOf(const store::Waiting& waiting) {
    switch (waiting.kind) {
      case WaitingKind::Statement: {
        auto statement = store_.statement(waiting.name);
        if (!statement) return std::unexpected(statement.error());
        if (!*statement) return std::nullopt;
        return std::move((*statement)->text);
      }
      case WaitingKind::Signers: {
        const auto all = store_.signersLists();
        if (!all) return std::unexpected(all.error());
        const auto found = std::ranges::find(*all, waiting.name, &records::SealedSigners::name);
        return found == all->end() ? std::nullopt : std::optional(found->text);
      }
      case WaitingKind::Blob: {
        const auto bytes = store_.blob(waiting.name);
        if (!bytes) return std::unexpected(bytes.error());
        if (!*bytes) return std::nullopt;
        const auto media_type = store_.mediaType(waiting.name);
        if (!media_type) return std::unexpected(media_type.error());
        return blobLine(**bytes, *media_type);
      }
      case WaitingKind::Personal: {
        const auto personal = store_.personal(waiting.name);
        if (!personal) return std::unexpected(personal.error());
        if (!*personal) return std::nullopt;
        return personalLine(**personal);
      }
    }
    return std::nullopt;
  }

  static std::string itemOf(const store::Waiting& waiting, std::string_view line) {
    if (waiting.kind == WaitingKind::Statement) return "statement " + waiting.name;
    if (waiting.kind == WaitingKind::Signers) return "signers " + waiting.name;
    return std::string(line);
  }

  struct Packed {
    std::vector<SealedParcel> parcels{};
    std::int64_t items = 0;
  };
  /// Makes parcels of what waits, up to what goes in one go, and keeps them in one commit: before any of them
  /// leaves, so that a kill at any moment makes no second parcel of the same number.
  Expected<Packed> pack(std::size_t most_bytes) {
    auto batch = store_.beginBatch();
    if (!batch) return std::unexpected(batch.error());
    auto told = newsOfOthers();
    if (!told) return std::unexpected(told.error());
    const std::vector<ParcelPlace> news = *told;
    Packed packed;
    struct Row {
      store::Parcel parcel{};
      store::WaitingRange holds{};
    };
    std::vector<Row> rows;
    std::vector<store::Waiting> gone;
    std::string body;
    std::size_t bytes_of_all = 0;
    const auto own = here_.find(own_);
    std::optional<ParcelPlace> last;
    if (own != here_.end()) last = own->second.head;
    const auto close = [&]() -> Expected<void> {
      bytes_of_all += body.size();
      auto sealed = makeParcel(device_, last ? last->sequence + 1 : 1,
                               last ? std::optional(last->name) : std::nullopt, *told, std::move(body));
      if (!sealed) return std::unexpected(sealed.error());
      told->clear();
      body.clear();
      packed.items += std::ssize(rows.back().parcel.items);
      rows.back().parcel.place = sealed->place;
      rows.back().parcel.manifest = sealed->manifest;
      last = sealed->place;
      packed.parcels.push_back(*std::move(sealed));
      return {};
    };
    const auto visited = store_.visitUnpacked([&](const store::Unpacked& each) -> Expected<bool> {
      std::optional<std::string> made;
      std::optional<std::string_view> line = each.text;
      if (each.what.kind != WaitingKind::Statement) {
        auto other = lineOf(each.what);
        if (!other) return std::unexpected(other.error());
        made = *std::move(other);
        line = made;
      }
      if (!line) {
        gone.push_back(each.what);
        return true;
      }
      if (body.empty()) {
        rows.push_back({.holds = {.first = each.number}});
        body = spareRoom();
      }
      body += *line;
      body += '\n';
      rows.back().holds.last = each.number;
      rows.back().parcel.items.push_back(itemOf(each.what, *line));
      if (body.size() <= kParcelBytes && rows.back().parcel.items.size() < kMostItems) return true;
      if (auto closed = close(); !closed) return std::unexpected(closed.error());
      return bytes_of_all < most_bytes;
    });
    if (!visited) return std::unexpected(visited.error());
    if (!body.empty()) {
      if (auto closed = close(); !closed) return std::unexpected(closed.error());
    }
    for (const store::Waiting& each : gone) {
      if (auto taken_off = store_.sent(each); !taken_off) return std::unexpected(taken_off.error());
    }
    for (const Row& row : rows) {
      if (auto put = store_.putParcel(row.parcel, row.holds); !put) return std::unexpected(put.error());
    }
    for (const ParcelPlace& head : packed.parcels.empty() ? std::vector<ParcelPlace>{} : news) {
      if (auto put = store_.putSeenParcel({head, own_}); !put) return std::unexpected(put.error());
    }
    if (auto committed = batch->commit(); !committed) return std::unexpected(committed.error());
    if (!packed.parcels.empty()) here_.insert_or_assign(own_, store::ParcelSource{*last, last->sequence});
    return packed;
  }

  /// Memory for a parcel, of an object that was sent where there is one: to ask the system for as much anew
  /// costs more than to fill it.
  std::string spareRoom() {
    std::string room;
    if (!spare_.empty()) {
      room = std::move(spare_.back());
      spare_.pop_back();
    }
    room.clear();
    room.reserve(kRoom);
    return room;
  }

  /// Heads of others that this device holds and has not told of yet.
  Expected<std::vector<ParcelPlace>> newsOfOthers() {
    const auto seen = store_.seenParcels();
    if (!seen) return std::unexpected(seen.error());
    std::map<std::string, std::int64_t> told;
    for (const store::SeenParcel& each : *seen) {
      if (each.witness == own_) told[each.place.source] = each.place.sequence;
    }
    std::vector<ParcelPlace> news;
    for (const auto& [source, here] : here_) {
      if (source != own_ && here.head.sequence > told[source]) news.push_back(here.head);
    }
    return news;
  }

  // What only the far side has.

  Expected<void> pull() {
    if (auto fetched = fetchNewestHeads(); !fetched) return fetched;
    for (const auto& [source, heads] : shown_) {
      if (!goesOn()) return {};
      if (auto pulled = pullSource(source, heads); !pulled) return pulled;
      if (!intake_.hasNewSigners()) continue;
      if (auto looked = lookAgain(); !looked) return looked;
    }
    return {};
  }

  /// Of all sources at once, for on a slow line each request by itself costs its way there and back.
  Expected<void> fetchNewestHeads() {
    std::vector<ParcelPlace> missing;
    for (const auto& [source, heads] : shown_) {
      const auto here = store_.hasParcel(heads.front());
      if (!here) return std::unexpected(here.error());
      if (!*here) missing.push_back(heads.front());
    }
    for (const auto part : chunks(missing, kAtOnce)) {
      if (!goesOn()) return {};
      if (auto fetched = fetch(part); !fetched) return fetched;
    }
    return missing.empty() ? Expected<void>() : readSources();
  }

  Expected<void> pullSource(const std::string& source, const std::vector<ParcelPlace>& heads) {
    std::int64_t last = 0;
    const std::int64_t received = outcome_.progress.parcels_received;
    if (unreached_.contains(source)) return {};
    for (const ParcelPlace& head : heads) {
      auto here = store_.hasParcel(head);
      if (!here) return std::unexpected(here.error());
      if (!*here && head != heads.front()) {
        const std::array only{head};
        if (auto fetched = fetch(only); !fetched) return fetched;
        if (unreached_.contains(source)) return {};
        here = store_.hasParcel(head);
        if (!here) return std::unexpected(here.error());
      }
      // A head counts once its parcel was seen: a name alone could send this phone looking for millions.
      if (*here) {
        last = head.sequence;
        confirmed_[source] = head;
        break;
      }
    }
    const auto whole = [&]() -> Expected<std::int64_t> {
      if (outcome_.progress.parcels_received != received) {
        if (auto read = readSources(); !read) return std::unexpected(read.error());
      }
      const auto found = here_.find(source);
      return found == here_.end() ? 0 : found->second.whole;
    };
    Expected<std::int64_t> from = whole();
    if (!from) return std::unexpected(from.error());
    if (*from >= last) return {};
    for (std::int64_t folder = (*from + 1) / kPlacesInFolder; folder <= last / kPlacesInFolder; ++folder) {
      if (!goesOn()) return {};
      if (auto pulled = pullFolder(source, folder * kPlacesInFolder); !pulled) return pulled;
    }
    from = whole();
    if (!from) return std::unexpected(from.error());
    return *from < last ? tellMissing(source, *from) : Expected<void>();
  }

  Expected<void> pullFolder(const std::string& source, std::int64_t sequence) {
    const auto listed = remote_.list(parcelFolder(source, sequence));
    if (!listed) {
      stop(listed.error());
      return {};
    }
    std::vector<ParcelPlace> missing;
    for (const Listed& each : *listed) {
      const auto place = parcelOfFile(source, each.name);
      if (!place) continue;
      const auto here = store_.hasParcel(*place);
      if (!here) return std::unexpected(here.error());
      if (!*here) missing.push_back(*place);
    }
    std::ranges::sort(missing, {}, &ParcelPlace::sequence);
    for (const auto part : chunks(missing, kAtOnce)) {
      if (!goesOn()) return {};
      if (auto fetched = fetch(part); !fetched) return fetched;
    }
    return {};
  }

  /// Fetches parcels and takes each that is sound. One that is not is fetched once more: the line may have
  /// cut it.
  Expected<void> fetch(std::span<const ParcelPlace> places) {
    std::vector<ParcelPlace> open(places.begin(), places.end());
    for (int tried = 0; tried < 2 && !open.empty(); ++tried) {
      std::vector<std::string> names;
      for (const ParcelPlace& place : open) names.push_back(parcelObject(place));
      const auto answers = remote_.get(names);
      std::vector<ParcelPlace> unsound;
      for (std::size_t index = 0; index < open.size(); ++index) {
        const ParcelPlace& place = open[index];
        if (!answers[index]) {
          if (answers[index].error().kind == ErrorKind::NotFound) {
            missed(place);
          } else {
            unreached_.insert(place.source);
            stop(answers[index].error());
          }
          continue;
        }
        outcome_.progress.bytes_received += std::ssize(*answers[index]);
        const auto parcel = openParcel(*answers[index], place);
        if (parcel) {
          ++outcome_.progress.parcels_received;
          if (auto taken = add(intake_.take(*parcel)); !taken) return taken;
        } else if (tried == 0) {
          unsound.push_back(place);
        } else {
          if (auto kept = setAside(place.name, place.source, *answers[index], parcel.error().message); !kept)
            return kept;
          want({.kind = Wanted::Kind::Parcel, .parcel = place});
        }
      }
      open = std::move(unsound);
    }
    return {};
  }

  void missed(const ParcelPlace& place) {
    Message message = aboutPlace("parcel-missing", place);
    message.values.emplace_back("last", Amount{static_cast<double>(place.sequence), "1", 0});
    find(std::move(message));
    want({.kind = Wanted::Kind::Parcel, .parcel = place});
  }

  Expected<void> setAside(const std::string& name, const std::string& source, std::string bytes,
                          const Message& why) {
    find(why);
    ++outcome_.progress.quarantined;
    if (bytes.size() > kMostAsideBytes) bytes.resize(kMostAsideBytes);
    return store_.putQuarantined({.name = name,
                                  .source = source,
                                  .reason = textOf(why),
                                  .since_utc_ms = options_.now_utc_ms,
                                  .bytes = std::move(bytes)});
  }

  /// Places before a parcel that is here: what it names as the one before it can be asked for.
  Expected<void> tellMissing(const std::string& source, std::int64_t whole) {
    const auto next = store_.parcelsAfter(source, whole, 1);
    if (!next) return std::unexpected(next.error());
    if (next->empty()) return {};
    Message message = aboutPlace("parcel-missing", {source, whole + 1, ""});
    message.values.emplace_back("last", Amount{static_cast<double>(next->front().sequence - 1), "1", 0});
    find(std::move(message));
    const auto row = store_.parcel(next->front());
    if (!row) return std::unexpected(row.error());
    const auto manifest = readManifest((*row)->manifest);
    if (manifest && manifest->previous) {
      want({.kind = Wanted::Kind::Parcel,
            .parcel = {source, next->front().sequence - 1, *manifest->previous}});
    }
    return {};
  }

  // What the far side shows beside what is known to exist.

  Expected<void> compare() {
    const auto seen = store_.seenParcels();
    if (!seen) return std::unexpected(seen.error());
    std::map<std::string, std::int64_t> shown_before;
    for (const store::SeenParcel& each : *seen) {
      const ParcelPlace& place = each.place;
      const auto heads = shown_.find(place.source);
      const std::int64_t shown = heads == shown_.end() ? 0 : heads->second.front().sequence;
      if (each.witness == witness_) {
        shown_before[place.source] = place.sequence;
        if (shown >= place.sequence) continue;
        Message message = aboutPlace("far-side-rolled-back", place);
        message.values.emplace_back("shown", Amount{static_cast<double>(shown), "1", 0});
        find(std::move(message));
      } else if (each.witness != own_ && !each.witness.starts_with("far-side:") &&
                 place.sequence > std::max(shown, headHere(place.source))) {
        Message message = aboutPlace("parcel-not-arrived-yet", place);
        message.values.emplace_back("witness", shortName(each.witness));
        find(std::move(message));
      }
    }
    for (const auto& [source, head] : confirmed_) {
      if (!remembers() || head.sequence <= shown_before[source]) continue;
      if (auto put = store_.putSeenParcel({head, witness_}); !put) return put;
    }
    return {};
  }

  // What the far side lacks.

  [[nodiscard]] std::int64_t confirmed(const std::string& source) const {
    const auto found = confirmed_.find(source);
    return found == confirmed_.end() ? 0 : found->second.sequence;
  }

  Expected<void> push() {
    std::vector<std::string> lacking;
    for (const auto& [source, here] : here_) {
      const std::int64_t there = confirmed(source);
      if (there > 0) {
        if (auto sent = store_.parcelsSent(source, there); !sent) return std::unexpected(sent.error());
      }
      if (here.head.sequence <= there || unreached_.contains(source)) continue;
      if (source != own_) lacking.push_back(source);
      outcome_.progress.parcels_to_send += here.head.sequence - there;
    }
    // What was made here goes first.
    if (!unreached_.contains(own_)) lacking.insert(lacking.begin(), own_);
    std::vector<ParcelPlace> pushed;
    for (const std::string& source : lacking) {
      const auto whole = pushSource(source);
      if (!whole) return std::unexpected(whole.error());
      const auto here = here_.find(source);
      if (*whole && here != here_.end() && here->second.head.sequence > confirmed(source))
        pushed.push_back(here->second.head);
      if (!goesOn()) return {};
    }
    return pushed.empty() ? Expected<void>() : announce(pushed);
  }

  /// @return whether all of it is there now
  Expected<bool> pushSource(const std::string& source) {
    auto whole = pushKept(source);
    if (whole && *whole && source == own_) whole = pushWaiting();
    // Also where it ends early: what is on its way may still arrive.
    const bool landed = land();
    if (!whole || !*whole || !landed) return whole ? Expected<bool>(false) : whole;
    return proveListed();
  }

  /// Parcels that were made before. What is there already from before the line broke does not travel again.
  Expected<bool> pushKept(const std::string& source) {
    const auto here = here_.find(source);
    if (here == here_.end()) return true;
    const std::int64_t last = here->second.head.sequence;
    std::int64_t after = confirmed(source);
    std::map<std::string, std::int64_t> there;
    std::string folder;
    while (after < last) {
      const auto places = store_.parcelsAfter(source, after, kAtOnce);
      if (!places) return std::unexpected(places.error());
      if (places->empty()) return true;
      std::vector<Upload> uploads;
      for (const ParcelPlace& place : *places) {
        auto upload = uploadOf(place);
        if (!upload) return std::unexpected(upload.error());
        if (!*upload) continue;  // it can't be made again here; another device has it
        if (std::string in = parcelFolder(source, place.sequence); last - after > 1 && in != folder) {
          folder = std::move(in);
          if (!land() || !readSizes(folder, there)) return false;
        }
        const auto found = there.find((*upload)->name);
        if (found != there.end() && found->second == std::ssize((*upload)->bytes)) continue;
        const auto evidence = pushEvidence((*upload)->bytes);
        if (!evidence || !*evidence) return evidence;
        uploads.push_back(*std::move(*upload));
      }
      after = places->back().sequence;
      if (!putAll(std::move(uploads), std::ssize(*places)) || !goesOn()) return false;
    }
    return true;
  }

  bool readSizes(const std::string& folder, std::map<std::string, std::int64_t>& sizes) {
    const auto listed = remote_.list(folder);
    if (!listed) {
      stop(listed.error());
      return false;
    }
    sizes.clear();
    for (const Listed& each : *listed) sizes.emplace(folder + "/" + each.name, each.size);
    return true;
  }

  /// Makes parcels of what waits and puts them, the next ones being made while some are on their way.
  Expected<bool> pushWaiting() {
    const std::int64_t known = outcome_.progress.parcels_to_send;
    std::int64_t made = 0;
    const auto at_first = store_.unpackedCount();
    if (!at_first) return std::unexpected(at_first.error());
    if (*at_first == 0) return true;
    // The first parcels leave soon; later ones are many at once, for a commit costs the same for one and for
    // many.
    std::int64_t left = *at_first;
    for (std::size_t most_bytes = kParcelBytes;; most_bytes = std::min(2 * most_bytes, kBytesAtOnce)) {
      auto packed = pack(most_bytes);
      if (!packed) return std::unexpected(packed.error());
      if (packed->parcels.empty()) return true;
      const std::int64_t parcels = std::ssize(packed->parcels);
      made += parcels;
      left = std::max<std::int64_t>(0, left - packed->items);
      // How many the rest will make is a guess from what went into those that are made.
      const std::int64_t gone = std::max<std::int64_t>(1, *at_first - left);
      outcome_.progress.parcels_to_send = known + made + (left * made + gone - 1) / gone;
      std::vector<Upload> uploads;
      // Few are looked at one by one, many by a list of their folder in the end.
      const bool few = made <= kFew && left == 0;
      for (SealedParcel& parcel : packed->parcels) {
        const auto evidence = pushEvidence(parcel.bytes);
        if (!evidence || !*evidence) return evidence;
        if (!few) unproved_.push_back({parcel.place, std::ssize(parcel.bytes)});
        uploads.push_back({.name = parcelObject(parcel.place), .bytes = std::move(parcel.bytes)});
      }
      if (!putAll(std::move(uploads), parcels, few) || !goesOn()) return false;
    }
  }

  /// The object of a parcel that is here; nothing where its text can't be made again.
  Expected<std::optional<Upload>> uploadOf(const ParcelPlace& place) {
    const auto row = store_.parcel(place);
    if (!row) return std::unexpected(row.error());
    if (!*row) return std::nullopt;
    std::vector<std::string> lines;
    for (const std::string& item : (*row)->items) {
      const std::size_t blank = item.find(' ');
      const std::string kind = item.substr(0, blank);
      if (kind != "statement" && kind != "signers") {
        lines.push_back(item);
        continue;
      }
      const auto line = lineOf({.kind = kind == "signers" ? WaitingKind::Signers : WaitingKind::Statement,
                                .name = item.substr(blank + 1)});
      if (!line) return std::unexpected(line.error());
      lines.push_back(line->value_or(""));
    }
    Upload upload{.name = parcelObject(place), .bytes = parcelBytes((*row)->manifest, lines)};
    if (!openParcel(upload.bytes, place)) return std::nullopt;
    return upload;
  }

  /// What came of objects that were put.
  struct Landed {
    std::int64_t parcels = 0;
    std::int64_t bytes = 0;
    std::optional<Error> stopped{};
    std::vector<std::string> spare{};  ///< the memory of the objects
  };

  /// Puts objects and looks whether each is there whole, where that is not done later; a far side may say so
  /// and not have it.
  static Landed putAndProve(const Remote& remote, std::vector<Upload> uploads, std::int64_t parcels,
                            bool prove) {
    Landed landed{.parcels = parcels};
    for (int tried = 0; !uploads.empty(); ++tried) {
      const auto answers = remote.put(uploads);
      std::vector<std::string> names;
      for (std::size_t index = 0; index < uploads.size(); ++index) {
        names.push_back(uploads[index].name);
        if (answers[index]) {
          if (*answers[index] == Put::Done) landed.bytes += std::ssize(uploads[index].bytes);
          continue;
        }
        landed.stopped = answers[index].error();
        return landed;
      }
      if (!prove) {
        for (Upload& each : uploads) landed.spare.push_back(std::move(each.bytes));
        return landed;
      }
      const auto sizes = remote.sizes(names);
      std::vector<Upload> again;
      for (std::size_t index = 0; index < uploads.size(); ++index) {
        if (!sizes[index]) {
          landed.stopped = sizes[index].error();
          return landed;
        }
        if (*sizes[index] == std::ssize(uploads[index].bytes)) {
          landed.spare.push_back(std::move(uploads[index].bytes));
          continue;
        }
        if (tried + 1 == kMostProofs) {
          landed.stopped = fail(ErrorKind::IoFailed, "object-not-kept", {{"name", names[index]}}).error();
          return landed;
        }
        // What is there in part is in the way of a put that must not replace.
        uploads[index].replace = sizes[index]->has_value();
        again.push_back(std::move(uploads[index]));
      }
      uploads = std::move(again);
    }
    return landed;
  }

  /// Sends objects on their way once those before them have landed, and does not wait for them: until land()
  /// the remote is theirs. @return whether those before are there
  bool putAll(std::vector<Upload> uploads, std::int64_t parcels = 0, bool prove = true) {
    if (!land()) return false;
    on_their_way_ =
        std::async(std::launch::async, putAndProve, std::cref(remote_), std::move(uploads), parcels, prove);
    return true;
  }

  /// Looks by lists of their folders whether the parcels that were put are there whole, and puts those again
  /// that are not. @return whether all are there
  Expected<bool> proveListed() {
    std::map<std::string, std::int64_t> there;
    std::string folder;
    std::vector<Upload> again;
    for (const auto& [place, size] : std::exchange(unproved_, {})) {
      if (std::string in = parcelFolder(place.source, place.sequence); in != folder) {
        folder = std::move(in);
        if (!land() || !readSizes(folder, there)) return false;
      }
      const auto found = there.find(parcelObject(place));
      if (found != there.end() && found->second == size) continue;
      auto upload = uploadOf(place);
      if (!upload) return std::unexpected(upload.error());
      if (!*upload) {
        stop(fail(ErrorKind::IoFailed, "object-not-kept", {{"name", parcelObject(place)}}).error());
        return false;
      }
      (*upload)->replace = found != there.end();
      again.push_back(*std::move(*upload));
      if (again.size() < kAtOnce) continue;
      if (!putAll(std::exchange(again, {})) || !goesOn()) return false;
    }
    if (!again.empty() && !putAll(std::move(again))) return false;
    return land();
  }

  /// Waits for what is on its way. @return whether it is there
  bool land() {
    if (!on_their_way_.valid()) return true;
    Landed landed = on_their_way_.get();
    outcome_.progress.bytes_sent += landed.bytes;
    spare_ = std::move(landed.spare);
    if (landed.stopped) {
      stop(*std::move(landed.stopped));
      return false;
    }
    outcome_.progress.parcels_sent += landed.parcels;
    return true;
  }

  /// All evidence that a parcel offers and that is here. @return whether it is there, or on its way
  Expected<bool> pushEvidence(std::string_view body) {
    body.remove_prefix(body.find('\n') + 1);
    std::vector<Upload> uploads;
    std::size_t bytes = 0;
    while (!body.empty()) {
      const std::string_view line = body.substr(0, body.find('\n'));
      body.remove_prefix(line.size() + 1);
      const auto item = readItem(line);
      if (!item || item->kind == Item::Kind::Sealed) continue;
      if (item->kind == Item::Kind::Erased) {
        if (!land() || !removePersonal(item->name)) return false;
        continue;
      }
      const auto content = contentOf(*item);
      if (!content) return std::unexpected(content.error());
      if (!*content) continue;
      ++outcome_.progress.evidence_sent;
      // Of something large, what is there already from before the line broke does not travel again.
      std::vector<Expected<std::optional<std::int64_t>>> there;
      if (item->pieces.size() > 1) {
        if (!land()) return false;
        there = remote_.sizes(item->pieces);
      }
      for (std::size_t piece = 0; piece < item->pieces.size(); ++piece) {
        std::string part = (*content)->substr(piece * kPieceBytes, kPieceBytes);
        if (!there.empty() && there[piece] && *there[piece] == std::ssize(part)) continue;
        bytes += part.size();
        uploads.push_back({.name = item->pieces[piece], .bytes = std::move(part)});
        if (uploads.size() < kAtOnce && bytes < kBytesAtOnce) continue;
        if (!putAll(std::exchange(uploads, {})) || !goesOn()) return false;
        bytes = 0;
      }
    }
    return uploads.empty() || putAll(std::move(uploads));
  }

  /// The bytes of evidence as they travel; nothing where it is not here or was erased.
  Expected<std::optional<std::string>> contentOf(const Item& item) {
    if (item.kind == Item::Kind::Blob) return store_.blob(item.name);
    const auto personal = store_.personal(item.name);
    if (!personal) return std::unexpected(personal.error());
    if (!*personal || (*personal)->erased) return std::nullopt;
    return records::textOf((*personal)->salt) + (*personal)->bytes;
  }

  bool removePersonal(const std::string& name) {
    const auto listed = remote_.list(personalFolder(name));
    if (!listed) {
      stop(listed.error());
      return false;
    }
    std::vector<std::string> names;
    for (const Listed& each : *listed) names.push_back(personalFolder(name) + "/" + each.name);
    for (const auto& removed : remote_.remove(names)) {
      if (removed) continue;
      stop(removed.error());
      return false;
    }
    return true;
  }

  /// Shows the new heads, looks whether they are shown, and takes the older ones away.
  Expected<void> announce(const std::vector<ParcelPlace>& heads) {
    std::vector<std::string> older;
    for (const ParcelPlace& head : heads) {
      for (const ParcelPlace& before : shown_[head.source]) {
        if (before.sequence < head.sequence) older.push_back(headObject(before));
      }
    }
    std::set<std::string> open;
    for (int tried = 0; tried < kMostProofs; ++tried) {
      std::vector<Upload> uploads;
      for (const ParcelPlace& head : heads) {
        if (tried == 0 || open.contains(head.source)) uploads.push_back({headObject(head), "", tried > 0});
      }
      for (const auto& answer : remote_.put(uploads)) {
        if (!answer) stop(answer.error());
      }
      if (!readHeads()) return {};
      open.clear();
      for (const ParcelPlace& head : heads) {
        const std::vector<ParcelPlace>& shown = shown_[head.source];
        if (std::ranges::find(shown, head) == shown.end()) open.insert(head.source);
      }
      if (open.empty()) break;
    }
    auto batch = store_.beginBatch();
    if (!batch) return std::unexpected(batch.error());
    for (const ParcelPlace& head : heads) {
      if (open.contains(head.source)) {
        stop(fail(ErrorKind::IoFailed, "object-not-kept", {{"name", headObject(head)}}).error());
        continue;
      }
      if (auto sent = store_.parcelsSent(head.source, head.sequence); !sent)
        return std::unexpected(sent.error());
      if (!remembers()) continue;
      if (auto seen = store_.putSeenParcel({head, witness_}); !seen) return seen;
    }
    if (auto committed = batch->commit(); !committed) return committed;
    if (open.empty()) {
      // An older head that stays does no harm.
      static_cast<void>(remote_.remove(older));
    }
    return {};
  }

  // What others looked for and did not find whole.

  Expected<void> provide() {
    std::size_t provided = 0;
    for (const Wanted& wanted : wanted_) {
      if (provided == kMostWanted || !goesOn()) return {};
      auto uploads = uploadsFor(wanted);
      if (!uploads) return std::unexpected(uploads.error());
      if (uploads->empty()) continue;
      for (Upload& each : *uploads) each.replace = true;
      ++provided;
      if (!putAll(*std::move(uploads)) || !land()) continue;
      const std::array marker{wantedObject(wanted)};
      static_cast<void>(remote_.remove(marker));
    }
    return {};
  }

  Expected<std::vector<Upload>> uploadsFor(const Wanted& wanted) {
    std::vector<Upload> uploads;
    if (wanted.kind == Wanted::Kind::Parcel) {
      auto upload = uploadOf(wanted.parcel);
      if (!upload) return std::unexpected(upload.error());
      if (*upload) uploads.push_back(*std::move(*upload));
      return uploads;
    }
    const bool is_blob = wanted.kind == Wanted::Kind::Blob;
    const auto content =
        contentOf({.kind = is_blob ? Item::Kind::Blob : Item::Kind::Personal, .name = wanted.name});
    if (!content) return std::unexpected(content.error());
    if (!*content) return uploads;
    for (std::size_t at = 0; at < (*content)->size(); at += kPieceBytes) {
      std::string part = (*content)->substr(at, kPieceBytes);
      std::string name = is_blob
                             ? blobPieceObject(records::hashName(part))
                             : personalPieceObject(wanted.name, static_cast<std::int64_t>(at / kPieceBytes));
      uploads.push_back({.name = std::move(name), .bytes = std::move(part)});
    }
    return uploads;
  }

  Expected<void> askFor() {
    std::vector<Upload> uploads;
    for (const Wanted& wanted : asked_) {
      const bool asked = std::ranges::find(wanted_, wanted) != wanted_.end();
      if (!asked) uploads.push_back({.name = wantedObject(wanted), .bytes = ""});
    }
    if (uploads.empty()) return {};
    for (const auto& answer : remote_.put(uploads)) {
      if (!answer) stop(answer.error());
    }
    return {};
  }

  // Evidence.

  struct Fetching {
    Item item;
    bool failed = false;
  };

  Expected<void> fetchEvidence() {
    const auto awaited = store_.awaitedOnOffer();
    if (!awaited) return std::unexpected(awaited.error());
    std::vector<Fetching> fetching;
    std::size_t pieces = 0;
    for (const store::Awaited& each : *awaited) {
      auto item = readItem(each.offer);
      if (!item) continue;
      pieces += item->pieces.size();
      fetching.push_back({*std::move(item)});
      if (pieces < kAtOnce) continue;
      if (!goesOn()) return {};
      if (auto done = fetchPieces(fetching); !done) return done;
      fetching.clear();
      pieces = 0;
    }
    return fetchPieces(fetching);
  }

  Expected<void> fetchPieces(std::vector<Fetching>& fetching) {
    if (fetching.empty()) return {};
    struct Part {
      Fetching* of;
      std::string name;
    };
    std::vector<Part> parts;
    for (Fetching& each : fetching) {
      for (const std::string& name : each.item.pieces) {
        const auto here = store_.piece(name);
        if (!here) return std::unexpected(here.error());
        if (!*here) parts.push_back({&each, name});
      }
    }
    for (const auto chunk : chunks(parts, kAtOnce)) {
      if (!goesOn()) return {};
      std::vector<std::string> names;
      for (const Part& part : chunk) names.push_back(part.name);
      auto answers = remote_.get(names);
      for (std::size_t index = 0; index < chunk.size(); ++index) {
        if (!answers[index] || isSound(chunk[index].of->item, names[index], *answers[index])) continue;
        const std::array once_more{names[index]};  // the line may have cut it
        answers[index] = std::move(remote_.get(once_more).front());
      }
      auto batch = store_.beginBatch();
      if (!batch) return std::unexpected(batch.error());
      for (std::size_t index = 0; index < chunk.size(); ++index) {
        if (auto done = takePiece(*chunk[index].of, names[index], answers[index]); !done) return done;
      }
      if (auto committed = batch->commit(); !committed) return committed;
    }
    auto batch = store_.beginBatch();
    if (!batch) return std::unexpected(batch.error());
    for (Fetching& each : fetching) {
      if (each.failed) continue;
      if (auto done = assemble(each.item); !done) return done;
    }
    return batch->commit();
  }

  /// Whether a piece is what its name says; of a personal object only the whole can tell.
  static bool isSound(const Item& item, const std::string& name, const std::string& bytes) {
    return item.kind != Item::Kind::Blob || blobPieceObject(records::hashName(bytes)) == name;
  }

  Expected<void> takePiece(Fetching& of, const std::string& name, const Expected<std::string>& answer) {
    if (answer && isSound(of.item, name, *answer)) {
      outcome_.progress.bytes_received += std::ssize(*answer);
      return store_.putPiece(name, *answer);
    }
    of.failed = true;
    if (answer || answer.error().kind == ErrorKind::NotFound) return lacking(of.item, answer.has_value());
    stop(answer.error());
    return {};
  }

  Expected<void> lacking(const Item& item, bool altered) {
    const Message why{altered ? "evidence-altered" : "evidence-not-there", {{"name", item.name}}};
    want({.kind = item.kind == Item::Kind::Blob ? Wanted::Kind::Blob : Wanted::Kind::Personal,
          .name = item.name});
    if (altered) return setAside(item.name, witness_, "", why);
    find(why);
    return {};
  }

  Expected<void> assemble(const Item& item) {
    std::string content;
    for (const std::string& name : item.pieces) {
      const auto piece = store_.piece(name);
      if (!piece) return std::unexpected(piece.error());
      if (!*piece) return {};  // broken off before it came
      content += **piece;
    }
    store::Personal personal{.name = item.name};
    bool sound = false;
    if (item.kind == Item::Kind::Blob) {
      sound = records::hashName(content) == item.name;
      if (sound) {
        if (auto put = store_.putBlob(content, item.media_type); !put) return std::unexpected(put.error());
      }
    } else if (content.size() >= personal.salt.size()) {
      std::ranges::copy(records::bytesOf(content).first(personal.salt.size()), personal.salt.begin());
      personal.bytes = content.substr(personal.salt.size());
      sound = records::personalName(personal.salt, personal.bytes) == item.name;
      if (sound) {
        if (auto put = store_.putPersonal(personal, options_.now_utc_ms, false); !put) return put;
      }
    }
    for (const std::string& name : item.pieces) {
      if (auto dropped = store_.dropPiece(name); !dropped) return dropped;
    }
    if (sound) {
      ++outcome_.progress.evidence_received;
      const WaitingKind kind = item.kind == Item::Kind::Blob ? WaitingKind::Blob : WaitingKind::Personal;
      if (auto gone = store_.arrived(kind, item.name); !gone) return gone;
      if (auto released = store_.releaseQuarantined(item.name); !released) return released;
    } else if (auto told = lacking(item, true); !told) {
      return told;
    }
    return {};
  }

  store::Store& store_;
  const Remote& remote_;
  const Device& device_;
  const Options& options_;
  Intake intake_;
  std::string own_;
  std::string witness_;
  Outcome outcome_;
  bool may_send_ = true;
  std::map<std::string, std::vector<ParcelPlace>> shown_;  ///< heads there by source, the furthest first
  std::vector<Wanted> wanted_;                             ///< by others, as shown there
  std::vector<Wanted> asked_;                              ///< by this exchange
  std::map<std::string, store::ParcelSource> here_;
  std::set<std::string> unreached_;               ///< sources of which something could not be fetched now
  std::map<std::string, ParcelPlace> confirmed_;  ///< the furthest head there whose parcel is here
  std::vector<std::string> spare_;
  std::vector<std::pair<ParcelPlace, std::int64_t>> unproved_;  ///< parcels that were put, and their sizes
  std::future<Landed> on_their_way_;  ///< last, so that it is waited for before the rest goes
};

}  // namespace

Expected<Outcome> exchange(store::Store& store, const Remote& remote, const Device& device,
                           const Options& options) {
  auto intake = Intake::over(store, options.now_utc_ms);
  if (!intake) return std::unexpected(intake.error());
  return Exchange(store, remote, device, options, *std::move(intake)).run();
}

Expected<std::vector<Waits>> whatWaits(const store::Store& store, const std::optional<Error>& last) {
  const auto waiting = store.waiting();
  if (!waiting) return std::unexpected(waiting.error());
  std::vector<Waits> all;
  for (const store::Waiting& each : *waiting) {
    all.push_back({each, last ? last->message : Message{"waits-for-exchange", {}}});
  }
  return all;
}

Expected<std::vector<InQuarantine>> inQuarantine(const store::Store& store) {
  const auto held = store.quarantine();
  if (!held) return std::unexpected(held.error());
  std::vector<InQuarantine> all;
  for (const store::Quarantined& each : *held) {
    all.push_back({each.name, each.source, messageOf(each.reason)});
  }
  return all;
}

}  // namespace hingepin::sync
